// The manual page and the shell's completion: every command and option, read by the tools that people read them with.
#include "program.hpp"

#include "cli/commands.hpp"

#include <catch2/catch.hpp>

#include <fstream>

namespace gentlest::test {

namespace {

// What bash offers for a line of words, the last of them half typed.
std::string offered(const std::string& completion, const std::string& words, int at) {
  return shell("bash -c '. " + completion + "; COMP_WORDS=(gentlest " + words + "); COMP_CWORD=" + std::to_string(at) +
               "; _gentlest; echo \"${COMPREPLY[@]}\"'")
      .out;
}

}  // namespace

TEST_CASE("the manual page names every command with its words and every option") {
  const Result answer = call({"manual"});
  REQUIRE(answer.code == 0);
  for (const Command& command : all_commands())
    CHECK(holds(answer.out, std::string(".SS \"") + command.name + (*command.words ? " " : "\"")));
  CHECK(holds(answer.out, "\\-\\-risk\\-limit\\fR \\fICHANCE"));
  CHECK(holds(answer.out, "gentlest ladder demo"));
}

TEST_CASE("troff reads the manual page without a complaint") {
  const Folder folder;
  REQUIRE(call({"manual", "--output", folder.file("gentlest.1")}).code == 0);
  CHECK(shell("groff -man -Tutf8 -ww " + folder.file("gentlest.1") + " 2>&1 >/dev/null").out.empty());
  const Result page = shell("groff -man -Tutf8 " + folder.file("gentlest.1") + " | sed 's/\\x1b\\[[0-9;]*m//g'");
  CHECK(holds(page.out, "gentlest ladder easel.yaml --risk-limit 0.05 --bottles 2"));
}

TEST_CASE("bash completes commands, the options of a command and files") {
  const Folder folder;
  const std::string completion = folder.file("completion");
  REQUIRE(call({"completion", "--output", completion}).code == 0);
  CHECK(offered(completion, "lad", 1) == "ladder\n");
  CHECK(offered(completion, "labels --cop", 2) == "--copies\n");
  CHECK(offered(completion, "ladder --cop", 2) == "\n");
  CHECK(offered(completion, "ladder --outp", 2) == "--output\n");
  write_file(folder.file("easel.yaml"), "");
  CHECK(offered(completion, "ladder " + folder.file("eas"), 2) == folder.file("easel.yaml") + "\n");
}

TEST_CASE("the citation names the version of the program") {
  std::ifstream citation(std::string(GENTLEST_SOURCE_DIR) + "/CITATION.cff");
  std::string line;
  while (std::getline(citation, line) && line.rfind("version:", 0) != 0) {
  }
  CHECK(line == "version: " + program_version());
}

}  // namespace gentlest::test
