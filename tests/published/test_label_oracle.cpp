// The label of a mixture against a second writing of the rules, against harmonised labels, and against published
// worked examples.
#include "label_rules.hpp"
#include "scale.hpp"
#include "shipped_mixtures.hpp"

#include "gentlest/catalogue/statements.hpp"
#include "gentlest/liquids/notation.hpp"
#include "gentlest/safety/hazard.hpp"
#include "gentlest/safety/mixture_hazard.hpp"
#include "io/specific_limits.hpp"
#include "report/bottle/statement_words.hpp"

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include <cmath>
#include <random>

using namespace gentlest;
using namespace gentlest::test;

namespace {

using Codes = std::set<std::string>;

const std::map<std::string, plain::Record>& records() {
  static const auto read = plain::read_records(std::filesystem::path(GENTLEST_SOURCE_DIR) / "solvents");
  return read;
}

Codes codes_of(const MixtureLabel& label) {
  Codes codes;
  for (const LabelStatement& statement : label.statements) codes.insert(statement.code);
  return codes;
}

std::string text(const Codes& codes) {
  return fmt::format("{}", fmt::join(codes, " "));
}

std::vector<std::string> listed(const Codes& codes) {
  return {codes.begin(), codes.end()};
}

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : random_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(random_() >> 11) * 0x1p-53;
  }
  std::size_t below(std::size_t count) { return static_cast<std::size_t>(random_() % count); }
  bool one_in(std::size_t count) { return below(count) == 0; }
  // Shares that add up to 1; some large, some near the limits of the rules.
  std::vector<double> shares(std::size_t count) {
    std::vector<double> made(count);
    double all = 0;
    for (double& share : made) all += share = one_in(2) ? between(0.2, 1) : std::pow(10, between(-3.5, -0.5));
    for (double& share : made) share /= all;
    return made;
  }

 private:
  std::mt19937_64 random_;
};

// The same mixture for the second writing: by weight, the water of an alcohol as a part of its own.
plain::Parts parts_of(const Mixture& mixture) {
  plain::Parts parts;
  double water = 0;
  const plain::Record& of_water = records().at("water");
  for (const gentlest::Part& part : mixture.parts()) {
    const plain::Record& record = records().at(part.liquid.solvent->id);
    const double wet = part.liquid.water_fraction;
    const bool is_water = part.liquid.solvent->id == "water";
    parts.push_back({record, part.fraction * (1 - wet) * record.grams_per_cm3, is_water});
    water += part.fraction * wet * of_water.grams_per_cm3;
  }
  if (water > 0) parts.push_back({of_water, water, true});
  double all = 0;
  for (const plain::Part& part : parts) all += part.percent;
  for (plain::Part& part : parts) part.percent *= 100 / all;
  return parts;
}

// Flash point and boiling point are physics, tested elsewhere; what follows from them for the label is a rule.
Codes expected_label(const Mixture& mixture) {
  Codes label = plain::statements_of(parts_of(mixture));
  const FlashPoint flash = flash_point(mixture, shipped_catalogue());
  if (!flash.estimate) return label;
  const auto boils = start_of_boiling(mixture, shipped_catalogue());
  const std::string code =
      plain::flame(flash.estimate->value, boils ? std::optional(boils->value) : std::nullopt, !flash.measured());
  if (!code.empty()) label.insert(code);
  return label;
}

bool can_be_judged(const Mixture& mixture) {
  for (const gentlest::Part& part : mixture.parts())
    if (part.fraction >= 0.985 || !(records().at(part.liquid.solvent->id).grams_per_cm3 > 0)) return false;
  const FlashPoint flash = flash_point(mixture, shipped_catalogue());
  return flash.estimate || flash.nothing_burns();
}

Mixture random_mixture(Dice& dice) {
  const auto& solvents = shipped_catalogue().solvents();
  std::vector<gentlest::Part> parts;
  for (const double share : dice.shares(2 + dice.below(3))) {
    const Solvent* solvent = nullptr;
    while (!solvent || !solvent->hansen || std::any_of(parts.begin(), parts.end(), [&](const gentlest::Part& part) {
      return part.liquid.solvent == solvent;
    }))
      solvent = dice.one_in(12) ? shipped_catalogue().find_solvent("ethanol") : &solvents[dice.below(solvents.size())];
    const bool wet = solvent->id == "ethanol" && dice.one_in(2);
    parts.push_back({make_liquid(*solvent, wet ? "96 %" : "", shipped_catalogue()), share});
  }
  return Mixture(std::move(parts));
}

}  // namespace

