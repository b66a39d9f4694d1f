// Names in use, in five languages, against the catalogue. What each means and where that was seen stands in the table.
#include "shipped.hpp"

#include "gentlest/base/letters.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <set>
#include <sstream>
#include <string>
#include <vector>

using namespace gentlest;
using gentlest::test::shipped_catalogue;

namespace {

struct NameRow {
  std::string name, kind, expected;
};

std::vector<NameRow> table_of_names() {
  std::ifstream in(std::string(GENTLEST_SOURCE_DIR) + "/tests/published/tables/names.tsv");
  std::vector<NameRow> rows;
  bool header = true;
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line[0] == '#') continue;
    std::istringstream cells(line);
    std::string name, language, kind, expected;
    std::getline(cells, name, '\t');
    std::getline(cells, language, '\t');
    std::getline(cells, kind, '\t');
    std::getline(cells, expected, '\t');
    if (!header) rows.push_back({name, kind, expected});
    header = false;
  }
  return rows;
}

template <class Record>
std::string answer_of(const Meaning<Record>& meaning) {
  if (meaning.record) return meaning.record->id;
  if (!meaning.ask) return "unknown";
  std::string ids = "ask:";
  for (const NameChoice& choice : meaning.ask->choices)
    if (!choice.id.empty()) ids += " " + choice.id;
  return ids;
}

std::string answer_to(const std::string& name, const std::string& kind) {
  const Catalogue& catalogue = shipped_catalogue();
  return kind == "solvent" ? answer_of(catalogue.meaning_of_solvent(name))
                           : answer_of(catalogue.meaning_of_material(name));
}

// The choices may stand in any order.
std::set<std::string> words_of(const std::string& answer) {
  std::istringstream in(answer);
  std::set<std::string> words;
  for (std::string word; in >> word;) words.insert(word);
  return words;
}

bool is_record(const std::string& answer) {
  return answer != "unknown" && answer.rfind("ask:", 0) != 0;
}

// How else a person may type it: in capitals, with blanks for hyphens, without accents, umlauts as two letters.
std::vector<std::string> other_spellings(const std::string& name) {
  std::string capitals = name;
  for (char& c : capitals)
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  std::string blanks = name;
  std::replace(blanks.begin(), blanks.end(), '-', ' ');
  const std::vector<std::pair<std::string, std::string>> plain = {
      {"ä", "ae"}, {"ö", "oe"}, {"ü", "ue"}, {"Ä", "Ae"}, {"Ö", "Oe"}, {"Ü", "Ue"}, {"ß", "ss"}, {"é", "e"},
      {"è", "e"},  {"ê", "e"},  {"à", "a"},  {"á", "a"},  {"â", "a"},  {"í", "i"},  {"î", "i"},  {"ó", "o"},
      {"ô", "o"},  {"ú", "u"},  {"û", "u"},  {"ñ", "n"},  {"ç", "c"},  {"œ", "oe"}, {"É", "E"}};
  std::string bare;
  for (std::size_t at = 0; at < name.size();) {
    const std::string letter(letter_at(name, at).bytes);
    const auto found = std::find_if(plain.begin(), plain.end(), [&](const auto& pair) { return pair.first == letter; });
    bare += found == plain.end() ? letter : found->second;
    at += letter.size();
  }
  return {capitals, blanks, bare, "  " + name + " "};
}

}  // namespace

TEST_CASE("names in use lead where they must, in five languages") {
  const std::vector<NameRow> rows = table_of_names();
  REQUIRE(rows.size() >= 600);
  std::size_t asked = 0;
  std::size_t met = 0;
  std::string missed;
  for (const NameRow& row : rows) {
    const std::string answer = answer_to(row.name, row.kind);
    if (row.expected != "unknown") {
      ++asked;
      if (words_of(answer) == words_of(row.expected))
        ++met;
      else
        missed += row.name + " -> " + answer + ", not " + row.expected + "\n";
    }
    INFO(row.name << " leads to " << answer << ", not " << row.expected);
    CHECK((!is_record(answer) || answer == row.expected));  // never a wrong record
  }
  INFO(missed);
  CHECK(asked >= 600);
  CHECK(static_cast<double>(met) >= 0.98 * static_cast<double>(asked));
}

