#include "gentlest/fitting/conditioning.hpp"

#include "core/base/random_numbers.hpp"
#include "core/space/likely_quadruples.hpp"
#include "core/space/sphere_matrix.hpp"

#include <Eigen/Cholesky>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <map>
#include <numbers>
#include <utility>

namespace gentlest {

namespace {

using Vector = Eigen::VectorXd;
using Matrix = Eigen::MatrixXd;
using Vector4 = Eigen::Vector4d;
using Matrix4 = Eigen::Matrix4d;

constexpr double smallest_R0 = 0.5;  // MPa^0.5; no material's sphere is that small

Vector4 mean_of(const UncertainSphere& sphere) {
  return {sphere.mean.centre.dD, sphere.mean.centre.dP, sphere.mean.centre.dH, sphere.mean.R0};
}

// Of (dD, dP, dH, R0): the matrix of the scaled space without the doubling of dD.
Matrix4 unscaled_covariance(const UncertainSphere& sphere) {
  const SphereMatrix scaled = covariance_of(sphere);
  Matrix4 all;
  for (Eigen::Index i = 0; i < 4; ++i)
    for (Eigen::Index j = 0; j < 4; ++j)
      all(i, j) =
          scaled[static_cast<std::size_t>(i)][static_cast<std::size_t>(j)] / ((i == 0 ? 2 : 1) * (j == 0 ? 2 : 1));
  return all;
}

UncertainSphere sphere_of(const Vector4& mean, const Matrix4& covariance) {
  const auto sd = [&](int i) { return std::sqrt(std::max(covariance(i, i), 0.0)); };
  return {{{mean[0], mean[1], mean[2]}, mean[3]},
          {sd(0), sd(1), sd(2)},
          sd(3),
          {covariance(0, 1), covariance(0, 2), covariance(1, 2), covariance(0, 3), covariance(1, 3), covariance(2, 3)}};
}

// A square root of a covariance that may be singular: L L^T is it, but for a trace on the diagonal.
template <class AnyMatrix>
AnyMatrix root_of(AnyMatrix covariance) {
  covariance.diagonal().array() += 1e-9;
  return Eigen::LLT<AnyMatrix>(covariance).matrixL();
}

double distance_from(const Vector4& sphere, const Hansen& point) {
  return distance_Ra(point, {sphere[0], sphere[1], sphere[2]});
}

// ln of the chance that the grade lies in a range, and its slope, over ln RED; linear between nodes.
class RangeCurve {
 public:
  RangeCurve(const Response& response, int strongest, int weakest, double slip) : values_(nodes) {
    for (int i = 0; i < nodes; ++i) {
      const double red = std::exp(lowest + i * step);
      const double above = strongest > 1 ? chance_at_most(response, strongest - 1, red) : 0;
      const double inside = std::max(chance_at_most(response, weakest, red) - above, 0.0);
      const double by_slip = slip * (weakest - strongest + 1) / grade_count;
      values_[static_cast<std::size_t>(i)] = std::log((1 - slip) * inside + by_slip);
    }
  }

  double at(double ln_red) const {
    const auto [cell, t] = place(ln_red);
    return values_[cell] + t * (values_[cell + 1] - values_[cell]);
  }
  double slope(double ln_red) const {
    const std::size_t cell = place(ln_red).first;
    return ln_red <= lowest || ln_red >= lowest + (nodes - 1) * step ? 0 : (values_[cell + 1] - values_[cell]) / step;
  }

 private:
  static constexpr double lowest = -4;
  static constexpr double step = 1.0 / 128;
  static constexpr int nodes = 6 * 128 + 1;  // up to ln RED 2
  static std::pair<std::size_t, double> place(double ln_red) {
    const double at = std::clamp((ln_red - lowest) / step, 0.0, nodes - 1.001);
    const auto cell = static_cast<std::size_t>(at);
    return {cell, at - static_cast<double>(cell)};
  }
  std::vector<double> values_;
};

// What the observations say of one sphere and one field.
class Likelihood {
 public:
  Likelihood(const std::vector<GradedAction>& seen, const Response& response, double slip) {
    for (const GradedAction& one : seen) {
      const auto known = std::find(points_.begin(), points_.end(), one.point);
      const auto at = static_cast<std::size_t>(known - points_.begin());
      if (known == points_.end()) points_.push_back(one.point);
      const auto range = std::make_pair(one.strongest, one.weakest);
      const auto curve = curves_.try_emplace(range, RangeCurve(response, one.strongest, one.weakest, slip)).first;
      terms_.push_back({at, one.weight, one.ln_further, &curve->second});
    }
  }
  Likelihood(const Likelihood&) = delete;
  Likelihood& operator=(const Likelihood&) = delete;

