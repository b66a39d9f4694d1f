// Cautions as sentences with where they come from.
#pragma once

#include "gentlest/safety/caution.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// What is said of what the trade does without anybody having published it.
inline constexpr const char* common_practice = "common practice, no source";

/// A sentence for the person, with the key of its source in sources.yaml or where it comes from in words.
struct Remark {
  std::string text;
  std::string source;
};

std::vector<Remark> caution_words(const std::vector<Caution>& cautions);

}  // namespace gentlest
