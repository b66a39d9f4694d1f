#include "report/bottle/danger_words.hpp"

#include "gentlest/catalogue/statements.hpp"
#include "report/bottle/statement_words.hpp"
#include "report/form/format.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <set>
#include <utility>

namespace gentlest {

namespace {

// Beside the severity of statements, 0 to 5: what is not known or must not meet comes before all, fire in between.
constexpr int before_all = 6;
constexpr int of_fire = 3;
constexpr int only_irritates = 1;

struct Danger {
  std::string words;
  int rank = 0;
  std::set<std::string> bottles = {};
};
using Dangers = std::vector<Danger>;

void add(Dangers& dangers, const std::string& words, int rank, const std::string& bottle) {
  const auto known =
      std::find_if(dangers.begin(), dangers.end(), [&](const Danger& danger) { return danger.words == words; });
  if (known == dangers.end())
    dangers.push_back({words, rank, {bottle}});
  else
    known->bottles.insert(bottle);
}

bool harms_people(const std::string& code) {
  return code.rfind("H4", 0) != 0 && code != "H290";
}

void add_statements(Dangers& dangers, const Liquid& bottle) {
  const Solvent& solvent = *bottle.solvent;
  for (const std::string& code : known_statements(solvent)) {
    if (!harms_people(code)) continue;
    const int rank = code.rfind("H2", 0) == 0 ? of_fire : severity_of_statements({code});
    const std::string words = statement_words(code);
    add(dangers, words.empty() ? code : words, rank, bottle.label);
  }
  if (!solvent.hazards) add(dangers, "NO HAZARD RECORD, which is no sign of harmlessness", before_all, bottle.label);
  if (!solvent.flash_point_C && flame_among(known_statements(solvent)).empty())
    add(dangers, "how easily it catches fire is not known", of_fire, bottle.label);
}

// In short, behind the names of the liquids; empty where the statements say it, or where it is said of all work.
std::string short_words(const Caution& caution) {
  switch (caution.kind) {
    case CautionKind::hides_flash_point:
      return "may hide a flash point";
    case CautionKind::through_skin:
      return goes_through_skin;
    case CautionKind::last_resort:
      return "do not use it";
    case CautionKind::peroxides:
      return "forms explosive peroxides: date it, test it, never dry it out";
    case CautionKind::denatured:
      return "holds a denaturant of which no record speaks";
    default:
      return {};
  }
}

std::vector<std::string> clashes_of(const std::vector<Caution>& cautions, const std::set<std::string>& all) {
  const auto is_here = [&](const std::string& label) { return all.count(label) > 0; };
  std::vector<std::string> words;
  for (const Caution& caution : cautions)
    if (caution.kind == CautionKind::clash && std::all_of(caution.liquids.begin(), caution.liquids.end(), is_here))
      words.push_back((caution.pair->forbidden ? "DO NOT MIX " : "not together: ") + joined(caution.liquids, " with ") +
                      ": " + caution.pair->why);
  return words;
}

int rank_of(const Caution& caution) {
  return caution.kind == CautionKind::peroxides || caution.kind == CautionKind::last_resort ? 5 : 2;
}

// "all but acetone" where that is shorter.
std::string whose(const std::set<std::string>& bottles, const std::set<std::string>& all) {
  if (bottles == all && all.size() > 2) return "every bottle";
  std::vector<std::string> others;
  std::set_difference(all.begin(), all.end(), bottles.begin(), bottles.end(), std::back_inserter(others));
  if (others.size() == 1 && all.size() > 3) return "all but " + others.front();
  return joined({bottles.begin(), bottles.end()});
}

// Those of the same bottles stand together, at the place of the worst; what only irritates stands in one entry.
std::vector<std::string> gathered(Dangers dangers, const std::set<std::string>& all) {
  std::stable_sort(dangers.begin(), dangers.end(), [](const Danger& a, const Danger& b) { return a.rank > b.rank; });
  std::vector<std::pair<std::set<std::string>, std::vector<std::string>>> by_bottles;
  std::vector<std::string> mild;
  for (const Danger& danger : dangers) {
    const auto known = std::find_if(by_bottles.begin(), by_bottles.end(),
                                    [&](const auto& one) { return one.first == danger.bottles; });
    if (known != by_bottles.end())
      known->second.push_back(danger.words);
    else if (danger.rank <= only_irritates)
      mild.push_back(fmt::format("{} ({})", danger.words, whose(danger.bottles, all)));
    else
      by_bottles.push_back({danger.bottles, {danger.words}});
  }
  std::vector<std::string> lines;
  for (const auto& [bottles, words] : by_bottles) lines.push_back(whose(bottles, all) + ": " + joined(words, "; "));
  if (!mild.empty()) lines.push_back(joined(mild, "; "));
  return lines;
}

}  // namespace

const char* const plan_is_no_permission =
    "A plan for tests, not a permission. Extraction on, gloves that suit, no flame; safety data sheets and local rules "
    "come first, the licensed conservator decides.";
const char* const the_swab_decides = "The swab decides.";

std::vector<std::string> danger_words(const std::vector<Liquid>& bottles, const std::vector<Caution>& cautions) {
  std::set<std::string> all;
  for (const Liquid& bottle : bottles) all.insert(bottle.label);
  Dangers dangers;
  for (const Liquid& bottle : bottles) add_statements(dangers, bottle);
  for (const Caution& caution : cautions) {
    const std::string words = short_words(caution);
    for (const std::string& label : caution.liquids)
      if (!words.empty() && all.count(label) > 0) add(dangers, words, rank_of(caution), label);
  }
  std::vector<std::string> lines = clashes_of(cautions, all);
  for (const std::string& line : gathered(std::move(dangers), all)) lines.push_back(line);
  return lines;
}

}  // namespace gentlest
