// The flammable class of a pure liquid by its own figures: CLP Annex I 2.6.1.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"

namespace gentlest {

/// Sets flame_by_figures and, where its hazard record names a milder class or none, completes the record: statement,
/// class, pictogram, signal word. A liquid without a record gets none.
void complete_flame(Solvent& solvent, const Catalogue& catalogue);

}  // namespace gentlest
