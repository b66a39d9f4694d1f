#include "report/bottle/statement_words.hpp"
#include "report/form/format.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/words.hpp"
#include "report/records/figures.hpp"
#include "report/records/observed_rows.hpp"

#include <cstdlib>

namespace gentlest {

namespace {

FigureGroup solubility(const Solvent& solvent) {
  Figure hansen = figure_of(solvent, "hansen", "dD, dP, dH");
  hansen.unknown = solvent.no_hansen;
  Figure computed{"teas_computed_percent", "fd, fp, fh, computed", "%", {}, {}, {}};
  if (solvent.hansen)
    computed.statements.push_back({values_of(teas_fractions(solvent.hansen->chosen.value)),
                                   {},
                                   solvent.hansen->chosen.source,
                                   std::string(to_word(Standing::derived)),
                                   "from dD, dP, dH; a view only"});
  for (Statement& statement : computed.statements)
    for (double& value : statement.values) value = std::strtod(fixed(value, 1).c_str(), nullptr);
  return {"Solubility",
          {hansen, figure_of(solvent, "hansen_sd", spread_of_these),
           figure_of(solvent, "teas", "fd, fp, fh, as published"), computed}};
}

FigureGroup physical(const Solvent& solvent) {
  return {"Physical data",
          {figure_of(solvent, "molar_mass_g_per_mol", "molar mass"),
           figure_of(solvent, "molar_volume_cm3_per_mol", "molar volume"),
           figure_of(solvent, "density_g_per_cm3", "density"), figure_of(solvent, "boiling_point_C", "boiling point"),
           figure_of(solvent, "boiling_range_C", "boils from, to"),
           figure_of(solvent, "aromatics_percent", "aromatics, from, to"),
           figure_of(solvent, "vapour_pressure_kPa", "vapour pressure"),
           figure_of(solvent, "evaporation_rate", "evaporation rate (n-butyl acetate = 1)"),
           figure_of(solvent, "antoine", "vapour pressure equation: A, B, C, from K, to K")}};
}

FigureGroup fire(const Solvent& solvent) {
  return {"Fire",
          {figure_of(solvent, "flash_point_C", "flash point"),
           figure_of(solvent, "autoignition_C", "catches fire by itself at"),
           figure_of(solvent, "explosive_limits", "explosive in air, lower and upper limit")}};
}

Figure words_figure(const char* key, const char* title, const Hazards& hazards, const std::string& words) {
  return {key, title, "", {words_statement(words, hazards.source, hazards.standing, hazards.note)}, {}, {}};
}

// What the record lacks is not its source's word, nor is what follows from it.
void mark_added_flame(FigureGroup& group, const Hazards& hazards) {
  if (!hazards.added_flame) return;
  for (Figure& figure : group.figures) {
    Statement& statement = figure.statements.front();
    const bool is_it = statement.words == statement_text(hazards.added_flame->code);
    if (is_it || figure.key == "signal_word" || figure.key == "hazard_classes" || figure.key == "pictograms")
      statement.standing = std::string(to_word(Standing::derived));
    if (!is_it) continue;
    statement.note = "by its flash point (CLP Annex I 2.6.1); the record itself names " +
                     (hazards.added_flame->recorded.empty() ? "no flammable class" : hazards.added_flame->recorded);
  }
}

void add_classification(FigureGroup& group, const Hazards& hazards) {
  const auto add = [&](const char* key, const char* title, const std::string& words) {
    group.figures.push_back(words_figure(key, title, hazards, words));
    if (group.figures.size() > 1) group.figures.back().statements.front().note.clear();  // once is enough
  };
  add("signal_word", "signal word", hazards.signal_word.empty() ? "none" : hazards.signal_word);
  for (const std::string& code : hazards.statements) add("hazard_statement", "hazard statement", statement_text(code));
  for (const std::string& code : hazards.supplemental)
    add("supplemental_statement", "supplemental statement", statement_text(code));
  if (!hazards.classes.empty()) add("hazard_classes", "classes", joined(hazards.classes));
  if (!hazards.pictograms.empty()) add("pictograms", "pictograms", joined(hazards.pictograms));
  if (!hazards.specific_limits.empty()) add("specific_limits", "special limits", hazards.specific_limits);
  if (hazards.minimum_only)
    add("minimum_classification", "minimum only", "suppliers may classify further: read the safety data sheet");
  mark_added_flame(group, hazards);
}

FigureGroup hazard_group(const Solvent& solvent) {
  FigureGroup group{"Hazards (codes of the GHS, words of ours; the safety data sheet decides)", {}};
  if (solvent.hazards)
    add_classification(group, *solvent.hazards);
  else
    group.figures.push_back({"hazard_statement", "classification", "", {}, {}, no_record});
  group.figures.push_back(figure_of(solvent, "carcinogen_group", "cancer group (IARC)"));
  group.figures.push_back(figure_of(solvent, "peroxide_former", "forms peroxides on standing"));
  for (const Cited<std::string>& rule : solvent.restrictions)
    group.figures.push_back({"restriction",
                             "legal limit of use",
                             "",
                             {words_statement(rule.value, rule.source, rule.standing, rule.note)},
                             {},
                             {}});
  return group;
}

FigureGroup limit_group(const Solvent& solvent) {
  FigureGroup group{"Limits for the air at the workplace", {}};
  for (const ExposureLimit& limit : solvent.exposure_limits)
    group.figures.push_back({"exposure_limit",
                             limit.authority,
                             "",
                             {words_statement(limit_text(limit), limit.source, limit.standing, limit.note)},
                             {},
                             {}});
  if (group.figures.empty()) group.figures.push_back({"exposure_limit", "exposure limit", "", {}, {}, no_record});
  return group;
}

}  // namespace

Card solvent_card(const Solvent& solvent, const Catalogue& catalogue) {
  Card card{"solvent", solvent.id, solvent.name, {}, {}, {}, {}};
  card.facts = {{"family", solvent.family}, {"CAS number", solvent.cas.empty() ? "none" : solvent.cas}};
  add_other_names(card, solvent.other_names);
  if (solvent.is_blend) card.facts.emplace_back("blend", "a cut or mixture: figures are typical, not exact");
  if (solvent.reference_only)
    card.facts.emplace_back("use", "kept for comparison; never proposed unless a job names it on its shelf");
  if (!solvent.remark.empty()) card.facts.emplace_back("remark", solvent.remark);
  card.groups = {solubility(solvent), physical(solvent), fire(solvent), hazard_group(solvent), limit_group(solvent)};
  card.observations = observed_rows(catalogue.observations_with(solvent), catalogue);
  card.sources = sources_of(card, catalogue);
  return card;
}

}  // namespace gentlest
