// Figures over many sessions, and the tables of docs/study.md.
#pragma once

#include "study/session.hpp"

#include <string>
#include <vector>

namespace gentlest::study {

/// One row of a table. Shares in per cent.
struct Row {
  std::string name;
  int paintings = 0;
  double window = 0;        ///< paintings on which a good mixture exists
  double found = 0;         ///< of those: a swab read "removed" and "nothing seen"
  double good = 0;          ///< of those: the reported mixture is truly good
  double good_reports = 0;  ///< truly good ones among all reported
  double harmed = 0;        ///< of all paintings: the picture's original truly affected at least once
  double harmed_edge = 0;
  int tests_median = 0, tests_p90 = 0;
  double edge_tests = 0;    ///< mean
  double largest_risk = 0;  ///< mean over paintings of the largest true risk taken
};
Row row_of(std::string name, const std::vector<Session>& sessions);

/// Markdown.
std::string table_head();
std::string table_line(const Row& row);

struct Calibrated {
  double effect_bias = 0, risk_bias = 0, effect_brier = 0, risk_brier = 0;
  double varnish_cover = 0, paint_cover = 0, least_effective = 1;
};
Calibrated calibrated(const std::vector<Prediction>& predictions, const std::vector<Coverage>& coverage);
/// Predicted against seen, in bins of the prediction.
std::string reliability_table(const std::vector<Prediction>& predictions, bool of_risk);

}  // namespace gentlest::study
