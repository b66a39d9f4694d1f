// Labels for the vials, on sheets of sticky labels or plain paper.
#pragma once

#include "gentlest/answers/bench.hpp"
#include "gentlest/answers/progress.hpp"
#include "report/draw/html.hpp"
#include "report/form/form.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// A grid of labels on a page, in mm; columns and rows are what fits, centred on the page.
struct LabelGrid {
  double width_mm = 63;
  double height_mm = 38;
  double margin_mm = 10;  ///< least white at the edges of the page
  double gap_mm = 0;      ///< between labels
};

struct GridCount {
  int columns = 0;
  int rows = 0;
  bool operator==(const GridCount&) const = default;
};
GridCount count_labels(const LabelGrid& grid, Paper paper);

/// Labels smaller than this cannot be read; larger ones than a page do not fit.
inline constexpr double least_label_width_mm = 35;
inline constexpr double least_label_height_mm = 18;

struct LabelInputs {
  Paper paper = Paper::A4;
  LabelGrid grid;
  int copies = 1;
  std::string date;   ///< as typed; empty leaves a line to write on
  std::string maker;  ///< likewise
  Edition edition;
  std::optional<Progress> progress = {};  ///< where the tests stand; nothing without a log
};

/// One HTML file: pages of labels, then a page with the statements in words. With `progress` the bench holds
/// vials_ahead, and a note above the labels says where the tests stand. Throws InputError (Fault::usage) when the label
/// is too small to read or does not fit on the paper.
std::string label_sheet(const Plan& plan, const Bench& bench, const LabelInputs& inputs);

/// What one label says, from the top: its name, its parts, then warnings and hazards, what is missing before the codes.
struct LabelLine {
  std::string text;
  bool bold = false;
};
std::vector<LabelLine> label_lines(const BenchMixture& mixture);

}  // namespace gentlest
