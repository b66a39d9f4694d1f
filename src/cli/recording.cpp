#include "cli/recording.hpp"

#include "cli/run.hpp"

#include "gentlest/base/letters.hpp"
#include "gentlest/liquids/notation.hpp"
#include "gentlest/noted/fields.hpp"
#include "report/form/format.hpp"
#include "report/form/sheet.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <ostream>
#include <set>
#include <utility>

namespace gentlest {

namespace {

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
  if (added.size() == 1 && is_later_look(added.front()))
    return fmt::format("a look at test {} after {}", added.front().test, added.front().looked_after);
  return added.size() == 1 ? fmt::format("test {}", added.front().test) : counted(added.size(), "reading", "readings");
}

std::string withdrawn_words(const std::vector<Reading>& added, const std::vector<TypedReading>& readings) {
  if (added.size() != 1 || readings.size() != 1 || !added.front().withdrawn) return {};
  if (is_named(readings.front(), "withdrawn")) return {};
  return fmt::format("test {} stays withdrawn; withdrawn=no counts it again\n", added.front().test);
}

// One row a reading: what was written or would be, what was left out since the log says it already, and what was not
// understood.
Sheet recorded_sheet(const Addition& addition, const std::string& log, bool is_written) {
  Sheet sheet{"recorded", {}, {}};
  for (const char* key : {"test", "written", "line_of_table", "log", "why_not"})
    sheet.columns.push_back({key, key, -1, true});
  for (const Reading& reading : addition.added)
    sheet.rows.push_back(
        {static_cast<double>(reading.test), is_written, Cell(), log, is_written ? Cell() : Cell("dry run")});
  for (const RepeatedRow& row : addition.repeated)
    sheet.rows.push_back(
        {static_cast<double>(row.test), false, static_cast<double>(row.where.line), log, "in the log already"});
  for (const Diagnostic& fault : addition.refused)
    sheet.rows.push_back({Cell(), false, static_cast<double>(fault.where.line), log, fault.message});
  return sheet;
}

// "line 4: test 3, acetone 100; 1987; partly removed; original nothing seen".
std::string row_words(const Reading& reading, const Location& where) {
  std::vector<std::string> pieces = {reading.mixture.empty() ? "a later look" : reading.mixture};
  if (!reading.date.empty()) pieces.push_back(reading.date);
  if (!reading.passage.empty()) pieces.push_back(reading.passage);
  if (reading.removal) pieces.emplace_back(to_word(*reading.removal));
  if (reading.original) pieces.push_back("original: " + std::string(to_word(*reading.original)));
  return fmt::format("  line {}: test {}: {}{}\n", where.line, reading.test, with_controls_shown(joined(pieces, "; ")),
                     is_harm(reading) ? " (HARM)" : "");
}

std::size_t rows_of(const std::vector<Diagnostic>& faults) {
  std::set<int> lines;
  for (const Diagnostic& fault : faults) lines.insert(fault.where.line);
  return lines.size();
}

std::string dry_run_words(const Addition& addition, const std::string& log) {
  std::string text = "a dry run: nothing was written\n";
  std::map<int, std::string> rows;
  for (std::size_t i = 0; i < addition.added.size(); ++i)
    rows[addition.added_from[i].line] += row_words(addition.added[i], addition.added_from[i]);
  for (const RepeatedRow& row : addition.repeated)
    rows[row.where.line] += fmt::format("  line {}: left out, test {} says it already\n", row.where.line, row.test);
  for (const Diagnostic& fault : addition.refused)
    rows[fault.where.line] +=
        fmt::format("  line {}: not understood: {}\n", fault.where.line, with_controls_shown(fault.message));
  for (const auto& [line, words] : rows) text += words;
  return text + fmt::format("{} would be added to {}, {} left out, {} not understood\n",
                            counted(addition.added.size(), "reading", "readings"), log, addition.repeated.size(),
                            rows_of(addition.refused));
}

std::string refused_words(const std::vector<Diagnostic>& refused) {
  if (refused.empty()) return {};
  return fmt::format("not understood and left out: {}; mend them and import the table again\n",
                     counted(rows_of(refused), "row", "rows"));
}

// A place beyond the painting is a slip: x and y changed, or mm for cm. Nothing to hold it to where the job knows no
// size.
void expect_on_painting(const std::optional<Site>& site, const PaintingObject& object,
                        std::vector<Diagnostic>& faults) {
  if (!site) return;
  const auto expect = [&](const char* key, double cm, const std::optional<Centimetres>& size, const char* way,
                          const char* edge) {
    if (!size || (cm >= 0 && cm <= size->value)) return;
    faults.push_back({{},
                      fmt::format("{} {} lies outside the painting, which is {} cm {}", key, as_recorded(cm),
                                  as_recorded(size->value), way),
                      fmt::format("write cm from the {} edge, 0 to {}", edge, as_recorded(size->value)),
                      {}});
  };
  expect("x_cm", site->x.value, object.width, "wide", "left");
  expect("y_cm", site->y.value, object.height, "high", "lower");
}

// A name that no solvent has may be no mixture at all.
void add_unless_mixture(std::vector<Diagnostic>& faults, const std::vector<Diagnostic>& of_mixture) {
  constexpr const char* way_out = "what is no solvent mixture is written \"aqueous: NAME\"";
  for (Diagnostic fault : of_mixture) {
    if (fault.message.rfind("unknown solvent", 0) == 0)
      fault.remedy += (fault.remedy.empty() ? "" : "; ") + std::string(way_out);
    faults.push_back(std::move(fault));
  }
}

Photographs photographs_of(const Request& request) {
  return request.keep_photographs ? Photographs::go_into_the_log : Photographs::stay_beside;
}

}  // namespace