TEST_CASE("label oracle: the second reader finds what the catalogue holds", "[hazards]") {
  std::size_t compared = 0;
  for (const Solvent& solvent : shipped_catalogue().solvents()) {
    INFO(solvent.id);
    const plain::Record& record = records().at(solvent.id);
    REQUIRE(record.known == solvent.hazards.has_value());
    if (!solvent.hazards) continue;
    ++compared;
    const std::vector<std::string> known = known_statements(solvent);
    Codes read(known.begin(), known.end());
    if (solvent.hazards->added_flame) {
      read.erase(solvent.hazards->added_flame->code);
      if (!solvent.hazards->added_flame->recorded.empty()) read.insert(solvent.hazards->added_flame->recorded);
    }
    CHECK(text(read) == text(record.says));
  }
  CHECK(compared > 100);
}

TEST_CASE("label oracle: thousands of mixtures of the catalogue's liquids", "[hazards]") {
  Dice dice(20261126);
  std::size_t compared = 0;
  std::size_t burning = 0;
  for (int i = 0; i < cases(3000); ++i) {
    const Mixture mixture = random_mixture(dice);
    if (!can_be_judged(mixture)) continue;
    ++compared;
    INFO(to_text(mixture));
    const MixtureLabel label = label_of(mixture, shipped_catalogue());
    const Codes expected = expected_label(mixture);
    if (plain::any(expected, "H22[456]")) ++burning;
    REQUIRE(text(codes_of(label)) == text(expected));
    REQUIRE(label.signal_word == plain::signal_word(expected));
    REQUIRE(label.pictograms == listed(plain::pictograms(expected)));
  }
  CHECK(compared > static_cast<std::size_t>(cases(1200)));
  CHECK(burning > compared / 2);
  CHECK(burning < compared);
}

TEST_CASE("label oracle: invented records with every statement, class and limit of their own", "[hazards]") {
  // Also what no liquid of the catalogue carries today.
  const std::vector<std::string> statements = {
      "H290",   "H300",   "H301",   "H302",   "H304",   "H310",   "H311",   "H312",   "H314",   "H315",
      "H317",   "H318",   "H319",   "H330",   "H331",   "H332",   "H334",   "H335",   "H336",   "H340",
      "H341",   "H350",   "H351",   "H360D",  "H361fd", "H362",   "H370",   "H371",   "H372",   "H373",
      "H400",   "H410",   "H411",   "H412",   "H413",   "H420",   "EUH019", "EUH066", "EUH071", "EUH380",
      "EUH381", "EUH430", "EUH431", "EUH440", "EUH441", "EUH450", "EUH451"};
  const std::vector<std::string> limits = {
      "H314: C >= 90 %; H314: 25 % <= C < 90 %; H315: 10 % <= C < 25 %; H319: 10 % <= C < 25 %",
      "H315: C >= 2 %",
      "H318: C >= 5 %; H319: 1 % <= C < 5 %",
      "H318: C >= 20 %",
      "H314: C >= 1 %",
      "H319: C >= 25 %",
      "H335: C >= 1 %",
      "H317: C >= 0.01 %",
      "H350: C >= 0.01 %",
      "H360: C >= 3 %",
      "H370: C >= 10 %; H371: 3 % <= C < 10 %",
      "H372: C >= 1 %; H373: 0.2 % <= C < 1 %",
      "M=10",
      "M(acute)=10; M(chronic)=100",
      "oral: ATE = 1200 mg/kg bw",
      "dermal: ATE = 90 mg/kg bw",
      "inhalation: ATE = 3 mg/L (vapours)",
      "inhalation: ATE = 1.5 mg/L (dusts or mists)"};
  const std::vector<std::string> classes = {"Acute Tox. 1",   "Acute Tox. 2", "Skin Sens. 1A",
                                            "Resp. Sens. 1A", "Acute Tox. 3", "Skin Sens. 1B"};
  Dice dice(272);
  for (int i = 0; i < cases(15000); ++i) {
    std::vector<Ingredient> ingredients;
    plain::Parts parts;
    for (const double share : dice.shares(2 + dice.below(3))) {
      if (dice.one_in(12)) {
        const bool water = dice.one_in(2);
        ingredients.push_back({"x", 100 * share, std::nullopt, water});
        parts.push_back({{}, 100 * share, water});
        continue;
      }
      Hazards hazards;
      plain::Record record;
      record.known = true;
      for (std::size_t k = 1 + dice.below(5); k > 0; --k) record.says.insert(statements[dice.below(statements.size())]);
      for (const std::string& code : record.says)
        (code[0] == 'E' ? hazards.supplemental : hazards.statements).push_back(code);
      if (dice.one_in(2)) hazards.classes = {classes[dice.below(classes.size())]};
      if (dice.one_in(2)) hazards.specific_limits = limits[dice.below(limits.size())];
      for (const std::string& word : hazards.classes) record.classes += word;
      record.limits = hazards.specific_limits;
      std::vector<std::string> faults;
      hazards.own = own_limits_from(hazards.specific_limits, faults);
      REQUIRE(faults.empty());
      parts.push_back({record, 100 * share, false});
      ingredients.push_back({"x", 100 * share, hazards, false});
    }
    const Codes expected = plain::statements_of(parts);
    const Codes ours = codes_of(classify(ingredients));
    for (const plain::Part& part : parts)
      UNSCOPED_INFO(fmt::format("{:.4f} % {} | {} | {}", part.percent, text(part.record.says), part.record.classes,
                                part.record.limits));
    REQUIRE(text(ours) == text(expected));
    REQUIRE(signal_word_of(listed(ours)) == plain::signal_word(expected));
    REQUIRE(pictograms_of(listed(ours)) == listed(plain::pictograms(expected)));
  }
}

