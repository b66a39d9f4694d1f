// A small job with two series of its own, planned once, and where its marks stand in a picture.
#pragma once

#include "shipped.hpp"

#include "gentlest/answers/bench.hpp"
#include "gentlest/answers/mixing.hpp"
#include "io/job_file.hpp"
#include "report/draw/plot.hpp"

#include <regex>
#include <string>
#include <vector>

namespace gentlest::test {

inline const std::string own_series_lines =
    "series:\n"
    "  - {name: our spirits, mixtures: [\"isooctane 100\", \"isooctane 80, ethanol 20\", \"isooctane 50, ethanol "
    "50\"]}\n"
    "  - {name: old & wet, mixtures: [\"toluene 60, isooctane 40\", \"ethanol 100\", \"water 100\"]}\n";

inline std::string small_job_text(const std::string& more) {
  return "gentlest_job: 1\nobject: {width_cm: 40, height_cm: 30}\nlayers:\n"
         "  - {name: varnish, role: remove, found: dammar_aged}\n  - {name: paint, role: keep, found: oil_paint_old}\n"
         "shelf: [isooctane, isopropanol, {solvent: ethanol, grade: \"96 %\"}]\n"
         "limits: {parts: 2, step_percent: 10}\n" +
         more;
}

struct OwnSeriesPlan {
  Plan plan;
  Bench bench;  ///< with the series
};

inline OwnSeriesPlan planned(const std::string& more) {
  const Catalogue& catalogue = shipped_catalogue();
  OwnSeriesPlan made{make_plan(load_job(small_job_text(more), "job.yaml", catalogue), catalogue), {}};
  made.bench = prepare_bench(made.plan, catalogue);
  made.bench.published = compare_published(made.plan, catalogue);
  return made;
}

inline const OwnSeriesPlan& own_series_plan() {
  static const OwnSeriesPlan made = planned(own_series_lines);
  return made;
}

/// Middles of the marks with this key, in the order in which they are drawn: of circles, boxes and funnels.
inline std::vector<Xy> marks_of(const std::string& svg, const std::string& key) {
  static const std::regex circle("cx=\"([-0-9.]+)\" cy=\"([-0-9.]+)\"");
  static const std::regex box("x=\"([-0-9.]+)\" y=\"([-0-9.]+)\" width=\"([0-9.]+)\"");
  static const std::regex funnel("d=\"M([-0-9.]+) ([-0-9.]+)L([-0-9.]+) ([-0-9.]+)");
  std::vector<Xy> middles;
  const std::string start = "<g " + key + ">";
  for (std::size_t at = svg.find(start); at != std::string::npos; at = svg.find(start, at + 1)) {
    const std::string one = svg.substr(at, svg.find("</g>", at) - at);
    std::smatch m;
    const auto number = [&](int i) { return std::stod(m[static_cast<std::size_t>(i)]); };
    if (std::regex_search(one, m, circle))
      middles.push_back({number(1), number(2)});
    else if (std::regex_search(one, m, box))
      middles.push_back({number(1) + number(3) / 2, number(2) + number(3) / 2});
    else if (std::regex_search(one, m, funnel))  // its point is lowest; 2.2 of 3.4 half sizes above it the level side
      middles.push_back({number(1), number(2) + (number(4) - number(2)) * 1.2 / 2.2});
  }
  return middles;
}

inline bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace gentlest::test
