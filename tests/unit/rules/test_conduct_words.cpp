// What the rules made of the tests, in words: each rule, end, purpose and kind has its own, and harm is named whole.
#include "demo_plan.hpp"
#include "shipped.hpp"

#include "gentlest/answers/progress.hpp"
#include "gentlest/liquids/notation.hpp"
#include "io/job_file.hpp"
#include "report/form/form.hpp"
#include "report/rules/conduct_words.hpp"
#include "report/screen/progress_report.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace gentlest;
using namespace gentlest::test;

namespace {

Reading swab(int test, std::size_t rung, bool at_edge, RemovalReading removal, OriginalReading original) {
  Reading reading;
  reading.test = test;
  reading.date = "2026-03-14";
  reading.mixture = to_text(ladder_rungs(demo_plan())[rung - 1].mixture);
  reading.at_edge = at_edge;
  if (!at_edge) reading.passage = "white cloth";
  reading.removal = removal;
  reading.original = original;
  return reading;
}

std::string screen_of(const std::vector<Reading>& readings, bool full = false) {
  const Progress progress = follow_readings(demo_plan(), shipped_catalogue(), readings);
  return progress_report(demo_plan(), progress, std::nullopt, full, Form::text, {}, {});
}

// As one line: a table breaks its cells over several, so words that stand in one are looked for in bullets.
std::string unwrapped(const std::string& text) {
  std::string line;
  for (const char c : text)
    if (c != '\n' && c != ' ')
      line += c;
    else if (!line.empty() && line.back() != ' ')
      line += ' ';
  return line;
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("each rule is told by its number, each in its own words") {
  std::set<std::string> all;
  for (int number = 1; number <= 17; ++number) {
    const std::string words = rule_words(static_cast<Rule>(number));
    CHECK(words.rfind("rule " + std::to_string(number) + ": ", 0) == 0);
    all.insert(words.substr(words.find(':')));
  }
  CHECK(all.size() == 17);
}

TEST_CASE("rule 12: every harm stands first, with where, what and when, however much was read since") {
  std::vector<Reading> readings = {swab(1, 1, true, RemovalReading::no_effect, OriginalReading::nothing_seen),
                                   swab(2, 2, true, RemovalReading::softened, OriginalReading::recovers)};
  for (int test = 3; test < 12; ++test)
    readings.push_back(swab(test, 1, false, RemovalReading::no_effect, OriginalReading::nothing_seen));
  const std::string text = screen_of(readings);
  CHECK(text.rfind("HARM on oil paint (edge): test 2 of 2026-03-14, " + readings[1].mixture, 0) == 0);
  CHECK(holds(unwrapped(text).substr(0, 300), "change that recovers"));
  CHECK(holds(text, "closed by test 2"));
  CHECK(holds(text, "rule 6"));
}

TEST_CASE("rules 8 and 17: nobody is told that a harm may be a mistake, nor to repeat it") {
  std::vector<Reading> readings = {swab(1, 1, true, RemovalReading::no_effect, OriginalReading::colour_on_swab)};
  for (const bool full : {false, true}) {
    const std::string text = screen_of(readings, full);
    for (const char* word : {"mistake", "repeat", "look at that spot again", "hardly to be expected"}) {
      INFO(word);
      CHECK_FALSE(holds(text, word));
    }
    CHECK(holds(unwrapped(text), "not noted of what, so it counts as original"));
  }
}

TEST_CASE("after the end no mixture is named as the next, and the last line of the work is to talk it over") {
  const std::vector<Reading> readings = {swab(1, 1, true, RemovalReading::no_effect, OriginalReading::recovers),
                                         swab(2, 3, true, RemovalReading::no_effect, OriginalReading::recovers)};
  const std::string text = screen_of(readings);
  CHECK(holds(text, "stop, look, talk it over"));
  CHECK(holds(text, "rule 11"));
  const std::string next = text.substr(text.find("\nNext"));
  for (const JudgedMixture& rung : ladder_rungs(demo_plan())) CHECK_FALSE(holds(next, to_text(rung.mixture)));
}

TEST_CASE("one screen is enough: at most forty lines while tests go on") {
  std::vector<Reading> readings;
  for (int test = 1; test <= 8; ++test)
    readings.push_back(swab(test, static_cast<std::size_t>((test + 1) / 2), test % 2 == 1, RemovalReading::no_effect,
                            OriginalReading::nothing_seen));
  const std::string text = screen_of(readings);
  CHECK(std::count(text.begin(), text.end(), '\n') <= 40);
  CHECK(holds(screen_of(readings, true), "of 8000 particles effective"));
  CHECK_FALSE(holds(text, "particles"));
}
