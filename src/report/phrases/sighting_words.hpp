// Layers without a sphere in words: what was seen stands where a chance would stand, and what to test first.
#pragma once

#include "gentlest/plan/plan.hpp"
#include "report/form/json.hpp"
#include "report/form/sheet.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

inline constexpr const char* unjudged_heading = "Layers that no figure speaks of";
inline constexpr const char* first_tests_heading = "Test this first";
inline constexpr const char* seen_column = "where no figure speaks";
inline constexpr const char* no_ladder_heading = "No ladder.";

bool any_unjudged(const std::vector<PlannedLayer>& layers);

/// "effect" or "risk" as text: the chance beside its limit, or "not known".
std::string known_chance(const std::optional<double>& chance, double limit);
std::string known_chance(const std::optional<double>& chance);
/// "effect 12 %, risk 2.1 %".
std::string effect_and_risk(const JudgedMixture& judged);

/// In a cell that would hold a figure of a layer without a sphere.
inline constexpr const char* no_sphere_cell = "no sphere";

/// The layer that gives the risk, or why none does.
std::string riskiest_words(const JudgedMixture& judged);

/// "no sphere: judged by what was seen alone (7 observations)", "not judged: no sphere, nothing seen; test it first
/// ...".
std::string state_of_unjudged(const PlannedLayer& layer);

/// In short, for the row of a mixture: "glue: HOLDS water, WHICH ACTS ON IT ALONE; tempera: not known (toluene)". Empty
/// where every layer has a sphere.
std::string sighting_mark(const JudgedMixture& judged);

/// The marks on layers to keep that warn: seen to act, or holding what does; for labels, which have room for no more.
std::vector<std::string> sighting_warnings(const JudgedMixture& judged);

/// The same in full, with the observations and their sources, one sentence an entry.
std::vector<std::string> sighting_sentences(const JudgedMixture& judged);

/// Of the very mixture on layers with a sphere alone.
std::vector<std::string> very_sentences(const JudgedMixture& judged);

/// That the layers are not judged and why, and what was seen on them; one entry a sentence.
std::vector<std::string> unjudged_words(const std::vector<PlannedLayer>& layers);

/// What to test first, in order.
std::vector<std::string> first_test_words(const std::vector<FirstTest>& tests, const std::vector<JudgedMixture>& to_try,
                                          const std::vector<PlannedLayer>& layers);

/// "no ladder can be worked out for ...": precondition: the plan's outcome.
std::vector<std::string> no_ladder_sentences(const std::vector<PlannedLayer>& layers, std::size_t target,
                                             std::size_t to_try);

/// "ethanol, not on the ladder: alone it ...": why a bottle is left off.
std::string acting_words(const Observation& seen, const std::string& layer);

/// For programs.
std::string sighting_word(Sighting seen);
Json sightings_json(const JudgedMixture& judged);
Json very_sightings_json(const JudgedMixture& judged);
Json seen_rows_json(const std::vector<SeenRow>& rows);

}  // namespace gentlest
