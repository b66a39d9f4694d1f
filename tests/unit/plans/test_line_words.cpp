#include "report/plans/line_words.hpp"

#include "io/job_file.hpp"

#include "shipped.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace gentlest;
using gentlest::test::shipped_catalogue;

namespace {

Liquid bottle(const std::string& id) {
  return make_liquid(*shipped_catalogue().find_solvent(id), "", shipped_catalogue());
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("a stock of two liquids is told in the smallest parts") {
  LadderLine line;
  CHECK(stock_words(line).empty());
  line.active = Mixture({{bottle("acetone"), 1}});
  CHECK(stock_words(line) == "acetone");
  line.active = Mixture({{bottle("acetone"), 0.5}, {bottle("isopropanol"), 0.5}});
  CHECK(stock_words(line) == "a stock of 1 part acetone + 1 part isopropanol");
  line.active = Mixture({{bottle("acetone"), 0.25}, {bottle("isopropanol"), 0.75}});
  CHECK(stock_words(line) == "a stock of 3 parts isopropanol + 1 part acetone");
}

TEST_CASE("which line comes first and what it gives up is said, of the others too, and how to see the best of all") {
  Plan plan = make_plan(load_job(demo_job_text(), "demo", shipped_catalogue()), shipped_catalogue());
  REQUIRE(plan.lines.size() > 1);
  plan.lines.front().effect_given_up = 0.123;
  plan.lines.front().risk_given_up = 0.045;
  std::vector<std::string> sentences = ladder_line_sentences(plan);
  REQUIRE(sentences.size() == 2);
  CHECK(holds(sentences[0], "isooctane with acetone (ketone), 15 % more of it from rung to rung"));
  CHECK(holds(sentences[0], "comes first because"));
  CHECK(holds(sentences[1], "12.3 points of effect on average and 4.5 points of risk at the first rung that works"));
  plan.lines.front().reason = LineReason::third_bottle;
  CHECK(holds(ladder_line_sentences(plan)[0], "more than 5 points"));
  CHECK(holds(line_sentence(plan, 2), "Line 2: "));
  CHECK(holds(line_sentence(plan, 2), "(" + plan.lines[1].family + ")"));
  CHECK(holds(optimum_sentence(plan), "--lines 0"));
  plan.lines.front().active.reset();
  CHECK(holds(ladder_line_sentences(plan)[0], "cannot be topped up"));
  CHECK(optimum_sentence(plan).empty());
  CHECK(ladder_line_sentences(plan).size() == 1);  // a line's rungs move away from nothing
  std::reverse(plan.lines.front().rungs.begin(), plan.lines.front().rungs.end());
  REQUIRE(ladder_line_sentences(plan).size() == 2);
  CHECK(holds(ladder_line_sentences(plan)[1], "moves away from \"varnish\", \"oil paint\": "));
  plan.job.limits.lines = 0;
  CHECK(ladder_line_sentences(plan).empty());
  std::set<std::string> words;
  for (int reason = 0; reason <= static_cast<int>(LineReason::third_bottle); ++reason)
    CHECK(words.insert(reason_word(static_cast<LineReason>(reason))).second);
}
