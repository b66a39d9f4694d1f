// Everything about one vial of a mixture, for people, spreadsheets and programs.
#pragma once

#include "gentlest/answers/vial.hpp"
#include "report/form/form.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// A study, and the painting it was made for.
struct VialCase {
  Job job;
  std::vector<PlannedLayer> layers;
  VialStudy study;
};

/// On one screen, in the words of the trade.
std::string vial_short_text(const VialCase& one, const Style& style, const Edition& edition);

/// All of it. CSV holds the path of drying, one row a point.
std::string vial_report(const VialCase& one, Form form, const Style& style, const Edition& edition);

}  // namespace gentlest
