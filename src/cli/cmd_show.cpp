#include "cli/commands.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "report/form/format.hpp"
#include "report/records/card.hpp"

#include <fmt/format.h>

#include <utility>

namespace gentlest {

namespace {

// A name may be a solvent's and a material's at once.
bool add_cards(std::vector<Card>& cards, const std::string& name, const Catalogue& catalogue) {
  const Solvent* solvent = catalogue.find_solvent(name);
  const Material* material = catalogue.find_material(name);
  if (solvent) cards.push_back(solvent_card(*solvent, catalogue));
  if (material) cards.push_back(material_card(*material, catalogue));
  return solvent || material;
}

bool is_asked_back(const std::string& name, const Catalogue& catalogue) {
  return catalogue.meaning_of_solvent(name).ask || catalogue.meaning_of_material(name).ask;
}

// Asked back as a solvent, as a material, or both.
void add_faults(std::vector<Diagnostic>& faults, const std::string& name, const Catalogue& catalogue) {
  const auto add = [&](const NameFault& fault) { faults.push_back({{}, fault.message, fault.remedy, {}}); };
  if (catalogue.meaning_of_solvent(name).ask) add(solvent_fault(name, catalogue, {}, {}));
  if (catalogue.meaning_of_material(name).ask) add(material_fault(name, catalogue, {}, {}));
  if (is_asked_back(name, catalogue)) return;
  add({fmt::format("unknown solvent or material \"{}\"", name),
       did_you_mean(catalogue.names_near(name, NamesOf::both),
                    "`gentlest list solvents` and `gentlest list materials` show the known ones")});
}

}  // namespace

Answer command_show(const Request& request, Session& session) {
  const Catalogue& catalogue = load_catalogue(request);
  std::vector<Card> cards;
  std::vector<Diagnostic> faults;
  // "show ethyl acetate" without quotes is one name.
  const std::string together = joined(request.words, " ");
  const bool is_found = add_cards(cards, together, catalogue);
  if (!is_found && is_asked_back(together, catalogue))
    add_faults(faults, together, catalogue);
  else if (!is_found)
    for (const std::string& name : request.words)
      if (!add_cards(cards, name, catalogue)) add_faults(faults, name, catalogue);
  if (!faults.empty()) throw InputError(Fault::usage, std::move(faults));
  return {cards_report(cards, request.form, style_of(request, session), edition_of(catalogue)), 0};
}

}  // namespace gentlest
