// Whole reports as a person has read and approved them. GENTLEST_UPDATE_GOLDEN=1 writes the files anew; read the
// difference before you keep it.
#include "cli/program.hpp"

#include <catch2/catch.hpp>

namespace gentlest::test {

namespace {

struct Golden {
  const char* file;
  std::vector<std::string> args;
};

std::string first_difference(const std::string& expected, const std::string& seen) {
  const std::vector<std::string> a = lines_of(expected);
  const std::vector<std::string> b = lines_of(seen);
  for (std::size_t i = 0; i < std::max(a.size(), b.size()); ++i) {
    const std::string left = i < a.size() ? a[i] : "(end)";
    const std::string right = i < b.size() ? b[i] : "(end)";
    if (left != right) return "line " + std::to_string(i + 1) + "\nexpected: " + left + "\nseen:     " + right;
  }
  return {};
}

}  // namespace

TEST_CASE("reports are as approved") {
  const std::vector<Golden> all = {{"ladder_demo.txt", {"ladder", "demo"}},
                                   {"ladder_demo_no_window.txt", {"ladder", "demo", "--risk-limit", "0.06"}},
                                   {"mixture_demo.txt", {"mixture", "demo", "ethanol 30, isooctane 70"}},
                                   {"help.txt", {"help"}}};
  const char* update = std::getenv("GENTLEST_UPDATE_GOLDEN");
  for (const Golden& golden : all) {
    const std::string path = std::string(GENTLEST_SOURCE_DIR) + "/tests/golden/" + golden.file;
    const std::string seen = call(golden.args).out;
    if (update && std::string(update) == "1") write_file(path, seen);
    INFO(path << "\n" << first_difference(read_file(path), seen));
    CHECK(read_file(path) == seen);
  }
}

}  // namespace gentlest::test
