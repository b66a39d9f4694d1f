// What the tests taught and the next one: for people, spreadsheets and programs.
#pragma once

#include "gentlest/answers/progress.hpp"
#include "report/form/form.hpp"

#include <optional>
#include <string>

namespace gentlest {

/// One screen: harms, the last readings as read, what they closed, the next test with its reason. `full`: all readings,
/// what the tests taught, ranges, what was passed over. `room` where a mixture works.
std::string progress_report(const Plan& plan, const Progress& progress, const std::optional<RungRoom>& room, bool full,
                            Form form, const Style& style, const Edition& edition);

/// The tests of one painting on one screen, for `report` at a terminal.
std::string report_screen(const Plan& plan, const Progress& progress, const std::optional<RungRoom>& room,
                          const Style& style);

}  // namespace gentlest
