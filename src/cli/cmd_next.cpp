// `gentlest next`: what the tests taught, and the next one.
#include "cli/commands.hpp"
#include "cli/run.hpp"
#include "gentlest/answers/progress.hpp"
#include "gentlest/base/letters.hpp"
#include "io/reading_log.hpp"
#include "report/screen/progress_report.hpp"

#include <fmt/format.h>

#include <ostream>

namespace gentlest {

Answer command_next(const Request& request, Session& session) {
  const Catalogue catalogue = load_catalogue(request);
  const Job job = load_asked_job(request.words[0], request, catalogue, session);
  const ReadingLog log = load_log(request.words[1], request, session, MissingLog::begins);
  if (!log.exists)
    session.err << with_controls_shown(fmt::format("there is no log {} yet: no test is counted", request.words[1]))
                << "\n";
  const Progress progress = follow_readings(job, catalogue, log.lines, request.target.value_or(""));
  std::optional<RungRoom> room;
  if (progress.next.worked) {
    const Hansen& point = progress.task.past[*progress.next.worked].mixture.point;
    room = room_above(point, plan_asked_job(job, catalogue, request, session), progress);
  }
  const NextStep step = progress.next.step;
  const bool is_dead_end = step == NextStep::no_window || step == NextStep::closed || step == NextStep::tests_used_up ||
                           step == NextStep::not_judged;
  return {progress_report(progress, room, request.form, style_of(request, session), edition_of(catalogue)),
          is_dead_end ? exit_no_window : exit_done};
}

}  // namespace gentlest
