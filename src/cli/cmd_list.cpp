#include "cli/commands.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "report/form/format.hpp"
#include "report/records/lists.hpp"

#include <fmt/format.h>

#include <functional>
#include <set>

namespace gentlest {

namespace {

template <class Record>
struct Holding {
  const char* figure;
  std::function<bool(const Record&)> holds;
};

std::vector<Holding<Solvent>> solvent_figures() {
  return {{"hansen", [](const Solvent& s) { return s.hansen.has_value(); }},
          {"teas", [](const Solvent& s) { return s.teas.has_value(); }},
          {"boiling_point", [](const Solvent& s) { return s.boiling_point_C.has_value(); }},
          {"vapour_pressure", [](const Solvent& s) { return s.vapour_pressure_kPa.has_value(); }},
          {"flash_point", [](const Solvent& s) { return s.flash_point_C.has_value(); }},
          {"hazards", [](const Solvent& s) { return s.hazards.has_value(); }},
          {"exposure_limits", [](const Solvent& s) { return !s.exposure_limits.empty(); }},
          {"antoine", [](const Solvent& s) { return s.antoine.has_value(); }},
          {"unifac", [](const Solvent& s) { return !s.unifac_groups.empty(); }}};
}

std::vector<Holding<Material>> material_figures() {
  return {{"sphere", [](const Material& m) { return m.sphere.has_value(); }},
          {"teas_region", [](const Material& m) { return m.teas_region.has_value(); }},
          {"response", [](const Material& m) { return m.response.has_value(); }},
          {"observations", [](const Material& m) { return !m.observations.empty(); }}};
}

[[noreturn]] void unknown_word(const char* what, const std::string& typed, const std::vector<std::string>& known) {
  const std::string near = nearest_name(typed, known);
  throw InputError(Fault::usage, fmt::format("unknown {} \"{}\"", what, typed),
                   near.empty() ? "known: " + joined(known) : fmt::format("did you mean \"{}\"?", near));
}

// Records of the family or kind asked for that hold the figure asked for.
template <class Record>
std::vector<const Record*> chosen(const std::vector<Record>& records, const Request& request,
                                  std::string Record::*group, const std::vector<Holding<Record>>& figures) {
  std::set<std::string> groups;
  for (const Record& record : records) groups.insert(record.*group);
  if (request.family && !groups.count(*request.family))
    unknown_word("family", *request.family, {groups.begin(), groups.end()});
  std::vector<std::string> names;
  const Holding<Record>* wanted = nullptr;
  for (const Holding<Record>& figure : figures) {
    names.emplace_back(figure.figure);
    if (request.having == figure.figure) wanted = &figure;
  }
  if (request.having && !wanted) unknown_word("figure", *request.having, names);
  std::vector<const Record*> kept;
  for (const Record& record : records)
    if ((!request.family || record.*group == *request.family) && (!wanted || wanted->holds(record)))
      kept.push_back(&record);
  return kept;
}

void refuse_filters(const Request& request) {
  if (request.family || request.having)
    throw InputError(Fault::usage, fmt::format("\"list {}\" takes neither --family nor --having", request.words[0]),
                     "they belong to `list solvents` and `list materials`");
}

Sheet asked_sheet(const Request& request, const Catalogue& catalogue) {
  const std::string& what = request.words.front();
  if (what == "solvents")
    return solvents_sheet(chosen(catalogue.solvents(), request, &Solvent::family, solvent_figures()));
  if (what == "materials")
    return materials_sheet(chosen(catalogue.materials(), request, &Material::kind, material_figures()));
  refuse_filters(request);
  return what == "sources" ? sources_sheet(catalogue) : families_sheet(catalogue);
}

std::string closing(const Sheet& sheet, const Edition& edition) {
  std::string text = "\n";
  if (sheet.kind == "solvents")
    text += "dD, dP, dH in MPa^0.5. \"no record\": hazards not known, which is not a sign of harmlessness.\n";
  if (sheet.kind == "materials")
    text += "dD, dP, dH, R0 in MPa^0.5. `gentlest show ID` says what each grade rests on.\n";
  return text + fmt::format("{} {}; gentlest {}, catalogue {}.\n", sheet.rows.size(), sheet.kind, edition.program,
                            edition.catalogue);
}

}  // namespace

Answer command_list(const Request& request, Session& session) {
  const std::vector<std::string> lists = {"solvents", "materials", "sources", "families"};
  if (std::find(lists.begin(), lists.end(), request.words.front()) == lists.end())
    unknown_word("list", request.words.front(), lists);
  const Catalogue catalogue = load_catalogue(request);
  const Edition edition = edition_of(catalogue);
  const Sheet sheet = asked_sheet(request, catalogue);
  std::string text = sheet_report(sheet, request.form, style_of(request, session), edition);
  if (request.form == Form::text) text += closing(sheet, edition);
  return {text, 0};
}

}  // namespace gentlest
