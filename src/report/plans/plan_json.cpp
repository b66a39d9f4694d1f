#include "gentlest/job/limits.hpp"
#include "report/bottle/danger_words.hpp"
#include "report/bottle/vial_words.hpp"
#include "report/examined/examination_words.hpp"
#include "report/form/format.hpp"
#include "report/phrases/advice_words.hpp"
#include "report/phrases/no_window.hpp"
#include "report/phrases/shelf_words.hpp"
#include "report/phrases/sighting_words.hpp"
#include "report/plans/plan_report.hpp"
#include "report/plans/short_words.hpp"
#include "report/plans/studio_words.hpp"

#include <type_traits>

namespace gentlest {

namespace {

Json remarks_json(const std::vector<Remark>& remarks) {
  Json list = Json::array();
  for (const Remark& one : remarks) list.push_back({{"text", one.text}, {"source", one.source}});
  return list;
}

template <class Value>
Json limit_json(const Value& value) {
  if constexpr (std::is_same_v<Value, double>)
    return data_value(value);
  else if constexpr (std::is_same_v<Value, std::optional<double>>)
    return json_number(value);
  else if constexpr (std::is_same_v<Value, std::optional<int>>)
    return value ? Json(*value) : Json();
  else
    return value;
}

Json limits_json(const Limits& limits) {
  Json json = Json::object();
  for (const Limit& limit : all_limits())
    json[limit.key] = std::visit([&](auto member) { return limit_json(limits.*member); }, limit.member);
  return json;
}

Json examination_summary_json(const Examination& examination) {
  return {{"verdict", verdict_word(examination.verdict)},
          {"in_short", verdict_sentence(examination)},
          {"first", first_lines(examination)},
          {"changes", consequence_lines(examination)}};
}

Json object_json(const PaintingObject& object) {
  return {{"title", json_text(object.title)},
          {"owner_number", json_text(object.owner_number)},
          {"width_cm", object.width ? Json(data_value(object.width->value)) : Json()},
          {"height_cm", object.height ? Json(data_value(object.height->value)) : Json()},
          {"paint_age_years", json_number(object.paint_age_years)},
          {"note", json_text(object.note)}};
}

Json largest_shares_json(const Job& job) {
  Json list = Json::array();
  for (const ShelfBottle& bottle : job.shelf)
    if (bottle.at_most_percent < 100)
      list.push_back({{"solvent", json_text(bottle.solvent)},
                      {"grade", json_text(bottle.grade)},
                      {"at_most_percent", bottle.at_most_percent}});
  return list;
}

Json optional_mixture(const std::optional<JudgedMixture>& judged, const Plan& plan) {
  return judged ? judged_json(*judged, plan.layers, plan.job.limits) : Json();
}

Json parting_json(const Plan& plan) {
  Json list = Json::array();
  for (const PartingPair& pair : plan.parting)
    list.push_back({{"bottle", pair.bottle},
                    {"other", pair.other},
                    {"from_percent", pair.from_percent},
                    {"to_percent", pair.to_percent},
                    {"basis", std::string(to_word(pair.basis))},
                    {"kept_out", !plan.job.limits.allow_splitting},
                    {"stays_one_liquid", json_text(pair.stays_one_liquid.value_or(""))}});
  return list;
}

}  // namespace

namespace {

Json no_window_json(const Plan& plan) {
  if (plan.outcome == Outcome::window) return {};
  if (plan.outcome == Outcome::no_ladder)
    return {{"closed_by", "no sphere"}, {"layer", Json()}, {"sentences", no_window_sentences(plan)}};
  const WindowClosedBy closed_by = what_closes_window(plan);
  return {{"closed_by", closed_by_word(closed_by)},
          {"layer", closed_by == WindowClosedBy::layer ? Json(plan.least_risk_that_works->riskiest) : Json()},
          {"sentences", no_window_sentences(plan)}};
}

}  // namespace

std::string plan_csv(const Plan& plan, const Edition& edition) {
  return sheet_csv(judged_sheet(planned_mixtures(plan), plan.layers), edition);
}

std::string plan_json(const Plan& plan, const Bench& bench, const Edition& edition) {
  Json document = json_document("ladder", edition);
  document["outcome"] = outcome_word(plan.outcome);
  document["no_window"] = no_window_json(plan);
  document["object"] = object_json(plan.job.object);
  document["target"] = plan.layers[plan.target].name;
  document["limits"] = limits_json(plan.job.limits);
  document["largest_shares"] = largest_shares_json(plan.job);
  document["examination"] = examination_summary_json(plan.examination);
  document["layers"] = layers_json(plan.layers, plan.job.limits);
  document["bottles"] = ladder_bottles(plan);
  document["rungs"] = Json::array();
  for (const JudgedMixture& rung : ladder_rungs(plan))
    document["rungs"].push_back(judged_json(rung, plan.layers, plan.job.limits));
  document["lines"] = lines_json(plan);
  document["finer_steps"] = Json::array();
  for (const JudgedMixture& step : plan.finer)
    document["finer_steps"].push_back({{"after_rung", step.origin.number},
                                       {"number", step.origin.step},
                                       {"mixture", judged_json(step, plan.layers, plan.job.limits)}});
  document["strongest_within_risk_limit"] = optional_mixture(plan.nearest, plan);
  document["least_risk_that_works"] = optional_mixture(plan.least_risk_that_works, plan);
  document["by_effect_alone"] = plan.by_effect_alone;
  document["first_tests"] = first_test_words(plan.first_tests, plan.to_try, plan.layers);
  document["to_try"] = Json::array();
  for (const JudgedMixture& one : plan.to_try)
    document["to_try"].push_back(judged_json(one, plan.layers, plan.job.limits));
  document["what_to_measure"] = measures_json(plan, bench);
  document["person"] = person_json(bench);
  document["frontier"] = Json::array();
  for (const Verdict& verdict : plan.frontier)
    document["frontier"].push_back(
        {{"effect", computed_value(verdict.effect)}, {"risk", computed_value(verdict.risk)}});
  document["effect_given_up"] = computed_value(plan.lines.empty() ? 0 : plan.lines.front().effect_given_up);
  document["costs"] = Json::array();
  for (const LayerCost& cost : plan.costs)
    document["costs"].push_back({{"without", cost.without},
                                 {"rungs", cost.rungs},
                                 {"strongest_effect", computed_value(cost.strongest_effect)}});
  document["at_higher_limit"] =
      plan.at_higher_limit ? Json({{"risk_limit", data_value(plan.at_higher_limit->risk_limit)},
                                   {"rungs", plan.at_higher_limit->rungs},
                                   {"strongest_effect", computed_value(plan.at_higher_limit->strongest_effect)}})
                           : Json();
  if (!plan.without_studio.empty()) document["studio"] = studio_json(plan);
  document["mixtures_judged"] = plan.mixtures_judged;
  document["margin_claimed"] = plan.margin_claimed;
  document["liquids"] = liquids_json(liquids_of(planned_mixtures(plan)));
  document["left_off_shelf"] = left_off_words(plan.left_off);
  document["parting"] = parting_json(plan);
  document["dangers"] = danger_words(liquids_of(planned_mixtures(plan)), plan.cautions);
  document["in_short"] = order_words(plan);
  document["watch"] = remarks_json(watch_words(plan));
  document["not_seen"] = remarks_json(not_seen_words());
  document["cautions"] = remarks_json(caution_words(plan.cautions));
  document["other_ways"] = remarks_json(other_ways_words(plan));
  document["weak_points"] = weak_point_words(plan);
  document["sources"] = json_sources(plan.sources);
  return json_dump(document);
}

}  // namespace gentlest
