// Faulty records of other ways: one clear message each.
#include "io/catalogue_files.hpp"
#include "shipped.hpp"

#include "gentlest/base/diagnostic.hpp"

#include <catch2/catch.hpp>

namespace gentlest::test {

namespace {

const std::string good =
    "ways:\n  - id: a_way\n    kind: dry\n    name: \"a way\"\n    for: [ladder_ends]\n    careful: [soft_layer]\n"
    "    when: \"dirt\"\n    watch: \"dust\"\n    source: [lomax_fisher_1990]\n    standing: seen\n    confidence: "
    "low\n";

std::string with(const std::string& from, const std::string& to) {
  std::string text = good;
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

// Of the shipped catalogue only what every one must hold: to read all of it takes long.
std::vector<NamedText> least_catalogue() {
  std::vector<NamedText> files;
  for (const NamedText& file : shipped_files())
    if (file.name == "VERSION" || file.name == "law.yaml" || file.name == "sources.yaml" ||
        file.name == "response.yaml" || file.name == "materials/spreads.yaml")
      files.push_back(file);
  return files;
}

std::vector<Diagnostic> faults_of(const std::string& text) {
  std::vector<NamedText> files = least_catalogue();
  files.push_back({"other_ways.yaml", text});
  try {
    read_catalogue(files);
  } catch (const InputError& error) {
    return error.faults();
  }
  return {};
}

}  // namespace

TEST_CASE("a right way is taken, and a catalogue without the file has none") {
  CHECK(faults_of(good).empty());
  CHECK(faults_of(with("    for: [ladder_ends]\n", "")).empty());
  CHECK(read_catalogue(least_catalogue()).other_ways().empty());
}

TEST_CASE("a faulty way is one fault with its place", "[bad]") {
  struct Bad {
    std::string text, message;
  };
  const std::vector<Bad> all = {
      {with("kind: dry", "kind: dri"), "kind \"dri\" is none of the words for it"},
      {with("[ladder_ends]", "[ladder_end]"), "for \"ladder_end\" is none of the words for it"},
      {with("[soft_layer]", "[soft]"), "careful \"soft\" is none of the words for it"},
      {with("    when: \"dirt\"\n", ""), "lacks the key \"when\""},
      {with("    watch: \"dust\"\n", ""), "lacks the key \"watch\""},
      {with("    source: [lomax_fisher_1990]\n", "    source: []\n"), "a way needs a source"},
      {with("lomax_fisher_1990", "lomax_fischer_1990"), "names the source \"lomax_fischer_1990\""},
      {with("lomax_fisher_1990", "common_practice"), "what was seen names what it was seen in first"},
      {with("standing: seen", "standing: common practice"), "common practice has the source common_practice first"},
      {with("standing: seen", "standing: measured"), "standing \"measured\" is none of the words"},
      {with("    watch", "    wach: \"x\"\n    watch"), "wach"},
      {good + good.substr(6), "the way \"a_way\" stands twice"}};
  for (const Bad& bad : all) {
    const std::vector<Diagnostic> faults = faults_of(bad.text);
    INFO(bad.message);
    REQUIRE(faults.size() == 1);
    CHECK(faults.front().message.find(bad.message) != std::string::npos);
    CHECK(!faults.front().where.file.empty());
  }
}

}  // namespace gentlest::test