TEST_CASE("harmonised labels: signal word and pictograms follow from the statements as Annex VI prints them",
          "[hazards]") {
  // The label columns of CLP Annex VI, as the records hold them, against Article 26 on their statements.
  std::size_t compared = 0;
  for (const auto& [id, record] : records()) {
    if (!record.known || record.signs.empty()) continue;
    // Annex VI prints GHS08 alone for H319 H360Df, though Article 26 asks for GHS07 as well: our label shows both.
    if (id == "tetrahydrofurfuryl_alcohol") continue;
    ++compared;
    INFO(id << ": " << text(record.says));
    const std::vector<std::string> codes(record.says.begin(), record.says.end());
    CHECK(text(record.signs) == fmt::format("{}", fmt::join(pictograms_of(codes), " ")));
    CHECK(signal_word_of(codes) == record.word);
  }
  CHECK(compared > 100);
}

TEST_CASE("a pure liquid keeps its flame, and the words are the same at 100 and at 99.9 per cent", "[hazards]") {
  const Solvent& water = *shipped_catalogue().find_solvent("water");
  std::size_t compared = 0;
  for (const Solvent& solvent : shipped_catalogue().solvents()) {
    if (!solvent.hazards || !solvent.hansen) continue;
    INFO(solvent.id);
    const Liquid liquid = make_liquid(solvent, "", shipped_catalogue());
    const Liquid trace = make_liquid(water, "", shipped_catalogue());
    const Mixture pure({{liquid, 1.0}});
    const Mixture nearly({{liquid, 0.999}, {trace, 0.001}});
    const MixtureLabel label = label_of(pure, shipped_catalogue());
    if (solvent.flash_point_C) {
      // The rule on the catalogue's own figures, unless the record is more severe.
      const Cited<double>& flash = solvent.flash_point_C->chosen;
      const bool reckoned = (flash.standing == Standing::estimated || flash.standing == Standing::derived) &&
                            !plain::any(records().at(solvent.id).says, "H22[456]");
      const auto boils = solvent.boiling_point_C ? std::optional(solvent.boiling_point_C->chosen.value) : 36.0;
      const std::string by_figures = plain::flame(flash.value, boils, reckoned);
      const Codes codes = codes_of(label);
      const auto found =
          std::find_if(codes.begin(), codes.end(), [](const std::string& code) { return code.rfind("H22", 0) == 0; });
      if (!by_figures.empty()) {
        REQUIRE(found != codes.end());
        CHECK(*found <= by_figures);  // H224 before H226
        CHECK(std::count(label.pictograms.begin(), label.pictograms.end(), "GHS02") == 1);
        CHECK_FALSE(label.signal_word.empty());
      }
    }
    if (!break_down(nearly, shipped_catalogue())) continue;
    ++compared;
    const MixtureLabel thinned = label_of(nearly, shipped_catalogue());
    CHECK(text(codes_of(label)) == text(codes_of(thinned)));
    CHECK(label.signal_word == thinned.signal_word);
    CHECK(label.pictograms == thinned.pictograms);
  }
  CHECK(compared > 100);
}

