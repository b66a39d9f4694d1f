// What a studio learned, and its tests for others.
#pragma once

#include "gentlest/studio/shared.hpp"
#include "gentlest/studio/studio.hpp"
#include "report/form/form.hpp"
#include "report/form/table.hpp"

#include <string>
#include <vector>

namespace gentlest {

struct StudioShown {
  const std::vector<StudioPainting>& paintings;
  const Studio& studio;
  std::vector<LeftOutPainting> check;
};

/// CSV and JSON: one row a painting and material, with the check behind it. Text: one screen; `full` every row.
std::string studio_report(const StudioShown& shown, bool full, Form form, const Style& style, const Edition& edition);

/// The table of docs/studio.md.
std::string shared_csv(const std::vector<SharedTest>& tests, const Edition& edition);

}  // namespace gentlest
