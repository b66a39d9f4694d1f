#include "core/plan/advice.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

constexpr const char* lomax_fisher_1990 = "Lomax and Fisher 1990, J. Am. Inst. Conserv. 29(2), 181-191";
constexpr const char* phenix_2002 = "Phenix 2002, J. Am. Inst. Conserv. 41(1), 61-90";
constexpr const char* hook_1988 = "Hook 1988, J. Am. Inst. Conserv. 27(2), 100-104";

// Names of the layers to keep, and of their passages, of which this is known or suspected: "paint", "sky".
std::string flagged_names(const Plan& plan, Flag flag) {
  std::string names;
  const auto add = [&](const std::string& name, const std::vector<Flag>& flags) {
    if (std::find(flags.begin(), flags.end(), flag) != flags.end())
      names += (names.empty() ? "\"" : ", \"") + name + "\"";
  };
  for (const PlannedLayer& layer : plan.layers) {
    if (layer.role != Role::keep) continue;
    add(layer.name, layer.flags);
    for (const PassageWarning& one : layer.passages) add(one.passage, one.flags);
  }
  return names;
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

}  // namespace

std::vector<Advice> advice_to_watch(const Plan& plan) {
  std::vector<Advice> advice;
  if (plan.outcome == Outcome::window)
    advice.push_back(
        {"Begin with rung 1. Go on only when a rung has done nothing to the original and too little to the "
         "layer that must go; stop at once on original colour, softening or blanching, and do not return to "
         "that rung or anything near it.",
         common_practice});
  else
    advice.push_back(
        {"No mixture here is proposed for a test. Whatever is tried instead goes first where harm matters least; "
         "stop at once on original colour, softening or blanching, and do not return to it or anything near it.",
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
  const auto warn = [&](Flag flag, const char* words, const char* source) {
    const std::string names = flagged_names(plan, flag);
    if (!names.empty()) advice.push_back({names + words, source});
  };
  warn(Flag::resinous, ": may hold resin like the varnish itself; whatever moves the varnish may move it.",
       "Jones, Townsend and Boon 1999, ICOM-CC Lyon, 375-380");
  warn(Flag::waxy, ": may hold wax; hydrocarbons and warmth are not gentle to it.", common_practice);
  warn(Flag::bituminous, ": may hold bitumen; hydrocarbons are not gentle to it.", common_practice);
  warn(Flag::water_sensitive, ": sensitive to water; alcohols with water in them count as wet.", common_practice);
  const std::vector<const JudgedMixture*> mixtures = planned_mixtures(plan);
  if (std::any_of(mixtures.begin(), mixtures.end(),
                  [](const JudgedMixture* planned) { return holds_alcohol_and_hydrocarbon(planned->mixture); }))
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

std::vector<Advice> advice_cautions(const Plan& plan, const Catalogue& catalogue) {
  std::vector<LabelledMixture> mixtures;
  for (const JudgedMixture* planned : planned_mixtures(plan))
    mixtures.push_back({planned->mixture, label_of(planned->mixture, catalogue)});
  std::vector<Advice> advice = cautions_for(mixtures, catalogue);
  advice.insert(advice.begin(),
                {"This is a plan for tests, not a permission: the licensed conservator decides.", common_practice});
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
