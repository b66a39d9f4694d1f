// What several pictures draw alike: the ranges of layers, bottles and mixtures.
#pragma once

#include "report/charts/charts.hpp"
#include "report/draw/label_placement.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// A layer's range as one picture sees it.
struct LayerRange {
  std::size_t layer = 0;
  std::vector<Xy> edge;  ///< closed
  Xy middle;
};

/// The ranges, cut off at `clip`, the larger ones first; hatched, so that each is seen where they lie on each other,
/// and one that another covers exactly drawn a little smaller. `id` must be unique on the page. Returns whether one
/// was.
bool draw_ranges(Drawing& drawing, const Plan& plan, const std::string& id, const std::vector<Xy>& clip,
                 std::vector<LayerRange> ranges);

/// The middle of each range with its mark; those at one point side by side. Adds obstacles and names.
void draw_middles(Drawing& drawing, const Plan& plan, const std::vector<LayerRange>& ranges, PointNames& points);

/// What a view of liquids draws: the ladder's way and the mixtures, the middles of the ranges, the bottles of the
/// shelf, those in use first. `mixtures` and `bottles`: their places, in the order of the bench and of the shelf.
PointNames draw_liquids(Drawing& drawing, const Plan& plan, const Bench& bench, const std::vector<Xy>& mixtures,
                        const std::vector<LayerRange>& ranges, const std::vector<Xy>& bottles);

/// "rung 3: isooctane 70, acetone 30; effect 12 %, risk 2.1 %": what is read where a pointer rests on a mixture.
std::string pointed_words(const Plan& plan, const Bench& bench, std::size_t mixture);
/// Its keys: data-rung, without a ladder data-mixture.
std::vector<MarkKey> keys_of_mixture(const Plan& plan, const Bench& bench, std::size_t mixture);

/// Legend entries of the layers that have a sphere, with their patterns where `ranges` (an id as for draw_ranges) is
/// not empty.
std::vector<LegendEntry> layer_entries(const Plan& plan, const std::string& ranges = {});

}  // namespace gentlest
