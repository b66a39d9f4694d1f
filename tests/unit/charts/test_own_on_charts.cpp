// The job's own series on each picture of the plan: at their places, by name, or with the reason why not.
#include "near.hpp"
#include "own_series_plan.hpp"
#include "unjudged_job.hpp"

#include "report/charts/charts.hpp"
#include "report/own_series/own_words.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cmath>

namespace gentlest::test {

namespace {

const std::string spirits = "data-series=\"our spirits\"";
const std::string wet = "data-series=\"old &amp; wet\"";

Chart drawn(const std::string& kind) {
  return chart_of(kind, own_series_plan().plan, own_series_plan().bench);
}

// By volume, of what stands in the bottles: the parameters of a mixture are the means of its liquids' by volume (Hansen
// 2007, "Hansen Solubility Parameters", 2nd ed., ch. 1; from memory), and Teas fractions their shares in their sum.
struct Shares {
  double isooctane = 0, ethanol = 0, toluene = 0, water = 0;
};
const std::array<Shares, 3> of_spirits = {{{1, 0, 0, 0}, {0.8, 0.2, 0, 0}, {0.5, 0.5, 0, 0}}};
const std::array<Shares, 3> of_wet = {{{0.4, 0, 0.6, 0}, {0, 1, 0, 0}, {0, 0, 0, 1}}};

Hansen of_bottle(const std::string& label) {
  for (const Liquid& liquid : own_series_plan().plan.shelf)
    if (liquid.label == label) return liquid.hansen;
  return shipped_catalogue().find_solvent(label)->hansen->chosen.value;
}

Hansen by_volume(const Shares& s) {
  const Hansen a = of_bottle("isooctane");
  const Hansen b = of_bottle("ethanol 96 %");
  const Hansen c = of_bottle("toluene");
  const Hansen d = of_bottle("water");
  const auto mean = [&](double Hansen::*of) {
    return s.isooctane * a.*of + s.ethanol * b.*of + s.toluene * c.*of + s.water * d.*of;
  };
  return {mean(&Hansen::dD), mean(&Hansen::dP), mean(&Hansen::dH)};
}

// Two coordinates of which the place in a picture is a linear function.
using Pair = std::array<double, 2>;

Pair teas(const Hansen& point) {
  const double sum = point.dD + point.dP + point.dH;
  return {100 * point.dD / sum, 100 * point.dP / sum};
}

// Where a point must stand, by where the shelf's three bottles stand: their marks are the picture's own scale.
Xy by_bottles(const std::array<Pair, 3>& known, const std::array<Xy, 3>& seen, const Pair& point) {
  const double ax = known[1][0] - known[0][0], ay = known[1][1] - known[0][1];
  const double bx = known[2][0] - known[0][0], by = known[2][1] - known[0][1];
  const double px = point[0] - known[0][0], py = point[1] - known[0][1];
  const double det = ax * by - ay * bx;
  const double s = (px * by - py * bx) / det, t = (ax * py - ay * px) / det;
  return {seen[0].x + s * (seen[1].x - seen[0].x) + t * (seen[2].x - seen[0].x),
          seen[0].y + s * (seen[1].y - seen[0].y) + t * (seen[2].y - seen[0].y)};
}

template <class Coordinates>
void check_places(const std::string& svg, std::size_t view, Coordinates coordinates) {
  const std::array<std::string, 3> labels = {"isooctane", "isopropanol", "ethanol 96 %"};
  std::array<Pair, 3> known{};
  std::array<Xy, 3> seen{};
  for (std::size_t i = 0; i < 3; ++i) {
    known[i] = coordinates(of_bottle(labels[i]));
    const std::vector<Xy> marks = marks_of(svg, "data-bottle=\"" + labels[i] + "\"");
    REQUIRE(marks.size() > view);
    seen[i] = marks[view];
  }
  for (const auto& [key, shares] : {std::pair{spirits, of_spirits}, {wet, of_wet}}) {
    const std::vector<Xy> marks = marks_of(svg, key);
    REQUIRE(marks.size() >= 3 * (view + 1));
    for (std::size_t i = 0; i < 3; ++i) {
      INFO(key << " " << i << ", view " << view);
      const Xy wanted = by_bottles(known, seen, coordinates(by_volume(shares[i])));
      CHECK(marks[3 * view + i].x == near(wanted.x, 0.3));
      CHECK(marks[3 * view + i].y == near(wanted.y, 0.3));
    }
  }
}

std::size_t count(const std::string& text, const std::string& part) {
  std::size_t found = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++found;
  return found;
}

void check_named(const Chart& chart) {
  INFO(chart.kind);
  CHECK(count(chart.drawing.body, ">our spirits (of this job)</text>") == 1);
  CHECK(count(chart.drawing.body, ">old &amp; wet (of this job)</text>") == 1);
  CHECK(holds(chart.drawing.body, "<title>our spirits 2: isooctane 80, ethanol 96 % 20; effect "));
  CHECK(holds(chart.caption, "the job's own series, each named where it ends"));
}

}  // namespace

TEST_CASE("own series stand in the triangle where their shares by volume put them") {
  const Chart chart = drawn("triangle");
  check_places(chart.drawing.body, 0, teas);
  check_named(chart);
  CHECK(holds(chart.drawing.body, ">our spirits</text>"));
  // Water lies far to the left: the triangle is drawn from lower down, so that it stands inside.
  const Pair water = teas(of_bottle("water"));
  const std::string from = "drawn from fd ";
  const double low = std::stod(chart.caption.substr(chart.caption.find(from) + from.size()));
  CHECK(low <= water[0]);
  Bench without = own_series_plan().bench;
  without.published.clear();
  const std::string narrow = triangle_chart(own_series_plan().plan, without).caption;
  CHECK(std::stod(narrow.substr(narrow.find(from) + from.size())) > water[0]);
}

TEST_CASE("own series stand in each view of Hansen space, and no view leaves one outside") {
  const Chart chart = drawn("planes");
  check_places(chart.drawing.body, 0, [](const Hansen& p) { return Pair{p.dD, p.dH}; });
  check_places(chart.drawing.body, 1, [](const Hansen& p) { return Pair{p.dP, p.dH}; });
  check_places(chart.drawing.body, 2, [](const Hansen& p) { return Pair{p.dD, p.dP}; });
  check_named(chart);
  for (const std::string& key : {spirits, wet})
    for (const Xy at : marks_of(chart.drawing.body, key)) {
      CHECK((at.x > 40 && at.x < chart_width));
      CHECK((at.y > 0 && at.y < chart.drawing.height));
    }
  CHECK(holds(chart.description, "Own series our spirits, in its order: 1: dD 14.1, dP 0.0, dH 0.0; 2: "));
}

TEST_CASE("own series stand in the picture of risk at their effect and risk; what lies outside is told by number") {
  const Chart chart = drawn("risk");
  check_named(chart);
  const std::vector<OwnLine> lines = own_lines(own_series_plan().bench.published);
  const double frame_right = chart_width - 12;
  for (const OwnLine& line : lines) {
    const std::string key = line.name == "our spirits" ? spirits : wet;
    const std::vector<Xy> marks = marks_of(chart.drawing.body, key);
    std::vector<std::size_t> outside;
    std::size_t inside = 0;
    for (std::size_t i = 0; i < line.compared->judged.mixtures.size(); ++i) {
      // The risk axis ends at the first round figure past 1.6 limits of 25 %, which is 40 %; the frame is 456 by 300.
      const double risk = 100 * *line.compared->judged.mixtures[i].risk;
      if (risk > 40) {
        outside.push_back(i);
        continue;
      }
      REQUIRE(marks.size() > inside);
      CHECK(marks[inside].x == near(52 + 456 * risk / 40, 0.1));
      CHECK(marks[inside].y == near(310 - 300 * *line.compared->judged.mixtures[i].effect, 0.1));
      CHECK(marks[inside].x <= frame_right);
      ++inside;
    }
    CHECK(marks.size() == inside);
    if (!outside.empty()) CHECK(holds(chart.caption, own_numbers(line, outside)));
  }
  // One that lies outside on purpose, with a small limit: it is told, and the published ones are counted without it.
  OwnSeriesPlan strict = own_series_plan();
  strict.plan.job.limits.risk_limit = 0.02;
  strict.bench.mixtures.clear();  // the axis ends past the limit and past them
  const Chart narrow = risk_chart(strict.plan, strict.bench);
  CHECK(holds(narrow.caption, "Beyond the right edge, at more risk: 3 of \"our spirits\""));
  CHECK(marks_of(narrow.drawing.body, spirits).size() == 2);  // the third is not drawn beyond the frame
  Bench published = strict.bench;
  published.published.resize(published.published.size() - 2);
  const std::string counted = " of their mixtures lie to the right";
  const std::string alone = risk_chart(strict.plan, published).caption;
  REQUIRE(holds(alone, counted));
  const std::size_t at = alone.find(counted);
  CHECK(holds(narrow.caption, alone.substr(at - 3, 3 + counted.size())));
}

TEST_CASE("each own series has a panel of chances, with the bars that the bench would give") {
  const Chart chart = drawn("chances");
  for (const std::string name : {"our spirits", "old &amp; wet"})
    CHECK(count(chart.drawing.body, ">" + name + "</text>") == 1);
  const Plan& plan = own_series_plan().plan;
  for (const OwnLine& line : own_lines(own_series_plan().bench.published))
    for (const JudgedMixture& judged : line.compared->judged.mixtures)
      for (std::size_t i = 0; i < plan.layers.size(); ++i) {
        const std::vector<std::optional<Band>> bands = chance_bands(judged, plan);
        REQUIRE(bands[i]);
        CHECK(bands[i]->low <= judged.outlooks[i]->chance + 0.02);
        CHECK(bands[i]->high >= judged.outlooks[i]->chance - 0.02);
      }
  // Three mixtures, two layers, two series.
  CHECK(count(chart.drawing.body, "<g " + spirits + " data-layer=") == 6);
  CHECK(count(chart.drawing.body, "<g " + wet + " data-layer=") == 6);
  CHECK(holds(chart.drawing.body, "<title>varnish, our spirits 2: "));
  CHECK(holds(chart.caption, "Below the ladder, each on its own: the job's own series."));
  CHECK(holds(chart.description, "Own series our spirits, in its order: 1: varnish "));
}

TEST_CASE("own series stand in the picture of drying in the vial, with a panel of their risk") {
  const Chart chart = drawn("drift");
  check_named(chart);
  // Three marks in the vial and three lines of risk.
  CHECK(count(chart.drawing.body, "<g " + spirits + ">") == 6);
  CHECK(count(chart.drawing.body, ">old &amp; wet</text>") == 2);
  CHECK(holds(chart.caption, "Their way and what is left of them are not drawn."));
  // dP and dH by the scale that the two ends of a rung's way give: its disc and its ring.
  const std::vector<Xy> marks = marks_of(chart.drawing.body, spirits);
  REQUIRE(marks.size() >= 3);
  const Hansen first = by_volume(of_spirits[0]), second = by_volume(of_spirits[1]), third = by_volume(of_spirits[2]);
  CHECK((marks[1].x - marks[0].x) / (marks[2].x - marks[0].x) ==
        near((second.dP - first.dP) / (third.dP - first.dP), 0.01));
  CHECK((marks[1].y - marks[0].y) / (marks[2].y - marks[0].y) ==
        near((second.dH - first.dH) / (third.dH - first.dH), 0.01));
}

TEST_CASE(
    "own mixtures of the three bottles stand on the triangle of mixtures, the others are told with their liquids") {
  const OwnSeriesPlan& made = own_series_plan();
  const std::optional<MixingGrid> grid = mix_three(made.plan, shipped_catalogue());
  REQUIRE(grid);
  const Chart chart = mixing_chart(made.plan, grid, made.bench.published);
  check_named(chart);
  const std::vector<Xy> marks = marks_of(chart.drawing.body, spirits);
  REQUIRE(marks.size() == 3);
  const auto corner = [&](const std::string& label) {
    return marks_of(chart.drawing.body, "data-bottle=\"" + label + "\"").at(0);
  };
  const Xy a = corner("isooctane"), b = corner("ethanol 96 %");
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(marks[i].x == near(a.x + of_spirits[i].ethanol * (b.x - a.x), 0.1));
    CHECK(marks[i].y == near(a.y + of_spirits[i].ethanol * (b.y - a.y), 0.1));
  }
  CHECK(marks_of(chart.drawing.body, wet).size() == 1);
  CHECK(holds(chart.caption, "Not on it, since they hold other liquids: 1, 3 of \"old & wet\" (toluene, water)."));
  CHECK(holds(chart.description, "Not on it, since they hold other liquids: "));
  const Chart before = mixing_chart(made.plan, grid);
  CHECK(!holds(before.caption, "own series"));
}

