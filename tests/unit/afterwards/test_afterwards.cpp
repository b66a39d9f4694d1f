// Laws of what may go on afterwards, for random paintings: no blank cell, the weakest link ranks, order is nothing,
// what was seen outranks a sphere.
#include "shipped.hpp"

#include "gentlest/afterwards/afterwards.hpp"
#include "gentlest/liquids/notation.hpp"
#include "scale.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>
#include <string>
#include <vector>

using namespace gentlest;
using namespace gentlest::test;

namespace {

template <class Item>
const Item& any_of_these(const std::vector<Item>& items, std::mt19937& dice) {
  return items[dice() % items.size()];
}

const std::vector<Light> lights = {Light::not_told, Light::dark, Light::uv_filtered, Light::daylight, Light::strong};

Job random_job(std::mt19937& dice, const Catalogue& catalogue) {
  Job job;
  const std::size_t layers = 1 + dice() % 3;
  for (std::size_t i = 0; i < layers; ++i) {
    Layer layer;
    layer.name = "layer " + std::to_string(i);
    layer.role = i == 0 && layers > 1 && dice() % 2 == 0 ? Role::remove : Role::keep;
    layer.found = dice() % 8 == 0 ? unknown_material : any_of_these(catalogue.materials(), dice).id;
    layer.light = any_of_these(lights, dice);
    if (dice() % 2 == 0) layer.years = static_cast<double>(dice() % 60);
    job.layers.push_back(layer);
  }
  for (const char* bottle : {"isooctane", "ethanol", "acetone"}) job.shelf.push_back({bottle, "", {}});
  for (std::size_t i = dice() % 3; i > 0; --i) {
    ProposedCoat coat;
    coat.material = any_of_these(catalogue.materials(), dice).id;
    coat.use = dice() % 2 == 0 ? FinishUse::retouching : FinishUse::varnish;
    coat.light = any_of_these(lights, dice);
    job.afterwards.push_back(coat);
  }
  return job;
}

std::vector<const JudgedStack*> stacks_of(const Afterwards& answer) {
  std::vector<const JudgedStack*> all;
  for (const JudgedStack& stack : answer.retouchings) all.push_back(&stack);
  for (const JudgedStack& stack : answer.varnishes) all.push_back(&stack);
  for (const RetouchingPlace& place : answer.places)
    for (const auto* stack : {&place.under, &place.over, &place.between})
      if (*stack) all.push_back(&**stack);
  if (answer.asked) all.push_back(&*answer.asked);
  return all;
}

void check_judgement(const Judgement& judged, bool may_be_silent) {
  // What is not known is said so, and is never more than open.
  if (judged.basis == CellBasis::not_known) CHECK(judged.verdict == CellVerdict::open);
  if (judged.verdict == CellVerdict::open)
    CHECK((judged.basis == CellBasis::not_known || judged.why == CellWhy::may_not_dissolve));
  if (judged.basis == CellBasis::known && !may_be_silent) CHECK(!judged.voices.empty());
  if (judged.basis == CellBasis::estimated) CHECK((judged.chance || !judged.voices.empty()));
  if (judged.basis == CellBasis::sources_disagree) CHECK(judged.voices.size() >= 2);
  if (judged.basis == CellBasis::sources_disagree) CHECK(judged.verdict <= CellVerdict::test_first);
  if (judged.chance) CHECK((*judged.chance >= 0 && *judged.chance <= 1));
  for (const CellVoice& voice : judged.voices) CHECK(!voice_of(voice).source.empty());
  if (judged.basis == CellBasis::known) CHECK_FALSE(judged.voices.empty());
}

void check_acts(const JudgedStack& stack) {
  for (std::size_t i = 0; i < stack.coats.size(); ++i) {
    const JudgedCoat& coat = stack.coats[i];
    for (const auto* act : {&coat.put_on, &coat.off_fresh, &coat.off_aged}) {
      REQUIRE(act->has_value() == coat.coat.is_proposed);
      if (!*act) continue;
      REQUIRE((*act)->under.size() == i);
      check_judgement((*act)->itself, act == &coat.put_on);
      for (const Judgement& judged : (*act)->under) check_judgement(judged, false);
    }
    const Judgement* aged = coat.off_aged ? &coat.off_aged->itself : nullptr;
    if (aged && coat.coat.light == Light::strong && coat.coat.finish) CHECK(aged->verdict < CellVerdict::test_first);
  }
}

CellVerdict worst_of(const JudgedStack& stack) {
  CellVerdict worst = CellVerdict::holds;
  for (const StackCell& cell : cells_of(stack))
    if (cell.counts) worst = std::min(worst, cell.judged->verdict);
  return worst;
}

// The shipped catalogue with one file changed.
template <class Change>
Catalogue changed_catalogue(const std::string& name, Change change) {
  std::vector<NamedText> files = shipped_files();
  const auto file = std::find_if(files.begin(), files.end(), [&](const NamedText& one) { return one.name == name; });
  REQUIRE(file != files.end());
  file->text = change(file->text);
  return read_catalogue(files, "changed");
}

std::string with_finishes_reversed(const std::string& text) {
  const std::string start = "  - material: ";
  const std::size_t first = text.find("\n" + start) + 1;
  const std::size_t end = text.find("\n# What putting one on");
  std::vector<std::string> finishes;
  for (std::size_t from = first; from < end;) {
    const std::size_t next = std::min(text.find("\n" + start, from) + 1, end);
    finishes.push_back(text.substr(from, (next == 0 ? end : next) - from));
    from = next == 0 ? end : next;
  }
  REQUIRE(finishes.size() > 10);
  std::string reversed;
  for (auto one = finishes.rbegin(); one != finishes.rend(); ++one) reversed += *one + "\n";
  return text.substr(0, first) + reversed + text.substr(end);
}

std::vector<std::string> names_of(const Afterwards& answer) {
  std::vector<std::string> names;
  for (const JudgedStack* stack : stacks_of(answer)) {
    std::string name;
    for (const JudgedCoat& coat : stack->coats) name += coat.coat.name + "/";
    names.push_back(name);
  }
  return names;
}

}  // namespace