TEST_CASE("liquids whose record lacks the flame their flash point asks for", "[hazards]") {
  const auto codes = [](const char* words) { return codes_of(label_of(mixture_from(words), shipped_catalogue())); };
  // Table 2.6.1 on the flash and boiling points of the catalogue.
  CHECK(codes("ligroin 100").count("H225") == 1);            // -7 C, boils from 95 C
  CHECK(codes("n_hexanol 100").count("H226") == 1);          // 60 C
  CHECK(codes("alpha_pinene 100").count("H226") == 1);       // 30.6 C
  CHECK(codes("white_spirit 100").count("H226") == 1);       // 39 C
  CHECK(codes("cyclopentanone 100").count("H226") == 1);     // by law; 26 C, estimated, does not make it H225
  CHECK(codes("diacetone_alcohol 100").count("H226") == 1);  // 58 C
  const MixtureLabel acetate = label_of(mixture_from("butyl_acetate 100"), shipped_catalogue());
  CHECK(codes_of(acetate).count("H225") == 1);  // 22 C; Annex VI says category 3
  CHECK(codes_of(acetate).count("H226") == 0);
  CHECK(std::any_of(acetate.remarks.begin(), acetate.remarks.end(), [](const LabelRemark& remark) {
    return remark.what == LabelRemark::What::severer_flame && remark.recorded == "H226" && remark.due == "H225";
  }));
  // What people read says that it is not the record's word.
  const auto words = [](const char* id) { return statements_text(shipped_catalogue().find_solvent(id)->hazards); };
  CHECK(words("ligroin").find("H225 catches fire very easily (by its flash point, not by the record)") == 0);
  CHECK(words("acetone").find("by its flash point") == std::string::npos);
  const HazardSummary parts = hazards_of_parts(mixture_from("ligroin 50, water 50"));
  CHECK(std::count(parts.statements.begin(), parts.statements.end(), "H225") == 1);
  CHECK(std::count(parts.pictograms.begin(), parts.pictograms.end(), "GHS02") == 1);
  // Without a record the flash point still speaks.
  Solvent unrecorded;
  unrecorded.flame_by_figures = "H226";
  const HazardSummary bare = hazards_of_parts(Mixture({{Liquid{"x", &unrecorded, 0, {}}, 1.0}}));
  CHECK(bare.statements == std::vector<std::string>{"H226"});
  CHECK(bare.signal_word == "Warning");
  CHECK(bare.pictograms == std::vector<std::string>{"GHS02"});
  CHECK(bare.without_record.size() == 1);
}

TEST_CASE("acids burn and irritate by the limits of their own records", "[hazards]") {
  // CLP Annex VI, acetic acid: Skin Corr. 1A from 90 %, 1B 25 to 90 %, Skin Irrit. 2 and Eye Irrit. 2 10 to 25 %;
  // formic acid 90, 10, 2 %.
  struct Case {
    const char* id;
    double percent;
    Codes expected;
  };
  const std::vector<Case> cases = {{"acetic_acid", 95, {"H314"}},
                                   {"acetic_acid", 50, {"H314"}},
                                   {"acetic_acid", 25, {"H314"}},
                                   {"acetic_acid", 24.9, {"H315", "H319"}},
                                   {"acetic_acid", 15, {"H315", "H319"}},
                                   {"acetic_acid", 10, {"H315", "H319"}},
                                   {"acetic_acid", 9.9, {}},
                                   {"formic_acid", 10, {"H314"}},
                                   {"formic_acid", 9.9, {"H315", "H319"}},
                                   {"formic_acid", 2, {"H315", "H319"}},
                                   {"formic_acid", 1.9, {}}};
  for (const Case& one : cases) {
    INFO(one.id << " " << one.percent);
    const Solvent& acid = *shipped_catalogue().find_solvent(one.id);
    Codes codes;
    for (const std::string& code : codes_of(
             classify({{"acid", one.percent, acid.hazards, false}, {"water", 100 - one.percent, std::nullopt, true}})))
      if (code == "H314" || code == "H315" || code == "H318" || code == "H319") codes.insert(code);
    CHECK(text(codes) == text(one.expected));
  }
}

