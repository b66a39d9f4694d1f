// The painting's outline to scale with the places of the tests.
#pragma once

#include "gentlest/job/job.hpp"
#include "report/draw/plot.hpp"
#include "report/tested/swab_marks.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// One test's place, cm from the lower left corner.
struct MapSite {
  std::string number;  ///< as in the table of tests
  double x_cm = 0;
  double y_cm = 0;
  std::string what = {};              ///< what was done there; empty: to be written by hand
  std::optional<TestLook> look = {};  ///< what came of it; nothing of a place that is only planned
  bool is_on_closed = false;          ///< on a passage that a harm closed
  bool operator==(const MapSite&) const = default;
};

/// A picture to stand behind the outline.
struct MapBackground {
  std::string media_type;  ///< "image/png" or "image/jpeg"
  std::string bytes;
};

/// Map of a painting whose width and height are known (precondition). Sites beyond the edge are
/// named below the painting. With a picture frame and a bar of round length. Without sites it is left empty, to be
/// filled by hand. Where a result is known each place shows it, with a legend, and a band along the outline stands for
/// the edge. Of the job's own series the caption says that they have no place here.
Chart test_map(const PaintingObject& object, const std::vector<MapSite>& sites,
               const std::optional<MapBackground>& background = {}, const std::vector<OwnSeries>& own = {});

/// Sites as typed: "12.5,30; 40,10" gives tests 1 and 2. Throws InputError (Fault::usage) with every fault found.
std::vector<MapSite> parse_sites(const std::string& text);

}  // namespace gentlest
