// Whole reports as a person has read and approved them; pages as the words that are read on them.
// GENTLEST_UPDATE_GOLDEN=1 writes the files anew; read the difference before you keep it.
#include "cli/pages.hpp"

#include <catch2/catch.hpp>

namespace gentlest::test {

namespace {

enum class As { text, words, screen };  // a screen: 80 columns

struct Golden {
  const char* file;
  std::vector<std::string> args;  ///< LOG stands for the log below
  As as = As::text;
};

// Three tests: nothing happened, the varnish went, the original was harmed on the dark background.
const char* const log_with_harm =
    "{\"gentlest_log\":1}\n"
    "{\"test\":1,\"date\":\"2026-03-14\",\"who\":\"AB\",\"mixture\":\"isooctane 100\",\"passage\":\"white cloth\","
    "\"x_cm\":3.5,\"y_cm\":41,\"rolls\":4,\"seconds\":20,\"removal\":\"no effect\",\"original\":\"nothing seen\"}\n"
    "{\"test\":2,\"date\":\"2026-03-14\",\"who\":\"AB\",\"mixture\":\"isooctane 80, acetone 20\","
    "\"passage\":\"white cloth\",\"removal\":\"partly removed\",\"original\":\"nothing seen\"}\n"
    "{\"test\":3,\"date\":\"2026-03-15\",\"who\":\"AB\",\"mixture\":\"isooctane 60, acetone 40\","
    "\"passage\":\"dark background\",\"x_cm\":30,\"y_cm\":12,\"removal\":\"fully removed\",\"original\":\"softened\","
    "\"remark\":\"brown on the swab\"}\n";

const std::vector<Golden>& all_golden() {
  static const std::vector<Golden> all = {
      {"ladder_demo.txt", {"ladder", "demo"}, As::screen},
      {"ladder_demo_no_window.txt", {"ladder", "demo", "--risk-limit", "0.06"}, As::screen},
      {"vial_demo.txt", {"vial", "demo", "ethanol 30, isooctane 70"}, As::screen},
      {"compare_demo.txt", {"compare", "demo"}, As::screen},
      {"ladder_demo_full.txt", {"ladder", "demo", "--full"}},
      {"ladder_demo_best_of_shelf.txt", {"ladder", "demo", "--full", "--lines", "0"}},
      {"ladder_demo_no_window_full.txt", {"ladder", "demo", "--full", "--risk-limit", "0.06"}},
      {"mixture_demo.txt", {"mixture", "demo", "ethanol 30, isooctane 70"}},
      {"help.txt", {"help"}},
      {"vial_demo_full.txt", {"vial", "demo", "--full", "ethanol 30, isooctane 70"}},
      {"next_demo_harm.txt", {"next", "demo", "LOG"}},
      {"next_demo_harm.csv", {"next", "demo", "LOG", "--format", "csv"}},
      {"next_demo_no_window.txt", {"next", "demo", "LOG", "--risk-limit", "0.06"}},
      {"report_demo_harm.csv", {"report", "demo", "LOG", "--format", "csv"}},
      {"report_demo_harm.txt", {"report", "demo", "LOG"}, As::words},
      {"report_demo_no_window.txt", {"report", "demo", "LOG", "--risk-limit", "0.06"}, As::words},
      {"sheet_demo.txt", {"sheet", "demo", "--log", "LOG"}, As::words},
      {"sheet_demo_no_window.txt", {"sheet", "demo", "--risk-limit", "0.06"}, As::words},
      {"labels_demo.txt", {"labels", "demo", "--date", "2026-03-14", "--maker", "AB"}, As::words},
      {"labels_demo_no_window.txt", {"labels", "demo", "--risk-limit", "0.06"}, As::words}};
  return all;
}

// The log has a new name in every run.
std::string with_plain_log_name(std::string text, const std::string& path) {
  for (std::size_t at = text.find(path); at != std::string::npos; at = text.find(path))
    text.replace(at, path.size(), "LOG");
  return text;
}

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

TEST_CASE("golden: reports are as approved") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  write_file(log, log_with_harm);
  const char* update = std::getenv("GENTLEST_UPDATE_GOLDEN");
  for (const Golden& golden : all_golden()) {
    const std::string path = std::string(GENTLEST_SOURCE_DIR) + "/tests/golden/" + golden.file;
    std::vector<std::string> args = golden.args;
    std::replace(args.begin(), args.end(), std::string("LOG"), log);
    const std::string out = golden.as == As::screen ? call(args, {}, page_of(80)).out : call(args).out;
    const std::string seen = with_plain_log_name(golden.as == As::words ? page_words(out) : out, log);
    if (update && std::string(update) == "1") write_file(path, seen);
    INFO(path << "\n" << first_difference(read_file(path), seen));
    CHECK_FALSE(seen.empty());
    CHECK(read_file(path) == seen);
  }
}

}  // namespace gentlest::test
