// `gentlest calibrate`: the figures behind solvents/response.yaml and solvents/materials/spreads.yaml.
#include "cli/commands.hpp"
#include "io/score_sets.hpp"
#include "report/screen/calibration_report.hpp"

namespace gentlest {

Answer command_calibrate(const Request& request, Session&) {
  const Catalogue& catalogue = load_catalogue(request);
  const Edition edition = edition_of(catalogue);
  const Calibration figures = calibrate(read_score_sets(request.words.front()));
  if (request.form == Form::csv) return {calibration_csv(figures, edition), 0};
  if (request.form == Form::json) return {calibration_json(figures, edition), 0};
  return {calibration_text(figures), 0};
}

}  // namespace gentlest
