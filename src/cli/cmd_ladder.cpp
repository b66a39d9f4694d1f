#include "cli/commands.hpp"
#include "cli/progress.hpp"
#include "cli/run.hpp"
#include "cli/threads.hpp"
#include "gentlest/bench.hpp"
#include "report/plan_report.hpp"

namespace gentlest {

Answer command_ladder(const Request& request, Session& session) {
  const Catalogue catalogue = load_catalogue(request);
  const Job job = load_asked_job(request.words.front(), request, catalogue, session);
  ProgressLine progress(session, request.quiet);
  const Plan plan =
      make_plan(job, catalogue, request.target.value_or(""), progress.callback(), on_threads(), {request.finer, false});
  const Bench bench = prepare_bench(plan, catalogue);
  const Edition edition{program_version(), catalogue.version()};
  Answer answer;
  answer.exit_code = plan.outcome == Outcome::window ? exit_done : exit_no_window;
  switch (request.form) {
    case Form::text:
      answer.text = plan_text(plan, bench, {session.surroundings.bold && !request.output}, edition);
      break;
    case Form::csv:
      answer.text = plan_csv(plan, edition);
      break;
    case Form::json:
      answer.text = plan_json(plan, bench, edition);
      break;
  }
  return answer;
}

}  // namespace gentlest
