// One card of the sheet: what is written down of one swab, in the order of the work, and nothing that the log has not.
#pragma once

#include "gentlest/plan/plan.hpp"
#include "report/draw/html.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// What is printed on a card; the rest is filled in by hand.
struct CardWords {
  int number = 0;
  std::string head;     ///< HTML: which mixture and how it is made
  std::string contact;  ///< HTML: how long, how many rolls, when to look again, what to clear with; may be empty
};

struct SwabCard {
  std::string html;
  double height_mm = 0;  ///< at most, in the widest of our fonts
};

SwabCard make_card(const CardWords& words, const Plan& plan);

/// For the style of a page with cards.
extern const char* const card_css;

}  // namespace gentlest
