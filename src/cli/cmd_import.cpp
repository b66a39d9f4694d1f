// `gentlest import`: a table that was filled in at the easel.
#include "cli/recording.hpp"
#include "io/reading_table.hpp"
#include "io/table_text.hpp"
#include "report/form/format.hpp"

#include <fmt/format.h>

#include <utility>

namespace gentlest {

namespace {

// What the columns were taken for, where the headings do not say it themselves.
std::string taken_words(const ReadingTable& table, const TableText& read) {
  std::vector<std::string> taken;
  for (const auto& [heading, key] : table.taken) taken.push_back(fmt::format("{} as {}", heading, key));
  std::string text;
  if (!taken.empty()) text += "columns: " + joined(taken) + "\n";
  if (!table.to_remark.empty()) text += "into the remark: " + joined(table.to_remark) + "\n";
  if (table.lines_above > 0)
    text += counted(static_cast<std::size_t>(table.lines_above), "row", "rows") + " above the headings left out\n";
  if (read.converted_lines > 0)
    text += counted(static_cast<std::size_t>(read.converted_lines), "line", "lines") + " read as Windows-1252\n";
  return text;
}

}  // namespace

Answer command_import(const Request& request, Session& session) {
  const std::string& path = request.words[2];
  const TableText text = read_table_file(path);
  Recording recording(request, session);
  ReadingTable table = readings_from_table(text, path, recording.job().grades);
  if (table.readings.empty() && table.refused.empty())
    throw InputError(Fault::file, {{{path, 0, 0}, "the table holds no reading", "", {}}});
  const std::string shown = taken_words(table, text);
  return recording.append(std::move(table), shown);
}

}  // namespace gentlest
