// `gentlest record` and `gentlest import`: what is added to the log of tests.
#include "cli/commands.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/letters.hpp"
#include "gentlest/learning/reading_fields.hpp"
#include "gentlest/liquids/mixture.hpp"
#include "gentlest/liquids/notation.hpp"
#include "gentlest/plan/plan.hpp"
#include "io/files.hpp"
#include "io/reading_log.hpp"
#include "report/form/format.hpp"
#include "report/form/sheet.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

std::vector<std::string> known_keys() {
  std::vector<std::string> keys;
  for (const ReadingField& field : reading_fields()) keys.emplace_back(field.key);
  return keys;
}

// "seconds=20" into the reading; every fault is kept.
void take_word(const std::string& word, TypedReading& typed, std::vector<Diagnostic>& faults) {
  const std::size_t at = word.find('=');
  const std::string key = word.substr(0, at);
  const ReadingField* field = find_field(key);
  const auto complain = [&](std::string message, std::string remedy) {
    faults.push_back({{}, std::move(message), std::move(remedy), {}});
  };
  if (at == std::string::npos || !field) {
    const std::string near = nearest_name(key, known_keys());
    return complain(fmt::format("\"{}\" is no entry of a reading", word),
                    near.empty() ? "write KEY=VALUE; `gentlest help record` lists the keys"
                                 : fmt::format("did you mean \"{}=...\"?", near));
  }
  const std::string value = word.substr(at + 1);
  if (first_stray_byte(value))
    complain(fmt::format("\"{}\" holds bytes that are not UTF-8 text", value), "retype the odd characters");
  else if (std::find(typed.named.begin(), typed.named.end(), key) != typed.named.end())
    complain(fmt::format("\"{}\" stands there twice", key), "give it once");
  else if (!set_field(typed.reading, key, value))
    complain(fmt::format("\"{}\" is not understood for {}", value, key), fmt::format("expected is {}", field->help));
  typed.named.push_back(key);
}

std::vector<std::string> places_of(const Job& job) {
  std::vector<std::string> names;
  for (const Layer& layer : job.layers)
    if (layer.role == Role::keep) names.push_back(layer.name);
  for (const Passage& passage : job.passages) names.push_back(passage.name);
  return names;
}

void expect_name(const std::string& name, const std::vector<std::string>& known, const char* what,
                 std::vector<Diagnostic>& faults) {
  if (name.empty() || std::find(known.begin(), known.end(), name) != known.end()) return;
  const std::string near = nearest_name(name, known);
  faults.push_back({{},
                    fmt::format("the job knows no {} \"{}\"", what, name),
                    near.empty() ? "it knows: " + joined(known) : fmt::format("did you mean \"{}\"?", near),
                    {}});
}

// What the job must know for the reading to teach anything.
void check_against_job(const Reading& reading, const Job& job, const Catalogue& catalogue,
                       std::vector<Diagnostic>& faults) {
  if (reading.withdrawn) return;
  std::vector<std::string> layers;
  for (const Layer& layer : job.layers) layers.push_back(layer.name);
  expect_name(reading.layer, layers, "layer", faults);
  expect_name(reading.passage, places_of(job), "passage", faults);
  try {
    if (!reading.mixture.empty()) parse_mixture(reading.mixture, catalogue, all_liquids(shelf_of(job, catalogue)));
  } catch (const InputError& error) {
    faults.insert(faults.end(), error.faults().begin(), error.faults().end());
  }
}

// What is wrong with readings that were typed, each as it will stand. That a correction names no test is told where the
// log is locked.
void check_as_they_will_stand(const std::vector<TypedReading>& readings, const ReadingLog& log,
                              std::vector<Diagnostic>& faults) {
  for (const TypedReading& typed : readings) {
    const bool is_there = std::any_of(log.lines.begin(), log.lines.end(),
                                      [&](const Reading& line) { return line.test == typed.reading.test; });
    if (!typed.reading.correction.empty() && !is_there) continue;
    for (Diagnostic& fault : check_reading(as_it_will_stand(typed, log.lines))) faults.push_back(std::move(fault));
  }
}

