#include "report/after/after_stacks.hpp"

#include "gentlest/liquids/notation.hpp"

#include <set>

namespace gentlest {

const JudgedStack* best_place(const RetouchingPlace& place) {
  const auto& best = place.is_better_under ? place.under : place.over;
  return best ? &*best : nullptr;
}

std::vector<ListedStack> listed_stacks(const Afterwards& answer) {
  std::vector<ListedStack> all;
  if (answer.asked) all.push_back({"asked", 1, &*answer.asked});
  for (std::size_t i = 0; i < answer.retouchings.size(); ++i)
    all.push_back({"retouching", i + 1, &answer.retouchings[i]});
  for (std::size_t i = 0; i < answer.varnishes.size(); ++i) all.push_back({"varnish", i + 1, &answer.varnishes[i]});
  for (std::size_t i = 0; i < answer.places.size(); ++i) {
    const RetouchingPlace& place = answer.places[i];
    if (place.under) all.push_back({"under", i + 1, &*place.under});
    if (place.over) all.push_back({"over", i + 1, &*place.over});
    if (place.between) all.push_back({"between", i + 1, &*place.between});
  }
  return all;
}

std::vector<const ActInMixture*> named_liquids(const Afterwards& answer) {
  std::vector<const ActInMixture*> named;
  std::set<std::string> known;
  for (const ListedStack& one : listed_stacks(answer))
    for (const JudgedCoat& coat : one.stack->coats)
      for (const auto* act : {&coat.put_on, &coat.off_fresh, &coat.off_aged})
        if (*act && (*act)->mixture && known.insert(to_text(*(*act)->mixture)).second) named.push_back(&**act);
  return named;
}

}  // namespace gentlest
