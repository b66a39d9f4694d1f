// Spheres from solubility grades. The radius is solved exactly for each centre, so only the centre is searched.
#include "gentlest/fitting/calibration.hpp"

#include <Eigen/Core>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <stdexcept>

namespace gentlest {

namespace {

using Point = Eigen::Vector3d;  // scaled: (2 dD, dP, dH)

struct Cloud {
  std::vector<Point> good;
  std::vector<Point> bad;
};

// Sum of misplacement, with the preference for small spheres.
struct Loss {
  double value = 0;
  double R0 = 0;
};

constexpr double price_of_radius = 0.001;

Point place_of(const Hansen& hansen) {
  const std::array<double, 3> place = scaled(hansen);
  return {place[0], place[1], place[2]};
}

Cloud cloud_of(const std::vector<Score>& scores) {
  Cloud cloud;
  for (const Score& score : scores) (score.grade == 1 ? cloud.good : cloud.bad).push_back(place_of(score.hansen));
  if (cloud.good.empty()) throw std::invalid_argument("a sphere needs at least one good solvent");
  return cloud;
}

std::vector<double> sorted_distances(const std::vector<Point>& points, const Point& centre) {
  std::vector<double> distances;
  distances.reserve(points.size());
  for (const Point& point : points) {
    const Point way = point - centre;
    distances.push_back(std::hypot(way[0], way[1], way[2]));  // as distance_Ra, to the bit
  }
  std::sort(distances.begin(), distances.end());
  return distances;
}

double misplacement(const std::vector<double>& good, const std::vector<double>& bad, double R0) {
  double sum = 0;
  for (auto far = good.rbegin(); far != good.rend() && *far > R0; ++far) sum += *far - R0;
  for (auto near = bad.begin(); near != bad.end() && *near < R0; ++near) sum += R0 - *near;
  return sum;
}

// The slope of the misplacement over the radius is (bad nearer) - (good further); the best radius is where it changes
// sign. With the distances of all solvents in one row that is a fixed place in the row: after as many of them as there
// are good solvents.
Loss best_radius(const Cloud& cloud, const Point& centre) {
  const std::vector<double> good = sorted_distances(cloud.good, centre);
  const std::vector<double> bad = sorted_distances(cloud.bad, centre);
  std::vector<double> all(good.size() + bad.size());
  std::merge(good.begin(), good.end(), bad.begin(), bad.end(), all.begin());
  const double inner = all[good.size() - 1];
  const double outer = good.size() < all.size() ? all[good.size()] : inner;
  Loss loss;
  loss.R0 = std::min((inner + outer) / 2, largest_fitted_R0);
  loss.value = misplacement(good, bad, loss.R0) + price_of_radius * loss.R0;
  return loss;
}

Loss loss_at(const Cloud& cloud, const Point& centre, double fixed_R0) {
  const Point bound = {2 * furthest_fitted_centre, furthest_fitted_centre, furthest_fitted_centre};
  const double outside = (centre.cwiseAbs() - bound).cwiseMax(0).sum();
  Loss loss{0, fixed_R0};
  if (fixed_R0 > 0)
    loss.value = misplacement(sorted_distances(cloud.good, centre), sorted_distances(cloud.bad, centre), fixed_R0);
  else
    loss = best_radius(cloud, centre);
  loss.value += 100 * outside;
  return loss;
}

struct Vertex {
  Point at = Point::Zero();
  double value = 0;
};

// Downhill simplex (Nelder and Mead 1965) with its usual factors 1, 2, 1/2, 1/2.
template <class Function>
Vertex descend(const Function& value, const Point& start, double step) {
  std::array<Vertex, 4> simplex{};
  for (int i = 0; i < 4; ++i) {
    Vertex& vertex = simplex[static_cast<std::size_t>(i)];
    vertex.at = start;
    if (i > 0) vertex.at[i - 1] += step;
    vertex.value = value(vertex.at);
  }
  const auto better = [](const Vertex& a, const Vertex& b) { return a.value < b.value; };
  for (int round = 0; round < 400; ++round) {
    std::stable_sort(simplex.begin(), simplex.end(), better);
    Vertex& worst = simplex[3];
    if (worst.value - simplex[0].value < 1e-10 && std::abs(worst.at[0] - simplex[0].at[0]) < 1e-6) break;
    const Point middle = (simplex[0].at + simplex[1].at + simplex[2].at) / 3;
    const auto trial = [&](double share) {
      const Point at = middle + share * (worst.at - middle);
      return Vertex{at, value(at)};
    };
    const Vertex mirrored = trial(-1);
    if (mirrored.value < simplex[0].value) {
      const Vertex further = trial(-2);
      worst = better(further, mirrored) ? further : mirrored;
    } else if (mirrored.value < simplex[2].value) {
      worst = mirrored;
    } else {
      const Vertex pulled = trial(mirrored.value < worst.value ? -0.5 : 0.5);
      if (pulled.value < std::min(worst.value, mirrored.value)) {
        worst = pulled;
      } else {
        for (std::size_t i = 1; i < 4; ++i) {
          simplex[i].at = simplex[0].at + 0.5 * (simplex[i].at - simplex[0].at);
          simplex[i].value = value(simplex[i].at);
        }
      }
    }
  }
  return *std::min_element(simplex.begin(), simplex.end(), better);
}

Point mean_of(const std::vector<Point>& points) {
  Point mean = Point::Zero();
  for (const Point& point : points) mean += point / static_cast<double>(points.size());
  return mean;
}

// Starts: the mean of the good solvents, and steps from it along and between the axes.
std::vector<Point> starts_of(const Cloud& cloud) {
  const Point mean = mean_of(cloud.good);
  std::vector<Point> starts = {mean};
  for (const double a : {-1.0, 1.0})
    for (const double b : {-1.0, 1.0})
      for (const double c : {-1.0, 1.0}) starts.push_back(mean + 4 * Point(a, b, c));
  for (const Point& far : {Point(8, 0, 0), Point(0, 9, 0), Point(0, 0, 9)}) starts.push_back(mean + far);
  return starts;
}

Hansen unscaled(const Point& point) {
  return {point[0] / 2, point[1], point[2]};
}

Sphere fit_cloud(const Cloud& cloud) {
  const auto value = [&](const Point& centre) { return loss_at(cloud, centre, 0).value; };
  Vertex best{Point::Zero(), std::numeric_limits<double>::infinity()};
  for (const Point& start : starts_of(cloud)) {
    // A second descent from where the first one stopped: a simplex may collapse on a kink of the loss.
    const Vertex first = descend(value, start, 2.0);
    const Vertex found = descend(value, first.at, 1.0);
    if (found.value < best.value) best = found;
  }
  return {unscaled(best.at), loss_at(cloud, best.at, 0).R0};
}

// Best data fit with this radius, starting from the fitted centre.
double data_fit_with(const Cloud& cloud, const Point& centre, double R0) {
  const auto value = [&](const Point& at) { return loss_at(cloud, at, R0).value; };
  double best = std::numeric_limits<double>::infinity();
  const double grown = R0 - best_radius(cloud, centre).R0;
  // A larger sphere touching the same solvents has its centre moved outwards, in whichever direction is open.
  std::vector<Point> starts = {centre};
  for (int i = 0; i < 3; ++i)
    for (const double way : {-1.0, 1.0}) starts.push_back(centre + way * grown * Point::Unit(i));
  for (const Point& start : starts) best = std::min(best, descend(value, start, 1.5).value);
  return std::exp(-best / static_cast<double>(cloud.good.size() + cloud.bad.size()));
}

// Walks up (or down) the ladder of radii as long as the data fit stays near the best.
double widest_radius(const Cloud& cloud, const SphereFit& fit, double step) {
  double R0 = fit.sphere.R0;
  for (int count = 0; count < 14; ++count) {
    if (data_fit_with(cloud, place_of(fit.sphere.centre), R0 * step) < fit.quality.data_fit - 0.01) break;
    R0 *= step;
  }
  return R0;
}

std::vector<FitDoubt> doubts_of(const SphereFit& fit) {
  std::vector<FitDoubt> doubts;
  if (fit.bad_solvents < 10) doubts.push_back(FitDoubt::few_bad_solvents);
  if (fit.sphere.R0 >= largest_fitted_R0 - 0.5 || fit.R0_high >= largest_fitted_R0)
    doubts.push_back(FitDoubt::radius_runs_away);
  else if (fit.R0_high > 1.4 * fit.sphere.R0)
    doubts.push_back(FitDoubt::larger_fits);
  return doubts;
}

}  // namespace

SphereQuality judge_sphere(const std::vector<Score>& scores, const Sphere& sphere) {
  SphereQuality quality;
  double sum = 0;
  for (const Score& score : scores) {
    const double Ra = distance_Ra(score.hansen, sphere.centre);
    const bool is_inside = Ra <= sphere.R0;
    if (is_inside == (score.grade == 1) || std::abs(Ra - sphere.R0) < touching) continue;
    ++quality.misplaced;
    sum += std::abs(Ra - sphere.R0);
  }
  quality.data_fit = scores.empty() ? 1 : std::exp(-sum / static_cast<double>(scores.size()));
  return quality;
}

Sphere fit_sphere_only(const std::vector<Score>& scores) {
  return fit_cloud(cloud_of(scores));
}

SphereFit fit_sphere(const std::vector<Score>& scores) {
  const Cloud cloud = cloud_of(scores);
  SphereFit fit;
  fit.sphere = fit_cloud(cloud);
  fit.quality = judge_sphere(scores, fit.sphere);
  fit.bad_solvents = static_cast<int>(cloud.bad.size());
  fit.R0_low = widest_radius(cloud, fit, 1 / 1.05);
  fit.R0_high = widest_radius(cloud, fit, 1.05);
  fit.doubts = doubts_of(fit);
  return fit;
}

}  // namespace gentlest
