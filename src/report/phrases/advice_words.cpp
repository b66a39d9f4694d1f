#include "report/phrases/advice_words.hpp"

#include "report/form/format.hpp"
#include "report/phrases/fit_words.hpp"
#include "report/phrases/sighting_words.hpp"
#include "report/phrases/words.hpp"

#include <fmt/format.h>

#include <utility>

namespace gentlest {

namespace {

constexpr const char* lomax_fisher_1990 = "Lomax and Fisher 1990, J. Am. Inst. Conserv. 29(2), 181-191";
constexpr const char* phenix_2002 = "Phenix 2002, J. Am. Inst. Conserv. 41(1), 61-90";
constexpr const char* hook_1988 = "Hook 1988, J. Am. Inst. Conserv. 27(2), 100-104";

Remark passage_words(const Passage& passage) {
  return {fmt::format("Passage \"{}\": a working mixture must leave it unaffected too{}{}", passage.name,
                      passage.note.empty() ? "." : ": ", passage.note),
          "the job file"};
}

Remark flag_words(const Watch& watch) {
  const auto warn = [&](const char* words, const char* source) {
    return Remark{"\"" + joined(watch.names, "\", \"") + "\"" + words, source};
  };
  switch (watch.flag) {
    case Flag::resinous:
      return warn(": may hold resin like the varnish itself; whatever moves the varnish may move it.",
                  "Jones, Townsend and Boon 1999, ICOM-CC Lyon, 375-380");
    case Flag::waxy:
      return warn(": may hold wax; hydrocarbons and warmth are not gentle to it.", common_practice);
    case Flag::bituminous:
      return warn(": may hold bitumen; hydrocarbons are not gentle to it.", common_practice);
    case Flag::water_sensitive:
      return warn(": sensitive to water; alcohols with water in them count as wet.", common_practice);
    case Flag::cross_linked:
      break;  // speaks of layers to remove
  }
  return {};
}

std::string ended(std::string sentence) {
  if (!sentence.empty() && sentence.back() != '.') sentence += '.';
  return sentence;
}

// Behind the names of a layer and its material.
std::string sphere_weakness(const PlannedLayer& layer) {
  switch (layer.grade) {
    case SphereGrade::fitted:
      break;
    case SphereGrade::recalled:
      return "the sphere was recalled from memory and checked against its own published tests only";
    case SphereGrade::unbracketed:
      return "published tests do not close the sphere in; centre and radius slide together";
    case SphereGrade::weak:
      return "the sphere fits its own published tests badly";
    case SphereGrade::unsupported:
      return "published without tests to check it against";
    case SphereGrade::assumed:
      if (layer.observations_fitted == 0) return layer.assumption;
      return fmt::format(
          "no sphere of it is published. Starting from this stand-in: {} {} of it moved and bent the "
          "sphere (docs/observations.md)",
          ended(layer.assumption),
          counted(static_cast<std::size_t>(layer.observations_fitted), "observation", "observations"));
  }
  return {};
}

}  // namespace

Remark words_of(const Watch& watch, const Plan& plan) {
  switch (watch.kind) {
    case WatchKind::begin_gently:
      return {
          "Begin with rung 1. Go on only when a rung has done nothing to the original and too little to the "
          "layer that must go; stop at once on original colour, softening or blanching, and do not return to "
          "that rung or anything near it.",
          common_practice};
    case WatchKind::nothing_proposed:
      return {
          "No mixture here is proposed for a test. Whatever is tried instead goes first where harm matters least; "
          "stop at once on original colour, softening or blanching, and do not return to it or anything near it.",
          common_practice};
    case WatchKind::two_places:
      return {
          "Test at least two places, one light and one dark passage; one success does not speak for the whole "
          "painting.",
          lomax_fisher_1990};
    case WatchKind::softening:
      return {"Softening or gelling is a result of its own, not a failure: write it down.", lomax_fisher_1990};
    case WatchKind::colour_on_swab:
      return {"Ask of every colour on the swab what it is: varnish, dirt, retouching, original, or not known.",
              common_practice};
    case WatchKind::passage:
      return passage_words(plan.job.passages[watch.passage]);
    case WatchKind::flag:
      return flag_words(watch);
    case WatchKind::may_part:
      return {
          "Alcohol with a hydrocarbon can part into two layers: about 5 % water in the ethanol is enough for "
          "15 parts of it in 85 of white spirit. Look at the vial; a cloudy or layered one is not this recipe.",
          hook_1988};
  }
  return {};
}

std::string words_of(const WeakPoint& point, const Plan& plan) {
  const PlannedLayer& layer = plan.layers[point.layer];
  switch (point.kind) {
    case WeakPointKind::sphere:
      return fmt::format("{} ({}): {}", layer.name, material_in_words(layer), sphere_weakness(layer));
    case WeakPointKind::not_judged:
      return fmt::format("{} ({}): {}", layer.name, material_in_words(layer), state_of_unjudged(layer));
    case WeakPointKind::liquids_vary:
      return fmt::format(
          "{}: its range is widened by the largest deviation of a liquid on the shelf (dD {:.2g}, dP {:.2g}, dH {:.2g} "
          "MPa^0.5)",
          layer.name, layer.liquid_sd.dD, layer.liquid_sd.dP, layer.liquid_sd.dH);
    case WeakPointKind::surer_than_liquids:
      return fmt::format(
          "{}: deviations of its middle below {} (dD) or {} (dP, dH) MPa^0.5 are taken as that: no liquid's own "
          "figures are known better",
          layer.name, best_known_sd.dD, best_known_sd.dP);
    case WeakPointKind::may_be_else: {
      const OtherMaterial& other = layer.possible[point.other];
      if (!layer.sphere || !other.sphere)
        return fmt::format("{}: may be {} as well ({:.0f} %); {} has no sphere, so no reading can weigh the two",
                           layer.name, other.material_name, 100 * other.share,
                           other.sphere ? material_in_words(layer) : other.material_name);
      return fmt::format(
          "{}: may be {} as well ({:.0f} %); the ladder is for {} alone, `gentlest next` weighs both by the readings",
          layer.name, other.material_name, 100 * other.share, material_in_words(layer));
    }
    case WeakPointKind::not_examined:
      return fmt::format(
          "{}: taken as the files record it; files are often wrong (Lomax and Fisher 1990: 20 of 25 paintings)",
          layer.name);
    case WeakPointKind::found_otherwise: {
      const Layer& written = plan.job.layers[point.layer];
      return fmt::format("{}: recorded as {}, found to be {}; the plan follows what was found", written.name,
                         written.recorded, written.found);
    }
    case WeakPointKind::only_swells:
      return fmt::format("{}: swells but never dissolves; what counts on it is \"{}\" or stronger", layer.name,
                         grade_words(grade_that_counts(layer, plan.job.limits)));
    case WeakPointKind::borrowed_curve:
      return fmt::format(
          "The response curve{} comes from fresh, pure resins in long contact; a swab's short touch on "
          "old paint does less. Trust the order of the rungs before the size of the numbers: the swab "
          "decides",
          of_borrowed_curve(plan.layers));
    case WeakPointKind::no_grade_written:
      return "ethanol without a grade is taken as free of water; write its grade, e.g. \"96 %\"";
  }
  return {};
}

std::vector<Remark> watch_words(const Plan& plan) {
  std::vector<Remark> remarks;
  for (const Watch& watch : plan.watch) remarks.push_back(words_of(watch, plan));
  return remarks;
}

std::vector<std::string> weak_point_words(const Plan& plan) {
  std::vector<std::string> words;
  for (const WeakPoint& point : plan.weak_points) words.push_back(words_of(point, plan));
  return words;
}

std::vector<Remark> not_seen_words() {
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

std::vector<Remark> other_ways_words(const Plan& plan) {
  if (plan.outcome == Outcome::window) return {};
  return {
      {"Thin the layer instead of removing it: a part of the effect may be enough.", common_practice},
      {"Put another liquid on the shelf, allow more parts, or accept a higher risk limit after a test where harm "
       "matters least (tacking edge, under the frame).",
       common_practice},
      {"Confine the liquid: gel, solvent-loaded cloth, shorter contact.", common_practice},
      {"Other ways that this program does not judge: water-based cleaning, dry or mechanical removal, light; "
       "`gentlest ways JOB` tells of each what is known, and who says so.",
       common_practice},
      {"Leave it, and write down why.", common_practice},
  };
}

}  // namespace gentlest
