// One mixture judged against the layers of a painting.
#pragma once

#include "gentlest/plan/plan.hpp"
#include "report/form/form.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// A mixture, and the painting it was judged for.
struct MixtureCase {
  Job job;
  std::vector<PlannedLayer> layers;
  JudgedMixture judged;
};

/// What must be said of this mixture besides its numbers: risk above the limit, water in it.
std::vector<std::string> mixture_notes(const MixtureCase& one);

std::string mixture_report(const MixtureCase& one, Form form, const Style& style, const Edition& edition);

}  // namespace gentlest