Recording::Recording(const Request& request, Session& session)
    : request_(request),
      session_(session),
      catalogue_(load_catalogue(request)),
      job_(load_asked_job(request.words[0], request, catalogue_, session)),
      shelf_(all_liquids(shelf_of(job_, catalogue_))),
      log_(load_log(request.words[1], request, session, MissingLog::begins)),
      against_{job_, catalogue_, shelf_, log_.lines,
               [this](const TypedStep& step) { return gentlest::mixture_of_step(plan(), step); }} {}

const Plan& Recording::plan() {
  if (!plan_) plan_ = plan_asked_job(job_, catalogue_, request_, session_);
  return *plan_;
}

void Recording::complete(TypedReading& typed, std::vector<Diagnostic>& faults) {
  Reading& reading = typed.reading;
  if (reading.withdrawn) return;
  const std::size_t before = faults.size();
  std::vector<std::string> layers;
  for (const Layer& layer : job_.layers) layers.push_back(layer.name);
  expect_name(reading.layer, layers, "layer", faults);
  const std::vector<std::string> places = places_of(job_);
  if (means_edge(reading.passage) && std::find(places.begin(), places.end(), reading.passage) == places.end()) {
    reading.passage.clear();
    reading.at_edge = true;
    name_key(typed, "at_edge");
  }
  expect_name(reading.passage, places, "passage", faults);
  expect_on_painting(reading.site, job_.object, faults);
  try {
    if (!reading.mixture.empty()) reading.mixture = mixture_in_full(reading.mixture, against_);
  } catch (const InputError& error) {
    add_unless_mixture(faults, error.faults());
  }
  for (std::size_t i = before; i < faults.size(); ++i)
    if (!typed.where.file.empty()) faults[i].where = typed.where;
}

void Recording::expect_sound(const TypedReading& typed, std::vector<Diagnostic>& faults) const {
  if (!typed.reading.correction.empty() && !line_before(typed.reading, log_.lines)) return;
  const Reading reading = as_it_will_stand(typed, log_.lines);
  for (Diagnostic& fault : check_reading(reading)) faults.push_back(std::move(fault));
  for (Diagnostic& fault : denied_harms(reading)) faults.push_back(std::move(fault));
}

