#include "core/plan/judged_mixture.hpp"

#include <algorithm>

namespace gentlest {

namespace {

Outlook look_out(const Hansen& point, const FieldSubject& subject, const ChanceField& field) {
  Outlook outlook;
  outlook.Ra = distance_Ra(point, subject.sphere.mean.centre);
  outlook.reach_factor = reach_factor(subject.reach, point);
  outlook.RED = relative_distance_RED(point, subject.sphere.mean, subject.reach);
  outlook.RED_band = RED_band(point, subject.sphere, subject.reach);
  outlook.may_flip = holds_the_border(outlook.RED_band);
  outlook.chance = rounded_chance(field(point));  // as the search rounds it, or the two could part at a limit
  return outlook;
}

}  // namespace

HansenBox reach_of(const std::vector<Liquid>& shelf, const Catalogue& catalogue) {
  std::vector<Liquid> ends = shelf;
  for (const Liquid& liquid : shelf) {
    if (!(liquid.water_fraction > 0)) continue;
    for (const Solvent* solvent : {liquid.solvent, catalogue.find_solvent("water")}) {
      Liquid end = liquid;
      end.hansen = solvent->hansen->chosen.value;
      ends.push_back(std::move(end));
    }
  }
  return bounding_box(ends);
}

namespace {

constexpr double last_bits = 1e-9;  // of two layers that differ by less the first is named, on every machine

Fate tell_fate(const Mixture& mixture, const std::vector<PlannedLayer>& layers, const LayerFields& fields,
               const Limits& limits, const Catalogue& catalogue) {
  const Celsius room{limits.room_C};
  Fate fate;
  fate.phases = phases_of(mixture, catalogue, room);
  fate.drift = evaporate(mixture, catalogue, room);
  if (!fate.drift) {
    fate.drift_missing = missing_for_drift(mixture, catalogue, room);
    return fate;
  }
  fate.drying_risk.assign(fate.drift->path.size(), 0);
  for (std::size_t i = 0; i < layers.size(); ++i) {
    if (layers[i].role != Role::keep || !fields[i]) continue;
    for (std::size_t k = 0; k < fate.drying_risk.size(); ++k)
      fate.drying_risk[k] = std::max(fate.drying_risk[k], (*fields[i])(fate.drift->path[k].point));
    const DriftRisk risk = judge_drift(*fate.drift, *fields[i], limits.risk_limit);
    if (!fate.riskiest.empty() && risk.worst <= fate.risk.worst + last_bits) continue;
    fate.risk = risk;
    fate.riskiest = layers[i].name;
  }
  return fate;
}

}  // namespace

JudgedMixture judge_on_fields(const Mixture& mixture, const std::vector<PlannedLayer>& layers,
                              const LayerSubjects& subjects, const LayerFields& fields, const Limits& limits,
                              const Catalogue& catalogue) {
  const Hansen point = mix(mixture);
  JudgedMixture judged{mixture, {}, point, teas_fractions(point),     {}, {}, {},
                       {},      {}, {},    hazards_of_parts(mixture), {}};
  judged.seen = sightings_of(mixture, layers, catalogue);
  judged.very = very_sightings_of(mixture, layers, catalogue);
  const bool claim = margin_may_be_claimed(layers);
  for (std::size_t i = 0; i < layers.size(); ++i) {
    judged.outlooks.emplace_back();
    if (!fields[i]) continue;
    const Outlook outlook = look_out(point, *subjects[i], *fields[i]);
    judged.outlooks.back() = outlook;
    if (layers[i].is_target) judged.effect = outlook.chance;
    if (layers[i].role != Role::keep) continue;
    if (!judged.risk || outlook.chance > *judged.risk) {
      judged.risk = outlook.chance;
      judged.riskiest = layers[i].name;
    }
    if (claim) judged.margin_RED = std::min(judged.margin_RED.value_or(outlook.RED - 1), outlook.RED - 1);
  }
  judged.fate = tell_fate(mixture, layers, fields, limits, catalogue);
  return judged;
}

bool drifts_beyond(const Fate& fate, double risk_limit) {
  return fate.drift && fate.risk.at_start <= risk_limit && fate.risk.beyond_limit_at.has_value();
}

bool passes_limit(double risk, double risk_limit) {
  constexpr double slack = 1e-9;  // the search rounds risks to this before it compares them
  return risk > risk_limit + slack;
}

bool is_beyond_limit(const JudgedMixture& judged, const Limits& limits) {
  return judged.risk && passes_limit(*judged.risk, limits.risk_limit);
}

JudgedMixture judge_mixture(const Mixture& mixture, const std::vector<PlannedLayer>& layers, const Limits& limits,
                            const Catalogue& catalogue) {
  std::vector<Liquid> liquids;
  add_liquids(liquids, mixture);
  const LayerSubjects subjects = make_subjects(layers, limits, liquids);
  return judge_on_fields(mixture, layers, subjects, layer_fields(reach_of(liquids, catalogue), subjects), limits,
                         catalogue);
}

LadderGoal goal_of(const Limits& limits) {
  return {limits.bottles, limits.rungs, limits.risk_limit, limits.wanted_effect, limits.lines, limits.prefer_healthier};
}

std::optional<SeriesQuality> quality_of(const std::vector<JudgedMixture>& mixtures, const Limits& limits) {
  std::vector<Hansen> points;
  std::vector<Verdict> verdicts;
  for (const JudgedMixture& one : mixtures) {
    if (!one.effect || !one.risk) return std::nullopt;
    points.push_back(one.point);
    verdicts.push_back({*one.effect, *one.risk, -1});
  }
  return quality_of(points, verdicts, goal_of(limits));
}

JudgedSeries judge_series(const std::vector<Mixture>& series, const std::vector<PlannedLayer>& layers,
                          const Limits& limits, const Catalogue& catalogue) {
  JudgedSeries judged;
  if (series.empty()) return judged;
  std::vector<Liquid> liquids;
  for (const Mixture& mixture : series) add_liquids(liquids, mixture);
  const LayerSubjects subjects = make_subjects(layers, limits, liquids);
  const LayerFields fields = layer_fields(reach_of(liquids, catalogue), subjects);
  for (const Mixture& mixture : series)
    judged.mixtures.push_back(judge_on_fields(mixture, layers, subjects, fields, limits, catalogue));
  judged.quality = quality_of(judged.mixtures, limits);
  return judged;
}

}  // namespace gentlest
