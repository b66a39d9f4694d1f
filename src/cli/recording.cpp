#include "cli/recording.hpp"

#include "gentlest/base/letters.hpp"
#include "gentlest/liquids/notation.hpp"
#include "gentlest/noted/fields.hpp"
#include "report/form/format.hpp"
#include "report/form/sheet.hpp"

#include <fmt/format.h>

#include <algorithm>

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
  expect_name(reading.passage, places_of(job_), "passage", faults);
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
      append_readings(path, readings, may_repeat ? Repeats::add : Repeats::leave_out,
                      request_.keep_photographs ? Photographs::go_into_the_log : Photographs::stay_beside);
  const std::string what = written_words(addition.added);
  Answer answer;
  if (!addition.added.empty())
    answer.done = fmt::format("{} {} in the log {}", what, addition.added.size() == 1 ? "is" : "are", path);
  if (request_.form != Form::text) {
    answer.text = sheet_report(recorded_sheet(addition, path), request_.form, {}, edition_of(catalogue_));
    return answer;
  }
  std::vector<Reading> lines = log_.lines;
  lines.insert(lines.end(), addition.added.begin(), addition.added.end());
  const std::string log_name = with_controls_shown(path);
  answer.text =
      fmt::format("{}{} written to {}{}, which holds {}\n{}{}the next test: gentlest next {} {}\n", shown, what,
                  log_.exists ? "" : "the new log ", log_name, counted(current_readings(lines).size(), "test", "tests"),
                  withdrawn_words(addition.added, readings), repeated_words(addition.repeated),
                  with_controls_shown(request_.words[0]), log_name);
  return answer;
}

}  // namespace gentlest
