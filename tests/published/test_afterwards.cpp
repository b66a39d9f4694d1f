// What goes on and comes off again, against published removability and against practice: each case with its stack, its
// question and the right answer; the source beside it.
#include "shipped.hpp"

#include "gentlest/afterwards/afterwards.hpp"
#include "gentlest/liquids/notation.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>
#include <vector>

using namespace gentlest;
using namespace gentlest::test;

namespace {

Layer coat(const char* material, Light light = Light::not_told, std::optional<double> years = {}) {
  Layer layer;
  layer.name = material;
  layer.found = material;
  layer.light = light;
  layer.years = years;
  return layer;
}

// From below up; a job lists from the top down.
Job painting(std::vector<Layer> from_below) {
  Job job;
  for (std::size_t i = 0; i < from_below.size(); ++i) from_below[i].name += " " + std::to_string(i);
  std::reverse(from_below.begin(), from_below.end());
  job.layers = std::move(from_below);
  for (const char* bottle : {"isooctane", "white_spirit_dearomatised", "ethanol", "isopropanol", "acetone"})
    job.shelf.push_back({bottle, "", {}});
  return job;
}

ProposedCoat put_on(const char* material, FinishUse use, const char* in = "", Light light = Light::not_told) {
  ProposedCoat proposed;
  proposed.material = material;
  proposed.use = use;
  proposed.in = in;
  proposed.light = light;
  return proposed;
}

JudgedStack stack_asked(const Job& job) {
  return *judge_afterwards(job, shipped_catalogue(), {{}, Light::not_told, false}).asked;
}

MixtureOnStack asked(const Job& job, const char* mixture) {
  const Catalogue& catalogue = shipped_catalogue();
  return judge_afterwards(job, catalogue, {{parse_mixture(mixture, catalogue)}, Light::not_told, false})
      .mixtures.front();
}

std::size_t rank_of(const std::vector<JudgedStack>& stacks, const char* material) {
  const auto found = std::find_if(stacks.begin(), stacks.end(), [&](const JudgedStack& stack) {
    return stack.coats.back().coat.material == material;
  });
  REQUIRE(found != stacks.end());
  return static_cast<std::size_t>(found - stacks.begin());
}

constexpr const char* hydrocarbon = "hydrogenated_hydrocarbon_resin";
constexpr const char* copolymer = "ethyl_methacrylate_methyl_acrylate_copolymer";

}  // namespace

// O'Malley 2010: rapidly, after 15 years without ultraviolet. Studio practice: the retouching is not touched.
TEST_CASE("an old hydrocarbon varnish goes into isooctane and leaves copolymer retouching", "[afterwards]") {
  const Job job = painting({coat("oil_paint_old"), coat(copolymer), coat(hydrocarbon, Light::uv_filtered, 15)});
  const MixtureOnStack isooctane = asked(job, "isooctane 100");
  CHECK(isooctane.coats[2].comes_off.verdict == CellVerdict::holds);
  CHECK(isooctane.coats[2].comes_off.basis == CellBasis::known);
  CHECK(isooctane.coats[1].touched.verdict == CellVerdict::holds);
  CHECK(isooctane.coats[1].touched.basis == CellBasis::known);
  CHECK(isooctane.coats[0].touched.verdict == CellVerdict::holds);
  const MixtureOnStack spirit = asked(job, "white_spirit_dearomatised 100");
  CHECK(spirit.coats[2].comes_off.verdict == CellVerdict::holds);
  CHECK(spirit.coats[1].touched.verdict >= CellVerdict::test_first);
}

// Lomax and Fisher 1990, section 5.
TEST_CASE("old poly(n-butyl methacrylate) gels in cyclohexane and toluene, and leaves natural resin behind",
          "[afterwards]") {
  const Job job =
      painting({coat("oil_paint_old"), coat("dammar_aged"), coat("poly_n_butyl_methacrylate", Light::not_told, 35)});
  CHECK(asked(job, "cyclohexane 60, toluene 40").coats[2].comes_off.verdict != CellVerdict::holds);
  CHECK(asked(job, "isooctane 100").coats[2].comes_off.verdict == CellVerdict::fails);
  CHECK(asked(job, "white_spirit 100").coats[2].comes_off.verdict != CellVerdict::holds);
  const MixtureOnStack both = asked(job, "toluene 60, acetone 40");
  CHECK(both.coats[2].comes_off.verdict == CellVerdict::holds);
  CHECK(both.coats[1].touched.verdict == CellVerdict::holds);
  const Job bare = painting({coat("oil_paint_old"), coat("poly_n_butyl_methacrylate", Light::not_told, 35)});
  CHECK(asked(bare, "toluene 60, acetone 40").coats[0].touched.verdict ==
        CellVerdict::test_first);  // 2 of 22 paintings
  const MixtureOnStack acetone = asked(job, "acetone 100");
  CHECK(acetone.coats[2].comes_off.verdict == CellVerdict::holds);
  CHECK(acetone.coats[1].comes_off.verdict == CellVerdict::holds);
}

