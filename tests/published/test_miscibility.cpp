// Will it stay one liquid: the published case of ethanol with white spirit, published pairs, and the arithmetic.
#include "gentlest/vial/miscibility.hpp"

#include "shipped_mixtures.hpp"

#include <fmt/format.h>
#include <catch2/catch.hpp>
#include "near.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>
#include <utility>
#include <vector>

using namespace gentlest;
using namespace gentlest::test;

namespace {

Phases phases_in(const std::string& text) {
  return phases_of(mixture_from(text), shipped_catalogue()).phases;
}

using Vector = std::vector<double>;

Vector normalised(Vector amounts) {
  const double sum = std::accumulate(amounts.begin(), amounts.end(), 0.0);
  for (double& amount : amounts) amount /= sum;
  return amounts;
}

// Share of the second liquid for given ratios K = second / first (Rachford and Rice); nothing outside 0..1.
std::optional<double> share_for(const Vector& x, const Vector& K) {
  const auto defect = [&](double share) {
    double sum = 0;
    for (std::size_t i = 0; i < x.size(); ++i) sum += x[i] * (K[i] - 1) / (1 + share * (K[i] - 1));
    return sum;
  };
  double low = 0;
  double high = 1;
  if (!(defect(low) > 0 && defect(high) < 0)) return std::nullopt;
  for (int round = 0; round < 60; ++round) {
    const double middle = (low + high) / 2;
    (defect(middle) > 0 ? low : high) = middle;
  }
  return (low + high) / 2;
}

struct MoleSplit {
  Vector first, second;
  double share = 0;  // moles in the second
};

std::optional<MoleSplit> equilibrate(const Activity& activity, const Vector& x, Vector first, Vector second) {
  constexpr int most_rounds = 5000;
  for (int round = 0; round < most_rounds; ++round) {
    const Vector in_first = activity.ln_gamma(first);
    const Vector in_second = activity.ln_gamma(second);
    Vector K(x.size());
    for (std::size_t i = 0; i < x.size(); ++i) K[i] = std::exp(in_first[i] - in_second[i]);
    const auto share = share_for(x, K);
    if (!share) return std::nullopt;
    double change = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
      const double next = x[i] / (1 + *share * (K[i] - 1));
      change = std::max(change, std::abs(next - first[i]));
      first[i] = next;
      second[i] = K[i] * next;
    }
    first = normalised(std::move(first));
    second = normalised(std::move(second));
    if (change < 1e-11) return MoleSplit{first, second, *share};
  }
  return std::nullopt;
}

// Mole fractions to volume fractions; returns the molar volume of the liquid as well.
std::pair<Vector, double> by_volume(const Vector& x, const Breakdown& breakdown) {
  Vector volumes(x.size());
  for (std::size_t i = 0; i < x.size(); ++i) volumes[i] = x[i] * breakdown.molecules[i].molar_volume_cm3;
  const double sum = std::accumulate(volumes.begin(), volumes.end(), 0.0);
  return {normalised(std::move(volumes)), sum};
}

// The two liquids of a mixture that parts, each as volume fractions of the molecules, in the order of the breakdown.
struct PhaseSplit {
  Vector first, second;
  double share_of_second = 0;  // of the volume
};

// By the modified group method, from a second liquid that is nearly one molecule; nothing where none settles.
std::optional<PhaseSplit> split_phases(const Breakdown& breakdown) {
  const Catalogue& catalogue = shipped_catalogue();
  const auto activity = activity_of(modified_groups_of(breakdown, catalogue), catalogue.chemistry().unifac_modified,
                                    kelvin(room_temperature));
  const Vector x = mole_fractions(breakdown);
  if (!activity || !is_unstable(*activity, x)) return std::nullopt;
  for (std::size_t start = 0; start < x.size(); ++start) {
    Vector pure(x.size(), 0.02);
    pure[start] = 1;
    const auto split = equilibrate(*activity, x, x, normalised(std::move(pure)));
    if (!split) continue;
    const auto [first, first_volume] = by_volume(split->first, breakdown);
    const auto [second, second_volume] = by_volume(split->second, breakdown);
    const double in_second = split->share * second_volume;
    return PhaseSplit{first, second, in_second / (in_second + (1 - split->share) * first_volume)};
  }
  return std::nullopt;
}

