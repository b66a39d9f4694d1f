// Small boxes, wide spreads and awkward shelves, for tests that search thousands of times. Fixed seeds.
#pragma once

#include "gentlest/search/search.hpp"

#include <random>
#include <string>
#include <vector>

namespace gentlest::test {

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : random_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(random_() >> 11) * 0x1p-53;
  }
  int pick(int low, int high) { return low + static_cast<int>(random_() % static_cast<std::uint64_t>(high - low + 1)); }

 private:
  std::mt19937_64 random_;
};

inline const HansenBox small_box{{15, 0, 0}, {17, 5, 6}};

// Tables over a small box, wide spreads: few nodes, so that thousands of searches take no time.
inline std::vector<ChanceField> small_fields(Dice& dice, std::size_t layers) {
  const Response curve{{{{1.0, -12}, {0.5, -8}, {0.3, -6}, {0.2, -6}, {0.1, -3}}}, "test"};
  std::vector<FieldSubject> subjects;
  for (std::size_t i = 0; i < layers; ++i) {
    const Hansen centre{dice.between(13.5, 18.5), dice.between(-2, 7), dice.between(-2, 8)};
    const Hansen sd{dice.between(1, 2), dice.between(2, 4), dice.between(2, 4)};
    subjects.push_back({{{centre, dice.between(4, 9)}, sd, dice.between(1, 2)}, curve, dice.pick(2, 5)});
  }
  return chance_fields(small_box, subjects);
}

// Liquids of the box, some of them equal, some in the middle of two others, some on its faces: all that makes ties.
inline std::vector<Liquid> small_shelf(Dice& dice, std::size_t count) {
  std::vector<Liquid> shelf;
  for (std::size_t i = 0; i < count; ++i) {
    const double dD = dice.between(15, 17);
    const double dP = dice.between(0, 5);
    Hansen at{dD, dP, dice.between(0, 6)};
    const int kind = dice.pick(0, 5);
    if (kind == 0 && i > 0) at = shelf[i - 1].hansen;
    if (kind == 1 && i > 1) {
      const Hansen& a = shelf[i - 1].hansen;
      const Hansen& b = shelf[i - 2].hansen;
      at = {(a.dD + b.dD) / 2, (a.dP + b.dP) / 2, (a.dH + b.dH) / 2};
    }
    if (kind == 2) at.dP = at.dH = 0;
    shelf.push_back({std::string(1, static_cast<char>('a' + i)), nullptr, 0, at});
  }
  return shelf;
}

}  // namespace gentlest::test
