// Weights, label and fire of what is measured into the vial.
#include "core/sums/parts.hpp"

#include "gentlest/safety/flash_terms.hpp"
#include "gentlest/vial/molecules.hpp"

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

template <class Figure>
SumInput recorded(InputKind kind, const Solvent& solvent, const std::optional<Known<Figure>>& figure, double value,
                  SumUnit unit) {
  SumInput input;
  input.kind = kind;
  input.of = solvent.name;
  input.value = number(value);
  input.unit = unit;
  input.from = figure ? InputFrom::record : InputFrom::program;
  if (figure) {
    input.source = figure->chosen.source;
    input.standing = figure->chosen.standing;
  }
  return input;
}

struct WeighedMolecule {
  const Molecule* molecule;
  Term per_cent;
};

// Volume share over molar volume times molar mass: grams in 1 cm3, change of volume on mixing left aside.
std::vector<WeighedMolecule> work_weights(SumSheet& sheet, const Breakdown& breakdown) {
  std::vector<Term> grams;
  for (const Molecule& molecule : breakdown.molecules) {
    const Solvent& solvent = *molecule.solvent;
    SumInput share;
    share.kind = InputKind::share;
    share.of = solvent.name;
    share.value = number(molecule.volume_fraction);
    share.from = InputFrom::job;
    const Term fraction = sheet.put_in(std::move(share));
    const Term volume = sheet.put_in(recorded(InputKind::molar_volume, solvent, solvent.molar_volume_cm3_per_mol,
                                              molecule.molar_volume_cm3, SumUnit::cm3_per_mol));
    const Term mass = sheet.put_in(recorded(InputKind::molar_mass, solvent, solvent.molar_mass_g_per_mol,
                                            molecule.molar_mass_g, SumUnit::g_per_mol));
    SumStep step;
    step.kind = StepKind::weight;
    step.section = SumSection::weights;
    step.of = solvent.name;
    step.sum = product_of({quotient_of(fraction, volume), mass});
    step.unit = SumUnit::grams;
    grams.push_back(sheet.reckon(std::move(step), share_places));
  }
  std::vector<WeighedMolecule> weighed;
  for (std::size_t i = 0; i < grams.size(); ++i) {
    SumStep step;
    step.kind = StepKind::weight_percent;
    step.section = SumSection::weights;
    step.of = breakdown.molecules[i].solvent->name;
    step.sum = quotient_of(product_of({number(100), grams[i]}), sum_of(grams));
    step.unit = SumUnit::weight_percent;
    weighed.push_back({&breakdown.molecules[i], sheet.reckon(std::move(step), parameter_places)});
  }
  return weighed;
}

// A sum of parts against one limit; rules that weigh their parts, or let a record set its own limit, come out otherwise
// and are told in words.
void work_statement(SumSheet& sheet, const LabelStatement& statement) {
  const LabelReason& because = statement.because;
  const bool adds_up = because.rule == LabelRule::parts_reach || because.rule == LabelRule::part_reaches;
  if (!adds_up || because.parts.empty() || because.figures.empty()) return;
  std::vector<Term> shares;
  double all = 0;
  for (const LabelReason::Share& part : because.parts) {
    shares.push_back(number(part.weight_percent, parameter_places));
    all += part.weight_percent;
  }
  if (all < because.figures.front()) return;
  SumStep step;
  step.kind = StepKind::parts_together;
  step.section = SumSection::label;
  step.of = statement.code;
  step.sum = sum_of(std::move(shares));
  step.unit = SumUnit::weight_percent;
  step.limit = because.figures.front();
  sheet.reckon(std::move(step), parameter_places);
}

// A pressure inside the range of its equation is worked; one that was had otherwise is put in.
struct PressureKinds {
  InputKind input;
  StepKind step;
};
Term work_pressure(SumSheet& sheet, const FlashTerm& term, int count, const VapourPressure& pressure,
                   const Term& kelvin, const PressureKinds& kinds) {
  const Solvent& solvent = *term.solvent;
  if (pressure.basis != PressureBasis::equation || !solvent.antoine)
    return sheet.put_in({kinds.input, solvent.name, count, number(pressure.kPa, share_places), SumUnit::kPa,
                         InputFrom::program, pressure.source, Standing::derived, false});
  const auto& cited = solvent.antoine->chosen;
  const auto constant = [&](InputKind kind, double value) {
    return sheet.put_in({kind, solvent.name, count, number(value), SumUnit::none, InputFrom::record, cited.source,
                         cited.standing, false});
  };
  const Term A = constant(InputKind::antoine_A, cited.value.A);
  const Term B = constant(InputKind::antoine_B, cited.value.B);
  const Term C = constant(InputKind::antoine_C, cited.value.C);
  SumStep step;
  step.kind = kinds.step;
  step.section = SumSection::fire;
  step.of = solvent.name;
  step.number_of = count;
  step.unit = SumUnit::kPa;
  step.sum = apply(Operation::power_of_ten, difference_of(A, quotient_of(B, sum_of({kelvin, C}))));
  return sheet.reckon(std::move(step), share_places);
}

