// What observations made of the catalogue's spheres (docs/observations.md): the file holds what the fit gives, what was
// not seen by a fit agrees with it, and what every conservator knows is in the catalogue.
#include "gentlest/answers/conditioning.hpp"
#include "gentlest/answers/observed.hpp"
#include "gentlest/liquids/notation.hpp"
#include "io/catalogue_files.hpp"
#include "near.hpp"
#include "scale.hpp"
#include "shipped.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace gentlest;
using namespace gentlest::test;

namespace {

ConditioningSettings with_draws(int draws) {
  ConditioningSettings settings;
  settings.draws = draws;
  return settings;
}

ActionChances chance(const char* material, const char* liquids) {
  const std::vector<Mixture> mixtures = {parse_mixture(liquids, shipped_catalogue())};
  return chances_on(*shipped_catalogue().find_material(material), mixtures, shipped_catalogue()).at(0);
}

double moves(const char* material, const char* liquids) {
  return chance(material, liquids).moves;
}

std::vector<const MaterialFit*> all_of(const ObservationFit& fit) {
  std::vector<const MaterialFit*> all;
  for (const MaterialFit& one : fit.materials) all.push_back(&one);
  return all;
}

}  // namespace

// The chain may take another path where a library computes a logarithm differently, so figures agree within its noise.
TEST_CASE("conditioned.yaml holds what the fit to the observations gives") {
  const ObservationFit fit =
      fit_observations(shipped_catalogue(), with_draws(static_cast<int>(cases(20000))), usual_swab_ln_further, false);
  CHECK(shipped_catalogue().swab_ln_further() == near(usual_swab_ln_further, 1e-12));
  std::size_t held = 0;
  for (const MaterialFit& one : fit.materials) {
    CAPTURE(one.material->id);
    const std::optional<Conditioning>& kept = one.material->conditioning;
    REQUIRE(kept);
    ++held;
    CHECK(kept->observations == static_cast<int>(one.fitted.size()));
    CHECK(kept->sources == one.sources);
    CHECK(kept->sphere.has_value() == !one.stands);
    if (kept->sphere) {
      const UncertainSphere& now = one.fit.sphere;
      const UncertainSphere& file = *kept->sphere;
      const double loose = 0.2 + 0.2 * std::sqrt(20000.0 / static_cast<double>(cases(20000)));
      CHECK(file.mean.centre.dD == near(now.mean.centre.dD, loose * now.sd.dD));
      CHECK(file.mean.centre.dP == near(now.mean.centre.dP, loose * now.sd.dP));
      CHECK(file.mean.centre.dH == near(now.mean.centre.dH, loose * now.sd.dH));
      CHECK(file.mean.R0 == near(now.mean.R0, loose * now.R0_sd));
      CHECK(file.R0_sd == near(now.R0_sd, loose * now.R0_sd));
    }
    for (const LocalReach::Place& place : one.fit.reach.places)
      CHECK(std::log(reach_factor(kept->reach, place.at)) ==
            near(std::log(reach_factor(one.fit.reach, place.at)), 0.12));
  }
  const auto conditioned = std::count_if(shipped_catalogue().materials().begin(), shipped_catalogue().materials().end(),
                                         [](const Material& material) { return material.conditioning.has_value(); });
  CHECK(held == static_cast<std::size_t>(conditioned));
  CHECK(held >= 40);
}

TEST_CASE("chances agree with observations whose source the fit has not seen") {
  const ObservationFit fit =
      fit_observations(shipped_catalogue(), with_draws(static_cast<int>(cases(3000))), usual_swab_ln_further, true);
  const AgreementScore unseen = score_of(all_of(fit), &MaterialFit::held_out);
  REQUIRE(unseen.clear_cut > 300);
  CHECK(unseen.right >= 0.85 * unseen.clear_cut);
  CHECK(unseen.brier <= 0.09);
  CHECK(unseen.in_order >= 0.88);
  // The films that only swell have broad ranges; apart from them it must hold too.
  std::vector<const MaterialFit*> dissolving;
  for (const MaterialFit* one : all_of(fit))
    if (!one->material->strongest_grade && !one->stands) dissolving.push_back(one);
  const AgreementScore apart = score_of(dissolving, &MaterialFit::held_out);
  CHECK(apart.right >= 0.85 * apart.clear_cut);
  CHECK(apart.brier <= 0.09);
  // And the fit must be worth its while: what the recorded spheres give is worse.
  CHECK(score_of(dissolving, &MaterialFit::recorded).brier > apart.brier + 0.01);
}

