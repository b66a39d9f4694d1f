#include "cli/commands.hpp"
#include "cli/faults.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "report/form/format.hpp"
#include "report/form/table.hpp"
#include "report/records/lists.hpp"

#include <fmt/format.h>

#include <set>

namespace gentlest {

namespace {

[[noreturn]] void unknown_word(const char* what, const std::string& typed, const std::vector<std::string>& known) {
  const std::string near = nearest_name(typed, known);
  throw InputError(Fault::usage, fmt::format("unknown {} \"{}\"", what, typed),
                   near.empty() ? "known: " + joined(known) : fmt::format("did you mean \"{}\"?", near));
}

// Records of the family or kind asked for that hold the figure asked for.
template <class Record>
std::vector<const Record*> chosen(const std::vector<Record>& records, const Request& request,
                                  const Catalogue& catalogue, std::string Record::*group,
                                  const std::vector<Holding<Record>>& figures) {
  std::set<std::string> groups;
  for (const Record& record : records) groups.insert(record.*group);
  const Holding<Record>* wanted = nullptr;
  for (const Holding<Record>& figure : figures)
    if (request.having == figure.name) wanted = &figure;
  UsageFaults faults;
  faults.hear([&] {
    if (request.family && !groups.count(*request.family))
      unknown_word("family", *request.family, {groups.begin(), groups.end()});
  });
  faults.hear([&] {
    if (request.having && !wanted) unknown_word("figure", *request.having, names_of(figures));
  });
  faults.tell();
  std::vector<const Record*> kept;
  for (const Record& record : records)
    if ((!request.family || record.*group == *request.family) && (!wanted || wanted->holds(record, catalogue)))
      kept.push_back(&record);
  return kept;
}

void refuse_filters(const Request& request) {
  if (request.family || request.having)
    throw InputError(Fault::usage, fmt::format("\"list {}\" takes neither --family nor --having", request.words[0]),
                     "they belong to `list solvents` and `list materials`");
}

std::vector<const Material*> asked_materials(const Request& request, const Catalogue& catalogue) {
  return chosen(catalogue.materials(), request, catalogue, &Material::kind, material_holdings());
}

Sheet asked_sheet(const Request& request, const Catalogue& catalogue) {
  const std::string& what = request.words.front();
  if (what == "solvents")
    return solvents_sheet(chosen(catalogue.solvents(), request, catalogue, &Solvent::family, solvent_holdings()));
  if (what == "materials") return materials_sheet(asked_materials(request, catalogue));
  refuse_filters(request);
  if (what == "names") return names_sheet(catalogue);
  return what == "sources" ? sources_sheet(catalogue) : families_sheet(catalogue);
}

std::string closing(const Sheet& sheet, const Edition& edition, const Style& style) {
  std::string text = "\n";
  if (sheet.kind == "solvents")
    text += paragraph("dD, dP, dH in MPa^0.5. \"no record\": hazards not known, which is not a sign of harmlessness.",
                      style, 0);
  if (sheet.kind == "materials")
    text += paragraph("`gentlest show ID` says all of one; --format csv and json hold the spheres of all.", style, 0);
  return text + paragraph(fmt::format("{} {}; {}.", sheet.rows.size(), sheet.kind, edition_words(edition)), style, 0);
}

}  // namespace

Answer command_list(const Request& request, Session& session) {
  const std::vector<std::string> lists = {"solvents", "materials", "names", "sources", "families"};
  if (std::find(lists.begin(), lists.end(), request.words.front()) == lists.end())
    unknown_word("list", request.words.front(), lists);
  const Catalogue& catalogue = load_catalogue(request);
  const Edition edition = edition_of(catalogue);
  const Sheet sheet = asked_sheet(request, catalogue);
  const bool by_lines = sheet.kind == "materials" && request.form == Form::text;
  std::string text = by_lines ? materials_lines(asked_materials(request, catalogue), style_of(request, session))
                              : sheet_report(sheet, request.form, style_of(request, session), edition);
  if (request.form == Form::text) text += closing(sheet, edition, style_of(request, session));
  return {text, 0};
}

}  // namespace gentlest
