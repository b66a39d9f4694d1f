// Which other ways a plan brings up, and that no record says more than its source.
#include "demo_plan.hpp"
#include "shipped.hpp"

#include "gentlest/ways/ways.hpp"
#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

namespace gentlest::test {

namespace {

Plan plan_of(const std::string& layers, const std::string& rest,
             const std::string& shelf = "isooctane, ethanol, acetone") {
  const std::string text = "gentlest_job: 1\nlayers:\n" + layers + "shelf: [" + shelf + "]\n" + rest;
  return make_plan(load_job(text, "test", shipped_catalogue()), shipped_catalogue());
}

const char* const varnish = "  - {name: varnish, role: remove, found: dammar_aged}\n";
const char* const paint = "  - {name: paint, role: keep, found: oil_paint_old}\n";

const OccasionHere* find(const std::vector<OccasionHere>& here, Occasion occasion) {
  const auto found =
      std::find_if(here.begin(), here.end(), [&](const OccasionHere& one) { return one.occasion == occasion; });
  return found == here.end() ? nullptr : &*found;
}

const WayHere* find(const WaysAnswer& answer, const std::string& id) {
  const auto found =
      std::find_if(answer.ways.begin(), answer.ways.end(), [&](const WayHere& one) { return one.way->id == id; });
  return found == answer.ways.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("a plan says why it ends, once, and with the name of what closes it") {
  const std::vector<Occasion> ends = {Occasion::layer_closes, Occasion::shelf_too_weak, Occasion::sightings_close,
                                      Occasion::limits_close, Occasion::not_judged,     Occasion::ladder_ends};
  const std::vector<std::pair<Plan, Occasion>> plans = {
      {demo_plan(), Occasion::ladder_ends},
      {plan_of(std::string(varnish) + paint, "limits: {risk_limit: 0.0001}\n"), Occasion::layer_closes},
      {plan_of(std::string(varnish) + paint, "", "isooctane, heptane"), Occasion::shelf_too_weak},
      {plan_of(std::string(varnish) + "  - {name: brown, role: keep, found: bitumen}\n", "", "acetone"),
       Occasion::sightings_close},
      {plan_of(std::string(varnish) + paint, "limits: {lowest_flash_point_C: 60}\n"), Occasion::limits_close},
      {plan_of(std::string("  - {name: varnish, role: remove, found: copal_hard}\n") + paint, ""),
       Occasion::not_judged}};
  for (const auto& [plan, wanted] : plans) {
    const std::vector<OccasionHere> here = occasions_of(plan, shipped_catalogue());
    std::vector<Occasion> found;
    for (const OccasionHere& one : here)
      if (std::find(ends.begin(), ends.end(), one.occasion) != ends.end()) found.push_back(one.occasion);
    INFO(to_word(wanted));
    CHECK(found == std::vector<Occasion>{wanted});
    if (wanted == Occasion::layer_closes) CHECK(here.front().names == std::vector<std::string>{"paint"});
    if (wanted == Occasion::not_judged) CHECK(here.front().names == std::vector<std::string>{"varnish"});
    if (wanted == Occasion::ladder_ends) CHECK(here.front().names.empty());
  }
}

TEST_CASE("what is suspected of a passage counts like what is known of a layer") {
  const std::vector<OccasionHere> plain = occasions_of(plan_of(std::string(varnish) + paint, ""), shipped_catalogue());
  CHECK(!find(plain, Occasion::water_sensitive));
  CHECK(!find(plain, Occasion::soft_layer));
  REQUIRE(find(plain, Occasion::natural_resin));
  CHECK(!find(plain, Occasion::synthetic_resin));
  const Plan plan = plan_of(std::string(varnish) + paint,
                            "passages:\n  - {name: azure, of: paint, suspected: [water_sensitive]}\n"
                            "  - {name: brown, of: paint, suspected: [bituminous]}\n");
  const WaysAnswer answer = ways_for(plan, shipped_catalogue());
  REQUIRE(find(answer.occasions, Occasion::water_sensitive));
  CHECK(find(answer.occasions, Occasion::water_sensitive)->names == std::vector<std::string>{"azure"});
  REQUIRE(find(answer.occasions, Occasion::soft_layer));
  CHECK(find(answer.occasions, Occasion::soft_layer)->names == std::vector<std::string>{"brown"});
  REQUIRE(find(answer, "citrate"));
  CHECK(find(answer, "citrate")->careful == std::vector<Occasion>{Occasion::water_sensitive, Occasion::soft_layer});
  REQUIRE(find(answer, "mister"));
  CHECK(find(answer, "mister")->because == std::vector<Occasion>{Occasion::water_sensitive});
}

TEST_CASE("what is suspected of the layer that must go speaks against no way") {
  const Plan plan = plan_of(
      std::string("  - {name: varnish, role: remove, found: dammar_aged, suspected: [water_sensitive, waxy]}\n") +
          paint,
      "");
  const std::vector<OccasionHere> here = occasions_of(plan, shipped_catalogue());
  CHECK(!find(here, Occasion::water_sensitive));
  CHECK(!find(here, Occasion::soft_layer));
}

TEST_CASE("polar liquids of what works are named, hydrocarbons are not") {
  const std::vector<OccasionHere> here = occasions_of(demo_plan(), shipped_catalogue());
  const OccasionHere* polar = find(here, Occasion::polar_liquid);
  REQUIRE(polar);
  std::set<std::string> wanted;
  for (const Part& part : ladder_rungs(demo_plan()).back().mixture.parts())
    if (part.liquid.label != "isooctane" && part.liquid.label.find("white spirit") == std::string::npos)
      wanted.insert(part.liquid.label);
  CHECK(std::set<std::string>(polar->names.begin(), polar->names.end()) == wanted);
}

TEST_CASE("every way is in the answer or passed over, by kind, what is spoken against last") {
  const WaysAnswer answer = ways_for(demo_plan(), shipped_catalogue());
  CHECK(answer.ways.size() + answer.passed_over.size() == shipped_catalogue().other_ways().size());
  CHECK(!answer.passed_over.empty());
  for (std::size_t i = 1; i < answer.ways.size(); ++i) {
    const WayHere& before = answer.ways[i - 1];
    const WayHere& after = answer.ways[i];
    CHECK(before.way->kind <= after.way->kind);
    if (before.way->kind == after.way->kind) CHECK((before.careful.empty() || !after.careful.empty()));
  }
  for (const WayHere& one : answer.ways) CHECK((one.way->brought_up_by.empty() || !one.because.empty()));
  CHECK(find(answer, "leave_it"));
  CHECK(find(answer, "vapour_regeneration"));
  CHECK(all_ways(shipped_catalogue()).ways.size() == shipped_catalogue().other_ways().size());
}

TEST_CASE("every way asked for is there, with a source that is one") {
  std::set<WayKind> kinds;
  for (const OtherWay& way : shipped_catalogue().other_ways()) {
    INFO(way.id);
    kinds.insert(way.kind);
    REQUIRE(!way.sources.empty());
    for (const std::string& key : way.sources) CHECK(shipped_catalogue().find_source(key));
    CHECK((way.witness == Witness::practice) == (way.sources.front() == "common_practice"));
    CHECK((way.witness == Witness::memory) == (way.sources.front() == "recalled"));
    CHECK((way.witness == Witness::seen || way.confidence != Confidence::high));
  }
  CHECK(kinds.size() == 14);
  CHECK(sources_of(all_ways(shipped_catalogue()), shipped_catalogue()).size() > 30);
}

}  // namespace gentlest::test
