#include "advice.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>

namespace gentlest {

namespace {

constexpr const char* common_practice = "common practice, no source";
constexpr const char* lomax_fisher_1990 = "Lomax and Fisher 1990, J. Am. Inst. Conserv. 29(2), 181-191";
constexpr const char* phenix_2002 = "Phenix 2002, J. Am. Inst. Conserv. 41(1), 61-90";
constexpr const char* hook_1988 = "Hook 1988, J. Am. Inst. Conserv. 27(2), 100-104";

const PlannedLayer* first_flagged(const Plan& plan, Flag flag) {
  for (const PlannedLayer& layer : plan.layers)
    if (layer.role == Role::keep && std::find(layer.flags.begin(), layer.flags.end(), flag) != layer.flags.end())
      return &layer;
  return nullptr;
}

// Any mixture that the plan shows.
bool any_mixture(const Plan& plan, const std::function<bool(const Mixture&)>& holds) {
  const auto check = [&](const JudgedMixture& judged) { return holds(judged.mixture); };
  return std::any_of(plan.rungs.begin(), plan.rungs.end(), check) || (plan.nearest && check(*plan.nearest)) ||
         (plan.least_risk_that_works && check(*plan.least_risk_that_works));
}

bool holds_alcohol_and_hydrocarbon(const Mixture& mixture) {
  bool alcohol = false;
  bool hydrocarbon = false;
  for (const Part& part : mixture.parts()) {
    const std::string& family = part.liquid.solvent->family;
    alcohol = alcohol || family == "alcohol";
    hydrocarbon = hydrocarbon || family == "aliphatic hydrocarbon" || family == "petroleum fraction";
  }
  return alcohol && hydrocarbon;
}

bool any_statement(const Plan& plan, const std::function<bool(const std::string&)>& fits) {
  const auto check = [&](const JudgedMixture& judged) {
    return std::any_of(judged.hazards.statements.begin(), judged.hazards.statements.end(), fits);
  };
  return std::any_of(plan.rungs.begin(), plan.rungs.end(), check) || (plan.nearest && check(*plan.nearest)) ||
         (plan.least_risk_that_works && check(*plan.least_risk_that_works));
}

}  // namespace

std::vector<Advice> advice_to_watch(const Plan& plan) {
  std::vector<Advice> advice;
  advice.push_back(
      {"Begin with rung 1. Go on only when a rung has done nothing to the original and too little to the "
       "layer that must go; stop at once on original colour, softening or blanching, and do not return to "
       "that rung or anything near it.",
       common_practice});
  advice.push_back(
      {"Test at least two places, one light and one dark passage; one success does not speak for the whole "
       "painting.",
       lomax_fisher_1990});
  advice.push_back({"Softening or gelling is a result of its own, not a failure: write it down.", lomax_fisher_1990});
  advice.push_back({"Ask of every colour on the swab what it is: varnish, dirt, retouching, original, or not known.",
                    common_practice});
  for (const Passage& passage : plan.job.passages)
    advice.push_back({fmt::format("Passage \"{}\": a working mixture must leave it unaffected too{}{}", passage.name,
                                  passage.note.empty() ? "." : ": ", passage.note),
                      "the job file"});
  if (const PlannedLayer* layer = first_flagged(plan, Flag::resinous))
    advice.push_back(
        {fmt::format("\"{}\" may hold resin like the varnish itself: whatever moves the varnish may move it.",
                     layer->name),
         "Jones, Townsend and Boon 1999, ICOM-CC Lyon, 375-380"});
  if (const PlannedLayer* layer = first_flagged(plan, Flag::waxy))
    advice.push_back({fmt::format("\"{}\" may hold wax: hydrocarbons and warmth are not gentle to it.", layer->name),
                      common_practice});
  if (const PlannedLayer* layer = first_flagged(plan, Flag::bituminous))
    advice.push_back(
        {fmt::format("\"{}\" may hold bitumen: hydrocarbons are not gentle to it.", layer->name), common_practice});
  if (const PlannedLayer* layer = first_flagged(plan, Flag::water_sensitive))
    advice.push_back(
        {fmt::format("\"{}\" is sensitive to water: alcohols with water in them count as wet.", layer->name),
         common_practice});
  if (any_mixture(plan, holds_alcohol_and_hydrocarbon))
    advice.push_back(
        {"Alcohol with a hydrocarbon can part into two layers: about 5 % water in the ethanol is enough for "
         "15 parts of it in 85 of white spirit. Look at the vial; a cloudy or layered one is not this recipe.",
         hook_1988});
  return advice;
}

std::vector<Advice> advice_not_seen() {
  return {
      {"Leaching: what the liquid carries out of the paint film.", phenix_2002},
      {"Solvent that stays in the film after the swab, for hours to weeks.", common_practice},
      {"Water, acids, bases, chelators, pH: they work by other ways than solubility.", common_practice},
      {"Speed: small molecules go in faster than their distance suggests, thick films take longer.",
       "Michalski 1990, IIC Brussels, 85-92 (abstract)"},
      {"Drying on the painting: the drift is reckoned for a stirred liquid in clean air, not for a swab's fibres, a "
       "cooled surface or what soaks in.",
       common_practice},
      {"The swab itself: rolling, pressure, time, and loose or flaking paint.", common_practice},
      {"Chemical reaction, metal soaps, cross-linking by light.", common_practice},
      {"Oil paint does not follow one simple range: several kinds of polar liquid swell it strongly.", phenix_2002},
  };
}

std::vector<Advice> advice_cautions(const Plan& plan) {
  std::vector<Advice> advice = {
      {"This is a plan for tests, not a permission: the licensed conservator, the safety data sheet of every bottle "
       "and "
       "the local rules decide. Hazards below are those of the separate liquids as far as recorded; a record that is "
       "missing is not a record of harmlessness.",
       common_practice},
      {"Small volumes, lids on, extraction at the work; nobody else downwind.", common_practice},
      {"Gloves: check the maker's figure for the exact glove and liquid; change at the first splash.",
       "Mickelsen and Hall 1987 (eight gloves of one name differed tenfold)"},
      {"Used swabs into a closed metal container under extraction, emptied daily; nothing into the drain.",
       common_practice},
      {"Label every vial: what, how much, when, by whom.", common_practice},
  };
  if (any_statement(plan, [](const std::string& code) { return code == "H224" || code == "H225"; }))
    advice.push_back({"Vapour catches fire at room temperature: no flame, hot tool or sparking switch near.",
                      "GHS statements of the parts"});
  if (any_statement(plan, [](const std::string& code) { return code == "H304"; }))
    advice.push_back({"Never pipette by mouth: a little in the lungs can kill.", "GHS statements of the parts"});
  if (any_statement(plan, [](const std::string& code) {
        return code.rfind("H34", 0) == 0 || code.rfind("H35", 0) == 0 || code.rfind("H36", 0) == 0;
      }))
    advice.push_back(
        {"Some parts are or may be harmful to genes, fertility or the unborn child, or may cause cancer: not "
         "for pregnant or breast-feeding people without an assessment; look for another liquid first.",
         "GHS statements of the parts"});
  return advice;
}

std::vector<Advice> advice_other_ways() {
  return {
      {"Thin the layer instead of removing it: a part of the effect may be enough.", common_practice},
      {"Put another liquid on the shelf, allow more parts, or accept a higher risk limit after a test where harm "
       "matters "
       "least (tacking edge, under the frame).",
       common_practice},
      {"Confine the liquid: gel, solvent-loaded cloth, shorter contact.", common_practice},
      {"Other ways that this program does not judge: water-based cleaning, dry or mechanical removal, light.",
       common_practice},
      {"Leave it, and write down why.", common_practice},
  };
}

}  // namespace gentlest
