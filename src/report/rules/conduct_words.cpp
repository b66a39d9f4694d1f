#include "report/rules/conduct_words.hpp"

#include "report/form/format.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/plans/layer_cost_words.hpp"

#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace gentlest {

namespace {

const char* rule_sentence(Rule rule) {
  switch (rule) {
    case Rule::one_plan:
      return "what is tested is a rung of the plan, or half a step between two";
    case Rule::blanks_first:
      return "dry swab, then water or saliva before any solvent; a blank that takes colour stops everything";
    case Rule::gentle_first:
      return "the gentlest rung first, then one rung at a time; two only where two running did nothing";
    case Rule::edge_first:
      return "a new mixture goes first where harm matters least";
    case Rule::nothing_again:
      return "what did nothing is not asked again; between what was borne and what is closed lies half a step";
    case Rule::harm_closes:
      return "what reacted closes what is as strong or stronger";
    case Rule::harmed_never_works:
      return "a mixture that harmed anywhere is none that works";
    case Rule::harm_not_repeated:
      return "a test that harmed is not repeated";
    case Rule::passage_closed:
      return "harm on a passage closes it; the others may go on, with a border";
    case Rule::edge_refuted:
      return "where the picture reacted to what passed at the edge, the edge opens nothing any more";
    case Rule::two_harms_end:
      return "two harms, or a lasting one by the gentlest that did anything, end the series";
    case Rule::harm_said_first:
      return "every harm stands in the first line";
    case Rule::works_everywhere:
      return "it works where the layer moved as wanted and the original is untouched on every passage";
    case Rule::not_by_luck:
      return "a doubtful success, or one not believed to come again, asks for a second spot";
    case Rule::half_a_step_back:
      return "after the first success half a step back, since the gentlest that works is wanted; then each passage";
    case Rule::no_window_last:
      return "no window is said only after the gentlest rungs";
    case Rule::said_as_read:
      return "what was read is told as read";
  }
  return "";
}

std::string day_of(const SwabTest& test) {
  return test.date.empty() ? "" : " of " + test.date;
}

std::string where_of(const SwabTest& test) {
  return place_words(test.place, test.passage) + (test.is_passage_known ? "" : ", a name that the job does not know");
}

std::string numbers_of(const Conduct& conduct, const std::vector<std::size_t>& tests) {
  std::vector<std::string> numbers;
  for (const std::size_t test : tests) numbers.push_back(std::to_string(conduct.tests[test].number));
  return joined(numbers, " and ");
}

const char* purpose_sentence(Purpose purpose) {
  switch (purpose) {
    case Purpose::climb:
      return "the next rung above what was borne there";
    case Purpose::climb_two:
      return "two rungs running did nothing there, so two at once";
    case Purpose::from_edge:
      return "it did no harm at the edge; now the picture";
    case Purpose::between:
      return "the next rung is closed; half a step lies below it";
    case Purpose::step_back:
      return "a stronger one worked; is a gentler one enough?";
    case Purpose::second_spot:
      return "it worked once; on a second spot of the same passage it must work again";
    case Purpose::other_passage:
      return "it worked; this passage was not tried with it";
  }
  return "";
}

// "by test 4" where every layer to keep is meant, else "for red glaze by test 4"; each layer with the first that
// closes.
std::string closers_of(const Plan& plan, const Conduct& conduct, std::size_t step) {
  std::map<int, std::vector<std::string>> layers;  // by the number of the test
  std::size_t kept = 0;
  for (const PlannedLayer& layer : plan.layers) {
    if (layer.role != Role::keep) continue;
    ++kept;
    if (const Closure* closure = closure_of(conduct, step, layer.name))
      layers[conduct.tests[closure->by].number].push_back(layer.name);
  }
  std::vector<std::string> closers;
  for (const auto& [number, names] : layers)
    closers.push_back(
        fmt::format("{}by test {}", names.size() == kept ? "" : "for " + joined(names, " and ") + " ", number));
  return joined(closers, ", ");
}

}  // namespace

std::string rule_words(Rule rule) {
  return fmt::format("rule {}: {}", static_cast<int>(rule), rule_sentence(rule));
}

std::string place_words(Place place, const std::string& passage) {
  const std::string where = place == Place::edge ? "edge" : "picture";
  return passage.empty() ? where : where + ", " + passage;
}

std::string at_place_words(const std::string& name, Place place, const std::string& passage) {
  const std::string before = name.empty() ? "" : name + ", ";
  if (place == Place::edge) return before + at_the_edge;
  return before + "on the picture" + (passage.empty() ? "" : ", " + passage);
}

