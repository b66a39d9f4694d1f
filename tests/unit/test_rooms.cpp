// The house of docs/architecture.md, enforced: every file stands in a room, and includes only from its own room and
// from those that the table there names beside it.
#include "near.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>

namespace {

namespace fs = std::filesystem;
using Rooms = std::set<std::string>;

const fs::path root = GENTLEST_SOURCE_DIR;

// Room -> what it may use besides itself; "core" and "report" stand for all their rooms.
std::map<std::string, Rooms> rooms_of_the_house() {
  std::ifstream in(root / "docs/architecture.md");
  const std::regex row("^\\| (\\w+) \\|.*\\| ([\\w ]*)\\|$");
  std::map<std::string, Rooms> rooms;
  bool inside = false;
  for (std::string line; std::getline(in, line);) {
    if (line == "<!-- rooms: begin -->") inside = true;
    if (line == "<!-- rooms: end -->") inside = false;
    std::smatch cells;
    if (!inside || !std::regex_match(line, cells, row) || cells[1] == "room") continue;
    std::istringstream may_use(cells[2]);
    Rooms& allowed = rooms[cells[1]];
    for (std::string room; may_use >> room;) allowed.insert(room);
  }
  return rooms;
}

// "src/core/plan/plan.cpp", "include/gentlest/plan/plan.hpp" and "gentlest/plan/plan.hpp" all lie in "plan" of "core".
struct Place {
  std::string wing, room;
};
Place place_of(const std::string& path) {
  static const std::regex header("gentlest/(\\w+)/\\w+\\.hpp$");
  static const std::regex in_a_wing("(core|report)/(\\w+)/\\w+\\.[ch]pp$");
  static const std::regex undivided("(io|cli|page|embed)/\\w+\\.[ch]pp$");
  std::smatch found;
  if (std::regex_search(path, found, header)) return {"core", found[1]};
  if (std::regex_search(path, found, in_a_wing)) return {found[1], found[2]};
  if (std::regex_search(path, found, undivided)) return {found[1], found[1]};
  return {"", path};
}

std::set<std::string> includes_of(const fs::path& file, const std::regex& pattern) {
  std::ifstream in(file);
  std::set<std::string> found;
  std::smatch match;
  for (std::string line; std::getline(in, line);)
    if (std::regex_search(line, match, pattern)) found.insert(match[1]);
  return found;
}

std::set<fs::path> sources_in(const fs::path& folder) {
  std::set<fs::path> files;
  for (const auto& entry : fs::recursive_directory_iterator(folder))
    if (entry.path().extension() == ".cpp" || entry.path().extension() == ".hpp") files.insert(entry.path());
  return files;
}

std::set<fs::path> sources_of_the_house() {
  std::set<fs::path> files = sources_in(root / "src");
  files.merge(sources_in(root / "include"));
  return files;
}

std::size_t lines_in(const fs::path& file) {
  std::ifstream in(file);
  std::size_t lines = 0;
  for (std::string line; std::getline(in, line);) ++lines;
  return lines;
}

}  // namespace

TEST_CASE("every file stands in a room and includes only from rooms that the table allows") {
  const std::map<std::string, Rooms> rooms = rooms_of_the_house();
  REQUIRE(rooms.size() > 15);
  const std::regex include("^\\s*#\\s*include\\s*\"([^\"]+)\"");
  std::size_t seen = 0;
  for (const fs::path& file : sources_of_the_house()) {
    const Place here = place_of(fs::relative(file, root).generic_string());
    INFO(file);
    REQUIRE(rooms.count(here.room) == 1);
    const Rooms& allowed = rooms.at(here.room);
    for (const std::string& included : includes_of(file, include)) {
      ++seen;
      INFO("includes " << included);
      const Place there = place_of(included);
      CHECK((there.room == here.room || allowed.count(there.room) == 1 ||
             (there.wing != here.wing && allowed.count(there.wing) == 1)));
    }
  }
  CHECK(seen > 400);  // a pattern that matches nothing would pass everything
}

TEST_CASE("arrows between rooms go down only, and every room of the table is there") {
  const std::map<std::string, Rooms> rooms = rooms_of_the_house();
  for (const auto& [room, allowed] : rooms) {
    INFO(room);
    CHECK((fs::is_directory(root / "src/core" / room) || fs::is_directory(root / "src/report" / room) ||
           fs::is_directory(root / "src" / room)));
    for (const std::string& other : allowed) {
      INFO("may use " << other);
      if (other == "core" || other == "report") continue;
      REQUIRE(rooms.count(other) == 1);
      CHECK(rooms.at(other).count(room) == 0);
      for (const std::string& below : rooms.at(other)) CHECK((below == "core" || allowed.count(below) == 1));
    }
  }
}

