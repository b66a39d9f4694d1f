// What harm closes, and when it ends the series.
#include "core/conduct/parts.hpp"

#include <algorithm>

namespace gentlest {

namespace {

constexpr double last_bits = 1e-9;

double share_of(const Mixture& mixture, const Solvent* solvent) {
  double share = 0;
  for (const Part& part : mixture.parts())
    if (part.liquid.solvent == solvent) share += part.fraction;
  return share;
}

// What was seen elsewhere does not excuse a liquid here: where all are hydrocarbons, one of them acted.
std::vector<const Solvent*> active_liquids(const Mixture& mixture) {
  std::vector<const Solvent*> all;
  std::vector<const Solvent*> active;
  for (const Part& part : mixture.parts()) {
    all.push_back(part.liquid.solvent);
    if (!is_hydrocarbon_or_cut(*all.back())) active.push_back(all.back());
  }
  return active.empty() ? all : active;
}

bool has_as_much_of_each(const Mixture& mixture, const Mixture& harmful) {
  const std::vector<const Solvent*> active = active_liquids(harmful);
  return std::all_of(active.begin(), active.end(), [&](const Solvent* solvent) {
    return share_of(mixture, solvent) >= share_of(harmful, solvent) - last_bits;
  });
}

bool is_lasting(const SwabTest& test) {
  return test.original != OriginalReading::recovers && test.original != OriginalReading::nothing_seen;
}

// No gentler swab that was borne did anything to what is to be removed.
bool is_gentlest_that_acted(const Plan& plan, const Conduct& conduct, const SwabTest& harm) {
  const PlannedLayer& target = plan.layers[plan.target];
  const auto strength = [&](const SwabTest& test) {
    return test.mixture ? RED_to(target, mix(*test.mixture)) : std::nullopt;
  };
  const std::optional<double> here = strength(harm);
  return std::none_of(conduct.tests.begin(), conduct.tests.end(), [&](const SwabTest& other) {
    const bool acted = other.removal && *other.removal != RemovalReading::no_effect;
    if (!acted || !left_untouched(other)) return false;
    const std::optional<double> there = strength(other);
    return !here || !there || *there > *here + last_bits;
  });
}

}  // namespace

bool is_same_swab_mixture(const SwabTest& a, const SwabTest& b) {
  if (a.mixture && b.mixture) return is_same_mixture(*a.mixture, *b.mixture);
  return !a.mixture && !b.mixture && a.words == b.words;
}

bool is_as_strong(const Plan& plan, const Mixture& mixture, const Mixture& harmful, const std::string& layer) {
  if (has_as_much_of_each(mixture, harmful)) return true;
  return std::any_of(plan.layers.begin(), plan.layers.end(), [&](const PlannedLayer& one) {
    return one.name == layer && one.sphere && *RED_to(one, mix(mixture)) <= *RED_to(one, mix(harmful)) + last_bits;
  });
}

std::optional<std::size_t> closed_by(const Plan& plan, const Conduct& conduct, const Mixture& mixture,
                                     const std::string& layer) {
  for (const std::size_t by : conduct.harms) {
    const SwabTest& harm = conduct.tests[by];
    if (harm.is_blank || harm.is_aqueous) continue;
    if (harm.mixture && is_same_mixture(*harm.mixture, mixture)) return by;
    for (const std::string& harmed : harm.layers)
      if ((layer.empty() || layer == harmed) && (!harm.mixture || is_as_strong(plan, mixture, *harm.mixture, harmed)))
        return by;
  }
  return std::nullopt;
}

std::vector<Closure> closures_of(const Plan& plan, const Conduct& conduct) {
  std::vector<Closure> closures;
  for (const std::size_t by : conduct.harms) {
    const SwabTest& harm = conduct.tests[by];
    if (harm.is_blank || harm.is_aqueous) continue;
    for (std::size_t step = 0; step < conduct.steps.size(); ++step) {
      const PlanStep& one = conduct.steps[step];
      if (harm.mixture && is_same_mixture(one.mixture, *harm.mixture)) {
        closures.push_back({step, Rule::harm_not_repeated, by, {}});
        continue;
      }
      // Of what cannot be read nobody knows what is gentler.
      for (const std::string& layer : harm.layers)
        if (!harm.mixture || is_as_strong(plan, one.mixture, *harm.mixture, layer))
          closures.push_back({step, Rule::harm_closes, by, layer});
    }
  }
  return closures;
}

std::optional<SeriesEnd> end_of(const Plan& plan, const Conduct& conduct) {
  for (const std::size_t by : conduct.harms)
    if (conduct.tests[by].is_blank) return SeriesEnd{EndWhy::blank_took_colour, Rule::blanks_first, {by}};
  for (const std::size_t later : conduct.harms)
    for (const std::size_t first : conduct.harms)
      if (first < later && !is_same_swab_mixture(conduct.tests[first], conduct.tests[later]))
        return SeriesEnd{EndWhy::two_harms, Rule::two_harms_end, {first, later}};
  for (const std::size_t by : conduct.harms) {
    const SwabTest& harm = conduct.tests[by];
    if (harm.place == Place::picture && !harm.is_aqueous && is_lasting(harm) &&
        is_gentlest_that_acted(plan, conduct, harm))
      return SeriesEnd{EndWhy::lasting_harm_by_the_gentlest, Rule::two_harms_end, {by}};
  }
  if (plan.examination.verdict == ExaminationVerdict::do_not)
    return SeriesEnd{EndWhy::examination, Rule::blanks_first, {}};
  if (std::all_of(conduct.passages.begin(), conduct.passages.end(), is_closed)) {
    SeriesEnd end{EndWhy::every_passage_closed, Rule::passage_closed, {}};
    for (const PassageState& one : conduct.passages)
      if (one.closed_by) end.tests.push_back(*one.closed_by);
    return end;
  }
  return std::nullopt;
}

}  // namespace gentlest