// Volume share of one substance in a phase, the stand-ins of a cut together.
double share_of(const Breakdown& breakdown, const std::vector<double>& phase, const std::vector<std::string>& ids) {
  double sum = 0;
  for (std::size_t i = 0; i < phase.size(); ++i)
    for (const std::string& id : ids)
      if (breakdown.molecules[i].solvent->id == id) sum += phase[i];
  return sum;
}

// The group method alone, at the composition by moles where it is least stable: does the pair part?
bool computed_to_part(const Groups& a, const Groups& b, double temperature_K) {
  const Activity activity({a, b}, shipped_catalogue().chemistry().unifac_modified, temperature_K);
  for (double x = 0.05; x < 0.96; x += 0.05)
    if (is_unstable(activity, {x, 1 - x})) return true;
  return false;
}

}  // namespace

TEST_CASE("Hook 1988: ethanol with white spirit parts at about 5 % water in the ethanol") {
  CHECK(phases_in("ethanol absolute 15, white spirit 85") == Phases::one_liquid);
  CHECK(phases_in("ethanol 98 % 15, white spirit 85") == Phases::one_liquid);
  CHECK(phases_in("ethanol 96 % 15, white spirit 85") == Phases::near_border);
  CHECK(phases_in("ethanol 95 % 15, white spirit 85") == Phases::two_liquids);
  CHECK(phases_in("isopropanol 90 % 15, white spirit 85") == Phases::two_liquids);
  const PhaseAnswer answer = phases_of(mixture_from("ethanol 95 % 15, white spirit 85"), shipped_catalogue());
  CHECK(answer.basis == PhasesBasis::measured);
  CHECK(answer.sources == std::vector<std::string>{"hook_1988"});
}

TEST_CASE("Hook 1988: the two liquids of 20 ethanol, 78 white spirit, 2 water") {
  // Published, mL in 100: ethanol phase 80.2 ethanol, 10.6 hydrocarbon, 9.2 water; hydrocarbon phase 96, 3.1, 0.12.
  const Mixture mixture = mixture_from("ethanol 20, white spirit 78, water 2");
  const auto breakdown = break_down(mixture, shipped_catalogue());
  REQUIRE(breakdown);
  const auto split = split_phases(*breakdown);
  REQUIRE(split);
  const bool second_is_wet = share_of(*breakdown, split->second, {"ethanol"}) > 0.5;
  const std::vector<double>& wet = second_is_wet ? split->second : split->first;
  const std::vector<double>& oily = second_is_wet ? split->first : split->second;
  CHECK(100 * share_of(*breakdown, wet, {"ethanol"}) == near(80.2, 1.5));
  CHECK(100 * share_of(*breakdown, wet, {"n_decane", "mesitylene"}) == near(10.6, 1.5));
  CHECK(100 * share_of(*breakdown, wet, {"water"}) == near(9.2, 0.5));
  CHECK(100 * share_of(*breakdown, oily, {"n_decane", "mesitylene"}) == near(96, 1.5));
  CHECK(100 * share_of(*breakdown, oily, {"ethanol"}) == near(3.1, 0.5));
  CHECK(100 * share_of(*breakdown, oily, {"water"}) == near(0.12, 0.06));
  CHECK(phases_of(mixture, shipped_catalogue()).phases == Phases::two_liquids);
}

TEST_CASE("Hook 1988: less ethanol makes less of the ethanol phase, not another one") {
  // 20, 15, 10 parts of ethanol with a tenth of water in it: the ethanol phase stays at about 80 % ethanol.
  for (const int ethanol : {20, 15, 10}) {
    INFO(ethanol);
    const auto breakdown = break_down(
        mixture_from(fmt::format("ethanol {}, white spirit {}, water 2", ethanol, 98 - ethanol)), shipped_catalogue());
    REQUIRE(breakdown);
    const auto split = split_phases(*breakdown);
    REQUIRE(split);
    const double one = share_of(*breakdown, split->first, {"ethanol"});
    const double other = share_of(*breakdown, split->second, {"ethanol"});
    CHECK(std::max(one, other) == near(0.80, 0.05));
  }
}

