// The chance for a sphere whose figures are known together (covariances), or that is bent in places. Internal to core.
// The plain sphere's table is made by chance_field.cpp.
//
// With the centre c and the radius R jointly Gaussian (R cut off at 0), the chance at a point x is
//     F(x, ln f(x)),   F(y, s) = E_R [ E_{c | R} p(|y - c| / (R e^s)) ],
//     c | R ~ N(m + b (R - R0), S),   b = cov(c, R) / var R,   S = cov c - b b^T var R, the same for every radius,
// p being the response over RED and f the reach. All in the scaled space. The sum over R is made first, at every node
// of a lattice turned along the eigenvectors of S, where its Gaussian can be averaged over one axis after the other.
// Without places s is 0 everywhere; with them F is tabulated for steps of s, each where it is needed, and read between.
#pragma once

#include "gentlest/space/chance.hpp"

#include <Eigen/Core>

#include <algorithm>
#include <array>
#include <vector>

namespace gentlest {

/// True where the table must be made here.
bool is_joint(const FieldSubject& subject);

/// The response over RED as a table: chances as chance_at_most gives them, to 1e-5.
class CurveOfRED {
 public:
  CurveOfRED(const Response& response, int grade);
  /// Here, for a table asks some millions of times.
  double operator()(double RED) const {
    const bool is_near = RED < far_from;
    const std::vector<double>& values = is_near ? near_ : far_;
    const double position = (is_near ? RED * (near_nodes / far_from) : far_from * far_nodes / RED);
    const int node = std::min(static_cast<int>(position), (is_near ? near_nodes : far_nodes) - 1);
    const double* const at = values.data() + node;
    return at[0] + (position - node) * (at[1] - at[0]);
  }
  /// Standard deviation, in RED, of the Gaussian step that is as steep as the curve at its steepest; 0: it is flat.
  double width() const { return width_; }

 private:
  static constexpr double far_from = 4;  // RED from which it is tabulated over 1 / RED
  static constexpr int near_nodes = 4096;
  static constexpr int far_nodes = 1024;

  std::vector<double> near_;  // over RED from 0
  std::vector<double> far_;   // over 1 / RED from 0
  double width_ = 0;
};

class JointChance {
 public:
  /// Precondition: is_possible(subject.sphere).
  JointChance(const HansenBox& box, const FieldSubject& subject);

  /// What the lattice may not exceed along each axis.
  std::array<double, 3> needed_step() const;

  /// [D][P][H], H fastest.
  std::vector<double> tabulate(const FieldLattice& lattice) const;

 private:
  struct Turned;
  struct Ring {
    double inverse_R;
    std::array<double, 3> centre;  // the mean given this radius, along the three axes
    double weight;                 // adds up to 1
  };
  Turned tabulate_turned(const std::array<double, 3>& low, const std::array<double, 3>& high, double ln_factor) const;
  double width_at(double factor) const;
  std::array<double, 3> turned(const std::array<double, 3>& scaled_point) const;

  FieldSubject subject_;
  CurveOfRED curve_;
  double largest_step_ = 1;                             // for a table that is the same everywhere
  double by_radius_ = 0;                                // what the radius adds to the curve's width, MPa^0.5
  double shortest_ = 1;                                 // smallest f, about
  double strongest_bend_ = 0;                           // largest |ln f|
  Eigen::Vector3d shift_ = Eigen::Vector3d::Zero();     // b
  Eigen::Matrix3d rest_ = Eigen::Matrix3d::Zero();      // S
  Eigen::Matrix3d axes_ = Eigen::Matrix3d::Identity();  // its eigenvectors
  std::array<double, 3> sd_{};                          // along them
  std::vector<Ring> rings_;
};

}  // namespace gentlest
