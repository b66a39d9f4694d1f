#include "gentlest/hazard.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace gentlest {

namespace {

void add_once(std::vector<std::string>& list, const std::vector<std::string>& more) {
  list.insert(list.end(), more.begin(), more.end());
  std::sort(list.begin(), list.end());
  list.erase(std::unique(list.begin(), list.end()), list.end());
}

void add_record(HazardSummary& summary, const Hazards& hazards) {
  add_once(summary.statements, hazards.statements);
  add_once(summary.statements, hazards.supplemental);
  add_once(summary.pictograms, hazards.pictograms);
  if (hazards.signal_word == "Danger" || summary.signal_word.empty()) summary.signal_word = hazards.signal_word;
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
    summary.lowest_limit_of = liquid.label + ", " + limit.authority;
  }
  if (!known) summary.without_limit.push_back(liquid.label);
}

}  // namespace

HazardSummary hazards_of_parts(const Mixture& mixture) {
  HazardSummary summary;
  for (const Part& part : mixture.parts()) {
    if (part.liquid.solvent->hazards)
      add_record(summary, *part.liquid.solvent->hazards);
    else
      summary.without_record.push_back(part.liquid.label);
    add_flash_point(summary, part.liquid);
    add_limits(summary, part.liquid);
  }
  return summary;
}

std::string statement_words(const std::string& code) {
  // Short words of ours for what the code stands for; the official sentence stands on the safety data sheet.
  static constexpr std::array<std::pair<const char*, const char*>, 49> words = {{
      {"H224", "vapour catches fire at any room temperature"},
      {"H225", "catches fire very easily"},
      {"H226", "catches fire when warm"},
      {"H271", "feeds fire or explosion"},
      {"H290", "eats metal"},
      {"H300", "deadly when swallowed"},
      {"H301", "poisonous when swallowed"},
      {"H302", "harmful when swallowed"},
      {"H304", "deadly if it gets into the lungs: never pipette by mouth"},
      {"H310", "deadly through the skin"},
      {"H311", "poisonous through the skin"},
      {"H312", "harmful through the skin"},
      {"H314", "burns skin and eyes"},
      {"H315", "irritates the skin"},
      {"H317", "may cause skin allergy"},
      {"H318", "damages the eyes"},
      {"H319", "irritates the eyes strongly"},
      {"H330", "deadly when breathed in"},
      {"H331", "poisonous when breathed in"},
      {"H332", "harmful when breathed in"},
      {"H334", "may cause asthma"},
      {"H335", "irritates the airways"},
      {"H336", "makes drowsy or dizzy"},
      {"H340", "damages genes"},
      {"H341", "suspected of damaging genes"},
      {"H350", "causes cancer"},
      {"H351", "suspected of causing cancer"},
      {"H360", "harms fertility or the unborn child"},
      {"H360D", "harms the unborn child"},
      {"H360FD", "harms fertility and the unborn child"},
      {"H360Df", "harms the unborn child, suspected of harming fertility"},
      {"H360F", "harms fertility"},
      {"H361", "suspected of harming fertility or the unborn child"},
      {"H361d", "suspected of harming the unborn child"},
      {"H361f", "suspected of harming fertility"},
      {"H361fd", "suspected of harming fertility and the unborn child"},
      {"H362", "harms children through breast milk"},
      {"H370", "damages organs"},
      {"H371", "may damage organs"},
      {"H372", "damages organs with repeated use"},
      {"H373", "may damage organs with repeated use"},
      {"H400", "very poisonous to water life"},
      {"H410", "very poisonous to water life for long"},
      {"H411", "poisonous to water life for long"},
      {"H412", "harmful to water life for long"},
      {"H413", "may harm water life for long"},
      {"H420", "harms the ozone layer"},
      {"EUH019", "forms explosive peroxides"},
      {"EUH066", "dries and cracks the skin"},
  }};
  for (const auto& [known, text] : words)
    if (code == known) return text;
  return {};
}

}  // namespace gentlest