std::string repeated_words(const std::vector<RepeatedRow>& repeated) {
  if (repeated.empty()) return {};
  std::vector<std::string> rows;
  for (const RepeatedRow& row : repeated)
    rows.push_back(fmt::format("line {} says what test {} says", row.where.line, row.test));
  return fmt::format("left out, since the log says it already:\n  {}\n--again adds such rows as tests of their own\n",
                     joined(rows, "\n  "));
}

std::string written_words(const std::vector<Reading>& added) {
  if (added.empty()) return "nothing new was";
  return added.size() == 1 ? fmt::format("test {}", added.front().test) : counted(added.size(), "reading", "readings");
}

std::string withdrawn_words(const std::vector<Reading>& added, const std::vector<TypedReading>& readings) {
  if (added.size() != 1 || readings.size() != 1 || !added.front().withdrawn) return {};
  const std::vector<std::string>& named = readings.front().named;
  if (std::find(named.begin(), named.end(), "withdrawn") != named.end()) return {};
  return fmt::format("test {} stays withdrawn; withdrawn=no counts it again\n", added.front().test);
}

// One row a reading: what was written, and what was left out since the log says it already.
Sheet recorded_sheet(const Addition& addition, const std::string& log) {
  Sheet sheet{"recorded", {}, {}};
  for (const char* key : {"test", "written", "line_of_table", "log"}) sheet.columns.push_back({key, key, -1, true});
  for (const Reading& reading : addition.added)
    sheet.rows.push_back({static_cast<double>(reading.test), true, Cell(), log});
  for (const RepeatedRow& row : addition.repeated)
    sheet.rows.push_back({static_cast<double>(row.test), false, static_cast<double>(row.where.line), log});
  return sheet;
}

Answer append(const Request& request, const std::vector<TypedReading>& readings, Session& session, Fault kind,
              std::vector<Diagnostic> faults) {
  const Catalogue catalogue = load_catalogue(request);
  const Job job = load_asked_job(request.words[0], request, catalogue, session);
  const std::string& path = request.words[1];
  const ReadingLog log = load_log(path, request, session, MissingLog::begins);
  for (const TypedReading& typed : readings) {
    const std::size_t before = faults.size();
    check_against_job(typed.reading, job, catalogue, faults);
    for (std::size_t i = before; i < faults.size(); ++i) faults[i].where = typed.where;
  }
  if (kind == Fault::usage) check_as_they_will_stand(readings, log, faults);
  if (!faults.empty()) throw InputError(kind, std::move(faults));
  const bool may_repeat = kind == Fault::usage || request.again;
  const Addition addition = append_readings(path, readings, may_repeat ? Repeats::add : Repeats::leave_out);
  const std::string what = written_words(addition.added);
  Answer answer;
  if (!addition.added.empty())
    answer.done = fmt::format("{} {} in the log {}", what, addition.added.size() == 1 ? "is" : "are", path);
  if (request.form != Form::text) {
    answer.text = sheet_report(recorded_sheet(addition, path), request.form, {}, edition_of(catalogue));
    return answer;
  }
  std::vector<Reading> lines = log.lines;
  lines.insert(lines.end(), addition.added.begin(), addition.added.end());
  const std::string shown = with_controls_shown(path);
  answer.text =
      fmt::format("{} written to {}{}, which holds {}\n{}{}the next test: gentlest next {} {}\n", what,
                  log.exists ? "" : "the new log ", shown, counted(current_readings(lines).size(), "test", "tests"),
                  withdrawn_words(addition.added, readings), repeated_words(addition.repeated),
                  with_controls_shown(request.words[0]), shown);
  return answer;
}

}  // namespace

Answer command_record(const Request& request, Session& session) {
  TypedReading typed;
  std::vector<Diagnostic> faults;
  for (std::size_t i = 2; i < request.words.size(); ++i) take_word(request.words[i], typed, faults);
  return append(request, {typed}, session, Fault::usage, std::move(faults));
}

Answer command_import(const Request& request, Session& session) {
  const std::string& table = request.words[2];
  const std::vector<TypedReading> readings = readings_from_csv(read_text_file(table), table);
  if (readings.empty()) throw InputError(Fault::file, {{{table, 0, 0}, "the table holds no reading", "", {}}});
  return append(request, readings, session, Fault::file, {});
}

}  // namespace gentlest
