#include "gentlest/liquids/mixture.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/liquids/grade.hpp"
#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

Hansen between(const Hansen& a, const Hansen& b, double share_of_b) {
  const double share_of_a = 1 - share_of_b;
  return {share_of_a * a.dD + share_of_b * b.dD, share_of_a * a.dP + share_of_b * b.dP,
          share_of_a * a.dH + share_of_b * b.dH};
}

void add_water(Liquid& liquid, double fraction, const Catalogue& catalogue) {
  const Solvent* water = catalogue.find_solvent("water");
  if (!water || !water->hansen)
    throw InputError(Fault::usage,
                     "the catalogue holds no water, which the grade of " + liquid.solvent->name + " needs");
  liquid.water_fraction = fraction;
  liquid.hansen = between(liquid.hansen, water->hansen->chosen.value, fraction);
}

}  // namespace

Liquid make_liquid(const Solvent& solvent, std::string_view grade, const Catalogue& catalogue) {
  if (!solvent.hansen)
    throw InputError(Fault::usage, fmt::format("{} has no Hansen parameters in this catalogue", solvent.name),
                     solvent.no_hansen);
  Liquid liquid;
  liquid.solvent = &solvent;
  const Grade stated = read_grade(solvent, grade, catalogue);
  liquid.label = bottle_label(solvent.name, stated.text);
  liquid.hansen = solvent.hansen->chosen.value;
  if (stated.water_fraction > 0) add_water(liquid, stated.water_fraction, catalogue);
  return liquid;
}

bool is_denatured(const Meaning<Solvent>& named) {
  return named.by && named.by->kind == NameKind::denatured;
}

Liquid make_liquid(const Meaning<Solvent>& named, std::string_view grade, const Catalogue& catalogue) {
  Liquid liquid = make_liquid(*named.record, grade, catalogue);
  liquid.denatured = is_denatured(named);
  if (liquid.denatured) liquid.label = denatured_name(liquid.label);
  return liquid;
}

Mixture::Mixture(std::vector<Part> parts) : parts_(std::move(parts)) {
  if (parts_.empty()) throw InputError(Fault::usage, "a mixture needs at least one liquid");
  std::sort(parts_.begin(), parts_.end(), [](const Part& a, const Part& b) {
    return a.fraction != b.fraction ? a.fraction > b.fraction : a.liquid.label < b.liquid.label;
  });
  double sum = 0;
  std::vector<std::string> labels;
  for (const Part& part : parts_) {
    if (!(part.fraction > 0))
      throw InputError(Fault::usage, fmt::format("the share of {} must be above 0", part.liquid.label));
    sum += part.fraction;
    labels.push_back(part.liquid.label);
  }
  std::sort(labels.begin(), labels.end());
  const auto twice = std::adjacent_find(labels.begin(), labels.end());
  if (twice != labels.end()) throw InputError(Fault::usage, fmt::format("{} stands twice in the mixture", *twice));
  if (!(std::abs(sum - 1) < 1e-9))
    throw InputError(Fault::usage, fmt::format("the shares add up to {:.6g}, not to 1", sum));
}

void add_liquids(std::vector<Liquid>& liquids, const Mixture& mixture) {
  for (const Part& part : mixture.parts())
    if (std::none_of(liquids.begin(), liquids.end(),
                     [&](const Liquid& known) { return known.label == part.liquid.label; }))
      liquids.push_back(part.liquid);
}

bool is_hydrocarbon_or_cut(const Solvent& solvent) {
  return solvent.family == "aliphatic hydrocarbon" || solvent.family == "petroleum fraction";
}

Hansen mix(const Mixture& mixture) {
  Hansen sum;
  for (const Part& part : mixture.parts()) {
    sum.dD += part.fraction * part.liquid.hansen.dD;
    sum.dP += part.fraction * part.liquid.hansen.dP;
    sum.dH += part.fraction * part.liquid.hansen.dH;
  }
  return sum;
}

Hansen largest_sd(const std::vector<Liquid>& liquids) {
  Hansen sd;
  for (const Liquid& liquid : liquids) {
    if (!liquid.solvent || !liquid.solvent->hansen_sd) continue;
    const Hansen& own = liquid.solvent->hansen_sd->value;
    sd = {std::max(sd.dD, own.dD), std::max(sd.dP, own.dP), std::max(sd.dH, own.dH)};
  }
  return sd;
}

}  // namespace gentlest
