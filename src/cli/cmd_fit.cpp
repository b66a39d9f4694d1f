// `gentlest fit`: a sphere out of one's own solubility tests.
#include "cli/commands.hpp"
#include "cli/run.hpp"
#include "gentlest/fitting/own_fit.hpp"
#include "io/files.hpp"
#include "io/own_tests.hpp"
#include "report/screen/own_fit_report.hpp"

namespace gentlest {

Answer command_fit(const Request& request, Session& session) {
  const Catalogue& catalogue = load_catalogue(request);
  const std::string& table = request.words.front();
  const std::vector<Score> tests = read_own_tests(read_text_file(table), table, catalogue);
  return {own_fit_report(fit_own_sphere(tests, request.good_up_to.value_or(1)), request.form,
                         style_of(request, session), edition_of(catalogue)),
          exit_done};
}

}  // namespace gentlest
