#include "shipped.hpp"

#include "gentlest/catalogue/statements.hpp"
#include "gentlest/safety/hazard.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace gentlest;
using gentlest::test::shipped_catalogue;

namespace {

Mixture half_and_half(const Solvent& a, const Solvent& b) {
  Liquid first{a.name, &a, 0, {}};
  Liquid second{b.name, &b, 0, {}};
  return Mixture({{first, 0.5}, {second, 0.5}});
}

Solvent named(const char* name) {
  Solvent solvent;
  solvent.id = solvent.name = name;
  return solvent;
}

}  // namespace

TEST_CASE("a part without a record is named, never counted as harmless", "[hazards]") {
  Solvent known = named("known");
  known.hazards =
      Hazards{{"H225", "H319"}, {}, {}, {"GHS02"}, "Danger", "", false, "s", Standing::measured, "", {}, {}};
  const Solvent unknown = named("unknown");
  const HazardSummary summary = hazards_of_parts(half_and_half(known, unknown));
  CHECK(summary.signal_word == "Danger");
  CHECK(summary.without_record == std::vector<std::string>{"unknown"});
  CHECK(summary.without_flash_point.size() == 2);
  CHECK(summary.without_limit.size() == 2);
  CHECK_FALSE(summary.lowest_flash_point);
}

TEST_CASE("the strongest word, every statement once, the lowest flash point and limit", "[hazards]") {
  Solvent a = named("a");
  a.hazards =
      Hazards{{"H225", "H336"}, {}, {}, {"GHS02", "GHS07"}, "Warning", "", false, "s", Standing::measured, "", {}, {}};
  a.flash_point_C = Known<double>{{12, "s", Standing::measured, ""}, {}, ""};
  ExposureLimit limit;
  limit.authority = "EU indicative";
  limit.long_term_ppm = 50;
  a.exposure_limits = {limit};
  Solvent b = named("b");
  b.hazards =
      Hazards{{"H225", "H304"}, {}, {}, {"GHS02", "GHS08"}, "Danger", "", false, "s", Standing::measured, "", {}, {}};
  b.flash_point_C = Known<double>{{-12, "s", Standing::measured, ""}, {}, ""};
  const HazardSummary summary = hazards_of_parts(half_and_half(a, b));
  CHECK(summary.signal_word == "Danger");
  CHECK(summary.statements == std::vector<std::string>{"H225", "H304", "H336"});
  CHECK(summary.pictograms == std::vector<std::string>{"GHS02", "GHS07", "GHS08"});
  CHECK(summary.lowest_flash_point->value == -12);
  CHECK(summary.lowest_flash_point_of == "b");
  CHECK(*summary.lowest_limit_ppm == 50);
}
