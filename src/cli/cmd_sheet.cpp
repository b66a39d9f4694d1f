#include "report/paper/test_report.hpp"

#include "cli/commands.hpp"
#include "cli/faults.hpp"
#include "cli/paper.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "report/paper/bench_sheet.hpp"

namespace gentlest {

namespace {

void take_sites(const Request& request, SheetInputs& inputs) {
  if (request.sites && request.log)
    throw InputError(Fault::usage, "both --sites and --log say where the tests are", "give one of them");
  if (request.sites) inputs.sites = parse_sites(*request.sites);
}

// What the log says of the painting: places and numbers of its tests, and where they stand.
void follow_log(const ReadingLog& log, const Plan& plan, const Catalogue& catalogue, SheetInputs& inputs) {
  inputs.sites = sites_of(tests_in(log.lines));
  inputs.tests_so_far = log.highest_test;
  Progress progress = follow_readings(plan, catalogue, log.lines);
  std::vector<TestAhead> ahead = tests_ahead(plan, progress, catalogue);
  show_results(inputs.sites, progress.conduct);
  inputs.followed = FollowedTests{std::move(progress), std::move(ahead)};
}

}  // namespace

Answer command_sheet(const Request& request, Session& session) {
  SheetInputs inputs;
  UsageFaults faults;
  faults.hear([&] { expect_picture(request, "HTML"); });
  faults.hear([&] { inputs.paper = asked_paper(request); });
  faults.hear([&] { take_sites(request, inputs); });
  faults.tell();
  std::optional<ReadingLog> log;
  if (request.log) log = load_log(*request.log, request, session, MissingLog::is_fault);
  inputs.background = background_of(request);
  inputs.options = options_used(request);
  const Catalogue& catalogue = load_catalogue(request);
  inputs.edition = edition_of(catalogue);
  const JobText source = read_job_text(request.words.front(), session);
  inputs.job_file = request.words.front();
  inputs.job_text = source.text;
  inputs.full = request.full;
  const Job job = load_asked_job(source, request, catalogue, session);
  const Plan plan = plan_asked_job(job, catalogue, request, session);
  // What forbids any test forbids it on paper as well, as after a stop by the swabs.
  if (forbids_tests(plan) && !log) log.emplace();
  Bench bench = prepare_bench(plan, catalogue);
  bench.published = compare_published(plan, catalogue);
  if (log) {
    follow_log(*log, plan, catalogue, inputs);
    bench.totals.clear();  // nobody makes a vial of every rung any more
  }
  return {bench_sheet(plan, bench, inputs), log ? exit_of(inputs.followed->progress) : exit_of(plan)};
}

}  // namespace gentlest