TEST_CASE("no exclamation mark beside the skull: CLP Article 26(1)(b)", "[hazards]") {
  const MixtureLabel label = label_of(mixture_from("methanol 40, toluene 60"), shipped_catalogue());
  const Codes codes = codes_of(label);
  REQUIRE((codes.count("H331") == 1 || codes.count("H301") == 1));
  REQUIRE(codes.count("H336") == 1);  // asks for GHS07 by itself
  CHECK(std::count(label.pictograms.begin(), label.pictograms.end(), "GHS06") == 1);
  CHECK(std::count(label.pictograms.begin(), label.pictograms.end(), "GHS07") == 0);
  const HazardSummary parts = hazards_of_parts(mixture_from("methanol 40, toluene 60"));
  CHECK(std::count(parts.pictograms.begin(), parts.pictograms.end(), "GHS06") == 1);
  CHECK(std::count(parts.pictograms.begin(), parts.pictograms.end(), "GHS07") == 0);
  using List = std::vector<std::string>;
  CHECK(pictograms_of({"H318", "H315"}) == List{"GHS05"});                   // (c)
  CHECK(pictograms_of({"H318", "H315", "H336"}) == List{"GHS05", "GHS07"});  // drowsiness is no irritation
  CHECK(pictograms_of({"H334", "H317", "H319"}) == List{"GHS08"});           // (d)
  CHECK(pictograms_of({"H351", "H317", "H319"}) == List{"GHS07", "GHS08"});  // GHS08 for something else
  CHECK(pictograms_of({"EUH066"}).empty());
  CHECK(signal_word_of({"H318"}) == "Danger");
  CHECK(signal_word_of({"EUH381", "H411"}) == "Warning");
  CHECK(signal_word_of({"H411", "EUH066"}).empty());
}

TEST_CASE("worked examples as published", "[hazards]") {
  const auto made = [](std::vector<std::pair<double, Hazards>> parts) {
    std::vector<Ingredient> ingredients;
    double rest = 100;
    for (auto& [percent, hazards] : parts) {
      ingredients.push_back({"x", percent, hazards, false});
      rest -= percent;
    }
    ingredients.push_back({"water", rest, std::nullopt, true});
    return codes_of(classify(ingredients));
  };
  const auto with = [](std::vector<std::string> statements, const std::string& limits = {}) {
    Hazards hazards;
    hazards.statements = std::move(statements);
    std::vector<std::string> faults;
    hazards.own = own_limits_from(limits, faults);
    REQUIRE(faults.empty());
    return hazards;
  };
  // Krejsova 2014, enviprofi.cz 4.8.6.2 (seen): a corrosive part at 4 % does not make the mixture corrosive, at 7 % it
  // does; the limit is 5 %.
  CHECK(made({{4, with({"H314"})}}).count("H314") == 0);
  CHECK(made({{7, with({"H314"})}}).count("H314") == 1);
  // Tunnela 2012, exercises of the ECHA helpdesk, example 1 (seen at paperzz.com): 0.8 % Skin Irrit. 2: not classified.
  CHECK(made({{0.8, with({"H315"})}}).empty());
  // det-net.eu (seen): from 3 % of a surfactant of Eye Dam. 1 the mixture is Eye Dam. 1.
  CHECK(made({{3, with({"H318"})}}) == Codes{"H318"});
  // User Guide to Thresholds and Classifications (New Zealand), Table 19.5, mixture Z (seen at yumpu.com): 0.05 % with
  // M = 100 and 1 % with M = 1 make 6, below 25; ten times that and 5 % of the second class make 65, above it.
  const std::vector<std::pair<double, Hazards>> mixture_Z = {
      {0.05, with({"H410"}, "M=100")}, {1, with({"H410"})}, {5, with({"H411"})}};
  CHECK(made(mixture_Z) == Codes{"H411"});
  // UN ST/SG/AC.10/C.4/2008/23, Annex 2 (seen): 400 mg/kg at 40 %, 2737 at 26 %, 4500 at 23 % make 873: category 4.
  Hazards third = with({"H302"}, "oral: ATE = 400 mg/kg bw");
  Hazards first = with({"H302"}, "oral: ATE = 2737 mg/kg bw");
  Hazards second = with({"H302"}, "oral: ATE = 4500 mg/kg bw");
  CHECK(made({{26, first}, {23, second}, {40, third}}) == Codes{"H302"});
  CHECK(made({{4, with({"H302"}, "oral: ATE = 1737 mg/kg bw")}}).empty());
}