// Feller and Curran 1975, in Lomax and Fisher 1990; practice for the hydrocarbons.
TEST_CASE("oxidised dammar stays in spirits and goes in toluene with acetone", "[afterwards]") {
  const Job job = painting({coat("oil_paint_old"), coat("dammar_aged")});
  CHECK(asked(job, "isooctane 100").coats[1].comes_off.verdict == CellVerdict::fails);
  CHECK(asked(job, "white_spirit_dearomatised 100").coats[1].comes_off.verdict == CellVerdict::fails);
  CHECK(asked(job, "toluene 40, acetone 60").coats[1].comes_off.verdict == CellVerdict::holds);
}

// Practice; O'Malley 2010; Pieralli 2023.
TEST_CASE("over copolymer retouching the hydrocarbon varnish stands first and the copolymer last of four",
          "[afterwards]") {
  const Afterwards answer = judge_afterwards(painting({coat("oil_paint_old"), coat(copolymer)}), shipped_catalogue());
  const std::size_t dammar = rank_of(answer.varnishes, "dammar_fresh");
  CHECK(rank_of(answer.varnishes, hydrocarbon) == 0);
  CHECK(rank_of(answer.varnishes, hydrocarbon) < dammar);
  CHECK(rank_of(answer.varnishes, "urea_aldehyde_resin") > dammar);
  CHECK(rank_of(answer.varnishes, copolymer) > rank_of(answer.varnishes, "urea_aldehyde_resin"));
  const JudgedStack& last = answer.varnishes[rank_of(answer.varnishes, copolymer)];
  CHECK(last.coats.back().put_on->under[1].verdict == CellVerdict::fails);
}

// Maker's sheets 2000 and 2015, practice: they differ, so the cell must say so.
TEST_CASE("hydrocarbon varnish over urea-aldehyde retouching: sources disagree, and alcohol spares what isolates",
          "[afterwards]") {
  Job job = painting({coat("oil_paint_old")});
  job.afterwards = {put_on(hydrocarbon, FinishUse::varnish), put_on("urea_aldehyde_resin", FinishUse::retouching),
                    put_on(hydrocarbon, FinishUse::varnish)};
  const MixtureOnStack isooctane = asked(job, "isooctane 100");
  CHECK(isooctane.coats[3].comes_off.verdict == CellVerdict::holds);
  CHECK(isooctane.coats[2].touched.verdict == CellVerdict::test_first);
  CHECK(isooctane.coats[2].touched.basis == CellBasis::sources_disagree);
  const MixtureOnStack alcohol = asked(job, "isopropanol 100");
  CHECK(alcohol.coats[2].comes_off.verdict >= CellVerdict::test_first);
  CHECK(alcohol.coats[1].touched.verdict == CellVerdict::holds);
  CHECK(alcohol.coats[1].touched.basis == CellBasis::known);
  CHECK(alcohol.coats[2].touched.verdict == CellVerdict::fails);  // what is told of the pair is told of spirits
}

// Practice; the maker of the hydrocarbon resin, from memory.
TEST_CASE("on an isolating hydrocarbon varnish alcohol may be used, toluene may not", "[afterwards]") {
  Job job = painting({coat("oil_paint_old"), coat(hydrocarbon)});
  job.afterwards = {put_on("poly_vinyl_acetate", FinishUse::retouching, "ethanol")};
  const auto on_varnish = [&] { return stack_asked(job).coats.back().put_on->under[1].verdict; };
  CHECK(on_varnish() == CellVerdict::holds);
  job.afterwards = {put_on(copolymer, FinishUse::retouching, "toluene")};
  CHECK(on_varnish() == CellVerdict::fails);
}

