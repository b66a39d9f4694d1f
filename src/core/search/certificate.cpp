#include "gentlest/search/certificate.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace gentlest {

namespace {

using Vector = std::array<double, 3>;

Vector minus(const Vector& a, const Vector& b) {
  return {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
}

double dot(const Vector& a, const Vector& b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

// Corners of a simplex with the weights of the point of it that lies nearest to the origin.
struct Corner {
  std::size_t liquid = 0;
  Vector place{};
  double weight = 0;
};
using Simplex = std::vector<Corner>;

Vector point_of(const Simplex& simplex) {
  Vector sum{};
  for (const Corner& corner : simplex)
    for (std::size_t i = 0; i < 3; ++i) sum[i] += corner.weight * corner.place[i];
  return sum;
}

// Solves a x = b for up to three unknowns with pivoting; false when the corners do not span the space they should.
bool solve(std::array<std::array<double, 4>, 3>& a, std::size_t n) {
  double scale = 0;
  for (std::size_t i = 0; i < n; ++i) scale = std::max(scale, std::abs(a[i][i]));
  for (std::size_t column = 0; column < n; ++column) {
    std::size_t pivot = column;
    for (std::size_t row = column + 1; row < n; ++row)
      if (std::abs(a[row][column]) > std::abs(a[pivot][column])) pivot = row;
    if (std::abs(a[pivot][column]) <= 1e-13 * scale) return false;
    std::swap(a[pivot], a[column]);
    for (std::size_t row = 0; row < n; ++row) {
      if (row == column) continue;
      const double factor = a[row][column] / a[column][column];
      for (std::size_t k = column; k < 4; ++k) a[row][k] -= factor * a[column][k];
    }
  }
  for (std::size_t i = 0; i < n; ++i) a[i][3] /= a[i][i];
  return true;
}

// Weights of the origin's projection on the flat through all corners; false when it falls outside the simplex.
bool project_inside(Simplex& simplex) {
  const std::size_t n = simplex.size() - 1;
  std::array<std::array<double, 4>, 3> a{};
  for (std::size_t i = 0; i < n; ++i) {
    const Vector edge = minus(simplex[i + 1].place, simplex[0].place);
    for (std::size_t j = 0; j < n; ++j) a[i][j] = dot(edge, minus(simplex[j + 1].place, simplex[0].place));
    a[i][3] = -dot(edge, simplex[0].place);
  }
  if (!solve(a, n)) return false;
  double first = 1;
  for (std::size_t i = 0; i < n; ++i) {
    simplex[i + 1].weight = a[i][3];
    first -= a[i][3];
  }
  simplex[0].weight = first;
  return std::all_of(simplex.begin(), simplex.end(), [](const Corner& corner) { return corner.weight >= 0; });
}

// The face of the simplex that holds the point nearest to the origin, by trying all of them: 15 at most.
Simplex nearest_face(const Simplex& simplex) {
  Simplex best;
  double least = 0;
  for (std::size_t mask = 1; mask < (std::size_t{1} << simplex.size()); ++mask) {
    Simplex face;
    for (std::size_t i = 0; i < simplex.size(); ++i)
      if ((mask >> i & 1) != 0) face.push_back(simplex[i]);
    if (!project_inside(face)) continue;
    const Vector point = point_of(face);
    const double square = dot(point, point);
    if (!best.empty() && square >= least) continue;
    best = face;
    least = square;
  }
  return best;
}

}  // namespace

Blend nearest_blend(const std::vector<Hansen>& liquids, const Hansen& aim) {
  const Vector origin = scaled(aim);
  std::vector<Vector> places;
  for (const Hansen& liquid : liquids) places.push_back(minus(scaled(liquid), origin));
  Simplex simplex = {{0, places[0], 1}};
  double before = dot(places[0], places[0]);
  // Each round adds the liquid that lies farthest towards the aim; none is farther: the point is the nearest.
  while (true) {
    const Vector point = point_of(simplex);
    const auto nearer = [&](const Vector& a, const Vector& b) { return dot(a, point) < dot(b, point); };
    const auto next = std::min_element(places.begin(), places.end(), nearer);
    if (dot(point, point) - dot(*next, point) <= 1e-13 * (1 + before)) break;
    Simplex larger = simplex;
    larger.push_back({static_cast<std::size_t>(next - places.begin()), *next, 0});
    larger = nearest_face(larger);
    const Vector better = point_of(larger);
    if (dot(better, better) >= before) break;
    before = dot(better, better);
    simplex = larger;
    if (simplex.size() == 4) break;  // the aim lies inside
  }
  Blend blend;
  blend.fractions.assign(liquids.size(), 0);
  for (const Corner& corner : simplex) {
    blend.fractions[corner.liquid] = corner.weight;
    blend.point.dD += corner.weight * liquids[corner.liquid].dD;
    blend.point.dP += corner.weight * liquids[corner.liquid].dP;
    blend.point.dH += corner.weight * liquids[corner.liquid].dH;
  }
  blend.Ra = distance_Ra(blend.point, aim);
  return blend;
}

namespace {

// Shares of the bottles, moved on ever finer grids around the best so far.
class Refinement {
 public:
  Refinement(const SearchTask& task, const std::vector<std::uint16_t>& bottles, std::vector<double> start,
             const Verdict& verdict, double wanted_effect)
      : task_(&task), bottles_(bottles), best_(std::move(start)), verdict_(verdict), wanted_(wanted_effect) {}

  void refine(double step) {
    bool moved = true;
    for (int round = 0; moved && round < 40; ++round) {
      centre_ = best_;
      moved = false;
      try_around(0, centre_, 1, step, moved);
    }
  }

  const std::vector<double>& fractions() const { return best_; }
  const Verdict& verdict() const { return verdict_; }
  bool is_enough() const { return verdict_.effect >= wanted_; }

 private:
  // Sets the shares from `at` on; the last takes what is left.
  void try_around(std::size_t at, std::vector<double> shares, double left, double step, bool& moved) {
    if (at + 1 == shares.size()) {
      shares[at] = left;
      if (left >= 0 && within_most(at, left)) offer(shares, moved);
      return;
    }
    // A dense grid: where two layers share the risk the way down is a narrow ridge.
    const int reach = shares.size() < 4 ? 8 : 4;
    for (int i = -reach; i <= reach; ++i) {
      const double share = std::max(centre_[at] + i * step, 0.0);
      if (share > left + 1e-15 || !within_most(at, share)) continue;
      shares[at] = std::min(share, left);
      try_around(at + 1, shares, left - shares[at], step, moved);
    }
  }

  bool within_most(std::size_t at, double share) const {
    return task_->most_percent.empty() || share * 100 <= task_->most_percent[bottles_[at]] + 1e-9;
  }

  void offer(const std::vector<double>& shares, bool& moved) {
    Hansen point;
    for (std::size_t i = 0; i < shares.size(); ++i) {
      const Hansen& liquid = task_->shelf[bottles_[i]].hansen;
      point.dD += shares[i] * liquid.dD;
      point.dP += shares[i] * liquid.dP;
      point.dH += shares[i] * liquid.dH;
    }
    const Verdict verdict = judge(*task_, point);
    const double lack = std::max(wanted_ - verdict.effect, 0.0);
    const double lack_so_far = std::max(wanted_ - verdict_.effect, 0.0);
    if (lack > lack_so_far || (lack == lack_so_far && verdict.risk >= verdict_.risk)) return;
    best_ = shares;
    verdict_ = verdict;
    moved = true;
  }

  const SearchTask* task_;
  std::vector<std::uint16_t> bottles_;
  std::vector<double> best_;
  std::vector<double> centre_;
  Verdict verdict_;
  double wanted_;
};

std::vector<double> fractions_of(const SearchTask& task, const Composition& composition,
                                 const std::vector<std::uint16_t>& bottles) {
  std::vector<double> fractions(bottles.size(), 0);
  for (std::size_t i = 0; i < static_cast<std::size_t>(composition.parts); ++i) {
    const auto at = std::find(bottles.begin(), bottles.end(), composition.liquid[i]);
    fractions[static_cast<std::size_t>(at - bottles.begin())] = composition.share[i] * task.step_percent / 100.0;
  }
  return fractions;
}

// Mixtures of the grid from which a better one may be near: little risk, and little effect wanting at several prices.
std::vector<Candidate> starts(const SearchTask& task, double wanted_effect, const std::vector<std::uint16_t>& bottles) {
  constexpr std::ptrdiff_t each = 4;
  std::vector<Candidate> all;
  for_each_composition(bottles, static_cast<int>(bottles.size()), 100 / task.step_percent,
                       [&](const Composition& composition) {
                         all.push_back({composition, judge(task, point_of(task, composition))});
                       });
  std::vector<Candidate> chosen;
  for (const double price : {0.2, 0.5, 1.0, 3.0}) {
    const auto cost = [&](const Candidate& c) {
      return c.verdict.risk + price * std::max(wanted_effect - c.verdict.effect, 0.0);
    };
    const auto last = all.begin() + std::min(each, std::ssize(all));
    std::partial_sort(all.begin(), last, all.end(),
                      [&](const Candidate& a, const Candidate& b) { return cost(a) < cost(b); });
    for (auto at = all.begin(); at != last; ++at)
      if (std::find(chosen.begin(), chosen.end(), *at) == chosen.end()) chosen.push_back(*at);
  }
  return chosen;
}

}  // namespace

Certificate certify(const SearchTask& task, const Candidate& candidate, const std::vector<std::uint16_t>& bottles,
                    const Hansen& aim) {
  const double wanted = candidate.verdict.effect;
  const double first_step = task.step_percent / 200.0;
  Refinement best(task, bottles, fractions_of(task, candidate.composition, bottles), candidate.verdict, wanted);
  best.refine(first_step);
  for (const Candidate& start : starts(task, wanted, bottles)) {
    Refinement other(task, bottles, fractions_of(task, start.composition, bottles), start.verdict, wanted);
    for (const double divisor : {2.0, 4.0, 8.0}) other.refine(first_step / divisor);
    if (other.is_enough() && other.verdict().risk < best.verdict().risk) best = other;
  }
  for (double step = first_step; step > 1e-6; step *= 0.6) best.refine(step);
  std::vector<Hansen> liquids;
  for (const std::uint16_t bottle : bottles) liquids.push_back(task.shelf[bottle].hansen);
  return {best.fractions(), best.verdict(), candidate.verdict.risk - best.verdict().risk, nearest_blend(liquids, aim)};
}

}  // namespace gentlest
