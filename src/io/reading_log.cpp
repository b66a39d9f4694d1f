#include "io/reading_log.hpp"

#include "gentlest/base/letters.hpp"
#include "gentlest/learning/reading_fields.hpp"

#include "io/file_kinds.hpp"
#include "io/locked_file.hpp"
#include "io/photographs.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <charconv>
#include <filesystem>
#include <set>

namespace gentlest {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::int64_t most_tests = 1'000'000;

const std::string first_line = R"({"gentlest_log":1})";
const std::string place_key = "import";
const std::string photograph_key = "photograph";
const std::string jpeg_key = "jpeg";

Diagnostic fault_at(const std::string& file, int line, std::string message, std::string remedy,
                    std::string_view excerpt) {
  return {{file, line, 0}, std::move(message), std::move(remedy), std::string(excerpt)};
}

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

// Lines without their line breaks, LF or CR LF. The last piece has no line break: empty when the text ends properly.
std::vector<std::string_view> lines_of(std::string_view text) {
  if (text.substr(0, byte_order_mark.size()) == byte_order_mark) text.remove_prefix(byte_order_mark.size());
  std::vector<std::string_view> lines;
  while (true) {
    const std::size_t end = text.find('\n');
    std::string_view line = text.substr(0, end);
    if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
    lines.push_back(line);
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

// "3 of 12": the place of a line among those that were added together.
struct PlaceAmong {
  int number = 0;
  int of = 0;
};

std::optional<PlaceAmong> place_from(const std::string& text) {
  PlaceAmong place;
  const char* end = text.data() + text.size();
  const auto first = std::from_chars(text.data(), end, place.number);
  constexpr std::string_view between = " of ";
  if (first.ec != std::errc() ||
      std::string_view(first.ptr, static_cast<std::size_t>(end - first.ptr)).rfind(between, 0))
    return std::nullopt;
  const auto second = std::from_chars(first.ptr + between.size(), end, place.of);
  if (second.ec != std::errc() || second.ptr != end || place.number < 1 || place.number > place.of) return std::nullopt;
  return place;
}

std::string to_text(const PlaceAmong& place) {
  return fmt::format("{} of {}", place.number, place.of);
}

std::string stands_already(const Reading& reading) {
  if (!is_later_look(reading)) return fmt::format("test {} stands in the log already", reading.test);
  return fmt::format("a look at test {} after {} stands in the log already", reading.test, reading.looked_after);
}

class LogReader {
 public:
  LogReader(std::string_view text, const std::string& file) : file_(file), lines_(lines_of(text)) {}

  ReadingLog run() {
    std::size_t i = skip_first_line();
    for (; i + 1 < lines_.size(); ++i) read_line(lines_[i], static_cast<int>(i) + 1);
    if (i < lines_.size()) read_last_piece(lines_[i], static_cast<int>(i) + 1);
    end_addition();
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
      if (std::any_of(lines_.begin(), lines_.end(), begins_job))
        throw InputError(Fault::file, {fault_at(file_, static_cast<int>(i) + 1, "this is a job, not a log of tests",
                                                "name the log here; it was left untouched", lines_[i])});
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
    const std::string text = with_strays_replaced(line);
    const Json json = Json::parse(text, nullptr, false);
    if (!json.is_object()) return complain(number, "this line cannot be read and is left out", "", line);
    if (json.contains(photograph_key)) return read_photograph(json, number, line);
    note_number(json);
    ReadLine read{{}, number, line, {}, true};
    for (const auto& [key, value] : json.items()) read_key(key, value, read);
    const auto stray = first_stray_byte(line);
    if (stray && read.counts)
      log_.faults.push_back({{file_, number, static_cast<int>(*stray) + 1},
                             "this byte is not UTF-8 and is read as an unknown letter; the line counts",
                             "a correction of the test can write the word anew",
                             std::string(line)});
    gather(std::move(read));
  }

  void read_photograph(const Json& json, int number, std::string_view line) {
    const auto jpeg = json.find(jpeg_key);
    const bool is_text = json.at(photograph_key).is_string() && jpeg != json.end() && jpeg->is_string();
    if (!is_text || !is_base64(jpeg->get<std::string>()))
      return complain(number, "the photograph of this line cannot be read and is left out", "", line);
    log_.photographs.emplace(json.at(photograph_key).get<std::string>(), jpeg->get<std::string>());
  }

  struct ReadLine {
    Reading reading;
    int number = 0;
    std::string_view line;
    std::optional<PlaceAmong> place;
    bool counts = true;  ///< false: told and left out
  };

  void read_key(const std::string& key, const Json& value, ReadLine& read) {
    if (key == place_key && value.is_string()) read.place = place_from(value.get<std::string>());
    if (key == place_key && read.place) return;
    const ReadingField* field = find_field(key);
    if (!field)
      return complain(read.number, fmt::format("key \"{}\" is not known; the rest of the line counts", key), "",
                      read.line);
    const std::optional<std::string> text = value_text(value, field->kind);
    if (!read.counts || (text && set_field(read.reading, key, *text))) return;
    read.counts = false;
    complain(read.number, fmt::format("\"{}\" is not understood and the line is left out", key),
             fmt::format("expected is {}", field->help), read.line);
  }

  // Lines that were added together wait for the last of them.
  void gather(ReadLine read) {
    const bool goes_on = read.place && last_.of == read.place->of && read.place->number > last_.number;
    if (!goes_on) end_addition();
    if (!read.place) return keep(read);
    last_ = *read.place;
    waiting_.push_back(std::move(read));
    if (last_.number < last_.of) return;
    for (const ReadLine& one : waiting_) keep(one);
    waiting_.clear();
    last_ = {};
  }

  // Whatever still waits has no end.
  void end_addition() {
    if (!waiting_.empty())
      complain(waiting_.front().number,
               fmt::format("an import of {} readings was cut off here; none of it counts", last_.of),
               "import the table again", waiting_.front().line);
    waiting_.clear();
    last_ = {};
  }

  // Of faulty lines too: their number must not be given out again.
  void note_number(const Json& json) {
    const auto test = json.find("test");
    if (test == json.end() || !test->is_number_integer()) return;
    const auto value = test->get<std::int64_t>();
    if (value > log_.highest_test && value <= most_tests) log_.highest_test = static_cast<int>(value);
  }

  void keep(const ReadLine& read) {
    if (!read.counts) return;
    const Reading& reading = read.reading;
    std::vector<Diagnostic> faults = check_reading(reading);
    if (reading.test < 1) faults.push_back({{}, "the test has no number", "", {}});
    const bool is_known = line_before(reading, log_.lines) != nullptr;
    if (is_known && reading.correction.empty()) faults.push_back({{}, stands_already(reading), "", {}});
    if (!is_known && !reading.correction.empty())
      faults.push_back({{}, fmt::format("test {} is corrected before it was recorded", reading.test), "", {}});
    if (is_later_look(reading) && tests_.count(reading.test) == 0)
      faults.push_back({{}, fmt::format("test {} is looked at again before it was recorded", reading.test), "", {}});
    for (const Diagnostic& fault : faults)
      complain(read.number, fault.message + "; the line is left out", fault.remedy, read.line);
    if (!faults.empty()) return;
    if (!is_later_look(reading)) tests_.insert(reading.test);
    log_.lines.push_back(reading);
  }

  const std::string& file_;
  std::vector<std::string_view> lines_;
  std::set<int> tests_;
  std::vector<ReadLine> waiting_;
  PlaceAmong last_;
  ReadingLog log_;
};

// The test of the log, or of the readings before it, that says the same already; 0 where none does. A correction says
// the same where a line holds its reason and all that it names.
int test_repeated(const TypedReading& typed, const std::vector<Reading>& lines) {
  for (const Reading& line : lines) {
    Reading other = line;
    if (!typed.reading.correction.empty()) {
      const bool names_the_same = std::all_of(typed.named.begin(), typed.named.end(), [&](const std::string& key) {
        return get_field(line, key) == get_field(typed.reading, key);
      });
      if (names_the_same && line.test == typed.reading.test && line.looked_after == typed.reading.looked_after)
        return line.test;
      continue;
    }
    if (typed.reading.test == 0) other.test = 0;
    if (other == typed.reading) return line.test;
  }
  return 0;
}

// Numbers the readings, sorts out those that repeat one, and finds everything that keeps them from being written.
class Preparation {
 public:
  Preparation(const ReadingLog& log, const std::string& path, Repeats repeats, FaultyRows faulty)
      : path_(path), repeats_(repeats), faulty_(faulty), lines_(log.lines), next_(log.highest_test) {
    for (const Reading& line : log.lines)
      if (!is_later_look(line)) taken_.insert(line.test);
  }

  Addition run(const std::vector<TypedReading>& readings) {
    for (const TypedReading& typed : readings) next_ = std::max(next_, typed.reading.test);
    for (const TypedReading& typed : readings) take(typed);
    if (!faults_.empty() && faulty_ == FaultyRows::refuse_all) throw InputError(Fault::file, std::move(faults_));
    addition_.refused = std::move(faults_);
    return std::move(addition_);
  }

 private:
  void complain(const TypedReading& typed, std::string message, std::string remedy) {
    const Location where = typed.where.file.empty() ? Location{path_, 0, 0} : typed.where;
    faults_.push_back({where, std::move(message), std::move(remedy), {}});
  }

  void take(const TypedReading& typed) {
    const int repeated = repeats_ == Repeats::leave_out ? test_repeated(typed, lines_) : 0;
    if (repeated > 0) return addition_.repeated.push_back({typed.where, repeated});
    const std::size_t faults_before = faults_.size();
    Reading reading = as_it_will_stand(typed, lines_);
    const bool corrects = !reading.correction.empty();
    const bool is_taken = line_before(reading, lines_) != nullptr;
    if (corrects && !is_taken)
      return complain(typed,
                      is_later_look(reading) ? fmt::format("there is no look at test {} after {} to correct",
                                                           reading.test, reading.looked_after)
                                             : fmt::format("there is no test {} to correct", reading.test),
                      "");
    for (const Diagnostic& fault : check_reading(reading)) complain(typed, fault.message, fault.remedy);
    if (is_later_look(reading) && reading.test > 0 && taken_.count(reading.test) == 0)
      complain(typed, fmt::format("there is no test {} to look at again", reading.test),
               "record the test first, without looked_after");
    if (!corrects && reading.test > 0 && is_taken)
      complain(typed, stands_already(reading), "leave the number out, or give a correction with its reason");
    if (faulty_ == FaultyRows::leave_out && faults_.size() > faults_before) return;
    if (reading.test == 0) reading.test = ++next_;
    if (!is_later_look(reading)) taken_.insert(reading.test);
    lines_.push_back(reading);
    addition_.added.push_back(std::move(reading));
    addition_.added_from.push_back(typed.where);
  }

  const std::string& path_;
  Repeats repeats_;
  FaultyRows faulty_;
  std::vector<Reading> lines_;
  std::set<int> taken_;
  int next_ = 0;
  Addition addition_;
  std::vector<Diagnostic> faults_;
};

// The lines of the photographs that the readings name and the log does not hold.
std::vector<std::string> photograph_lines(const std::vector<Reading>& readings, const ReadingLog& log,
                                          const std::string& path) {
  const std::filesystem::path folder = std::filesystem::path(path).parent_path();
  std::vector<std::string> lines;
  std::set<std::string> seen;
  const auto keep = [&](const std::string& name) {
    const std::filesystem::path file = folder / name;
    const auto kept = log.photographs.find(name);
    std::error_code ignored;
    if (is_photograph_number(name) || !seen.insert(name).second) return;
    if (kept != log.photographs.end() && !std::filesystem::exists(file, ignored)) return;
    const std::string jpeg = base64(read_photograph(file.string()));
    if (kept == log.photographs.end())
      lines.push_back(Json{{photograph_key, name}, {jpeg_key, jpeg}}.dump());
    else if (kept->second != jpeg)
      throw InputError(Fault::file, {{{path, 0, 0},
                                      fmt::format("the log keeps another photograph called \"{}\"", name),
                                      "give the new one another name",
                                      {}}});
  };
  for (const Reading& reading : readings)
    for (const std::string& names : {reading.photo_before, reading.photo})
      for (const std::string& name : photograph_names(names)) keep(name);
  return lines;
}

// What is written, with the line breaks that the log has.
std::string text_to_add(const std::string& text, const std::vector<Reading>& readings,
                        const std::vector<std::string>& photographs) {
  const std::size_t first_end = text.find('\n');
  const bool has_returns = first_end != std::string::npos && first_end > 0 && text[first_end - 1] == '\r';
  const std::string end = has_returns ? "\r\n" : "\n";
  std::string added;
  if (!text.empty() && text.back() != '\n') added += end;  // ends a line that was cut off
  // Until a whole first line stands there, nothing else does.
  const std::vector<std::string_view> lines = lines_of(text);
  const bool is_whole = std::find(lines.begin(), lines.end() - 1, first_line) != lines.end() - 1;
  if (!is_whole && !(lines.size() == 1 && lines.front() == first_line)) added += first_line + end;
  for (const std::string& line : photographs) added += line + end;
  for (std::size_t i = 0; i < readings.size(); ++i)
    added += to_log_line(readings[i], readings.size() < 2 ? std::string()
                                                          : to_text(PlaceAmong{static_cast<int>(i) + 1,
                                                                               static_cast<int>(readings.size())})) +
             end;
  return added;
}

}  // namespace

ReadingLog parse_log(std::string_view text, const std::string& file) {
  if (text.empty()) return {};
  return LogReader(text, file).run();
}

ReadingLog read_log(const std::string& path) {
  const std::optional<std::string> text = read_shared(path);
  ReadingLog log = parse_log(text.value_or(""), path);
  log.exists = text.has_value();
  return log;
}

std::string read_log_text(const std::string& path) {
  return with_strays_replaced(read_shared(path).value_or(""));
}

std::string to_log_line(const Reading& reading, const std::string& place) {
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
  if (!place.empty()) json[place_key] = place;
  try {
    return json.dump();
  } catch (const Json::exception&) {
    throw InputError(Fault::file, "the reading holds bytes that are not UTF-8 text", "retype the odd characters");
  }
}

std::string without_pictures(const std::string& log_text) {
  const std::string begins = "{\"" + photograph_key + "\":";
  const std::string picture = "\"" + jpeg_key + "\":\"";
  std::string shown;
  for (const std::string_view line : lines_of(log_text)) {
    const std::size_t at = line.rfind(begins, 0) == 0 ? line.find(picture) : std::string_view::npos;
    if (!shown.empty()) shown += "\n";
    if (at == std::string_view::npos) {
      shown += line;
      continue;
    }
    const std::size_t bytes = (line.size() - at - picture.size()) / 4 * 3;
    shown += fmt::format("{}{}(a picture of {} kB)\"}}", line.substr(0, at), picture, bytes / 1000 + 1);
  }
  return shown;
}

Addition append_readings(const std::string& path, const std::vector<TypedReading>& readings, Repeats repeats,
                         Photographs photographs, FaultyRows faulty) {
  LockedFile file(path);
  const std::string text = file.text();
  const ReadingLog log = parse_log(text, path);
  Addition addition = Preparation(log, path, repeats, faulty).run(readings);
  std::vector<std::string> kept;
  if (photographs == Photographs::go_into_the_log) kept = photograph_lines(addition.added, log, path);
  if (!addition.added.empty()) file.append(text_to_add(text, addition.added, kept));
  return addition;
}

Addition addition_to(const ReadingLog& log, const std::string& path, const std::vector<TypedReading>& readings,
                     Repeats repeats) {
  return Preparation(log, path, repeats, FaultyRows::leave_out).run(readings);
}

std::vector<Reading> append_readings(const std::string& path, const std::vector<Reading>& readings) {
  std::vector<std::string> all_keys;
  for (const ReadingField& field : reading_fields()) all_keys.emplace_back(field.key);
  std::vector<TypedReading> typed;
  for (const Reading& reading : readings) typed.push_back({reading, all_keys});
  return append_readings(path, typed, Repeats::add).added;
}

}  // namespace gentlest
