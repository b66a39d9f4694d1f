// The ladder beside the published series on one screen, a line each.
#include "report/bottle/danger_words.hpp"
#include "report/form/format.hpp"
#include "report/form/short_screen.hpp"
#include "report/form/table.hpp"
#include "report/phrases/judged.hpp"
#include "report/phrases/likelihood.hpp"
#include "report/phrases/words.hpp"
#include "report/plans/short_words.hpp"
#include "report/screen/comparison_report.hpp"

#include <fmt/format.h>

#include <utility>

namespace gentlest {

namespace {

Table series_table(const std::vector<ListedSeries>& all) {
  Table table;
  table.columns = {{"series", Align::left, true},         {"bottles", Align::right, false},
                   {"works from", Align::right, true},    {"too risky", Align::right, true},
                   {"moves, at best", Align::left, true}, {"harms there", Align::left, true}};
  for (const ListedSeries& series : all) {
    std::vector<std::string> row = {series.name, std::to_string(series.liquids.size())};
    if (!series.quality) {
      row.resize(table.columns.size(), not_known);
    } else {
      const SeriesQuality& quality = *series.quality;
      const bool any_within = quality.beyond_limit < quality.steps;
      row.push_back(quality.first_that_works < 0 ? "none" : std::to_string(quality.first_that_works + 1));
      row.push_back(fmt::format("{} of {}", quality.beyond_limit, quality.steps));
      row.push_back(any_within ? likelihood_word(quality.strongest_effect) : "none is within");
      row.push_back(any_within ? likelihood_word(quality.risk_at_strongest) : "-");
    }
    table.rows.push_back(std::move(row));
  }
  return table;
}

std::vector<std::string> objection_lines(const std::vector<ListedSeries>& all) {
  std::vector<std::string> lines;
  for (const ListedSeries& series : all)
    if (!series.objections.empty()) lines.push_back(series.name + ": " + joined(series.objections, "; "));
  return lines;
}

}  // namespace

std::string comparison_short_text(const Plan& plan, const std::vector<ListedSeries>& all,
                                  const std::vector<Caution>& cautions, const Style& style, const Edition& edition) {
  std::vector<ScreenPart> parts = {
      must_stand(heading("Ladder beside the series of the books: " + title_of(plan.job.object), style).substr(1)),
      screen_list("", layer_lines(plan), 2, style)};
  if (plan.outcome != Outcome::window)
    parts.push_back(must_stand(paragraph(joined(short_no_rungs_words(plan), " "), style)));
  parts.push_back(must_stand("\n" + (all.empty() ? paragraph("No series of the books can be judged here.", style)
                                                 : to_text(series_table(all), style))));
  parts.push_back(screen_list("The job has against them", objection_lines(all), 0, style));
  parts.push_back(screen_list("", short_weak_words(plan.layers), 1, style));
  std::vector<const JudgedMixture*> mixtures;
  for (const ListedSeries& series : all)
    mixtures.insert(mixtures.end(), series.mixtures.begin(), series.mixtures.end());
  const std::vector<std::string> dangers = danger_words(liquids_of(mixtures), cautions);
  parts.push_back(screen_list(dangers_heading, dangers, dangers.size(), style));
  parts.push_back(must_stand(
      "\n" +
      screen_ending(
          "At best: within your risk limit, on this one painting. More: every mixture with its figures in --full.",
          style, edition)));
  return screen_of(std::move(parts), style);
}

}  // namespace gentlest
