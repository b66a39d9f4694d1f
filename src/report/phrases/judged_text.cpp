#include "report/bottle/statement_words.hpp"
#include "report/form/format.hpp"
#include "report/phrases/fit_words.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/judged.hpp"
#include "report/phrases/sighting_words.hpp"
#include "report/phrases/words.hpp"

#include "gentlest/job/limits.hpp"

#include <fmt/format.h>

#include <map>

namespace gentlest {

namespace {

std::string limits_by_authority(const Solvent& solvent) {
  std::vector<std::string> limits;
  for (const ExposureLimit& limit : solvent.exposure_limits)
    limits.push_back(limit.authority + ": " + limit_text(limit) + standing_mark(limit.standing));
  return joined(limits, "; ", no_record);
}

const PlannedLayer* target_of(const std::vector<PlannedLayer>& layers) {
  for (const PlannedLayer& layer : layers)
    if (layer.is_target) return &layer;
  return nullptr;
}

std::string stand_ins_text(const std::vector<PlannedLayer>& layers, StandIns form, const Style& style) {
  std::string text;
  std::vector<std::string> names;
  for (const PlannedLayer& layer : layers) {
    if (layer.assumption.empty()) continue;
    names.push_back(layer.name);
    if (form == StandIns::in_full) text += bullet("Stand-in for " + layer.name + ": " + layer.assumption, style);
  }
  if (form == StandIns::in_full || names.empty()) return text;
  return bullet("Stand-in: another material's range is borrowed and changed for " + joined(names) +
                    "; \"Weak figures\" below says how. The true one may lie elsewhere.",
                style);
}

}  // namespace

std::string liquids_text(const std::vector<Liquid>& liquids, const Style& style) {
  std::string text = heading("Hazards of each bottle (codes of the GHS in words of ours)", style);
  for (const Liquid& liquid : liquids) {
    const Solvent& solvent = *liquid.solvent;
    std::string flash = flash_point_not_known;
    if (solvent.flash_point_C)
      flash = "flash point " + as_recorded(solvent.flash_point_C->chosen.value) + " C" +
              standing_mark(solvent.flash_point_C->chosen.standing);
    text += paragraph(liquid.label + ": " + signal_text(solvent.hazards) + "; " + flash, style);
    if (solvent.hazards)
      text += paragraph(statements_text(solvent.hazards) + standing_mark(solvent.hazards->standing), style, 6);
    if (solvent.hazards && solvent.hazards->minimum_only)
      text += paragraph("a minimum classification: suppliers may classify further", style, 6);
    text += paragraph("air at the workplace: " + limits_by_authority(solvent), style, 6);
  }
  return text;
}

std::string layers_text(const std::vector<PlannedLayer>& layers, const std::vector<Passage>& passages,
                        StandIns stand_ins, const Style& style) {
  Table table;
  table.columns = {{"layer", Align::left, true},
                   {"role", Align::left, false},
                   {"material", Align::left, true},
                   {"basis", Align::left, true},
                   {"how far its range is known", Align::left, true}};
  for (const PlannedLayer& layer : layers)
    table.rows.push_back({layer.name, role_word(layer.role) + (layer.is_target ? " (this plan)" : ""),
                          material_in_words(layer), basis_words(layer), range_in_words(layer)});
  std::string text = heading("The painting, from the top down", style) + to_text(table, style);
  text += stand_ins_text(layers, stand_ins, style);
  for (const PlannedLayer& layer : layers) {
    if (!layer.flags.empty()) text += bullet("Warning for " + layer.name + ": " + flags_text(layer.flags), style);
  }
  for (const Passage& passage : passages)
    if (is_judged_like_layer(passage, layers))
      text += bullet(fmt::format("Passage {}: judged like its layer, {}{}", passage.name, passage.of,
                                 passage.suspected.empty() ? "" : "; suspected " + flags_text(passage.suspected)),
                     style);
  return text;
}

std::string effect_words(const JudgedMixture& judged, const Limits& limits) {
  return known_chance(judged.effect, limits.wanted_effect);
}

std::string risk_words(const JudgedMixture& judged, const Limits& limits) {
  return known_chance(judged.risk, limits.risk_limit);
}

std::string unjudged_text(const std::vector<PlannedLayer>& layers, const std::vector<FirstTest>& tests,
                          const std::vector<JudgedMixture>& to_try, const Style& style) {
  if (!any_unjudged(layers)) return {};
  std::string text = heading(unjudged_heading, style);
  for (const std::string& words : unjudged_words(layers)) text += bullet(words, style);
  if (tests.empty()) return text;
  text += heading(first_tests_heading, style);
  for (const std::string& words : first_test_words(tests, to_try, layers)) text += bullet(words, style);
  return text;
}

std::string affected_words(const std::vector<PlannedLayer>& layers, const Limits& limits,
                           const std::function<std::string(const std::string&)>& name) {
  std::map<int, std::vector<std::string>> by_grade;
  for (const PlannedLayer& layer : layers)
    if (layer.role == Role::keep && layer.sphere)
      by_grade[grade_that_counts(layer, limits)].push_back(name(layer.name));
  if (by_grade.empty()) by_grade[risk_grade_of({}, 1, limits)] = {};
  std::vector<std::string> words;
  for (const auto& [grade, names] : by_grade) {
    const std::string whose = by_grade.size() > 1 ? joined(names) + ": " : "";
    words.push_back(whose + "\"" + grade_words(grade) + "\" or stronger");
  }
  return joined(words, "; ");
}

std::string two_numbers_text(const std::vector<PlannedLayer>& layers, const Limits& limits, const Style& style) {
  const PlannedLayer* target = target_of(layers);
  return paragraph(fmt::format("Effect: the chance that the mixture moves \"{}\" (a long test would say "
                               "\"{}\" or stronger). Risk: the largest chance, over all layers to keep, that one is "
                               "affected ({}).",
                               target ? target->name : "",
                               grade_words(target ? grade_that_counts(*target, limits) : limits.effect_grade),
                               affected_words(layers, limits, [](const std::string& name) { return name; })),
                   style);
}

}  // namespace gentlest
