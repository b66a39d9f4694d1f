#include "cli/commands.hpp"
#include "cli/paper.hpp"
#include "cli/run.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "gentlest/examination/examination.hpp"
#include "report/questions/examination_page.hpp"

namespace gentlest {

Answer command_examine(const Request& request, Session& session) {
  const Catalogue& catalogue = load_catalogue(request);
  if (request.html && request.form != Form::text)
    throw InputError(Fault::usage, "--html and --format do not go together", "leave one of them out");
  Job job;
  if (!request.words.empty()) job = load_asked_job(request.words.front(), request, catalogue, session);
  const Examination examination = weigh_examination(job, catalogue);
  const int exit = examination.verdict == ExaminationVerdict::do_not ? exit_no_window : exit_done;
  const std::string& title = job.object.title;
  const Edition edition = edition_of(catalogue);
  if (request.html) return {examination_html(examination, title, catalogue, asked_paper(request), edition), exit};
  switch (request.form) {
    case Form::csv:
      return {examination_csv(examination, catalogue, edition), exit};
    case Form::json:
      return {examination_json(examination, title, catalogue, edition), exit};
    case Form::text:
      break;
  }
  return {examination_text(examination, title, catalogue, request.full, style_of(request, session), edition), exit};
}

}  // namespace gentlest
