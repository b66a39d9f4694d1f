// `gentlest next`: what the tests taught, and the next one.
#include "cli/commands.hpp"
#include "gentlest/answers/progress.hpp"
#include "gentlest/base/letters.hpp"
#include "io/reading_log.hpp"
#include "report/screen/progress_report.hpp"

#include <fmt/format.h>

#include <ostream>

namespace gentlest {

Answer command_next(const Request& request, Session& session) {
  const Catalogue& catalogue = load_catalogue(request);
  const Job job = load_asked_job(request.words[0], request, catalogue, session);
  const ReadingLog log = load_log(request.words[1], request, session, MissingLog::begins);
  if (!log.exists)
    session.err << with_controls_shown(fmt::format("there is no log {} yet: no test is counted", request.words[1]))
                << "\n";
  const Plan plan = plan_asked_job(job, catalogue, request, session);
  const Progress progress = follow_readings(plan, catalogue, log.lines);
  std::optional<RungRoom> room;
  if (progress.next.working) room = room_above(progress.next.working->mixture, plan, progress);
  return {progress_report(plan, progress, room, request.full, request.form, style_of(request, session),
                          edition_of(catalogue)),
          exit_of(progress)};
}

}  // namespace gentlest
