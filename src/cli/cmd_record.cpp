// `gentlest record` and `gentlest import`: what is added to the log of tests.
#include "cli/commands.hpp"
#include "gentlest/diagnostic.hpp"
#include "gentlest/mixture.hpp"
#include "gentlest/plan.hpp"
#include "io/files.hpp"
#include "io/reading_fields.hpp"
#include "io/reading_log.hpp"
#include "report/format.hpp"

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
void take_word(const std::string& word, Reading& reading, std::vector<Diagnostic>& faults) {
  const std::size_t at = word.find('=');
  const std::string key = word.substr(0, at);
  const ReadingField* field = find_field(key);
  if (at == std::string::npos || !field) {
    const std::string near = nearest_name(key, known_keys());
    faults.push_back({{},
                      fmt::format("\"{}\" is no entry of a reading", word),
                      near.empty() ? "write KEY=VALUE; `gentlest help record` lists the keys"
                                   : fmt::format("did you mean \"{}=...\"?", near),
                      {}});
  } else if (!set_field(reading, key, word.substr(at + 1))) {
    faults.push_back({{},
                      fmt::format("\"{}\" is not understood for {}", word.substr(at + 1), key),
                      fmt::format("expected is {}", field->help),
                      {}});
  }
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

Answer append(const Request& request, std::vector<Reading> readings, Session& session, Fault kind,
              std::vector<Diagnostic> faults) {
  const Catalogue catalogue = load_catalogue(request);
  const Job job = load_asked_job(request.words[0], request, catalogue, session);
  for (const Reading& reading : readings) check_against_job(reading, job, catalogue, faults);
  for (const Reading& reading : readings)
    if (kind == Fault::usage)
      for (Diagnostic& fault : check_reading(reading)) faults.push_back(std::move(fault));
  if (!faults.empty()) throw InputError(kind, std::move(faults));
  const std::string& log = request.words[1];
  const std::vector<Reading> added = append_readings(log, std::move(readings));
  const std::size_t count = current_readings(read_log(log).lines).size();
  const std::string what =
      added.size() == 1 ? fmt::format("test {}", added.front().test) : counted(added.size(), "reading", "readings");
  return {fmt::format("{} written to {}, which holds {}\nthe next test: gentlest next {} {}\n", what, log,
                      counted(count, "test", "tests"), request.words[0], log),
          0};
}

}  // namespace

Answer command_record(const Request& request, Session& session) {
  Reading reading;
  std::vector<Diagnostic> faults;
  for (std::size_t i = 2; i < request.words.size(); ++i) take_word(request.words[i], reading, faults);
  return append(request, {reading}, session, Fault::usage, std::move(faults));
}

Answer command_import(const Request& request, Session& session) {
  const std::string& table = request.words[2];
  std::vector<Reading> readings = readings_from_csv(read_text_file(table), table);
  if (readings.empty()) throw InputError(Fault::file, {{{table, 0, 0}, "the table holds no reading", "", {}}});
  return append(request, std::move(readings), session, Fault::file, {});
}

}  // namespace gentlest
