#include "cli/commands.hpp"
#include "cli/faults.hpp"
#include "cli/paper.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "report/charts/charts.hpp"
#include "report/charts/progress_charts.hpp"
#include "report/form/format.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace gentlest {

namespace {

bool is_of_tests(const std::string& kind) {
  const std::vector<std::string>& kinds = progress_chart_kinds();
  return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

std::string asked_kind(const Request& request) {
  std::vector<std::string> kinds = chart_kinds();
  kinds.insert(kinds.end(), progress_chart_kinds().begin(), progress_chart_kinds().end());
  const std::string kind = request.kind.value_or(kinds.front());
  if (std::find(kinds.begin(), kinds.end(), kind) != kinds.end()) return kind;
  const std::string near = nearest_name(kind, kinds);
  throw InputError(Fault::usage, fmt::format("unknown kind of chart \"{}\"", kind),
                   near.empty() ? "the kinds are: " + joined(kinds) : fmt::format("did you mean \"{}\"?", near));
}

// Pictures of the tests need the log; those of the plan show none.
void check_log(const Request& request, const std::string& kind) {
  if (is_of_tests(kind) && !request.log)
    throw InputError(Fault::usage, fmt::format("the picture \"{}\" shows tests", kind), "name their log with --log");
  if (!kind.empty() && !is_of_tests(kind) && request.log)
    throw InputError(Fault::usage, fmt::format("the picture \"{}\" shows no tests", kind),
                     "leave --log out, or ask for --kind " + joined(progress_chart_kinds(), " or "));
}

}  // namespace

Answer command_chart(const Request& request, Session& session) {
  std::string kind;
  UsageFaults faults;
  faults.hear([&] { expect_picture(request, "SVG"); });
  faults.hear([&] { kind = asked_kind(request); });
  faults.hear([&] { check_log(request, kind); });
  faults.tell();
  std::optional<ReadingLog> log;
  if (request.log) log = load_log(*request.log, request, session, MissingLog::is_fault);
  const Catalogue catalogue = load_catalogue(request);
  const Job job = load_asked_job(request.words.front(), request, catalogue, session);
  const Plan plan = plan_asked_job(job, catalogue, request, session);
  if (log) {
    const Progress progress = follow_readings(plan, catalogue, log->lines);
    return {chart_file(progress_chart_of(kind, plan, progress), edition_of(catalogue)), exit_of(progress)};
  }
  Bench bench = prepare_bench(plan, catalogue);
  bench.published = compare_published(plan, catalogue);
  return {chart_file(chart_of(kind, plan, bench), edition_of(catalogue)), exit_of(plan)};
}

}  // namespace gentlest
