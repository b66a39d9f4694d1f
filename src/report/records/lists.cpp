#include "report/records/lists.hpp"

#include "gentlest/catalogue/figures.hpp"
#include "report/bottle/statement_words.hpp"
#include "report/form/format.hpp"
#include "report/phrases/words.hpp"

#include <fmt/format.h>

#include <map>

namespace gentlest {

namespace {

Cell number_cell(const std::optional<Known<double>>& known) {
  return known ? Cell(known->chosen.value) : Cell();
}

Cell words_cell(const std::string& words) {
  return words.empty() ? Cell() : Cell(words);
}

// What the law asks, rule by rule.
std::string restrictions_of(const Solvent& solvent) {
  std::vector<std::string> rules;
  for (const Cited<std::string>& rule : solvent.restrictions)
    rules.push_back(fmt::format("{} ({})", rule.value, to_word(rule.standing)));
  return joined(rules, "; ");
}

std::vector<Cell> solvent_row(const Solvent& solvent) {
  const auto& hansen = solvent.hansen;
  const auto part = [&](double Hansen::*which) { return hansen ? Cell(hansen->chosen.value.*which) : Cell(); };
  return {solvent.id,
          solvent.name,
          solvent.family,
          words_cell(solvent.cas),
          part(&Hansen::dD),
          part(&Hansen::dP),
          part(&Hansen::dH),
          hansen ? Cell(std::string(to_word(hansen->chosen.standing))) : Cell(),
          number_cell(solvent.boiling_point_C),
          number_cell(solvent.flash_point_C),
          solvent.hazards ? Cell(signal_text(solvent.hazards)) : Cell(std::string("no record")),
          solvent.hazards ? Cell(joined(solvent.hazards->statements, " ")) : Cell(),
          words_cell(restrictions_of(solvent)),
          solvent.reference_only,
          hansen ? Cell(hansen->chosen.source) : Cell()};
}

std::vector<Cell> material_row(const Material& material) {
  std::vector<Cell> row = {material.id, material.name, words_cell(material.kind), words_cell(material.state)};
  if (!material.sphere) {
    row.insert(row.end(), {Cell(), Cell(), Cell(), Cell(), std::string("no sphere"), Cell(), Cell()});
  } else {
    const Cited<Sphere>& chosen = material.sphere->sphere.chosen;
    row.insert(row.end(),
               {chosen.value.centre.dD, chosen.value.centre.dP, chosen.value.centre.dH, chosen.value.R0,
                std::string(to_word(material.sphere->grade)), std::string(to_word(chosen.standing)), chosen.source});
  }
  std::vector<std::string> flags;  // as a job writes them
  for (const Flag flag : material.flags) flags.emplace_back(to_word(flag));
  row.emplace_back(joined(flags));
  return row;
}

}  // namespace

const std::vector<Holding<Solvent>>& solvent_holdings() {
  static const std::vector<Holding<Solvent>> holdings = [] {
    std::vector<Holding<Solvent>> all;
    for (const SolventFigure& figure : solvent_figures())
      all.push_back({figure.name, [&figure](const Solvent& one, const Catalogue&) { return is_known(figure, one); }});
    all.push_back({"hazards", [](const Solvent& one, const Catalogue&) { return one.hazards.has_value(); }});
    all.push_back(
        {"exposure_limits", [](const Solvent& one, const Catalogue&) { return !one.exposure_limits.empty(); }});
    all.push_back({"restrictions", [](const Solvent& one, const Catalogue&) { return !one.restrictions.empty(); }});
    all.push_back({"unifac", [](const Solvent& one, const Catalogue&) { return !one.unifac_groups.empty(); }});
    all.push_back({"observations", [](const Solvent& one, const Catalogue& catalogue) {
                     return !catalogue.observations_with(one).empty();
                   }});
    return all;
  }();
  return holdings;
}

const std::vector<Holding<Material>>& material_holdings() {
  static const std::vector<Holding<Material>> holdings = {
      {"sphere", [](const Material& one, const Catalogue&) { return one.sphere.has_value(); }},
      {"teas_region", [](const Material& one, const Catalogue&) { return one.teas_region.has_value(); }},
      {"response", [](const Material& one, const Catalogue&) { return one.response.has_value(); }},
      {"observations",
       [](const Material& one, const Catalogue& catalogue) { return !catalogue.observations_on(one).empty(); }}};
  return holdings;
}

Sheet solvents_sheet(const std::vector<const Solvent*>& solvents) {
  Sheet sheet{"solvents", {}, {}};
  sheet.columns = {{"id", "id", -1, true},
                   {"name", "", -1, true},
                   {"family", "family", -1, true},
                   {"cas", "CAS", -1, true},
                   {"dD_MPa05", "dD", 1, true},
                   {"dP_MPa05", "dP", 1, true},
                   {"dH_MPa05", "dH", 1, true},
                   {"hansen_standing", "standing", -1, true},
                   {"boiling_point_C", "boils C", 0, true},
                   {"flash_point_C", "flash C", 0, true},
                   {"signal_word", "signal word", -1, true},
                   {"hazard_statements", "", -1, true},
                   {"restrictions", "", -1, true},
                   {"reference_only", "", -1, false},
                   {"hansen_source", "", -1, false}};
  for (const Solvent* solvent : solvents) sheet.rows.push_back(solvent_row(*solvent));
  return sheet;
}

Sheet materials_sheet(const std::vector<const Material*>& materials) {
  Sheet sheet{"materials", {}, {}};
  sheet.columns = {{"id", "id", -1, true},
                   {"name", "", -1, true},
                   {"kind", "", -1, true},
                   {"state", "state", -1, true},
                   {"dD_MPa05", "dD", 1, true},
                   {"dP_MPa05", "dP", 1, true},
                   {"dH_MPa05", "dH", 1, true},
                   {"R0_MPa05", "R0", 1, true},
                   {"sphere_grade", "grade", -1, true},
                   {"sphere_standing", "standing", -1, true},
                   {"sphere_source", "", -1, false},
                   {"warnings", "warnings", -1, true}};
  for (const Material* material : materials) sheet.rows.push_back(material_row(*material));
  return sheet;
}

std::string materials_lines(const std::vector<const Material*>& materials, const Style& style) {
  constexpr std::size_t name_width = 46;
  std::string text;
  for (const Material* material : materials) {
    const std::size_t width = display_width(material->name);
    const std::string id = material->id + (material->sphere ? "" : "  no sphere");
    const std::string line =
        "  " + material->name + std::string(width < name_width ? name_width - width : 0, ' ') + "  " + id;
    // The id, which is what one types, stays whole: below the name where there is no room beside it.
    text += display_width(line) <= style.width ? line + "\n" : paragraph(material->name, style) + "      " + id + "\n";
  }
  return text;
}

Sheet sources_sheet(const Catalogue& catalogue) {
  Sheet sheet{
      "sources", {{"key", "key", -1, true}, {"citation", "citation", -1, true}, {"seen", "seen", -1, true}}, {}};
  for (const Source& source : catalogue.sources())
    sheet.rows.push_back({source.key, source.citation, words_cell(source.seen)});
  return sheet;
}

Sheet names_sheet(const Catalogue& catalogue) {
  Sheet sheet{"names",
              {{"name", "name", -1, true},
               {"id", "id", -1, false},
               {"record", "record", -1, true},
               {"of", "of", -1, false},
               {"group", "group", -1, false},
               {"language", "language", -1, false},
               {"asks", "asks", -1, true}},
              {}};
  const auto add_record = [&](const auto& record, const char* of, const std::string& group) {
    sheet.rows.push_back({record.name, record.id, record.name, std::string(of), group, std::string("name"), {}});
    for (const OtherName& other : record.other_names)
      sheet.rows.push_back(
          {other.text, record.id, record.name, std::string(of), group, std::string(to_word(other.kind)), {}});
  };
  const auto add_asked = [&](const std::vector<AmbiguousName>& ambiguous, const char* of) {
    for (const AmbiguousName& one : ambiguous)
      for (const OtherName& other : one.names)
        sheet.rows.push_back(
            {other.text, {}, {}, std::string(of), {}, std::string(to_word(other.kind)), choices_text(one)});
  };
  for (const Solvent& solvent : catalogue.solvents()) add_record(solvent, "solvent", solvent.family);
  add_asked(catalogue.ambiguous_solvents(), "solvent");
  for (const Material& material : catalogue.materials()) add_record(material, "material", material.kind);
  add_asked(catalogue.ambiguous_materials(), "material");
  return sheet;
}

Sheet families_sheet(const Catalogue& catalogue) {
  std::map<std::string, int> solvents;
  std::map<std::string, int> materials;
  for (const Solvent& solvent : catalogue.solvents()) ++solvents[solvent.family];
  for (const Material& material : catalogue.materials()) ++materials[material.kind];
  Sheet sheet{
      "families", {{"family", "family", -1, true}, {"of", "of", -1, false}, {"records", "records", 0, false}}, {}};
  for (const auto& [family, count] : solvents)
    sheet.rows.push_back({family, std::string("solvents"), static_cast<double>(count)});
  for (const auto& [kind, count] : materials)
    sheet.rows.push_back({words_cell(kind), std::string("materials"), static_cast<double>(count)});
  return sheet;
}

}  // namespace gentlest
