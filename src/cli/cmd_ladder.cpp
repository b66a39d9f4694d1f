#include "cli/commands.hpp"
#include "gentlest/answers/bench.hpp"
#include "report/plans/plan_report.hpp"

namespace gentlest {

Answer command_ladder(const Request& request, Session& session) {
  const Catalogue& catalogue = load_catalogue(request);
  const Job job = load_asked_job(request.words.front(), request, catalogue, session);
  if (request.form == Form::csv) warn_where_forbidden(job, catalogue, session);
  const Plan plan = plan_asked_job(job, catalogue, request, session, request.finer);
  const Bench bench = prepare_bench(plan, catalogue);
  const Edition edition = edition_of(catalogue);
  Answer answer;
  answer.exit_code = exit_of(plan);
  switch (request.form) {
    case Form::text:
      answer.text = request.full ? plan_text(plan, bench, style_of(request, session), edition)
                                 : plan_short_text(plan, bench, style_of(request, session), edition);
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