TEST_CASE("the two liquids are in equilibrium and add up to what was mixed") {
  const auto breakdown = break_down(mixture_from("ethanol 20, white spirit 78, water 2"), shipped_catalogue());
  const auto split = split_phases(*breakdown);
  REQUIRE(split);
  const Activity activity(modified_groups_of(*breakdown, shipped_catalogue()),
                          shipped_catalogue().chemistry().unifac_modified, kelvin(room_temperature));
  const auto ln_activity = [&](std::vector<double> volumes) {
    double sum = 0;
    for (std::size_t i = 0; i < volumes.size(); ++i) sum += volumes[i] /= breakdown->molecules[i].molar_volume_cm3;
    for (double& moles : volumes) moles /= sum;
    std::vector<double> result = activity.ln_gamma(volumes);
    for (std::size_t i = 0; i < volumes.size(); ++i) result[i] += std::log(volumes[i]);
    return result;
  };
  const std::vector<double> first = ln_activity(split->first);
  const std::vector<double> second = ln_activity(split->second);
  for (std::size_t i = 0; i < first.size(); ++i) {
    CHECK(first[i] == near(second[i], 1e-7));
    const double together = split->share_of_second * split->second[i] + (1 - split->share_of_second) * split->first[i];
    CHECK(together == near(breakdown->molecules[i].volume_fraction, 1e-8));
  }
}

TEST_CASE("published critical temperatures: the group method agrees, or errs on the side of a split") {
  const Chemistry& chemistry = shipped_catalogue().chemistry();
  int compared = 0;
  for (const KnownPair& pair : chemistry.known_pairs) {
    if (!pair.critical_temperature_C) continue;
    const Groups a = modified_groups_of(chemistry, pair.a);
    const Groups b = modified_groups_of(chemistry, pair.b);
    if (!missing_for_activity({a, b}, chemistry.unifac_modified).empty()) continue;
    ++compared;
    INFO(pair.a << " + " << pair.b << ", critical at " << *pair.critical_temperature_C << " C");
    const double room_K = kelvin(room_temperature);
    if (*pair.critical_temperature_C > room_temperature.value + 5) CHECK(computed_to_part(a, b, room_K));
    if (*pair.critical_temperature_C < room_temperature.value - 5)
      CHECK_FALSE(computed_to_part(a, b, room_K + border_margin_K));
  }
  CHECK(compared >= 15);
}

TEST_CASE("pairs, three liquids, and liquids that nobody has figures for") {
  CHECK(phases_in("acetone 30, isooctane 70") == Phases::one_liquid);
  CHECK(phases_in("methanol 30, isooctane 70") == Phases::two_liquids);
  CHECK(phases_in("water 50, toluene 50") == Phases::two_liquids);
  CHECK(phases_in("water 50, ethanol 50") == Phases::one_liquid);
  CHECK(phases_in("acetone 20, ethanol 10, isooctane 70") == Phases::one_liquid);
  CHECK(phases_in("toluene 50, water 40, acetone 10") == Phases::two_liquids);
  CHECK(phases_in("ethanol 96 % 100") == Phases::one_liquid);
  const PhaseAnswer unknown = phases_of(mixture_from("propylene carbonate 50, isooctane 50"), shipped_catalogue());
  CHECK(unknown.phases == Phases::unknown);
  CHECK(unknown.basis == PhasesBasis::none);
}

TEST_CASE("only what is unstable is called so: every liquid with itself is stable") {
  const Chemistry& chemistry = shipped_catalogue().chemistry();
  for (const MoleculeGroups& molecule : chemistry.modified_groups) {
    INFO(molecule.solvent);
    REQUIRE(missing_for_activity({molecule.groups}, chemistry.unifac_modified).empty());
    const Activity activity({molecule.groups, molecule.groups}, chemistry.unifac_modified, 293.15);
    CHECK_FALSE(is_unstable(activity, {0.4, 0.6}));
  }
}