  const std::vector<Hansen>& points() const { return points_; }

  // `field`: ln of the factor by which the radius acts larger at each point.
  double log_of(const Vector4& sphere, const Vector& field) const {
    if (sphere[3] < smallest_R0) return -1e300;
    double sum = 0;
    for (const Term& term : terms_) sum += term.weight * term.curve->at(ln_red(term, sphere, field));
    return sum;
  }

  // Adds the slopes of log_of by the field to `sum`.
  void add_slopes(const Vector4& sphere, const Vector& field, Vector& sum) const {
    for (const Term& term : terms_)
      sum[static_cast<Eigen::Index>(term.point)] -= term.weight * term.curve->slope(ln_red(term, sphere, field));
  }

 private:
  struct Term {
    std::size_t point;
    double weight;
    double ln_further;
    const RangeCurve* curve;
  };
  double ln_red(const Term& term, const Vector4& sphere, const Vector& field) const {
    const double Ra = std::max(distance_from(sphere, points_[term.point]), 1e-6);
    return std::log(Ra / sphere[3]) - field[static_cast<Eigen::Index>(term.point)] + term.ln_further;
  }
  std::vector<Hansen> points_;
  std::map<std::pair<int, int>, RangeCurve> curves_;
  std::vector<Term> terms_;
};

Matrix field_covariance(const std::vector<Hansen>& points, const ConditioningSettings& settings) {
  const auto count = static_cast<Eigen::Index>(points.size());
  Matrix all(count, count);
  for (Eigen::Index i = 0; i < count; ++i)
    for (Eigen::Index j = 0; j < count; ++j) {
      const double in_lengths =
          distance_Ra(points[static_cast<std::size_t>(i)], points[static_cast<std::size_t>(j)]) / settings.reach_length;
      all(i, j) = settings.reach_sd * settings.reach_sd * std::exp(-in_lengths * in_lengths / 2);
    }
  return all;
}

struct State {
  Vector4 sphere;
  Vector field;
};

// One sphere after another from the posterior, each with its field.
class Chain {
 public:
  Chain(const UncertainSphere& prior, bool stands, const Likelihood& likelihood, const ConditioningSettings& settings)
      : likelihood_(likelihood), random_(settings.seed), mean_(mean_of(prior)) {
    const double widening = settings.prior_widening;
    if (!stands) root_ = root_of<Matrix4>(widening * widening * unscaled_covariance(prior));
    field_root_ = root_of<Matrix>(field_covariance(likelihood.points(), settings));
    now_ = {mean_, Vector::Zero(field_root_.rows())};
    log_now_ = likelihood_.log_of(now_.sphere, now_.field);
  }

  // Elliptical slice sampling: a point on the ellipse through the state and a draw from the prior, nearer and nearer to
  // the state until its likelihood is high enough.
  const State& next() {
    const State other = draw_from_prior();
    const double level = log_now_ + std::log(random_.uniform());
    double angle = 2 * std::numbers::pi * random_.uniform();
    double low = angle - 2 * std::numbers::pi;
    double high = angle;
    for (;;) {
      const State tried = between(other, angle);
      const double log_tried = likelihood_.log_of(tried.sphere, tried.field);
      if (log_tried > level) {
        log_now_ = log_tried;
        return now_ = tried;
      }
      (angle < 0 ? low : high) = angle;
      if (high - low < 1e-12) return now_;
      angle = low + (high - low) * random_.uniform();
    }
  }
  double log_likelihood() const { return log_now_; }

 private:
  State draw_from_prior() {
    Vector4 z;
    for (Eigen::Index i = 0; i < 4; ++i) z[i] = random_.normal();
    Vector w(field_root_.rows());
    for (Eigen::Index i = 0; i < w.size(); ++i) w[i] = random_.normal();
    return {mean_ + root_ * z, field_root_ * w};
  }
  State between(const State& other, double angle) const {
    const double c = std::cos(angle), s = std::sin(angle);
    return {mean_ + c * (now_.sphere - mean_) + s * (other.sphere - mean_), c * now_.field + s * other.field};
  }

