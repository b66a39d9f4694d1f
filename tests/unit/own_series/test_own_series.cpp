// The job's own series: how each looks, what it is called, and how their panels lie.
#include "near.hpp"
#include "own_series_plan.hpp"

#include "report/own_series/own_words.hpp"

#include <catch2/catch.hpp>

#include <set>
#include <utility>

namespace gentlest::test {

namespace {

OwnLine line_of(std::size_t mixtures, ComparedSeries& kept) {
  kept.series = {SeriesKind::own, {}, "x"};
  kept.judged.mixtures.assign(mixtures, own_series_plan().bench.mixtures.front().judged);
  return {&kept, "x", own_series_look(0), "s1"};
}

}  // namespace

TEST_CASE("own series are those of the job, in its order, and no two look alike") {
  const std::vector<ComparedSeries>& compared = own_series_plan().bench.published;
  CHECK(compared.size() > 2);  // the published ones come first and are no own series
  const std::vector<OwnLine> lines = own_lines(compared);
  REQUIRE(lines.size() == 2);
  CHECK(lines[0].name == "our spirits");
  CHECK(lines[1].name == "old & wet");
  CHECK(lines[0].key != lines[1].key);
  std::set<std::pair<std::string, Mark>> looks;
  for (std::size_t n = 0; n < 16; ++n) looks.insert({own_series_look(n).dash, own_series_look(n).mark});
  CHECK(looks.size() == 16);
  for (std::size_t n = 0; n < 4; ++n) {
    for (const LayerLook& look : removed_looks) CHECK(look.mark != own_series_look(n).mark);
    for (const LayerLook& look : kept_looks) CHECK(look.mark != own_series_look(n).mark);
    for (const LayerLook& look : series_looks) CHECK(look.mark != own_series_look(n).mark);
    CHECK(std::string(own_series_look(n).dash) != "");
  }
}

TEST_CASE("a mixture of an own series is named by its place in it") {
  const std::vector<OwnLine> lines = own_lines(own_series_plan().bench.published);
  CHECK(own_numbers(lines[0], {1, 2}) == "2, 3 of \"our spirits\"");
  CHECK(own_numbers(lines[0], {0, 1, 2}) == "\"our spirits\"");
  CHECK(own_numbers(lines[0], {}).empty());
  CHECK(pointed_own_words(lines[0], 1).rfind("our spirits 2: isooctane 80, ethanol 96 % 20; effect ", 0) == 0);
  CHECK(own_lines_words({}).empty());
  CHECK(own_absence_words({}, OwnAbsence::shows_tests).empty());
}

TEST_CASE("a line runs between neighbours that have a place, and the name stands at the last of them") {
  ComparedSeries kept;
  const OwnLine line = line_of(4, kept);
  Drawing drawing;
  PointNames points;
  draw_own_line(drawing, line, {Xy{0, 0}, Xy{10, 0}, std::nullopt, Xy{30, 5}}, points);
  std::size_t strokes = 0;
  for (std::size_t at = drawing.body.find("stroke-dasharray"); at != std::string::npos;
       at = drawing.body.find("stroke-dasharray", at + 1))
    ++strokes;
  CHECK(strokes == 1);  // the fourth stands alone
  CHECK(marks_of(drawing.body, "data-series=\"x\"") == std::vector<Xy>{{0, 0}, {10, 0}, {30, 5}});
  REQUIRE(points.names.size() == 1);
  CHECK(points.names[0].text == "x");
  CHECK(points.names[0].point == Xy{30, 5});
}

TEST_CASE("panels lie two in a row, one of many mixtures alone, and none on another") {
  std::vector<ComparedSeries> kept(5);
  std::vector<OwnLine> lines;
  for (const std::size_t mixtures : {3u, 4u, 13u, 2u, 2u}) lines.push_back(line_of(mixtures, kept[lines.size()]));
  const SeriesPanels panels = lay_panels(lines, {10, 100}, 400, 60);
  REQUIRE(panels.each.size() == 5);
  CHECK(panels.bottom == near(100 + 3 * 60, 1e-9));
  CHECK(panels.each[2].width == near(400, 1e-9));
  CHECK(panels.each[0].corner.y == panels.each[1].corner.y);
  for (std::size_t i = 0; i < 5; ++i) {
    CHECK(panels.each[i].corner.x + panels.each[i].width <= 410 + 1e-9);
    for (std::size_t k = 0; k < i; ++k)
      if (panels.each[i].corner.y == panels.each[k].corner.y)
        CHECK(panels.each[k].corner.x + panels.each[k].width < panels.each[i].corner.x);
  }
  CHECK(lay_panels({lines[0]}, {10, 100}, 400, 60).each.front().width == near(400, 1e-9));
  CHECK(lay_panels({}, {10, 100}, 400, 60).bottom == near(100, 1e-9));
}

}  // namespace gentlest::test
