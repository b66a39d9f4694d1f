// `gentlest next` and `gentlest fit`: what tests taught.
#include "cli/commands.hpp"
#include "gentlest/diagnostic.hpp"
#include "gentlest/own_fit.hpp"
#include "gentlest/progress.hpp"
#include "io/files.hpp"
#include "io/own_tests.hpp"
#include "io/reading_log.hpp"
#include "report/progress_report.hpp"

#include <ostream>

namespace gentlest {

Answer command_next(const Request& request, Session& session) {
  const Catalogue catalogue = load_catalogue(request);
  const Job job = load_asked_job(request.words[0], request, catalogue, session);
  const ReadingLog log = read_log(request.words[1]);
  session.err << render(log.faults);
  const Progress progress = follow_readings(job, catalogue, log.lines, request.target.value_or(""));
  const NextStep step = progress.next.step;
  const bool is_dead_end = step == NextStep::no_window || step == NextStep::closed || step == NextStep::tests_used_up;
  return {progress_report(progress, request.form, {session.surroundings.bold && !request.output},
                          {program_version(), catalogue.version()}),
          is_dead_end ? 1 : 0};
}

Answer command_fit(const Request& request, Session& session) {
  const Catalogue catalogue = load_catalogue(request);
  const std::string& table = request.words.front();
  const std::vector<Score> tests = read_own_tests(read_text_file(table), table, catalogue);
  return {own_fit_report(fit_own_sphere(tests, request.good_up_to.value_or(1)), request.form,
                         {session.surroundings.bold && !request.output}, {program_version(), catalogue.version()}),
          0};
}

}  // namespace gentlest
