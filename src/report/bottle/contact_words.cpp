#include "report/bottle/contact_words.hpp"

#include "report/form/format.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

// In the film; what is not known is taken as if.
bool may_stay(const SwabContact& contact) {
  return std::any_of(contact.slow.begin(), contact.slow.end(),
                     [](const SlowLiquid& one) { return one.stays || !one.drying_time; });
}

}  // namespace

std::string contact_words(const SwabContact& contact) {
  return fmt::format("at most {} s; look at swab and spot every {} rolls", as_recorded(contact.most_seconds),
                     rolls_between_looks);
}

std::string clearing_words(const SwabContact& contact) {
  if (contact.clear_with.empty()) return "clear with a dry swab";
  return fmt::format("clear with {}, where that alone did nothing, then a dry swab", contact.clear_with);
}

std::string look_again_words(const SwabContact& contact) {
  const bool is_slow = !contact.slow.empty();
  if (may_stay(contact)) return "look again when dry, next day and after a week";
  return is_slow ? "look again when dry (it takes long) and next day" : "look again when dry and next day";
}

std::string contact_in_short(const SwabContact& contact) {
  return fmt::format("{} s at most, look every {} rolls; clear: {}dry swab; again: dry, next day{}",
                     as_recorded(contact.most_seconds), rolls_between_looks,
                     contact.clear_with.empty() ? "" : contact.clear_with + ", ", may_stay(contact) ? ", a week" : "");
}

std::vector<std::string> slow_words(const SwabContact& contact) {
  std::vector<std::string> sentences;
  for (const SlowLiquid& one : contact.slow) {
    if (!one.drying_time)
      sentences.push_back(one.label + ": how fast it dries is not known; take it as slow");
    else
      sentences.push_back(fmt::format("{} dries slowly, about {} times as long as n-butyl acetate{}", one.label,
                                      fixed(*one.drying_time, *one.drying_time < 10 ? 1 : 0),
                                      one.stays ? ", and is expected to stay in the film" : ""));
  }
  return sentences;
}

std::string slow_mark(const SwabContact& contact) {
  std::vector<std::string> marks;
  for (const SlowLiquid& one : contact.slow)
    marks.push_back(one.label + (!one.drying_time ? ": drying not known"
                                 : one.stays      ? ": stays in the film"
                                                  : ": slow"));
  return joined(marks, "; ");
}

}  // namespace gentlest
