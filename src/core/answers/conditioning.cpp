#include "gentlest/answers/conditioning.hpp"

#include "gentlest/answers/observed.hpp"
#include "gentlest/catalogue/sighting.hpp"
#include "gentlest/liquids/mixture.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

namespace gentlest {

namespace {

constexpr int moved = 2;
constexpr int affected = 4;
constexpr double weight_of_likeness = 0.5;  // our choice: a fresh resin and the same one aged

int grade_asked(const Material& material) {
  return material.strongest_grade ? affected : moved;
}

double weight_of(Confidence confidence) {
  if (confidence == Confidence::high) return 1;
  return confidence == Confidence::medium ? 0.7 : 0.4;
}

// The observations of one material with what a fit needs of them; behind them those of materials that it is like.
struct Cases {
  std::vector<const Observation*> seen;
  std::vector<GradedAction> actions;
  std::size_t own = 0;  // so many are of the material itself

  std::set<std::string> sources() const {
    std::set<std::string> keys;
    for (const Observation* one : seen) keys.insert(one->source);
    return keys;
  }
  std::vector<GradedAction> without(const std::string& source) const {
    std::vector<GradedAction> kept;
    for (std::size_t i = 0; i < seen.size(); ++i)
      if (seen[i]->source != source) kept.push_back(actions[i]);
    return kept;
  }
};

// Gathers what can be asked of one material.
struct CaseReader {
  CaseReader(const Material& asked, const Catalogue& all, double further)
      : material(asked), catalogue(all), swab_ln_further(further) {}

  void add(const Material& seen_on, double share, std::vector<const Observation*>* not_asked) {
    for (const Observation* seen : catalogue.observations_on(seen_on)) {
      const std::optional<Mixture> mixture = mixture_of(*seen, catalogue);
      if (material.sphere && mixture && seen->grades) {
        const bool weaker = material.strongest_grade && is_short(seen->contact);
        cases.seen.push_back(seen);
        cases.actions.push_back({mix(*mixture), seen->grades->strongest, seen->grades->weakest,
                                 share * weight_of(seen->confidence), weaker ? swab_ln_further : 0});
      } else if (not_asked) {
        not_asked->push_back(seen);
      }
    }
  }

  const Material& material;
  const Catalogue& catalogue;
  double swab_ln_further;
  Cases cases;
};

JudgedAction judge(const Observation& seen, const GradedAction& action, const Material& material,
                   const ConditionedSphere& sphere, const Response& response) {
  const auto chances = expected_grades(sphere, response, action.point, action.ln_further);
  JudgedAction judged{&seen, 0, 0};
  for (int grade = 1; grade <= grade_count; ++grade) {
    const double chance = chances[static_cast<std::size_t>(grade - 1)];
    if (grade <= grade_asked(material)) judged.chance += chance;
    if (grade >= action.strongest && grade <= action.weakest) judged.chance_of_range += chance;
  }
  return judged;
}

MaterialFit fit_one(const Material& material, const Cases& cases, const Catalogue& catalogue,
                    const ConditioningSettings& settings, bool hold_out) {
  MaterialFit one;
  one.material = &material;
  one.stands = material.sphere->grade != SphereGrade::assumed;
  one.sources = static_cast<int>(cases.sources().size());
  const UncertainSphere recorded = *recorded_sphere(material, catalogue);
  const Response response = response_of(material, catalogue, Contact::immersion);
  one.fit = condition_sphere(recorded, one.stands, response, cases.actions, settings);
  for (std::size_t i = 0; i < cases.own; ++i) {
    one.recorded.push_back(judge(*cases.seen[i], cases.actions[i], material, {recorded, {}, 0}, response));
    one.fitted.push_back(judge(*cases.seen[i], cases.actions[i], material, one.fit, response));
  }
  if (!hold_out) return one;
  one.held_out.resize(cases.own);
  for (const std::string& source : cases.sources()) {
    const ConditionedSphere fit = condition_sphere(recorded, one.stands, response, cases.without(source), settings);
    for (std::size_t i = 0; i < cases.own; ++i)
      if (cases.seen[i]->source == source)
        one.held_out[i] = judge(*cases.seen[i], cases.actions[i], material, fit, response);
  }
  return one;
}

// Sums; the means are made of them at the end.
void add_score(AgreementScore& score, const std::vector<JudgedAction>& judged, const Material& material) {
  constexpr double slip = 0.05;
  for (const JudgedAction& one : judged) {
    ++score.observations;
    score.log_score -= std::log((1 - slip) * one.chance_of_range + slip / grade_count);
    if (const std::optional<bool> did = what_happened(one, material)) {
      ++score.clear_cut;
      if (is_right(one.chance, *did)) ++score.right;
      score.brier += (one.chance - (*did ? 1 : 0)) * (one.chance - (*did ? 1 : 0));
    }
    for (const JudgedAction& other : judged) {
      if (one.seen->grades->weakest >= other.seen->grades->strongest) continue;
      constexpr double alike = 1e-9;
      ++score.pairs;
      if (one.chance > other.chance + alike)
        score.in_order += 1;
      else if (one.chance > other.chance - alike)
        score.in_order += 0.5;
    }
  }
}

}  // namespace

std::optional<bool> what_happened(const JudgedAction& judged, const Material& material) {
  if (sighting_of(*judged.seen, grade_asked(material)) == Sighting::acts) return true;
  if (sighting_of(*judged.seen, affected) == Sighting::spares) return false;
  return std::nullopt;
}

bool is_right(double chance, bool happened) {
  return happened ? chance >= 0.5 : chance <= 0.25;
}

ObservationFit fit_observations(const Catalogue& catalogue, const ConditioningSettings& settings,
                                double swab_ln_further, bool hold_out) {
  ObservationFit all{settings, swab_ln_further, {}, {}};
  for (const Material& material : catalogue.materials()) {
    CaseReader reader(material, catalogue, swab_ln_further);
    reader.add(material, 1, &all.not_asked);
    reader.cases.own = reader.cases.seen.size();
    for (const std::string& id : material.observed_like)
      if (const Material* like = catalogue.find_material(id)) reader.add(*like, weight_of_likeness, nullptr);
    if (!reader.cases.seen.empty())
      all.materials.push_back(fit_one(material, reader.cases, catalogue, settings, hold_out));
  }
  return all;
}

AgreementScore score_of(const std::vector<const MaterialFit*>& fits, std::vector<JudgedAction> MaterialFit::*which) {
  AgreementScore score;
  for (const MaterialFit* fit : fits) add_score(score, fit->*which, *fit->material);
  if (score.clear_cut > 0) score.brier /= score.clear_cut;
  if (score.pairs > 0) score.in_order /= score.pairs;
  if (score.observations > 0) score.log_score /= score.observations;
  return score;
}

}  // namespace gentlest
