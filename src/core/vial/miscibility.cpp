#include "gentlest/vial/miscibility.hpp"

#include "core/vial/kept.hpp"
#include "core/vial/substances.hpp"
#include "core/vial/water_limit.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace gentlest {

namespace {

// How a pair mixes at this temperature; a critical temperature says more than the word.
Mixing mixing_at(const KnownPair& pair, Celsius temperature) {
  if (!pair.critical_temperature_C) return pair.mixing;
  if (temperature.value >= *pair.critical_temperature_C) return Mixing::one_liquid;
  return pair.mixing == Mixing::one_liquid ? Mixing::partial : pair.mixing;
}

// The verdict of the group method; not_known where it cannot be asked.
Phases compute_phases(const Mixture& mixture, const Catalogue& catalogue, Celsius temperature) {
  const auto breakdown = break_down(mixture, catalogue);
  if (!breakdown) return Phases::unknown;
  const std::vector<Groups> groups = modified_groups_of(*breakdown, catalogue);
  const GroupTable& table = catalogue.chemistry().unifac_modified;
  const std::vector<double> x = mole_fractions(*breakdown);
  const auto here = activity_of(groups, table, kelvin(temperature));
  if (!here) return Phases::unknown;
  if (!is_unstable(*here, x)) return Phases::one_liquid;
  const auto warmer = activity_of(groups, table, kelvin(temperature) + border_margin_K);
  return is_unstable(*warmer, x) ? Phases::two_liquids : Phases::near_border;
}

// A pair that parts over some of the range: whether it does so here is for the group method to say, cautiously.
Phases phases_of_pair(Mixing mixing, double smaller_share, Phases computed) {
  if (mixing == Mixing::one_liquid) return Phases::one_liquid;
  const bool hardly_any = smaller_share <= 0.05;
  if (computed == Phases::one_liquid && (mixing == Mixing::partial || hardly_any)) return Phases::near_border;
  if (computed == Phases::unknown && mixing == Mixing::partial) return Phases::near_border;
  return Phases::two_liquids;
}

std::optional<PhaseAnswer> from_known_pair(const std::vector<Substance>& list, const Mixture& mixture,
                                           const Catalogue& catalogue, Celsius temperature) {
  if (list.size() != 2) return std::nullopt;
  const KnownPair* pair = find_known_pair(catalogue.chemistry(), list[0].id, list[1].id);
  if (!pair) return std::nullopt;
  const Mixing mixing = mixing_at(*pair, temperature);
  const Phases computed =
      mixing == Mixing::one_liquid ? Phases::one_liquid : compute_phases(mixture, catalogue, temperature);
  PhaseAnswer answer{phases_of_pair(mixing, std::min(list[0].fraction, list[1].fraction), computed),
                     PhasesBasis::published,
                     {pair->source}};
  answer.pair = DecidingPair{list[0].name, list[1].name, mixing, pair};
  return answer;
}

// The scale of Godfrey: the nearer of the numbers counts.
std::optional<Mixing> mixing_by_numbers(const MiscibilityNumber& a, const MiscibilityNumber& b) {
  constexpr int mixes_up_to = 15;
  int nearest = std::abs(a.first - b.first);
  for (const int one : {a.first, a.second.value_or(a.first)})
    for (const int other : {b.first, b.second.value_or(b.first)}) nearest = std::min(nearest, std::abs(one - other));
  if (nearest <= mixes_up_to) return Mixing::one_liquid;
  return nearest == mixes_up_to + 1 ? Mixing::partial : Mixing::two_liquids;
}

struct PairView {
  Mixing mixing = Mixing::one_liquid;
  bool published = false;
  std::string source;
};

std::optional<PairView> view_pair(const Substance& a, const Substance& b, const Catalogue& catalogue,
                                  Celsius temperature) {
  if (const KnownPair* pair = find_known_pair(catalogue.chemistry(), a.id, b.id))
    return PairView{mixing_at(*pair, temperature), true, pair->source};
  const MiscibilityNumber* first = find_miscibility_number(catalogue.chemistry(), a.id);
  const MiscibilityNumber* second = find_miscibility_number(catalogue.chemistry(), b.id);
  if (!first || !second) return std::nullopt;
  return PairView{*mixing_by_numbers(*first, *second), false, first->source};
}

// Every pair of the mixture as far as it is known.
struct PairSurvey {
  Mixing worst = Mixing::one_liquid;
  bool complete = true;   // every pair is known or can be estimated
  bool published = true;  // every pair is published
  std::vector<std::string> sources;
};

PairSurvey survey_pairs(const std::vector<Substance>& list, const Catalogue& catalogue, Celsius temperature) {
  PairSurvey survey;
  for (std::size_t i = 0; i < list.size(); ++i)
    for (std::size_t k = i + 1; k < list.size(); ++k) {
      const auto view = view_pair(list[i], list[k], catalogue, temperature);
      survey.complete = survey.complete && view;
      survey.published = survey.published && view && view->published;
      if (!view) continue;
      survey.worst = std::max(survey.worst, view->mixing);
      if (std::find(survey.sources.begin(), survey.sources.end(), view->source) == survey.sources.end())
        survey.sources.push_back(view->source);
    }
  return survey;
}

bool holds_wet_alcohol(const Mixture& mixture) {
  return std::any_of(mixture.parts().begin(), mixture.parts().end(),
                     [](const Part& part) { return part.liquid.water_fraction > 0; });
}

std::optional<PhaseAnswer> from_computation(const Mixture& mixture, const PairSurvey& survey,
                                            const Catalogue& catalogue, Celsius temperature) {
  Phases phases = compute_phases(mixture, catalogue, temperature);
  if (phases == Phases::unknown) return std::nullopt;
  PhaseAnswer answer{phases, PhasesBasis::computed, {catalogue.chemistry().unifac_modified.source}};
  answer.computed = ComputedPhases{phases, holds_wet_alcohol(mixture), false};
  if (survey.published && survey.worst == Mixing::one_liquid && phases != Phases::one_liquid) {
    // Publications on every pair weigh more than a computation that sees splits too early.
    answer.phases = phases == Phases::two_liquids ? Phases::near_border : Phases::one_liquid;
    answer.computed->outweighed = true;
    answer.sources.insert(answer.sources.end(), survey.sources.begin(), survey.sources.end());
  }
  return answer;
}

PhaseAnswer from_estimate(const PairSurvey& survey) {
  PhaseAnswer answer;
  if (!survey.complete) return answer;
  answer.basis = PhasesBasis::estimate;
  answer.sources = survey.sources;
  answer.phases = survey.worst == Mixing::one_liquid ? Phases::one_liquid
                  : survey.worst == Mixing::partial  ? Phases::near_border
                                                     : Phases::two_liquids;
  return answer;
}

PhaseAnswer answer_on(const Mixture& mixture, const Catalogue& catalogue, Celsius temperature, bool in_full) {
  const std::vector<Substance> list = substances_of(mixture);
  if (list.size() == 1) return {Phases::one_liquid, PhasesBasis::single};
  if (auto answer = from_known_pair(list, mixture, catalogue, temperature)) return *answer;
  if (auto answer = from_water_limits(mixture, catalogue, temperature, in_full)) return *answer;
  const PairSurvey survey = survey_pairs(list, catalogue, temperature);
  if (auto answer = from_computation(mixture, survey, catalogue, temperature)) return *answer;
  return from_estimate(survey);
}

}  // namespace

PhaseAnswer phases_of(const Mixture& mixture, const Catalogue& catalogue, Celsius temperature) {
  return answer_on(mixture, catalogue, temperature, true);
}

PhaseVerdict verdict_on_phases(const Mixture& mixture, const Catalogue& catalogue, Celsius temperature) {
  static Kept<PhaseVerdict> kept;
  const auto find_out = [&] {
    const PhaseAnswer answer = answer_on(mixture, catalogue, temperature, false);
    return PhaseVerdict{answer.phases, answer.basis};
  };
  return kept.answer(vial_key(mixture, catalogue, temperature), find_out,
                     [](const PhaseVerdict& verdict) { return verdict; });
}

}  // namespace gentlest
