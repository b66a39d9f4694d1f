// A mixture: its point, the triangle, each layer, effect and risk, what is measured.
#include "core/sums/parts.hpp"

#include "core/plan/judged_mixture.hpp"

#include "gentlest/liquids/recipe.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace gentlest {

namespace {

// One parameter of a liquid as it stands in the bottle: of the pure liquid, moved towards water by what the grade
// holds.
class LiquidTerms {
 public:
  LiquidTerms(SumSheet& sheet, const Liquid& liquid, const Catalogue& catalogue)
      : sheet_(sheet), liquid_(liquid), water_(catalogue.find_solvent("water")) {}

  Term term(InputKind kind, double Hansen::*member) const {
    const auto& own = liquid_.solvent->hansen->chosen;
    if (!(liquid_.water_fraction > 0) || !water_ || !water_->hansen)
      return put(kind, liquid_.label, own.value.*member, own);
    const Term pure = put(kind, liquid_.solvent->name, own.value.*member, own);
    const Term water = put(kind, water_->name, water_->hansen->chosen.value.*member, water_->hansen->chosen);
    const Term share = number(liquid_.water_fraction, share_places);
    return sum_of({product_of({difference_of(number(1), share), pure}), product_of({share, water})});
  }

 private:
  Term put(InputKind kind, const std::string& of, double value, const Cited<Hansen>& cited) const {
    return sheet_.put_in(
        {kind, of, 0, number(value), SumUnit::MPa05, InputFrom::record, cited.source, cited.standing, false});
  }

  SumSheet& sheet_;
  const Liquid& liquid_;
  const Solvent* water_;
};

SumStep point_step(StepKind kind, std::vector<Term> terms, double printed) {
  SumStep step;
  step.kind = kind;
  step.sum = sum_of(std::move(terms));
  step.unit = SumUnit::MPa05;
  step.printed_as = PrintedAs::one_decimal;
  step.printed = printed;
  return step;
}

void work_teas(SumSheet& sheet, const PointTerms& point, const Teas& teas) {
  const auto positive = [](const Term& term) { return term.value < 0 ? number(0) : term; };
  const std::vector<Term> all = {positive(point.dD), positive(point.dP), positive(point.dH)};
  const StepKind kinds[] = {StepKind::fd, StepKind::fp, StepKind::fh};
  const double printed[] = {teas.fd, teas.fp, teas.fh};
  for (std::size_t i = 0; i < 3; ++i) {
    SumStep step;
    step.kind = kinds[i];
    step.section = SumSection::teas;
    step.sum = quotient_of(product_of({number(100), all[i]}), sum_of(all));
    step.unit = SumUnit::per_cent;
    step.printed_as = PrintedAs::no_decimals;
    step.printed = printed[i];
    step.is_detail = true;  // a view only
    sheet.reckon(std::move(step), parameter_places);
  }
}

void work_verdict(SumSheet& sheet, StepKind kind, std::vector<Term> chances, const std::optional<double>& printed,
                  const std::string& of) {
  if (!printed || chances.empty()) return;
  SumStep step;
  step.kind = kind;
  step.section = SumSection::layer;
  step.of = of;
  step.sum = product_of({number(100), largest_of(std::move(chances))});
  step.unit = SumUnit::per_cent;
  step.printed_as = PrintedAs::chance;
  step.printed = *printed;
  sheet.reckon(std::move(step), share_places - 2);
}

WorkedSums work(const JudgedMixture& judged, const std::vector<PlannedLayer>& layers, const LayerSubjects& subjects,
                const LayerFields& fields, const Limits& limits, const Catalogue& catalogue) {
  SumSheet sheet(judged.mixture);
  const PointTerms point = work_point(sheet, judged, catalogue);
  work_teas(sheet, point, judged.teas);
  std::vector<Term> effect, risk;
  for (std::size_t i = 0; i < layers.size(); ++i) {
    if (!fields[i]) continue;
    const LayerSum one{layers[i], *subjects[i], *fields[i], *judged.outlooks[i]};
    Term chance = work_layer(sheet, point, judged, one, limits, catalogue);
    if (layers[i].is_target) effect.push_back(chance);
    if (layers[i].role == Role::keep) risk.push_back(std::move(chance));
  }
  work_recipe(sheet, judged.mixture, limits);
  work_verdict(sheet, StepKind::effect, std::move(effect), judged.effect, {});
  work_verdict(sheet, StepKind::risk, std::move(risk), judged.risk, judged.riskiest);
  return sheet.done(catalogue);
}

}  // namespace

