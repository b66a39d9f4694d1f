#include "report/form/format.hpp"
#include "report/phrases/fate.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/phrases/sighting_words.hpp"
#include "report/phrases/words.hpp"
#include "report/plans/plan_report.hpp"

#include "gentlest/liquids/notation.hpp"

#include <algorithm>

namespace gentlest {

namespace {

// Layers side by side in one table; more of them go into a table below.
constexpr std::size_t layers_in_places = 4;
constexpr std::size_t layers_in_bands = 4;

// Rungs are numbered; what is shown without a window goes by words.
std::string first_title(const std::vector<const JudgedMixture*>& mixtures) {
  return !mixtures.empty() && mixtures.front()->origin.kind == OriginKind::rung ? "rung" : "mixture";
}

std::string layer_title(const PlannedLayer& layer, const char* what) {
  return std::string(what) + " " + layer.name;
}

void add_point_columns(Table& table, bool margin_claimed) {
  for (const char* title : {"dD", "dP", "dH", "fd %", "fp %", "fh %"})
    table.columns.push_back({title, Align::right, false});
  if (margin_claimed) table.columns.push_back({"margin", Align::right, false});
}

void add_point_cells(std::vector<std::string>& row, const JudgedMixture& judged, bool margin_claimed) {
  for (const double value : {judged.point.dD, judged.point.dP, judged.point.dH}) row.push_back(fixed(value, 1));
  for (const double value : {judged.teas.fd, judged.teas.fp, judged.teas.fh}) row.push_back(fixed(value, 0));
  if (margin_claimed) row.push_back(fixed_or_unknown(judged.margin_RED, 2));
}

std::string band_text(const std::optional<Outlook>& given) {
  if (!given) return no_sphere_cell;
  const Outlook& outlook = *given;
  return fixed(outlook.RED_band.low, 2) + " to " + fixed(outlook.RED_band.high, 2) + (outlook.may_flip ? " ?" : "  ");
}

}  // namespace

std::string recipes_table(const std::vector<const JudgedMixture*>& mixtures, const Limits& limits, const Style& style) {
  Table table;
  table.columns = {{first_title(mixtures), Align::left, true},
                   {recipe_column, Align::left, true},
                   {"effect", Align::right, false},
                   {"risk", Align::right, false},
                   {"risk to", Align::left, true},
                   {fate_column, Align::left, true},
                   {"hazards of the parts", Align::left, true}};
  const bool any_open =
      std::any_of(mixtures.begin(), mixtures.end(), [](const JudgedMixture* one) { return !one->seen.empty(); });
  if (any_open) table.columns.insert(table.columns.begin() + 5, {seen_column, Align::left, true});
  for (const JudgedMixture* one : mixtures) {
    const JudgedMixture& judged = *one;
    table.rows.push_back({short_name(judged), to_text(judged.mixture), effect_words(judged, limits),
                          risk_words(judged, limits), riskiest_words(judged), fate_mark(judged, limits.risk_limit),
                          hazard_line(judged.mixture)});
    if (any_open) table.rows.back().insert(table.rows.back().begin() + 5, sighting_mark(judged));
  }
  return to_text(table, style);
}

std::string places_table(const std::vector<const JudgedMixture*>& mixtures, const std::vector<PlannedLayer>& layers,
                         bool margin_claimed, const Style& style) {
  std::string text;
  for (std::size_t from = 0; from < layers.size(); from += layers_in_places) {
    const std::size_t to = std::min(layers.size(), from + layers_in_places);
    Table table;
    table.columns = {{first_title(mixtures), Align::left, true}};
    if (from == 0) add_point_columns(table, margin_claimed);
    for (std::size_t i = from; i < to; ++i)
      table.columns.push_back({layer_title(layers[i], "RED to"), Align::right, false});
    for (const JudgedMixture* judged : mixtures) {
      std::vector<std::string> row = {short_name(*judged)};
      if (from == 0) add_point_cells(row, *judged, margin_claimed);
      for (std::size_t i = from; i < to; ++i)
        row.push_back(judged->outlooks[i] ? fixed(judged->outlooks[i]->RED, 2) : no_sphere_cell);
      table.rows.push_back(std::move(row));
    }
    text += (from > 0 ? "\n" : "") + to_text(table, style);
  }
  return text;
}

std::string bands_table(const std::vector<const JudgedMixture*>& mixtures, const std::vector<PlannedLayer>& layers,
                        const Style& style) {
  std::string text;
  for (std::size_t from = 0; from < layers.size(); from += layers_in_bands) {
    const std::size_t to = std::min(layers.size(), from + layers_in_bands);
    Table table;
    table.columns = {{first_title(mixtures), Align::left, true}};
    for (std::size_t i = from; i < to; ++i) table.columns.push_back({layers[i].name, Align::left, false});
    for (const JudgedMixture* judged : mixtures) {
      std::vector<std::string> row = {short_name(*judged)};
      for (std::size_t i = from; i < to; ++i) row.push_back(band_text(judged->outlooks[i]));
      table.rows.push_back(std::move(row));
    }
    text += (from > 0 ? "\n" : "") + to_text(table, style);
  }
  return text;
}

}  // namespace gentlest
