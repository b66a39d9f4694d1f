// Figures over many sessions, and the tables of docs/study.md.
#pragma once

#include "study/session.hpp"

#include <string>
#include <vector>

namespace gentlest::study {

/// A share in per cent with its standard error; nothing counted: `of` is 0.
struct Share {
  double percent = 0, error = 0;
  int of = 0;
};
Share share_of(int part, int whole);

/// One row of a table.
struct Row {
  std::string name;
  Share window;           ///< paintings on which some step of the plan is truly good
  Share way;              ///< of those: a good one can be reached rung by rung without a mostly harmful one before it
  Share found;            ///< of those: a mixture was reported as found
  Share good;             ///< of all reports: truly good
  Share false_found;      ///< of all paintings: the mixture reported is not truly good
  Share harmed;           ///< of all paintings: the picture's original truly affected at least once
  Share harmed_edge;      ///< the same at the edge
  Share right_no_window;  ///< of the paintings without one: the series ended without a mixture
  Share wrong_no_window;  ///< of those with one: "no window" was said
  int tests_median = 0, tests_p90 = 0;
};
Row row_of(std::string name, const std::vector<Session>& sessions);

/// Markdown.
std::string table_head(const std::string& first);
std::string table_line(const Row& row);

/// Mean predicted less seen, in points, with its standard error; and in bins of the prediction.
struct Bias {
  double points = 0, error = 0, brier = 0;
  int swabs = 0;
};
Bias bias_of(const std::vector<Prediction>& predictions, bool of_risk);
std::string reliability_table(const std::vector<Prediction>& predictions, bool of_risk);

}  // namespace gentlest::study
