#include "gentlest/liquids/pure_shares.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace gentlest {

namespace {

bool is_of(const SeenRow& seen, const std::vector<PureShare>& shares) {
  constexpr double near_enough = 0.025;  // half a step of the usual grid
  if (seen.solvents.size() != shares.size()) return false;
  return std::all_of(shares.begin(), shares.end(), [&](const PureShare& share) {
    for (std::size_t i = 0; i < seen.solvents.size(); ++i)
      if (seen.solvents[i] == share.solvent)
        return std::abs(seen.row->parts[i].percent / 100 - share.fraction) <= near_enough;
    return false;
  });
}

}  // namespace

std::vector<PureShare> pure_shares(const Mixture& mixture, const Catalogue& catalogue) {
  std::vector<PureShare> shares;
  const auto add = [&](const Solvent* solvent, double fraction) {
    if (!(fraction > 0)) return;
    const auto known =
        std::find_if(shares.begin(), shares.end(), [&](const PureShare& one) { return one.solvent == solvent; });
    if (known == shares.end())
      shares.push_back({solvent, fraction});
    else
      known->fraction += fraction;
  };
  for (const Part& part : mixture.parts()) {
    add(part.liquid.solvent, part.fraction * (1 - part.liquid.water_fraction));
    add(catalogue.find_solvent("water"), part.fraction * part.liquid.water_fraction);
  }
  std::stable_sort(shares.begin(), shares.end(),
                   [](const PureShare& a, const PureShare& b) { return a.fraction > b.fraction; });
  return shares;
}

std::vector<SeenRow> rows_of_mixture(const std::vector<SeenRow>& rows, const std::vector<PureShare>& shares) {
  std::vector<SeenRow> found;
  if (shares.size() < 2) return found;
  std::copy_if(rows.begin(), rows.end(), std::back_inserter(found),
               [&](const SeenRow& row) { return is_of(row, shares); });
  return found;
}

}  // namespace gentlest
