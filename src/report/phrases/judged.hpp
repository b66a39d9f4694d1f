// Mixtures judged against the planned layers, in the forms that the ladder and the single mixture share.
#pragma once

#include "gentlest/plan/plan.hpp"
#include "report/form/json.hpp"
#include "report/form/sheet.hpp"

#include <functional>
#include <string>
#include <vector>

namespace gentlest {

/// One row a mixture: recipe, point, triangle, effect, risk, hazards, then four columns for every layer.
Sheet judged_sheet(const std::vector<const JudgedMixture*>& mixtures, const std::vector<PlannedLayer>& layers);

Json judged_json(const JudgedMixture& judged, const std::vector<PlannedLayer>& layers, const Limits& limits);

Json layers_json(const std::vector<PlannedLayer>& layers, const Limits& limits);

/// The liquids of these mixtures, each once, sorted by label.
std::vector<Liquid> liquids_of(const std::vector<const JudgedMixture*>& mixtures);

/// Classification, flash point and exposure limits of every liquid; null and the word for it where there is no record.
Json liquids_json(const std::vector<Liquid>& liquids);

/// The same for people: signal word, flash point, statements with words, limits by authority.
std::string liquids_text(const std::vector<Liquid>& liquids, const Style& style);

/// Effect and risk of a mixture as printed beside the job's wanted effect and risk limit, e.g. "49.7 %" beside 50 %.
std::string effect_words(const JudgedMixture& judged, const Limits& limits);
std::string risk_words(const JudgedMixture& judged, const Limits& limits);

/// The layers from the top down: role, material, why this one, how far its sphere is known; then warnings, and the
/// stand-ins in full or with a word where to read on.
enum class StandIns { in_full, see_weak_figures };
std::string layers_text(const std::vector<PlannedLayer>& layers, const std::vector<Passage>& passages,
                        StandIns stand_ins, const Style& style);

/// From which grade on a layer to keep counts as affected, in words: "swells" or stronger; where the layers differ,
/// with their names, each written by `name`.
std::string affected_words(const std::vector<PlannedLayer>& layers, const Limits& limits,
                           const std::function<std::string(const std::string&)>& name);

/// Layers without a sphere: that they are not judged, what was seen on them, and the first tests where there are any.
/// Empty where every layer has a sphere.
std::string unjudged_text(const std::vector<PlannedLayer>& layers, const std::vector<FirstTest>& tests,
                          const std::vector<JudgedMixture>& to_try, const Style& style);

/// What effect and risk count, in one sentence each.
std::string two_numbers_text(const std::vector<PlannedLayer>& layers, const Limits& limits, const Style& style);

}  // namespace gentlest
