#include "cli/commands.hpp"
#include "gentlest/mixture.hpp"
#include "gentlest/vial.hpp"
#include "report/format.hpp"
#include "report/mixture_report.hpp"

namespace gentlest {

Answer command_mixture(const Request& request, Session& session) {
  const Catalogue catalogue = load_catalogue(request);
  Job job = load_asked_job(request.words.front(), request, catalogue, session);
  // Whoever forgets the quotes means the same.
  const std::string text = joined({request.words.begin() + 1, request.words.end()}, " ");
  const Mixture mixture = parse_mixture(text, catalogue, liquids_on_shelf(job, catalogue));
  std::vector<PlannedLayer> layers = planned_layers(job, catalogue, request.target.value_or(""));
  JudgedMixture judged = judge_mixture(mixture, layers, job.limits, catalogue);
  const MixtureCase one{std::move(job), std::move(layers), std::move(judged)};
  return {mixture_report(one, request.form, {session.surroundings.bold && !request.output},
                         {program_version(), catalogue.version()}),
          0};
}

}  // namespace gentlest
