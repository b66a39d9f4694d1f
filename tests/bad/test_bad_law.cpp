// A catalogue that does not say, or not rightly, up to which day the law was seen.
#include "gentlest/base/diagnostic.hpp"

#include "io/catalogue_files.hpp"
#include "shipped.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gentlest;

namespace {

std::string complaint_with_law(const std::string& text) {
  std::vector<NamedText> files = test::shipped_files();
  for (NamedText& file : files)
    if (file.name == "law.yaml") file.text = text;
  if (text.empty())
    files.erase(
        std::remove_if(files.begin(), files.end(), [](const NamedText& file) { return file.name == "law.yaml"; }),
        files.end());
  try {
    read_catalogue(files);
  } catch (const InputError& error) {
    return render(error.faults());
  }
  return "no complaint";
}

}  // namespace

TEST_CASE("a catalogue without the day of the law is refused, each fault with its place") {
  struct Bad {
    const char* what;
    const char* text;
    const char* message;
  };
  const Bad bad_files[] = {
      {"no file", "", "this file of the catalogue is missing"},
      {"empty map", "laws: {}\n", "law"},
      {"no day", "law:\n  seen: \"all of it\"\n", "seen_until"},
      {"a day that is none", "law:\n  seen_until: \"2026-02-30\"\n  seen: \"all of it\"\n",
       "\"2026-02-30\" is not a day"},
      {"a day in words", "law:\n  seen_until: \"October 2026\"\n  seen: \"all of it\"\n", "write a day such as"},
      {"no words", "law:\n  seen_until: \"2026-10-07\"\n", "\"seen\""},
      {"a key nobody asked for", "law:\n  seen_until: \"2026-10-07\"\n  seen: a\n  newer: b\n", "newer"}};
  for (const Bad& bad : bad_files) {
    INFO(bad.what);
    const std::string said = complaint_with_law(bad.text);
    INFO(said);
    CHECK(said.find(bad.message) != std::string::npos);
    CHECK(said.find("solvents/law.yaml") != std::string::npos);
  }
  CHECK(complaint_with_law("law:\n  seen_until: \"2026-10-07\"\n  seen: a\n") == "no complaint");
}
