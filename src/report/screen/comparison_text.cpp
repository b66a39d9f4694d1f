#include "report/screen/comparison_report.hpp"

#include "report/form/format.hpp"
#include "report/form/table.hpp"
#include "report/phrases/fate.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/judged.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/phrases/no_window.hpp"
#include "report/phrases/sighting_words.hpp"
#include "report/phrases/words.hpp"

#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

// A rise or fall in points of per cent.
std::string in_points(const std::optional<double>& rise) {
  if (!rise) return {};
  const std::string size = fixed(100 * std::abs(*rise), 1);
  return (*rise < 0 && size != "0.0" ? "-" : "+") + size;
}

std::string quality_table(const std::vector<ListedSeries>& all, const Limits& limits, const Style& style) {
  Table table;
  table.columns = {{"series", Align::left, true},
                   {"mixtures", Align::right, true},
                   {"bottles", Align::right, true},
                   {"beyond limit", Align::right, true},
                   {"strongest within", Align::right, true},
                   {"at a risk of", Align::right, true},
                   {"first that works", Align::right, true},
                   {"largest rise", Align::right, true},
                   {"rises differ by (sd)", Align::right, true},
                   {"falls", Align::right, true},
                   {"largest Ra", Align::right, true}};
  for (const ListedSeries& series : all) {
    if (!series.quality) {
      table.rows.push_back(
          {series.name, std::to_string(series.mixtures.size()), std::to_string(series.liquids.size())});
      table.rows.back().resize(table.columns.size(), not_known);
      continue;
    }
    const SeriesQuality& quality = *series.quality;
    const bool any_within = quality.beyond_limit < quality.steps;
    table.rows.push_back({series.name, std::to_string(quality.steps), std::to_string(series.liquids.size()),
                          std::to_string(quality.beyond_limit),
                          any_within ? per_cent_beside(quality.strongest_effect, limits.wanted_effect) : "none",
                          any_within ? per_cent_beside(quality.risk_at_strongest, limits.risk_limit) : "none",
                          quality.first_that_works < 0 ? "none" : std::to_string(quality.first_that_works + 1),
                          fixed(100 * quality.largest_rise, 1), fixed(100 * quality.unevenness, 1),
                          std::to_string(quality.falls), fixed(quality.longest_Ra, 1)});
  }
  return to_text(table, style);
}

// Smallest RED over the layers to keep.
std::optional<double> nearest_kept_RED(const JudgedMixture& judged, const std::vector<PlannedLayer>& layers) {
  std::optional<double> nearest;
  for (std::size_t i = 0; i < layers.size(); ++i)
    if (layers[i].role == Role::keep && judged.outlooks[i])
      nearest = std::min(nearest.value_or(judged.outlooks[i]->RED), judged.outlooks[i]->RED);
  return nearest;
}

std::string limit_word(const JudgedMixture& judged, const Limits& limits) {
  const std::optional<bool> beyond = beyond_limit(judged, limits);
  return !beyond ? not_known : *beyond ? "BEYOND" : "within";
}

std::string RED_of(const std::optional<Outlook>& outlook) {
  return outlook ? fixed(outlook->RED, 2) : not_known;
}

std::string mixtures_table(const ListedSeries& series, const Plan& plan, const Style& style) {
  const Limits& limits = plan.job.limits;
  Table table;
  table.columns = {{"step", Align::right, false},          {recipe_column, Align::left, true},
                   {"effect", Align::right, false},        {"rise", Align::right, false},
                   {"risk", Align::right, false},          {"limit", Align::left, false},
                   {"RED, to remove", Align::right, true}, {"RED, nearest kept", Align::right, true},
                   {fate_column, Align::left, true}};
  if (any_unjudged(plan.layers)) table.columns.push_back({seen_column, Align::left, true});
  for (std::size_t i = 0; i < series.mixtures.size(); ++i) {
    const JudgedMixture& judged = *series.mixtures[i];
    const std::optional<double> kept = nearest_kept_RED(judged, plan.layers);
    table.rows.push_back({short_name(judged), to_text(judged.mixture), effect_words(judged, limits),
                          in_points(rise_at(series, i)), risk_words(judged, limits), limit_word(judged, limits),
                          RED_of(judged.outlooks[plan.target]), kept ? fixed(*kept, 2) : riskiest_words(judged),
                          fate_mark(judged, limits.risk_limit)});
    if (any_unjudged(plan.layers)) table.rows.back().push_back(sighting_mark(judged));
  }
  return to_text(table, style);
}

// Each liquid once; hazards are those of the separate liquids.
std::string hazards_text(const ListedSeries& series, const Style& style) {
  std::string text;
  for (const Liquid& liquid : liquids_of(series.mixtures))
    text += bullet("Hazards of " + liquid.label + ": " + hazard_line(Mixture({{liquid, 1}})), style);
  return text;
}

std::string series_text(const ListedSeries& series, const Plan& plan, const Style& style) {
  std::string text = heading(fmt::format("{} ({})", series.name, joined(series.liquids)), style);
  text += paragraph("Source: " + series.source, style) + "\n" + mixtures_table(series, plan, style) + "\n";
  if (!series.objections.empty())
    text += bullet("The job has against it: " + joined(series.objections, "; ") +
                       ". The series is judged as if these bottles stood there.",
                   style);
  return text + hazards_text(series, style);
}

std::string no_ladder_text(const Plan& plan, const Style& style) {
  if (plan.outcome == Outcome::window) return {};
  std::string text = heading(no_rungs_heading(plan), style);
  for (const std::string& sentence : no_window_sentences(plan)) text += paragraph(sentence, style);
  return text + paragraph("The published series stand alone below.", style);
}

}  // namespace

std::string comparison_text(const Plan& plan, const std::vector<ListedSeries>& all, const Style& style,
                            const Edition& edition) {
  const Limits& limits = plan.job.limits;
  std::string text = heading("Ladder and published series for: " + title_of(plan.job.object), style).substr(1);
  text += two_numbers_text(plan.layers, limits, style);
  text += paragraph(
      fmt::format("\"Within\" and \"works\": a risk of at most {}, an effect of at least {}. Rises are in points of "
                  "per cent of effect from one mixture to the next; Ra is the distance between neighbours, MPa^0.5.",
                  per_cent(limits.risk_limit), per_cent(limits.wanted_effect)),
      style);
  text += no_ladder_text(plan, style);
  if (all.empty())
    text += paragraph("No published series can be judged: its liquids are not in this catalogue.", style);
  if (!all.empty()) text += heading("All of them at a glance", style) + quality_table(all, limits, style);
  text += layers_text(plan.layers, plan.job.passages, StandIns::in_full, style);
  text += unjudged_text(plan.layers, plan.first_tests, plan.to_try, style);
  for (const ListedSeries& series : all) text += series_text(series, plan, style);
  text +=
      "\n" + paragraph(
                 "These are chances for the layers of this one painting, as far as they are known; they say nothing of "
                 "a series elsewhere. The swab decides.",
                 style, 0);
  text += paragraph(law_words(edition.law), style, 0);
  return text + paragraph(edition_words(edition) + ".", style, 0);
}

}  // namespace gentlest