  const Likelihood& likelihood_;
  RandomNumbers random_;
  Vector4 mean_;
  Matrix4 root_ = Matrix4::Zero();
  Matrix field_root_;
  State now_;
  double log_now_ = 0;
};

// Draws divided by the time over which they repeat each other: lags are added up until they are lost in the noise.
double effective_draws(const std::vector<double>& values) {
  const auto count = static_cast<double>(values.size());
  double mean = 0, variance = 0;
  for (const double value : values) mean += value / count;
  for (const double value : values) variance += (value - mean) * (value - mean) / count;
  if (!(variance > 0)) return count;
  double time = 1;
  for (std::size_t lag = 1; lag < values.size() / 4; ++lag) {
    double product = 0;
    for (std::size_t i = lag; i < values.size(); ++i) product += (values[i] - mean) * (values[i - lag] - mean) / count;
    if (product < 0.02 * variance) break;
    time += 2 * product / variance;
  }
  return count / time;
}

// By Stein's identity the mean of the field is its prior covariance times the mean slope of ln likelihood: so the
// weights at the points are the variance times those slopes, and stay small however near to each other points lie.
LocalReach reach_of(const std::vector<Hansen>& points, const Vector& mean_slope, const ConditioningSettings& settings) {
  LocalReach reach;
  reach.length = settings.reach_length;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const double weight = settings.reach_sd * settings.reach_sd * mean_slope[static_cast<Eigen::Index>(i)];
    if (std::abs(weight) >= 0.005) reach.places.push_back({points[i], weight});
  }
  return reach;
}

// The factor is our choice.
const std::vector<std::array<double, 4>>& likely_draws() {
  static const auto all = likely_quadruples(4093, 1516);
  return all;
}

}  // namespace

ConditionedSphere condition_sphere(const UncertainSphere& prior, bool stands, const Response& response,
                                   const std::vector<GradedAction>& seen, const ConditioningSettings& settings) {
  assert(prior.mean.R0 > 0 && settings.draws > 0 && settings.reach_length > 0);
  const Likelihood likelihood(seen, response, settings.slip);
  Chain chain(prior, stands, likelihood, settings);
  for (int i = 0; i < settings.draws / 10; ++i) chain.next();
  Vector4 sum = Vector4::Zero();
  Matrix4 squares = Matrix4::Zero();
  Vector slopes = Vector::Zero(static_cast<Eigen::Index>(likelihood.points().size()));
  std::vector<double> fits;
  for (int i = 0; i < settings.draws; ++i) {
    const State& state = chain.next();
    const Vector4 off = state.sphere - mean_of(prior);
    sum += off;
    squares += off * off.transpose();
    likelihood.add_slopes(state.sphere, state.field, slopes);
    fits.push_back(chain.log_likelihood());
  }
  const double count = settings.draws;
  const Vector4 shift = sum / count;
  ConditionedSphere result;
  result.sphere = stands ? prior : sphere_of(mean_of(prior) + shift, squares / count - shift * shift.transpose());
  result.reach = reach_of(likelihood.points(), slopes / count, settings);
  result.effective_draws = effective_draws(fits);
  return result;
}

std::array<double, grade_count> expected_grades(const ConditionedSphere& sphere, const Response& response,
                                                const Hansen& point, double ln_further) {
  const Vector4 mean = mean_of(sphere.sphere);
  const Matrix4 root = root_of<Matrix4>(unscaled_covariance(sphere.sphere));
  const double further = std::exp(ln_further) / reach_factor(sphere.reach, point);
  std::array<double, grade_count> sum{};
  double mass = 0;
  for (const std::array<double, 4>& z : likely_draws()) {
    const Vector4 drawn = mean + root * Vector4(z[0], z[1], z[2], z[3]);
    if (drawn[3] < smallest_R0) continue;
    const auto chances = grade_chances(response, distance_from(drawn, point) / drawn[3] * further);
    for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += chances[i];
    mass += 1;
  }
  for (double& chance : sum) chance /= mass;
  return sum;
}

}  // namespace gentlest
