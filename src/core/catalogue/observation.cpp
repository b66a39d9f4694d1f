#include "gentlest/catalogue/observation.hpp"

#include "core/base/enum_words.hpp"

#include <array>
#include <utility>

namespace gentlest {

namespace {

template <class Enum, std::size_t N>
using Words = std::array<std::pair<Enum, std::string_view>, N>;

constexpr Words<Contact, 6> contact_words = {{{Contact::swab, "swab"},
                                              {Contact::sponge, "sponge"},
                                              {Contact::brush, "brush"},
                                              {Contact::poultice, "poultice"},
                                              {Contact::immersion, "immersion"},
                                              {Contact::not_told, "not_told"}}};

constexpr Words<ObservedResult, 8> result_words = {{{ObservedResult::dissolves, "dissolves"},
                                                    {ObservedResult::nearly_dissolves, "nearly_dissolves"},
                                                    {ObservedResult::swells_strongly, "swells_strongly"},
                                                    {ObservedResult::swells, "swells"},
                                                    {ObservedResult::swells_a_little, "swells_a_little"},
                                                    {ObservedResult::nothing_seen, "nothing_seen"},
                                                    {ObservedResult::removed, "removed"},
                                                    {ObservedResult::not_removed, "not_removed"}}};

constexpr Words<Generality, 3> generality_words = {{{Generality::held_generally, "held_generally"},
                                                    {Generality::several_samples, "several_samples"},
                                                    {Generality::one_sample, "one_sample"}}};

}  // namespace

std::string_view to_word(Contact contact) {
  return word_of(contact_words, contact);
}

bool is_short(Contact contact) {
  return contact == Contact::swab || contact == Contact::sponge || contact == Contact::brush;
}

std::optional<Contact> contact_from_word(std::string_view word) {
  return value_of<Contact>(contact_words, word);
}

std::string_view to_word(ObservedResult result) {
  return word_of(result_words, result);
}

std::optional<ObservedResult> observed_result_from_word(std::string_view word) {
  return value_of<ObservedResult>(result_words, word);
}

std::string_view to_word(Generality generality) {
  return word_of(generality_words, generality);
}

std::optional<Generality> generality_from_word(std::string_view word) {
  return value_of<Generality>(generality_words, word);
}

// What was removed may have swollen first; what was not removed may have swollen all the same.
GradeRange range_of(ObservedResult result) {
  switch (result) {
    case ObservedResult::dissolves:
      return {1, 1};
    case ObservedResult::nearly_dissolves:
      return {2, 2};
    case ObservedResult::swells_strongly:
      return {3, 3};
    case ObservedResult::swells:
      return {4, 4};
    case ObservedResult::swells_a_little:
      return {5, 5};
    case ObservedResult::nothing_seen:
      return {6, 6};
    case ObservedResult::removed:
      return {1, 2};
    case ObservedResult::not_removed:
      return {3, 6};
  }
  return {};
}

bool overlap(const GradeRange& a, const GradeRange& b) {
  return a.strongest <= b.weakest && b.strongest <= a.weakest;
}

}  // namespace gentlest
