#include "gentlest/catalogue/activity.hpp"

#include <boost/container/small_vector.hpp>
#include "core/base/sums.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <set>
#include <tuple>

namespace gentlest {

namespace {

constexpr double half_coordination = 5;  // z / 2 with z = 10, as published

// One figure for each group. Drying and splitting ask for activities tens of thousands of times a plan; the groups of a
// mixture are few, so nothing is taken from the heap.
using Scratch = boost::container::small_vector<double, 24>;

// Every subgroup that occurs, rising.
std::vector<int> subgroups_in(const std::vector<Groups>& molecules) {
  std::set<int> numbers;
  for (const Groups& groups : molecules)
    for (const GroupCount& group : groups) numbers.insert(group.subgroup);
  return {numbers.begin(), numbers.end()};
}

double psi_of(const GroupTable& table, int from, int to, double temperature_K) {
  if (from == to) return 1;
  const Interaction& pair = *find_interaction(table, from, to);
  return std::exp(-(pair.a / temperature_K + pair.b + pair.c * temperature_K));
}

void add_missing_pairs(std::vector<ActivityGap>& missing, const std::set<int>& main_groups, const GroupTable& table) {
  for (const int from : main_groups)
    for (const int to : main_groups)
      if (from < to && (!find_interaction(table, from, to) || !find_interaction(table, to, from)))
        missing.push_back({ActivityGap::What::pair, from, to});
}

}  // namespace

void sort_table(GroupTable& table) {
  std::sort(table.subgroups.begin(), table.subgroups.end(),
            [](const Subgroup& a, const Subgroup& b) { return a.number < b.number; });
  std::sort(table.interactions.begin(), table.interactions.end(),
            [](const Interaction& a, const Interaction& b) { return std::tie(a.from, a.to) < std::tie(b.from, b.to); });
}

const Subgroup* find_subgroup(const GroupTable& table, int number) {
  const auto found = std::lower_bound(table.subgroups.begin(), table.subgroups.end(), number,
                                      [](const Subgroup& group, int wanted) { return group.number < wanted; });
  return found == table.subgroups.end() || found->number != number ? nullptr : &*found;
}

const Interaction* find_interaction(const GroupTable& table, int from, int to) {
  const auto found = std::lower_bound(table.interactions.begin(), table.interactions.end(), std::make_tuple(from, to),
                                      [](const Interaction& pair, const std::tuple<int, int>& wanted) {
                                        return std::tie(pair.from, pair.to) < wanted;
                                      });
  return found == table.interactions.end() || found->from != from || found->to != to ? nullptr : &*found;
}

std::vector<ActivityGap> missing_for_activity(const std::vector<Groups>& molecules, const GroupTable& table) {
  std::vector<ActivityGap> missing;
  for (std::size_t i = 0; i < molecules.size(); ++i)
    if (molecules[i].empty()) missing.push_back({ActivityGap::What::molecule, static_cast<int>(i)});
  std::set<int> main_groups;
  for (const int number : subgroups_in(molecules)) {
    if (const Subgroup* group = find_subgroup(table, number))
      main_groups.insert(group->main_group);
    else
      missing.push_back({ActivityGap::What::subgroup, number});
  }
  add_missing_pairs(missing, main_groups, table);
  return missing;
}

Activity::Activity(const std::vector<Groups>& molecules, const GroupTable& table, double temperature_K) {
  assert(temperature_K > 0 && missing_for_activity(molecules, table).empty());
  const std::vector<int> numbers = subgroups_in(molecules);
  groups_ = numbers.size();
  std::vector<const Subgroup*> groups;
  for (const int number : numbers) groups.push_back(find_subgroup(table, number));
  for (const Subgroup* group : groups) Q_.push_back(group->Q);
  for (const Subgroup* from : groups)
    for (const Subgroup* to : groups) psi_.push_back(psi_of(table, from->main_group, to->main_group, temperature_K));
  count_.assign(molecules.size() * groups_, 0);
  for (std::size_t i = 0; i < molecules.size(); ++i) {
    double r = 0;
    double q = 0;
    double all = 0;
    std::vector<double> fractions(groups_, 0);
    for (const GroupCount& group : molecules[i]) {
      const auto place =
          static_cast<std::size_t>(std::lower_bound(numbers.begin(), numbers.end(), group.subgroup) - numbers.begin());
      count_[i * groups_ + place] += group.count;
      fractions[place] += group.count;
      all += group.count;
      r += group.count * groups[place]->R;
      q += group.count * groups[place]->Q;
    }
    for (double& fraction : fractions) fraction /= all;
    r_.push_back(r);
    q_.push_back(q);
    size_.push_back(table.modified ? std::pow(r, 0.75) : r);
    std::vector<double> pure(groups_);
    ln_group_activity(fractions, pure);
    pure_residue_.insert(pure_residue_.end(), pure.begin(), pure.end());
  }
}

void Activity::ln_group_activity(std::span<const double> group_fractions, std::span<double> result) const {
  double surface = 0;
  for (std::size_t k = 0; k < groups_; ++k) surface += Q_[k] * group_fractions[k];
  // A mixture of groups without surface (a pure quaternary carbon) has no residual part at all.
  std::fill(result.begin(), result.end(), 0.0);
  if (surface <= 0) return;
  Scratch theta(groups_);
  Scratch sum(groups_, 0);  // sum over m of theta_m psi_mk
  for (std::size_t k = 0; k < groups_; ++k) theta[k] = Q_[k] * group_fractions[k] / surface;
  for (std::size_t m = 0; m < groups_; ++m)
    for (std::size_t k = 0; k < groups_; ++k) sum[k] += theta[m] * psi_[m * groups_ + k];
  for (std::size_t k = 0; k < groups_; ++k) {
    double back = 0;
    for (std::size_t m = 0; m < groups_; ++m) back += theta[m] * psi_[k * groups_ + m] / sum[m];
    result[k] = Q_[k] * (1 - std::log(sum[k]) - back);
  }
}

std::vector<double> Activity::ln_gamma(const std::vector<double>& x) const {
  assert(x.size() == r_.size() && add_up_to(x, 1));
  const std::size_t molecules = r_.size();
  double mean_r = 0;
  double mean_q = 0;
  double mean_power = 0;
  Scratch fractions(groups_, 0);
  for (std::size_t i = 0; i < molecules; ++i) {
    mean_r += x[i] * r_[i];
    mean_q += x[i] * q_[i];
    mean_power += x[i] * size_[i];
    for (std::size_t k = 0; k < groups_; ++k) fractions[k] += x[i] * count_[i * groups_ + k];
  }
  double all = 0;
  for (const double fraction : fractions) all += fraction;
  for (double& fraction : fractions) fraction /= all;
  Scratch residue(groups_);
  ln_group_activity({fractions.data(), groups_}, {residue.data(), groups_});
  std::vector<double> result(molecules);
  for (std::size_t i = 0; i < molecules; ++i) {
    const double V = r_[i] / mean_r;
    const double F = q_[i] / mean_q;
    const double size = size_[i] / mean_power;
    double sum = 1 - size + std::log(size) - half_coordination * q_[i] * (1 - V / F + std::log(V / F));
    for (std::size_t k = 0; k < groups_; ++k)
      sum += count_[i * groups_ + k] * (residue[k] - pure_residue_[i * groups_ + k]);
    result[i] = sum;
  }
  return result;
}

std::optional<Activity> activity_of(const std::vector<Groups>& molecules, const GroupTable& table,
                                    double temperature_K) {
  if (molecules.empty() || !missing_for_activity(molecules, table).empty()) return std::nullopt;
  return Activity(molecules, table, temperature_K);
}

}  // namespace gentlest
