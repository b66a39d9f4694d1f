// `gentlest page`: what the program hands on. What the page does is tried in real browsers by tests/page.
#include "program.hpp"

#include "io/own_page.hpp"

#include <catch2/catch.hpp>

namespace gentlest::test {

TEST_CASE("the program hands on the page it was built with, or says that it has none") {
  const Folder folder;
  const std::string file = folder.file("gentlest.html");
  const Result written = call({"page", "--output", file});
  if (own_page().empty()) {
    CHECK(written.code == 2);
    CHECK(holds(written.err, "built without the page"));
    CHECK(holds(written.err, "./bootstrap page"));
    CHECK_FALSE(std::filesystem::exists(file));
    return;
  }
  CHECK(written.code == 0);
  const std::string page = read_file(file);
  CHECK(page == own_page());
  CHECK(page.rfind("<!doctype html>", 0) == 0);
  CHECK(page.size() > 1'000'000);
  CHECK(page.size() <= 1'600'000);
  CHECK(holds(page, "Content-Security-Policy\" content=\"default-src 'none';"));
  CHECK(page.substr(page.size() - 8) == "</html>\n");
}

TEST_CASE("the page is not poured onto a terminal") {
  Surroundings terminal;
  terminal.to_terminal = true;
  for (const std::vector<std::string>& words : {std::vector<std::string>{"page"}, {"page", "--output", "-"}}) {
    const Result refused = call(words, {}, terminal);
    CHECK(refused.code == 2);
    CHECK(refused.out.empty());
    CHECK(holds(refused.err, "--output gentlest.html"));
  }
}

}  // namespace gentlest::test
