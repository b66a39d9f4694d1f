// What a mixture does to the person who tests with it, as an order and not only as a wall: the worst statement, the
// breath, the skin. From the mixture's own label and from the records of its parts.
#pragma once

#include "gentlest/safety/exposure.hpp"
#include "gentlest/safety/mixture_hazard.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// How bad a label is for the person, 0 to 5: severity_of_statements on what stands on it.
int severity_of(const MixtureLabel& label);

/// What the skin meets, worst first. A notation "skin" on a list of limits counts as through_skin.
enum class SkinHarm {
  burns,
  through_skin,
  allergy,
  irritates,
  dries,
  untold,
  none_recorded
};  // untold: a record is missing

struct PersonHazard {
  int severity = 0;         ///< of the label
  std::string worst;        ///< the statement that makes it so; empty at 0
  bool is_complete = true;  ///< false: a part has no record or a rule could not be decided, so it may be worse
  SkinHarm skin = SkinHarm::none_recorded;
  std::vector<VapourHazard> vapour;  ///< by every list that any part is on
};
PersonHazard person_hazard(const Mixture& mixture, const MixtureLabel& label, const Catalogue& catalogue,
                           Celsius temperature = room_temperature);

/// The vapour hazard ratio by that list; nothing where a part has no limit there.
std::optional<double> vapour_ratio(const PersonHazard& hazard, const std::string& authority);

/// The list by which most of these have a ratio, the earlier in vapour_hazards' order among equals: ratios compare
/// only within one. Empty where none is on any list.
std::string list_for_all(const std::vector<PersonHazard>& hazards);

/// A record, a notation or a statement says that the liquid goes through the skin.
bool warns_of_skin(const Solvent& solvent);

}  // namespace gentlest
