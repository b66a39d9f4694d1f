#include "gentlest/safety/hazard.hpp"
#include "gentlest/catalogue/statements.hpp"

#include <algorithm>

namespace gentlest {

namespace {

void add_once(std::vector<std::string>& list, const std::vector<std::string>& more) {
  list.insert(list.end(), more.begin(), more.end());
  std::sort(list.begin(), list.end());
  list.erase(std::unique(list.begin(), list.end()), list.end());
}

void add_word(HazardSummary& summary, const std::string& word) {
  if (word == "Danger" || summary.signal_word.empty()) summary.signal_word = word;
}

void add_record(HazardSummary& summary, const Hazards& hazards) {
  add_once(summary.pictograms, hazards.pictograms);
  add_word(summary, hazards.signal_word);
}

void add_flash_point(HazardSummary& summary, const Liquid& liquid) {
  if (!liquid.solvent->flash_point_C) {
    summary.without_flash_point.push_back(liquid.label);
    return;
  }
  const Celsius flash{liquid.solvent->flash_point_C->chosen.value};
  if (summary.lowest_flash_point && *summary.lowest_flash_point <= flash) return;
  summary.lowest_flash_point = flash;
  summary.lowest_flash_point_of = liquid.label;
}

void add_limits(HazardSummary& summary, const Liquid& liquid) {
  bool known = false;
  for (const ExposureLimit& limit : liquid.solvent->exposure_limits) {
    if (!limit.long_term_ppm) continue;
    known = true;
    if (summary.lowest_limit_ppm && *summary.lowest_limit_ppm <= *limit.long_term_ppm) continue;
    summary.lowest_limit_ppm = limit.long_term_ppm;
    summary.lowest_limit_of = liquid.label;
    summary.lowest_limit_by = limit.authority;
  }
  if (!known) summary.without_limit.push_back(liquid.label);
}

// The records' pictograms and those of the statements, without a GHS07 that the statements of all parts together rule
// out.
void finish_pictograms(HazardSummary& summary) {
  const std::vector<std::string> due = pictograms_of(summary.statements);
  const auto has = [](const std::vector<std::string>& list, const char* sign) {
    return std::find(list.begin(), list.end(), sign) != list.end();
  };
  add_once(summary.pictograms, due);
  const bool yields =
      has(summary.pictograms, "GHS06") || has(summary.pictograms, "GHS05") || has(summary.statements, "H334");
  if (yields && !has(due, "GHS07")) std::erase(summary.pictograms, "GHS07");
}

}  // namespace

HazardSummary hazards_of_parts(const Mixture& mixture) {
  HazardSummary summary;
  for (const Part& part : mixture.parts()) {
    const Solvent& solvent = *part.liquid.solvent;
    const std::vector<std::string> statements = known_statements(solvent);
    add_once(summary.statements, statements);
    if (solvent.hazards) {
      add_record(summary, *solvent.hazards);
    } else {
      summary.without_record.push_back(part.liquid.label);
      add_word(summary, signal_word_of(statements));
    }
    add_flash_point(summary, part.liquid);
    add_limits(summary, part.liquid);
  }
  finish_pictograms(summary);
  return summary;
}

}  // namespace gentlest
