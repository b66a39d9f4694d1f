// The trees inside the program against the YAML that they were made from.
#include "io/kept_tree.hpp"
#include "shipped.hpp"

#include <catch2/catch.hpp>

#include <stdexcept>

using namespace gentlest;
using namespace gentlest::test;

namespace {

// What a reader of records sees of a node: everything but its place.
bool are_alike(const YamlNode& a, const YamlNode& b) {
  if (a.kind != b.kind || a.quoted != b.quoted || a.text != b.text || a.items.size() != b.items.size() ||
      a.entries.size() != b.entries.size())
    return false;
  for (std::size_t i = 0; i < a.items.size(); ++i)
    if (!are_alike(a.items[i], b.items[i])) return false;
  for (std::size_t i = 0; i < a.entries.size(); ++i)
    if (a.entries[i].key != b.entries[i].key || !are_alike(a.entries[i].value, b.entries[i].value)) return false;
  return true;
}

YamlNode tree_of(const std::string& text) {
  return YamlFile("test.yaml", text).root();
}

}  // namespace

TEST_CASE("every file inside the program is the tree of the YAML in solvents/") {
  const std::vector<NamedText> inside = embedded_catalogue();
  REQUIRE(inside.size() == shipped_files().size());
  for (std::size_t i = 0; i < inside.size(); ++i) {
    INFO(inside[i].name);
    REQUIRE(inside[i].name == shipped_files()[i].name);
    if (inside[i].name == "VERSION")
      CHECK(inside[i].text == shipped_files()[i].text);
    else
      CHECK(are_alike(kept_tree(inside[i].text), tree_of(shipped_files()[i].text)));
  }
}

TEST_CASE("a kept tree tells text from number, nothing from empty, and keeps the order") {
  for (const char* text :
       {"a: 12\n", "a: \"12\"\n", "a: \"\"\n", "a:\n", "a: []\n", "a: {}\n",
        "b: 1\na: [x, 'y', {z: ~}, [\"\\\"q\\\"\"]]\n", "- 1\n-\n- two lines\n", "a: |\n  first\n  second\n",
        "a: gr\xC3\xB6\xC3\x9F"
        "e \xE2\x89\xA5 2\n"}) {
    INFO(text);
    const YamlNode tree = tree_of(text);
    const YamlNode kept = kept_tree(kept_text(tree));
    CHECK(are_alike(kept, tree));
    CHECK(kept.line == 0);
  }
  CHECK_FALSE(are_alike(kept_tree(kept_text(tree_of("a: \"12\"\n"))), tree_of("a: 12\n")));
  CHECK_THROWS_AS(kept_tree("{\"a\": "), std::invalid_argument);
  CHECK_THROWS_AS(kept_tree("[12]"), std::invalid_argument);
}