TEST_CASE("a name in another spelling leads to the same") {
  for (const NameRow& row : table_of_names())
    for (const std::string& typed : other_spellings(row.name)) {
      INFO(row.name << " typed as " << typed);
      CHECK(words_of(answer_to(typed, row.kind)) == words_of(answer_to(row.name, row.kind)));
    }
}

TEST_CASE("every name of every record leads to it") {
  const Catalogue& catalogue = shipped_catalogue();
  for (const Solvent& solvent : catalogue.solvents()) {
    std::vector<std::string> names = {solvent.id, solvent.name, solvent.cas};
    for (const OtherName& other : solvent.other_names) names.push_back(other.text);
    for (const std::string& name : names) {
      INFO(name);
      if (!name.empty()) CHECK(catalogue.find_solvent(name) == &solvent);
    }
  }
  for (const Material& material : catalogue.materials()) {
    std::vector<std::string> names = {material.id, material.name};
    for (const OtherName& other : material.other_names) names.push_back(other.text);
    for (const std::string& name : names) {
      INFO(name);
      CHECK(catalogue.find_material(name) == &material);
    }
  }
}

// Other substances, one or two letters away from names that are known. By their chemistry none of them is in the
// catalogue: 2-hexanone, 2- and 3-heptanone under the short name, the gases, motor fuels, a diol for an alcohol.
TEST_CASE("what is not in the catalogue never passes for something near") {
  for (const char* name : {"hexanone", "Hexanon",  "hexanona",   "butane",      "butano",      "Butan",
                           "propane",  "propano",  "Propan",     "etano",       "Ethan",       "metano",
                           "Methan",   "gasoline", "petrol",     "gasolina",    "Superbenzin", "essence sans plomb",
                           "ethane",   "acetal",   "acetamid",   "Benzil",      "benzoin",     "tolane",
                           "tolidine", "xylitol",  "furan",      "ethanethiol", "methanal",    "octanone",
                           "nonanol",  "decanol",  "ethylamine", "methylamine", "butanal",     "propanal"}) {
    const std::string answer = answer_to(name, "solvent");
    INFO(name << " leads to " << answer);
    CHECK_FALSE(is_record(answer));
  }
  for (const char* name : {"Lack", "lacquer", "resin", "Harz", "varnishes of all kinds", "gum", "paint", "amber"}) {
    const std::string answer = answer_to(name, "material");
    INFO(name << " leads to " << answer);
    CHECK_FALSE(is_record(answer));
  }
}

// The law: UK SI 2005/1524, schedule: industrial denatured alcohol holds 5 in 100 by volume of wood naphtha.
TEST_CASE("names of denatured alcohol lead to ethanol and say so") {
  for (const char* name : {"IMS", "methylated spirits", "Brennspiritus", "alcool à brûler", "alcool denaturato",
                           "alcohol desnaturalizado", "denatured ethanol", "vergällter Alkohol"}) {
    const Meaning<Solvent> meaning = shipped_catalogue().meaning_of_solvent(name);
    INFO(name);
    REQUIRE(meaning.record);
    CHECK(meaning.record->id == "ethanol");
    REQUIRE(meaning.by);
    CHECK(meaning.by->kind == NameKind::denatured);
  }
  for (const char* name : {"EtOH", "ethanol", "Äthanol", "64-17-5", "rectified spirit"}) {
    const Meaning<Solvent> meaning = shipped_catalogue().meaning_of_solvent(name);
    INFO(name);
    REQUIRE(meaning.record);
    CHECK((!meaning.by || meaning.by->kind != NameKind::denatured));
  }
}
