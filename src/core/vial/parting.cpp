// Which bottles with water in them part from which others, and the grade that would not.
#include "gentlest/vial/parting.hpp"

#include "gentlest/liquids/grade.hpp"

#include <algorithm>

namespace gentlest {

namespace {

Mixture pair_of(const Liquid& liquid, const Liquid& other, int percent) {
  return Mixture({{liquid, percent / 100.0}, {other, 1 - percent / 100.0}});
}

bool stays_one_liquid(const Liquid& liquid, const Liquid& other, const PartingPair& pair, int step_percent,
                      const Catalogue& catalogue, Celsius room) {
  for (int percent = pair.from_percent; percent <= pair.to_percent; percent += step_percent)
    if (verdict_on_phases(pair_of(liquid, other, percent), catalogue, room).phases != Phases::one_liquid) return false;
  return true;
}

// More alcohol never parts sooner, so the weakest grade is found by halving.
std::optional<std::string> weakest_grade(const Liquid& liquid, const Liquid& other, const PartingPair& pair,
                                         int step_percent, const Catalogue& catalogue, Celsius room) {
  const auto of_strength = [&](int percent) {
    return make_liquid(*liquid.solvent, grade_of_percent(percent), catalogue);
  };
  const auto mixes = [&](int percent) {
    return stays_one_liquid(of_strength(percent), other, pair, step_percent, catalogue, room);
  };
  if (!mixes(100)) return std::nullopt;
  int parts = 50;
  int high = 100;
  while (high - parts > 1) {
    const int middle = (parts + high) / 2;
    (mixes(middle) ? high : parts) = middle;
  }
  return of_strength(high).label;
}

std::optional<PartingPair> parting_of(const Liquid& liquid, const Liquid& other, int step_percent, Celsius room,
                                      const Catalogue& catalogue) {
  PartingPair pair{liquid.label, other.label, 0, 0, PhasesBasis::single, std::nullopt, {}};
  for (int percent = step_percent; percent < 100; percent += step_percent) {
    const PhaseVerdict verdict = verdict_on_phases(pair_of(liquid, other, percent), catalogue, room);
    if (verdict.phases != Phases::two_liquids) continue;
    if (pair.from_percent == 0) pair.from_percent = percent;
    pair.to_percent = percent;
    pair.basis = std::max(pair.basis, verdict.basis);
  }
  if (pair.from_percent == 0) return std::nullopt;
  pair.sources = phases_of(pair_of(liquid, other, pair.from_percent), catalogue, room).sources;
  pair.stays_one_liquid = weakest_grade(liquid, other, pair, step_percent, catalogue, room);
  return pair;
}

}  // namespace

std::vector<PartingPair> parting_pairs(const std::vector<Liquid>& shelf, int step_percent, Celsius room,
                                       const Catalogue& catalogue) {
  std::vector<PartingPair> pairs;
  for (const Liquid& liquid : shelf) {
    if (!(liquid.water_fraction > 0)) continue;
    for (const Liquid& other : shelf) {
      if (other.label == liquid.label || other.solvent == liquid.solvent) continue;
      if (auto pair = parting_of(liquid, other, step_percent, room, catalogue)) pairs.push_back(std::move(*pair));
    }
  }
  return pairs;
}

}  // namespace gentlest
