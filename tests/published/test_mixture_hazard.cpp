// The label of a mixture: published worked examples, the boundary of every rule, and what is not known.
#include "gentlest/mixture_hazard.hpp"

#include "shipped_mixtures.hpp"

#include <fmt/format.h>
#include <catch2/catch.hpp>
#include "near.hpp"

#include <algorithm>
#include <set>

using namespace gentlest;
using namespace gentlest::test;

namespace {

// "acetone 25, isooctane 75" by weight, with the catalogue's records.
std::set<std::string> codes_by_weight(const std::vector<std::pair<std::string, double>>& parts) {
  std::vector<Ingredient> ingredients;
  for (const auto& [name, percent] : parts) {
    const Solvent* solvent = shipped_catalogue().find_solvent(name);
    REQUIRE(solvent);
    ingredients.push_back({name, percent, solvent->hazards, solvent->family == "water"});
  }
  std::set<std::string> codes;
  for (const LabelStatement& statement : classify(ingredients).statements) codes.insert(statement.code);
  return codes;
}

bool has(const std::set<std::string>& codes, const std::string& code) {
  return codes.count(code) == 1;
}

bool has(const MixtureLabel& label, const std::string& code) {
  return std::any_of(label.statements.begin(), label.statements.end(),
                     [&](const LabelStatement& statement) { return statement.code == code; });
}

// A record with these statements and specific limits only.
Ingredient invented(double percent, std::vector<std::string> statements, std::string limits = {}) {
  Hazards hazards;
  hazards.statements = std::move(statements);
  hazards.specific_limits = std::move(limits);
  return {"x", percent, hazards, false};
}

MixtureLabel diluted(double percent, const std::string& code, const std::string& limits = {}) {
  return classify({invented(percent, {code}, limits), {"water", 100 - percent, std::nullopt, true}});
}

}  // namespace

TEST_CASE("acute toxicity estimate: the examples of ST/SG/AC.10/C.4/2008/23") {
  CHECK(*acute_toxicity_estimate({26, 23, 40}, {2737, 4500, 400}) == near(872.52, 0.05));
  CHECK(*acute_toxicity_estimate({4}, {1737}) == Approx(43425));
  CHECK(*acute_toxicity_estimate({60, 30, 10}, {25000, 5800, 636}) == near(4292.64, 0.05));
  CHECK_FALSE(acute_toxicity_estimate({0.9}, {100}));  // below 1 % nothing counts
  // More than 10 % unknown lowers the 100.
  CHECK(*acute_toxicity_estimate({50}, {500}, 10) == Approx(1000));
  CHECK(*acute_toxicity_estimate({50}, {500}, 20) == Approx(800));
}

TEST_CASE("mixtures worked out by the rules of CLP Annex I with harmonised records") {
  const auto first = codes_by_weight({{"acetone", 25}, {"isooctane", 75}});
  for (const char* code : {"H336", "H304", "H315", "H319"}) CHECK(has(first, code));
  const auto thin = codes_by_weight({{"acetone", 8}, {"water", 92}});
  CHECK_FALSE(has(thin, "H319"));
  CHECK_FALSE(has(thin, "H336"));
  const auto little_toluene = codes_by_weight({{"toluene", 2}, {"ethyl acetate", 98}});
  CHECK_FALSE(has(little_toluene, "H361d"));
  CHECK_FALSE(has(little_toluene, "H304"));
  CHECK(has(little_toluene, "H319"));
  CHECK(has(little_toluene, "H336"));
  CHECK(has(codes_by_weight({{"toluene", 3}, {"ethanol", 97}}), "H361d"));
  CHECK(has(codes_by_weight({{"dimethylformamide", 0.3}, {"acetone", 99.7}}), "H360D"));
  CHECK(has(codes_by_weight({{"dioxane", 0.1}, {"ethanol", 99.9}}), "H350"));
  CHECK(has(codes_by_weight({{"n_propanol", 3}, {"water", 97}}), "H318"));
  const auto hexane = codes_by_weight({{"n_hexane", 4}, {"ethanol", 96}});
  CHECK_FALSE(has(hexane, "H373"));  // its own limit is 5 %
  CHECK(has(hexane, "H361f"));
  const auto methanol = codes_by_weight({{"methanol", 10}, {"ethanol", 90}});
  CHECK(has(methanol, "H370"));
  CHECK(has(methanol, "H302"));  // estimate 1000 mg/kg
  CHECK_FALSE(has(methanol, "H301"));
  CHECK(has(codes_by_weight({{"methanol", 5}, {"ethanol", 95}}), "H371"));
  CHECK_FALSE(has(codes_by_weight({{"n_heptane", 9}, {"ethanol", 91}}), "H304"));
}

