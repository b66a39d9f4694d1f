// How far two determinations of the same sphere lie apart, and independent standard deviations that move the boundary
// by as much as the two determinations really differ there.
#include "gentlest/fitting/calibration.hpp"

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

double square(double value) {
  return value * value;
}

bool is_near_boundary(const Hansen& solvent, const Sphere& sphere) {
  const double red = relative_distance_RED(solvent, sphere);
  return red >= 0.5 && red <= 1.5;
}

double boundary_moved(const std::vector<SpherePair>& pairs) {
  double sum = 0, count = 0;
  for (const SpherePair& pair : pairs)
    for (const Hansen& solvent : pair.solvents) {
      if (!is_near_boundary(solvent, pair.first)) continue;
      sum += square(distance_Ra(solvent, pair.first.centre) - pair.first.R0 -
                    (distance_Ra(solvent, pair.second.centre) - pair.second.R0));
      count += 1;
    }
  return count > 0 ? std::sqrt(sum / count) : 0;
}

// How far independent standard deviations of this size move Ra - R0, to first order: the derivative of Ra by a centre
// coordinate is the direction cosine in scaled space, doubled for dD.
double boundary_moved_by(const std::vector<SpherePair>& pairs, const SphereScatter& sd) {
  double sum = 0, count = 0;
  for (const SpherePair& pair : pairs) {
    const std::array<double, 3> centre = scaled(pair.first.centre);
    for (const Hansen& solvent : pair.solvents) {
      if (!is_near_boundary(solvent, pair.first)) continue;
      const std::array<double, 3> point = scaled(solvent);
      const double Ra = distance_Ra(solvent, pair.first.centre);
      sum += square(2 * sd.centre.dD * (point[0] - centre[0]) / Ra) +
             square(sd.centre.dP * (point[1] - centre[1]) / Ra) + square(sd.centre.dH * (point[2] - centre[2]) / Ra) +
             square(sd.R0);
      count += 1;
    }
  }
  return count > 0 ? std::sqrt(sum / count) : 0;
}

std::vector<Hansen> solvents_of(const ScoreSet& set) {
  std::vector<Hansen> solvents;
  for (const Score& score : set.scores) solvents.push_back(score.hansen);
  return solvents;
}

struct Groups {
  std::vector<SpherePair> held, weak, open, all, kin;
};

Groups groups_of(const std::vector<ScoreSet>& sets, const std::vector<SetFigures>& figures) {
  Groups groups;
  std::size_t i = 0;
  for (const ScoreSet& set : sets) {
    if (!set.left_out.empty() || !set.published) continue;
    const SetFigures& own = figures.at(i++);
    const SpherePair pair{own.published, own.refit.sphere, solvents_of(set)};
    groups.all.push_back(pair);
    if (!own.refit.doubts.empty())
      groups.open.push_back(pair);
    else
      (own.quality.misplaced >= weak_from_misplaced ? groups.weak : groups.held).push_back(pair);
    for (const ScoreSet& other : sets)
      if (!set.family.empty() && other.left_out.empty() && other.published && other.family == set.family &&
          other.code != set.code)
        groups.kin.push_back({own.published, *other.published, pair.solvents});
  }
  return groups;
}

}  // namespace

SphereScatter scatter_of(const std::vector<SpherePair>& pairs, double cap) {
  SphereScatter scatter;
  if (pairs.empty()) return scatter;
  const auto capped = [cap](double a, double b) { return square(std::min(std::abs(a - b), cap)); };
  for (const SpherePair& pair : pairs) {
    ++scatter.pairs;
    scatter.centre.dD += capped(pair.first.centre.dD, pair.second.centre.dD);
    scatter.centre.dP += capped(pair.first.centre.dP, pair.second.centre.dP);
    scatter.centre.dH += capped(pair.first.centre.dH, pair.second.centre.dH);
    scatter.R0 += capped(pair.first.R0, pair.second.R0);
  }
  for (double* sum : {&scatter.centre.dD, &scatter.centre.dP, &scatter.centre.dH, &scatter.R0})
    *sum = std::sqrt(*sum / scatter.pairs);
  scatter.boundary = boundary_moved(pairs);
  return scatter;
}

SphereScatter independent_spread(const std::vector<SpherePair>& pairs, const SphereScatter& shape, double boundary) {
  const double moved = boundary_moved_by(pairs, shape);
  // With no liquid near the boundary there is nothing to scale by: the differences stand as they are.
  const double factor = moved > 0 ? boundary / moved : 1;
  SphereScatter spread = shape;
  spread.pairs = static_cast<int>(pairs.size());
  for (double* figure : {&spread.centre.dD, &spread.centre.dP, &spread.centre.dH, &spread.R0}) *figure *= factor;
  spread.boundary = boundary;
  return spread;
}

std::vector<SpreadRow> default_spreads(const std::vector<ScoreSet>& sets, const std::vector<SetFigures>& figures) {
  const Groups groups = groups_of(sets, figures);
  const SphereScatter shape = scatter_of(groups.all, scatter_cap);
  std::vector<SpreadRow> rows;
  const auto add = [&](SpreadGroup group, const std::vector<SpherePair>& pairs, double share) {
    const SphereScatter seen = scatter_of(pairs, scatter_cap);
    rows.push_back({group, seen, independent_spread(pairs, shape, share * seen.boundary)});
  };
  add(SpreadGroup::held, groups.held, 1);
  add(SpreadGroup::weak, groups.weak, 1);
  add(SpreadGroup::open, groups.open, 1);
  add(SpreadGroup::all, groups.all, 1);
  // Two members of a family differ by sqrt 2 of its standard deviation.
  add(SpreadGroup::kin, groups.kin, std::sqrt(0.5));
  return rows;
}

}  // namespace gentlest
