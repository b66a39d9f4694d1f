#include "gentlest/studio/pooling.hpp"

#include "core/studio/table_as_matrix.hpp"

#include <Eigen/Cholesky>
#include <Eigen/LU>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <optional>

namespace gentlest {

namespace {

using Vector4 = Eigen::Vector4d;
using Matrix4 = Eigen::Matrix4d;

constexpr double figures = 4;
constexpr double tails = 4;                    // degrees of freedom of Student's law
constexpr double part_without_scatter = 0.25;  // of a painting
constexpr double least_variance = 1e-8;        // MPa; keeps a scatter of nothing invertible
constexpr double settled = 1e-10;              // of the variances, from round to round

// Under Student's law with 4 degrees of freedom the scatter that is found for paintings of a normal law falls short of
// theirs: for four figures by this factor, the T that solves E[x / (4 + x)] = 1/2 with x = chi-square(4) / T, where
// each painting's sphere is known, and not at all where none is (all then count alike). What lies between goes in
// proportion to what is not known of the spheres: our choice, held by a test over both. It is put back.
constexpr double normal_part_of_4 = 0.7798;

SphereTable table_of(const Matrix4& matrix) {
  SphereTable table{};
  for (Eigen::Index i = 0; i < 4; ++i)
    for (Eigen::Index j = 0; j < 4; ++j) table[static_cast<std::size_t>(i)][static_cast<std::size_t>(j)] = matrix(i, j);
  return table;
}

Matrix4 inverse_of(const Matrix4& positive) {
  return positive.ldlt().solve(Matrix4::Identity());
}

struct Said {
  Matrix4 information;
  Vector4 pull;
};

struct Scatter {
  double centre = 0;  // variance of each of the three coordinates, MPa
  double R0 = 0;
  Matrix4 matrix() const { return Vector4(centre, centre, centre, R0).asDiagonal(); }
};

// One estimate: rounds of expectation and maximisation, the middle integrated out exactly.
class PooledEstimate {
 public:
  PooledEstimate(const Matrix4& stand_in, const std::vector<Said>& said, const Scatter& assumed,
                 double assumed_paintings, const Scatter& start, bool odd_count_less)
      : stand_in_(stand_in),
        said_(said),
        assumed_(assumed),
        counts_(assumed_paintings),
        odd_count_less_(odd_count_less),
        scatter_(start),
        weights_(said.size(), 1) {}

  void run(int most_rounds) {
    for (int round = 0; round < most_rounds; ++round) {
      find_middle();
      const Scatter before = scatter_;
      improve();
      const double change = std::abs(scatter_.centre - before.centre) + std::abs(scatter_.R0 - before.R0);
      if (change < settled * (1 + before.centre + before.R0)) break;
    }
    find_middle();
  }

  const Vector4& moved() const { return moved_; }
  const Matrix4& covariance() const { return covariance_; }
  const Scatter& scatter() const { return scatter_; }
  const std::vector<double>& weights() const { return weights_; }

  // How much of a painting's deviation is not known, 0..1.
  double unknown_part() const {
    double sum = 0;
    for (std::size_t i = 0; i < said_.size(); ++i) {
      const Matrix4 tie = inverse_of(between(i));
      sum += (tie * inverse_of(said_[i].information + tie)).trace();
    }
    return sum / (figures * static_cast<double>(said_.size()));
  }

 private:
  Matrix4 between(std::size_t i) const { return scatter_.matrix() / weights_[i]; }

  // What one painting says of the middle: its sphere integrated out.
  void find_middle() {
    Matrix4 information = inverse_of(stand_in_);
    Vector4 pull = Vector4::Zero();
    for (std::size_t i = 0; i < said_.size(); ++i) {
      const Matrix4 tie = inverse_of(between(i));
      const Matrix4 own = inverse_of(said_[i].information + tie);
      information += tie - tie * own * tie;
      pull += tie * own * said_[i].pull;
    }
    covariance_ = inverse_of(information);
    moved_ = covariance_ * pull;
  }