TEST_CASE("every rule holds from its limit on and not below") {
  struct Rule {
    const char* carried;
    const char* gives;
    double limit;
  };
  const std::vector<Rule> rules = {
      {"H314", "H314", 5},   {"H315", "H315", 10},    {"H318", "H318", 3},       {"H319", "H319", 10},
      {"H317", "H317", 1},   {"H317", "EUH208", 0.1}, {"H340", "H340", 0.1},     {"H341", "H341", 1},
      {"H350", "H350", 0.1}, {"H351", "H351", 1},     {"H360FD", "H360FD", 0.3}, {"H361d", "H361d", 3},
      {"H370", "H370", 10},  {"H370", "H371", 1},     {"H371", "H371", 10},      {"H372", "H372", 10},
      {"H372", "H373", 1},   {"H373", "H373", 10},    {"H335", "H335", 20},      {"H336", "H336", 20},
      {"H304", "H304", 10},  {"H314", "H315", 1},     {"H318", "H319", 1},       {"H410", "H410", 25},
      {"H410", "H411", 2.5}, {"H410", "H412", 0.25},  {"H411", "H411", 25},      {"H411", "H412", 2.5},
      {"H412", "H412", 25},  {"H413", "H413", 25},    {"H400", "H400", 25},      {"H420", "H420", 0.1}};
  for (const Rule& rule : rules) {
    INFO(rule.carried << " -> " << rule.gives << " from " << rule.limit << " %");
    CHECK(has(diluted(rule.limit, rule.carried), rule.gives));
    CHECK_FALSE(has(diluted(rule.limit * 0.99, rule.carried), rule.gives));
  }
}

TEST_CASE("the limits that a record sets for itself win") {
  CHECK_FALSE(has(diluted(24, "H335", "STOT SE 3; H335: C >= 25 %"), "H335"));
  CHECK(has(diluted(25, "H335", "STOT SE 3; H335: C >= 25 %"), "H335"));
  CHECK(has(diluted(1, "H361fd", "Repr. 2; H361fd: C >= 1 %; STOT RE 1; H372: C >= 1 %"), "H361fd"));
  CHECK_FALSE(has(diluted(3.5, "H410", "M=1"), "H410"));
  CHECK(has(diluted(2.5, "H410", "M=10"), "H410"));
  // Half of the one limit and half of the other add up.
  const MixtureLabel both = classify({invented(12.5, {"H335"}, "STOT SE 3; H335: C >= 25 %"),
                                      invented(10, {"H335"}),
                                      {"water", 77.5, std::nullopt, true}});
  CHECK(has(both, "H335"));
}

TEST_CASE("drowsiness and irritation of the airways are summed apart") {
  const MixtureLabel label = classify({invented(15, {"H335"}), invented(15, {"H336"}), invented(70, {})});
  CHECK_FALSE(has(label, "H335"));
  CHECK_FALSE(has(label, "H336"));
}

TEST_CASE("limits, estimates and factors are read as printed") {
  const auto methanol = specific_limits_in("STOT SE 1; H370: C >= 10 %; STOT SE 2; H371: 3 % <= C < 10 %");
  REQUIRE(methanol.size() == 2);
  CHECK(methanol[0] == SpecificLimit{"H370", 10, std::nullopt});
  CHECK(methanol[1] == SpecificLimit{"H371", 3, 10});
  CHECK(specific_limits_in("note P: H340 and H350 (Muta. 1B, Carc. 1B) as well, unless below 0.1 % benzene").empty());
  CHECK(specific_limits_in("").empty());
  CHECK(recorded_ATE("Oral: ATE = 1200 mg/kg bw", "Oral") == 1200);
  CHECK(recorded_ATE("Inhalation: ATE = 11 mg/L (Vapours)", "Inhalation") == 11);
  CHECK_FALSE(recorded_ATE("Oral: ATE = 1200 mg/kg bw", "Dermal"));
  CHECK(M_factor("M=10") == 10);
  CHECK(M_factor("") == 1);
}

