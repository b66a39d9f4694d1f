#include "report/form/format.hpp"
#include "report/records/figures.hpp"

#include <array>
#include <utility>

namespace gentlest {

namespace {

struct NameTitle {
  NameKind kind;
  const char* title;
  const char* mark;
};

constexpr std::array<NameTitle, 8> name_titles = {
    {{NameKind::english, "other names", ""},
     {NameKind::german, "in German", ""},
     {NameKind::french, "in French", ""},
     {NameKind::italian, "in Italian", ""},
     {NameKind::spanish, "in Spanish", ""},
     {NameKind::abbreviation, "abbreviations", ""},
     {NameKind::trade, "trade names", " (trade name; composition by its data sheet)"},
     {NameKind::denatured, "denatured", " (what it is denatured with is not in this record; see the data sheet)"}}};

}  // namespace

void add_other_names(Card& card, const std::vector<OtherName>& names) {
  if (names.empty()) card.facts.emplace_back(name_titles.front().title, "none recorded");
  for (const NameTitle& one : name_titles) {
    std::vector<std::string> of_kind;
    for (const OtherName& name : names)
      if (name.kind == one.kind) of_kind.push_back(name.text);
    if (!of_kind.empty()) card.facts.emplace_back(one.title, joined(of_kind) + one.mark);
  }
}

}  // namespace gentlest
