#include "cli/commands.hpp"
#include "gentlest/answers/vial.hpp"
#include "report/screen/vial_report.hpp"

#include <utility>

namespace gentlest {

Answer command_vial(const Request& request, Session& session) {
  const Catalogue catalogue = load_catalogue(request);
  AskedMixture asked = load_asked_mixture(request, catalogue, session);
  VialStudy study = study_vial(asked.mixture, asked.layers, asked.job, catalogue);
  const VialCase one{std::move(asked.job), std::move(asked.layers), std::move(study)};
  return {vial_report(one, request.form, style_of(request, session), edition_of(catalogue)), 0};
}

}  // namespace gentlest
