// What the tests taught and the next one: for people, spreadsheets and programs.
#pragma once

#include "gentlest/answers/progress.hpp"
#include "report/form/form.hpp"

#include <optional>
#include <string>

namespace gentlest {

/// `room` where a mixture worked; its limit is the last of the progress's risk limits.
std::string progress_report(const Progress& progress, const std::optional<RungRoom>& room, Form form,
                            const Style& style, const Edition& edition);

}  // namespace gentlest
