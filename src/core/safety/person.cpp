#include "gentlest/safety/person.hpp"

#include "core/safety/label_codes.hpp"

#include "gentlest/catalogue/statements.hpp"

#include <algorithm>

namespace gentlest {

namespace {

SkinHarm skin_of(const Mixture& mixture, const std::vector<std::string>& codes, bool is_complete) {
  if (any_is(codes, {"H314"})) return SkinHarm::burns;
  const bool through = std::any_of(mixture.parts().begin(), mixture.parts().end(),
                                   [](const Part& part) { return warns_of_skin(*part.liquid.solvent); });
  if (through || any_is(codes, {"H310", "H311", "H312"})) return SkinHarm::through_skin;
  if (any_is(codes, {"H317"})) return SkinHarm::allergy;
  if (any_is(codes, {"H315"})) return SkinHarm::irritates;
  if (any_is(codes, {"EUH066"})) return SkinHarm::dries;
  return is_complete ? SkinHarm::none_recorded : SkinHarm::untold;
}

}  // namespace

int severity_of(const MixtureLabel& label) {
  return severity_of_statements(codes_of(label));
}

PersonHazard person_hazard(const Mixture& mixture, const MixtureLabel& label, const Catalogue& catalogue,
                           Celsius temperature) {
  const std::vector<std::string> codes = codes_of(label);
  PersonHazard hazard;
  hazard.severity = severity_of_statements(codes);
  hazard.worst = worst_statement(codes);
  hazard.is_complete = label.complete();
  hazard.skin = skin_of(mixture, codes, label.complete());
  hazard.vapour = vapour_hazards(mixture, catalogue, temperature);
  return hazard;
}

std::optional<double> vapour_ratio(const PersonHazard& hazard, const std::string& authority) {
  for (const VapourHazard& one : hazard.vapour)
    if (one.authority == authority) return one.ratio;
  return std::nullopt;
}

std::string list_for_all(const std::vector<PersonHazard>& hazards) {
  std::vector<std::string> lists;
  for (const PersonHazard& hazard : hazards)
    for (const VapourHazard& one : hazard.vapour)
      if (std::find(lists.begin(), lists.end(), one.authority) == lists.end()) lists.push_back(one.authority);
  std::string best;
  std::ptrdiff_t most = -1;
  for (const std::string& list : lists) {
    const auto count = std::count_if(hazards.begin(), hazards.end(), [&](const PersonHazard& hazard) {
      return vapour_ratio(hazard, list).has_value();
    });
    if (count > most) best = list;
    most = std::max(most, count);
  }
  return best;
}

bool warns_of_skin(const Solvent& solvent) {
  const auto& limits = solvent.exposure_limits;
  if (std::any_of(limits.begin(), limits.end(), [](const ExposureLimit& limit) { return limit.skin; })) return true;
  return solvent.hazards && any_is(solvent.hazards->statements, {"H310", "H311", "H312"});
}

}  // namespace gentlest
