#include "report/form/said.hpp"

#include <algorithm>

namespace gentlest {

void say(Said& said, const std::string& words, const std::string& name) {
  const auto known = std::find_if(said.begin(), said.end(), [&](const auto& one) { return one.first == words; });
  if (known == said.end())
    said.push_back({words, {name}});
  else
    known->second.push_back(name);
}

}  // namespace gentlest
