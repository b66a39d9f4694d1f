// What the observations made of the spheres: the file of the catalogue, the page for people, one row an observation.
#pragma once

#include "gentlest/answers/conditioning.hpp"
#include "report/form/form.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// solvents/conditioned.yaml. Precondition: the fit held sources out.
std::string conditioning_records(const ObservationFit& fit);

/// What one set of choices gave, for the page.
struct TriedChoice {
  std::string what;
  ObservationFit fit;
};

/// docs/observations.md, in Markdown. `tried`: the same catalogue by other choices.
std::string conditioning_page(const ObservationFit& fit, const std::vector<TriedChoice>& tried,
                              const Catalogue& catalogue);

/// One row an observation: chance as recorded, as fitted, and by a fit without its source.
std::string conditioning_rows(const ObservationFit& fit, Form form, const Style& style, const Edition& edition,
                              const Catalogue& catalogue);

}  // namespace gentlest
