#include "cli/commands.hpp"
#include "gentlest/answers/vial.hpp"
#include "report/screen/vial_report.hpp"

#include <utility>

namespace gentlest {

Answer command_vial(const Request& request, Session& session) {
  const Catalogue& catalogue = load_catalogue(request);
  Job job = load_asked_job(request.words.front(), request, catalogue, session);
  warn_where_forbidden(job, catalogue, session);
  const Mixture mixture = asked_mixture(request, job, catalogue, session);
  std::vector<PlannedLayer> layers = planned_layers(job, catalogue, request.target.value_or(""));
  VialStudy study = study_vial(mixture, layers, job, catalogue);
  const VialCase one{std::move(job), std::move(layers), std::move(study)};
  if (request.form == Form::text && !request.full)
    return {vial_short_text(one, style_of(request, session), edition_of(catalogue)), 0};
  return {vial_report(one, request.form, style_of(request, session), edition_of(catalogue)), 0};
}

}  // namespace gentlest