TEST_CASE("where nothing is drawn the own series are told, and without any no picture speaks of them") {
  // No sphere for what is to go, so no chart but its reason.
  Job job = unjudged_job("unknown", {"oil_paint_old"});
  job.series.push_back({"our spirits", {"isooctane 100"}, {}, {}});
  const Plan plan = make_plan(job, shipped_catalogue());
  Bench bench = prepare_bench(plan, shipped_catalogue());
  bench.published = compare_own(plan, shipped_catalogue());
  for (const std::string& kind : chart_kinds()) {
    const Chart chart = chart_of(kind, plan, bench);
    CHECK(holds(chart.caption, "The job's own series have no picture to stand in: our spirits."));
    CHECK(chart.description == chart.caption);
  }
  CHECK(holds(mixing_chart(plan, std::nullopt, bench.published).caption, "no picture to stand in: our spirits."));
  Bench without = own_series_plan().bench;
  without.published.erase(without.published.end() - 2, without.published.end());
  for (const std::string& kind : chart_kinds()) {
    const Chart chart = chart_of(kind, own_series_plan().plan, without);
    CHECK(!holds(chart.caption + chart.description, "wn series"));
    CHECK(!holds(chart.drawing.body, "data-series"));
  }
}

TEST_CASE("without a layer to keep that has a sphere own series stand where no risk is needed") {
  Job job = unjudged_job("dammar_aged", {"unknown"});
  job.series.push_back({"our spirits", {"isooctane 100", "acetone 100"}, {}, {}});
  const Plan plan = make_plan(job, shipped_catalogue());
  REQUIRE(plan.by_effect_alone);
  Bench bench = prepare_bench(plan, shipped_catalogue());
  bench.published = compare_own(plan, shipped_catalogue());
  CHECK(holds(chart_of("risk", plan, bench).caption, "no picture to stand in: our spirits"));
  for (const char* kind : {"chances", "planes", "triangle", "drift"})
    CHECK(marks_of(chart_of(kind, plan, bench).drawing.body, spirits).size() +
              count(chart_of(kind, plan, bench).drawing.body, spirits + " data-layer") >
          0);
  CHECK(holds(chart_of("drift", plan, bench).caption, "their way is not drawn."));
}

}  // namespace gentlest::test
