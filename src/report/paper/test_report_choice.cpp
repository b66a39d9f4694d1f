// What the tests point to, how sure that is, and what else was open.
#include "report/paper/test_report.hpp"

#include "report/form/format.hpp"
#include "report/phrases/advice_words.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/learning_words.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/phrases/no_window.hpp"
#include "report/phrases/sighting_words.hpp"

#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

namespace gentlest {

namespace {

std::string margin_words(const LayerOutlook& outlook, bool any_open) {
  if (outlook.role == Role::remove) return "";
  if (!outlook.margin_claimed)
    return any_open ? "none claimed: a layer has no sphere" : "none claimed: see the warning on the material";
  return figure_words({outlook.RED.mean - 1, outlook.RED.low - 1, outlook.RED.high - 1});
}

std::string outlook_table(const std::vector<LayerOutlook>& outlooks, bool any_open) {
  std::vector<std::vector<std::string>> rows;
  for (const LayerOutlook& one : outlooks)
    rows.push_back({user_text(one.layer), one.role == Role::remove ? "to be moved" : "to be affected",
                    html_text(chance_words(one.chance)), figure_words(one.RED), margin_words(one, any_open)});
  return html_table({"layer", "chance of what", "after all tests", "RED", "margin, RED - 1"}, rows);
}

std::string test_numbers(const std::vector<int>& tests) {
  std::vector<std::string> numbers;
  for (const int test : tests) numbers.push_back(std::to_string(test));
  return joined(numbers, ", ", "not tested");
}

// The mixture that the choice is about: what worked, or what would come next.
std::string chosen_html(const TestReport& report) {
  const NextAnswer& next = report.progress.next;
  if (report.review.chosen) {
    const ConsideredMixture& chosen = report.review.considered[*report.review.chosen];
    std::string text = element("p", fmt::format("<b>{}</b>, tested in: {}.", user_text(to_text(chosen.judged.mixture)),
                                                test_numbers(chosen.tests)));
    text += outlook_table(chosen.outlooks, any_unjudged(report.plan.layers));
    std::vector<std::string> seen;
    for (const std::string& sentence : sighting_sentences(chosen.judged)) seen.push_back(user_text(sentence));
    text += html_list(seen);
    text += element("p", "In brackets the middle 90 % of what each figure may be.", "quiet");
    text += element("p", html_text(room_words(*report.review.room, report.plan.job.limits.risk_limit)) + ".");
    return text;
  }
  std::string text;
  if (next.kind == NextKind::not_judged) {
    std::vector<std::string> first;
    for (const std::string& words :
         first_test_words(report.progress.first_tests, report.progress.to_try, report.progress.layers))
      first.push_back(user_text(words));
    text += element("h3", first_tests_heading) + html_list(first);
  }
  return text;
}

std::vector<std::string> option_row(const ConsideredMixture& one, bool is_chosen) {
  const LayerOutlook* target = target_outlook(one);
  const std::string seen = sighting_mark(one.judged);
  const LayerOutlook* riskiest = riskiest_outlook(one);
  std::string name = user_text(to_text(one.judged.mixture));
  const std::string in_plan = name_in_plan(one.judged);
  if (!in_plan.empty()) name = "<b>" + html_text(in_plan) + "</b>: " + name;
  if (is_chosen) name += " <b>(what the tests point to)</b>";
  return {name,
          test_numbers(one.tests),
          html_text(known_chance(one.judged.effect)) + " / " + html_text(known_chance(one.judged.risk)),
          target ? html_text(chance_words(target->chance)) : std::string(not_known),
          (riskiest ? html_text(chance_words(riskiest->chance)) + " to " + user_text(riskiest->layer)
                    : user_text(riskiest_words(one.judged))) +
              (seen.empty() ? "" : "; " + user_text(seen)),
          riskiest ? figure_words(riskiest->RED) : ""};
}

}  // namespace

std::string report_choice(const TestReport& report) {
  std::string text = "<section>\n" + element("h2", "What was chosen, and why") + chosen_html(report);
  text += element("p",
                  "This is what the readings point to, not a permission: the licensed conservator decides, the swab "
                  "decides about the painting. The decision, if it was taken, to be written in:");
  text += element("div", "mixture, by whom, date, and why it differs, if it does:", "decision");
  const NextKind kind = report.progress.next.kind;
  if (kind != NextKind::test && kind != NextKind::found) text += element("p", html_text(ways_pointer));
  return text + "</section>\n";
}

std::string report_options(const TestReport& report) {
  std::string text = "<section>\n" + element("h2", "Options considered");
  const Plan& plan = report.plan;
  if (plan.outcome == Outcome::no_ladder) text += element("p", user_text(no_window_sentences(plan).front()));
  if (plan.outcome == Outcome::no_window)
    text += element("p", "Before the tests no mixture of the shelf reached the wanted effect within the risk limit.");
  std::vector<std::vector<std::string>> rows;
  for (std::size_t i = 0; i < report.review.considered.size(); ++i)
    rows.push_back(option_row(report.review.considered[i], report.review.chosen == i));
  if (!rows.empty())
    text += html_table({mixture_column, "tests", "planned effect / risk", "effect after all tests",
                        "largest risk after all tests", "RED of that layer"},
                       rows, "options");
  text +=
      element("p",
              "<b>Effect</b>: chance that the layer to remove is moved. <b>Risk</b>: largest chance that a layer to "
              "keep is affected. In brackets the middle 90 % of what the figure may be. <b>RED</b>: Hansen distance "
              "over radius; below 1 is inside the range of the layer. Planned: as held before any test.");
  text += element(
      "p", fmt::format("{} mixtures of the shelf were compared for the ladder.", with_commas(plan.mixtures_judged)));
  if (plan.outcome != Outcome::window) text += element("h3", other_ways_heading) + advice_html(other_ways_words(plan));
  return text + "</section>\n";
}

}  // namespace gentlest
