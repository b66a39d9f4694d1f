#include "gentlest/fitting/own_fit.hpp"

#include "gentlest/base/diagnostic.hpp"

#include "core/fitting/sphere_draws.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

void check(const std::vector<Score>& scores, int good_up_to) {
  if (good_up_to < 1 || good_up_to > 5)
    throw InputError(Fault::usage, "the grade that still counts as dissolving must lie between 1 and 5");
  for (const Score& score : scores)
    if (score.grade < 1 || score.grade > grade_count)
      throw InputError(Fault::usage, fmt::format("grade {} of {} is none", score.grade, score.solvent),
                       "grades run from 1, dissolves, to 6, nothing seen");
  if (scores.size() < 4)
    throw InputError(Fault::usage, fmt::format("{} liquids do not make a sphere", scores.size()),
                     "test at least 4, better 20, that lie around its edge");
  if (std::none_of(scores.begin(), scores.end(), [&](const Score& score) { return score.grade <= good_up_to; }))
    throw InputError(Fault::usage, "no liquid dissolves it, so there is nothing to fit",
                     "go on testing, or let a weaker action count");
}

// As the fit wants it: 1 for good, 6 for the rest.
std::vector<Score> as_yes_or_no(std::vector<Score> scores, int good_up_to) {
  for (Score& score : scores) score.grade = score.grade <= good_up_to ? 1 : grade_count;
  return scores;
}

// Places where a mixture of usual liquids may lie: what the deviations must be right for, tested or not.
std::vector<Hansen> places_of_mixtures() {
  std::vector<Hansen> places;
  for (double dD = 14; dD <= 20; dD += 1.5)
    for (double dP = 0; dP <= 18; dP += 3)
      for (double dH = 0; dH <= 27; dH += 3) places.push_back({dD, dP, dH});
  return places;
}

template <class Figure>
Estimate middle_of(const std::vector<Sphere>& spheres, double best, const Figure& figure) {
  std::vector<double> values;
  for (const Sphere& sphere : spheres) values.push_back(figure(sphere));
  std::sort(values.begin(), values.end());
  const auto at = [&](double share) {
    return values[static_cast<std::size_t>(std::lround(share * static_cast<double>(values.size() - 1)))];
  };
  return {best, std::min(at(0.05), best), std::max(at(0.95), best)};
}

std::vector<Misfit> misfits_of(const std::vector<Score>& scores, const std::vector<Score>& sides,
                               const Sphere& sphere) {
  std::vector<Misfit> misfits;
  for (std::size_t i = 0; i < scores.size(); ++i) {
    const double Ra = distance_Ra(scores[i].hansen, sphere.centre);
    const bool is_inside = Ra <= sphere.R0;
    if (is_inside == (sides[i].grade == 1) || std::abs(Ra - sphere.R0) < touching) continue;
    misfits.push_back({scores[i].solvent, scores[i].grade, Ra / sphere.R0});
  }
  std::stable_sort(misfits.begin(), misfits.end(),
                   [](const Misfit& a, const Misfit& b) { return std::abs(a.RED - 1) > std::abs(b.RED - 1); });
  return misfits;
}

// Good liquids that leave a direction of Hansen space untried cannot close the sphere there.
void add_flat_directions(const std::vector<Score>& sides, std::vector<FitDoubt>& doubts) {
  const auto spread = [&](auto figure) {
    double low = 1e9, high = -1e9;
    for (const Score& side : sides) {
      low = std::min(low, figure(side.hansen));
      high = std::max(high, figure(side.hansen));
    }
    return high - low;
  };
  if (spread([](const Hansen& h) { return h.dD; }) < 1) doubts.push_back(FitDoubt::liquids_alike_in_dD);
  if (spread([](const Hansen& h) { return h.dP; }) < 2) doubts.push_back(FitDoubt::liquids_alike_in_dP);
  if (spread([](const Hansen& h) { return h.dH; }) < 2) doubts.push_back(FitDoubt::liquids_alike_in_dH);
}

}  // namespace

OwnFit fit_own_sphere(const std::vector<Score>& scores, int good_up_to, std::uint64_t seed) {
  constexpr int draws = 1000;
  check(scores, good_up_to);
  const std::vector<Score> sides = as_yes_or_no(scores, good_up_to);
  const SphereFit fit = fit_sphere(sides);
  const std::vector<Sphere> drawn = draw_spheres(sides, fit.sphere, draws, seed);
  std::vector<Hansen> places = places_of_mixtures();
  for (const Score& score : scores) places.push_back(score.hansen);
  std::vector<SpherePair> pairs;
  for (const Sphere& sphere : drawn) pairs.push_back({fit.sphere, sphere, places});
  OwnFit own;
  own.sphere = fit.sphere;
  own.quality = fit.quality;
  own.tests = static_cast<int>(scores.size());
  own.good = own.tests - fit.bad_solvents;
  own.dD = middle_of(drawn, fit.sphere.centre.dD, [](const Sphere& s) { return s.centre.dD; });
  own.dP = middle_of(drawn, fit.sphere.centre.dP, [](const Sphere& s) { return s.centre.dP; });
  own.dH = middle_of(drawn, fit.sphere.centre.dH, [](const Sphere& s) { return s.centre.dH; });
  own.R0 = middle_of(drawn, fit.sphere.R0, [](const Sphere& s) { return s.R0; });
  const SphereScatter seen = scatter_of(pairs, scatter_cap);
  const SphereScatter spread = independent_spread(pairs, seen, seen.boundary);
  own.uncertain = {fit.sphere, spread.centre, spread.R0};
  own.misfits = misfits_of(scores, sides, fit.sphere);
  own.R0_low = fit.R0_low;
  own.R0_high = fit.R0_high;
  own.doubts = fit.doubts;
  add_flat_directions(sides, own.doubts);
  return own;
}

}  // namespace gentlest