std::string as_read_words(const SwabTest& test) {
  std::vector<std::string> words;
  if (test.removal) words.emplace_back(to_word(*test.removal));
  if (test.original) words.emplace_back(to_word(*test.original));
  if (test.colour != SwabColour::none)
    words.push_back(test.colour == SwabColour::not_known ? "colour not known, so it counts as original"
                                                         : fmt::format("colour: {}", to_word(test.colour)));
  else if (test.original == OriginalReading::colour_on_swab)
    words.emplace_back("not noted of what, so it counts as original");
  if (!test.signs.empty()) words.push_back(test.signs);
  // A sign of a later look carries its time already.
  const bool is_told = !test.seen_after.empty() && test.signs.find(test.seen_after) != std::string::npos;
  if (!test.seen_after.empty() && !is_told) words.push_back(fmt::format("seen {} after the test", test.seen_after));
  return joined(words, "; ", "nothing noted");
}

std::vector<std::string> harm_words(const Conduct& conduct) {
  std::vector<std::string> words;
  for (const std::size_t by : conduct.harms) {
    const SwabTest& test = conduct.tests[by];
    words.push_back(fmt::format("HARM on {} ({}): test {}{}, {}: {}.", joined(test.layers, " or ", "the original"),
                                where_of(test), test.number, day_of(test), test.words, as_read_words(test)));
  }
  return words;
}

std::string step_name(const Conduct& conduct, const std::optional<std::size_t>& step) {
  if (!step) return {};
  return origin_name(conduct.steps[*step].origin);
}

std::string closed_words(const Conduct& conduct, std::size_t step, const std::string& layer) {
  const Closure* closure = closure_of(conduct, step, layer);
  if (!closure) return {};
  const SwabTest& test = conduct.tests[closure->by];
  if (closure->rule == Rule::harm_not_repeated) return fmt::format("closed: it harmed in test {}", test.number);
  return fmt::format("closed for {} by test {}: as strong as {}", closure->layer, test.number, test.words);
}

std::vector<std::string> closure_words(const Plan& plan, const Conduct& conduct) {
  std::vector<std::string> words;
  for (std::size_t line = 0; line < plan.lines.size(); ++line) {
    std::map<std::string, std::vector<std::string>> rungs;  // by what closes them
    for (std::size_t i = 0; i < conduct.steps.size(); ++i) {
      const PlanStep& step = conduct.steps[i];
      if (step.line != line || step.origin.kind != OriginKind::rung || !closure_of(conduct, i)) continue;
      rungs[closers_of(plan, conduct, i)].push_back(std::to_string(step.origin.number));
    }
    const std::string on = plan.lines.size() > 1 ? fmt::format(" of line {}", line + 1) : "";
    for (const auto& [by, numbers] : rungs)
      words.push_back(fmt::format("rung {}{}: closed {}", joined(numbers), on, by));
  }
  if (!words.empty()) words.back() += " (" + rule_words(Rule::harm_closes) + ")";
  for (const PassageState& passage : conduct.passages)
    if (passage.is_left_out && !passage.closed_by)
      words.push_back(fmt::format("{}: left out by the examination; keep a border around it", passage.name));
    else if (passage.closed_by)
      words.push_back(fmt::format("{}: closed by test {}; keep a border around it ({})", passage.name,
                                  conduct.tests[*passage.closed_by].number, rule_words(Rule::passage_closed)));
  if (conduct.edge_refuted_by)
    words.push_back(fmt::format("edge: test {} refuted it ({})", conduct.tests[*conduct.edge_refuted_by].number,
                                rule_words(Rule::edge_refuted)));
  return words;
}

std::string end_words(const Conduct& conduct) {
  if (!conduct.end) return {};
  const std::string tests = numbers_of(conduct, conduct.end->tests);
  switch (conduct.end->why) {
    case EndWhy::blank_took_colour:
      return fmt::format("the blank of test {} took colour or changed the original: no solvent test is safe here",
                         tests);
    case EndWhy::two_harms:
      return fmt::format("the original reacted to two mixtures, in tests {}", tests);
    case EndWhy::lasting_harm_by_the_gentlest:
      return fmt::format(
          "nothing gentler than test {} did anything to the layer to go, and it harmed the picture lastingly", tests);
    case EndWhy::examination:
      return "the examination speaks against any solvent test";
    case EndWhy::every_passage_closed:
      if (tests.empty()) return "every passage is left out by the examination";
      return fmt::format("every passage of the picture is closed, by tests {}", tests);
  }
  return {};
}