// Lomax and Fisher 1990, section 5: two of two paintings.
TEST_CASE("toluene with acetone takes poly(isobutyl methacrylate) from below as well", "[afterwards]") {
  const Job job =
      painting({coat("oil_paint_old"), coat("poly_isobutyl_methacrylate"), coat("poly_n_butyl_methacrylate")});
  CHECK(asked(job, "toluene 60, acetone 40").coats[1].comes_off.verdict == CellVerdict::holds);
}

// A page on wax coatings, after the AIC paintings catalog.
TEST_CASE("wax goes on aged dammar and off again, and is no finish on what spirit dissolves", "[afterwards]") {
  Job job = painting({coat("oil_paint_old"), coat("dammar_aged")});
  job.afterwards = {put_on("microcrystalline_wax", FinishUse::varnish, "white_spirit_dearomatised")};
  const JudgedStack on_dammar = stack_asked(job);
  CHECK(on_dammar.coats.back().put_on->under[1].verdict == CellVerdict::holds);
  CHECK(on_dammar.coats.back().off_aged->itself.verdict == CellVerdict::holds);
  CHECK(on_dammar.coats.back().off_aged->under[1].verdict == CellVerdict::holds);
  job.layers.front().found = hydrocarbon;
  CHECK(stack_asked(job).link.weakest == CellVerdict::fails);
}

// di Bagno 2006.
TEST_CASE("on acrylic dispersion paint poly(vinyl acetate) and spirit acrylics fail, watercolour is the best",
          "[afterwards]") {
  const Afterwards answer = judge_afterwards(painting({coat("acrylic_dispersion_paint")}), shipped_catalogue());
  for (const char* material : {"poly_vinyl_acetate", "acrylic_solution_varnish"})
    CHECK(answer.retouchings[rank_of(answer.retouchings, material)].link.weakest == CellVerdict::fails);
  REQUIRE(rank_of(answer.retouchings, "gum_arabic") == 0);
  const JudgedCoat& watercolour = answer.retouchings.front().coats.back();
  CHECK(to_text(*watercolour.off_aged->mixture) == "water 100");
  CHECK(watercolour.put_on->under[0].verdict == CellVerdict::test_first);  // try water on the paint first
  CHECK(watercolour.put_on->under[0].why == CellWhy::sensitive_to_water);
}

// Hurt 2006 and Ormsby 2006 against O'Malley 2010.
TEST_CASE("hydrocarbon resin on acrylic dispersion paint: sources disagree", "[afterwards]") {
  const Afterwards answer = judge_afterwards(painting({coat("acrylic_dispersion_paint")}), shipped_catalogue());
  const JudgedStack& stack = answer.varnishes[rank_of(answer.varnishes, hydrocarbon)];
  CHECK(stack.coats.back().put_on->under[0].basis == CellBasis::sources_disagree);
}

// Kempski: a retouching with the solubility of the varnish that it is bedded in.
TEST_CASE("egg tempera between two coats of one varnish goes with that varnish", "[afterwards]") {
  Job job = painting({coat("oil_paint_old")});
  job.afterwards = {put_on("dammar_fresh", FinishUse::varnish), put_on("egg_tempera", FinishUse::retouching),
                    put_on("dammar_fresh", FinishUse::varnish)};
  const JudgedStack stack = stack_asked(job);
  for (const auto* off : {&stack.coats.back().off_fresh, &stack.coats.back().off_aged}) {
    CHECK((*off)->under[2].verdict == CellVerdict::fails);
    CHECK((*off)->under[2].why == CellWhy::goes_with_varnish);
  }
}

// The Poussin Project 2011.
TEST_CASE("no liquid takes old oil retouching off", "[afterwards]") {
  const Job job = painting({coat("oil_paint_old"), coat("oil_retouching"), coat("dammar_aged")});
  for (const char* mixture : {"isooctane 100", "acetone 100", "ethanol 100", "isooctane 50, acetone 50"})
    CHECK(asked(job, mixture).coats[1].comes_off.verdict == CellVerdict::fails);
}

