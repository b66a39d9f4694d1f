// How typed names are read: what falls away, what is a plural, what counts first, and what is offered.
#include "gentlest/catalogue/catalogue.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gentlest;

namespace {

bool share_a_key(const std::string& a, const std::string& b) {
  const std::vector<std::string> of_b = name_keys(b);
  for (const std::string& key : name_keys(a))
    if (std::find(of_b.begin(), of_b.end(), key) != of_b.end()) return true;
  return false;
}

bool may_be_plural_of(const std::string& plural, const std::string& name) {
  const std::vector<std::string> singulars = singular_keys(plural);
  for (const std::string& key : name_keys(name))
    if (std::find(singulars.begin(), singulars.end(), key) != singulars.end()) return true;
  return false;
}

Solvent solvent(const std::string& id, const std::string& name, std::vector<OtherName> others = {}) {
  Solvent one;
  one.id = id;
  one.name = name;
  one.other_names = std::move(others);
  return one;
}

AmbiguousName ambiguous(const std::string& name, std::vector<NameChoice> choices) {
  return {{{name, NameKind::english, {"names.yaml", 3, 9}}}, std::move(choices), {}};
}

CatalogueRecords records_of(std::vector<Solvent> solvents, std::vector<AmbiguousName> names = {}) {
  CatalogueRecords records;
  records.sources = {{"book", "A Book 1999", "seen"}};
  records.response.source = "book";
  records.solvents = std::move(solvents);
  records.ambiguous_solvents = std::move(names);
  return records;
}

std::string complaint_about_names(CatalogueRecords records) {
  try {
    Catalogue catalogue(std::move(records));
  } catch (const InputError& error) {
    return render(error.faults());
  }
  return "no complaint";
}

}  // namespace

TEST_CASE("spellings of one name share a key") {
  for (const auto& [a, b] : {std::pair{"Paraloid B-72", "paraloid b72"},
                             {"PARALOID B 72", "Paraloid B-72"},
                             {"Äthanol", "Aethanol"},
                             {"Äthanol", "athanol"},
                             {"A\u0308thanol", "Aethanol"},
                             {"Weißleim", "WEISSLEIM"},
                             {"ácido acético", "acido acetico"},
                             {"œuf", "oeuf"},
                             {"α-pinene", "alpha pinene"},
                             {"poly(vinyl acetate)", "polyvinyl acetate"},
                             {"acétate d’éthyle", "acetate d'ethyle"},
                             {"dammar_aged", "dammar aged"},
                             {"1,4-dioxane", "1.4 dioxane"}}) {
    INFO(a << " and " << b);
    CHECK(share_a_key(a, b));
  }
  for (const auto& [a, b] : {std::pair{"1-propanol", "2-propanol"},
                             {"n-butanol", "sec-butanol"},
                             {"o-xylene", "xylene"},
                             {"etanol", "metanol"},
                             {"benzine", "benzene"},
                             {"1,12-x", "11,2-x"}}) {
    INFO(a << " and " << b);
    CHECK_FALSE(share_a_key(a, b));
  }
  CHECK(name_keys(" - ").empty());
  CHECK(name_keys("\xff").size() == 1);  // a stray byte is a letter like another
}

TEST_CASE("plurals are forgiven, and a letter of its own is none") {
  for (const auto& [plural, name] : {std::pair{"xylenes", "xylene"},
                                     {"white spirits", "white spirit"},
                                     {"Lasuren", "Lasur"},
                                     {"Retuschen", "Retusche"},
                                     {"alcoholes", "alcohol"},
                                     {"ragie", "ragia"},
                                     {"acetati", "acetato"},
                                     {"acetoni", "acetone"},
                                     {"essences minérales", "essence minérale"},
                                     {"Xylole", "Xylol"},
                                     {"mineral spirit", "mineral spirits"}}) {
    INFO(plural << " of " << name);
    CHECK(may_be_plural_of(plural, name));
  }
  for (const auto& [typed, name] : {std::pair{"essence E", "essence"},
                                    {"essence S", "essence"},
                                    {"hexanon", "hexano"},
                                    {"heptanon", "heptano"},
                                    {"etanol", "etano"},
                                    {"PMs", "PM"},
                                    {"IPAs", "IPA"},
                                    {"1-propanol", "propanol"},
                                    {"Testbenzin 2", "Testbenzin"}}) {
    INFO(typed << " is no plural of " << name);
    CHECK_FALSE(may_be_plural_of(typed, name));
  }
}