TEST_CASE("every limit that the catalogue prints is understood") {
  for (const Solvent& solvent : shipped_catalogue().solvents()) {
    if (!solvent.hazards) continue;
    const std::string& text = solvent.hazards->specific_limits;
    INFO(solvent.id << ": " << text);
    const auto count = static_cast<std::size_t>(std::count(text.begin(), text.end(), 'C'));
    if (text.find("C >=") != std::string::npos) CHECK_FALSE(specific_limits_in(text).empty());
    for (const SpecificLimit& limit : specific_limits_in(text)) {
      CHECK(limit.from_percent > 0);
      CHECK(limit.from_percent <= 100);
      if (limit.below_percent) CHECK(*limit.below_percent > limit.from_percent);
    }
    CHECK(specific_limits_in(text).size() <= count);
  }
}

TEST_CASE("flammable category by flash point and boiling point, with the published pure liquids") {
  // Harmonised category of each pure solvent against its flash point and boiling point. Butyl acetate (22 C but
  // category 3), diacetone alcohol and dimethylformamide (58 C, none) are the known exceptions.
  const std::set<std::string> exceptions = {"butyl_acetate", "diacetone_alcohol", "dimethylformamide"};
  int agree = 0;
  int compared = 0;
  for (const Solvent& solvent : shipped_catalogue().solvents()) {
    if (!solvent.hazards || !solvent.flash_point_C || !solvent.boiling_point_C || solvent.is_blend) continue;
    std::string recorded;
    for (const std::string& code : solvent.hazards->statements)
      if (code == "H224" || code == "H225" || code == "H226") recorded = code;
    if (recorded.empty()) continue;
    ++compared;
    const std::string ours =
        flammable_statement({solvent.flash_point_C->chosen.value}, {solvent.boiling_point_C->chosen.value}, false);
    if (ours == recorded) ++agree;
    if (exceptions.count(solvent.id) == 1) CHECK(ours != recorded);
  }
  CHECK(compared > 50);
  CHECK(agree >= compared - 8);
  CHECK(flammable_statement({-45}, {34.6}, false) == "H224");
  CHECK(flammable_statement({22}, {80}, false) == "H225");
  CHECK(flammable_statement({23}, {80}, false) == "H226");
  CHECK(flammable_statement({60}, {200}, false) == "H226");
  CHECK(flammable_statement({60.1}, {200}, false).empty());
  CHECK(flammable_statement({27.9}, {80}, true) == "H225");  // by calculation: 5 C on the cautious side
  CHECK(flammable_statement({65}, {200}, true) == "H226");
}

TEST_CASE("labels of whole mixtures") {
  const MixtureLabel label = label_of(mixture_from("isooctane 85, ethanol absolute 15"), shipped_catalogue());
  CHECK(label.signal_word == "Danger");
  for (const char* code : {"H225", "H304", "H315", "H336", "H410"}) CHECK(has(label, code));
  CHECK(label.complete());
  CHECK(label.pictograms == std::vector<std::string>{"GHS02", "GHS07", "GHS08", "GHS09"});
  const MixtureLabel pure = label_of(mixture_from("acetone 100"), shipped_catalogue());
  CHECK(pure.statements.size() == 4);  // H225, H319, H336, EUH066
  CHECK(pure.signal_word == "Danger");
  const MixtureLabel watery = label_of(mixture_from("ethanol 5, water 95"), shipped_catalogue());
  CHECK(watery.signal_word == "Warning");  // still catches fire when warm
}

TEST_CASE("a part without a record is never harmless") {
  bool tried = false;
  for (const Solvent& solvent : shipped_catalogue().solvents()) {
    if (solvent.hazards || !solvent.hansen || solvent.family == "water") continue;
    tried = true;
    INFO(solvent.id);
    const MixtureLabel label = label_of(mixture_from(solvent.id + " 50, acetone 50"), shipped_catalogue());
    CHECK_FALSE(label.complete());
  }
  CHECK(tried);
  const MixtureLabel unknown = classify({{"mystery", 100, std::nullopt, false}});
  CHECK(unknown.statements.empty());
  CHECK_FALSE(unknown.complete());
  CHECK(unknown.oral.unknown_percent == 100);
}