TEST_CASE("no cell is blank, whatever the painting is made of", "[afterwards]") {
  std::mt19937 dice(20261127);
  for (int i = 0; i < cases(12); ++i) {
    const Job job = random_job(dice, shipped_catalogue());
    const Afterwards answer = judge_afterwards(job, shipped_catalogue());
    REQUIRE(answer.painting.size() == job.layers.size());
    CHECK(answer.asked.has_value() == !job.afterwards.empty());
    CHECK(answer.retouchings.size() == 8);
    CHECK(answer.varnishes.size() == 11);
    for (const JudgedStack* stack : stacks_of(answer)) check_acts(*stack);
  }
}

TEST_CASE("a stack is worth its weakest cell, and ranks by it", "[afterwards]") {
  std::mt19937 dice(7);
  for (int i = 0; i < cases(8); ++i) {
    const Afterwards answer = judge_afterwards(random_job(dice, shipped_catalogue()), shipped_catalogue());
    for (const JudgedStack* stack : stacks_of(answer)) {
      CHECK(stack->link.weakest == worst_of(*stack));
      CHECK(weakest_cell(*stack).judged->verdict == stack->link.weakest);
    }
    for (const auto* ranked : {&answer.retouchings, &answer.varnishes})
      for (std::size_t k = 1; k < ranked->size(); ++k) CHECK(worst_of((*ranked)[k - 1]) >= worst_of((*ranked)[k]));
  }
}

TEST_CASE("a worse cell is never bought off by better ones", "[afterwards]") {
  Link one_fails{CellVerdict::fails, {1, 0, 0, 9}, 0, Ageing::none, 0, 0};
  Link all_open{CellVerdict::open, {0, 10, 0, 0}, 10, Ageing::may_not_dissolve, 10, 1};
  CHECK(is_better(all_open, one_fails));
  CHECK_FALSE(is_better(one_fails, all_open));
  CHECK_FALSE(is_better(all_open, all_open));
}

