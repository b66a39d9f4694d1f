#include "cli/commands.hpp"
#include "cli/run.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "io/catalogue_files.hpp"
#include "io/job_file.hpp"
#include "report/form/format.hpp"
#include "report/form/sheet.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

namespace gentlest {

namespace {

std::vector<Diagnostic> faults_of(const std::string& word, const Catalogue& catalogue, Session& session) {
  std::error_code ignored;
  try {
    if (std::filesystem::is_directory(word, ignored)) {
      read_catalogue(collect_catalogue(word), word);
    } else {
      const JobText job = read_job_text(word, session);
      load_job(job.text, job.file, catalogue);
    }
  } catch (const InputError& fault) {
    return fault.faults();
  }
  return {};
}

Cell place(int number) {
  return number > 0 ? Cell(static_cast<double>(number)) : Cell();
}

Sheet faults_sheet(const std::vector<Diagnostic>& faults) {
  Sheet sheet{"faults", {}, {}};
  for (const char* key : {"file", "line", "column", "message", "remedy"}) sheet.columns.push_back({key, key, -1, true});
  for (const Diagnostic& fault : faults)
    sheet.rows.push_back(
        {fault.where.file, place(fault.where.line), place(fault.where.column), fault.message, fault.remedy});
  return sheet;
}

}  // namespace

Answer command_check(const Request& request, Session& session) {
  const Catalogue& catalogue = load_catalogue(request);
  std::vector<Diagnostic> faults;
  for (const std::string& word : request.words) {
    const std::vector<Diagnostic> more = faults_of(word, catalogue, session);
    faults.insert(faults.end(), more.begin(), more.end());
  }
  // Rows stand in the order of the file, as the text does.
  std::stable_sort(faults.begin(), faults.end(),
                   [](const Diagnostic& a, const Diagnostic& b) { return a.where < b.where; });
  Answer answer{{}, faults.empty() ? exit_done : exit_file};
  if (request.form != Form::text) {
    answer.text = sheet_report(faults_sheet(faults), request.form, {}, edition_of(catalogue));
    return answer;
  }
  if (!faults.empty()) answer.text = render(faults) + "\n";
  answer.text += fmt::format("{} looked at, {}.\n", counted(request.words.size(), "file", "files"),
                             faults.empty() ? "no fault found" : counted(faults.size(), "fault", "faults"));
  return answer;
}

}  // namespace gentlest
