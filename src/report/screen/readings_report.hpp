// The tests of a log as a table: for people, spreadsheets and programs.
#pragma once

#include "gentlest/learning/reading.hpp"
#include "report/form/form.hpp"

#include <string>
#include <vector>

namespace gentlest {

std::string readings_report(const std::vector<Reading>& readings, Form form, const Style& style,
                            const Edition& edition);

}  // namespace gentlest
