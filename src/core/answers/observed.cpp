#include "gentlest/answers/observed.hpp"

#include "gentlest/catalogue/sighting.hpp"
#include "gentlest/job/limits.hpp"
#include "gentlest/search/search.hpp"
#include "gentlest/space/chance.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <map>
#include <utility>

namespace gentlest {

std::optional<Mixture> mixture_of(const Observation& seen, const Catalogue& catalogue) {
  std::vector<Part> parts;
  for (const ObservedPart& part : seen.parts) {
    const Solvent* solvent = catalogue.find_solvent(part.solvent);
    assert(solvent);
    if (!solvent->hansen) return std::nullopt;
    parts.push_back({make_liquid(*solvent, {}, catalogue), part.percent / 100});
  }
  if (parts.empty()) return std::nullopt;
  return Mixture(std::move(parts));
}

namespace {

std::optional<NotJudged> reason_against(const Observation& seen, const Material& material, bool has_point) {
  if (seen.parts.empty()) return NotJudged::in_words;
  if (!material.sphere) return NotJudged::no_sphere;
  if (!has_point) return NotJudged::no_point;
  return std::nullopt;
}

// All observations of one material by contacts that count alike, so that its sphere is tabulated once.
void judge_on(const Material& material, const std::vector<JudgedObservation*>& all, const Catalogue& catalogue) {
  std::vector<Mixture> mixtures;
  std::vector<JudgedObservation*> asked;
  for (JudgedObservation* one : all) {
    std::optional<Mixture> mixture = mixture_of(*one->seen, catalogue);
    one->not_judged = reason_against(*one->seen, material, mixture.has_value());
    if (one->not_judged) continue;
    mixtures.push_back(std::move(*mixture));
    asked.push_back(one);
  }
  if (mixtures.empty()) return;
  const std::vector<ActionChances> chances = chances_on(material, mixtures, catalogue, all.front()->seen->contact);
  for (std::size_t i = 0; i < asked.size(); ++i) {
    asked[i]->chances = chances[i];
    asked[i]->agreement = asked[i]->seen->grades ? compare(*asked[i]->seen->grades, chances[i]) : Agreement::open;
  }
}

}  // namespace

std::vector<ActionChances> chances_on(const Material& material, const std::vector<Mixture>& mixtures,
                                      const Catalogue& catalogue, Contact contact) {
  const std::optional<UncertainSphere> sphere = uncertain_sphere(material, catalogue);
  std::vector<ActionChances> chances;
  if (!sphere || mixtures.empty()) return chances;
  std::vector<Liquid> liquids;
  for (const Mixture& mixture : mixtures) add_liquids(liquids, mixture);
  const Response response = response_of(material, catalogue, contact);
  ActionChances counted;
  counted.moves_grade = effect_grade_of(response.strongest, {});
  counted.affects_grade = risk_grade_of(material.harm_grade ? std::optional(material.harm_grade->value) : std::nullopt,
                                        response.strongest, {});
  const LocalReach reach = local_reach(material);
  const UncertainSphere met = seen_from(*sphere, largest_sd(liquids));
  const std::vector<ChanceField> fields =
      chance_fields(bounding_box(liquids),
                    {{met, response, counted.moves_grade, reach}, {met, response, counted.affects_grade, reach}});
  for (const Mixture& mixture : mixtures) {
    const Hansen point = mix(mixture);
    counted.moves = rounded_chance(fields[0](point));
    counted.affects = rounded_chance(fields[1](point));
    chances.push_back(counted);
  }
  return chances;
}

Agreement compare(const GradeRange& seen, const ActionChances& chances) {
  const std::array<std::pair<int, double>, 2> borders = {
      {{chances.moves_grade, chances.moves}, {chances.affects_grade, chances.affects}}};
  bool clear_cut = false;
  for (const auto& [grade, chance] : borders) {
    const Sighting says = sighting_of(seen, grade);
    if ((says == Sighting::acts && chance < 0.5) || (says == Sighting::spares && chance > 0.5))
      return Agreement::disagrees;
    clear_cut = clear_cut || says != Sighting::may_act;
  }
  return clear_cut ? Agreement::agrees : Agreement::open;
}

std::vector<JudgedObservation> judge_observations(const std::vector<const Observation*>& observations,
                                                  const Catalogue& catalogue) {
  std::vector<JudgedObservation> judged(observations.size());
  std::map<std::pair<std::string, bool>, std::vector<JudgedObservation*>> by_material;  // and by short contact
  for (std::size_t i = 0; i < observations.size(); ++i) {
    judged[i].seen = observations[i];
    by_material[{observations[i]->material, is_short(observations[i]->contact)}].push_back(&judged[i]);
  }
  for (const auto& [key, all] : by_material) {
    const Material* material = catalogue.find_material(key.first);
    assert(material);
    judge_on(*material, all, catalogue);
  }
  return judged;
}

}  // namespace gentlest
