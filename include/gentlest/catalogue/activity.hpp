// Activity coefficients of a liquid mixture from the groups its molecules are made of (UNIFAC).
// Two published parameter sets have the same form and differ in figures: the original one, used here for vapour above
// a liquid, and the modified one (Dortmund), used for the question whether a liquid parts into two. Knows no solvent by
// name. A group or a pair of groups without published figures makes the answer "not known", never 0.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace gentlest {

/// How often one UNIFAC subgroup occurs in a molecule.
struct GroupCount {
  int subgroup = 0;
  int count = 0;
  bool operator==(const GroupCount&) const = default;
};
using Groups = std::vector<GroupCount>;

/// One subgroup of a parameter set: relative volume R and surface Q, no units.
struct Subgroup {
  int number = 0;
  std::string name;
  int main_group = 0;
  double R = 0;
  double Q = 0;
  bool operator==(const Subgroup&) const = default;
};

/// Interaction of main group `from` with main group `to`: psi = exp(-(a + b T + c T^2) / T), T in K; a in K, b without
/// unit, c in 1/K. The original set has a only. Not symmetric.
struct Interaction {
  int from = 0;
  int to = 0;
  double a = 0;
  double b = 0;
  double c = 0;
  bool operator==(const Interaction&) const = default;
};

/// One published parameter set. Look-ups expect subgroups sorted by number, interactions by (from, to): sort_table.
struct GroupTable {
  bool modified = false;  ///< true: the modified (Dortmund) form, whose size term uses R^(3/4)
  std::vector<Subgroup> subgroups;
  std::vector<Interaction> interactions;
  std::string source;  ///< key of sources.yaml
  bool operator==(const GroupTable&) const = default;
};

/// Sorts both lists as the look-ups expect.
void sort_table(GroupTable& table);

/// Null when the set has no such subgroup or no such pair (two groups of one main group need none).
const Subgroup* find_subgroup(const GroupTable& table, int number);
const Interaction* find_interaction(const GroupTable& table, int from, int to);

/// What keeps activity coefficients from being computed.
struct ActivityGap {
  enum class What {
    molecule,  ///< one without groups: `first` is its place in the list, from 0
    subgroup,  ///< `first` is a number that the set does not have
    pair       ///< the set has no figures for the main groups `first` and `second`
  };
  What what = What::molecule;
  int first = 0;
  int second = 0;
  bool operator==(const ActivityGap&) const = default;
};

/// All that is missing for these molecules; empty when nothing is.
std::vector<ActivityGap> missing_for_activity(const std::vector<Groups>& molecules, const GroupTable& table);

/// Activity coefficients of fixed molecules at one temperature. Cheap to ask again for another composition.
class Activity {
 public:
  /// Preconditions: missing_for_activity(molecules, table) is empty, temperature_K > 0.
  Activity(const std::vector<Groups>& molecules, const GroupTable& table, double temperature_K);

  /// Natural logarithms of the activity coefficients (symmetric convention: 0 for a pure liquid). x are the mole
  /// fractions in the order of the molecules; they add up to 1, zeros are allowed (infinite dilution).
  /// Sources of the equations: Fredenslund, Jones, Prausnitz 1975, AIChE J. 21, 1086; Weidlich and Gmehling 1987, Ind.
  /// Eng. Chem. Res. 26, 1372 (modified form). Checked against published worked examples in
  /// tests/published/test_activity.cpp.
  std::vector<double> ln_gamma(const std::vector<double>& x) const;

  std::size_t size() const noexcept { return r_.size(); }

 private:
  void ln_group_activity(std::span<const double> group_fractions, std::span<double> result) const;

  std::size_t groups_ = 0;
  std::vector<double> r_, q_;         // of the molecules
  std::vector<double> size_;          // r, or r^(3/4) in the modified form
  std::vector<double> count_;         // [molecule][group]
  std::vector<double> Q_;             // of the groups
  std::vector<double> psi_;           // [from][to]
  std::vector<double> pure_residue_;  // of each group in each pure molecule, [molecule][group]
};

/// The activity model of these molecules, or nothing where missing_for_activity tells why not.
std::optional<Activity> activity_of(const std::vector<Groups>& molecules, const GroupTable& table,
                                    double temperature_K);

}  // namespace gentlest
