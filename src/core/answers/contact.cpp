#include "gentlest/answers/contact.hpp"

#include "gentlest/learning/learning.hpp"
#include "gentlest/vial/evaporation.hpp"

namespace gentlest {

std::vector<SlowLiquid> slow_liquids(const Mixture& mixture, const Catalogue& catalogue, Celsius temperature) {
  std::vector<SlowLiquid> slow;
  for (const Part& part : mixture.parts()) {
    const std::optional<double> rate = evaporation_rate(*part.liquid.solvent, catalogue, temperature);
    const std::optional<double> times = rate ? std::optional(1 / *rate) : std::nullopt;
    if (!times || *times >= slow_from) slow.push_back({part.liquid.label, times, times && *times >= stays_from});
  }
  return slow;
}

SwabContact contact_for(const Mixture& mixture, const Plan& plan, const Catalogue& catalogue) {
  SwabContact contact;
  contact.most_seconds = ReadingNoise{}.reference_seconds;
  contact.slow = slow_liquids(mixture, catalogue, Celsius{plan.job.limits.room_C});
  if (plan.lines.empty() || !plan.lines.front().active) return contact;
  const std::string& gentle = plan.lines.front().bottles.front();
  const bool is_it = mixture.parts().size() == 1 && mixture.parts().front().liquid.label == gentle;
  if (!is_it) contact.clear_with = gentle;
  return contact;
}

}  // namespace gentlest
