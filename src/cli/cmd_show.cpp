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

Diagnostic unknown_name(const std::string& name, const Catalogue& catalogue) {
  std::vector<std::string> known = catalogue.solvent_names();
  const std::vector<std::string> materials = catalogue.material_names();
  known.insert(known.end(), materials.begin(), materials.end());
  const std::string near = nearest_name(name, known);
  return {{},
          fmt::format("unknown solvent or material \"{}\"", name),
          near.empty() ? "`gentlest list solvents` and `gentlest list materials` show the known ones"
                       : fmt::format("did you mean \"{}\"?", near),
          {}};
}

}  // namespace

Answer command_show(const Request& request, Session& session) {
  const Catalogue catalogue = load_catalogue(request);
  std::vector<Card> cards;
  std::vector<Diagnostic> faults;
  // "show ethyl acetate" without quotes is one name.
  if (!add_cards(cards, joined(request.words, " "), catalogue))
    for (const std::string& name : request.words)
      if (!add_cards(cards, name, catalogue)) faults.push_back(unknown_name(name, catalogue));
  if (!faults.empty()) throw InputError(Fault::usage, std::move(faults));
  return {cards_report(cards, request.form, style_of(request, session), edition_of(catalogue)), 0};
}

}  // namespace gentlest
