#include "report/bottle/label_words.hpp"
#include "report/form/format.hpp"
#include "report/phrases/fate.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/judged.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/phrases/sighting_words.hpp"
#include "report/phrases/words.hpp"

#include "gentlest/liquids/notation.hpp"

#include <algorithm>
#include <set>
#include <utility>

namespace gentlest {

namespace {

// Layer names in column names: letters and digits stay, everything else becomes one underscore.
std::string as_key(const std::string& name) {
  std::string key;
  for (const char c : name) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                       static_cast<unsigned char>(c) > 127;
    if (plain)
      key += c;
    else if (!key.empty() && key.back() != '_')
      key += '_';
  }
  return key;
}

std::vector<SheetColumn> columns_for(const std::vector<PlannedLayer>& layers) {
  std::vector<SheetColumn> columns;
  for (const char* key : {"mixture",
                          "recipe_volume_percent",
                          "dD_MPa05",
                          "dP_MPa05",
                          "dH_MPa05",
                          "fd_percent",
                          "fp_percent",
                          "fh_percent",
                          "effect_chance",
                          "risk_chance",
                          "riskiest_layer",
                          "margin_RED",
                          "signal_word",
                          "lowest_flash_point_of_parts_C",
                          "lowest_flash_point_of",
                          "lowest_exposure_limit_ppm",
                          "lowest_exposure_limit_of",
                          "hazard_statements",
                          "parts_without_hazard_record",
                          "parts_without_flash_point",
                          "parts_without_exposure_limit"})
    columns.push_back({key, key, -1, false});
  for (const std::string& key : fate_keys()) columns.push_back({key, {}, -1, false});
  std::set<std::string> used;
  for (std::size_t i = 0; i < layers.size(); ++i) {
    std::string key = as_key(layers[i].name);
    if (!used.insert(key).second) key += "_layer_" + std::to_string(i + 1);
    if (!layers[i].sphere) {
      columns.push_back({"seen_" + key, {}, -1, false});
      continue;
    }
    for (const char* what : {"RED_", "RED_low_", "RED_high_", "chance_"})
      columns.push_back({what + key, {}, -1, false});
  }
  return columns;
}

Cell words_or_unknown(const std::string& words) {
  return words.empty() ? Cell() : Cell(words);
}

void add_hazards(std::vector<Cell>& row, const JudgedMixture& judged) {
  const HazardSummary& hazards = judged.hazards;
  const bool any_record = hazards.without_record.size() < judged.mixture.parts().size();
  row.emplace_back(any_record ? (hazards.signal_word.empty() ? "none" : hazards.signal_word) : no_record);
  row.push_back(hazards.lowest_flash_point ? Cell(hazards.lowest_flash_point->value) : Cell());
  row.push_back(words_or_unknown(hazards.lowest_flash_point_of));
  row.push_back(hazards.lowest_limit_ppm ? Cell(*hazards.lowest_limit_ppm) : Cell());
  row.push_back(words_or_unknown(lowest_limit_words(hazards)));
  row.emplace_back(any_record ? joined(hazards.statements, " ", "none") : std::string(no_record));
  row.emplace_back(joined(hazards.without_record, "; ", "none"));
  row.emplace_back(joined(hazards.without_flash_point, "; ", "none"));
  row.emplace_back(joined(hazards.without_limit, "; ", "none"));
}

std::vector<Cell> judged_row(const JudgedMixture& judged) {
  std::vector<Cell> row = {short_name(judged), to_text(judged.mixture)};
  for (const double value :
       {judged.point.dD, judged.point.dP, judged.point.dH, judged.teas.fd, judged.teas.fp, judged.teas.fh})
    row.emplace_back(computed_value(value));
  for (const std::optional<double>& value : {judged.effect, judged.risk})
    row.push_back(value ? Cell(computed_value(*value)) : Cell());
  row.emplace_back(riskiest_words(judged));
  row.push_back(judged.margin_RED ? Cell(computed_value(*judged.margin_RED)) : Cell(std::string("not claimed")));
  add_hazards(row, judged);
  for (Cell& cell : fate_cells(judged)) row.push_back(std::move(cell));
  auto sighting = judged.seen.begin();  // of the layers without a sphere, in the order of all
  for (const std::optional<Outlook>& outlook : judged.outlooks) {
    if (!outlook) {
      row.emplace_back(sighting_word((sighting++)->seen));
      continue;
    }
    for (const double value : {outlook->RED, outlook->RED_band.low, outlook->RED_band.high, outlook->chance})
      row.emplace_back(computed_value(value));
  }
  return row;
}

}  // namespace

Sheet judged_sheet(const std::vector<const JudgedMixture*>& mixtures, const std::vector<PlannedLayer>& layers) {
  Sheet sheet{"mixtures", columns_for(layers), {}};
  for (const JudgedMixture* judged : mixtures) sheet.rows.push_back(judged_row(*judged));
  return sheet;
}

std::vector<Liquid> liquids_of(const std::vector<const JudgedMixture*>& mixtures) {
  std::vector<Liquid> liquids;
  for (const JudgedMixture* judged : mixtures) add_liquids(liquids, judged->mixture);
  std::sort(liquids.begin(), liquids.end(), [](const Liquid& a, const Liquid& b) { return a.label < b.label; });
  return liquids;
}

}  // namespace gentlest
