#include "core/learning/particles.hpp"

#include <Eigen/Cholesky>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

namespace gentlest {

namespace {

constexpr double smallest_R0 = 0.5;  // MPa^0.5; no material's sphere is that small
constexpr double least_sd = 0.02;    // a figure said to be exact would never learn; this is below anything measurable

// Centre, R0, R0 at the edge.
constexpr int dimensions = 5;
using Vector5 = Eigen::Matrix<double, dimensions, 1>;
using Matrix5 = Eigen::Matrix<double, dimensions, dimensions>;

Vector5 place_of(const ParticleCloud& cloud, std::size_t i) {
  Vector5 place;
  place << static_cast<double>(cloud.x[i]), static_cast<double>(cloud.y[i]), static_cast<double>(cloud.z[i]),
      1 / static_cast<double>(cloud.inverse_R0[i]), 1 / static_cast<double>(cloud.inverse_R0_edge[i]);
  return place;
}

// Of equal weights.
Matrix5 covariance_of(const ParticleCloud& cloud) {
  const auto count = static_cast<double>(cloud.size());
  Vector5 mean = Vector5::Zero();
  for (std::size_t i = 0; i < cloud.size(); ++i) mean += place_of(cloud, i) / count;
  Matrix5 covariance = Matrix5::Zero();
  for (std::size_t i = 0; i < cloud.size(); ++i) {
    const Vector5 off = place_of(cloud, i) - mean;
    covariance += off * off.transpose() / count;
  }
  return covariance;
}

// A step drawn from a standard normal, made as long and as slanted as the cloud: L with L L^T its covariance. A
// direction without spread gets a tiny one.
Matrix5 shape_of(const ParticleCloud& cloud) {
  constexpr double tiny_variance = 1e-8;
  Matrix5 covariance = covariance_of(cloud);
  Eigen::LLT<Matrix5> cholesky(covariance);
  if (cholesky.info() != Eigen::Success) {
    covariance.diagonal().array() += tiny_variance;
    cholesky.compute(covariance);
  }
  return cholesky.matrixL();
}

}  // namespace

namespace {

// Of the hypothesis as published, or as stray: every covariance by the square of the factor, and what is raised to a
// floor gains variance of its own. The radius first, since it is drawn first and cut off.
SphereMatrix component_root(const UncertainSphere& sphere, const LayerPrior& prior, bool stray) {
  const double factor = stray ? prior.stray_factor : 1;
  const std::array<double, 3> floor = stray ? scaled(prior.stray_sd) : std::array<double, 3>{};
  const SphereMatrix all = covariance_of(sphere);
  const std::array<double, 3> sd = scaled(sphere.sd);
  SphereMatrix matrix{};
  const auto wide = [](double value) { return value * value; };
  matrix[0][0] = wide(std::max({factor * sphere.R0_sd, stray ? prior.stray_R0_sd : 0, least_sd}));
  for (std::size_t i = 0; i < 3; ++i) {
    matrix[i + 1][i + 1] = wide(std::max({factor * sd[i], floor[i], least_sd}));
    matrix[i + 1][0] = matrix[0][i + 1] = factor * factor * all[i][3];
    for (std::size_t k = 0; k < i; ++k) matrix[i + 1][k + 1] = matrix[k + 1][i + 1] = factor * factor * all[i][k];
  }
  SphereMatrix root = root_of(matrix);
  // A figure that the others settle wholly would never move.
  for (std::size_t i = 0; i < root.size(); ++i) root[i][i] = std::max(root[i][i], least_sd);
  return root;
}

}  // namespace

SpherePrior::SpherePrior(const LayerPrior& prior) : edge_spread_(std::max(prior.edge_spread, 0.005)) {
  assert(!prior.hypotheses.empty() && prior.stray_share >= 0 && prior.stray_share <= 1);
  double total = 0;
  for (const SphereHypothesis& one : prior.hypotheses) total += one.weight;
  for (const SphereHypothesis& one : prior.hypotheses)
    for (const bool stray : {false, true}) {
      const double share = stray ? prior.stray_share : 1 - prior.stray_share;
      components_.push_back({scaled(one.sphere.mean.centre), one.sphere.mean.R0,
                             component_root(one.sphere, prior, stray), share * one.weight / total});
    }
}

// In independent standard deviations: z of each figure once those before it are known.
double SpherePrior::density_of(const Component& component, const std::array<double, 3>& centre, double R0) {
  const SphereMatrix& root = component.root;
  std::array<double, 4> z{(R0 - component.R0) / root[0][0]};
  double exponent = 0;
  double width = root[0][0];
  for (std::size_t i = 1; i < 4; ++i) {
    double off = centre[i - 1] - component.centre[i - 1];
    for (std::size_t k = 0; k < i; ++k) off -= root[i][k] * z[k];
    z[i] = off / root[i][i];
    exponent += z[i] * z[i];
    width *= root[i][i];
  }
  return component.weight * std::exp(-(exponent + z[0] * z[0]) / 2) / width;
}

double SpherePrior::density(const std::array<double, 3>& centre, double R0) const {
  if (!(R0 >= smallest_R0)) return 0;
  double sum = 0;
  for (const Component& component : components_) sum += density_of(component, centre, R0);
  return sum;
}

double SpherePrior::log_density_of_edge(double R0_edge, double R0) const {
  const double z = std::log(R0_edge / R0) / edge_spread_;
  return -z * z / 2 - std::log(R0_edge);
}

std::vector<double> SpherePrior::shares(const std::array<double, 3>& centre, double R0) const {
  std::vector<double> shares;
  double sum = 0;
  for (const Component& component : components_) {
    shares.push_back(density_of(component, centre, R0));
    sum += shares.back();
  }
  for (double& share : shares) share = sum > 0 ? share / sum : 1 / static_cast<double>(shares.size());
  return shares;
}

ParticleCloud SpherePrior::draw(std::size_t count, RandomNumbers& random) const {
  ParticleCloud cloud;
  double reached = components_.front().weight;
  std::size_t at = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const double wanted = (static_cast<double>(i) + 0.5) / static_cast<double>(count);
    while (at + 1 < components_.size() && reached < wanted) reached += components_[++at].weight;
    const Component& from = components_[at];
    double R0 = 0;
    std::array<double, 4> z{};
    for (int tries = 0; R0 < smallest_R0 && tries < 1000; ++tries) {
      z[0] = random.normal();
      R0 = from.R0 + from.root[0][0] * z[0];
    }
    const auto coordinate = [&](std::size_t figure) {
      z[figure] = random.normal();
      double off = 0;
      for (std::size_t k = 0; k <= figure; ++k) off += from.root[figure][k] * z[k];
      return static_cast<float>(from.centre[figure - 1] + off);
    };
    cloud.x.push_back(coordinate(1));
    cloud.y.push_back(coordinate(2));
    cloud.z.push_back(coordinate(3));
    R0 = std::max(R0, smallest_R0);
    cloud.inverse_R0.push_back(static_cast<float>(1 / R0));
    cloud.inverse_R0_edge.push_back(static_cast<float>(std::exp(edge_spread_ * random.normal()) / R0));
  }
  cloud.weight.assign(count, 1 / static_cast<float>(count));
  return cloud;
}

