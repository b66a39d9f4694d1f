#include "gentlest/conduct/conduct.hpp"

#include <algorithm>
#include <cmath>

namespace gentlest {

bool is_same_mixture(const Mixture& a, const Mixture& b) {
  constexpr double nearly = 0.01;
  return a.parts().size() == b.parts().size() &&
         std::all_of(a.parts().begin(), a.parts().end(), [&](const Part& part) {
           return std::any_of(b.parts().begin(), b.parts().end(), [&](const Part& other) {
             return other.liquid.label == part.liquid.label && std::abs(other.fraction - part.fraction) <= nearly;
           });
         });
}

const Closure* closure_of(const Conduct& conduct, std::size_t step, const std::string& layer) {
  const auto found = std::find_if(conduct.closures.begin(), conduct.closures.end(), [&](const Closure& one) {
    return one.step == step && (one.layer.empty() || layer.empty() || one.layer == layer);
  });
  return found == conduct.closures.end() ? nullptr : &*found;
}

}  // namespace gentlest
