#include "cli/commands.hpp"
#include "report/form/format.hpp"
#include "report/form/sheet.hpp"
#include "report/phrases/words.hpp"

#include <fmt/format.h>

namespace gentlest {

Answer command_version(const Request& request, Session& session) {
  const Catalogue& catalogue = load_catalogue(request);
  const Edition edition = edition_of(catalogue);
  const std::string origin = request.data.value_or("built in");
  if (request.form == Form::text)
    return {fmt::format("gentlest {}\ncatalogue {} ({}): {} solvents, {} materials\n{}", edition.program,
                        edition.catalogue, origin, catalogue.solvents().size(), catalogue.materials().size(),
                        paragraph(law_words(edition.law), style_of(request, session), 0)),
            0};
  const Sheet sheet{
      "versions",
      {{"origin", "", -1, false}, {"solvents", "", 0, false}, {"materials", "", 0, false}},
      {{origin, static_cast<double>(catalogue.solvents().size()), static_cast<double>(catalogue.materials().size())}}};
  return {sheet_report(sheet, request.form, {}, edition), 0};
}

}  // namespace gentlest