PointTerms work_point(SumSheet& sheet, const JudgedMixture& judged, const Catalogue& catalogue) {
  std::vector<Term> dD, dP, dH;
  for (const Part& part : judged.mixture.parts()) {
    const Term share = sheet.put_in(
        {InputKind::share, part.liquid.label, 0, number(part.fraction), SumUnit::none, InputFrom::job, {}, {}, false});
    const LiquidTerms liquid(sheet, part.liquid, catalogue);
    dD.push_back(product_of({share, liquid.term(InputKind::dD, &Hansen::dD)}));
    dP.push_back(product_of({share, liquid.term(InputKind::dP, &Hansen::dP)}));
    dH.push_back(product_of({share, liquid.term(InputKind::dH, &Hansen::dH)}));
  }
  Term D = sheet.reckon(point_step(StepKind::dD, std::move(dD), judged.point.dD), parameter_places);
  Term P = sheet.reckon(point_step(StepKind::dP, std::move(dP), judged.point.dP), parameter_places);
  Term H = sheet.reckon(point_step(StepKind::dH, std::move(dH), judged.point.dH), parameter_places);
  return {std::move(D), std::move(P), std::move(H)};
}

Mixture work_recipe(SumSheet& sheet, const Mixture& mixture, const Limits& limits) {
  const Recipe recipe = round_recipe(mixture, {{limits.vial_mL}, {limits.measure_mL}});
  sheet.put_in({InputKind::vial, {}, 0, number(limits.vial_mL), SumUnit::mL, InputFrom::job, {}, {}, false});
  const Term measure =
      sheet.put_in({InputKind::measure, {}, 0, number(limits.measure_mL), SumUnit::mL, InputFrom::job, {}, {}, false});
  const bool changes = recipe.largest_change > 1e-9;
  for (std::size_t i = 0; i < recipe.lines.size(); ++i) {
    const RecipeLine& line = recipe.lines[i];
    const Term steps = sheet.put_in({InputKind::steps_measured,
                                     line.liquid.label,
                                     0,
                                     number(line.steps, 0),
                                     SumUnit::none,
                                     InputFrom::program,
                                     {},
                                     {},
                                     false});
    SumStep volume;
    volume.kind = StepKind::volume;
    volume.section = SumSection::recipe;
    volume.of = line.liquid.label;
    volume.sum = product_of({steps, measure});
    volume.unit = SumUnit::mL;
    volume.printed_as = PrintedAs::plain;
    volume.printed = line.volume.value;
    const Term result = sheet.reckon(std::move(volume), parameter_places);
    if (!changes) continue;
    SumStep share;
    share.kind = StepKind::shares_measured;
    share.section = SumSection::recipe;
    share.of = line.liquid.label;
    share.sum = quotient_of(product_of({number(100), result}), number(recipe.total.value));
    share.unit = SumUnit::volume_percent;
    sheet.reckon(std::move(share), parameter_places);
  }
  return recipe.as_measured;
}

WorkedSums SumSheet::done(const Catalogue& catalogue) {
  std::set<std::string> keys;
  for (const SumInput& input : sums_.inputs) keys.insert(input.source);
  for (const Source& source : catalogue.sources())
    if (keys.count(source.key) == 1) sums_.sources.push_back(source);
  // What is put in twice (water, a liquid of two bottles) stands once.
  std::vector<SumInput> once;
  for (SumInput& input : sums_.inputs)
    if (std::none_of(once.begin(), once.end(), [&](const SumInput& other) {
          return other.kind == input.kind && other.of == input.of && other.number_of == input.number_of &&
                 other.value == input.value;
        }))
      once.push_back(std::move(input));
  sums_.inputs = std::move(once);
  return std::move(sums_);
}

WorkedSums work_mixture(const Mixture& mixture, const std::vector<PlannedLayer>& layers, const Job& job,
                        const Catalogue& catalogue) {
  std::vector<Liquid> liquids;
  add_liquids(liquids, mixture);
  const LayerSubjects subjects = make_subjects(layers, job.limits, liquids);
  const LayerFields fields = layer_fields(reach_of(liquids, catalogue), subjects);
  const JudgedMixture judged = judge_on_fields(mixture, layers, subjects, fields, job.limits, catalogue);
  return work(judged, layers, subjects, fields, job.limits, catalogue);
}

WorkedSums work_rung(const JudgedMixture& judged, const Plan& plan, const Catalogue& catalogue) {
  const LayerSubjects subjects = make_subjects(plan.layers, plan.job.limits);
  const LayerFields fields = layer_fields(reach_of(plan.shelf, catalogue), subjects);
  WorkedSums sums = work(judged, plan.layers, subjects, fields, plan.job.limits, catalogue);
  sums.rung = judged.origin;
  return sums;
}

}  // namespace gentlest
