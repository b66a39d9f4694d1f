// Records that a check of the whole catalogue finds out of line, and those that are known to be. The list is exact: a
// new one fails the test, and so does one that has been mended but not struck off. Each is named in solvents/README.md.
#pragma once

#include "shipped.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <map>
#include <optional>
#include <set>
#include <sstream>
#include <string>

namespace gentlest::test {

using Reasons = std::map<std::string, std::string>;  ///< id of the solvent, why its record stands all the same

/// solvents/README.md on one line, as a reader would read it.
inline std::string catalogue_readme() {
  std::ifstream in(std::string(GENTLEST_SOURCE_DIR) + "/solvents/README.md");
  std::string text;
  for (std::string word; in >> word;) text += (text.empty() ? "" : " ") + word;
  return text;
}

inline void expect_exactly(const std::set<std::string>& out_of_line, const Reasons& known) {
  const std::string readme = catalogue_readme();
  for (const std::string& id : out_of_line) {
    INFO(id << " is out of line: mend its record, or list it with the reason");
    CHECK(known.count(id) == 1);
  }
  for (const auto& [id, why] : known) {
    INFO(id << ": " << why);
    const Solvent* solvent = shipped_catalogue().find_solvent(id);
    REQUIRE(solvent);
    CHECK(out_of_line.count(id) == 1);  // no longer out of line: strike it off the list
    CHECK(readme.find(solvent->name) != std::string::npos);
  }
}

/// Asks every liquid of the catalogue. `in_line` answers nothing where a liquid lacks what the question needs; so many
/// at least must have been asked, and exactly the known ones be out of line.
template <class InLine>
void expect_in_line(int least_asked, const Reasons& known, const InLine& in_line) {
  int asked = 0;
  std::set<std::string> out_of_line;
  for (const Solvent& solvent : shipped_catalogue().solvents()) {
    const std::optional<bool> answer = in_line(solvent);
    if (!answer) continue;
    ++asked;
    if (!*answer) out_of_line.insert(solvent.id);
  }
  CHECK(asked >= least_asked);
  expect_exactly(out_of_line, known);
}

}  // namespace gentlest::test
