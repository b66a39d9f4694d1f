#include "study/figures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace gentlest::study {

namespace {

std::string text_of(const Share& share) {
  return share.of > 0 ? fmt::format("{:.0f} ± {:.0f}", share.percent, std::max(share.error, 1.0)) : "-";
}

template <class Holds, class Counts>
Share count(const std::vector<Session>& sessions, const Holds& holds, const Counts& counts) {
  int part = 0, whole = 0;
  for (const Session& one : sessions) {
    if (!counts(one)) continue;
    ++whole;
    part += holds(one) ? 1 : 0;
  }
  return share_of(part, whole);
}

}  // namespace

Share share_of(int part, int whole) {
  if (whole == 0) return {};
  const double share = static_cast<double>(part) / whole;
  return {100 * share, 100 * std::sqrt(share * (1 - share) / whole), whole};
}

Row row_of(std::string name, const std::vector<Session>& sessions) {
  const auto all = [](const Session&) { return true; };
  const auto has_window = [](const Session& one) { return one.has_window; };
  const auto has_none = [](const Session& one) { return !one.has_window; };
  const auto is_found = [](const Session& one) { return one.ending == Ending::found; };
  const auto is_good = [](const Session& one) { return one.truly_good; };
  Row row;
  row.name = std::move(name);
  row.window = count(sessions, has_window, all);
  row.way = count(
      sessions, [](const Session& one) { return one.has_way; }, has_window);
  row.found = count(sessions, is_found, has_window);
  row.good = count(sessions, is_good, is_found);
  row.false_found = count(
      sessions, [&](const Session& one) { return is_found(one) && !one.truly_good; }, all);
  row.harmed = count(
      sessions, [](const Session& one) { return one.harmed; }, all);
  row.harmed_edge = count(
      sessions, [](const Session& one) { return one.harmed_edge; }, all);
  row.right_no_window = count(
      sessions, [&](const Session& one) { return !is_found(one); }, has_none);
  row.wrong_no_window = count(
      sessions, [](const Session& one) { return one.ending == Ending::no_window; }, has_window);
  std::vector<int> tests;
  for (const Session& one : sessions) tests.push_back(one.tests);
  std::sort(tests.begin(), tests.end());
  row.tests_median = tests[tests.size() / 2];
  row.tests_p90 = tests[tests.size() * 9 / 10];
  return row;
}

std::string table_head(const std::string& first) {
  return "| " + first +
         " | found | truly good of found | false \"found\" | harm on the picture | harm at the edge | tests, median / "
         "p90 | right \"none\" | wrong \"no window\" |\n| --- | --- | --- | --- | --- | --- | --- | --- | --- |\n";
}

std::string table_line(const Row& row) {
  return fmt::format("| {} | {} | {} | {} | {} | {} | {} / {} | {} | {} |\n", row.name, text_of(row.found),
                     text_of(row.good), text_of(row.false_found), text_of(row.harmed), text_of(row.harmed_edge),
                     row.tests_median, row.tests_p90, text_of(row.right_no_window), text_of(row.wrong_no_window));
}

Bias bias_of(const std::vector<Prediction>& predictions, bool of_risk) {
  Bias bias;
  bias.swabs = static_cast<int>(predictions.size());
  for (const Prediction& one : predictions) {
    const double off = of_risk ? one.risk - (one.affected ? 1 : 0) : one.effect - (one.moved ? 1 : 0);
    bias.points += 100 * off / bias.swabs;
    bias.brier += off * off / bias.swabs;
  }
  if (bias.swabs > 0) bias.error = 100 * std::sqrt(bias.brier / bias.swabs);
  return bias;
}

std::string reliability_table(const std::vector<Prediction>& predictions, bool of_risk) {
  static constexpr std::array<double, 7> effect_edges = {0, 0.1, 0.25, 0.5, 0.75, 0.9, 1.0001};
  static constexpr std::array<double, 7> risk_edges = {0, 0.02, 0.05, 0.1, 0.2, 0.4, 1.0001};
  const std::array<double, 7>& edges = of_risk ? risk_edges : effect_edges;
  std::string text = "| predicted, % | swabs | mean predicted, % | seen, % |\n| --- | --- | --- | --- |\n";
  for (std::size_t bin = 0; bin + 1 < edges.size(); ++bin) {
    int count = 0, seen = 0;
    double predicted = 0;
    for (const Prediction& one : predictions) {
      const double chance = of_risk ? one.risk : one.effect;
      if (chance < edges[bin] || chance >= edges[bin + 1]) continue;
      ++count;
      predicted += chance;
      seen += (of_risk ? one.affected : one.moved) ? 1 : 0;
    }
    const Share share = share_of(seen, count);
    if (count > 0)
      text +=
          fmt::format("| {:.0f} to {:.0f} | {} | {:.1f} | {:.1f} ± {:.1f} |\n", 100 * edges[bin],
                      100 * std::min(edges[bin + 1], 1.0), count, 100 * predicted / count, share.percent, share.error);
  }
  return text;
}

}  // namespace gentlest::study
