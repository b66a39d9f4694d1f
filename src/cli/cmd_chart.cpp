#include "cli/commands.hpp"
#include "cli/faults.hpp"
#include "cli/paper.hpp"
#include "gentlest/answers/mixing.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/text.hpp"
#include "gentlest/liquids/notation.hpp"
#include "gentlest/plan/shelf.hpp"
#include "report/charts/charts.hpp"
#include "report/form/format.hpp"
#include "report/tested/progress_charts.hpp"

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
  kinds.emplace_back(mixing_kind);
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

void check_bottles(const Request& request, const std::string& kind) {
  if (request.of && !kind.empty() && kind != mixing_kind)
    throw InputError(Fault::usage, fmt::format("the picture \"{}\" is of the whole shelf", kind),
                     fmt::format("leave --of out, or ask for --kind {}", mixing_kind));
}

// The three bottles of --of; none where it was not typed.
std::vector<Liquid> asked_bottles(const Request& request, const Job& job, const Catalogue& catalogue) {
  if (!request.of) return {};
  const std::vector<Liquid> shelf = all_liquids(shelf_of(job, catalogue));
  std::vector<Liquid> bottles;
  std::vector<Diagnostic> faults;
  for (const std::string& name : items_of(*request.of, ",;")) {
    try {
      const Mixture alone = parse_mixture(name, catalogue, shelf);
      for (const Part& part : alone.parts()) add_liquids(bottles, Mixture({{part.liquid, 1}}));
    } catch (const InputError& error) {
      faults.insert(faults.end(), error.faults().begin(), error.faults().end());
    }
  }
  if (faults.empty() && bottles.size() != 3)
    faults.push_back({{},
                      fmt::format("\"{}\" names {}, and a triangle has three corners", *request.of,
                                  counted(bottles.size(), "bottle", "bottles")),
                      "name three that differ, e.g. --of \"isooctane, ethanol, acetone\"",
                      {}});
  if (!faults.empty()) throw InputError(Fault::usage, std::move(faults));
  return bottles;
}

}  // namespace

Answer command_chart(const Request& request, Session& session) {
  std::string kind;
  UsageFaults faults;
  faults.hear([&] { expect_picture(request, "SVG"); });
  faults.hear([&] { kind = asked_kind(request); });
  faults.hear([&] { check_log(request, kind); });
  faults.hear([&] { check_bottles(request, kind); });
  faults.tell();
  std::optional<ReadingLog> log;
  if (request.log) log = load_log(*request.log, request, session, MissingLog::is_fault);
  const Catalogue& catalogue = load_catalogue(request);
  const Job job = load_asked_job(request.words.front(), request, catalogue, session);
  warn_where_forbidden(job, catalogue, session);
  const std::vector<Liquid> bottles = asked_bottles(request, job, catalogue);
  const Plan plan = plan_asked_job(job, catalogue, request, session);
  if (kind == mixing_kind)
    return {chart_file(mixing_chart(plan, mix_three(plan, catalogue, bottles), compare_own(plan, catalogue)),
                       edition_of(catalogue)),
            exit_of(plan)};
  if (log) {
    const Progress progress = follow_readings(plan, catalogue, log->lines);
    return {chart_file(progress_chart_of(kind, plan, progress), edition_of(catalogue)), exit_of(progress)};
  }
  Bench bench = prepare_bench(plan, catalogue);
  bench.published = compare_published(plan, catalogue);
  return {chart_file(chart_of(kind, plan, bench), edition_of(catalogue)), exit_of(plan)};
}

}  // namespace gentlest