std::string next_kind_word(NextKind kind) {
  switch (kind) {
    case NextKind::test:
      return "test";
    case NextKind::found:
      return "found";
    case NextKind::unsure:
      return "unsure";
    case NextKind::no_window:
      return "no window";
    case NextKind::ended:
      return "ended";
    case NextKind::tests_used_up:
      return "tests used up";
    case NextKind::not_judged:
      return "not judged";
  }
  return {};
}

std::string next_words(const Progress& progress) {
  const NextAnswer& next = progress.next;
  switch (next.kind) {
    case NextKind::test:
      return at_place_words(step_name(progress.conduct, next.test->step), next.test->place, next.test->passage) + ": " +
             to_text(next.test->mixture);
    case NextKind::found:
      return "stop: this mixture works: " + to_text(*next.mixture);
    case NextKind::unsure:
      return "stop: it worked, but is not believed to do so again: " + to_text(*next.mixture);
    case NextKind::no_window:
      return "stop: no window";
    case NextKind::ended:
      return "stop, look, talk it over";
    case NextKind::tests_used_up:
      return "stop: no more tests";
    case NextKind::not_judged:
      return "by hand: no figure chooses a test";
  }
  return {};
}

std::string why_words(const Progress& progress) {
  const NextAnswer& next = progress.next;
  switch (next.kind) {
    case NextKind::test:
      return fmt::format("{} ({})", purpose_sentence(next.test->purpose), rule_words(next.rule));
    case NextKind::found:
    case NextKind::unsure:
      return rule_words(next.rule);
    case NextKind::no_window:
      if (progress.conduct.steps.empty())
        return "there is no ladder to begin with: gentlest ladder JOB says what closes it";
      if (!next.too_risky.empty()) return "what is left may affect " + next.too_risky.front().layer + " too easily";
      return next.too_little.empty() ? "every rung was tried or is closed"
                                     : "what is left promises too little to be worth a swab";
    case NextKind::ended:
      if (progress.conduct.end && progress.conduct.end->why == EndWhy::examination) return end_words(progress.conduct);
      return fmt::format("{} ({})", end_words(progress.conduct), rule_words(next.rule));
    case NextKind::tests_used_up:
      return fmt::format("{} were made without a mixture that works",
                         counted(progress.conduct.tests.size(), "test", "tests"));
    case NextKind::not_judged:
      return "no range is known of the layer to remove, so no effect can be told; what to test first stands below";
  }
  return {};
}

std::vector<std::string> working_words(const Conduct& conduct, const WorkingMixture& working) {
  std::vector<std::string> words;
  words.push_back(fmt::format("{}: moved the layer and left the original as it was, in test {}",
                              to_text(working.mixture), numbers_of(conduct, working.tests)));
  if (!working.otherwise.empty())
    words.push_back(fmt::format("mixed: test {} with the same mixture did not move it enough",
                                numbers_of(conduct, working.otherwise)));
  if (!working.passed.empty()) words.push_back("borne on: " + joined(working.passed));
  if (!working.untested.empty()) words.push_back("not yet tested with it: " + joined(working.untested));
  if (!working.closed.empty()) words.push_back("closed, with a border: " + joined(working.closed));
  return words;
}

std::vector<std::string> no_window_words(const Plan&, const Progress& progress) {
  std::vector<std::string> words;
  for (const TooRisky& one : progress.next.too_risky)
    words.push_back(fmt::format("{}, {}: may affect {} ({}, {} is the most that is risked there)",
                                step_name(progress.conduct, one.test.step).empty()
                                    ? to_text(one.test.mixture)
                                    : step_name(progress.conduct, one.test.step),
                                place_words(one.test.place, one.test.passage), one.layer,
                                per_cent_beside(one.risk, one.cap), setting_per_cent(one.cap)));
  for (const TooLittle& one : progress.next.too_little)
    words.push_back(fmt::format("{}, {}: no rung from there on promises {} to work and to harm nothing ({} at most)",
                                step_name(progress.conduct, one.test.step),
                                place_words(one.test.place, one.test.passage), setting_per_cent(one.least),
                                per_cent_beside(one.promise, one.least)));
  return words;
}

std::vector<std::string> what_closes_words(const Plan& plan, const Progress& progress) {
  std::vector<std::string> words = no_window_words(plan, progress);
  for (const std::string& cost : layer_cost_words(plan)) words.push_back("the ladder " + cost);
  return words;
}

std::vector<std::string> stop_rules_words() {
  return {
      "Stop at any change of the original: colour that is not varnish or dirt, softening, blanching, lost gloss. "
      "Record it, and do not try it again."};
}

}  // namespace gentlest
