// Sums over particles, drawing them again and moving them. Internal to core.
#pragma once

#include "gentlest/learning/learning.hpp"

#include "core/base/random_numbers.hpp"
#include "core/space/sphere_matrix.hpp"

#include <functional>
#include <vector>

namespace gentlest {

/// The Gaussians of a prior: each hypothesis as published and as stray.
class SpherePrior {
 public:
  explicit SpherePrior(const LayerPrior& prior);

  /// Density at a sphere, up to a constant factor: scaled centre and R0; 0 below the smallest R0. The edge is left out.
  double density(const std::array<double, 3>& centre, double R0) const;
  /// ln density of the edge's radius, given that of the picture.
  double log_density_of_edge(double R0_edge, double R0) const;
  /// Share of each Gaussian in the density there; they add up to 1. In the order h0, h0 stray, h1, h1 stray ...
  std::vector<double> shares(const std::array<double, 3>& centre, double R0) const;
  /// `count` spheres of equal weight, each Gaussian in its share.
  ParticleCloud draw(std::size_t count, RandomNumbers& random) const;

 private:
  struct Component {
    std::array<double, 3> centre;
    double R0;
    SphereMatrix root;  // lower triangle over (R0, 2 dD, dP, dH); its product with itself turned over is the covariance
    double weight;
  };
  static double density_of(const Component& component, const std::array<double, 3>& centre, double R0);
  std::vector<Component> components_;
  double edge_spread_;
};

/// Sum of weight * table(RED), RED being that of `point`, where every radius acts so much larger.
double mean_over(const ParticleCloud& cloud, const Hansen& point, double radius_factor,
                 const std::vector<float>& table);
/// table(RED) of every particle for what a piece of evidence speaks of.
std::vector<float> values_over(const ParticleCloud& cloud, const Evidence& evidence, const std::vector<float>& table);

/// (sum w)^2 / sum w^2.
double effective_number(const std::vector<float>& weight);

/// `count` particles of equal weight, drawn evenly in proportion to their weight.
ParticleCloud draw_evenly(const ParticleCloud& cloud, std::size_t count, double offset);

/// Random-walk Metropolis steps with the shape of the cloud (equal weights). `log_density` is that of the target, up to
/// a constant.
struct Particle {
  float x, y, z, inverse_R0, inverse_R0_edge;
};
using LogDensity = std::function<double(const Particle&)>;
void move_particles(ParticleCloud& cloud, const LogDensity& log_density, int steps, RandomNumbers& random);

/// table(RED) at one place; linear between the nodes.
inline float look_up(const std::vector<float>& table, float RED) {
  const float last = static_cast<float>(table.size() - 1);
  const float position = RED * static_cast<float>(ReadingCurve::nodes_per_unit);
  if (!(position < last)) return table.back();
  const auto node = static_cast<std::size_t>(position);
  return table[node] + (position - static_cast<float>(node)) * (table[node + 1] - table[node]);
}

}  // namespace gentlest
