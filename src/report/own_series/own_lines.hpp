// The job's own series in a picture of the plan: each with a mark and a dashed line of its own, named where it ends.
#pragma once

#include "gentlest/answers/comparison.hpp"
#include "report/draw/palette.hpp"
#include "report/draw/plot.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// One series of the job with the look that it has in every picture.
struct OwnLine {
  const ComparedSeries* compared = nullptr;  ///< never null; lives as long as what own_lines was given
  std::string name;
  LayerLook look = own_series_look(0);
  std::string key;  ///< stands in a picture where the name finds no room: "s1"
};

/// Those of the job among the compared series, in the order of the job.
std::vector<OwnLine> own_lines(const std::vector<ComparedSeries>& compared);

/// Where a picture has each mixture of a series, in their order; nothing of one that has no place there.
using SeriesPlaces = std::vector<std::optional<Xy>>;

/// The dashed line alone.
void draw_own_way(Drawing& drawing, const OwnLine& line, const std::vector<Xy>& way);

/// A mark for each mixture that has a place, with data-series and what is read where a pointer rests on it. Adds the
/// name, at the last of them, and the obstacles.
void draw_own_marks(Drawing& drawing, const OwnLine& line, const SeriesPlaces& places, PointNames& points);

/// Both; the line runs between neighbours that have a place.
void draw_own_line(Drawing& drawing, const OwnLine& line, const SeriesPlaces& places, PointNames& points);

/// One legend entry each.
std::vector<LegendEntry> own_legend(const std::vector<OwnLine>& lines);

/// A picture of its own for each series, below what the ladder has: two in a row, one with many mixtures alone.
struct SeriesPanel {
  Xy corner;  ///< upper left, of the title
  double width = 0;
};
struct SeriesPanels {
  std::vector<SeriesPanel> each;  ///< in the order of the lines
  double bottom = 0;
};
SeriesPanels lay_panels(const std::vector<OwnLine>& lines, Xy corner, double width, double height);

/// The mark and the name above a panel. Takes `panel_title` of its height.
inline constexpr double panel_title = 20;
void draw_panel_title(Drawing& drawing, const OwnLine& line, const SeriesPanel& panel);

/// The same mixture as a key for whoever points at it.
std::vector<MarkKey> keys_of_own(const OwnLine& line);

}  // namespace gentlest
