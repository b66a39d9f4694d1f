// The words of the trade for what a swab did, and what each is taken for. One table: `record`, tables that are taken in
// and their messages read it.
#pragma once

#include "gentlest/learning/reading.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// Of what a word may speak: of the layer that is to go, of the original, or of either.
enum class Side { removal, original, either };

struct TradeWord {
  std::string_view text;  ///< lower case
  Side side = Side::either;
  std::optional<RemovalReading> removal;    ///< of the layer to remove
  std::optional<OriginalReading> original;  ///< of the original, on the careful side: what only may come back stays
  std::string_view sign;                    ///< kept as a sign beside the grade; empty: it is the grade itself
};

/// Null where the trade has no such word here.
const TradeWord* find_trade_word(std::string_view text);

/// Every word, for "did you mean".
std::vector<std::string> trade_word_texts();

/// Words that say nothing: "n/a", "-", "none", "keine", "aucun" and the like.
bool says_nothing(std::string_view text);

/// What was said of one side, put together.
struct SideReading {
  std::optional<RemovalReading> removal;
  std::optional<OriginalReading> original;
  std::vector<std::string> signs;
  std::string fault;  ///< two words that contradict each other; else empty
};

/// The grade of several words of one side. A sign gives its grade where no word does; of the original the graver
/// counts, save that what recovers may have been blanched, matt, swollen or tacky before. Precondition: the words may
/// speak of that side.
SideReading put_together(const std::vector<const TradeWord*>& words, Side side);

}  // namespace gentlest
