#include "report/charts/drift_shares.hpp"

#include "report/charts/marks.hpp"
#include "report/form/format.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace gentlest {

namespace {

constexpr double shares_left = 46;
constexpr double gap = 34;
constexpr double height = 66;
constexpr double row = height + 46;
constexpr std::size_t columns = 3;
constexpr double width = (chart_width - shares_left - 14 - gap * (columns - 1)) / columns;

// A bottle's area: a grey and a pattern, so that neighbours differ in both.
struct AreaLook {
  const char* fill;
  Hatch hatch;
};
constexpr std::array<AreaLook, 6> area_looks = {{{"#f4f4f4", Hatch::none},
                                                 {"#a8a8a8", Hatch::rising},
                                                 {"#d9d9d9", Hatch::dots},
                                                 {"#8a8a8a", Hatch::none},
                                                 {"#ffffff", Hatch::falling},
                                                 {"#c0c0c0", Hatch::crossed}}};

struct Area {
  std::string label;
  AreaLook look;
  std::string pattern;  // what a pen fills with; "none" where there is none
};

// Bottles by how late they leave: of the mixtures taken in turn, those of which most is left at the end first.
std::vector<std::string> bottles_in(const Bench& bench) {
  std::vector<std::string> labels;
  for (const BenchMixture& one : bench.mixtures) {
    const JudgedMixture& made = as_made(one);
    if (!made.fate.drift) continue;
    const std::vector<double>& rest = made.fate.drift->path.back().volume_fractions;
    std::vector<std::size_t> order(rest.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return rest[a] > rest[b]; });
    for (const std::size_t i : order) {
      const std::string& label = made.mixture.parts()[i].liquid.label;
      if (std::find(labels.begin(), labels.end(), label) == labels.end()) labels.push_back(label);
    }
  }
  return labels;
}

std::vector<Area> areas_of(Drawing& drawing, const Bench& bench) {
  std::vector<Area> areas;
  for (const std::string& label : bottles_in(bench)) {
    const AreaLook& look = area_looks[areas.size() % area_looks.size()];
    const std::string id = fmt::format("share-{}", areas.size());
    areas.push_back({label, look, add_hatch(drawing, id, look.hatch, ink)});
  }
  return areas;
}

double share_of(const JudgedMixture& made, const DriftPoint& step, const std::string& label) {
  for (std::size_t i = 0; i < made.mixture.parts().size(); ++i)
    if (made.mixture.parts()[i].liquid.label == label) return step.volume_fractions[i];
  return 0;
}

void draw_area(Drawing& drawing, const std::vector<Xy>& edge, const Area& area, const std::string& words) {
  begin_mark(drawing, {{"bottle", area.label}}, words);
  add_path(drawing, edge, {ink, 0.7, {}, area.look.fill}, true);
  if (area.pattern != "none") add_path(drawing, edge, {"none", 1, {}, area.pattern}, true);
  end_mark(drawing);
}

void draw_mixture_shares(Drawing& drawing, const Frame& frame, const JudgedMixture& made,
                         const std::vector<Area>& areas) {
  const std::vector<DriftPoint>& path = made.fate.drift->path;
  std::vector<double> below(path.size(), 0);
  for (const Area& area : areas) {
    std::vector<Xy> edge;
    for (std::size_t k = path.size(); k-- > 0;)
      edge.push_back(place_in(frame, 100 * path[k].evaporated, 100 * below[k]));
    double most = 0;
    for (std::size_t k = 0; k < path.size(); ++k) {
      const double share = share_of(made, path[k], area.label);
      most = std::max(most, share);
      below[k] = std::min(1.0, below[k] + share);
      edge.push_back(place_in(frame, 100 * path[k].evaporated, 100 * below[k]));
    }
    if (most > 0)
      draw_area(drawing, edge, area,
                fmt::format("{}: {} % at first, {} % of the last trace", area.label,
                            fixed(100 * share_of(made, path.front(), area.label), 0),
                            fixed(100 * share_of(made, path.back(), area.label), 0)));
  }
}

}  // namespace

double draw_drying_shares(Drawing& drawing, double top, const Plan& plan, const Bench& bench) {
  const std::vector<Area> areas = areas_of(drawing, bench);
  add_text(drawing, {12, top + 12}, "What is left, % of its volume (upwards), against evaporated, % of volume",
           {small_text});
  double y = top + 24;
  std::size_t shown = 0;
  for (std::size_t i = 0; i < bench.mixtures.size(); ++i) {
    const JudgedMixture& made = as_made(bench.mixtures[i]);
    if (!made.fate.drift) continue;
    const auto column = static_cast<double>(shown % columns);
    if (shown > 0 && shown % columns == 0) y += row;
    ++shown;
    const Frame frame{
        {shares_left + column * (width + gap), y + 16}, width, height, {"", 0, 100, 50, 0}, {"", 0, 100, 50, 0}};
    begin_mark(drawing, keys_of_mixture(plan, bench, i), pointed_words(plan, bench, i));
    draw_frame(drawing, frame);
    draw_mixture_shares(drawing, frame, made, areas);
    add_text(drawing, {frame.corner.x + width / 2, y + 11},
             shortened((ladder_rungs(plan).empty() ? "" : "rung ") + mark_of(plan, bench, i), small_text, width),
             {small_text, Anchor::middle, true});
    end_mark(drawing);
  }
  y += row - 4;
  std::vector<LegendEntry> legend;
  for (const Area& area : areas) {
    legend.push_back({area.label, {ink, 0.7, {}, area.look.fill}});
    legend.back().pattern = area.pattern;
  }
  y += draw_legend(drawing, {shares_left, y}, chart_width - shares_left - 8, legend);
  return y - top + 4;
}

}  // namespace gentlest