TEST_CASE("no room is too large to be known on sight") {
  std::map<std::string, std::size_t> lines;
  for (const fs::path& file : sources_of_the_house())
    if (const Place place = place_of(fs::relative(file, root).generic_string()); place.wing != place.room)
      lines[place.room] += lines_in(file);
  CHECK(lines.size() > 12);
  for (const auto& [room, count] : lines) {
    INFO(room);
    CHECK(count <= 2500);
  }
}

TEST_CASE("the tests of a room stand under its name") {
  const std::map<std::string, Rooms> rooms = rooms_of_the_house();
  std::size_t seen = 0;
  for (const fs::path& file : sources_in(root / "tests/unit")) {
    const std::string folder = file.parent_path().filename().string();
    INFO(file);
    if (file.parent_path() == root / "tests/unit") continue;  // of the whole house
    CHECK((rooms.count(folder) == 1 || folder == "study"));
    ++seen;
  }
  CHECK(seen > 20);
}

TEST_CASE("outside libraries stay where they belong") {
  const std::map<std::string, Rooms> home = {{"yaml-cpp/", {"io"}},
                                             {"boost/program_options", {"cli"}},
                                             {"nlohmann/", {"io", "report", "cli"}},
                                             {"Eigen/", {"core"}}};
  std::size_t seen = 0;
  for (const auto& [library, wings] : home)
    for (const fs::path& file : sources_in(root / "src"))
      if (!includes_of(file, std::regex("#include <(" + library + ")")).empty()) {
        ++seen;
        INFO(file << " includes " << library);
        CHECK(wings.count(place_of(file.generic_string()).wing) == 1);
      }
  CHECK(seen >= 4);
  for (const fs::path& file : sources_in(root / "include")) {
    INFO(file);
    CHECK(includes_of(file, std::regex("#include <((yaml-cpp|boost|nlohmann|Eigen|fmt)/)")).empty());
  }
}

TEST_CASE("threads are started in one place only") {  // others may guard what threads share, but start none
  for (const fs::path& file : sources_in(root / "src"))
    if (!includes_of(file, std::regex("#include <(thread|future|atomic)>")).empty())
      CHECK(file.filename() == "threads.cpp");
}

TEST_CASE("core neither prints nor reads disk, clock or environment") {
  const std::regex impure("#include <(iostream|fstream|filesystem|chrono|ctime|cstdio|thread|random)>");
  for (const fs::path& file : sources_in(root / "src/core")) {
    INFO(file);
    CHECK(includes_of(file, impure).empty());
  }
}

TEST_CASE("no check keeps a hidden relative tolerance beside its margin") {
  // See tests/near.hpp.
  const std::regex lax("\\.margin\\(|\\.epsilon\\(0\\)");
  for (const fs::path& file : sources_in(root / "tests")) {
    if (file.filename() == "test_rooms.cpp") continue;
    std::ifstream in(file);
    int number = 0;
    for (std::string line; std::getline(in, line);) {
      INFO(file << ":" << ++number << ": write near(value, tolerance)");
      CHECK_FALSE(std::regex_search(line, lax));
    }
  }
}

TEST_CASE("every fault of the mutation lists still has its place in the code") {
  std::size_t seen = 0;
  for (const auto& entry : fs::directory_iterator(root / "tests/mutation")) {
    if (entry.path().extension() != ".tsv") continue;
    std::ifstream in(entry.path());
    for (std::string line; std::getline(in, line);) {
      if (line.empty() || line[0] == '#') continue;
      INFO(entry.path().filename() << ": " << line);
      std::istringstream row(line);
      std::string file, from;
      REQUIRE(std::getline(std::getline(row, file, '\t'), from, '\t'));
      std::ifstream source(root / file);
      const std::string code((std::istreambuf_iterator<char>(source)), std::istreambuf_iterator<char>());
      const std::size_t first = code.find(from);
      REQUIRE(first != std::string::npos);
      CHECK(code.find(from, first + 1) == std::string::npos);
      ++seen;
    }
  }
  CHECK(seen > 100);
}

TEST_CASE("a tolerance is what it says") {
  using gentlest::test::near;
  CHECK(1000.0 == near(1000.01, 0.0101));
  CHECK_FALSE(1000.0 == near(1000.01, 0.0099));  // within 1.2e-5 of 1000, which Approx would let pass
  CHECK_FALSE(std::nan("") == near(0, 1e9));
}
