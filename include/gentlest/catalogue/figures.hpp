// The cited figures of a liquid, once: the reader of the catalogue, the check of sources, lists and cards walk this
// table.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace gentlest {

/// One figure of a liquid. Each may be missing, "not known"; where `hansen` is, Solvent::no_hansen says why.
/// Hazards, exposure limits and restrictions are records of their own and no figures.
struct SolventFigure {
  using Member = std::variant<std::optional<Known<double>> Solvent::*, std::optional<Known<Hansen>> Solvent::*,
                              std::optional<Known<Teas>> Solvent::*, std::optional<Known<ExplosiveLimits>> Solvent::*,
                              std::optional<Known<PrintedRange>> Solvent::*, std::optional<Known<Antoine>> Solvent::*,
                              std::optional<Cited<Hansen>> Solvent::*, std::optional<Cited<std::string>> Solvent::*,
                              std::optional<Cited<bool>> Solvent::*>;
  const char* key;       ///< in the files of the catalogue
  const char* name;      ///< for `list --having`, without a unit
  const char* data_key;  ///< in the JSON and CSV of a card; carries the unit
  const char* unit;      ///< beside the figure on a card; empty where it has none
  Member member;
};

/// In the order of the files.
const std::vector<SolventFigure>& solvent_figures();

/// By key; null when there is none.
const SolventFigure* find_solvent_figure(std::string_view key);

bool is_known(const SolventFigure& figure, const Solvent& solvent);

/// The source of every value, of those not chosen too; empty where the figure is not known.
std::vector<std::string> sources_of(const SolventFigure& figure, const Solvent& solvent);

/// The sources of these keys in the order of the keys; what the catalogue does not know (an own figure) is left out.
std::vector<Source> named_sources(const std::set<std::string>& keys, const Catalogue& catalogue);

}  // namespace gentlest
