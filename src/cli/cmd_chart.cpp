#include "cli/commands.hpp"
#include "cli/faults.hpp"
#include "cli/paper.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "report/charts/charts.hpp"
#include "report/form/format.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

std::string asked_kind(const Request& request) {
  const std::vector<std::string>& kinds = chart_kinds();
  const std::string kind = request.kind.value_or(kinds.front());
  if (std::find(kinds.begin(), kinds.end(), kind) != kinds.end()) return kind;
  const std::string near = nearest_name(kind, kinds);
  throw InputError(Fault::usage, fmt::format("unknown kind of chart \"{}\"", kind),
                   near.empty() ? "the kinds are: " + joined(kinds) : fmt::format("did you mean \"{}\"?", near));
}

}  // namespace

Answer command_chart(const Request& request, Session& session) {
  std::string kind;
  UsageFaults faults;
  faults.hear([&] { expect_picture(request, "SVG"); });
  faults.hear([&] { kind = asked_kind(request); });
  faults.tell();
  const Catalogue catalogue = load_catalogue(request);
  const Job job = load_asked_job(request.words.front(), request, catalogue, session);
  const Plan plan = plan_asked_job(job, catalogue, request, session);
  Bench bench = prepare_bench(plan, catalogue);
  bench.published = compare_published(plan, catalogue);
  return {chart_file(chart_of(kind, plan, bench), edition_of(catalogue)), exit_of(plan)};
}

}  // namespace gentlest
