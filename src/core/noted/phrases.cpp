#include "core/noted/phrases.hpp"

#include "gentlest/base/text.hpp"
#include "gentlest/noted/fields.hpp"

namespace gentlest {

namespace {

bool is_digit_at(std::string_view text, std::size_t i) {
  return i < text.size() && text[i] >= '0' && text[i] <= '9';
}

class Cutter {
 public:
  explicit Cutter(std::string_view text) : text_(text) {}

  std::vector<Phrase> run() {
    for (std::size_t i = 0; i < text_.size();) {
      if (text_[i] == '"') {
        i = take_quoted(i);
      } else if (text_.substr(i, 3) == "-- " && (i == 0 || text_[i - 1] == ' ')) {
        end_phrase(i);
        add_remark(i + 3);
        return std::move(phrases_);
      } else if (is_colon(i)) {
        end_with_colon(i++);
      } else if (is_cut(i)) {
        end_phrase(i);
        from_ = ++i;
      } else {
        ++i;
      }
    }
    end_phrase(text_.size());
    return std::move(phrases_);
  }

 private:
  bool is_cut(std::size_t i) const {
    if (text_[i] == ';' || text_[i] == '\n') return true;
    return text_[i] == ',' && !(i > 0 && is_digit_at(text_, i - 1) && is_digit_at(text_, i + 1));
  }

  // Ends a head or a label; within "1:3" or "acetone : isooctane" it belongs to the mixture.
  bool is_colon(std::size_t i) const {
    if (text_[i] != ':' || i == 0 || text_[i - 1] == ' ') return false;
    return i + 1 == text_.size() || text_[i + 1] == ' ';
  }

  void end_with_colon(std::size_t i) {
    const std::string before(trimmed(text_.substr(from_, i - from_)));
    const bool is_own_solution = folded(before) == "aqueous" || folded(before) == "solution";
    if (is_own_solution) return;  // the colon is part of it
    if (const std::string key = key_of_heading(before); !key.empty()) {
      label_ = key;
    } else {
      end_phrase(i);
      if (!phrases_.empty()) phrases_.back().ends_head = true;
    }
    from_ = i + 1;
  }

  std::size_t take_quoted(std::size_t i) {
    end_phrase(i);
    const std::size_t end = text_.find('"', i + 1);
    const std::size_t stop = end == std::string_view::npos ? text_.size() : end;
    Phrase phrase{std::string(text_.substr(i + 1, stop - i - 1)), label_, true, false, false, i, stop};
    phrases_.push_back(std::move(phrase));
    label_.clear();
    from_ = stop == text_.size() ? stop : stop + 1;
    return from_;
  }

  void add_remark(std::size_t from) {
    const std::string remark(trimmed(text_.substr(from)));
    if (!remark.empty()) phrases_.push_back({remark, "remark", false, true, false, from, text_.size()});
  }

  void end_phrase(std::size_t end) {
    std::size_t begin = from_;
    while (begin < end && text_[begin] == ' ') ++begin;
    const std::string_view phrase = trimmed(text_.substr(begin, end - begin));
    if (!phrase.empty()) {
      phrases_.push_back({std::string(phrase), label_, false, false, false, begin, begin + phrase.size()});
      label_.clear();
    }
    from_ = end;
  }

  std::string_view text_;
  std::size_t from_ = 0;
  std::string label_;
  std::vector<Phrase> phrases_;
};

}  // namespace

std::vector<Phrase> phrases_of(std::string_view text) {
  return Cutter(text).run();
}

}  // namespace gentlest
