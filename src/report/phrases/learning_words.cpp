#include "report/phrases/learning_words.hpp"

#include "gentlest/base/text.hpp"
#include "report/form/format.hpp"
#include "report/phrases/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace gentlest {

namespace {

std::array<std::pair<const char*, const LearntFigure*>, 4> figures_of(const LearntOfLayer& learnt) {
  return {{{"dD", &learnt.dD}, {"dP", &learnt.dP}, {"dH", &learnt.dH}, {"R0", &learnt.R0}}};
}

std::string range_words(const char* name, const Estimate& now) {
  return fmt::format("{} {:.1f} (90 % between {:.1f} and {:.1f})", name, now.mean, now.low, now.high);
}

void add_figures(const LearntOfLayer& learnt, std::vector<std::string>& lines) {
  std::vector<std::string> ranges;
  std::vector<std::string> narrowed;
  std::vector<std::string> open;
  for (const auto& [name, figure] : figures_of(learnt)) {
    ranges.push_back(range_words(name, figure->now));
    if (figure->narrowing == Narrowing::learnt)
      narrowed.push_back(fmt::format("{} to {:.0f} %", name, 100 * figure->width_left));
    if (figure->narrowing == Narrowing::open) open.emplace_back(name);
  }
  lines.push_back(fmt::format("{}: {}, in MPa^0.5", learnt.layer, enumerated(ranges, "and")));
  if (!narrowed.empty())
    lines.push_back(
        fmt::format("{}: the tests narrowed {} of the range held before", learnt.layer, enumerated(narrowed, "and")));
  if (!open.empty())
    lines.push_back(fmt::format("{}: still as open as before: {}", learnt.layer, enumerated(open, "and")));
}

void add_hypotheses(const LearntOfLayer& learnt, std::vector<std::string>& lines) {
  const std::string stray = per_cent(learnt.stray_chance);
  if (learnt.is_stray)
    lines.push_back(
        fmt::format("{}: the tests do not fit what it was taken for ({} that it is none of these or not "
                    "as published); ranges were widened, go slowly",
                    learnt.layer, stray));
  if (learnt.hypotheses.empty()) return;
  for (const HypothesisChance& one : learnt.hypotheses)
    lines.push_back(
        fmt::format("{}: {} that it is {}", learnt.layer, per_cent(one.chance), material_in_words(one.what)));
  lines.push_back(fmt::format("{}: {} that it is none of these, or not as published", learnt.layer, stray));
}

}  // namespace

std::vector<std::string> words_of(const LearntOfLayer& learnt) {
  if (!learnt.is_tested) return {fmt::format("{}: no test has spoken of it yet", learnt.layer)};
  std::vector<std::string> lines;
  add_figures(learnt, lines);
  add_hypotheses(learnt, lines);
  // Never an advice to repeat: the reading may be a harm, and a surprise is no proof of a mistake.
  for (const SurprisingTest& one : learnt.surprising)
    lines.push_back(
        fmt::format("{}: what test {} says of it was hardly to be expected (chance {}); it counts as read: look at "
                    "that spot again before the next swab",
                    learnt.layer, one.test, per_cent(one.chance)));
  lines.push_back(fmt::format("{}: {} of {} particles effective", learnt.layer, std::lround(learnt.effective_particles),
                              learnt.particles));
  return lines;
}

// What the tests say of a layer without a sphere, as it was read.
std::vector<std::string> unjudged_reading_words(const Progress& progress) {
  std::vector<std::string> words;
  for (const PlannedLayer& layer : progress.layers) {
    if (layer.sphere) continue;
    std::vector<std::string> tests;
    for (const SwabTest& one : progress.conduct.tests)
      if (one.original && std::find(one.layers.begin(), one.layers.end(), layer.name) != one.layers.end())
        tests.push_back(fmt::format("test {}: {}{}", one.number, to_word(*one.original), one.harmed ? " (HARM)" : ""));
    words.push_back(fmt::format("{}: has no sphere, so no test narrows a figure of it; {}", layer.name,
                                joined(tests, "; ", "no test has spoken of it yet")));
  }
  return words;
}

std::vector<std::string> learnt_words(const Progress& progress) {
  std::vector<std::string> lines;
  for (const LearntOfLayer& learnt : what_was_learnt(progress))
    for (std::string& line : words_of(learnt)) lines.push_back(std::move(line));
  for (std::string& line : unjudged_reading_words(progress)) lines.push_back(std::move(line));
  return lines;
}

std::string counted_words(const CandidateOutlook& outlook) {
  return fmt::format("Counting what this very mixture did so far: effect {}, risk {}", per_cent(outlook.effect),
                     per_cent(outlook.risk));
}

std::string room_words(const RungRoom& room, double risk_limit) {
  if (room.stronger == 0) return "Room above it: no rung of the ladder is stronger";
  return fmt::format("Room above it: {} of the {} of the ladder stay within a risk of {}, as believed now", room.within,
                     counted(room.stronger, "stronger rung", "stronger rungs"), per_cent(risk_limit));
}

std::string words_of(const LeftOutTest& test) {
  switch (test.why) {
    case LeftOutWhy::unknown_passage:
      return fmt::format("the job knows no passage \"{}\"", test.what);
    case LeftOutWhy::unreadable_mixture:
      return test.what;
    case LeftOutWhy::other_layer:
      return fmt::format("it is about \"{}\"", test.what);
    case LeftOutWhy::no_solvent_mixture:
      return fmt::format("{} is no solvent mixture; the rules count it all the same", test.what);
  }
  return {};
}

std::vector<std::string> not_counted_words(const Progress& progress) {
  std::vector<std::string> words;
  for (const LeftOutTest& one : progress.not_counted)
    words.push_back(fmt::format("test {}: {}", one.test, words_of(one)));
  return words;
}

}  // namespace gentlest
