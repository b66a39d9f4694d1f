#include "cli/commands.hpp"
#include "cli/progress.hpp"
#include "cli/run.hpp"
#include "gentlest/diagnostic.hpp"
#include "report/charts.hpp"
#include "report/format.hpp"

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

void expect_picture(const Request& request, const std::string& made) {
  if (request.form == Form::text) return;
  throw InputError(Fault::usage, fmt::format("\"{}\" makes {}, no CSV or JSON", request.command, made),
                   "leave --format out; `gentlest ladder JOB --format csv` or json holds the figures");
}

Answer command_chart(const Request& request, Session& session) {
  expect_picture(request, "SVG");
  const std::string kind = asked_kind(request);
  const Catalogue catalogue = load_catalogue(request);
  const Job job = load_asked_job(request.words.front(), request, catalogue, session);
  ProgressLine progress(session, request.quiet);
  const Plan plan = make_plan(job, catalogue, request.target.value_or(""), progress.callback());
  const Bench bench = prepare_bench(plan, catalogue);
  return {chart_file(chart_of(kind, plan, bench), {program_version(), catalogue.version()}),
          plan.outcome == Outcome::window ? exit_done : exit_no_window};
}

}  // namespace gentlest
