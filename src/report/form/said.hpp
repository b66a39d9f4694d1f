// Words that are true of several things, each once.
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace gentlest {

/// Words and the names that they are true of, in the order in which they were first said.
using Said = std::vector<std::pair<std::string, std::vector<std::string>>>;

void say(Said& said, const std::string& words, const std::string& name);

}  // namespace gentlest
