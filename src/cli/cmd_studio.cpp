// `gentlest studio`: what the finished paintings of a folder taught.
#include "cli/commands.hpp"
#include "cli/run.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "io/studio_folder.hpp"
#include "report/screen/studio_report.hpp"

#include <ostream>

namespace gentlest {

Answer command_studio(const Request& request, Session& session) {
  const Catalogue& catalogue = load_catalogue(request);
  const StudioFolder folder = read_studio_folder(request.words.front(), catalogue);
  session.err << render(folder.left_out, folder.left_out.size());
  const Studio studio = learn_from_paintings(folder.paintings, catalogue);
  const StudioShown shown{folder.paintings, studio, leave_one_out(studio)};
  return {studio_report(shown, request.full, request.form, style_of(request, session), edition_of(catalogue)),
          studio.materials.empty() ? exit_no_window : exit_done};
}

}  // namespace gentlest
