// Puts the figures together: spheres refitted fold by fold, the curve on what they predict, and its test.
#include "gentlest/fitting/calibration.hpp"

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

constexpr std::array<double, 12> band_edges = {0, 0.5, 0.7, 0.8, 0.9, 1.0, 1.1, 1.2, 1.4, 1.7, 2.0, 1e9};

using Shares = std::array<double, grade_count>;

bool takes_part(const ScoreSet& set) {
  return set.left_out.empty() && set.published.has_value();
}

std::size_t index_of(int grade) {
  return static_cast<std::size_t>(grade - 1);
}

std::vector<GradedRED> published_REDs(const ScoreSet& set) {
  std::vector<GradedRED> seen;
  for (const Score& score : set.scores)
    seen.push_back({relative_distance_RED(score.hansen, *set.published), score.grade});
  return seen;
}

void append(std::vector<GradedRED>& all, const std::vector<GradedRED>& more) {
  all.insert(all.end(), more.begin(), more.end());
}

Shares shares_of(const std::vector<GradedRED>& seen) {
  Shares shares{};
  for (const GradedRED& one : seen) shares[index_of(one.grade)] += 1.0 / static_cast<double>(seen.size());
  return shares;
}

double at_most(const Shares& chances, int grade) {
  double sum = 0;
  for (int stage = 1; stage <= grade; ++stage) sum += chances[index_of(stage)];
  return sum;
}

int likeliest(const Shares& chances) {
  return static_cast<int>(std::max_element(chances.begin(), chances.end()) - chances.begin()) + 1;
}

double brier(const Shares& chances, int seen_grade, int grade) {
  const double error = at_most(chances, grade) - (seen_grade <= grade ? 1 : 0);
  return error * error;
}

// Adds one case to the running sums.
void add_case(CurveScore& sum, const Shares& curve, const Shares& shares, const GradedRED& seen) {
  const double floor = 1e-9;  // a chance of 0 for something seen would spoil the whole mean
  sum.log_score -= std::log(std::max(curve[index_of(seen.grade)], floor));
  sum.log_score_of_shares -= std::log(std::max(shares[index_of(seen.grade)], floor));
  sum.brier_2 += brier(curve, seen.grade, 2);
  sum.brier_2_of_shares += brier(shares, seen.grade, 2);
  sum.brier_4 += brier(curve, seen.grade, 4);
  sum.brier_4_of_shares += brier(shares, seen.grade, 4);
  sum.right_grade += likeliest(curve) == seen.grade ? 1 : 0;
  sum.right_grade_guess += likeliest(shares) == seen.grade ? 1 : 0;
  sum.right_dissolves += (curve[0] >= 0.5) == (seen.grade == 1) ? 1 : 0;
  sum.right_inside += (seen.RED < 1) == (seen.grade == 1) ? 1 : 0;
}

void divide(CurveScore& sum, double count) {
  for (double* figure : {&sum.log_score, &sum.log_score_of_shares, &sum.brier_2, &sum.brier_2_of_shares, &sum.brier_4,
                         &sum.brier_4_of_shares, &sum.right_grade, &sum.right_grade_guess, &sum.right_dissolves,
                         &sum.right_inside, &sum.right_guess})
    *figure /= count;
}

// Each film former judged by the curve, and by the plain shares, of all the others.
CurveScore score_left_out(const std::vector<std::vector<GradedRED>>& sets) {
  CurveScore sum;
  double count = 0;
  for (std::size_t left = 0; left < sets.size(); ++left) {
    std::vector<GradedRED> others;
    for (std::size_t i = 0; i < sets.size(); ++i)
      if (i != left) append(others, sets[i]);
    const Response curve = fit_response(others);
    const Shares shares = shares_of(others);
    double good = 0;
    for (const GradedRED& seen : sets[left]) {
      add_case(sum, grade_chances(curve, seen.RED), shares, seen);
      good += seen.grade == 1 ? 1 : 0;
    }
    const double cases = static_cast<double>(sets[left].size());
    sum.right_guess += std::max(good, cases - good);
    count += cases;
  }
  divide(sum, count);
  return sum;
}

int rank_of(const ScoreSet& set, const std::vector<ScoreSet>& sets) {
  const double own = judge_sphere(set.scores, *set.published).data_fit;
  int rank = 1;
  for (const ScoreSet& other : sets)
    if (takes_part(other) && judge_sphere(set.scores, *other.published).data_fit > own) ++rank;
  return rank;
}

}  // namespace

std::vector<BandShares> shares_by_band(const std::vector<GradedRED>& seen) {
  std::vector<BandShares> bands;
  for (std::size_t i = 0; i + 1 < band_edges.size(); ++i) {
    BandShares band;
    band.from = band_edges[i];
    band.to = band_edges[i + 1];
    for (const GradedRED& one : seen) {
      if (one.RED < band.from || one.RED >= band.to) continue;
      ++band.count;
      band.dissolved += one.grade == 1 ? 1 : 0;
      band.untouched += one.grade == grade_count ? 1 : 0;
    }
    if (band.count > 0) {
      band.dissolved /= band.count;
      band.untouched /= band.count;
      band.swollen = 1 - band.dissolved - band.untouched;
    }
    bands.push_back(band);
  }
  return bands;
}

std::vector<GradedRED> held_out_REDs(const ScoreSet& set) {
  std::vector<GradedRED> seen(set.scores.size());
  for (std::size_t fold = 0; fold < fold_count; ++fold) {
    std::vector<Score> others;
    for (std::size_t i = 0; i < set.scores.size(); ++i)
      if (i % fold_count != fold) others.push_back(set.scores[i]);
    const Sphere sphere = fit_sphere_only(others);
    for (std::size_t i = fold; i < set.scores.size(); i += fold_count)
      seen[i] = {relative_distance_RED(set.scores[i].hansen, sphere), set.scores[i].grade};
  }
  return seen;
}

Calibration calibrate(const std::vector<ScoreSet>& sets) {
  Calibration result;
  std::vector<GradedRED> in_sample;
  std::vector<GradedRED> held_out;
  std::vector<std::vector<GradedRED>> by_set;
  for (const ScoreSet& set : sets) {
    if (!takes_part(set)) continue;
    result.sets.push_back({set.code, set.material, *set.published, judge_sphere(set.scores, *set.published),
                           rank_of(set, sets), fit_sphere(set.scores)});
    append(in_sample, published_REDs(set));
    by_set.push_back(held_out_REDs(set));
    append(held_out, by_set.back());
  }
  result.in_sample = shares_by_band(in_sample);
  result.cross_validated = shares_by_band(held_out);
  result.response = fit_response(held_out);
  result.response.source = "gentlest_calibration";
  result.left_out_score = score_left_out(by_set);
  result.spreads = default_spreads(sets, result.sets);
  return result;
}

}  // namespace gentlest
