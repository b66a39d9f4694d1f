// `gentlest share`: what was seen, without names.
#include "cli/commands.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "io/job_file.hpp"
#include "io/studio_folder.hpp"
#include "report/form/format.hpp"
#include "report/screen/studio_report.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <ostream>

namespace gentlest {

namespace {

// The painting of one job, or those of a folder that are the studio's own: what others shared is theirs to hand on.
std::vector<StudioPainting> own_paintings(const Request& request, const Catalogue& catalogue, Session& session) {
  const std::string& name = request.words.front();
  std::error_code error;
  if (std::filesystem::is_directory(name, error)) {
    if (request.words.size() > 1)
      throw InputError(Fault::usage, "a folder has its logs beside its jobs", "leave the log out");
    StudioFolder folder = read_studio_folder(name, catalogue);
    session.err << render(folder.left_out, folder.left_out.size());
    std::vector<StudioPainting> own;
    for (StudioPainting& painting : folder.paintings)
      if (painting.source.empty()) own.push_back(std::move(painting));
    return own;
  }
  const std::string log = request.words.size() > 1 ? request.words[1] : log_beside(name);
  if (log.empty())
    throw InputError(Fault::file, {{{name, 0, 0}, "no log stands beside this job", "name it behind the job", {}}});
  load_log(log, request, session, MissingLog::is_fault);
  return {read_studio_painting(name, log, catalogue)};
}

}  // namespace

Answer command_share(const Request& request, Session& session) {
  const Catalogue& catalogue = load_catalogue(request);
  std::vector<SharedTest> tests;
  int left_out = 0;
  int number = 0;
  for (const StudioPainting& painting : own_paintings(request, catalogue, session))
    for (SharedTest& test : shared_tests(painting, ++number, catalogue, left_out)) tests.push_back(std::move(test));
  if (left_out > 0)
    session.err << counted(static_cast<std::size_t>(left_out), "test", "tests")
                << " left out: what was on the swab cannot be read as liquids of the catalogue\n";
  if (tests.empty())
    throw InputError(Fault::file, {{{request.words.front(), 0, 0}, "there is no test to share", "", {}}});
  return {shared_csv(tests, edition_of(catalogue)), 0};
}

}  // namespace gentlest
