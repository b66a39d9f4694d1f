#include "report/bottle/vial_words.hpp"

#include "report/form/format.hpp"

#include <fmt/format.h>

namespace gentlest {

namespace {

const char* what_it_does(Phases phases) {
  switch (phases) {
    case Phases::one_liquid:
      return "stays one liquid";
    case Phases::near_border:
      return "lies near the border and may cloud or part";
    case Phases::two_liquids:
      return parts_in_two;
    case Phases::unknown:
      return "is not known to mix or to part";
  }
  return "";
}

const char* what_they_do(Mixing mixing) {
  switch (mixing) {
    case Mixing::one_liquid:
      return "mix in every proportion";
    case Mixing::partial:
      return "part over some of the range";
    case Mixing::two_liquids:
      return "part over nearly all of the range";
  }
  return "";
}

std::string pair_words(const DecidingPair& pair) {
  const std::string& note = pair.record->note;
  return fmt::format("{} and {} {}{}{}", pair.a, pair.b, what_they_do(pair.mixing), note.empty() ? "" : ": ", note);
}

std::string water_words(const DecidingWater& water) {
  const std::string how = water.corrected_by.empty() ? "measured"
                                                     : "group method, corrected by what was measured with " +
                                                           joined(water.corrected_by, " and ");
  std::string text = fmt::format(
      "{:.0f} parts of {} in 100 with {} bear about {:.1f} % of water in the alcohol ({}); here it is {:.1f} %",
      water.wet_percent, water.alcohol, joined(water.hydrocarbons, " and "), water.limit_percent, how,
      water.water_percent);
  if (water.grade_that_mixes.empty()) return text;
  return text + fmt::format("; {} {} stays one liquid", water.alcohol, water.grade_that_mixes);
}

std::string computed_words(const ComputedPhases& computed) {
  std::string text = fmt::format("by the modified group method the mixture {}", what_it_does(computed.phases));
  if (computed.holds_wet_alcohol) text += "; no limit of water is measured for anything like it";
  if (computed.outweighed) text += "; but every pair of its liquids is published to mix";
  return text;
}

std::string stand_in_words(const StandInUse& use) {
  std::vector<std::string> shares;
  for (const StandInUse::Share& share : use.shares)
    shares.push_back(fmt::format("{:.3g} % {}", 100 * share.fraction, share.solvent->name));
  return fmt::format("{} is reckoned as {} (assumed)", use.label, joined(shares));
}

std::string figure_words(const MissingFigure& figure) {
  switch (figure.what) {
    case MissingFigure::What::amount:
      return "molar volume or molar mass of " + figure.of;
    case MissingFigure::What::vapour_pressure:
      return fmt::format("vapour pressure of {} at {:.3g} C", figure.of, figure.temperature.value);
    case MissingFigure::What::unit_of_time:
      return "figures of n-butyl acetate, the unit of time";
  }
  return {};
}

}  // namespace

std::string_view to_word(Phases phases) {
  switch (phases) {
    case Phases::one_liquid:
      return "one liquid";
    case Phases::near_border:
      return "near the border";
    case Phases::two_liquids:
      return "two liquids";
    case Phases::unknown:
      return "not known";
  }
  return "";
}

std::string_view to_word(PhasesBasis basis) {
  switch (basis) {
    case PhasesBasis::single:
      return "one liquid only";
    case PhasesBasis::measured:
      return "measured limit of water";
    case PhasesBasis::published:
      return "published";
    case PhasesBasis::corrected:
      return "estimated limit of water";
    case PhasesBasis::computed:
      return "group method alone";
    case PhasesBasis::estimate:
      return "estimate";
    case PhasesBasis::none:
      return "nothing";
  }
  return "";
}

std::string phases_because(const PhaseAnswer& answer) {
  switch (answer.basis) {
    case PhasesBasis::single:
      return "there is only one liquid";
    case PhasesBasis::published:
      return answer.pair ? pair_words(*answer.pair) : std::string();
    case PhasesBasis::measured:
    case PhasesBasis::corrected:
      return answer.water ? water_words(*answer.water) : std::string();
    case PhasesBasis::computed:
      return answer.computed ? computed_words(*answer.computed) : std::string();
    case PhasesBasis::estimate:
      return fmt::format("estimated pair by pair: the mixture {}", what_it_does(answer.phases));
    case PhasesBasis::none:
      return "neither published figures nor groups cover these liquids: try it in a vial";
  }
  return {};
}

std::string_view to_word(PressureBasis basis) {
  switch (basis) {
    case PressureBasis::equation:
      return "equation inside its range";
    case PressureBasis::equation_through_25:
      return "equation outside its range, through the pressure at 25 C";
    case PressureBasis::equation_stretched:
      return "equation outside its range";
    case PressureBasis::two_points:
      return "line through the pressure at 25 C and the boiling point";
  }
  return "";
}

std::vector<std::string> drift_warnings(const Drift& drift) {
  std::vector<std::string> warnings;
  for (const StandInUse& use : drift.stand_ins) warnings.push_back(stand_in_words(use));
  if (drift.ideal) warnings.emplace_back("groups or their figures are not known: taken as an ideal mixture");
  for (const UncertainPressure& one : drift.uncertain_pressures)
    warnings.push_back(fmt::format("vapour pressure of {}: {}", one.solvent->name, to_word(one.basis)));
  return warnings;
}

std::vector<std::string> missing_words(const std::vector<MissingFigure>& missing) {
  std::vector<std::string> words;
  for (const MissingFigure& figure : missing) words.push_back(figure_words(figure));
  return words;
}

}  // namespace gentlest