Term work_flash_term(SumSheet& sheet, const FlashTerm& term, int count, const Term& kelvin) {
  const auto put = [&](InputKind kind, double value, int places, SumUnit unit, InputFrom from, std::string source,
                       std::optional<Standing> standing) {
    return sheet.put_in(
        {kind, term.solvent->name, count, number(value, places), unit, from, std::move(source), standing, false});
  };
  const Term x = put(InputKind::mole_fraction, term.mole_fraction, share_places, SumUnit::none, InputFrom::program, {},
                     std::nullopt);
  const Term gamma =
      put(InputKind::activity, term.gamma, share_places, SumUnit::none, InputFrom::program, {}, std::nullopt);
  const Term here =
      work_pressure(sheet, term, count, term.at_flash, kelvin, {InputKind::pressure, StepKind::vapour_pressure});
  const Term own_flash =
      sheet.put_in({InputKind::own_flash_point, term.solvent->name, count, number(term.own_flash_point.value),
                    SumUnit::C, InputFrom::record, term.own_flash_source, term.own_flash_standing, false});
  const Term own =
      work_pressure(sheet, term, count, term.at_own_flash, sum_of({own_flash, number(kelvin_at_zero_Celsius)}),
                    {InputKind::pressure_at_own_flash, StepKind::vapour_pressure_own_flash});
  SumStep step;
  step.kind = StepKind::flash_term;
  step.section = SumSection::fire;
  step.of = term.solvent->name;
  step.number_of = count;
  step.sum = quotient_of(product_of({x, gamma, here}), own);
  return sheet.reckon(std::move(step), share_places);
}

}  // namespace

WorkedSums work_flash_point(const Mixture& mixture, const Job& job, const Catalogue& catalogue) {
  SumSheet sheet(mixture);
  const Mixture made = work_recipe(sheet, mixture, job.limits);
  const FlashPoint flash = flash_point(made, catalogue);
  const auto terms = flash_terms(made, catalogue);
  // Of an ideal estimate the lowest part may stand in its place: nothing to add up.
  if (!terms || flash.basis != FlashBasis::activity) return sheet.done(catalogue);
  const Term kelvin = sheet.put_in({InputKind::flash_temperature,
                                    {},
                                    0,
                                    number(flash.estimate->value + kelvin_at_zero_Celsius, parameter_places),
                                    SumUnit::none,
                                    InputFrom::program,
                                    {},
                                    {},
                                    false});
  std::vector<Term> parts;
  for (const FlashTerm& term : *terms)
    parts.push_back(work_flash_term(sheet, term, static_cast<int>(parts.size()) + 1, kelvin));
  SumStep sum;
  sum.kind = StepKind::flash_sum;
  sum.section = SumSection::fire;
  sum.sum = sum_of(std::move(parts));
  sheet.reckon(std::move(sum), parameter_places);
  SumStep last;
  last.kind = StepKind::flash_point;
  last.section = SumSection::fire;
  last.sum = difference_of(kelvin, number(kelvin_at_zero_Celsius));
  last.unit = SumUnit::C;
  last.printed_as = PrintedAs::no_decimals;
  last.printed = flash.estimate->value;
  sheet.reckon(std::move(last), parameter_places);
  return sheet.done(catalogue);
}

WorkedSums work_label(const Mixture& mixture, const Job& job, const Catalogue& catalogue) {
  SumSheet sheet(mixture);
  const Mixture made = work_recipe(sheet, mixture, job.limits);
  if (const auto breakdown = break_down(made, catalogue)) work_weights(sheet, *breakdown);
  for (const LabelStatement& statement : label_of(made, catalogue).statements) work_statement(sheet, statement);
  return sheet.done(catalogue);
}

}  // namespace gentlest
