#include "core/vial/kept.hpp"

#include <cstring>

namespace gentlest {

namespace {

// As its bits: shares that differ in the last one are two mixtures.
template <class Number>
void add_bits(std::string& key, Number number) {
  char bits[sizeof(Number)];
  std::memcpy(bits, &number, sizeof(Number));
  key.append(bits, sizeof(Number));
}

}  // namespace

std::string vial_key(const Mixture& mixture, const Catalogue& catalogue, Celsius temperature) {
  std::string key;
  add_bits(key, catalogue.serial());
  add_bits(key, temperature.value);
  for (const Part& part : mixture.parts()) {
    add_bits(key, part.fraction);
    add_bits(key, part.liquid.solvent);
    add_bits(key, part.liquid.water_fraction);
    key += part.liquid.label;
    key += '\0';
  }
  return key;
}

}  // namespace gentlest
