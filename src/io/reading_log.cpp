#include "io/reading_log.hpp"

#include "io/csv.hpp"
#include "io/locked_file.hpp"
#include "io/reading_fields.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <set>

namespace gentlest {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::int64_t most_tests = 1'000'000;

const std::string first_line = R"({"gentlest_log":1})";

Diagnostic fault_at(const std::string& file, int line, std::string message, std::string remedy,
                    std::string_view excerpt) {
  return {{file, line, 0}, std::move(message), std::move(remedy), std::string(excerpt)};
}

// Lines without their line breaks. The last piece has no line break: empty when the text ends properly.
std::vector<std::string_view> lines_of(std::string_view text) {
  std::vector<std::string_view> lines;
  while (true) {
    const std::size_t end = text.find('\n');
    lines.push_back(text.substr(0, end));
    if (end == std::string_view::npos) return lines;
    text.remove_prefix(end + 1);
  }
}

// A kill while the very first line was being written leaves a beginning of it.
bool is_cut_first_line(std::string_view line) {
  return line.size() < first_line.size() && first_line.compare(0, line.size(), line) == 0;
}

// Text of a JSON value as set_field wants it; nothing when the type is not what the field holds.
std::optional<std::string> value_text(const Json& value, FieldKind kind) {
  switch (kind) {
    case FieldKind::whole:
      if (!value.is_number_integer()) return std::nullopt;
      return value.dump();
    case FieldKind::number:
      if (!value.is_number()) return std::nullopt;
      return value.dump();
    case FieldKind::truth:
      if (!value.is_boolean()) return std::nullopt;
      return value.get<bool>() ? "yes" : "no";
    default:
      if (!value.is_string()) return std::nullopt;
      return value.get<std::string>();
  }
}

class LogReader {
 public:
  LogReader(std::string_view text, const std::string& file) : file_(file), lines_(lines_of(text)) {}

  ReadingLog run() {
    std::size_t i = skip_first_line();
    for (; i + 1 < lines_.size(); ++i) read_line(lines_[i], static_cast<int>(i) + 1);
    if (i < lines_.size()) read_last_piece(lines_[i], static_cast<int>(i) + 1);
    return std::move(log_);
  }

 private:
  // The line after the version, having passed over beginnings of it.
  std::size_t skip_first_line() {
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (lines_[i] == first_line && i + 1 < lines_.size()) return i + 1;
      if (i + 1 == lines_.size() && (lines_[i] == first_line || is_cut_first_line(lines_[i]))) return lines_.size();
      if (!lines_[i].empty() && is_cut_first_line(lines_[i])) {
        complain(static_cast<int>(i) + 1, "this line was cut off", "", lines_[i]);
        continue;
      }
      throw InputError(Fault::file, {fault_at(file_, static_cast<int>(i) + 1, "this is no log that this program knows",
                                              "a log begins with " + first_line +
                                                  "; a newer program may have written it. It was left untouched",
                                              lines_[i])});
    }
    return lines_.size();
  }

  void complain(int number, std::string message, std::string remedy, std::string_view line) {
    log_.faults.push_back(fault_at(file_, number, std::move(message), std::move(remedy), line));
  }

  // After the last line break. A whole object only lacks its line break; anything else was cut off.
  void read_last_piece(std::string_view line, int number) {
    if (line.empty() || Json::accept(line.begin(), line.end())) return read_line(line, number);
    complain(number, "the last line was cut off and is left out", "record this test again", line);
  }

  void read_line(std::string_view line, int number) {
    if (line.empty()) return;
    const Json json = Json::parse(line.begin(), line.end(), nullptr, false);
    if (!json.is_object()) return complain(number, "this line cannot be read and is left out", "", line);
    note_number(json);
    Reading reading;
    for (const auto& [key, value] : json.items()) {
      const ReadingField* field = find_field(key);
      if (!field) {
        complain(number, fmt::format("key \"{}\" is not known; the rest of the line counts", key), "", line);
        continue;
      }
      const std::optional<std::string> text = value_text(value, field->kind);
      if (!text || !set_field(reading, key, *text))
        return complain(number, fmt::format("\"{}\" is not understood and the line is left out", key),
                        fmt::format("expected is {}", field->help), line);
    }
    keep(reading, number, line);
  }

  // Of faulty lines too: their number must not be given out again.
  void note_number(const Json& json) {
    const auto test = json.find("test");
    if (test == json.end() || !test->is_number_integer()) return;
    const auto value = test->get<std::int64_t>();
    if (value > log_.highest_test && value <= most_tests) log_.highest_test = static_cast<int>(value);
  }

  void keep(const Reading& reading, int number, std::string_view line) {
    std::vector<Diagnostic> faults = check_reading(reading);
    if (reading.test < 1) faults.push_back({{}, "the test has no number", "", {}});
    const bool is_known = tests_.count(reading.test) > 0;
    if (is_known && reading.correction.empty())
      faults.push_back({{}, fmt::format("test {} stands in the log already", reading.test), "", {}});
    if (!is_known && !reading.correction.empty())
      faults.push_back({{}, fmt::format("test {} is corrected before it was recorded", reading.test), "", {}});
    for (const Diagnostic& fault : faults)
      complain(number, fault.message + "; the line is left out", fault.remedy, line);
    if (!faults.empty()) return;
    tests_.insert(reading.test);
    log_.lines.push_back(reading);
  }

  const std::string& file_;
  std::vector<std::string_view> lines_;
  std::set<int> tests_;
  ReadingLog log_;
};

