#include "study/simulation.hpp"

#include "core/base/random_numbers.hpp"

#include <algorithm>
#include <cmath>

namespace gentlest::study {

namespace {

constexpr std::array<double, 4> removal_places = {1.12, 1.045, 0.97, 0.90};
constexpr std::array<double, 4> harm_places = {1.00, 0.93, 0.86, 0.80};
constexpr double width = 0.05;

LevelChances chances_at(const std::array<double, 4>& places, double RED) {
  LevelChances at_least{};
  at_least[0] = 1;
  for (std::size_t i = 0; i < places.size(); ++i) at_least[i + 1] = 1 / (1 + std::exp(-(places[i] - RED) / width));
  return at_least;
}

int level_drawn(const ReadingCurve& curve, double RED, double luck) {
  int level = 0;
  while (level < 4 && luck < curve.at_least(level + 1, RED)) ++level;
  return level;
}

Sphere draw_sphere(const UncertainSphere& about, const Hansen& shift, double factor, RandomNumbers& random) {
  Sphere sphere;
  const Hansen& mean = about.mean.centre;
  sphere.centre.dD = mean.dD + shift.dD + about.sd.dD * random.normal();
  sphere.centre.dP = mean.dP + shift.dP + about.sd.dP * random.normal();
  sphere.centre.dH = mean.dH + shift.dH + about.sd.dH * random.normal();
  sphere.R0 = std::max(1.0, factor * (about.mean.R0 + about.R0_sd * random.normal()));
  return sphere;
}

}  // namespace

World base_world() {
  World world;
  world.name = "BASE";
  world.varnish = {{{17.5, 6, 9}, 8}, {0.8, 1.8, 2.0}, 1.2};
  world.paint = {{{17.8, 9, 10.5}, 6}, {0.7, 1.5, 1.8}, 1.0};
  return world;
}

World hard_world() {
  World world = base_world();
  world.name = "HARD";
  world.varnish.mean = {{17.5, 7.5, 10}, 7.2};
  world.paint.mean = {{17.7, 8.5, 10.2}, 6.8};
  return world;
}

std::vector<World> wrong_worlds(const World& from) {
  std::vector<World> worlds;
  const auto add = [&](const char* name, auto&& change) {
    worlds.push_back(from);
    worlds.back().name = name;
    change(worlds.back());
  };
  add("varnish 2 more polar", [](World& w) { w.varnish_shift.dP = 2; });
  add("varnish 2 less polar", [](World& w) { w.varnish_shift.dP = -2; });
  add("paint 2 more polar", [](World& w) { w.paint_shift.dP = 2; });
  add("paint 2 less polar", [](World& w) { w.paint_shift.dP = -2; });
  add("varnish R0 25 % smaller", [](World& w) { w.varnish_R0_factor = 0.75; });
  add("varnish R0 25 % larger", [](World& w) { w.varnish_R0_factor = 1.25; });
  add("paint R0 25 % smaller", [](World& w) { w.paint_R0_factor = 0.75; });
  add("paint R0 25 % larger", [](World& w) { w.paint_R0_factor = 1.25; });
  add("10 % misread", [](World& w) { w.misread = 0.10; });
  add("liquids off by 0.5", [](World& w) { w.liquid_error = 0.5; });
  add("four at once", [](World& w) {
    w.varnish_shift.dP = 2;
    w.paint_R0_factor = 1.25;
    w.misread = 0.10;
    w.liquid_error = 0.5;
  });
  return worlds;
}

World job_curve_world(World from, const Response& response) {
  from.name += ", the curve of a job";
  from.removal = from.harm = borrowed_curve(response);
  from.luck_of_mixture = true;
  return from;
}

Painting make_painting(const World& world, std::uint64_t seed, std::size_t number) {
  RandomNumbers random(seed * 0x100000001B3u + number);
  random.bits();
  Painting painting;
  painting.varnish = draw_sphere(world.varnish, world.varnish_shift, world.varnish_R0_factor, random);
  painting.paint = draw_sphere(world.paint, world.paint_shift, world.paint_R0_factor, random);
  painting.edge_paint = painting.paint;
  painting.edge_paint.centre.dD += world.edge_difference / 2 * random.normal();
  painting.edge_paint.centre.dP += world.edge_difference * random.normal();
  painting.edge_paint.centre.dH += world.edge_difference * random.normal();
  painting.edge_paint.R0 = std::max(1.0, painting.edge_paint.R0 + world.edge_difference * random.normal());
  painting.luck = random.bits();
  return painting;
}

ReadingCurve removal_curve() {
  return ReadingCurve([](double RED) { return chances_at(removal_places, RED); });
}
ReadingCurve harm_curve() {
  return ReadingCurve([](double RED) { return chances_at(harm_places, RED); });
}

SwabOutcome swab(const World& world, const Painting& painting, const Hansen& true_point, std::uint64_t mixture,
                 bool at_edge) {
  const std::uint64_t own = mixture * 0x9E3779B97F4A7C15u;
  const std::uint64_t place = at_edge ? 0x51ED2701u : 0u;
  RandomNumbers luck(painting.luck ^ (own + (world.luck_of_mixture ? 0u : place)));
  RandomNumbers reader(painting.luck ^ (own + place + 0x2545F491u));
  luck.bits();
  reader.bits();
  SwabOutcome outcome;
  const Sphere& paint = at_edge ? painting.edge_paint : painting.paint;
  outcome.removal = level_drawn(world.removal, relative_distance_RED(true_point, painting.varnish), luck.uniform());
  outcome.harm = level_drawn(world.harm, relative_distance_RED(true_point, paint), luck.uniform());
  outcome.removal_read = outcome.removal;
  outcome.harm_read = outcome.harm;
  const bool removal_slips = reader.uniform() < world.misread;
  const bool goes_up = reader.uniform() < 0.5;
  if (removal_slips)
    outcome.removal_read = outcome.removal + (outcome.removal == 0 || (outcome.removal < 4 && goes_up) ? 1 : -1);
  if (reader.uniform() < world.misread) outcome.harm_read = outcome.harm == 0 ? 1 : 0;
  return outcome;
}

double true_effect(const World& world, const Painting& painting, const Hansen& true_point) {
  return world.removal.at_least(3, relative_distance_RED(true_point, painting.varnish));
}
double true_risk(const World& world, const Painting& painting, const Hansen& true_point) {
  return world.harm.at_least(1, relative_distance_RED(true_point, painting.paint));
}

}  // namespace gentlest::study
