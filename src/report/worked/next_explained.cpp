// The next test explained: it is chosen by rules first and by figures second, so this is told and not summed.
#include "report/worked/worked_report.hpp"

#include "gentlest/liquids/notation.hpp"
#include "report/form/format.hpp"
#include "report/form/json.hpp"
#include "report/form/short_screen.hpp"
#include "report/form/table.hpp"
#include "report/phrases/learning_words.hpp"
#include "report/phrases/words.hpp"
#include "report/rules/conduct_words.hpp"

#include <fmt/format.h>

namespace gentlest {

namespace {

std::string name_of_test(const Progress& progress, const OpenTest& test) {
  return fmt::format("{} ({})", to_text(test.mixture),
                     at_place_words(step_name(progress.conduct, test.step), test.place, test.passage));
}

std::vector<std::string> open_lines(const Progress& progress) {
  std::vector<std::string> lines;
  for (const OpenTest& test : progress.conduct.open)
    lines.push_back(name_of_test(progress, test) + ": " + rule_words(test.rule));
  return lines;
}

// Which figures passed tests over, and which let one through.
std::vector<std::string> figure_lines(const Progress& progress) {
  const NextAnswer& next = progress.next;
  std::vector<std::string> lines;
  for (const TooRisky& one : next.too_risky)
    lines.push_back(fmt::format("passed over: {}; risk {} to {} is above the cap of {}",
                                name_of_test(progress, one.test), per_cent_beside(one.risk, one.cap), one.layer,
                                setting_per_cent(one.cap)));
  for (const TooLittle& one : next.too_little)
    lines.push_back(fmt::format("passed over: {}; what this way still promises, {}, is below {}",
                                name_of_test(progress, one.test), per_cent_beside(one.promise, one.least),
                                setting_per_cent(one.least)));
  if (next.test && next.outlook) {
    const double cap = next.cap;
    lines.push_back(
        fmt::format("taken: {}; effect believed {}, risk believed {}, not above the cap of {} for this place",
                    name_of_test(progress, *next.test), per_cent(next.outlook->effect),
                    per_cent_beside(next.outlook->risk, cap), setting_per_cent(cap)));
  }
  if (next.is_surprised)
    lines.emplace_back("the readings fit badly with what was held before, so the caps are the lower ones");
  return lines;
}

constexpr const char* where_figures_come_from =
    "What is believed comes from thousands of possible ranges of each layer, weighed by every reading: no hand repeats "
    "it. Caps and least promise were tuned on simulated paintings (docs/study.md). Rules stand above figures: these "
    "only "
    "choose among what those leave open.";

std::string next_json(const Plan& plan, const Progress& progress, const Edition& edition) {
  const NextTestSettings& settings = progress.task.settings;
  Json document = json_document("explanation_of_next", edition);
  document["painting"] = json_text(plan.job.object.title);
  document["next"] = next_kind_word(progress.next.kind);
  document["words"] = next_words(progress);
  document["why"] = why_words(progress);
  document["rule"] = static_cast<int>(progress.next.rule);
  document["harms"] = harm_words(progress.conduct);
  document["closed"] = closure_words(plan, progress.conduct);
  document["open"] = open_lines(progress);
  document["figures"] = figure_lines(progress);
  document["caps"] = {{"picture", settings.picture_risk},
                      {"edge", settings.edge_risk},
                      {"picture_when_surprised", settings.picture_risk_when_surprised},
                      {"edge_when_surprised", settings.edge_risk_when_surprised},
                      {"least_promise", settings.least_promise}};
  document["readings_counted"] = progress.counted.size();
  document["readings_left_out"] = not_counted_words(progress);
  return json_dump(document);
}

}  // namespace

std::string next_explained(const Plan& plan, const Progress& progress, bool full, Form form, const Style& style,
                           const Edition& edition) {
  if (form == Form::json) return next_json(plan, progress, edition);
  std::string top;
  for (const std::string& harm : harm_words(progress.conduct)) top += paragraph(harm, style, 0);
  top += heading("Why this is next: " + title_of(plan.job.object), style).substr(top.empty() ? 1 : 0);
  top += paragraph(next_words(progress), style) + paragraph("Why: " + why_words(progress) + ".", style);
  std::vector<std::string> left_out = not_counted_words(progress);
  const std::vector<std::string> closed = closure_words(plan, progress.conduct);
  const std::vector<std::string> open = open_lines(progress);
  const std::vector<std::string> figures = figure_lines(progress);
  std::vector<ScreenPart> parts = {
      must_stand(top),
      screen_list(fmt::format("Readings that count: {}. Left out", progress.counted.size()), left_out, 1, style),
      screen_list("What the tests closed", closed, 2, style),
      screen_list("What the rules leave open, in their order", open, 2, style),
      screen_list("Which figures chose", figures, figures.size(), style),
      must_stand("\n" + paragraph(where_figures_come_from, style, 0) +
                 paragraph(edition_words(edition) + ".", style, 0))};
  return full ? whole_of(parts) : screen_of(std::move(parts), style);
}

}  // namespace gentlest