Answer Recording::append(const std::vector<TypedReading>& readings, Fault kind, std::vector<Diagnostic> faults,
                         const std::string& shown) {
  const std::string& path = request_.words[1];
  if (!faults.empty()) throw InputError(kind, std::move(faults));
  const bool may_repeat = kind == Fault::usage || request_.again;
  const Addition addition =
      append_readings(path, readings, may_repeat ? Repeats::add : Repeats::leave_out, photographs_of(request_));
  return answer_of(addition, shown, withdrawn_words(addition.added, readings));
}

Answer Recording::append(ReadingTable table, const std::string& shown) {
  const std::string& path = request_.words[1];
  std::vector<TypedReading> sound;
  std::vector<Diagnostic> refused = std::move(table.refused);
  for (TypedReading& typed : table.readings) {
    std::vector<Diagnostic> faults;
    complete(typed, faults);
    if (!faults.empty() && is_harm(typed.reading)) table.refused_harms.push_back(typed.where);
    if (faults.empty()) sound.push_back(std::move(typed));
    refused.insert(refused.end(), faults.begin(), faults.end());
  }
  // A log that lacks a harm would let stronger mixtures be proposed: then nothing comes in.
  if (!table.refused_harms.empty()) {
    for (auto where = table.refused_harms.rbegin(); where != table.refused_harms.rend(); ++where)
      refused.insert(refused.begin(), {*where,
                                       "this row tells of harm to the original and is not understood",
                                       "mend it first: nothing of this table was written",
                                       {}});
    throw InputError(Fault::file, std::move(refused));
  }
  const Repeats repeats = request_.again ? Repeats::add : Repeats::leave_out;
  Addition addition = addition_to(log_, path, sound, repeats);
  const bool any_understood = !addition.added.empty() || !addition.repeated.empty();
  if (any_understood && !request_.dry_run)
    addition = append_readings(path, sound, repeats, photographs_of(request_), FaultyRows::leave_out);
  addition.refused.insert(addition.refused.end(), refused.begin(), refused.end());
  if (!any_understood && !request_.dry_run) throw InputError(Fault::file, std::move(addition.refused));
  if (!addition.refused.empty()) session_.err << render(addition.refused, addition.refused.size());
  Answer answer = answer_of(addition, shown, {});
  if (!addition.refused.empty()) answer.exit_code = exit_file;
  return answer;
}

Answer Recording::answer_of(const Addition& addition, const std::string& shown, const std::string& withdrawn) const {
  const std::string& path = request_.words[1];
  const std::string what = written_words(addition.added);
  Answer answer;
  if (!addition.added.empty() && !request_.dry_run)
    answer.done = fmt::format("{} {} in the log {}", what, addition.added.size() == 1 ? "is" : "are", path);
  if (request_.form != Form::text) {
    answer.text =
        sheet_report(recorded_sheet(addition, path, !request_.dry_run), request_.form, {}, edition_of(catalogue_));
    return answer;
  }
  std::vector<Reading> lines = log_.lines;
  lines.insert(lines.end(), addition.added.begin(), addition.added.end());
  const std::string log_name = with_controls_shown(path);
  if (request_.dry_run) {
    answer.text = shown + dry_run_words(addition, log_name);
    return answer;
  }
  answer.text =
      fmt::format("{}{} written to {}{}, which holds {}\n{}{}{}the next test: gentlest next {} {}\n", shown, what,
                  log_.exists ? "" : "the new log ", log_name, counted(current_readings(lines).size(), "test", "tests"),
                  withdrawn, repeated_words(addition.repeated), refused_words(addition.refused),
                  with_controls_shown(request_.words[0]), log_name);
  return answer;
}

}  // namespace gentlest
