// What to measure into the vials, and the limits that shaped the mixtures.
#include "report/form/format.hpp"
#include "report/phrases/fate.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/plans/line_words.hpp"
#include "report/plans/plan_report.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

std::string rounding_text(const BenchMixture& mixture, const Limits& limits) {
  if (!mixture.as_measured) return "nothing";
  const JudgedMixture& made = *mixture.as_measured;
  std::string text =
      fmt::format("effect {}, was {}; risk {}, was {}", effect_words(made, limits),
                  effect_words(mixture.judged, limits), risk_words(made, limits), risk_words(mixture.judged, limits));
  const double risk_limit = limits.risk_limit;
  if (made.risk && *made.risk > risk_limit && *mixture.judged.risk <= risk_limit) text += ": BEYOND THE LIMIT";
  const std::string fate = fate_mark(made, risk_limit);
  return fate == fate_mark(mixture.judged, risk_limit) ? text : text + "; " + fate;
}

bool any_rounded(const Bench& bench) {
  return std::any_of(bench.mixtures.begin(), bench.mixtures.end(),
                     [](const BenchMixture& mixture) { return mixture.as_measured.has_value(); });
}

bool any_measured(const Plan& plan, const Bench& bench) {
  return std::any_of(bench.mixtures.begin(), bench.mixtures.end(),
                     [&](const BenchMixture& mixture) { return is_measured(mixture, plan); });
}

bool any_top_up(const Bench& bench) {
  return std::any_of(bench.mixtures.begin(), bench.mixtures.end(),
                     [](const BenchMixture& mixture) { return mixture.top_up.has_value(); });
}

Table measures_table(const Plan& plan, const Bench& bench) {
  const bool rounded = any_rounded(bench);
  const bool topped = any_top_up(bench);
  Table table;
  table.columns = {{ladder_rungs(plan).empty() ? "mixture" : "rung", Align::left, true}};
  for (const SessionTotal& total : bench.totals) table.columns.push_back({total.label, Align::right, true});
  if (topped) table.columns.push_back({"to top up", Align::right, false});
  if (rounded) table.columns.push_back({"what rounding changes", Align::left, true});
  for (const BenchMixture& mixture : bench.mixtures) {
    if (!is_measured(mixture, plan)) continue;
    std::vector<std::string> row = {short_name(mixture.judged)};
    for (const SessionTotal& total : bench.totals) row.push_back(volume_of(mixture, total.label));
    if (topped) row.push_back(top_up_text(mixture));
    if (rounded) row.push_back(rounding_text(mixture, plan.job.limits));
    table.rows.push_back(std::move(row));
  }
  std::vector<std::string> sum = {"all"};
  for (const SessionTotal& total : bench.totals) sum.push_back(as_recorded(total.volume.value));
  if (topped) sum.emplace_back();
  if (rounded) sum.emplace_back();
  table.rows.push_back(std::move(sum));
  return table;
}

}  // namespace

bool is_measured(const BenchMixture& mixture, const Plan& plan) {
  return plan.outcome == Outcome::window || !mixture.beyond_limit;
}

std::string volume_of(const BenchMixture& mixture, const std::string& label) {
  for (const RecipeLine& line : mixture.recipe.lines)
    if (line.liquid.label == label) return as_recorded(line.volume.value);
  return "-";
}

std::string top_up_text(const BenchMixture& mixture) {
  return mixture.top_up ? fixed(mixture.top_up->value, 1) : "-";
}

std::string measures_text(const Plan& plan, const Bench& bench, const Style& style) {
  if (!any_measured(plan, bench)) return {};
  const Limits& limits = plan.job.limits;
  std::string words =
      fmt::format("mL of each bottle for one vial of {} mL, in steps of {} mL; \"all\": one vial of each.",
                  as_recorded(limits.vial_mL), as_recorded(limits.measure_mL));
  words += any_rounded(bench) ? " Rounding makes other mixtures; they are judged anew in the last column."
                              : " Rounding changes no mixture.";
  if (any_top_up(bench))
    words += fmt::format(" To top up: mL of {} that make the rung out of {} mL of the one before it.",
                         stock_words(plan.lines.front()), as_recorded(limits.vial_mL));
  return heading(to_measure_heading, style) + paragraph(words, style) + "\n" +
         to_text(measures_table(plan, bench), style);
}

Json measures_json(const Plan& plan, const Bench& bench) {
  const Limits& limits = plan.job.limits;
  Json json = {{"vial_mL", data_value(limits.vial_mL)}, {"measure_mL", data_value(limits.measure_mL)}};
  json["mixtures"] = Json::array();
  for (const BenchMixture& mixture : bench.mixtures) {
    if (!is_measured(mixture, plan)) continue;
    Json one = {{"name", short_name(mixture.judged)}, {"total_mL", computed_value(mixture.recipe.total.value)}};
    one["volumes"] = Json::array();
    for (const RecipeLine& line : mixture.recipe.lines)
      one["volumes"].push_back(
          {{"liquid", line.liquid.label}, {"steps", line.steps}, {"mL", computed_value(line.volume.value)}});
    one["top_up_mL"] = mixture.top_up ? Json(computed_value(mixture.top_up->value)) : Json();
    one["as_measured"] = mixture.as_measured ? judged_json(*mixture.as_measured, plan.layers, limits) : Json();
    json["mixtures"].push_back(std::move(one));
  }
  json["bottles"] = Json::array();
  for (const SessionTotal& total : bench.totals)
    json["bottles"].push_back({{"liquid", total.label}, {"mL", computed_value(total.volume.value)}});
  return json;
}

std::string search_limits_words(const Job& job) {
  std::vector<std::string> limits;
  if (job.limits.lowest_flash_point_C)
    limits.push_back(fmt::format("no mixture with an estimated flash point below {} C",
                                 as_recorded(*job.limits.lowest_flash_point_C)));
  if (!job.limits.avoid_label.empty()) limits.push_back("none whose label carries " + joined(job.limits.avoid_label));
  for (const ShelfBottle& bottle : job.shelf)
    if (bottle.at_most_percent < 100)
      limits.push_back(fmt::format("at most {} % of {}{}", bottle.at_most_percent, bottle.solvent,
                                   bottle.grade.empty() ? "" : " " + bottle.grade));
  if (limits.empty()) return {};
  const bool asks_hazards = job.limits.lowest_flash_point_C || !job.limits.avoid_label.empty();
  std::string words = "Within the limits of the job: " + joined(limits, "; ") + ".";
  if (asks_hazards)
    words += job.limits.allow_unknown_hazards ? " Mixtures whose flash point or label is not known pass."
                                              : " Mixtures whose flash point or label is not known are left out.";
  return words;
}

}  // namespace gentlest
