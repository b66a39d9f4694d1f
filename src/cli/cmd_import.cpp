// `gentlest import`: a table that was filled in at the easel.
#include "cli/recording.hpp"
#include "io/files.hpp"
#include "io/reading_table.hpp"
#include "report/form/format.hpp"

#include <fmt/format.h>

namespace gentlest {

namespace {

// What the columns were taken for, where the headings do not say it themselves.
std::string taken_words(const ReadingTable& table) {
  std::vector<std::string> taken;
  for (const auto& [heading, key] : table.taken) taken.push_back(fmt::format("{} as {}", heading, key));
  std::string text;
  if (!taken.empty()) text += "columns: " + joined(taken) + "\n";
  if (!table.to_remark.empty()) text += "into the remark: " + joined(table.to_remark) + "\n";
  return text;
}

}  // namespace

Answer command_import(const Request& request, Session& session) {
  const std::string& path = request.words[2];
  ReadingTable table = readings_from_table(read_text_file(path), path);
  if (table.readings.empty()) throw InputError(Fault::file, {{{path, 0, 0}, "the table holds no reading", "", {}}});
  Recording recording(request, session);
  std::vector<Diagnostic> faults;
  for (TypedReading& typed : table.readings) recording.complete(typed, faults);
  return recording.append(table.readings, Fault::file, std::move(faults), taken_words(table));
}

}  // namespace gentlest
