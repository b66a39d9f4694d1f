// The table of limits, and that whatever else names a limit says the same.
#include "gentlest/job/limits.hpp"

#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>

using namespace gentlest;

namespace {

struct Row {
  std::string range, standard, option;
};

// Of the table in docs/data-format.md, by key.
std::map<std::string, Row> rows_of_the_document() {
  std::ifstream in(std::string(GENTLEST_SOURCE_DIR) + "/docs/data-format.md");
  const std::regex row("^\\| `(\\w+)` \\| ([^|]*) \\| ([^|]*) \\| (?:`--([a-z-]+)` )?\\| .*\\|$");
  std::map<std::string, Row> rows;
  bool inside = false;
  std::smatch cell;
  for (std::string line; std::getline(in, line);) {
    if (line.rfind("| limit |", 0) == 0) inside = true;
    if (line.empty()) inside = false;
    if (inside && std::regex_match(line, cell, row)) rows[cell[1]] = {cell[2], cell[3], cell[4]};
  }
  return rows;
}

std::string default_words(const Limit& limit) {
  return std::visit(
      [](auto member) -> std::string {
        using Value = std::decay_t<decltype(Limits().*member)>;
        if constexpr (std::is_same_v<Value, bool>)
          return Limits().*member ? "true" : "false";
        else if constexpr (std::is_same_v<Value, std::optional<double>>)
          return "any";
        else if constexpr (std::is_same_v<Value, std::optional<int>>)
          return std::to_string(usual_risk_grade) + ", or by the material";
        else if constexpr (std::is_arithmetic_v<Value>) {
          std::ostringstream text;
          text << Limits().*member;
          return text.str();
        } else
          return "none";
      },
      limit.member);
}

std::string range_in_the_document(const Limit& limit) {
  if (std::holds_alternative<bool Limits::*>(limit.member)) return "true or false";
  if (!has_range(limit)) return "a list";
  const std::string unit = limit.unit;
  return range_words(limit) + (unit.empty() ? "" : (limit.ends == Ends::divide_100 ? ", " : " ") + unit);
}

// "  # vial_mL: 10     # 0.1 to 10000; what one vial holds", by key: what stands behind the colon.
std::map<std::string, std::string> lines_of_the_template() {
  std::istringstream in(job_template());
  std::map<std::string, std::string> lines;
  const std::regex line_of_key("^  (?:# )?(\\w+): +(.*)$");
  bool inside = false;
  std::smatch found;
  for (std::string line; std::getline(in, line);) {
    if (line == "limits:") inside = true;
    if (inside && std::regex_match(line, found, line_of_key)) lines[found[1]] = found[2];
  }
  return lines;
}

}  // namespace

TEST_CASE("the document names every limit with its range, its default and its option", "[limits]") {
  const std::map<std::string, Row> rows = rows_of_the_document();
  CHECK(rows.size() == all_limits().size());
  for (const Limit& limit : all_limits()) {
    INFO(limit.key);
    REQUIRE(rows.count(limit.key) == 1);
    CHECK(rows.at(limit.key).range == range_in_the_document(limit));
    CHECK(rows.at(limit.key).standard == default_words(limit));
    CHECK(rows.at(limit.key).option == limit.option);
  }
}

TEST_CASE("the template names every limit with its range and its default", "[limits]") {
  const std::map<std::string, std::string> lines = lines_of_the_template();
  CHECK(lines.size() == all_limits().size());
  for (const Limit& limit : all_limits()) {
    INFO(limit.key);
    REQUIRE(lines.count(limit.key) == 1);
    const std::string& line = lines.at(limit.key);
    INFO(line);
    if (has_range(limit)) CHECK(line.find("# " + range_words(limit)) != std::string::npos);
    const std::string standard = default_words(limit);
    if (standard != "none" && standard != "any")
      CHECK(line.substr(0, line.find(' ')) == standard.substr(0, standard.find(',')));
  }
}

TEST_CASE("a limit just outside its range is refused with that range, one at its end is not", "[limits]") {
  for (const Limit& limit : all_limits()) {
    if (!has_range(limit)) continue;
    INFO(limit.key);
    const double step = is_whole(limit) ? 1 : 1e-6;
    CHECK_FALSE(is_within(limit, limit.smallest - step));
    CHECK_FALSE(is_within(limit, limit.largest + step));
    CHECK(is_within(limit, limit.smallest) == (limit.ends != Ends::excluded));
    CHECK(is_within(limit, limit.largest) == (limit.ends != Ends::excluded));
    for (const double value : {limit.smallest - step, limit.largest + step}) {
      Limits limits;
      put_number(limit, value, limits);
      CHECK(number_of(limit, limits) == value);
    }
  }
}

TEST_CASE("keys and options of limits are their own", "[limits]") {
  std::set<std::string> keys, options;
  for (const Limit& limit : all_limits()) {
    CHECK(keys.insert(limit.key).second);
    if (*limit.option) CHECK(options.insert(limit.option).second);
    CHECK(find_limit(limit.key) == &limit);
  }
  CHECK(options.size() == 8);
  CHECK(find_limit("part") == nullptr);
}