namespace {

struct Seat {
  float x, y, z;
};

Seat seat_of(const Hansen& point) {
  const std::array<double, 3> place = scaled(point);
  return {static_cast<float>(place[0]), static_cast<float>(place[1]), static_cast<float>(place[2])};
}

// In the scaled space, so the plain distance.
inline float Ra_of(const ParticleCloud& cloud, const Seat& seat, std::size_t i) {
  const float x = cloud.x[i] - seat.x;
  const float y = cloud.y[i] - seat.y;
  const float z = cloud.z[i] - seat.z;
  return std::sqrt(x * x + y * y + z * z);
}

}  // namespace

double mean_over(const ParticleCloud& cloud, const Hansen& point, double radius_factor,
                 const std::vector<float>& table) {
  const Seat seat = seat_of(point);
  const auto nodes_per_RED = static_cast<float>(ReadingCurve::nodes_per_unit / radius_factor);
  const float last = static_cast<float>(table.size()) - 1.001f;
  // In blocks: the distances of a block are worked out several at a time, the look-ups follow.
  constexpr std::size_t block = 64;
  std::array<float, block> position{};
  double sum = 0;
  for (std::size_t from = 0; from < cloud.size(); from += block) {
    const std::size_t count = std::min(block, cloud.size() - from);
    for (std::size_t k = 0; k < count; ++k)
      position[k] = std::min(last, nodes_per_RED * Ra_of(cloud, seat, from + k) * cloud.inverse_R0[from + k]);
    float part = 0;
    for (std::size_t k = 0; k < count; ++k) {
      const auto node = static_cast<std::size_t>(static_cast<int>(position[k]));
      const float low = table[node];
      part += cloud.weight[from + k] * (low + (position[k] - static_cast<float>(node)) * (table[node + 1] - low));
    }
    sum += static_cast<double>(part);
  }
  return sum;
}

