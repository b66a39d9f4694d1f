#include "cli/commands.hpp"
#include "gentlest/answers/comparison.hpp"
#include "report/phrases/judged.hpp"
#include "report/screen/comparison_report.hpp"

#include <optional>
#include <vector>

namespace gentlest {

namespace {

// Of every bottle by itself; whatever meets on one painting is told together.
std::vector<Caution> cautions_of_bottles(const std::vector<ListedSeries>& all, const Catalogue& catalogue) {
  std::vector<const JudgedMixture*> mixtures;
  for (const ListedSeries& series : all)
    mixtures.insert(mixtures.end(), series.mixtures.begin(), series.mixtures.end());
  std::vector<LabelledMixture> bottles;
  for (const Liquid& liquid : liquids_of(mixtures)) {
    const Mixture alone({{liquid, 1}});
    bottles.push_back({alone, label_of(alone, catalogue)});
  }
  return cautions_for(bottles, catalogue);
}

}  // namespace

Answer command_compare(const Request& request, Session& session) {
  const Catalogue& catalogue = load_catalogue(request);
  const Job job = load_asked_job(request.words.front(), request, catalogue, session);
  warn_where_forbidden(job, catalogue, session);
  const Plan plan = plan_asked_job(job, catalogue, request, session);
  std::optional<Plan> best_of_shelf;
  if (!plan.lines.empty() && plan.lines.front().active) {
    Job other = job;
    other.limits.lines = 0;
    best_of_shelf = plan_asked_job(other, catalogue, request, session);
  }
  const Plan* best = best_of_shelf ? &*best_of_shelf : nullptr;
  const std::vector<ComparedSeries> published = compare_published(plan, catalogue);
  if (request.form == Form::text && !request.full) {
    const std::vector<ListedSeries> all = listed_series(plan, best, published);
    return {comparison_short_text(plan, all, cautions_of_bottles(all, catalogue), style_of(request, session),
                                  edition_of(catalogue)),
            exit_of(plan)};
  }
  return {comparison_report(plan, best, published, request.form, style_of(request, session), edition_of(catalogue)),
          exit_of(plan)};
}

}  // namespace gentlest