// Numbers the readings and finds everything that keeps them from being written.
std::vector<Diagnostic> prepare(const ReadingLog& log, std::vector<Reading>& readings, const std::string& path) {
  std::vector<Diagnostic> faults;
  std::set<int> taken;
  for (const Reading& line : log.lines) taken.insert(line.test);
  int next = log.highest_test;
  for (const Reading& reading : readings) next = std::max(next, reading.test);
  for (Reading& reading : readings) {
    for (Diagnostic& fault : check_reading(reading)) faults.push_back(std::move(fault));
    const bool corrects = !reading.correction.empty();
    if (corrects && taken.count(reading.test) == 0)
      faults.push_back({{path, 0, 0}, fmt::format("there is no test {} to correct", reading.test), "", {}});
    if (!corrects && reading.test > 0 && taken.count(reading.test) > 0)
      faults.push_back({{path, 0, 0},
                        fmt::format("test {} stands in the log already", reading.test),
                        "leave the number out, or give a correction with its reason",
                        {}});
    if (reading.test == 0) reading.test = ++next;
    taken.insert(reading.test);
  }
  return faults;
}

// The same for a table: places are known there.
void read_cell(const CsvCell& cell, const std::string& key, const std::string& file, Reading& reading,
               std::vector<Diagnostic>& faults) {
  if (cell.text.empty() || set_field(reading, key, cell.text)) return;
  faults.push_back({{file, cell.line, cell.column},
                    fmt::format("\"{}\" is not understood under \"{}\"", cell.text, key),
                    fmt::format("expected is {}", find_field(key)->help),
                    {}});
}

std::vector<std::string> read_header(const std::vector<CsvCell>& row, const std::string& file,
                                     std::vector<Diagnostic>& faults) {
  std::vector<std::string> known;
  for (const ReadingField& field : reading_fields()) known.emplace_back(field.key);
  std::vector<std::string> keys;
  for (const CsvCell& cell : row) {
    if (!find_field(cell.text)) {
      const std::string near = nearest_name(cell.text, known);
      faults.push_back(
          {{file, cell.line, cell.column},
           fmt::format("no column \"{}\" is known", cell.text),
           near.empty() ? "the columns are named as the keys of the log" : "did you mean \"" + near + "\"?",
           {}});
    } else if (std::find(keys.begin(), keys.end(), cell.text) != keys.end()) {
      faults.push_back(
          {{file, cell.line, cell.column}, fmt::format("column \"{}\" stands there twice", cell.text), "", {}});
    }
    keys.push_back(cell.text);
  }
  return keys;
}

}  // namespace

ReadingLog parse_log(std::string_view text, const std::string& file) {
  if (text.empty()) return {};
  return LogReader(text, file).run();
}

ReadingLog read_log(const std::string& path) {
  return parse_log(read_shared(path), path);
}

std::string to_log_line(const Reading& reading) {
  Json json = Json::object();
  for (const ReadingField& field : reading_fields()) {
    const std::string text = get_field(reading, field.key);
    if (text.empty()) continue;
    const std::string key(field.key);
    if (field.kind == FieldKind::text)
      json[key] = text;
    else if (field.kind == FieldKind::truth)
      json[key] = true;
    else
      json[key] = Json::parse(text);
  }
  try {
    return json.dump();
  } catch (const Json::exception&) {
    throw InputError(Fault::file, "the reading holds bytes that are not UTF-8 text", "retype the odd characters");
  }
}

std::vector<Reading> append_readings(const std::string& path, std::vector<Reading> readings) {
  LockedFile file(path);
  const std::string text = file.text();
  const ReadingLog log = parse_log(text, path);
  std::vector<Diagnostic> faults = prepare(log, readings, path);
  if (!faults.empty()) throw InputError(Fault::file, std::move(faults));
  std::string added;
  if (!text.empty() && text.back() != '\n') added += '\n';  // ends a line that was cut off
  // Until a whole first line stands there, nothing else does.
  if (text.find(first_line + '\n') == std::string::npos && text != first_line) added += first_line + '\n';
  for (const Reading& reading : readings) added += to_log_line(reading) + '\n';
  file.append(added);
  return readings;
}

std::vector<Reading> readings_from_csv(std::string_view text, const std::string& file) {
  CsvTable table = parse_csv(text, file);
  std::vector<Diagnostic> faults = std::move(table.faults);
  std::vector<Reading> readings;
  if (table.rows.empty())
    faults.push_back({{file, 1, 1}, "the table is empty", "its first line names the columns", {}});
  const std::vector<std::string> keys =
      table.rows.empty() ? std::vector<std::string>{} : read_header(table.rows.front(), file, faults);
  const bool is_readable = faults.empty();
  for (std::size_t i = 1; is_readable && i < table.rows.size(); ++i) {
    const std::vector<CsvCell>& row = table.rows[i];
    const std::size_t faults_before = faults.size();
    if (row.size() > keys.size())
      faults.push_back({{file, row[keys.size()].line, row[keys.size()].column},
                        "there are more cells than columns",
                        "put a cell with a comma in it in \"quotes\"",
                        {}});
    Reading reading;
    for (std::size_t k = 0; k < std::min(row.size(), keys.size()); ++k)
      read_cell(row[k], keys[k], file, reading, faults);
    if (faults.size() == faults_before)
      for (Diagnostic& fault : check_reading(reading)) {
        fault.where = {file, row.front().line, 0};
        faults.push_back(std::move(fault));
      }
    readings.push_back(std::move(reading));
  }
  if (!faults.empty()) throw InputError(Fault::file, std::move(faults));
  return readings;
}

}  // namespace gentlest