// Lomax and Fisher 1990, sections 4 and 6.
TEST_CASE("nobody is promised that a methacrylate comes off after unfiltered sun", "[afterwards]") {
  const Job job = painting({coat("oil_paint_old"), coat("poly_n_butyl_methacrylate", Light::strong, 30)});
  const Judgement acetone = asked(job, "acetone 100").coats[1].comes_off;
  CHECK(acetone.verdict < CellVerdict::test_first);
  CHECK(acetone.why == CellWhy::may_not_dissolve);
  const Judgement estimate = asked(job, "isooctane 50, ethyl_acetate 50").coats[1].comes_off;
  CHECK(estimate.verdict < CellVerdict::test_first);
  if (estimate.chance) CHECK(*estimate.chance <= 0.5);
  const Job stable = painting({coat("oil_paint_old"), coat(hydrocarbon, Light::strong, 30)});
  CHECK(asked(stable, "isooctane 100").coats[1].comes_off.verdict < CellVerdict::test_first);  // not told of this light
  const Job milder = painting({coat("oil_paint_old"), coat("poly_n_butyl_methacrylate", Light::uv_filtered, 30)});
  CHECK(asked(milder, "acetone 100").coats[1].comes_off.verdict == CellVerdict::holds);
}

// Study of a reduced ketone resin, abstract: no change without ultraviolet, moderate with it.
TEST_CASE("reduced ketone resin ages by its light, not by its years", "[afterwards]") {
  const auto in_spirit = [](Light light) {
    return asked(painting({coat("oil_paint_old"), coat("reduced_ketone_resin", light, 20)}), "white_spirit 100")
        .coats[1]
        .comes_off.verdict;
  };
  const auto ageing = [](Light light) {
    return judge_afterwards(painting({coat("oil_paint_old"), coat("reduced_ketone_resin", light, 20)}),
                            shipped_catalogue(), {{}, Light::not_told, false})
        .painting[1]
        .ageing;
  };
  CHECK(ageing(Light::uv_filtered) == Ageing::none);
  CHECK(in_spirit(Light::uv_filtered) == CellVerdict::holds);
  CHECK(ageing(Light::daylight) == Ageing::somewhat_more_polar);
  CHECK(in_spirit(Light::daylight) < CellVerdict::holds);
}

// Dietermann and others 2001; Whitten and others 1997: natural and ketone resins change most.
TEST_CASE("mastic is not fresh after years in the dark; hydrocarbon and urea-aldehyde resins hardly change",
          "[afterwards]") {
  const auto ageing = [](const char* material, Light light) {
    return *judge_afterwards(painting({coat("oil_paint_old"), coat(material, light, 20)}), shipped_catalogue(),
                             {{}, Light::not_told, false})
                .painting[1]
                .ageing;
  };
  CHECK(ageing("mastic_fresh", Light::dark) == Ageing::much_more_polar);
  for (const char* changes : {"dammar_fresh", "mastic_fresh", "ketone_resin"})
    for (const char* hardly : {hydrocarbon, "urea_aldehyde_resin", copolymer})
      CHECK(ageing(changes, Light::daylight) > ageing(hardly, Light::daylight));
}

// Practice.
TEST_CASE("copolymer varnish in toluene dissolves fresh dammar, and ethanol is no way out", "[afterwards]") {
  Job job = painting({coat("oil_paint_old"), coat("dammar_fresh")});
  for (const char* in : {"toluene", "xylene"}) {
    job.afterwards = {put_on(copolymer, FinishUse::varnish, in)};
    CHECK(stack_asked(job).coats.back().put_on->under[1].verdict == CellVerdict::fails);
  }
  job.afterwards = {put_on(copolymer, FinishUse::varnish, "ethanol")};
  const ActInMixture ethanol = *stack_asked(job).coats.back().put_on;
  CHECK(ethanol.under[1].verdict == CellVerdict::fails);
  CHECK(ethanol.itself.basis == CellBasis::sources_disagree);  // supplier's sheet against G. D. Smith 2012
}

// Szmit-Naud 2021, abstract.
TEST_CASE("varnished and aged, a retouching is estimated from its binder alone", "[afterwards]") {
  Job job = painting({coat("oil_paint_old")});
  for (const char* binder : {"urea_aldehyde_resin", "poly_vinyl_acetate", copolymer}) {
    job.afterwards = {put_on(binder, FinishUse::retouching), put_on(hydrocarbon, FinishUse::varnish)};
    const JudgedStack stack = stack_asked(job);
    CHECK(stack.coats[1].off_aged->itself.basis == CellBasis::binder_alone);
    CHECK(stack.coats[1].off_aged->itself.verdict <= CellVerdict::test_first);
    CHECK(stack.coats[1].off_fresh->itself.basis != CellBasis::binder_alone);
  }
}
