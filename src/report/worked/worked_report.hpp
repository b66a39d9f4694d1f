// A figure explained: what is put in, every sum, the figure as it is printed elsewhere.
#pragma once

#include "gentlest/answers/progress.hpp"
#include "gentlest/safety/mixture_hazard.hpp"
#include "gentlest/sums/sums.hpp"
#include "report/form/form.hpp"

#include <optional>
#include <string>

namespace gentlest {

enum class Explained { mixture, label, flash_point };

/// Sums, with what is said beside them.
struct WorkedCase {
  Explained what = Explained::mixture;
  std::string painting;
  WorkedSums sums;
  std::optional<MixtureLabel> label = {};  ///< for `label`
  std::optional<FlashPoint> flash = {};    ///< for `flash_point`
};

/// Text or JSON; `full` shows every step and every input. There is no CSV. Precondition: form is not CSV.
std::string worked_report(const WorkedCase& one, bool full, Form form, const Style& style, const Edition& edition);

/// Why the next test is what it is: which rules closed what, what they leave open, which figures chose.
std::string next_explained(const Plan& plan, const Progress& progress, bool full, Form form, const Style& style,
                           const Edition& edition);

}  // namespace gentlest
