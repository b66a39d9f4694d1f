// What the tests taught and the next one: for people, spreadsheets and programs.
#pragma once

#include "gentlest/answers/progress.hpp"
#include "report/form/form.hpp"

#include <optional>
#include <string>

namespace gentlest {

/// "try this mixture", "stop: found" and so on.
std::string step_words(NextStep step);

/// Effect and risk of an outlook that counts the mixture's own tests.
std::string counted_words(const CandidateOutlook& outlook);

/// "2 of the 3 stronger rungs of the ladder stay within ..."; what is said where there is none.
std::string room_words(const RungRoom& room, double risk_limit);

/// `room` where a mixture worked; its limit is the last of the progress's risk limits.
std::string progress_report(const Progress& progress, const std::optional<RungRoom>& room, Form form,
                            const Style& style, const Edition& edition);

}  // namespace gentlest
