// The classical series against their tables. Sources stand in the head of each table file.
#include "gentlest/liquids/series.hpp"

#include "csv.hpp"

#include <catch2/catch.hpp>
#include "near.hpp"

using namespace gentlest;
using namespace gentlest::test;

namespace {

Solvent invented(const std::string& id, const Hansen& hansen) {
  Solvent solvent;
  solvent.id = solvent.name = id;
  solvent.family = "test";
  Known<Hansen> known;
  known.chosen.value = hansen;
  known.chosen.source = "test";
  solvent.hansen = known;
  return solvent;
}

double share_of(const Mixture& mixture, const std::string& id) {
  for (const Part& part : mixture.parts())
    if (part.liquid.solvent->id == id) return 100 * part.fraction;
  return 0;
}

}  // namespace

TEST_CASE("the 13 mixtures and the 10 % steps are those of the tables") {
  CatalogueRecords records;
  records.sources.push_back({"test", "test", ""});
  records.response.source = "test";
  for (const char* id : {"cyclohexane", "toluene", "acetone", "ligroin", "ethanol"})
    records.solvents.push_back(invented(id, {16, 1, 1}));
  const Catalogue catalogue(records);
  const std::vector<Series> all = published_series(catalogue);
  REQUIRE(all.size() == 3);
  const std::vector<Row> feller = read_table("feller_series.csv");
  REQUIRE(all[0].mixtures.size() == feller.size());
  for (std::size_t i = 0; i < feller.size(); ++i)
    for (const char* id : {"cyclohexane", "toluene", "acetone"})
      CHECK(share_of(all[0].mixtures[i], id) == near(number(feller[i], id), 1e-9));
  std::size_t at = 0;
  for (const Row& row : read_table("ten_percent_series.csv")) {
    if (row.at("series") != "hydrocarbon-ketone") continue;
    REQUIRE(at < all[1].mixtures.size());
    CHECK(share_of(all[1].mixtures[at], "ligroin") == near(number(row, "pct_first"), 1e-9));
    CHECK(share_of(all[1].mixtures[at++], "acetone") == near(number(row, "pct_second"), 1e-9));
  }
  CHECK(at == all[1].mixtures.size());
}
