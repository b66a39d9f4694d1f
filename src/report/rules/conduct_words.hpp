// What the rules of conduct made of the tests, in words: harms first, what is closed, what comes next and because of
// which rule. Each sentence once, for screen, sheet, labels and report.
#pragma once

#include "gentlest/answers/progress.hpp"
#include "gentlest/plan/plan.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// "rule 6: what reacted closes what is as strong".
std::string rule_words(Rule rule);

/// "edge" or "picture"; with the passage: "picture, white cloth".
std::string place_words(Place place, const std::string& passage);

/// "rung 3, at the edge", "rung 3, on the picture, white cloth"; without a name the place alone.
std::string at_place_words(const std::string& name, Place place, const std::string& passage);

/// One line for each harm: "HARM on oil paint (picture, white cloth): test 3 of 2026-03-14, acetone 20, ...: softened".
/// These stand before everything else, for good.
std::vector<std::string> harm_words(const Conduct& conduct);

/// "rung 3.5" or "line 2, rung 3" of a planned mixture; empty for one that is none.
std::string step_name(const Conduct& conduct, const std::optional<std::size_t>& step);

/// Why a planned mixture may not be used: "closed by test 3 (oil paint reacted to acetone 20, ...)"; empty while it is
/// open. For one layer, or for any where `layer` is empty.
std::string closed_words(const Conduct& conduct, std::size_t step, const std::string& layer = {});

/// All that is closed, gathered: rungs, passages, the edge.
std::vector<std::string> closure_words(const Plan& plan, const Conduct& conduct);

/// "Stop, look, talk it over: ..." at the end of a series.
std::string end_words(const Conduct& conduct);

/// For programs: "test", "found", "unsure", "no window", "ended", "tests used up", "not judged".
std::string next_kind_word(NextKind kind);

/// The answer in one line: "rung 2, at the edge: isooctane 90, ethanol 96 % 10" or the stop.
std::string next_words(const Progress& progress);

/// Why, in one sentence with its rule and without a full stop.
std::string why_words(const Progress& progress);

/// What works, where it was tried and where not yet; readings that say otherwise.
std::vector<std::string> working_words(const Conduct& conduct, const WorkingMixture& working);

/// What closes the window: the open tests whose risk is too high, by layer, and what the ladder would be without.
std::vector<std::string> no_window_words(const Plan& plan, const Progress& progress);

/// The same, then what keeping a layer costs the ladder.
std::vector<std::string> what_closes_words(const Plan& plan, const Progress& progress);

/// "removal; the original" of one test as it was read, e.g. "no effect; nothing seen".
std::string as_read_words(const SwabTest& test);

/// When to stop, for every next test.
std::vector<std::string> stop_rules_words();

}  // namespace gentlest
