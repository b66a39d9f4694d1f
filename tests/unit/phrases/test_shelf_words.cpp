// Why a bottle is left off, what a job has against a published series, what a gentler mixture gives up.
#include "shipped.hpp"

#include "io/job_file.hpp"
#include "report/bottle/gentler_words.hpp"
#include "report/phrases/shelf_words.hpp"

#include <catch2/catch.hpp>

#include <set>

using namespace gentlest;
using gentlest::test::shipped_catalogue;

TEST_CASE("every reason to leave a bottle off has its words, behind the bottle's name") {
  const Solvent& acetone = *shipped_catalogue().find_solvent("acetone");
  std::set<std::string> all;
  for (const LeftOffWhy why : {LeftOffWhy::no_hansen, LeftOffWhy::water, LeftOffWhy::family, LeftOffWhy::solvent,
                               LeftOffWhy::no_hazard_record, LeftOffWhy::statement})
    all.insert(words_of(LeftOff{why, "H361d"}, acetone));
  CHECK(all.size() == 6);
  CHECK(all.count("family \"ketone\" is to be avoided") == 1);
  CHECK(all.count("carries H361d, which is to be avoided") == 1);
  JobBottle bottle{&acetone, std::nullopt, LeftOff{LeftOffWhy::solvent}, 100};
  CHECK(left_off_words({bottle}) == std::vector<std::string>{"acetone: is to be avoided"});
  bottle.liquid = make_liquid(acetone, "99 %", shipped_catalogue());
  CHECK(left_off_words({bottle}) == std::vector<std::string>{"acetone 99 %: is to be avoided"});
}

TEST_CASE("an objection to a series says whether the liquid is left off, missing or of another strength") {
  const Liquid ethanol = make_liquid(*shipped_catalogue().find_solvent("ethanol"), "", shipped_catalogue());
  CHECK(objection_words({{ethanol, LeftOff{LeftOffWhy::solvent}}, {ethanol}, {ethanol, {}, "ethanol 96 %"}}) ==
        std::vector<std::string>{"ethanol: is to be avoided", "ethanol: not on the shelf",
                                 "ethanol: taken free of water; the shelf holds ethanol 96 %"});
}

TEST_CASE("what a gentler mixture gives up is never empty, and names what is not known") {
  const Liquid ethanol = make_liquid(*shipped_catalogue().find_solvent("ethanol"), "", shipped_catalogue());
  Substitute one{Mixture({{ethanol, 1.0}}), 1.234, 0, {}, {}, {}, {}};
  one.phases.phases = Phases::one_liquid;
  CHECK(gives_up_words(one) ==
        std::vector<std::string>{"lies 1.23 MPa^0.5 from the original", "how fast it dries is not known"});
  one.drying_ratio = 1;
  CHECK(gives_up_words(one).size() == 1);
  one.drying_ratio = 2.04;
  CHECK(gives_up_words(one).back() == "dries more slowly, about 2.0 times as long");
  one.drying_ratio = 0.5;
  one.added_statements = {"H302", "H319"};
  one.phases.phases = Phases::near_border;
  const std::vector<std::string> words = gives_up_words(one);
  REQUIRE(words.size() == 4);
  CHECK(words[1] == "dries faster, in about 50 % of the time");
  CHECK(words[2].rfind("as one liquid: ", 0) == 0);
  CHECK(words[3] == "carries what the original does not: H302, H319");
}
