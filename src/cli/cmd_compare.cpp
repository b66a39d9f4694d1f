#include "cli/commands.hpp"
#include "cli/progress.hpp"
#include "cli/run.hpp"
#include "cli/threads.hpp"
#include "gentlest/comparison.hpp"
#include "report/comparison_report.hpp"

namespace gentlest {

Answer command_compare(const Request& request, Session& session) {
  const Catalogue catalogue = load_catalogue(request);
  const Job job = load_asked_job(request.words.front(), request, catalogue, session);
  ProgressLine progress(session, request.quiet);
  PlanWishes wishes;
  wishes.certificates = true;
  const Plan plan = make_plan(job, catalogue, request.target.value_or(""), progress.callback(), on_threads(), wishes);
  return {comparison_report(plan, compare_published(plan, catalogue), request.form,
                            {session.surroundings.bold && !request.output}, {program_version(), catalogue.version()}),
          plan.outcome == Outcome::window ? exit_done : exit_no_window};
}

}  // namespace gentlest
