// Words that have one meaning by themselves: times, sizes, places, names of the job. Internal to core.
#pragma once

#include "gentlest/job/job.hpp"

#include <cstddef>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// A field and its value as set_noted_field takes it.
struct FieldWord {
  std::string key, value;
};

/// "20 s" -> seconds; "3.2/4.5 cm" -> x_cm and y_cm; empty where the words are none of these.
std::vector<FieldWord> plain_word(const std::string& text);

/// Fixed words among them, for "did you mean".
std::vector<std::string> plain_word_texts();

struct MeantName {
  std::string name;
  bool is_to_go = false;  ///< a layer to remove
};
std::vector<MeantName> all_names(const Job& job);
/// The layers and passages that are called so, else those whose names begin so, three letters at least.
std::vector<MeantName> names_meant(const std::string& text, const Job& job);

/// "contact" of seconds; " s" of seconds: what stands before and behind a value.
std::string label_of_key(std::string_view key);
std::string unit_behind(std::string_view key);

/// What stands behind one of the beginnings; empty where none does.
std::string behind_prefix(const std::string& text, std::initializer_list<std::string_view> beginnings);

std::string joined_words(const std::vector<std::string>& words, std::size_t from, std::size_t count);

/// "no", "all", "dry": words that would turn the sense of a neighbour they belong to, so they stand alone only.
bool means_little_alone(const std::string& text);

/// "at 3.2, 4.5" as "at 3.2/4.5", so that the comma parts nothing.
std::string with_sites_joined(std::string_view text);

/// A number with a point or a comma and nothing else.
bool number_with_comma(const std::string& text);

}  // namespace gentlest
