// The answer of `gentlest afterwards`: one screen, everything, a table, JSON, a page to print.
#pragma once

#include "gentlest/afterwards/afterwards.hpp"
#include "gentlest/catalogue/catalogue.hpp"
#include "report/draw/html.hpp"
#include "report/form/form.hpp"
#include "report/form/sheet.hpp"

#include <string>

namespace gentlest {

/// One screen; with `full` every cell of every stack with its sources.
std::string afterwards_text(const Afterwards& answer, const Job& job, const Catalogue& catalogue, bool full,
                            const Style& style, const Edition& edition);

/// One row a cell; none is left out.
std::string afterwards_csv(const Afterwards& answer, const Catalogue& catalogue, const Edition& edition);

/// docs/schema/afterwards.schema.json.
std::string afterwards_json(const Afterwards& answer, const Job& job, const Catalogue& catalogue,
                            const Edition& edition);

/// A page to print, the stacks drawn.
std::string afterwards_html(const Afterwards& answer, const Job& job, const Catalogue& catalogue, Paper paper,
                            const Edition& edition);

}  // namespace gentlest
