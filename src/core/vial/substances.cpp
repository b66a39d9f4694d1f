#include "core/vial/substances.hpp"

namespace gentlest {

namespace {

void add_substance(std::vector<Substance>& list, const Solvent* solvent, const std::string& id, const std::string& name,
                   double fraction) {
  if (!(fraction > 0)) return;
  for (Substance& known : list)
    if (known.id == id) {
      known.fraction += fraction;
      return;
    }
  list.push_back({solvent, id, name, fraction});
}

}  // namespace

std::vector<Substance> substances_of(const Mixture& mixture) {
  std::vector<Substance> list;
  for (const Part& part : mixture.parts()) {
    const Liquid& liquid = part.liquid;
    add_substance(list, liquid.solvent, liquid.solvent->id, liquid.solvent->name,
                  part.fraction * (1 - liquid.water_fraction));
    add_substance(list, nullptr, "water", "water", part.fraction * liquid.water_fraction);
  }
  return list;
}

}  // namespace gentlest