TEST_CASE("an observation held out is judged by a fit that knows nothing of its source") {
  const ConditioningSettings settings = with_draws(1000);
  const ObservationFit fit = fit_observations(shipped_catalogue(), settings, usual_swab_ln_further, true);
  int alone = 0;
  for (const MaterialFit& one : fit.materials) {
    if (one.sources != 1 || !one.material->observed_like.empty() || one.held_out.empty()) continue;
    ++alone;
    INFO(one.material->id);
    // All that is known of it comes from that source, so what is left is the prior.
    const Response response = response_of(*one.material, shipped_catalogue(), Contact::immersion);
    const ConditionedSphere prior =
        condition_sphere(*recorded_sphere(*one.material, shipped_catalogue()), one.stands, response, {}, settings);
    const Observation& seen = *one.held_out.front().seen;
    Hansen point;
    for (const ObservedPart& part : seen.parts) {
      const Hansen& liquid = shipped_catalogue().find_solvent(part.solvent)->hansen->chosen.value;
      point = {point.dD + part.percent / 100 * liquid.dD, point.dP + part.percent / 100 * liquid.dP,
               point.dH + part.percent / 100 * liquid.dH};
    }
    const bool weaker = one.material->strongest_grade && is_short(seen.contact);
    const auto chances = expected_grades(prior, response, point, weaker ? usual_swab_ln_further : 0);
    double inside = 0;
    for (int grade = seen.grades->strongest; grade <= seen.grades->weakest; ++grade)
      inside += chances[static_cast<std::size_t>(grade - 1)];
    CHECK(one.held_out.front().chance_of_range == near(inside, 1e-9));
  }
  CHECK(alone >= 5);
}

// Sources: rows of solvents/observations/ on these very materials (common practice, makers' sheets, Lomax and Fisher
// 1990, McSharry and others 2011, Phenix 1998), read here as a conservator would.
TEST_CASE("what every conservator knows of resins and their solvents is what the program says") {
  const char* copolymer = "ethyl_methacrylate_methyl_acrylate_copolymer";
  for (const char* spared : {"isooctane 100", "white_spirit_dearomatised 100"}) CHECK(moves(copolymer, spared) <= 0.25);
  for (const char* dissolved : {"toluene 100", "acetone 100", "ethyl acetate 100"})
    CHECK(moves(copolymer, dissolved) >= 0.5);
  CHECK(chance(copolymer, "ethanol 100").affects >= 0.5);
  CHECK(moves("ethyl_methacrylate_methyl_acrylate_copolymer_aged", "isooctane 100") <= 0.25);
  CHECK(moves("hydrogenated_hydrocarbon_resin", "isooctane 100") >= 0.5);
  CHECK(moves("poly_n_butyl_methacrylate_fresh", "white_spirit 100") >= 0.5);
  for (const char* aged : {"dammar_aged", "mastic_aged"}) {
    CHECK(moves(aged, "ethanol 96 % 100") >= 0.5);
    CHECK(moves(aged, "acetone 100") >= 0.5);
    CHECK(moves(aged, "isooctane 100") <= 0.25);
    CHECK(moves(aged, "ethanol 96 % 100") > moves(aged, "toluene 100") + 0.3);
  }
  CHECK(moves("dammar_fresh", "turpentine 100") >= 0.5);
  CHECK(moves("shellac_fresh", "ethanol 96 % 100") >= 0.5);
  CHECK(moves("shellac_fresh", "white_spirit 100") <= 0.25);
  CHECK(chance("oil_paint_old", "isooctane 100").affects <= 0.25);
  CHECK(chance("oil_paint_old", "dimethylformamide 100").affects > chance("oil_paint_old", "toluene 100").affects);
  // A bath of toluene swells old oil (Stolow, quoted in Phenix 1998), a swab of it seldom does (Hurt 2006).
  const std::vector<Mixture> toluene = {parse_mixture("toluene 100", shipped_catalogue())};
  const Material& old_oil = *shipped_catalogue().find_material("oil_paint_old");
  const double bath = chances_on(old_oil, toluene, shipped_catalogue(), Contact::immersion).at(0).affects;
  CHECK(chances_on(old_oil, toluene, shipped_catalogue(), Contact::swab).at(0).affects < 0.8 * bath);
  CHECK(chance("oil_paint_old", "dichloromethane 100").moves_grade == 3);  // it swells, it never dissolves
}
