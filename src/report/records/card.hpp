// Everything the catalogue says about one solvent or material: each figure with its standing and source, what is not
// known said so, disagreeing values side by side.
#pragma once

#include "gentlest/answers/observed.hpp"
#include "gentlest/catalogue/catalogue.hpp"
#include "report/form/form.hpp"

#include <string>
#include <utility>
#include <vector>

namespace gentlest {

/// What one publication says: numbers or words, with its standing and source.
struct Statement {
  std::vector<double> values;
  std::string words;  ///< used when there are no values
  std::string source;
  std::string standing;
  std::string note;
};

/// One figure of a record. Without statements it is not known.
struct Figure {
  std::string key;    ///< for machines, unit included
  std::string title;  ///< for people
  std::string unit;
  std::vector<Statement> statements;  ///< the chosen one first, then what others published
  std::string why;                    ///< why the first was chosen
  std::string unknown;                ///< said when there is no statement; "not known" where empty
};

struct FigureGroup {
  std::string title;
  std::vector<Figure> figures;
};

/// What was seen of one liquid on one material. Points into the catalogue, which must outlive the card.
struct ObservedRow {
  std::string liquid;    ///< by name, or in the words of the source
  std::string material;  ///< by name
  JudgedObservation judged;
};

struct Card {
  std::string kind;  ///< "solvent" or "material"
  std::string id;
  std::string name;
  std::vector<std::pair<std::string, std::string>> facts;  ///< family, CAS number, other names ...
  std::vector<FigureGroup> groups;
  std::vector<ObservedRow> observations;
  std::vector<Source> sources;  ///< of all figures, then of the observations, in order of first use
};

Card solvent_card(const Solvent& solvent, const Catalogue& catalogue);
Card material_card(const Material& material, const Catalogue& catalogue);

/// All cards one after the other.
std::string cards_report(const std::vector<Card>& cards, Form form, const Style& style, const Edition& edition);

}  // namespace gentlest