std::vector<float> values_over(const ParticleCloud& cloud, const Evidence& evidence, const std::vector<float>& table) {
  const Seat seat = seat_of(evidence.point);
  const std::vector<float>& inverse_R0 = evidence.at_edge ? cloud.inverse_R0_edge : cloud.inverse_R0;
  const auto smaller = static_cast<float>(1 / evidence.radius_factor);
  std::vector<float> values(cloud.size());
  for (std::size_t i = 0; i < cloud.size(); ++i)
    values[i] = look_up(table, smaller * inverse_R0[i] * Ra_of(cloud, seat, i));
  return values;
}

double effective_number(const std::vector<float>& weight) {
  double sum = 0, squares = 0;
  for (const float w : weight) {
    sum += static_cast<double>(w);
    squares += static_cast<double>(w) * static_cast<double>(w);
  }
  return squares > 0 ? sum * sum / squares : 0;
}

ParticleCloud draw_evenly(const ParticleCloud& cloud, std::size_t count, double offset) {
  ParticleCloud drawn;
  double total = 0;
  for (const float w : cloud.weight) total += static_cast<double>(w);
  double reached = 0;
  std::size_t i = 0;
  for (std::size_t k = 0; k < count; ++k) {
    const double wanted = total * (static_cast<double>(k) + offset) / static_cast<double>(count);
    while (i + 1 < cloud.size() && reached + static_cast<double>(cloud.weight[i]) < wanted)
      reached += static_cast<double>(cloud.weight[i++]);
    drawn.x.push_back(cloud.x[i]);
    drawn.y.push_back(cloud.y[i]);
    drawn.z.push_back(cloud.z[i]);
    drawn.inverse_R0.push_back(cloud.inverse_R0[i]);
    drawn.inverse_R0_edge.push_back(cloud.inverse_R0_edge[i]);
  }
  drawn.weight.assign(count, 1 / static_cast<float>(count));
  return drawn;
}

namespace {

Particle particle_at(const Vector5& place) {
  return {static_cast<float>(place[0]), static_cast<float>(place[1]), static_cast<float>(place[2]),
          static_cast<float>(1 / place[3]), static_cast<float>(1 / place[4])};
}

}  // namespace

void move_particles(ParticleCloud& cloud, const LogDensity& log_density, int steps, RandomNumbers& random) {
  const Matrix5 shape = shape_of(cloud);
  // 2.38 / sqrt(dimension) suits a Gaussian (Gelman, Roberts and Gilks 1996, from memory); every other step goes a
  // third as far, for clouds that are bent.
  const double full = 2.38 / std::sqrt(static_cast<double>(dimensions));
  for (std::size_t i = 0; i < cloud.size(); ++i) {
    Vector5 here = place_of(cloud, i);
    double density_here = log_density(particle_at(here));
    for (int step = 0; step < steps; ++step) {
      const double length = step % 2 == 0 ? full : full / 3;
      Vector5 draw;
      for (double& d : draw) d = random.normal();
      const Vector5 there = here + length * (shape * draw);
      const double chance = random.uniform();
      if (!(there[3] >= smallest_R0 && there[4] > 0)) continue;
      const double density_there = log_density(particle_at(there));
      if (!(std::log(chance) < density_there - density_here)) continue;
      here = there;
      density_here = density_there;
    }
    const Particle moved = particle_at(here);
    cloud.x[i] = moved.x;
    cloud.y[i] = moved.y;
    cloud.z[i] = moved.z;
    cloud.inverse_R0[i] = moved.inverse_R0;
    cloud.inverse_R0_edge[i] = moved.inverse_R0_edge;
  }
}

}  // namespace gentlest
