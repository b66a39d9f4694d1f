// The card and the log ask for the same things: the table of fields and the words of each are the measure.
#include "demo_plan.hpp"
#include "shipped.hpp"

#include "gentlest/learning/reading_fields.hpp"
#include "gentlest/noted/words.hpp"
#include "io/job_file.hpp"
#include "report/paper/swab_card.hpp"
#include "report/phrases/reading_titles.hpp"

#include <catch2/catch.hpp>

#include <regex>
#include <set>
#include <sstream>

using namespace gentlest;
using namespace gentlest::test;

namespace {

std::string card_text() {
  return make_card({3, "rung 1: isooctane 10 mL", {}}, demo_plan()).html;
}

// Keys of every cell, and the words to tick in those that hold `key`.
std::set<std::string> keys_on(const std::string& card) {
  static const std::regex cell("data-field=\"([^\"]*)\"");
  std::set<std::string> keys;
  for (std::sregex_iterator at(card.begin(), card.end(), cell), end; at != end; ++at) {
    std::istringstream words((*at)[1].str());
    for (std::string key; words >> key;) keys.insert(key);
  }
  return keys;
}

std::vector<std::string> ticks_of(const std::string& card, const std::string& key) {
  static const std::regex cell("data-field=\"([^\"]*)\"");
  static const std::regex tick_mark("<span class=\"tick\">([^<]*)</span>");
  std::vector<std::string> found;
  for (std::sregex_iterator at(card.begin(), card.end(), cell), end; at != end; ++at) {
    if (!std::regex_search((*at)[1].str(), std::regex("(^| )" + key + "( |$)"))) continue;
    const auto from = static_cast<std::size_t>(at->position());
    const std::string inner = card.substr(from, card.find("</div>", from) - from);
    for (std::sregex_iterator word(inner.begin(), inner.end(), tick_mark); word != end; ++word)
      found.push_back((*word)[1].str());
  }
  return found;
}

}  // namespace

TEST_CASE("a card has a place for every field of the log, and for none that the log has not") {
  std::set<std::string> expected;
  for (const ReadingField& field : reading_fields()) expected.insert(std::string(field.key));
  expected.erase("correction");  // written later, at the log
  expected.erase("withdrawn");
  CHECK(keys_on(card_text()) == expected);
}

TEST_CASE("the boxes of a card are the words of the log, each once and in its order") {
  const std::string card = card_text();
  int fields = 0;
  for (const ReadingField& field : reading_fields()) {
    if (field.words.empty()) continue;
    INFO(field.key);
    ++fields;
    CHECK(ticks_of(card, std::string(field.key)) == std::vector<std::string>(field.words.begin(), field.words.end()));
  }
  CHECK(fields == 5);
}

TEST_CASE("every sign that is ticked on a card is a word that `record` understands") {
  const std::vector<std::string> ticked = ticks_of(card_text(), "signs");
  CHECK(ticked.size() == removal_signs().size() + original_signs().size());
  for (const std::string& sign : ticked) {
    INFO(sign);
    CHECK(find_trade_word(sign) != nullptr);
  }
  for (const std::string& sign : ticks_of(card_text(), "after_drying")) {
    INFO(sign);
    CHECK(find_trade_word(sign) != nullptr);
  }
  for (const std::string& time : ticks_of(card_text(), "looked_after")) {
    INFO(time);
    CHECK(look_time_from(time) == time);
  }
}

TEST_CASE("every field has a title of its own") {
  std::set<std::string> titles;
  for (const ReadingField& field : reading_fields()) titles.insert(title_of_field(field.key));
  CHECK(titles.size() == reading_fields().size());
  CHECK(titles.count("") == 0);
}

TEST_CASE("a longer head makes a higher card") {
  const double low = make_card({1, "rung 1: isooctane 10 mL", {}}, demo_plan()).height_mm;
  std::string head;
  for (int i = 0; i < 12; ++i) head += "a liquid with a long name 1.5 mL + ";
  CHECK(make_card({1, head, {}}, demo_plan()).height_mm > low + 8);
  CHECK(make_card({1, "rung 1: isooctane 10 mL", head}, demo_plan()).height_mm > low + 8);
}
