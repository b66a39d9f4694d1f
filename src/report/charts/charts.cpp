#include "report/charts/charts.hpp"

#include "report/charts/chart_words.hpp"
#include "report/form/format.hpp"
#include "report/own_series/own_words.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/phrases/no_window.hpp"
#include "report/phrases/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

namespace gentlest {

LayerLook look_of(const Plan& plan, std::size_t layer) {
  if (layer == plan.target) return target_look;
  const Role role = plan.layers[layer].role;
  std::size_t before = role == Role::remove ? 1 : 0;  // the target has the first look
  for (std::size_t i = 0; i < layer; ++i)
    if (plan.layers[i].role == role && i != plan.target) ++before;
  return role == Role::remove ? removed_look(before) : kept_look(before);
}

std::string mark_of(const Plan& plan, const Bench& bench, std::size_t mixture) {
  return ladder_rungs(plan).empty() ? std::string(1, static_cast<char>('A' + mixture))
                                    : short_name(bench.mixtures[mixture].judged);
}

std::string name_in_picture(const Plan& plan, const Bench& bench, std::size_t mixture) {
  return (ladder_rungs(plan).empty() ? "mixture " : "rung ") + mark_of(plan, bench, mixture);
}

std::string named_letters(const Plan& plan, const Bench& bench) {
  if (!ladder_rungs(plan).empty()) return {};
  std::string words;
  for (std::size_t i = 0; i < bench.mixtures.size(); ++i)
    words += fmt::format(" {}: {}{}.", mark_of(plan, bench, i), short_name(bench.mixtures[i].judged),
                         bench.mixtures[i].beyond_limit ? ", beyond the risk limit" : "");
  return words;
}

std::string layer_legend(const PlannedLayer& layer) {
  return layer.name + " (" + role_word(layer.role) + ")";
}

bool is_on_ladder(const Bench& bench, const std::string& label) {
  return std::any_of(bench.mixtures.begin(), bench.mixtures.end(), [&](const BenchMixture& mixture) {
    const std::vector<Part>& parts = mixture.judged.mixture.parts();
    return std::any_of(parts.begin(), parts.end(), [&](const Part& part) { return part.liquid.label == label; });
  });
}

const std::vector<std::string>& chart_kinds() {
  static const std::vector<std::string> kinds = {"risk", "chances", "planes", "triangle", "drift"};
  return kinds;
}

void tell_not_drawn(Chart& chart, const Plan& plan) {
  std::vector<std::string> names;
  for (const PlannedLayer& layer : plan.layers)
    if (!layer.sphere) names.push_back(layer.name);
  if (names.empty()) return;
  const std::string words = " Not drawn, since it has no sphere: " + joined(names) + ".";
  chart.caption += words;
  chart.description += words;
}

namespace {

// Why there is no picture of this kind; empty where there is one.
std::string nothing_to_draw(const std::string& kind, const Plan& plan) {
  if (plan.outcome == Outcome::no_ladder || plan.shelf.empty()) return no_window_sentences(plan).front();
  if (plan.by_effect_alone && kind == "risk") return "No layer to keep has a sphere, so there is no risk to draw.";
  return {};
}

std::string first_letter_large(std::string word) {
  word.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(word.front())));
  return word;
}

Chart drawn(const std::string& kind, const Plan& plan, const Bench& bench) {
  if (kind == "risk") return risk_chart(plan, bench);
  if (kind == "chances") return chances_chart(plan, bench);
  if (kind == "planes") return planes_chart(plan, bench);
  if (kind == "triangle") return triangle_chart(plan, bench);
  return drift_chart(plan, bench);
}

}  // namespace

Chart chart_of(const std::string& kind, const Plan& plan, const Bench& bench) {
  const std::string nothing = nothing_to_draw(kind, plan);
  if (!nothing.empty()) {
    Chart chart = {kind, first_letter_large(kind), {}, {chart_width, 0}};
    chart.caption = nothing + own_absence_words(plan.job.series, OwnAbsence::nothing_drawn);
    chart.description = chart.caption;
    return chart;
  }
  Chart chart = drawn(kind, plan, bench);
  chart.description = describe_chart(kind, plan, bench);
  tell_not_drawn(chart, plan);
  return chart;
}

}  // namespace gentlest
