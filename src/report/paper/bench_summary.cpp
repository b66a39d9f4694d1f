// First part of the sheet: what goes, what stays, and the ladder.
#include "report/paper/bench_sheet.hpp"

#include "report/bottle/contact_words.hpp"
#include "report/bottle/person_words.hpp"
#include "report/bottle/vial_words.hpp"
#include "report/form/format.hpp"
#include "report/paper/conduct_html.hpp"
#include "report/phrases/advice_words.hpp"
#include "report/phrases/fit_words.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/judged.hpp"
#include "report/phrases/likelihood.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/phrases/no_window.hpp"
#include "report/phrases/sighting_words.hpp"
#include "report/phrases/words.hpp"
#include "report/plans/layer_cost_words.hpp"
#include "report/plans/line_words.hpp"
#include "report/plans/plan_report.hpp"
#include "report/rules/conduct_words.hpp"

#include "gentlest/liquids/notation.hpp"
#include "gentlest/space/response.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <regex>
#include <utility>

namespace gentlest {

namespace {

// What an answer about phases asks of the person; empty when the vial stays one liquid.
std::string phases_mark(const PhaseAnswer& answer) {
  switch (answer.phases) {
    case Phases::one_liquid:
      return {};
    case Phases::near_border:
      return fmt::format("may cloud or part ({}): look at the vial", to_word(answer.basis));
    case Phases::two_liquids:
      return fmt::format("two layers ({}): shake, or leave it out", to_word(answer.basis));
    case Phases::unknown:
      return "not known whether it stays one liquid: look at the vial";
  }
  return {};
}

void add_drying_marks(std::vector<std::string>& marks, const Fate& fate, double risk_limit) {
  if (!fate.drift) {
    marks.emplace_back("drying: not known");
    return;
  }
  if (drifts_beyond(fate, risk_limit))
    marks.push_back(fmt::format("drying: risk passes the limit when {} % has gone, up to {}",
                                fixed(100 * *fate.risk.beyond_limit_at, 0),
                                per_cent_beside(fate.risk.worst, risk_limit)));
  if (fate.drift->parts_at)
    marks.push_back(
        fmt::format("drying: may part into two liquids when {} % has gone", fixed(100 * *fate.drift->parts_at, 0)));
}

std::string layer_words(const PlannedLayer& layer) {
  std::string text = "<b>" + user_text(layer.name) + "</b>: " + user_text(material_in_words(layer));
  text += " (" + user_text(sphere_in_words(layer)) + ")";
  const std::string flags = flags_text(layer.flags);
  if (!flags.empty()) text += "; warning: " + html_text(flags);
  return text;
}

std::string layers_html(const Plan& plan) {
  std::vector<std::string> go;
  std::vector<std::string> stay;
  for (const PlannedLayer& layer : plan.layers) {
    const std::string words = layer_words(layer) + (layer.is_target ? " <b>(this plan)</b>" : "");
    (layer.role == Role::remove ? go : stay).push_back(words);
  }
  for (const Passage& passage : plan.job.passages)
    if (is_judged_like_layer(passage, plan.layers))
      stay.push_back("passage <b>" + user_text(passage.name) + "</b>, judged like " + user_text(passage.of) +
                     (passage.suspected.empty() ? "" : "; warning: " + html_text(flags_text(passage.suspected))) +
                     (passage.note.empty() ? "" : ": " + user_text(passage.note)));
  return element("div",
                 element("div", element("h3", "What must go") + html_list(go)) +
                     element("div", element("h3", "What must stay as it is") + html_list(stay)),
                 "sides");
}

// Layers without a sphere and what to test first on them.
std::string unjudged_html(const Plan& plan) {
  if (!any_unjudged(plan.layers)) return {};
  std::vector<std::string> items;
  for (const std::string& words : unjudged_words(plan.layers)) items.push_back(user_text(words));
  std::vector<std::string> first;
  for (const std::string& words : first_test_words(plan.first_tests, plan.to_try, plan.layers))
    first.push_back(user_text(words));
  return element("h3", unjudged_heading) + html_list(items) + element("h3", first_tests_heading) + html_list(first);
}

// What to measure; without a ladder the shares alone, for nobody is asked to mix it.
std::string recipe_html(const BenchMixture& mixture, const Plan& plan) {
  if (ladder_rungs(plan).empty() && plan.to_try.empty()) return user_text(to_text(mixture.judged.mixture));
  std::string text;
  for (const RecipeLine& line : mixture.recipe.lines)
    text += fmt::format("<div><b class=\"nowrap\">{} mL</b> {}</div>", as_recorded(line.volume.value),
                        user_text(line.liquid.label));
  if (mixture.top_up)
    text += fmt::format("<div class=\"quiet\">or {} mL {} into {} mL of rung {}</div>", fixed(mixture.top_up->value, 1),
                        user_text(stock_words(plan.lines.front())), as_recorded(plan.job.limits.vial_mL),
                        mixture.judged.origin.number - 1);
  return text;
}

std::string red_html(const BenchMixture& mixture, const Plan& plan) {
  std::string text;
  for (std::size_t i = 0; i < plan.layers.size(); ++i) {
    if (!mixture.judged.outlooks[i]) {
      text += "<div>" + user_text(plan.layers[i].name) + " " + no_sphere_cell + "</div>";
      continue;
    }
    const Outlook& outlook = *mixture.judged.outlooks[i];
    text += fmt::format("<div>{} <b>{}</b> <span class=\"nowrap\">({} to {}){}</span></div>",
                        user_text(plan.layers[i].name), fixed(outlook.RED, 2), fixed(outlook.RED_band.low, 2),
                        fixed(outlook.RED_band.high, 2), outlook.may_flip ? " ?" : "");
  }
  return text;
}

// "0.9 to 26 %"
std::string band_html(const BenchMixture& mixture, std::size_t layer) {
  if (!mixture.chance_bands[layer]) return {};
  const Band& band = *mixture.chance_bands[layer];
  std::string low = per_cent(band.low);
  const std::string high = per_cent(band.high);
  constexpr std::size_t sign = 2;  // " %"
  if (low == high) return "<div class=\"quiet nowrap\">" + html_text(low) + "</div>";
  low.erase(low.size() - sign);
  return "<div class=\"quiet nowrap\">" + html_text(low) + " to " + html_text(high) + "</div>";
}

// "likely", before its figure; empty of a mixture that is not judged.
std::string word_of(const std::optional<double>& chance) {
  return chance ? likelihood_word(*chance) + " " : std::string();
}

// Index of the layer that gives the risk; empty when nothing is to be kept.
std::optional<std::size_t> riskiest_layer(const BenchMixture& mixture, const Plan& plan) {
  for (std::size_t i = 0; i < plan.layers.size(); ++i)
    if (plan.layers[i].role == Role::keep && plan.layers[i].name == mixture.judged.riskiest) return i;
  return std::nullopt;
}

std::string risk_html(const BenchMixture& mixture, const Plan& plan) {
  const std::string figure = word_of(mixture.judged.risk) + "<b class=\"nowrap\">" +
                             html_text(risk_words(mixture.judged, plan.job.limits)) + "</b>";
  const std::optional<std::size_t> riskiest = riskiest_layer(mixture, plan);
  if (!riskiest) return figure + " " + user_text(riskiest_words(mixture.judged));
  return figure + band_html(mixture, *riskiest) + "to " + user_text(mixture.judged.riskiest);
}

std::string marks_html(const BenchMixture& mixture, const Plan& plan) {
  std::string text;
  for (const std::string& mark : marks_of(mixture, plan)) text += "<div>" + html_text(mark) + "</div>";
  return text;
}

// Why a mixture may not be used any more; empty while it is open.
std::string closed_html(const Mixture& mixture, const SheetInputs& inputs) {
  if (!inputs.followed) return {};
  const Progress& progress = inputs.followed->progress;
  const std::optional<std::size_t> step = step_of(progress.conduct, mixture);
  return step && is_struck_out(progress, *step) ? user_text(closed_words(progress.conduct, *step)) : std::string();
}

std::string struck_out(const std::string& cell) {
  const std::regex line("<div>(.*?)</div>");
  return std::regex_search(cell, line) ? std::regex_replace(cell, line, "<div><s>$1</s></div>") : "<s>" + cell + "</s>";
}

// A closed rung is struck out, number and recipe, and says why.
void strike_out(std::vector<std::string>& row, const std::string& closed) {
  if (closed.empty()) return;
  row[0] = struck_out(row[0]);
  row[1] = struck_out(row[1]) + "<div><b>" + closed + "</b></div>";
}

std::vector<std::string> ladder_row(const BenchMixture& mixture, const Plan& plan) {
  const std::string name = short_name(mixture.judged);
  return {ladder_rungs(plan).empty() ? html_text(name) : "<span class=\"number\">" + name + "</span>",
          recipe_html(mixture, plan),
          word_of(mixture.judged.effect) + "<b class=\"nowrap\">" +
              html_text(effect_words(mixture.judged, plan.job.limits)) + "</b>" + band_html(mixture, plan.target),
          risk_html(mixture, plan),
          red_html(mixture, plan),
          label_signs(mixture.label)};
}

// The last column only where something is to be minded: most ladders need none.
std::string ladder_table(const Plan& plan, const Bench& bench, const SheetInputs& inputs) {
  const bool marked = std::any_of(bench.mixtures.begin(), bench.mixtures.end(),
                                  [&](const BenchMixture& mixture) { return !marks_of(mixture, plan).empty(); });
  std::vector<std::string> header = {ladder_rungs(plan).empty() ? "mixture" : "rung",
                                     ladder_rungs(plan).empty()
                                         ? recipe_column
                                         : fmt::format("into a {} mL vial", as_recorded(plan.job.limits.vial_mL)),
                                     "effect",
                                     "risk",
                                     "RED to each layer",
                                     "hazard label"};
  if (marked) header.emplace_back("to mind");
  std::vector<std::vector<std::string>> rows;
  for (const BenchMixture& mixture : bench.mixtures) {
    rows.push_back(ladder_row(mixture, plan));
    strike_out(rows.back(), closed_html(mixture.judged.mixture, inputs));
    if (marked) rows.back().push_back(marks_html(mixture, plan));
  }
  std::string text = html_table(header, rows,
                                ladder_rungs(plan).empty() ? "ladder no-ladder"
                                : marked                   ? "ladder marked"
                                                           : "ladder");
  if (!marked)
    text += element("p",
                    "As far as the figures tell, each vial stays one liquid, and while it dries the risk does not pass "
                    "the limit.");
  return text;
}

std::string numbers_html(const Plan& plan, const Bench& bench) {
  const Limits& limits = plan.job.limits;
  std::string text = element(
      "p",
      fmt::format("<b>Effect</b>: chance that the mixture moves {} (in a long test: \"{}\" or stronger). <b>Risk</b>: "
                  "largest chance that a layer to keep is affected ({}); the limit is {}. Small "
                  "figures: the middle 90 % of what the chance may be. <b>RED</b>: distance over radius; a question "
                  "mark means that inside or outside is open.",
                  user_text(plan.layers[plan.target].name),
                  html_text(grade_words(grade_that_counts(plan.layers[plan.target], limits))),
                  affected_words(plan.layers, limits, [](const std::string& name) { return user_text(name); }),
                  html_text(per_cent(limits.risk_limit))));
  std::vector<std::string> totals;
  for (const SessionTotal& total : bench.totals)
    totals.push_back(user_text(total.label) + " " + as_recorded(total.volume.value) + " mL");
  if (!totals.empty() && !ladder_rungs(plan).empty())
    text += element("p", "One vial of each takes: " + joined(totals) + ".");
  return text;
}

std::string no_window_html(const Plan& plan) {
  std::string text = std::string("<b>") + no_rungs_heading(plan) + "</b>";
  for (const std::string& sentence : no_window_sentences(plan)) text += " " + user_text(sentence);
  return element("p", text, "lead");
}

}  // namespace

std::vector<std::string> marks_of(const BenchMixture& mixture, const Plan& plan) {
  std::vector<std::string> marks;
  if (mixture.beyond_limit)
    marks.push_back("BEYOND THE RISK LIMIT of " + per_cent(plan.job.limits.risk_limit) + ": not proposed");
  const std::string seen = sighting_mark(mixture.judged);
  if (!seen.empty()) marks.push_back(seen);
  const std::string phases = phases_mark(as_made(mixture).fate.phases);
  if (!phases.empty()) marks.push_back(phases);
  add_drying_marks(marks, as_made(mixture).fate, plan.job.limits.risk_limit);
  if (mixture.as_measured)
    marks.push_back(fmt::format("as measured (rounded): effect {}, risk {}",
                                effect_words(*mixture.as_measured, plan.job.limits),
                                risk_words(*mixture.as_measured, plan.job.limits)));
  return marks;
}

namespace {

// The other lines as recipes alone: the cards and labels are those of the first.
std::string other_lines_html(const Plan& plan, const SheetInputs& inputs) {
  std::vector<std::string> items;
  for (const std::string& sentence : ladder_line_sentences(plan)) items.push_back(user_text(sentence));
  std::string text = items.empty() ? std::string() : element("p", joined(items, " "));
  for (std::size_t number = 2; number <= plan.lines.size(); ++number) {
    std::vector<std::string> rungs;
    for (const JudgedMixture& rung : plan.lines[number - 1].rungs) {
      std::vector<std::string> cells = {"<b>" + std::to_string(rung.origin.number) + "</b>",
                                        user_text(to_text(rung.mixture))};
      strike_out(cells, closed_html(rung.mixture, inputs));
      rungs.push_back(cells[0] + " " + cells[1] + " (" + html_text(effect_words(rung, plan.job.limits)) + ", " +
                      html_text(risk_words(rung, plan.job.limits)) + ")");
    }
    if (number == 2) text += element("h3", other_lines_heading);
    text += element("p", user_text(line_sentence(plan, number)) + " Rung by rung, with effect and risk: ") +
            html_list(rungs);
  }
  return text;
}

// What was seen of the very mixtures, and what keeping a layer costs; empty where there is neither.
std::string beside_the_figures(const Plan& plan, const Bench& bench) {
  std::vector<std::string> seen;
  for (const BenchMixture& mixture : bench.mixtures)
    for (const std::string& sentence : very_sentences(mixture.judged))
      seen.push_back("<b>" + html_text(mixture_name(mixture.judged)) + "</b>: " + user_text(sentence));
  std::vector<std::string> costs;
  for (const std::string& words : layer_cost_words(plan)) costs.push_back(user_text(words));
  std::string text;
  if (!seen.empty()) text += element("h3", seen_of_mixtures_heading) + html_list(seen);
  if (!costs.empty()) text += element("h3", layer_cost_heading) + html_list(costs);
  if (!plan.costs.empty()) text += element("p", layer_cost_use);
  return text;
}

// Where the tests stand; empty without a log.
std::string followed_html(const Plan& plan, const SheetInputs& inputs) {
  if (!inputs.followed) return {};
  const Progress& progress = inputs.followed->progress;
  return "<section>\n" + element("h2", where_tests_stand_heading) + state_html(plan, progress) +
         matrix_html(plan, progress) + "</section>\n";
}

}  // namespace

std::string sheet_beside(const Plan& plan, const Bench& bench, const SheetInputs& inputs) {
  if (bench.mixtures.empty()) return {};
  std::string text = other_lines_html(plan, inputs) + beside_the_figures(plan, bench);
  for (const auto& [heading, sentences] :
       {std::pair(person_heading, person_sentences(bench)), std::pair(contact_heading, contact_sentences(bench))}) {
    std::vector<std::string> items;
    for (const std::string& sentence : sentences) items.push_back(user_text(sentence));
    if (!items.empty()) text += element("h3", heading) + html_list(items);
  }
  return text.empty() ? text : "<section>\n" + element("h2", "Beside the ladder") + text + "</section>\n";
}

std::string sheet_summary(const Plan& plan, const Bench& bench, const SheetInputs& inputs) {
  const bool window = plan.outcome == Outcome::window;
  std::string text = followed_html(plan, inputs) + "<section class=\"glance\">\n" + element("h2", "At a glance");
  if (!window) text += no_window_html(plan);
  text += layers_html(plan) + unjudged_html(plan);
  text += element("h3", window ? fmt::format("The ladder, from gentle to strong: {} on {}",
                                             counted(ladder_rungs(plan).size(), "rung", "rungs"),
                                             counted(ladder_bottles(plan).size(), "bottle", "bottles"))
                               : (plan.to_try.empty() ? how_close_heading : to_try_heading));
  text += bench.mixtures.empty()
              ? element("p", plan.outcome == Outcome::no_ladder
                                 ? "No mixture is proposed."
                                 : "No mixture at all stays within the risk limit, and none reaches the effect wanted.")
              : ladder_table(plan, bench, inputs) + numbers_html(plan, bench);
  if (!inputs.followed && (window || !plan.to_try.empty())) text += without_card_html(plan, bench);
  if (!window) text += element("h3", other_ways_heading) + advice_html(other_ways_words(plan));
  text += element("h3", to_watch_heading) + element("div", advice_html(watch_words(plan)), "columns");
  return text + "</section>\n";
}

}  // namespace gentlest
