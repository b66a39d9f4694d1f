// Gentler for the person: mixtures of less hazardous liquids at the same place in Hansen space, and what they
// give up. Nearness in Hansen space is no proof of the same effect; the swab decides.
#pragma once

#include "gentlest/safety/mixture_hazard.hpp"
#include "gentlest/safety/person.hpp"
#include "gentlest/search/search.hpp"
#include "gentlest/vial/evaporation.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace gentlest {

struct SubstituteWish {
  double largest_Ra = 2.0;  ///< from the original, MPa^0.5
  int parts = 3;
  int step_percent = 10;
  std::size_t most = 10;  ///< length of the list
  Celsius temperature = room_temperature;
};

struct Substitute {
  Mixture mixture;
  double Ra = 0;  ///< from the original, MPa^0.5
  int severity = 0;
  MixtureLabel label;
  PhaseAnswer phases;
  std::optional<double> drying_ratio;  ///< time to nine tenths dry over that of the original; nothing when not known
  std::vector<std::string> added_statements;  ///< codes on its label that the original's does not carry
};

/// A liquid of the shelf that was not looked at.
enum class NotTried {
  no_hazard_record,  ///< nothing says that it is less hazardous
  no_gentler         ///< it is no less hazardous than the worst part of the original
};
struct LiquidNotTried {
  std::string liquid;  ///< label
  NotTried why = NotTried::no_gentler;
  bool operator==(const LiquidNotTried&) const = default;
};

struct SubstituteAnswer {
  int severity = 0;            ///< of the original
  bool original_known = true;  ///< false: the original's label is incomplete, so it may be worse than its severity says
  std::vector<Substitute> found;  ///< by severity, then by distance; one for every set of liquids
  std::vector<LiquidNotTried> not_tried;
};

/// Mixtures of the shelf's liquids whose label is complete and less severe than the original's, that are not known to
/// part into two liquids, within the distance. Liquids without a hazard record or as severe as the original's worst
/// part are left out. Throws nothing of its own. Some seconds for a hundred liquids in threes.
SubstituteAnswer find_gentler(const Mixture& original, const std::vector<Liquid>& shelf, const Catalogue& catalogue,
                              const SubstituteWish& wish = {});

}  // namespace gentlest
