// What is said of a name that leads to no record: the question back, or the names that are near.
#include "gentlest/catalogue/catalogue.hpp"

#include <utility>

namespace gentlest {

namespace {

std::string sum_of(const std::vector<std::string>& list, std::string_view last) {
  std::string text;
  for (std::size_t i = 0; i < list.size(); ++i)
    text += (i == 0 ? "" : i + 1 == list.size() ? std::string(last) : ", ") + list[i];
  return text;
}

NameFault fault_of(std::string_view name, const AmbiguousName* ask, const char* what, std::string unknown,
                   const Catalogue& catalogue, NamesOf whose, const std::string& otherwise) {
  if (ask) return {"\"" + std::string(name) + "\" may be more than one " + what, "say which: " + choices_text(*ask)};
  return {std::move(unknown), did_you_mean(catalogue.names_near(name, whose), otherwise)};
}

}  // namespace

std::string did_you_mean(const std::vector<OfferedName>& names, const std::string& otherwise) {
  if (names.empty()) return otherwise;
  std::vector<std::string> quoted;
  for (const OfferedName& name : names)
    quoted.push_back("\"" + name.text + "\"" + (name.is_trade ? " (trade name; composition by its data sheet)" : ""));
  return "did you mean " + sum_of(quoted, " or ") + "?";
}

std::string choices_text(const AmbiguousName& name) {
  std::vector<std::string> choices;
  std::string missing;
  for (const NameChoice& choice : name.choices) {
    const std::string word = choice.word.empty() ? "" : " (" + choice.word + ")";
    if (choice.id.empty())
      missing += "; no record yet: " + choice.no_record + word;
    else
      choices.push_back(choice.id + word);
  }
  return sum_of(choices, " or ") + missing + (name.note.empty() ? "" : "; " + name.note);
}

NameFault solvent_fault(std::string_view name, const Catalogue& catalogue, std::string unknown,
                        const std::string& otherwise) {
  const Meaning<Material> other = catalogue.meaning_of_material(name);
  if (!catalogue.meaning_of_solvent(name).ask && (other.record || other.ask))
    return {"\"" + std::string(name) + "\" is a material of layers, not a solvent",
            "name a liquid; `gentlest list solvents` shows them all"};
  return fault_of(name, catalogue.meaning_of_solvent(name).ask, "solvent", std::move(unknown), catalogue,
                  NamesOf::solvents, otherwise);
}

NameFault material_fault(std::string_view name, const Catalogue& catalogue, std::string unknown,
                         const std::string& otherwise) {
  const Meaning<Solvent> other = catalogue.meaning_of_solvent(name);
  if (!catalogue.meaning_of_material(name).ask && (other.record || other.ask))
    return {"\"" + std::string(name) + "\" is a solvent, not a material of layers",
            "name what the layer is made of; `gentlest list materials` shows them all"};
  return fault_of(name, catalogue.meaning_of_material(name).ask, "material", std::move(unknown), catalogue,
                  NamesOf::materials, otherwise);
}

}  // namespace gentlest
