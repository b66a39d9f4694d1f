#include "cli/commands.hpp"
#include "gentlest/answers/comparison.hpp"
#include "report/screen/comparison_report.hpp"

#include <optional>

namespace gentlest {

Answer command_compare(const Request& request, Session& session) {
  const Catalogue catalogue = load_catalogue(request);
  const Job job = load_asked_job(request.words.front(), request, catalogue, session);
  const Plan plan = plan_asked_job(job, catalogue, request, session);
  std::optional<Plan> best_of_shelf;
  if (!plan.lines.empty() && plan.lines.front().active) {
    Job other = job;
    other.limits.lines = 0;
    best_of_shelf = plan_asked_job(other, catalogue, request, session);
  }
  return {comparison_report(plan, best_of_shelf ? &*best_of_shelf : nullptr, compare_published(plan, catalogue),
                            request.form, style_of(request, session), edition_of(catalogue)),
          exit_of(plan)};
}

}  // namespace gentlest
