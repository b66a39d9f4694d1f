// The response curve from graded REDs: five logistic regressions in ln RED.
#include "gentlest/fitting/calibration.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace gentlest {

namespace {

constexpr double steepest = 60;

double log_likelihood(const std::vector<double>& x, const std::vector<bool>& yes, const Eigen::Vector2d& at) {
  double sum = 0;
  for (std::size_t i = 0; i < x.size(); ++i) {
    const double eta = at[0] + at[1] * x[i];
    const double towards = yes[i] ? eta : -eta;
    // ln of the logistic function, written so that neither tail overflows
    sum += towards > 0 ? -std::log1p(std::exp(-towards)) : towards - std::log1p(std::exp(towards));
  }
  return sum;
}

Eigen::Vector2d newton_step(const std::vector<double>& x, const std::vector<bool>& yes, const Eigen::Vector2d& at) {
  Eigen::Vector2d gradient = Eigen::Vector2d::Zero();
  Eigen::Matrix2d curvature = 1e-12 * Eigen::Matrix2d::Identity();
  for (std::size_t i = 0; i < x.size(); ++i) {
    const double p = 1 / (1 + std::exp(-(at[0] + at[1] * x[i])));
    const Eigen::Vector2d row(1, x[i]);
    gradient += ((yes[i] ? 1.0 : 0.0) - p) * row;
    curvature += p * (1 - p) * row * row.transpose();
  }
  return curvature.ldlt().solve(gradient);
}

// Intercept of a flat curve. Half a case is added to both sides so that "always" and "never" stay finite.
Response::Stage flat_stage(const std::vector<bool>& yes) {
  const double count = static_cast<double>(std::count(yes.begin(), yes.end(), true));
  const double total = static_cast<double>(yes.size());
  if (count > 0 && count < total) return {std::log(count / (total - count)), 0};
  return {std::log((count + 0.5) / (total - count + 0.5)), 0};
}

}  // namespace

Response::Stage fit_logistic(const std::vector<double>& x, const std::vector<bool>& yes) {
  const Response::Stage flat = flat_stage(yes);
  const bool is_mixed =
      std::find(yes.begin(), yes.end(), true) != yes.end() && std::find(yes.begin(), yes.end(), false) != yes.end();
  if (!is_mixed) return flat;
  Eigen::Vector2d at(flat.intercept, 0);
  double best = log_likelihood(x, yes, at);
  for (int round = 0; round < 200; ++round) {
    Eigen::Vector2d step = newton_step(x, yes, at);
    double value = log_likelihood(x, yes, at + step);
    for (int halved = 0; value < best && halved < 50; ++halved) {
      step /= 2;
      value = log_likelihood(x, yes, at + step);
    }
    if (value < best) break;
    at += step;
    best = value;
    if (step.norm() < 1e-12 * (1 + at.norm()) || std::abs(at[1]) > steepest) break;
  }
  if (at[1] > 0) return flat;
  return {at[0], at[1]};
}

Response fit_response(const std::vector<GradedRED>& seen) {
  Response response;
  for (std::size_t stage = 0; stage < response.stages.size(); ++stage) {
    const int grade = static_cast<int>(stage) + 1;
    std::vector<double> x;
    std::vector<bool> yes;
    for (const GradedRED& one : seen) {
      if (!(one.RED > 0)) throw std::invalid_argument("a graded RED must be above 0");
      if (one.grade < grade) continue;
      x.push_back(std::log(one.RED));
      yes.push_back(one.grade == grade);
    }
    response.stages[stage] = fit_logistic(x, yes);
  }
  return response;
}

}  // namespace gentlest
