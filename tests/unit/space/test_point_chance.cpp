// The chance at single points against the tables of a search, which are tested against a slow reference.
#include "shipped.hpp"

#include "gentlest/space/chance.hpp"
#include "gentlest/space/point_chance.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace gentlest;
using namespace gentlest::test;

TEST_CASE("a chance at a point is that of the table", "[space]") {
  const HansenBox box{{14, 0, 0}, {20, 14, 22}};
  const Catalogue& catalogue = shipped_catalogue();
  double worst = 0;
  for (const char* id :
       {"dammar_aged", "oil_paint_old", "poly_vinyl_acetate", "alkyd_long_oil", "urea_aldehyde_resin"}) {
    const Material& material = *catalogue.find_material(id);
    for (const int grade : {2, 4}) {
      const FieldSubject subject{*uncertain_sphere(material, catalogue), response_of(material, catalogue), grade,
                                 local_reach(material)};
      const ChanceField field = chance_fields(box, {subject}).front();
      const PointChance at(subject);
      for (double dD = 14; dD <= 20; dD += 1.5)
        for (double dP = 0; dP <= 14; dP += 3.5)
          for (double dH = 0; dH <= 22; dH += 5.5)
            worst = std::max(worst, std::abs(at({dD, dP, dH}) - field({dD, dP, dH})));
    }
  }
  INFO(worst);
  CHECK(worst < 0.015);
}
