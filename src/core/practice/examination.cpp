#include "gentlest/practice/examination.hpp"

#include "core/base/enum_words.hpp"

#include <array>
#include <utility>

namespace gentlest {

namespace {

constexpr std::array<std::pair<ExaminationEffect, std::string_view>, 8> effect_words = {
    {{ExaminationEffect::first_test, "first_test"},
     {ExaminationEffect::suspect, "suspect"},
     {ExaminationEffect::no_edge, "no_edge"},
     {ExaminationEffect::lower_limit, "lower_limit"},
     {ExaminationEffect::leave_off, "leave_off"},
     {ExaminationEffect::close, "close"},
     {ExaminationEffect::wait, "wait"},
     {ExaminationEffect::stop, "stop"}}};

}  // namespace

std::string_view to_word(ExaminationEffect effect) {
  return word_of(effect_words, effect);
}

std::optional<ExaminationEffect> examination_effect_from_word(std::string_view word) {
  return value_of<ExaminationEffect>(effect_words, word);
}

}  // namespace gentlest
