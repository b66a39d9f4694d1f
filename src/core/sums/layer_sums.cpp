// From the point of a mixture to the chance on one layer.
#include "core/sums/parts.hpp"

#include "gentlest/space/spread.hpp"

#include <cmath>

namespace gentlest {

namespace {

constexpr std::size_t slices = 9;

std::optional<Standing> standing_of(const PlannedLayer& layer, const Catalogue& catalogue) {
  if (layer.basis == LayerBasis::own_tests || layer.studio) return std::nullopt;
  if (layer.observations_fitted > 0) return Standing::derived;
  const Material* material = layer.material.empty() ? nullptr : catalogue.find_material(layer.material);
  if (!material || !material->sphere) return std::nullopt;
  return material->sphere->sphere.chosen.standing;
}

// The figures of one layer as they are put in.
class LayerInputs {
 public:
  LayerInputs(SumSheet& sheet, const PlannedLayer& layer, const Catalogue& catalogue)
      : sheet_(sheet), layer_(layer), standing_(standing_of(layer, catalogue)) {}

  Term of_sphere(InputKind kind, double value, bool is_detail = false) const {
    const InputFrom from = layer_.studio                           ? InputFrom::studio
                           : layer_.basis == LayerBasis::own_tests ? InputFrom::job
                                                                   : InputFrom::material;
    const std::string source = layer_.studio ? std::string() : layer_.sphere_source;
    return sheet_.put_in({kind, layer_.name, 0, number(value), SumUnit::MPa05, from, source, standing_, is_detail});
  }
  Term of_curve(InputKind kind, int stage, double value) const {
    return sheet_.put_in({kind, layer_.name, stage, number(value), SumUnit::none, InputFrom::setting,
                          layer_.response.source, Standing::derived, true});
  }
  Term by_program(InputKind kind, int number_of, Term value) const {
    return sheet_.put_in(
        {kind, layer_.name, number_of, std::move(value), SumUnit::none, InputFrom::program, {}, {}, true});
  }

 private:
  SumSheet& sheet_;
  const PlannedLayer& layer_;
  std::optional<Standing> standing_;
};

Term squared_difference(const Term& a, const Term& b) {
  return apply(Operation::square, difference_of(a, b));
}

// 4 (dD - dD)^2 + (dP - dP)^2 + (dH - dH)^2
Term squared_Ra(const PointTerms& from, const PointTerms& to) {
  return sum_of({product_of({number(4), squared_difference(from.dD, to.dD)}), squared_difference(from.dP, to.dP),
                 squared_difference(from.dH, to.dH)});
}

SumStep step_of(const LayerSum& one, StepKind kind, Term sum, bool is_detail = false) {
  SumStep step;
  step.kind = kind;
  step.section = SumSection::layer;
  step.of = one.layer.name;
  step.sum = std::move(sum);
  step.is_detail = is_detail;
  return step;
}

// What observations make of the radius at this point; nothing of a round range.
std::optional<Term> work_reach(SumSheet& sheet, const PointTerms& point, const LayerSum& one,
                               const LayerInputs& inputs) {
  const LocalReach& reach = one.subject.reach;
  if (reach.places.empty()) return std::nullopt;
  const Term length = inputs.by_program(InputKind::reach_length, 0, number(reach.length));
  std::vector<Term> exponents;
  for (const LocalReach::Place& place : reach.places) {
    const int count = static_cast<int>(exponents.size()) + 1;
    const Term weight = inputs.by_program(InputKind::reach_weight, count, number(place.weight));
    const PointTerms at{number(place.at.dD), number(place.at.dP), number(place.at.dH)};
    const Term in_lengths =
        quotient_of(squared_Ra(point, at), product_of({number(2), apply(Operation::square, length)}));
    SumStep step =
        step_of(one, StepKind::reach_at,
                product_of({weight, apply(Operation::exponential, difference_of(number(0), in_lengths))}), true);
    step.number_of = count;
    exponents.push_back(sheet.reckon(std::move(step), share_places));
  }
  return sheet.reckon(step_of(one, StepKind::reach, apply(Operation::exponential, sum_of(exponents))), share_places);
}

// P(grade or stronger) at a RED: 1 less the chance of stopping at none of the stages.
class CurveTerms {
 public:
  CurveTerms(const LayerSum& one, const LayerInputs& inputs) {
    const Response& response = one.subject.response;
    is_certain_ = one.subject.grade >= grade_count;
    if (is_certain_) return;
    for (int stage = 1; stage <= one.subject.grade; ++stage) {
      const Response::Stage& figures = response.stages[static_cast<std::size_t>(stage - 1)];
      intercepts_.push_back(inputs.of_curve(InputKind::intercept, stage, figures.intercept));
      slopes_.push_back(inputs.of_curve(InputKind::slope, stage, figures.slope));
    }
  }

