#include "cli/commands.hpp"
#include "gentlest/vial.hpp"
#include "report/format.hpp"
#include "report/vial_report.hpp"

namespace gentlest {

Answer command_vial(const Request& request, Session& session) {
  const Catalogue catalogue = load_catalogue(request);
  Job job = load_asked_job(request.words.front(), request, catalogue, session);
  // Whoever forgets the quotes means the same.
  const std::string text = joined({request.words.begin() + 1, request.words.end()}, " ");
  const Mixture mixture = parse_mixture(text, catalogue, liquids_on_shelf(job, catalogue));
  std::vector<PlannedLayer> layers = planned_layers(job, catalogue, request.target.value_or(""));
  VialStudy study = study_vial(mixture, layers, job, catalogue);
  const VialCase one{std::move(job), std::move(layers), std::move(study)};
  return {vial_report(one, request.form, {session.surroundings.bold && !request.output},
                      {program_version(), catalogue.version()}),
          0};
}

}  // namespace gentlest
