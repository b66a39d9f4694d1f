// Liquids and layers that exist nowhere, for tests of the arithmetic. Fixed seeds; same numbers everywhere.
#pragma once

#include "gentlest/search/search.hpp"

#include <random>
#include <string>
#include <vector>

namespace gentlest::test {

class InventedShelf {
 public:
  InventedShelf(std::size_t count, std::uint64_t seed) : random_(seed), solvents_(count) {
    for (std::size_t i = 0; i < count; ++i) {
      solvents_[i].id = solvents_[i].name = std::string("liquid ") + static_cast<char>('a' + i);
      const double dD = between(14, 19);
      const double dP = between(0, 14);
      liquids.push_back({solvents_[i].name, &solvents_[i], 0, {dD, dP, between(0, 22)}});
    }
    kept = {{{between(16, 19), between(6, 11), between(6, 12)}, between(5, 8)}, {0.8, 1.5, 1.8}, 0.9};
    target = {{{between(17, 20), between(3, 7), between(6, 11)}, between(8, 11)}, {0.9, 1.6, 1.8}, 1.2};
  }
  InventedShelf(const InventedShelf&) = delete;
  InventedShelf& operator=(const InventedShelf&) = delete;

  SearchTask task(int parts, int step_percent) const {
    SearchTask made;
    made.shelf = liquids;
    made.parts = parts;
    made.step_percent = step_percent;
    const HansenBox box = bounding_box(liquids);
    std::vector<ChanceField> fields = chance_fields(box, {{target, curve, 2}, {kept, curve, 4}});
    made.target.push_back(std::move(fields[0]));
    made.kept.push_back(std::move(fields[1]));
    return made;
  }

  /// Lines ask for a hydrocarbon and for families.
  void set(std::size_t liquid, const std::string& family, const Hansen& point) {
    solvents_[liquid].family = family;
    liquids[liquid].hansen = point;
  }
  void set_statements(std::size_t liquid, const std::vector<std::string>& codes) {
    solvents_[liquid].hazards.emplace();
    solvents_[liquid].hazards->statements = codes;
  }
  void set_family(std::size_t liquid, const std::string& family) { solvents_[liquid].family = family; }

  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(random_() >> 11) * 0x1p-53;
  }

  std::vector<Liquid> liquids;
  UncertainSphere kept;
  UncertainSphere target;
  Response curve{{{{1.0, -12}, {0.5, -8}, {0.3, -6}, {0.2, -6}, {0.1, -3}}}, "test"};

 private:
  std::mt19937_64 random_;
  std::vector<Solvent> solvents_;
};

}  // namespace gentlest::test