TEST_CASE("the order in which the finishes are written changes nothing", "[afterwards]") {
  const Catalogue reversed = changed_catalogue("afterwards.yaml", with_finishes_reversed);
  REQUIRE(reversed.finishes().all.front().material == shipped_catalogue().finishes().all.back().material);
  std::mt19937 dice(3);
  for (int i = 0; i < cases(5); ++i) {
    const Job job = random_job(dice, shipped_catalogue());
    CHECK(names_of(judge_afterwards(job, shipped_catalogue())) == names_of(judge_afterwards(job, reversed)));
  }
}

TEST_CASE("what was seen outranks the sphere, either way", "[afterwards]") {
  Job job;
  job.layers.push_back({});
  job.layers.front().name = "paint";
  job.layers.front().found = "alkyd_long_oil";
  job.shelf.push_back({"acetone", "", {}});
  const auto touched = [&](const Catalogue& catalogue, const char* mixture) {
    return judge_afterwards(job, catalogue, {{parse_mixture(mixture, catalogue)}, Light::not_told, false})
        .mixtures.front()
        .coats.front()
        .touched;
  };
  const auto with_row = [](const std::string& liquid, const std::string& result) {
    return changed_catalogue("observations/oil_and_alkyd.yaml", [&](const std::string& text) {
      return text + "  - {material: alkyd_long_oil, liquid: " + liquid + ", contact: swab, result: " + result +
             ", general: one_sample, source: recalled, standing: from memory, confidence: low, state: \"tried "
             "here\"}\n";
    });
  };
  const Judgement by_sphere = touched(shipped_catalogue(), "butyl_acetate 100");
  REQUIRE(by_sphere.basis == CellBasis::estimated);
  REQUIRE(by_sphere.verdict == CellVerdict::fails);
  const Judgement seen = touched(with_row("butyl_acetate", "nothing_seen, grades: [5, 6]"), "butyl_acetate 100");
  CHECK(seen.basis == CellBasis::known);
  CHECK(seen.verdict == CellVerdict::holds);
  CHECK(seen.by_sphere == by_sphere.chance);
  const Judgement spared = touched(shipped_catalogue(), "ethylene_glycol 100");
  REQUIRE(spared.verdict == CellVerdict::holds);
  CHECK(touched(with_row("ethylene_glycol", "dissolves, grades: [1, 2]"), "ethylene_glycol 100").verdict ==
        CellVerdict::fails);
}

TEST_CASE("what the file of finishes gets wrong is told with its place", "[afterwards]") {
  const auto fault_of = [](const std::string& from, const std::string& to) {
    try {
      changed_catalogue("afterwards.yaml", [&](std::string text) {
        const std::size_t at = text.find(from);
        REQUIRE(at != std::string::npos);
        return text.replace(at, from.size(), to);
      });
    } catch (const InputError& error) {
      REQUIRE(error.faults().size() == 1);
      CHECK(error.faults().front().where.line > 0);
      return error.faults().front().message;
    }
    return std::string("no fault");
  };
  CHECK(fault_of("aged: dammar_aged", "aged: damar_aged") == "\"damar_aged\" is no material of the catalogue");
  CHECK(fault_of("aged: dammar_aged", "aged: mastic_aged") == "two finishes are made of \"mastic_aged\"");
  CHECK(fault_of("use: varnish", "use: polish") == "use \"polish\" is none of the words for it");
  CHECK(fault_of("light: [dark]", "light: [lamp]") == "\"lamp\" is no light");
  CHECK(fault_of("{liquid: isooctane, source: common_practice", "{liquid: isoctane, source: common_practice") ==
        "\"isoctane\" is no liquid of the catalogue");
  CHECK(fault_of("source: omalley_2010, standing: seen", "source: omally_2010, standing: seen") ==
        "\"omally_2010\" is no source of sources.yaml");
  CHECK(fault_of("source: omalley_2010, standing: seen", "source: omalley_2010, standing: from memory") ==
        "\"omalley_2010\" cannot stand as \"from memory\"");
  CHECK(fault_of("says: spares", "says: nothing") == "says \"nothing\" is none of the words for it");
}
