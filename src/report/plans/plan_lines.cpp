// The other lines of a plan, as short tables and for programs.
#include "report/form/format.hpp"
#include "report/phrases/fate.hpp"
#include "report/phrases/headings.hpp"
#include "report/plans/line_words.hpp"
#include "report/plans/plan_report.hpp"

#include "gentlest/liquids/notation.hpp"

namespace gentlest {

namespace {

Table line_table(const Plan& plan, const LadderLine& line) {
  Table table;
  table.columns = {{"rung", Align::left, true},
                   {recipe_column, Align::left, true},
                   {"effect", Align::right, false},
                   {"risk", Align::right, false},
                   {fate_column, Align::left, true}};
  for (const JudgedMixture& rung : line.rungs)
    table.rows.push_back({std::to_string(rung.origin.number), to_text(rung.mixture),
                          effect_words(rung, plan.job.limits), risk_words(rung, plan.job.limits),
                          fate_mark(rung, plan.job.limits.risk_limit)});
  return table;
}

}  // namespace

std::string ladder_line_text(const Plan& plan, const Style& style) {
  std::string text;
  for (const std::string& sentence : ladder_line_sentences(plan)) text += paragraph(sentence, style);
  return text;
}

std::string other_lines_text(const Plan& plan, const Style& style) {
  std::string text;
  for (std::size_t number = 2; number <= plan.lines.size(); ++number)
    text += (number > 2 ? "\n" : "") + paragraph(line_sentence(plan, number), style) + "\n" +
            to_text(line_table(plan, plan.lines[number - 1]), style);
  if (!text.empty()) text = heading(other_lines_heading, style) + text;
  const std::string optimum = optimum_sentence(plan);
  return optimum.empty() ? text : text + "\n" + paragraph(optimum, style);
}

Json lines_json(const Plan& plan) {
  Json list = Json::array();
  for (const LadderLine& line : plan.lines) {
    Json one = {{"number", list.size() + 1},
                {"reason", reason_word(line.reason)},
                {"bottles", line.bottles},
                {"active_stock", line.active ? Json(to_text(*line.active)) : Json()},
                {"family", json_text(line.family)},
                {"step_percent", line.active ? Json(line.step_percent) : Json()},
                {"active_percent", line.active_percent},
                {"effect_given_up", computed_value(line.effect_given_up)},
                {"risk_given_up", json_computed(line.risk_given_up)}};
    one["rungs"] = Json::array();
    for (const JudgedMixture& rung : line.rungs)
      one["rungs"].push_back(judged_json(rung, plan.layers, plan.job.limits));
    list.push_back(std::move(one));
  }
  return list;
}

}  // namespace gentlest
