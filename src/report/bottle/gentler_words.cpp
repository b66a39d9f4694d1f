#include "report/bottle/gentler_words.hpp"

#include "report/bottle/vial_words.hpp"
#include "report/form/format.hpp"

#include <fmt/format.h>

namespace gentlest {

std::vector<std::string> gives_up_words(const Substitute& substitute) {
  constexpr double longer = 1.25;  // less than this, either way, is about the same time
  constexpr double shorter = 0.8;
  std::vector<std::string> words = {fmt::format("lies {} MPa^0.5 from the original", fixed(substitute.Ra, 2))};
  const std::optional<double>& ratio = substitute.drying_ratio;
  if (!ratio)
    words.emplace_back("how fast it dries is not known");
  else if (*ratio > longer)
    words.push_back(fmt::format("dries more slowly, about {} times as long", fixed(*ratio, 1)));
  else if (*ratio < shorter)
    words.push_back(fmt::format("dries faster, in about {} % of the time", fixed(100 * *ratio, 0)));
  if (substitute.phases.phases != Phases::one_liquid)
    words.push_back(
        fmt::format("as one liquid: {} ({})", to_word(substitute.phases.phases), to_word(substitute.phases.basis)));
  if (!substitute.added_statements.empty())
    words.push_back("carries what the original does not: " + joined(substitute.added_statements));
  return words;
}

}  // namespace gentlest
