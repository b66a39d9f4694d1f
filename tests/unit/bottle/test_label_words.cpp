#include "report/bottle/label_words.hpp"

#include "shipped_mixtures.hpp"

#include "gentlest/catalogue/statements.hpp"
#include "report/bottle/caution_words.hpp"
#include "report/bottle/statement_words.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace gentlest;
using namespace gentlest::test;

namespace {

std::string because(const MixtureLabel& label, const char* code) {
  for (const LabelStatement& statement : label.statements)
    if (statement.code == code) return because_words(statement.because);
  return "not on the label";
}

MixtureLabel label_from(const char* text) {
  return label_of(mixture_from(text), shipped_catalogue());
}

}  // namespace

TEST_CASE("every statement of the shipped catalogue has plain words", "[hazards]") {
  std::set<std::string> codes;
  for (const Solvent& solvent : shipped_catalogue().solvents())
    if (solvent.hazards) {
      codes.insert(solvent.hazards->statements.begin(), solvent.hazards->statements.end());
      codes.insert(solvent.hazards->supplemental.begin(), solvent.hazards->supplemental.end());
    }
  CHECK(codes.size() > 20);
  for (const std::string& code : codes) {
    INFO(code);
    CHECK_FALSE(statement_words(code).empty());
  }
}

TEST_CASE("what the table of statements holds has words, and nothing else", "[hazards]") {
  std::size_t known = 0;
  for (const char* kind : {"H", "EUH"})
    for (int number = 0; number < 500; ++number)
      for (const char* letters : {"", "i", "D", "d", "F", "f", "FD", "Fd", "Df", "fd", "x"}) {
        std::string code = std::to_string(number);
        code = kind + std::string(3 - std::min<std::size_t>(3, code.size()), '0') + code + letters;
        INFO(code);
        CHECK(statement_words(code).empty() == row_of_statement(code).empty());
        if (*letters == '\0' && !row_of_statement(code).empty()) ++known;
      }
  CHECK(known == 61);
  CHECK(statement_words("H360FD") == "harms fertility and the unborn child");
  CHECK(statement_words("H360x") == statement_words("H360"));  // under H360, for want of a row of its own
  CHECK(statement_words("H999").empty());
}

TEST_CASE("a statement tells the rule that put it on the label", "[hazards]") {
  CHECK(because(label_from("acetone 100"), "H336") == "as recorded for the pure liquid");
  const MixtureLabel both = classify({{"a", 15, Hazards{}, false}, {"b", 85, std::nullopt, true}});
  CHECK(both.statements.empty());
  Hazards drowsy;
  drowsy.statements = {"H336"};
  const MixtureLabel one = classify({{"a", 30, drowsy, false}, {"water", 70, std::nullopt, true}});
  CHECK(because(one, "H336") == "a 30 % reaches the limit (20 % unless a record sets its own)");
  const MixtureLabel two =
      classify({{"a", 15, drowsy, false}, {"b", 15, drowsy, false}, {"water", 70, std::nullopt, true}});
  CHECK(because(two, "H336") == "a 15 % + b 15 % reach the limit (20 % unless a record sets its own)");
  Hazards genes;
  genes.statements = {"H340", "EUH066"};
  const MixtureLabel harmful = classify({{"c", 0.5, genes, false}, {"water", 99.5, std::nullopt, true}});
  CHECK(because(harmful, "H340") == "c 0.5 % reaches 0.1 %");
  CHECK(because(harmful, "EUH066") == "carried by c");
}

TEST_CASE("what is not known of a label is said with the name of the liquid", "[hazards]") {
  const MixtureLabel unknown = classify({{"mystery", 100, std::nullopt, false}});
  CHECK(not_known_words(unknown) ==
        std::vector<std::string>{"mystery (100 %) has no hazard record: what it adds to the label is not known"});
  const MixtureLabel flame = label_from("1-propoxy-2-propanol 50, acetone 50");
  const auto words = not_known_words(flame);
  CHECK(std::any_of(words.begin(), words.end(), [](const std::string& one) {
    return one ==
           "how easily it catches fire: the vapour pressure of 1-propoxy-2-propanol at its flash point is not known";
  }));
  const auto remarks = remark_words(label_from("butyl_acetate 100"));
  CHECK(std::any_of(remarks.begin(), remarks.end(), [](const std::string& one) {
    return one.find("its record says H226, its flash point of 22 C asks for H225") != std::string::npos;
  }));
}

TEST_CASE("the lowest limit is told with its authority") {
  HazardSummary hazards;
  CHECK(lowest_limit_words(hazards).empty());
  hazards.lowest_limit_ppm = 50;
  hazards.lowest_limit_of = "toluene";
  hazards.lowest_limit_by = "EU indicative";
  CHECK(lowest_limit_words(hazards) == "toluene, EU indicative");
}

TEST_CASE("every kind of caution has a sentence of its own, and every origin is told") {
  const IncompatiblePair pair{"a", "b", true, "they react", "x", Standing::measured};
  const GloveNote note{"alcohol", "butyl holds", "y", Standing::memory};
  std::vector<Caution> cautions;
  for (int kind = 0; kind <= static_cast<int>(CautionKind::label_every_vial); ++kind)
    cautions.push_back({static_cast<CautionKind>(kind), CautionOrigin::published, "key", {"one", "two"}, &note, &pair});
  std::set<std::string> texts;
  for (const Remark& remark : caution_words(cautions)) {
    INFO(remark.text);
    CHECK(remark.text.size() > 20);
    CHECK(remark.text.back() == '.');
    CHECK(remark.source == "key");
    texts.insert(remark.text);
  }
  CHECK(texts.size() == cautions.size());
  CHECK(texts.count("one with two: do not mix: they react.") == 1);
  CHECK(texts.count("Gloves, one, two: butyl holds (from memory).") == 1);
  CHECK(texts.count("one, two: taken up through the skin as well as by breath.") == 1);
  std::set<std::string> origins;
  for (int origin = 0; origin <= static_cast<int>(CautionOrigin::published); ++origin)
    origins.insert(caution_words({{CautionKind::eyes, static_cast<CautionOrigin>(origin), "key"}}).front().source);
  CHECK(origins.size() == 5);
  CHECK(origins.count("common practice, no source") == 1);
}
