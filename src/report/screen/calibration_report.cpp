#include "report/screen/calibration_report.hpp"

#include "report/form/format.hpp"
#include "report/form/json.hpp"
#include "report/form/sheet.hpp"
#include "report/phrases/fit_words.hpp"

namespace gentlest {

namespace {

Json sphere_json(const Sphere& sphere) {
  return {{"dD", json_computed(sphere.centre.dD)},
          {"dP", json_computed(sphere.centre.dP)},
          {"dH", json_computed(sphere.centre.dH)},
          {"R0", json_computed(sphere.R0)}};
}

Json set_json(const SetFigures& set) {
  return {{"code", set.code},
          {"material", set.material},
          {"published_MPa05", sphere_json(set.published)},
          {"misplaced", set.quality.misplaced},
          {"data_fit", json_computed(set.quality.data_fit)},
          {"rank", set.rank},
          {"refit_MPa05", sphere_json(set.refit.sphere)},
          {"refit_misplaced", set.refit.quality.misplaced},
          {"refit_data_fit", json_computed(set.refit.quality.data_fit)},
          {"refit_R0_low", json_computed(set.refit.R0_low)},
          {"refit_R0_high", json_computed(set.refit.R0_high)},
          {"doubts", doubt_words(set.refit.doubts)}};
}

Json score_json(const CurveScore& score) {
  return {{"log_score", json_computed(score.log_score)},
          {"log_score_without_RED", json_computed(score.log_score_of_shares)},
          {"brier_2", json_computed(score.brier_2)},
          {"brier_2_without_RED", json_computed(score.brier_2_of_shares)},
          {"brier_4", json_computed(score.brier_4)},
          {"brier_4_without_RED", json_computed(score.brier_4_of_shares)},
          {"right_grade", json_computed(score.right_grade)},
          {"right_dissolves", json_computed(score.right_dissolves)},
          {"right_inside", json_computed(score.right_inside)}};
}

Json bands_json(const std::vector<BandShares>& bands) {
  Json list = Json::array();
  for (const BandShares& band : bands)
    list.push_back({{"RED_from", json_computed(band.from)},
                    {"RED_to", band.to < 100 ? json_computed(band.to) : Json()},
                    {"cases", band.count},
                    {"dissolved", json_computed(band.dissolved)},
                    {"swollen", json_computed(band.swollen)},
                    {"untouched", json_computed(band.untouched)}});
  return list;
}

Json spread_json(const SpreadRow& row) {
  return {{"what", group_words(row.group)},
          {"pairs", row.seen.pairs},
          {"boundary_MPa05", json_computed(row.seen.boundary)},
          {"sd_dD", json_computed(row.spread.centre.dD)},
          {"sd_dP", json_computed(row.spread.centre.dP)},
          {"sd_dH", json_computed(row.spread.centre.dH)},
          {"sd_R0", json_computed(row.spread.R0)}};
}

void add_sphere(std::vector<Cell>& row, const Sphere& sphere, const SphereQuality& quality) {
  for (const double value : {sphere.centre.dD, sphere.centre.dP, sphere.centre.dH, sphere.R0})
    row.emplace_back(computed_value(value));
  row.emplace_back(static_cast<double>(quality.misplaced));
  row.emplace_back(computed_value(quality.data_fit));
}

}  // namespace

std::string calibration_csv(const Calibration& all, const Edition& edition) {
  Sheet sheet{"sets", {}, {}};
  for (const char* key :
       {"code", "material", "published_dD_MPa05", "published_dP_MPa05", "published_dH_MPa05", "published_R0_MPa05",
        "published_misplaced", "published_data_fit", "refit_dD_MPa05", "refit_dP_MPa05", "refit_dH_MPa05",
        "refit_R0_MPa05", "refit_misplaced", "refit_data_fit", "rank", "doubts"})
    sheet.columns.push_back({key, key, -1, false});
  for (const SetFigures& set : all.sets) {
    std::vector<Cell> row = {set.code, set.material};
    add_sphere(row, set.published, set.quality);
    add_sphere(row, set.refit.sphere, set.refit.quality);
    row.emplace_back(static_cast<double>(set.rank));
    row.emplace_back(joined(doubt_words(set.refit.doubts), "; ", "none"));
    sheet.rows.push_back(std::move(row));
  }
  return sheet_csv(sheet, edition);
}

std::string calibration_json(const Calibration& all, const Edition& edition) {
  Json document = json_document("calibration", edition);
  document["response_stages"] = Json::array();
  for (const Response::Stage& stage : all.response.stages)
    document["response_stages"].push_back(
        {{"intercept", json_computed(stage.intercept)}, {"slope", json_computed(stage.slope)}});
  document["left_out_score"] = score_json(all.left_out_score);
  document["bands_published"] = bands_json(all.in_sample);
  document["bands_held_out"] = bands_json(all.cross_validated);
  document["sets"] = Json::array();
  for (const SetFigures& set : all.sets) document["sets"].push_back(set_json(set));
  document["spreads"] = Json::array();
  for (const SpreadRow& row : all.spreads) document["spreads"].push_back(spread_json(row));
  return json_dump(document);
}

}  // namespace gentlest