TEST_CASE("ids count as they stand, then names, then questions, then ids in another spelling") {
  const Catalogue catalogue(records_of(
      {solvent("light_cut", "light cut distillate"), solvent("ether_cut", "ether cut", {OtherName{"light ends"}})},
      {ambiguous("light cut", {{"ether_cut", {}, "low", {}}, {"light_cut", {}, "broad", {}}})}));
  CHECK(catalogue.find_solvent("light_cut")->id == "light_cut");
  CHECK(catalogue.find_solvent("Light Ends")->id == "ether_cut");
  CHECK(catalogue.find_solvent("light cut") == nullptr);
  REQUIRE(catalogue.meaning_of_solvent("LIGHT-CUT").ask);
  CHECK(choices_text(*catalogue.meaning_of_solvent("light cut").ask) == "ether_cut (low) or light_cut (broad)");
  CHECK(catalogue.find_solvent("ethercut")->id == "ether_cut");
}

TEST_CASE("a plural of two names is neither") {
  const Catalogue catalogue(records_of({solvent("a", "cerato"), solvent("b", "cerate")}));
  CHECK(catalogue.find_solvent("cerati") == nullptr);
  CHECK(catalogue.find_solvent("ceratos")->id == "a");
}

TEST_CASE("what does not fit together among names is told, one fault each") {
  const NameChoice a{"a", {}, "one", {"names.yaml", 5, 9}};
  const NameChoice b{"b", {}, "other", {"names.yaml", 6, 9}};
  const std::vector<Solvent> two = {solvent("a", "Alpha"), solvent("b", "Beta", {OtherName{"Béta-2"}})};
  struct Bad {
    const char* what;
    AmbiguousName name;
    const char* message;
  };
  const Bad table[] = {
      {"unknown id", ambiguous("ab", {a, {"bb", {}, "x", {"names.yaml", 7, 9}}}),
       "names.yaml:7:9: error: \"ab\" offers \"bb\", which the catalogue does not have"},
      {"a record's name", ambiguous("alpha", {a, b}), "names.yaml:3:9: error: \"alpha\" is to be asked back"},
      {"a record's name in another spelling", ambiguous("beta 2", {a, b}), "is a name of \"b\""},
      {"a record's id", ambiguous("a", {a, b}), "is a name of \"a\""},
      {"one choice", ambiguous("ab", {a}), "fewer than two choices"},
      {"none with a record", ambiguous("ab", {{{}, "x", "1", {}}, {{}, "y", "2", {}}}), "offers no record at all"},
      {"the same twice", ambiguous("ab", {a, a, b}), "offers \"a\" twice"}};
  for (const Bad& bad : table) {
    INFO(bad.what);
    const std::string said = complaint_about_names(records_of(two, {bad.name}));
    INFO(said);
    CHECK(said.find(bad.message) != std::string::npos);
    CHECK(std::count(said.begin(), said.end(), '\n') == 2);  // the fault and its remedy
  }
  CHECK(complaint_about_names(records_of(two, {ambiguous("ab", {a, b}), ambiguous("A-B", {a, b})})).find("twice") !=
        std::string::npos);
  CHECK(complaint_about_names(records_of(two, {ambiguous("ab", {a, {{}, "a third", "not yet", {}}})})) ==
        "no complaint");
  for (const char* other : {"Älpha", "Al-pha", "ALPHA"}) {
    INFO(other);
    CHECK(complaint_about_names(records_of({solvent("a", "Alpha"), solvent("b", "Beta", {OtherName{other}})}))
              .find("\"a\" and \"b\" are both called") != std::string::npos);
  }
  const OtherName spirits{"meths", NameKind::denatured, {}};
  CHECK(complaint_about_names(records_of({solvent("a", "Alpha", {spirits})})).find("but not \"denatured Alpha\"") !=
        std::string::npos);
}

TEST_CASE("an unknown name is answered with the nearest ones, which never decide") {
  const Catalogue catalogue(records_of(
      {solvent("ethanol", "ethanol", {{"EtOH", NameKind::abbreviation, {}}}), solvent("methanol", "methanol"),
       solvent("pm", "PM"), solvent("aromatic_naphtha", "aromatic naphtha", {{"Solvo 100", NameKind::trade, {}}})}));
  const auto remedy = [&](const char* name) { return solvent_fault(name, catalogue, "unknown", "no idea").remedy; };
  CHECK(remedy("ethnol") == "did you mean \"ethanol\"?");
  CHECK(remedy("xthanol") == "did you mean \"ethanol\"?");
  CHECK(remedy("eethanol") == "did you mean \"ethanol\" or \"methanol\"?");
  CHECK(remedy("Solva 100") == "did you mean \"Solvo 100\" (trade name; composition by its data sheet)?");
  CHECK(remedy("naphtha") == "did you mean \"aromatic_naphtha\"?");
  CHECK(remedy("p") == "no idea");
  CHECK(remedy("px") == "no idea");
  CHECK(catalogue.find_solvent("ethnol") == nullptr);
}
