// `gentlest readings`: the tests of a log, corrections applied.
#include "cli/commands.hpp"
#include "cli/run.hpp"
#include "report/screen/readings_report.hpp"

namespace gentlest {

Answer command_readings(const Request& request, Session& session) {
  const Catalogue& catalogue = load_catalogue(request);
  const ReadingLog log = load_log(request.words.front(), request, session, MissingLog::is_fault);
  return {readings_report(current_readings(log.lines), request.form, style_of(request, session), edition_of(catalogue)),
          exit_done};
}

}  // namespace gentlest
