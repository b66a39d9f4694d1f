// The observations on the cards of `show`, in all three forms, and in `list --having`.
#include "csv_cells.hpp"
#include "near.hpp"
#include "program.hpp"
#include "shipped.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <stdexcept>

using namespace gentlest;
using namespace gentlest::test;
using nlohmann::json;

namespace {

json card_of(const char* name) {
  return json::parse(call({"show", name, "--format", "json"}).out).at("cards").at(0);
}

const json& row_with(const json& card, const char* solvent, double percent) {
  for (const json& row : card.at("observations"))
    if (row.at("volume_percent").contains(solvent) && row.at("volume_percent").at(solvent) == percent) return row;
  throw std::runtime_error("no such observation");
}

}  // namespace

TEST_CASE("a material's card lists what was seen beside the chance, and marks where they disagree", "[observations]") {
  const json card = card_of("dammar_aged");
  CHECK(card.at("observations").size() ==
        shipped_catalogue().observations_on(*shipped_catalogue().find_material("dammar_aged")).size());
  const json& ethanol = row_with(card, "ethanol", 100);
  CHECK(ethanol.at("result") == "removed");
  CHECK(ethanol.at("grade_to") == 2);
  CHECK(ethanol.at("source") == "mcsharry_2011");
  CHECK(ethanol.at("chance_moves").get<double>() < ethanol.at("chance_affects").get<double>());
  // as it is today: the stand-in's sphere puts ethanol outside; goes to "agrees" once the sphere is conditioned
  CHECK((ethanol.at("agreement") == "disagrees") == (ethanol.at("chance_moves").get<double>() < 0.5));
  bool cited = false;
  for (const json& source : card.at("sources")) cited = cited || source.at("key") == "mcsharry_2011";
  CHECK(cited);
  const std::string text = call({"show", "dammar_aged"}).out;
  CHECK(holds(text, "What was seen, beside the chance that the program gives"));
  CHECK(holds(text, "disagrees"));
  CHECK(holds(text, "came off"));
  CHECK(holds(text, "wrong side of one half"));
}

TEST_CASE("a material without a sphere shows its observations as not judged", "[observations]") {
  const json card = card_of("copal_hard");
  REQUIRE_FALSE(card.at("observations").empty());
  for (const json& row : card.at("observations")) {
    CHECK(row.at("chance_moves").is_null());
    CHECK(row.at("agreement").is_null());
    CHECK(row.at("not_judged") == "no_sphere");
  }
  CHECK(holds(call({"show", "copal_hard"}).out, "no sphere"));
}

TEST_CASE("a solvent's card lists the materials, mixtures that hold it too", "[observations]") {
  const json card = card_of("acetone");
  std::size_t mixtures = 0;
  for (const json& row : card.at("observations")) {
    CHECK(row.at("volume_percent").contains("acetone"));
    mixtures += row.at("volume_percent").size() > 1;
  }
  CHECK(mixtures >= 3);
  CHECK(card.at("observations").size() > 20);
  const json on_material = row_with(card_of("dammar_aged"), "acetone", 100);
  const auto same = std::count_if(card.at("observations").begin(), card.at("observations").end(), [&](const json& row) {
    return row.at("material") == "dammar_aged" && row.at("chance_moves").is_number() &&
           std::abs(row.at("chance_moves").get<double>() - on_material.at("chance_moves").get<double>()) < 2e-4;
  });
  CHECK(same >= 1);
  CHECK(holds(call({"show", "sulfolane"}).out, "none recorded"));
}

TEST_CASE("CSV has a line for every observation with its grades and chances", "[observations]") {
  const auto rows = csv_rows(call({"show", "dammar_aged", "--format", "csv"}).out);
  const auto column = [&](const char* name) {
    return static_cast<std::size_t>(std::find(rows[0].begin(), rows[0].end(), name) - rows[0].begin());
  };
  REQUIRE(column("agreement") < rows[0].size());
  const json card = card_of("dammar_aged");
  std::size_t seen = 0;
  for (const auto& row : rows) {
    if (row[column("figure")] != "observation") continue;
    REQUIRE(seen < card.at("observations").size());
    const json& same = card.at("observations").at(seen++);
    for (const char* key : {"chance_moves", "chance_affects", "grade_from", "grade_to"}) {
      INFO(key << " of " << row[column("liquid")]);
      CHECK(row[column(key)].empty() == same.at(key).is_null());
      if (same.at(key).is_number()) CHECK(std::stod(row[column(key)]) == near(same.at(key).get<double>(), 1e-9));
    }
    CHECK(row[column("material")] == "dammar_aged");
    CHECK_FALSE(row[column("liquid")].empty());
    CHECK_FALSE(row[column("agreement")].empty());
  }
  CHECK(seen == card.at("observations").size());
}

TEST_CASE("list tells who has observations", "[observations]") {
  const json all = json::parse(call({"list", "materials", "--having", "observations", "--format", "json"}).out);
  const json solvents = json::parse(call({"list", "solvents", "--having", "observations", "--format", "json"}).out);
  CHECK(all.at("materials").size() >= 50);
  CHECK(solvents.at("solvents").size() >= 50);
}
