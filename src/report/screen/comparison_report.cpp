#include "report/screen/comparison_report.hpp"

#include "report/bottle/liquid_words.hpp"
#include "report/form/format.hpp"
#include "report/phrases/judged.hpp"
#include "report/phrases/no_window.hpp"
#include "report/phrases/shelf_words.hpp"

#include <fmt/format.h>

#include <iterator>

namespace gentlest {

namespace {

ListedSeries list_ladder(const Plan& plan, const char* id, const char* name) {
  ListedSeries ladder{
      id, name, "planned here", {}, quality_of(ladder_rungs(plan), plan.job.limits), ladder_bottles(plan), {}};
  for (const JudgedMixture& rung : ladder_rungs(plan)) ladder.mixtures.push_back(&rung);
  return ladder;
}

ListedSeries list_published(const ComparedSeries& one) {
  const SeriesKind kind = one.series.kind;
  ListedSeries listed{
      std::string(to_word(kind)),     series_name(one.series), series_source(kind), {}, one.judged.quality, one.liquids,
      objection_words(one.objections)};
  for (const JudgedMixture& mixture : one.judged.mixtures) listed.mixtures.push_back(&mixture);
  return listed;
}

// The table of all mixtures, with what is said of a series put in front of each row.
Sheet comparison_sheet(const Plan& plan, const std::vector<ListedSeries>& all) {
  std::vector<const JudgedMixture*> mixtures;
  for (const ListedSeries& series : all)
    mixtures.insert(mixtures.end(), series.mixtures.begin(), series.mixtures.end());
  Sheet sheet = judged_sheet(mixtures, plan.layers);
  const std::vector<SheetColumn> columns = {
      {"series", {}}, {"series_source", {}}, {"effect_rise", {}}, {"beyond_risk_limit", {}}};
  sheet.columns.insert(sheet.columns.begin(), columns.begin(), columns.end());
  std::size_t at = 0;
  for (const ListedSeries& series : all)
    for (std::size_t i = 0; i < series.mixtures.size(); ++i) {
      const std::optional<double> rise = rise_at(series, i);
      const std::optional<bool> beyond = beyond_limit(*series.mixtures[i], plan.job.limits);
      std::vector<Cell> front = {series.id, series.source, rise ? Cell(computed_value(*rise)) : Cell(),
                                 beyond ? Cell(*beyond) : Cell()};
      std::vector<Cell>& row = sheet.rows[at++];
      row.insert(row.begin(), std::make_move_iterator(front.begin()), std::make_move_iterator(front.end()));
    }
  return sheet;
}

Json quality_json(const ListedSeries& series) {
  if (!series.quality) return nullptr;
  const SeriesQuality& quality = *series.quality;
  const bool any_within = quality.beyond_limit < quality.steps;
  return {{"mixtures", quality.steps},
          {"bottles", series.liquids.size()},
          {"falls_of_effect", quality.falls},
          {"beyond_risk_limit", quality.beyond_limit},
          {"largest_rise", computed_value(quality.largest_rise)},
          {"sd_of_rises", computed_value(quality.unevenness)},
          {"largest_Ra_between_neighbours_MPa05", computed_value(quality.longest_Ra)},
          {"strongest_effect_within_limit", any_within ? Json(computed_value(quality.strongest_effect)) : Json()},
          {"risk_at_strongest", any_within ? Json(computed_value(quality.risk_at_strongest)) : Json()},
          {"first_that_works", quality.first_that_works < 0 ? Json() : Json(quality.first_that_works + 1)}};
}

Json series_json(const ListedSeries& series, const Plan& plan) {
  Json json = {{"id", series.id}, {"name", series.name}, {"source", series.source}};
  json["quality"] = quality_json(series);
  json["liquids"] = series.liquids;
  json["against_the_job"] = series.objections;
  json["mixtures"] = Json::array();
  for (std::size_t i = 0; i < series.mixtures.size(); ++i) {
    const std::optional<bool> beyond = beyond_limit(*series.mixtures[i], plan.job.limits);
    json["mixtures"].push_back({{"effect_rise", json_computed(rise_at(series, i))},
                                {"beyond_risk_limit", beyond ? Json(*beyond) : Json()},
                                {"mixture", judged_json(*series.mixtures[i], plan.layers, plan.job.limits)}});
  }
  return json;
}

std::string comparison_json(const Plan& plan, const std::vector<ListedSeries>& all, const Edition& edition) {
  Json document = json_document("comparison", edition);
  document["outcome"] = outcome_word(plan.outcome);
  document["painting"] = json_text(plan.job.object.title);
  document["target"] = plan.layers[plan.target].name;
  document["risk_limit"] = data_value(plan.job.limits.risk_limit);
  document["wanted_effect"] = data_value(plan.job.limits.wanted_effect);
  document["layers"] = layers_json(plan.layers, plan.job.limits);
  document["series"] = Json::array();
  std::vector<const JudgedMixture*> mixtures;
  for (const ListedSeries& series : all) {
    document["series"].push_back(series_json(series, plan));
    mixtures.insert(mixtures.end(), series.mixtures.begin(), series.mixtures.end());
  }
  document["liquids"] = liquids_json(liquids_of(mixtures));
  return json_dump(document);
}

}  // namespace

std::optional<bool> beyond_limit(const JudgedMixture& judged, const Limits& limits) {
  if (!judged.risk) return std::nullopt;
  return *judged.risk > limits.risk_limit;
}

std::vector<ListedSeries> listed_series(const Plan& plan, const Plan* best_of_shelf,
                                        const std::vector<ComparedSeries>& published) {
  std::vector<ListedSeries> all;
  if (!ladder_rungs(plan).empty()) all.push_back(list_ladder(plan, "ladder", "the ladder of this job"));
  if (best_of_shelf) all.push_back(list_ladder(*best_of_shelf, "best_of_shelf", "the best of the whole shelf"));
  int own = 0;
  for (const ComparedSeries& one : published) {
    all.push_back(list_published(one));
    if (one.series.kind == SeriesKind::own) all.back().id += "_" + std::to_string(++own);
  }
  return all;
}

std::optional<double> rise_at(const ListedSeries& series, std::size_t i) {
  if (i == 0) return std::nullopt;
  const std::optional<double>& here = series.mixtures[i]->effect;
  const std::optional<double>& before = series.mixtures[i - 1]->effect;
  if (!here || !before) return std::nullopt;
  return *here - *before;
}

std::string comparison_report(const Plan& plan, const Plan* best_of_shelf, const std::vector<ComparedSeries>& published,
                              Form form, const Style& style, const Edition& edition) {
  const std::vector<ListedSeries> all = listed_series(plan, best_of_shelf, published);
  switch (form) {
    case Form::csv:
      return sheet_csv(comparison_sheet(plan, all), edition);
    case Form::json:
      return comparison_json(plan, all, edition);
    case Form::text:
      break;
  }
  return comparison_text(plan, all, style, edition);
}

}  // namespace gentlest
