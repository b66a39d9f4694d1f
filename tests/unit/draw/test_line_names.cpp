// Names on lines: every name belongs to the line that it stands on or points at, and to no other.
#include "report/draw/line_names.hpp"

#include "gentlest/answers/bench.hpp"
#include "io/catalogue_files.hpp"
#include "io/job_file.hpp"
#include "report/charts/charts.hpp"

#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <regex>

using namespace gentlest;

namespace {

constexpr double size = 11;
const Box bounds{0, 0, 300, 200};

double height(int highest) {
  return *rc::gen::inRange(0, highest * 10) / 10.0;
}

std::vector<LineToName> random_lines() {
  std::vector<LineToName> lines;
  const int count = *rc::gen::inRange(1, 9);
  for (int i = 0; i < count; ++i) {
    LineToName line{std::to_string(i + 1), {}};
    for (double x = 0; x <= 300; x += 50) line.points.push_back({x, height(200)});
    lines.push_back(line);
  }
  return lines;
}

double distance_to(const std::vector<Xy>& line, Xy point) {
  double least = 1e9;
  for (std::size_t i = 1; i < line.size(); ++i)
    for (int k = 0; k <= 200; ++k) {
      const double t = k / 200.0;
      least = std::min(least, std::hypot(line[i - 1].x + t * (line[i].x - line[i - 1].x) - point.x,
                                         line[i - 1].y + t * (line[i].y - line[i - 1].y) - point.y));
    }
  return least;
}

bool is_crossed(const LineName& name, const std::vector<Xy>& line) {
  for (std::size_t i = 1; i < line.size(); ++i)
    if (crosses(line[i - 1], line[i], name.box)) return true;
  return false;
}

std::vector<Xy> points_of(const std::string& path) {
  static const std::regex pair("(-?[0-9.]+) (-?[0-9.]+)");
  std::vector<Xy> points;
  for (std::sregex_iterator at(path.begin(), path.end(), pair), end; at != end; ++at)
    points.push_back({std::stod((*at)[1]), std::stod((*at)[2])});
  return points;
}

// Where the leader begins that ends at a name; empty when none does.
std::optional<Xy> start_of_leader(const std::string& svg, Xy name) {
  static const std::regex leader(
      "<path d=\"([^\"]+)\" fill=\"none\" stroke=\"#000000\" stroke-width=\"0.7\"/>\n<circle");
  for (std::sregex_iterator at(svg.begin(), svg.end(), leader), end; at != end; ++at) {
    const std::vector<Xy> ends = points_of((*at)[1]);
    if (std::abs(ends[1].x - name.x) < 10 && std::abs(ends[1].y - name.y) < 7) return ends[0];
  }
  return std::nullopt;
}

}  // namespace

TEST_CASE("a name stands on its own line or points at it, and no other line crosses it") {
  rc::check([] {
    const std::vector<LineToName> lines = random_lines();
    const LineNames names = place_line_names(lines, size, bounds);
    std::size_t named = 0;
    for (const LineName& name : names.placed) {
      named += name.lines.size();
      for (const std::size_t own : name.lines) {
        const std::optional<double> y = height_at(lines[own].points, name.point.x);
        RC_ASSERT(y && std::abs(*y - name.point.y) < 2.6);
      }
      const Xy middle{(name.box.left + name.box.right) / 2, (name.box.top + name.box.bottom) / 2};
      if (!name.has_leader) RC_ASSERT(std::hypot(middle.x - name.point.x, middle.y - name.point.y) < 0.01);
      for (std::size_t i = 0; i < lines.size(); ++i)
        if (std::find(name.lines.begin(), name.lines.end(), i) == name.lines.end())
          RC_ASSERT_FALSE(is_crossed(name, lines[i].points));
      for (const LineName& other : names.placed)
        if (&other != &name) RC_ASSERT_FALSE(overlap(name.box, other.box));
    }
    RC_ASSERT(named <= lines.size());
    RC_ASSERT(named + names.without_room.size() >= names.placed.size());
    if (names.without_room.empty()) RC_ASSERT(named == lines.size());
  });
}

TEST_CASE("lines that run together share one name, lines that part do not") {
  const std::vector<Xy> low = {{0, 100}, {300, 100}};
  const std::vector<Xy> near_low = {{0, 101}, {300, 100}};
  const std::vector<Xy> climbing = {{0, 100}, {300, 20}};
  const LineNames names = place_line_names({{"1", low}, {"2", near_low}, {"3", climbing}}, size, bounds);
  REQUIRE(names.placed.size() == 2);
  CHECK(names.placed[0].text == "1, 2");
  CHECK(names.placed[1].text == "3");
  CHECK(names.without_room.empty());
}

TEST_CASE("in the drift chart each number stands on the line of its own rung") {
  const Catalogue catalogue = read_kept_catalogue(embedded_catalogue());
  Job job = load_job(demo_job_text(), "demo", catalogue);
  job.limits.lines = 0;  // the rungs of a line dry along one another, so most of them share a name
  for (const int rungs : {4, 7, 10}) {
    job.limits.rungs = rungs;
    const Plan plan = make_plan(job, catalogue);
    const Bench bench = prepare_bench(plan, catalogue);
    const std::string svg = drift_chart(plan, bench).drawing.body;
    // Of the lines in ink one a rung is drawn on the left, then one a rung on the right; so with the names.
    static const std::regex way(
        "<path d=\"([^\"]+)\" stroke-linejoin=\"round\" fill=\"none\" stroke=\"#[0-9a-f]+\" "
        "stroke-width=\"1.3\"");
    std::vector<std::vector<Xy>> lines;
    for (std::sregex_iterator at(svg.begin(), svg.end(), way), end; at != end; ++at)
      lines.push_back(points_of((*at)[1]));
    REQUIRE(lines.size() == 2 * ladder_rungs(plan).size());
    lines.erase(lines.begin(), lines.begin() + static_cast<std::ptrdiff_t>(ladder_rungs(plan).size()));
    const double left_edge = lines.front().front().x;
    static const std::regex word(
        "<text x=\"([0-9.]+)\" y=\"([0-9.]+)\" font-size=\"12\" [^>]*paint-order=\"stroke\" "
        "font-weight=\"bold\">([0-9]+)<");
    std::size_t named = 0;
    for (std::sregex_iterator at(svg.begin(), svg.end(), word), end; at != end; ++at) {
      const Xy middle{std::stod((*at)[1]), std::stod((*at)[2]) - 4};
      if (middle.x < left_edge) continue;  // of the picture on the left
      const auto rung = static_cast<std::size_t>(std::stoi((*at)[3]) - 1);
      INFO("rung " << rung + 1 << " of " << ladder_rungs(plan).size());
      ++named;
      const std::optional<Xy> pointed_at = start_of_leader(svg, middle);
      const Xy place = pointed_at.value_or(middle);
      const double own = distance_to(lines[rung], place);
      CHECK(own < (pointed_at ? 0.5 : 3));
      for (std::size_t i = 0; i < lines.size(); ++i)
        if (i != rung) CHECK(distance_to(lines[i], place) > own + (pointed_at ? 1 : 3));
    }
    CHECK(named > ladder_rungs(plan).size() / 2);
  }
}
