#include "cli/commands.hpp"
#include "report/screen/mixture_report.hpp"

#include <utility>

namespace gentlest {

Answer command_mixture(const Request& request, Session& session) {
  const Catalogue& catalogue = load_catalogue(request);
  Job job = load_asked_job(request.words.front(), request, catalogue, session);
  warn_where_forbidden(job, catalogue, session);
  const Mixture mixture = asked_mixture(request, job, catalogue, session);
  std::vector<PlannedLayer> layers = planned_layers(job, catalogue, request.target.value_or(""));
  JudgedMixture judged = judge_mixture(mixture, layers, job.limits, catalogue);
  const MixtureCase one{std::move(job), std::move(layers), std::move(judged)};
  return {mixture_report(one, request.form, style_of(request, session), edition_of(catalogue)), 0};
}

}  // namespace gentlest
