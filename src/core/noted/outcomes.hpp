// What was said of the layer to remove and of the original, gathered and settled together. Internal to core.
#pragma once

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/job/job.hpp"
#include "gentlest/learning/typed_reading.hpp"
#include "gentlest/noted/words.hpp"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace gentlest {

class Outcomes {
 public:
  explicit Outcomes(const Job& job);

  /// A word of the trade, perhaps with that in front of which it speaks ("varnish softened", "sky blanched"); false
  /// where it is none.
  bool take(const std::string& text, std::optional<Side> side);
  bool understands(const std::string& text) const;
  /// What was seen when dry: what is a change of the original counts as one that stays.
  void take_after_drying(const std::string& text);
  /// The passage or layer to keep that stood in front of the word taken last; empty where none did.
  std::string passage_said() const { return passage_; }

  /// Puts what was said into the reading. A word that may speak of either goes by its order (the layer to remove is
  /// said first, then the original) or is asked.
  void settle(TypedReading& typed, std::vector<Diagnostic>& faults);

 private:
  struct Mention {
    const TradeWord* word = nullptr;
    std::optional<Side> side;
    std::string text;
  };
  struct Prefix {
    std::string text;
    Side side = Side::removal;
    std::string passage;
  };

  std::pair<const TradeWord*, const Prefix*> meaning_of(const std::string& text) const;
  void settle_either(const TypedReading& typed, std::vector<Diagnostic>& faults);
  void settle_side(Side side, TypedReading& typed, std::vector<Diagnostic>& faults);

  std::vector<Prefix> prefixes_;
  std::vector<Mention> mentions_;
  std::vector<const TradeWord*> when_dry_;
  std::vector<std::string> dry_of_either_;
  std::string passage_;
};

}  // namespace gentlest
