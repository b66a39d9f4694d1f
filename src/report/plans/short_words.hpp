// The first screen in the words of the trade: no figures of a chance, nothing of how the program reckons.
#pragma once

#include "gentlest/answers/order.hpp"
#include "gentlest/plan/plan.hpp"
#include "report/form/form.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// "##.. perhaps": the bar first, so that bars stand below each other; "not known" without a chance.
std::string likelihood_cell(const std::optional<double>& chance);

/// "remove varnish: dammar, aged; range borrowed", the layer to remove first, then those that are not judged.
std::vector<std::string> layer_lines(const Plan& plan);
std::string layer_line(const PlannedLayer& layer);

/// What is known better than the chances: the order, the first to act, what is harsher; each a sentence.
std::vector<std::string> order_words(const Plan& plan);

/// What to watch on this very painting, the gravest first; what holds of every painting is left out.
std::vector<std::string> own_watch_words(const Plan& plan);

/// What is weak about the answer, one sentence each, the gravest first.
std::vector<std::string> short_weak_words(const std::vector<PlannedLayer>& layers);

/// Why there are no rungs. Precondition: the plan has none.
std::vector<std::string> short_no_rungs_words(const Plan& plan);

/// What was seen of the mixture elsewhere, on which layers; on layers without a range only what warns.
std::vector<std::string> seen_marks(const JudgedMixture& judged);

/// What a hand must know of a mixture beside its recipe: clouds or parts, risk that rises while it dries, what was seen
/// of it. Each in a few words.
std::vector<std::string> short_marks(const JudgedMixture& judged, double risk_limit);

/// The end of every first screen: where the rest stands, the edition, that a plan is no permission.
std::string screen_ending(const std::string& more, const Style& style, const Edition& edition);

}  // namespace gentlest
