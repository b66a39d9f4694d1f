#include "study/figures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace gentlest::study {

namespace {

double percent(double part, double whole) {
  return whole > 0 ? 100 * part / whole : 0;
}

double square(double value) {
  return value * value;
}

}  // namespace

Row row_of(std::string name, const std::vector<Session>& sessions) {
  Row row;
  row.name = std::move(name);
  row.paintings = static_cast<int>(sessions.size());
  double window = 0, found = 0, good = 0, reports = 0, good_reports = 0, harmed = 0, edge = 0;
  std::vector<int> tests;
  for (const Session& one : sessions) {
    window += one.has_window ? 1 : 0;
    found += one.has_window && one.found ? 1 : 0;
    good += one.has_window && one.truly_good() ? 1 : 0;
    reports += one.reported ? 1 : 0;
    good_reports += one.truly_good() ? 1 : 0;
    harmed += one.harmed ? 1 : 0;
    edge += one.harmed_edge ? 1 : 0;
    row.edge_tests += one.edge_tests / static_cast<double>(sessions.size());
    row.largest_risk += one.largest_true_risk / static_cast<double>(sessions.size());
    tests.push_back(one.tests);
  }
  const auto all = static_cast<double>(sessions.size());
  row.window = percent(window, all);
  row.found = percent(found, window);
  row.good = percent(good, window);
  row.good_reports = percent(good_reports, reports);
  row.harmed = percent(harmed, all);
  row.harmed_edge = percent(edge, all);
  std::sort(tests.begin(), tests.end());
  row.tests_median = tests[tests.size() / 2];
  row.tests_p90 = tests[tests.size() * 9 / 10];
  return row;
}

std::string table_head() {
  return "| way of testing | found | truly good | good of reported | harm | harm at edge | tests, median / p90 | at "
         "edge | "
         "largest risk |\n| --- | --- | --- | --- | --- | --- | --- | --- | --- |\n";
}

std::string table_line(const Row& row) {
  return fmt::format("| {} | {:.1f} | {:.1f} | {:.1f} | {:.1f} | {:.1f} | {} / {} | {:.2f} | {:.3f} |\n", row.name,
                     row.found, row.good, row.good_reports, row.harmed, row.harmed_edge, row.tests_median,
                     row.tests_p90, row.edge_tests, row.largest_risk);
}

Calibrated calibrated(const std::vector<Prediction>& predictions, const std::vector<Coverage>& coverage) {
  Calibrated sum;
  const auto count = static_cast<double>(predictions.size());
  for (const Prediction& one : predictions) {
    const double moved = one.moved ? 1 : 0;
    const double affected = one.affected ? 1 : 0;
    sum.effect_bias += (one.effect - moved) / count;
    sum.risk_bias += (one.risk - affected) / count;
    sum.effect_brier += square(one.effect - moved) / count;
    sum.risk_brier += square(one.risk - affected) / count;
  }
  for (const Coverage& one : coverage) {
    sum.varnish_cover += percent(one.varnish ? 1 : 0, static_cast<double>(coverage.size()));
    sum.paint_cover += percent(one.paint ? 1 : 0, static_cast<double>(coverage.size()));
    sum.least_effective = std::min(sum.least_effective, one.least_effective);
  }
  return sum;
}

std::string reliability_table(const std::vector<Prediction>& predictions, bool of_risk) {
  static constexpr std::array<double, 7> effect_edges = {0, 0.1, 0.25, 0.5, 0.75, 0.9, 1.0001};
  static constexpr std::array<double, 7> risk_edges = {0, 0.005, 0.01, 0.02, 0.05, 0.1, 1.0001};
  const std::array<double, 7>& edges = of_risk ? risk_edges : effect_edges;
  std::string text = "| predicted | swabs | mean predicted | seen |\n| --- | --- | --- | --- |\n";
  for (std::size_t bin = 0; bin + 1 < edges.size(); ++bin) {
    double count = 0, predicted = 0, seen = 0;
    for (const Prediction& one : predictions) {
      const double chance = of_risk ? one.risk : one.effect;
      if (chance < edges[bin] || chance >= edges[bin + 1]) continue;
      count += 1;
      predicted += chance;
      seen += (of_risk ? one.affected : one.moved) ? 1 : 0;
    }
    if (count > 0)
      text += fmt::format("| {} to {} | {:.0f} | {:.3f} | {:.3f} |\n", edges[bin], std::min(edges[bin + 1], 1.0), count,
                          predicted / count, seen / count);
  }
  return text;
}

}  // namespace gentlest::study
