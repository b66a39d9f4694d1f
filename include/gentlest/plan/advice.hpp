// What a plan has to say beside its figures, as kinds and places: what to watch, and which of its figures are weak.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace gentlest {

/// Something to watch on this painting.
enum class WatchKind {
  begin_gently,      ///< go up the ladder rung by rung
  nothing_proposed,  ///< there is no ladder
  two_places,        ///< one success does not speak for the whole painting
  softening,         ///< is a result of its own
  colour_on_swab,    ///< ask what it is
  passage,           ///< one of the job's
  flag,              ///< what is known or suspected of layers to keep, or of passages of them
  may_part           ///< alcohol with a hydrocarbon
};
struct Watch {
  WatchKind kind = WatchKind::begin_gently;
  std::size_t passage = 0;              ///< for `passage`: index into Job::passages
  Flag flag = Flag::resinous;           ///< for `flag`
  std::vector<std::string> names = {};  ///< for `flag`: the layers and passages
  bool operator==(const Watch&) const = default;
};

/// A figure that a plan rests on and that is weak.
enum class WeakPointKind {
  sphere,              ///< of a layer: a stand-in, or less than borne out by published tests
  not_judged,          ///< the layer has no sphere: no figure of the plan speaks of it
  liquids_vary,        ///< the layer's range is widened by the largest deviation of a liquid on the shelf
  surer_than_liquids,  ///< the layer's middle is given surer than any liquid is known; `best_known_sd` is taken
  may_be_else,         ///< a layer may be another material as well
  not_examined,        ///< the layer is taken as the files record it
  found_otherwise,     ///< the files record another material of the layer than was found
  only_swells,         ///< the layer swells but never dissolves: other grades count on it
  borrowed_curve,      ///< of layers without a curve of their own: that of fresh resins in long contact
  no_grade_written     ///< ethanol on the shelf without a grade
};
struct WeakPoint {
  WeakPointKind kind = WeakPointKind::borrowed_curve;
  std::size_t layer = 0;  ///< index into Plan::layers, which begin with the job's in their order
  std::size_t other = 0;  ///< for `may_be_else`: index into the layer's possible materials
  bool operator==(const WeakPoint&) const = default;
};

}  // namespace gentlest