  void improve() {
    double centre = counts_ * 3 * assumed_.centre;
    double R0 = counts_ * assumed_.R0;
    for (std::size_t i = 0; i < said_.size(); ++i) {
      const Matrix4 tie = inverse_of(between(i));
      const Matrix4 own = inverse_of(said_[i].information + tie);
      const Vector4 off = own * (said_[i].pull + tie * moved_) - moved_;
      const Matrix4 drawn = own * tie - Matrix4::Identity();  // how far the painting follows the middle, less it
      const Matrix4 square = off * off.transpose() + own + drawn * covariance_ * drawn.transpose();
      if (odd_count_less_) {
        const double distance = (inverse_of(scatter_.matrix()) * square).trace();
        weights_[i] = (tails + figures) / (tails + distance);
      }
      centre += weights_[i] * (square(0, 0) + square(1, 1) + square(2, 2));
      R0 += weights_[i] * square(3, 3);
    }
    const double paintings = counts_ + static_cast<double>(said_.size());
    scatter_.centre = std::max(centre / (3 * paintings), least_variance);
    scatter_.R0 = std::max(R0 / paintings, least_variance);
  }

  Matrix4 stand_in_;
  const std::vector<Said>& said_;
  Scatter assumed_;
  double counts_;
  bool odd_count_less_;
  Scatter scatter_;
  std::vector<double> weights_;
  Vector4 moved_ = Vector4::Zero();
  Matrix4 covariance_ = Matrix4::Zero();
};

// An estimate, and its scatter as that of paintings of a normal law.
struct Normal {
  PooledEstimate estimate;
  Scatter scatter;
};

// `assumed_paintings`: nothing takes `part_without_scatter` in their place.
Normal scatter_of(const Matrix4& before, const std::vector<Said>& said, const Scatter& assumed,
                  const std::optional<double>& assumed_paintings, const PoolSettings& settings) {
  double part = 1;
  for (int round = 0;; ++round) {
    const Scatter start{part * assumed.centre, part * assumed.R0};
    PooledEstimate estimate(before, said, assumed_paintings ? start : Scatter{},
                            assumed_paintings.value_or(part_without_scatter), start, settings.odd_count_less);
    estimate.run(settings.most_rounds);
    const double next = settings.odd_count_less
                            ? normal_part_of_4 + (1 - normal_part_of_4) * std::min(estimate.unknown_part(), 1.0)
                            : 1;
    // What is assumed is one of a normal law as well, so the second round begins with it in the same measure.
    if (round > 0 || next == part) return {estimate, {estimate.scatter().centre / next, estimate.scatter().R0 / next}};
    part = next;
  }
}

// As far as the stand-in was spread, or the paintings alone show, whichever is more; never less than nothing.
double within(double found, double unknown, double stand_in, double shown) {
  return std::max(std::min(found, std::max(stand_in - unknown, shown)), 0.0);
}

double centre_part(const Matrix4& matrix) {
  return (matrix(0, 0) + matrix(1, 1) + matrix(2, 2)) / 3;
}

}  // namespace

Pool pool_paintings(const SphereTable& stand_in, const std::vector<PaintingSays>& paintings,
                    const PoolSettings& settings) {
  assert(settings.between_centre > 0 && settings.assumed_paintings >= 0);
  const Matrix4 before = matrix_of(stand_in);
  std::vector<Said> said;
  for (const PaintingSays& one : paintings)
    said.push_back({matrix_of(one.information), Vector4(one.pull[0], one.pull[1], one.pull[2], one.pull[3])});
  Pool pool;
  if (said.empty()) {
    pool.spread = stand_in;
    return pool;
  }
  const Scatter assumed{settings.between_centre * settings.between_centre / 3, std::max(before(3, 3), least_variance)};
  const Normal found = scatter_of(before, said, assumed, settings.assumed_paintings, settings);
  // A part of a painting without any scatter more: what nothing shows fades, and what the paintings show stays.
  const Normal shown = scatter_of(before, said, assumed, {}, settings);
  const Matrix4& unknown = found.estimate.covariance();
  const Scatter used{within(found.scatter.centre, centre_part(unknown), centre_part(before), shown.scatter.centre),
                     within(found.scatter.R0, unknown(3, 3), before(3, 3), shown.scatter.R0)};
  for (std::size_t i = 0; i < 4; ++i) pool.moved[i] = found.estimate.moved()[static_cast<Eigen::Index>(i)];
  pool.moved_covariance = table_of(unknown);
  pool.between_centre = std::sqrt(3 * found.scatter.centre);
  pool.between_R0 = std::sqrt(found.scatter.R0);
  pool.spread = table_of(unknown + used.matrix());
  pool.weights = found.estimate.weights();
  return pool;
}

}  // namespace gentlest