  std::size_t stages() const { return intercepts_.size(); }
  bool is_certain() const { return is_certain_; }

  Term stop_at(std::size_t stage, const Term& red) const {
    if (!(red.value > 0)) return number(1);
    const Term logit = sum_of({intercepts_[stage], product_of({slopes_[stage], apply(Operation::logarithm, red)})});
    return quotient_of(number(1), sum_of({number(1), apply(Operation::exponential, difference_of(number(0), logit))}));
  }

  Term chance(const std::vector<Term>& stops) const {
    if (is_certain_) return number(1);
    std::vector<Term> not_yet;
    for (const Term& stop : stops) not_yet.push_back(difference_of(number(1), stop));
    return difference_of(number(1), not_yet.size() == 1 ? not_yet.front() : product_of(std::move(not_yet)));
  }

 private:
  std::vector<Term> intercepts_, slopes_;
  bool is_certain_ = false;
};

void work_curve(SumSheet& sheet, const Term& red, const LayerSum& one, const CurveTerms& curve) {
  std::vector<Term> stops;
  for (std::size_t stage = 0; stage < curve.stages(); ++stage) {
    SumStep step = step_of(one, StepKind::stage, curve.stop_at(stage, red), true);
    step.number_of = static_cast<int>(stage) + 1;
    stops.push_back(sheet.reckon(std::move(step), share_places));
  }
  sheet.reckon(step_of(one, StepKind::chance_at_middle, curve.chance(stops), true), share_places);
}

// The same for each of nine equally likely slices of RED, and their mean: close to the table, and done by hand.
void work_slices(SumSheet& sheet, const JudgedMixture& judged, const LayerSum& one, const LayerInputs& inputs,
                 const CurveTerms& curve) {
  std::vector<Term> chances;
  for (const double RED : RED_middles(judged.point, one.subject.sphere, one.subject.reach, slices)) {
    const int count = static_cast<int>(chances.size()) + 1;
    const Term red = inputs.by_program(InputKind::RED_of_slice, count, number(RED, parameter_places));
    std::vector<Term> stops;
    for (std::size_t stage = 0; stage < curve.stages(); ++stage) stops.push_back(curve.stop_at(stage, red));
    SumStep step = step_of(one, StepKind::slice, curve.chance(stops), true);
    step.number_of = count;
    chances.push_back(sheet.reckon(std::move(step), share_places));
  }
  sheet.reckon(
      step_of(one, StepKind::slice_mean, quotient_of(sum_of(chances), number(static_cast<double>(slices))), true),
      share_places);
}

// What interpolation gives, kept between 0 and 1 as the program keeps it.
Term clamped(Term sum) {
  const double value = value_of(sum);
  if (value < 0) return largest_of({std::move(sum), number(0)});
  if (value > 1) return difference_of(number(1), largest_of({difference_of(number(1), std::move(sum)), number(0)}));
  return sum;
}

Term weighed(const std::array<Term, 4>& weights, const std::array<Term, 4>& values) {
  std::vector<Term> terms;
  for (std::size_t i = 0; i < 4; ++i) terms.push_back(product_of({weights[i], values[i]}));
  return sum_of(std::move(terms));
}

// The table's nodes around the point, row by row: 16 sums along dH, 4 along dP, one along dD.
Term work_table(SumSheet& sheet, const JudgedMixture& judged, const LayerSum& one, const LayerInputs& inputs) {
  const FieldLattice& lattice = one.field.lattice();
  const FieldPlace place = place_on(lattice, judged.point);
  std::array<std::array<Term, 4>, 3> weights;
  for (std::size_t axis = 0; axis < 3; ++axis)
    for (std::size_t i = 0; i < 4; ++i)
      weights[axis][i] = inputs.by_program(InputKind::table_weight, static_cast<int>(axis) + 1,
                                           number(place.weight[axis][i], share_places));
  const auto node = [&](std::size_t i, std::size_t j, std::size_t k) {
    const std::size_t row = (place.first[0] + i) * lattice.nodes[1] + place.first[1] + j;
    return number(one.field.values()[row * lattice.nodes[2] + place.first[2] + k], share_places);
  };
  std::array<Term, 4> planes;
  for (std::size_t i = 0; i < 4; ++i) {
    std::array<Term, 4> rows;
    for (std::size_t j = 0; j < 4; ++j) {
      SumStep row = step_of(one, StepKind::table_row,
                            weighed(weights[2], {node(i, j, 0), node(i, j, 1), node(i, j, 2), node(i, j, 3)}), true);
      row.number_of = static_cast<int>(4 * i + j) + 1;
      rows[j] = sheet.reckon(std::move(row), share_places);
    }
    SumStep plane = step_of(one, StepKind::table_plane, weighed(weights[1], rows), true);
    plane.number_of = static_cast<int>(i) + 1;
    planes[i] = sheet.reckon(std::move(plane), share_places);
  }
  SumStep chance = step_of(one, StepKind::chance, clamped(weighed(weights[0], planes)));
  chance.printed_as = PrintedAs::chance;
  chance.printed = one.outlook.chance;
  return sheet.reckon(std::move(chance), share_places);
}

}  // namespace

Term work_layer(SumSheet& sheet, const PointTerms& point, const JudgedMixture& judged, const LayerSum& one,
                const Limits& limits, const Catalogue& catalogue) {
  const LayerInputs inputs(sheet, one.layer, catalogue);
  const UncertainSphere& sphere = one.subject.sphere;
  const PointTerms centre{inputs.of_sphere(InputKind::centre_dD, sphere.mean.centre.dD),
                          inputs.of_sphere(InputKind::centre_dP, sphere.mean.centre.dP),
                          inputs.of_sphere(InputKind::centre_dH, sphere.mean.centre.dH)};
  const Term radius = inputs.of_sphere(InputKind::radius, sphere.mean.R0);
  inputs.of_sphere(InputKind::sd_dD, sphere.sd.dD, true);
  inputs.of_sphere(InputKind::sd_dP, sphere.sd.dP, true);
  inputs.of_sphere(InputKind::sd_dH, sphere.sd.dH, true);
  inputs.of_sphere(InputKind::sd_radius, sphere.R0_sd, true);
  sheet.put_in({InputKind::grade_that_counts,
                one.layer.name,
                0,
                number(grade_that_counts(one.layer, limits)),
                SumUnit::none,
                InputFrom::job,
                {},
                {},
                false});

  SumStep Ra = step_of(one, StepKind::Ra, apply(Operation::square_root, squared_Ra(point, centre)));
  Ra.unit = SumUnit::MPa05;
  Ra.printed_as = PrintedAs::one_decimal;
  Ra.printed = one.outlook.Ra;
  const Term distance = sheet.reckon(std::move(Ra), parameter_places);
  const std::optional<Term> reach = work_reach(sheet, point, one, inputs);
  SumStep RED = step_of(one, StepKind::RED, quotient_of(distance, reach ? product_of({radius, *reach}) : radius));
  RED.printed_as = PrintedAs::two_decimals;
  RED.printed = one.outlook.RED;
  const Term red = sheet.reckon(std::move(RED), parameter_places);
  const CurveTerms curve(one, inputs);
  work_curve(sheet, red, one, curve);
  work_slices(sheet, judged, one, inputs, curve);
  return work_table(sheet, judged, one, inputs);
}

}  // namespace gentlest
