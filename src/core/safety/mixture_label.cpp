// The additivity rules, one small function each; classify() runs them all.
#include "gentlest/safety/mixture_hazard.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <numeric>
#include <utility>

namespace gentlest {

namespace {

using Ingredients = std::vector<Ingredient>;

// Same statement, whatever letters follow it: H360D and H360FD are H360.
bool is_code(const std::string& statement, const std::string& code) {
  return statement.compare(0, code.size(), code) == 0;
}

// The statement as this ingredient carries it; empty when it does not. An open limit of its own is a classification
// too: Annex VI gives triethylamine "STOT SE 3; H335: C >= 1 %" and no H335 beside H314.
std::string carried(const Ingredient& ingredient, const std::string& code) {
  if (!ingredient.hazards) return {};
  for (const auto* list : {&ingredient.hazards->statements, &ingredient.hazards->supplemental})
    for (const std::string& statement : *list)
      if (is_code(statement, code)) return statement;
  for (const SpecificLimit& limit : ingredient.hazards->own.limits)
    if (is_code(limit.code, code) && !limit.below_percent) return limit.code;
  return {};
}

// Of several bands for one statement (Skin Corr. 1A from 90 %, 1B from 25 %) the lowest share counts.
std::optional<double> own_limit(const Ingredient& ingredient, const std::string& code) {
  std::optional<double> lowest;
  if (!ingredient.hazards) return lowest;
  for (const SpecificLimit& limit : ingredient.hazards->own.limits)
    if (is_code(limit.code, code)) lowest = std::min(lowest.value_or(limit.from_percent), limit.from_percent);
  return lowest;
}

// The limit from which this ingredient counts in full: its own where the record sets one.
double limit_of(const Ingredient& ingredient, const std::string& code, double generic) {
  return own_limit(ingredient, code).value_or(generic);
}

// Where the bands for a statement end; nothing when there is none or it is open.
std::optional<double> own_end(const Ingredient& ingredient, const std::string& code) {
  std::optional<double> highest;
  for (const SpecificLimit& limit : ingredient.hazards->own.limits)
    if (is_code(limit.code, code) && limit.below_percent)
      highest = std::max(highest.value_or(*limit.below_percent), *limit.below_percent);
  return highest;
}

LabelReason::Share share_of(const Ingredient& ingredient) {
  return {ingredient.name, ingredient.weight_percent};
}

struct Sum {
  double toward = 0;  // 1 reaches the limit
  std::vector<LabelReason::Share> parts;
};

void add_to(Sum& sum, const Ingredient& ingredient, double toward) {
  sum.toward += toward;
  sum.parts.push_back(share_of(ingredient));
}

// Sum of C / limit over the ingredients that carry any of the codes, each with its weight in the rule.
struct Weighed {
  const char* code;
  double weight;
};
Sum add_up(const Ingredients& ingredients, const std::vector<Weighed>& codes, const std::string& target,
           double generic_limit) {
  Sum sum;
  for (const Ingredient& ingredient : ingredients)
    for (const Weighed& counted : codes) {
      if (carried(ingredient, counted.code).empty()) continue;
      const double own_limit = limit_of(ingredient, target, generic_limit / counted.weight);
      add_to(sum, ingredient, ingredient.weight_percent / own_limit);
      break;
    }
  return sum;
}

bool reaches(double value, double limit) {
  return value >= limit * (1 - 1e-9);
}

void put(MixtureLabel& label, const std::string& code, LabelReason because) {
  for (const LabelStatement& known : label.statements)
    if (known.code == code) return;
  label.statements.push_back({code, std::move(because)});
}

bool put_if_reached(MixtureLabel& label, const std::string& code, const Sum& sum, double generic_limit) {
  if (!reaches(sum.toward, 1)) return false;
  put(label, code, {LabelRule::parts_reach, sum.parts, {generic_limit}});
  return true;
}

// From which share an ingredient that damages eyes, or burns, does so: its own limit for that; where its record sets
// bands for mere irritation of the eyes, where these end; else 3 per cent, or where it burns if that is less.
double eye_damage_limit(const Ingredient& ingredient) {
  constexpr double generic = 3;
  if (const auto own = own_limit(ingredient, "H318")) return *own;
  const auto burns_from = own_limit(ingredient, "H314");
  if (own_limit(ingredient, "H319"))
    if (const auto end = own_end(ingredient, "H319") ? own_end(ingredient, "H319") : burns_from) return *end;
  return std::min(generic, burns_from.value_or(generic));
}

Sum eye_damage(const Ingredients& ingredients) {
  Sum sum;
  for (const Ingredient& ingredient : ingredients)
    if (!carried(ingredient, "H318").empty() || !carried(ingredient, "H314").empty())
      add_to(sum, ingredient, ingredient.weight_percent / eye_damage_limit(ingredient));
  return sum;
}

void judge_skin_and_eyes(MixtureLabel& label, const Ingredients& ingredients) {
  if (put_if_reached(label, "H314", add_up(ingredients, {{"H314", 1}}, "H314", 5), 5)) return;
  put_if_reached(label, "H315", add_up(ingredients, {{"H314", 10}, {"H315", 1}}, "H315", 10), 10);
  if (!put_if_reached(label, "H318", eye_damage(ingredients), 3))
    put_if_reached(label, "H319", add_up(ingredients, {{"H318", 10}, {"H314", 10}, {"H319", 1}}, "H319", 10), 10);
}

// Rules where one ingredient alone decides.
struct SingleRule {
  const char* code;
  double limit_percent;
};
constexpr std::array<SingleRule, 17> single_rules = {{{"H340", 0.1},
                                                      {"H341", 1},
                                                      {"H350", 0.1},
                                                      {"H351", 1},
                                                      {"H360", 0.3},
                                                      {"H361", 3},
                                                      {"H362", 0.3},
                                                      {"H371", 10},
                                                      {"H373", 10},
                                                      // Regulation (EU) 2023/707: 0.1 and 1 per cent
                                                      {"EUH380", 0.1},
                                                      {"EUH381", 1},
                                                      {"EUH430", 0.1},
                                                      {"EUH431", 1},
                                                      {"EUH440", 0.1},
                                                      {"EUH441", 0.1},
                                                      {"EUH450", 0.1},
                                                      {"EUH451", 0.1}}};

void judge_single(MixtureLabel& label, const Ingredients& ingredients) {
  for (const SingleRule& rule : single_rules)
    for (const Ingredient& ingredient : ingredients) {
      const std::string statement = carried(ingredient, rule.code);
      const double limit = limit_of(ingredient, rule.code, rule.limit_percent);
      if (!statement.empty() && reaches(ingredient.weight_percent, limit))
        put(label, statement, {LabelRule::part_reaches, {share_of(ingredient)}, {limit}});
    }
}

// The strong classes of organ damage fall to the weak ones when diluted: 10 per cent, then 1.
void judge_organs(MixtureLabel& label, const Ingredients& ingredients, const char* strong, const char* weak) {
  for (const Ingredient& ingredient : ingredients) {
    if (carried(ingredient, strong).empty()) continue;
    const double from = limit_of(ingredient, strong, 10);
    const double weak_from = limit_of(ingredient, weak, 1);
    const bool is_strong = reaches(ingredient.weight_percent, from);
    if (is_strong || reaches(ingredient.weight_percent, weak_from))
      put(label, is_strong ? strong : weak,
          {LabelRule::part_reaches, {share_of(ingredient)}, {is_strong ? from : weak_from}});
  }
}

// Allergy of the skin or asthma: 1 per cent, 0.1 in subcategory 1A; from a tenth of the limit a note on the label.
void judge_allergy(MixtureLabel& label, const Ingredients& ingredients, const char* code, const char* strong_class) {
  for (const Ingredient& ingredient : ingredients) {
    if (carried(ingredient, code).empty()) continue;
    const auto& classes = ingredient.hazards->classes;
    const bool strong = std::any_of(classes.begin(), classes.end(), [&](const std::string& word) {
      return word.find(strong_class) != std::string::npos;
    });
    const double limit = limit_of(ingredient, code, strong ? 0.1 : 1);
    const LabelReason because{LabelRule::allergy, {share_of(ingredient)}};
    if (reaches(ingredient.weight_percent, limit))
      put(label, code, because);
    else if (reaches(ingredient.weight_percent, limit / 10))
      put(label, "EUH208", because);
  }
}

void judge_water_life(MixtureLabel& label, const Ingredients& ingredients) {
  double acute = 0, first = 0, second = 0, third = 0, fourth = 0;
  for (const Ingredient& ingredient : ingredients) {
    if (!ingredient.hazards) continue;
    const OwnLimits& own = ingredient.hazards->own;
    const double share = ingredient.weight_percent;
    if (!carried(ingredient, "H400").empty() || !carried(ingredient, "H410").empty()) acute += own.M_acute * share;
    if (!carried(ingredient, "H410").empty()) first += own.M_chronic * share;
    if (!carried(ingredient, "H411").empty()) second += share;
    if (!carried(ingredient, "H412").empty()) third += share;
    if (!carried(ingredient, "H413").empty()) fourth += share;
  }
  constexpr double limit = 25;
  if (reaches(first, limit))
    put(label, "H410", {LabelRule::water_life_1, {}, {first}});
  else if (reaches(10 * first + second, limit))
    put(label, "H411", {LabelRule::water_life_2, {}, {first, second}});
  else if (reaches(100 * first + 10 * second + third, limit))
    put(label, "H412", {LabelRule::water_life_3, {}, {first, second, third}});
  else if (reaches(first + second + third + fourth, limit))
    put(label, "H413", {LabelRule::water_life_4});
  if (reaches(acute, limit) && !reaches(first, limit)) put(label, "H400", {LabelRule::acute_water_life, {}, {acute}});
}

// Statements that a rule of this file deals with, and those of flammability, which label_of() adds.
bool has_rule(const std::string& statement) {
  static constexpr std::array codes = {"H224", "H225", "H226", "H300", "H301", "H302", "H304", "H310", "H311", "H312",
                                       "H314", "H315", "H317", "H318", "H319", "H330", "H331", "H332", "H334", "H335",
                                       "H336", "H370", "H372", "H400", "H410", "H411", "H412", "H413", "H420"};
  const auto is_it = [&](const char* code) { return is_code(statement, code); };
  return std::any_of(codes.begin(), codes.end(), is_it) ||
         std::any_of(single_rules.begin(), single_rules.end(),
                     [&](const SingleRule& rule) { return is_code(statement, rule.code); });
}

// No rule dilutes the others (EUH019, EUH066, EUH071, H290 ...); they are carried over from any part.
void carry_over(MixtureLabel& label, const Ingredients& ingredients) {
  for (const Ingredient& ingredient : ingredients) {
    if (!ingredient.hazards) continue;
    for (const auto* list : {&ingredient.hazards->statements, &ingredient.hazards->supplemental})
      for (const std::string& code : *list)
        if (!has_rule(code)) put(label, code, {LabelRule::carried, {share_of(ingredient)}});
  }
  for (const Ingredient& ingredient : ingredients)
    if (!carried(ingredient, "H420").empty() && reaches(ingredient.weight_percent, 0.1))
      put(label, "H420", {LabelRule::ozone, {share_of(ingredient)}});
}

// ---- Acute toxicity

struct Route {
  std::array<const char*, 4> codes;            // categories 1 to 4; 1 and 2 share a statement
  std::array<double, 4> converted;             // ATE when only the category is known: CLP Annex I, Table 3.1.2
  std::array<double, 3> up_to;                 // limits of categories 2 (with 1), 3, 4: Table 3.1.1
  std::optional<double> OwnLimits::*recorded;  // the record's own ATE
};
constexpr Route oral{
    {"H300", "H300", "H301", "H302"}, {0.5, 5, 100, 500}, {50, 300, 2000}, &OwnLimits::ATE_oral_mg_per_kg};
constexpr Route dermal{
    {"H310", "H310", "H311", "H312"}, {5, 50, 300, 1100}, {200, 1000, 2000}, &OwnLimits::ATE_dermal_mg_per_kg};
constexpr Route vapour{
    {"H330", "H330", "H331", "H332"}, {0.05, 0.5, 3, 11}, {2, 10, 20}, &OwnLimits::ATE_vapour_mg_per_L};

bool names_class(const Hazards& hazards, const std::string& name) {
  return std::any_of(hazards.classes.begin(), hazards.classes.end(),
                     [&](const std::string& word) { return word.rfind(name, 0) == 0; });
}

// The category from the statement: 0 to 3 for 1 to 4. The statement of 1 and 2 is 2 only where the classes say so.
std::optional<std::size_t> category_of(const Ingredient& ingredient, const Route& route) {
  for (std::size_t i = 1; i < route.codes.size(); ++i) {
    if (carried(ingredient, route.codes[i]).empty()) continue;
    const bool second =
        names_class(*ingredient.hazards, "Acute Tox. 2") && !names_class(*ingredient.hazards, "Acute Tox. 1");
    return i == 1 && !second ? 0 : i;
  }
  return std::nullopt;
}

// Shares below this do not count: CLP Annex I, Table 1.1.
double cut_off_percent(std::size_t category) {
  return category < 3 ? 0.1 : 1;
}

AcuteToxicity judge_route(MixtureLabel& label, const Ingredients& ingredients, const Route& route) {
  AcuteToxicity result;
  std::vector<double> per_cent;
  std::vector<double> ATE;
  for (const Ingredient& ingredient : ingredients) {
    if (!ingredient.hazards && !ingredient.without_hazard) result.unknown_percent += ingredient.weight_percent;
    const auto category = category_of(ingredient, route);
    if (!category || !reaches(ingredient.weight_percent, cut_off_percent(*category))) continue;
    per_cent.push_back(ingredient.weight_percent);
    ATE.push_back((ingredient.hazards->own.*route.recorded).value_or(route.converted[*category]));
  }
  result.ATE = acute_toxicity_estimate(per_cent, ATE, result.unknown_percent);
  if (!result.ATE) return result;
  for (std::size_t i = 0; i < route.up_to.size(); ++i)
    if (*result.ATE <= route.up_to[i] * (1 + 1e-9)) {
      put(label, route.codes[i + 1], {LabelRule::acute_toxicity, {}, {*result.ATE}});
      break;
    }
  return result;
}

void note_what_is_missing(MixtureLabel& label, const Ingredients& ingredients) {
  for (const Ingredient& ingredient : ingredients) {
    if (!ingredient.hazards && !ingredient.without_hazard)
      label.not_known.push_back({LabelGap::What::record, {ingredient.name}, ingredient.weight_percent});
    if (ingredient.hazards && ingredient.hazards->minimum_only)
      label.remarks.push_back({LabelRemark::What::minimum_only, ingredient.name});
    if (ingredient.hazards)
      for (const std::string& remark : ingredient.hazards->own.remarks)
        label.remarks.push_back({LabelRemark::What::of_record, ingredient.name, remark});
  }
}

}  // namespace

std::optional<double> acute_toxicity_estimate(const std::vector<double>& per_cent, const std::vector<double>& ATE,
                                              double unknown_percent) {
  assert(per_cent.size() == ATE.size());
  assert(std::all_of(ATE.begin(), ATE.end(), [](double one) { return one > 0; }));
  double sum = 0;
  for (std::size_t i = 0; i < per_cent.size(); ++i) sum += per_cent[i] / ATE[i];
  if (!(sum > 0)) return std::nullopt;
  const double known = unknown_percent > 10 ? 100 - unknown_percent : 100;
  return known / sum;
}

MixtureLabel classify(const std::vector<Ingredient>& ingredients) {
  assert(std::abs(std::accumulate(ingredients.begin(), ingredients.end(), -100.0,
                                  [](double sum, const Ingredient& one) { return sum + one.weight_percent; })) < 1e-6);
  MixtureLabel label;
  judge_skin_and_eyes(label, ingredients);
  judge_allergy(label, ingredients, "H317", "Skin Sens. 1A");
  judge_allergy(label, ingredients, "H334", "Resp. Sens. 1A");
  judge_single(label, ingredients);
  judge_organs(label, ingredients, "H370", "H371");
  judge_organs(label, ingredients, "H372", "H373");
  for (const char* code : {"H335", "H336"}) put_if_reached(label, code, add_up(ingredients, {{code, 1}}, code, 20), 20);
  put_if_reached(label, "H304", add_up(ingredients, {{"H304", 1}}, "H304", 10), 10);
  label.oral = judge_route(label, ingredients, oral);
  label.dermal = judge_route(label, ingredients, dermal);
  label.vapour = judge_route(label, ingredients, vapour);
  judge_water_life(label, ingredients);
  carry_over(label, ingredients);
  note_what_is_missing(label, ingredients);
  return label;
}

}  // namespace gentlest
