// Every command in every form: JSON parses, CSV is rectangular, text keeps within the page.
#include "csv_cells.hpp"
#include "program.hpp"
#include "scale.hpp"

#include "cli/commands.hpp"
#include "report/form/table.hpp"

#include <array>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <regex>

namespace gentlest::test {

namespace {

const std::string score_sets = std::string(GENTLEST_SOURCE_DIR) + "/tests/published/score_sets";

// One call of every command that reads; `new` and `calibrate` have tests of their own.
const std::vector<std::vector<std::string>>& reading_calls() {
  static const std::vector<std::vector<std::string>> calls = {
      {"ladder", "demo"},
      {"ladder", "demo", "--risk-limit", "0.01"},
      {"mixture", "demo", "ethanol 30, isooctane 70"},
      {"list", "solvents"},
      {"list", "materials"},
      {"list", "sources"},
      {"list", "families"},
      {"show", "ethanol", "toluene", "dammar_aged", "oil_paint_old"},
      {"check", "demo"},
      {"check", "/nowhere"},
      {"help"},
      {"help", "ladder"},
      {"version"},
      {"compare", "demo"},
      {"compare", "demo", "--risk-limit", "0.06"},
      {"ladder", "demo", "--finer", "2:4"},
      {"ladder", "demo", "--lines", "0"},
      {"vial", "demo", "ethanol 30, isooctane 70"},
  };
  return calls;
}

std::vector<std::string> with(std::vector<std::string> args, const std::vector<std::string>& more) {
  args.insert(args.end(), more.begin(), more.end());
  return args;
}

void check_width(const std::string& text, std::size_t most) {
  for (const std::string& line : lines_of(text)) {
    INFO(line);
    CHECK(display_width(line) <= most);
  }
}

void check_rectangular(const std::string& csv) {
  const std::vector<std::vector<std::string>> rows = csv_rows(csv);
  REQUIRE_FALSE(rows.empty());
  for (const auto& row : rows) CHECK(row.size() == rows.front().size());
  REQUIRE(rows.front().size() >= 3);
  CHECK(rows.front()[rows.front().size() - 2] == "program");
  CHECK(rows.front().back() == "catalogue");
}

}  // namespace

TEST_CASE("every command writes JSON with its format and editions") {
  for (const auto& args : reading_calls()) {
    INFO(args[0] << ' ' << (args.size() > 1 ? args[1] : ""));
    const auto json = nlohmann::json::parse(call(with(args, {"--format", "json"})).out);
    CHECK(json.at("format") == 1);
    CHECK(json.at("program").get<std::string>() == program_version());
    CHECK_FALSE(json.at("catalogue").get<std::string>().empty());
    CHECK_FALSE(json.at("kind").get<std::string>().empty());
  }
}

TEST_CASE("every command writes rectangular CSV") {
  for (const auto& args : reading_calls()) {
    INFO(args[0] << ' ' << (args.size() > 1 ? args[1] : ""));
    const std::string csv = call(with(args, {"--format", "csv"})).out;
    check_rectangular(csv);
    CHECK(csv.substr(csv.size() - 2) == "\r\n");
  }
}

TEST_CASE("no text is wider than the page, and none steers the terminal") {
  for (const auto& args : reading_calls()) {
    INFO(args[0] << ' ' << (args.size() > 1 ? args[1] : ""));
    const std::string text = call(args).out;
    CHECK_FALSE(text.empty());
    CHECK_FALSE(holds(text, "\033"));
    const bool has_own_width = args[0] == "calibrate" || args[0] == "condition" || args[0] == "help";
    if (has_own_width) check_width(text, test_width);
    if (has_own_width) continue;
    const std::array<std::size_t, 3> widths = {narrowest_width, usual_width, widest_width};
    const auto tried = static_cast<std::size_t>(test::cases(static_cast<int>(widths.size())));
    for (std::size_t i = 0; i < tried; ++i) check_width(call(args, {}, page_of(widths[i])).out, widths[i]);
  }
}

TEST_CASE("every record of the catalogue fits the page and every form") {
  std::vector<std::string> args = {"show"};
  std::size_t records = 0;
  const std::size_t each = 1000 / static_cast<std::size_t>(test::cases(1000));  // under sanitizers one in ten
  for (const char* list : {"solvents", "materials"}) {
    const auto json = nlohmann::json::parse(call({"list", list, "--format", "json"}).out);
    for (const auto& record : json.at(list))
      if (records++ % each == 0) args.push_back(record.at("id").get<std::string>());
  }
  REQUIRE(records > 200);
  const Result text = call(args);
  CHECK(text.code == 0);
  check_width(text.out, test_width);
  // A card works out the chance of all that was seen with its liquid: as rows, and as JSON, one in four each.
  std::vector<std::string> as_rows = {"show"}, as_json = {"show"};
  for (std::size_t i = 1; i < args.size(); ++i) {
    if (i % 4 == 0) as_rows.push_back(args[i]);
    if (i % 4 == 2) as_json.push_back(args[i]);
  }
  check_rectangular(call(with(as_rows, {"--format", "csv"})).out);
  const Result cards = call(with(as_json, {"--format", "json"}));
  CHECK(nlohmann::json::parse(cards.out).at("cards").size() >= as_json.size() - 1);
}

TEST_CASE("calibrate knows all three forms") {
  const auto json = nlohmann::json::parse(call({"calibrate", score_sets, "--format", "json"}).out);
  CHECK(json.at("response_stages").size() == 5);
  if (test::cases(3) < 3) return;  // each form is a fit anew: under sanitizers one is enough
  const Result csv = call({"calibrate", score_sets, "--format", "csv"});
  CHECK(csv.code == 0);
  check_rectangular(csv.out);
  CHECK(json.at("sets").size() + 1 == csv_rows(csv.out).size());
  const Result text = call({"calibrate", score_sets});
  check_width(text.out, test_width);
}

TEST_CASE("a page follows the terminal, then COLUMNS, between 60 and 140 columns") {
  CHECK(width_of_page(0, nullptr) == 80);
  CHECK(width_of_page(0, "") == 80);
  CHECK(width_of_page(0, "wide") == 80);
  CHECK(width_of_page(0, "-100") == 80);
  CHECK(width_of_page(0, "0") == 80);
  CHECK(width_of_page(0, "99999999999999999999") == 80);
  CHECK(width_of_page(0, "112") == 112);
  CHECK(width_of_page(72, "112") == 72);
  CHECK(width_of_page(20, nullptr) == 60);
  CHECK(width_of_page(500, nullptr) == 140);
  // A file is not as wide as the terminal that happens to be open.
  const Folder folder;
  const std::string file = folder.file("ladder.txt");
  call({"ladder", "demo", "--output", file}, {}, page_of(140));
  check_width(read_file(file), 80);
}

TEST_CASE("help fits a narrow terminal and names every option of the command") {
  check_width(call({"help"}).out, 80);
  for (const Command& command : all_commands()) {
    INFO(command.name);
    const std::string help = call({"help", command.name}).out;
    check_width(help, 80);
    for (const Option& option : all_options())
      CHECK(holds(help, std::string("--") + option.name) == offers_option(command, option.name));
    if (std::string(command.name) != "help") {
      CHECK(call({command.name, "--help"}).out == help);
      CHECK(call({"-h", command.name}).out == help);
    }
    CHECK(holds(call({"help"}).out, command.summary));
  }
}

TEST_CASE("a bare call says what the program is and how to begin") {
  const Result bare = call({});
  CHECK(bare.code == 0);
  CHECK(bare.out == call({"help"}).out);
  CHECK(holds(bare.out, "gentlest ladder demo"));
  for (const char* code : {"  0 ", "  1 ", "  2 ", "  3 ", "  130 "}) CHECK(holds(bare.out, code));
}

TEST_CASE("bold is the only ornament and changes no word") {
  for (const auto& args : {reading_calls()[0], reading_calls()[2], reading_calls()[3], reading_calls()[7]}) {
    const std::string bold = call(args, {}, page_of(test_width, true)).out;
    CHECK(holds(bold, "\033[1m"));
    CHECK(std::regex_replace(bold, std::regex("\033\\[[01]m"), "") == call(args).out);
  }
}

TEST_CASE("a title with marks that turn the line, wide letters and quotes does no harm") {
  const std::string job = call({"new", "-"}).out;
  const std::string title = "title: \"\\u202E\xE9\x9D\x99\xE7\x89\xA9, \\\"=1+1\\\" " + std::string(300, 'w') + "\"";
  const std::string hostile = std::regex_replace(job, std::regex("title: .*"), title);
  REQUIRE(hostile != job);
  const Result text = call({"ladder", "-"}, hostile);
  INFO(text.err);
  REQUIRE(text.code <= 1);
  check_width(text.out, test_width);
  CHECK_FALSE(holds(text.out, "\033"));
  CHECK_FALSE(holds(text.out, "\xE2\x80\xAE"));
  check_rectangular(call({"ladder", "-", "--format", "csv"}, hostile).out);
  CHECK_NOTHROW(nlohmann::json::parse(call({"ladder", "-", "--format", "json"}, hostile).out));
}

}  // namespace gentlest::test
