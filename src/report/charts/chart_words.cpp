#include "report/charts/chart_words.hpp"

#include "report/bottle/liquid_words.hpp"
#include "report/charts/charts.hpp"
#include "report/form/format.hpp"
#include "report/own_series/own_words.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/likelihood.hpp"
#include "report/phrases/sighting_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace gentlest {

namespace {

// "rung 1: ...; rung 2: ..." with what is to be said of each mixture.
template <class Say>
std::string each_mixture(const Plan& plan, const Bench& bench, Say say) {
  std::vector<std::string> words;
  for (std::size_t i = 0; i < bench.mixtures.size(); ++i)
    words.push_back(name_in_picture(plan, bench, i) + ": " + say(bench.mixtures[i]));
  return joined(words, "; ", "no mixture") + ". ";
}

std::string counted_mixtures(const Plan& plan, const Bench& bench) {
  const char* what = ladder_rungs(plan).empty() ? "mixture" : "rung";
  return counted(bench.mixtures.size(), what, std::string(what) + "s") + " and " +
         counted(plan.layers.size(), "layer", "layers") + ". ";
}

std::string limits_words(const Limits& limits) {
  return fmt::format("Risk limit {}, effect wanted {}. ", per_cent(limits.risk_limit), per_cent(limits.wanted_effect));
}

std::string point_words(const Hansen& point) {
  return fmt::format("dD {}, dP {}, dH {}", fixed(point.dD, 1), fixed(point.dP, 1), fixed(point.dH, 1));
}

std::string teas_words(const Teas& teas) {
  return fmt::format("fd {}, fp {}, fh {} %", fixed(teas.fd, 0), fixed(teas.fp, 0), fixed(teas.fh, 0));
}

std::string bottles_words(const Plan& plan, const Bench& bench) {
  std::vector<std::string> used;
  for (const Liquid& liquid : plan.shelf)
    if (is_on_ladder(bench, liquid.label)) used.push_back(liquid.label);
  return fmt::format("Bottles in use here: {}; others on the shelf: {}. ", joined(used, ", ", "none"),
                     plan.shelf.size() - used.size());
}

// The layer to keep that the mixture threatens most, or what is said where none can be.
std::string threat_words(const JudgedMixture& judged) {
  return judged.risk ? fmt::format("{} is {} affected ({})", judged.riskiest, likelihood_word(*judged.risk),
                                   per_cent(*judged.risk))
                     : std::string("no risk can be told");
}

// "At rung 6, the strongest, varnish is nearly sure to move (85 %) and oil paint is perhaps affected (22 %). "
std::string main_message(const Plan& plan, const Bench& bench) {
  if (bench.mixtures.empty()) return "No mixture to show. ";
  const std::size_t last = bench.mixtures.size() - 1;
  const JudgedMixture& judged = bench.mixtures[last].judged;
  if (!judged.effect) return {};
  return fmt::format("At {}{} {} is {} moved ({}), and {}. ", name_in_picture(plan, bench, last),
                     ladder_rungs(plan).empty() ? "," : ", the strongest,", plan.layers[plan.target].name,
                     likelihood_word(*judged.effect), per_cent(*judged.effect), threat_words(judged));
}

// Of the pictures of Hansen space: which mixture comes nearest to what is to go.
std::string nearest_message(const Plan& plan, const Bench& bench) {
  std::optional<std::size_t> nearest;
  const auto RED_of = [&](std::size_t i) { return bench.mixtures[i].judged.outlooks[plan.target]->RED; };
  for (std::size_t i = 0; i < bench.mixtures.size(); ++i)
    if (bench.mixtures[i].judged.outlooks[plan.target] && (!nearest || RED_of(i) < RED_of(*nearest))) nearest = i;
  if (!nearest) return {};
  return fmt::format("Of the mixtures {} comes nearest to the middle of the range of {}, RED {}. ",
                     name_in_picture(plan, bench, *nearest), plan.layers[plan.target].name, fixed(RED_of(*nearest), 2));
}

// Of the drift: which mixtures pass the limit on the way.
std::string drying_message(const Plan& plan, const Bench& bench) {
  std::vector<std::string> beyond;
  for (std::size_t i = 0; i < bench.mixtures.size(); ++i)
    if (drifts_beyond(as_made(bench.mixtures[i]).fate, plan.job.limits.risk_limit))
      beyond.push_back(name_in_picture(plan, bench, i));
  return beyond.empty() ? "No mixture of which the drift is known passes the risk limit while it dries. "
                        : "While drying the risk limit is passed by " + joined(beyond) + ". ";
}

std::string risk_words(const Plan& plan, const Bench& bench) {
  std::string text = "Effect upwards against risk to the right, " + counted_mixtures(plan, bench);
  text += each_mixture(plan, bench, [](const BenchMixture& mixture) { return effect_and_risk(mixture.judged); });
  text += limits_words(plan.job.limits);
  if (!plan.frontier.empty())
    text += fmt::format("Frontier of the shelf: {}, from effect {} at risk {} to effect {} at risk {}. ",
                        counted(plan.frontier.size(), "mixture", "mixtures"), per_cent(plan.frontier.front().effect),
                        per_cent(plan.frontier.front().risk), per_cent(plan.frontier.back().effect),
                        per_cent(plan.frontier.back().risk));
  std::vector<std::string> series;
  for (const ComparedSeries& one : bench.published)
    if (one.series.kind != SeriesKind::own) series.push_back(series_name(one.series));
  return series.empty() ? text : text + "Published series beside it: " + joined(series) + ".";
}

std::string chances_words(const Plan& plan, const Bench& bench) {
  std::string text = "The chance of each layer, with the middle 90 % of what it may be, for " +
                     counted_mixtures(plan, bench) + limits_words(plan.job.limits);
  for (std::size_t i = 0; i < plan.layers.size(); ++i)
    if (plan.layers[i].sphere)
      text += layer_legend(plan.layers[i]) + ": " + each_mixture(plan, bench, [i](const BenchMixture& mixture) {
                return fmt::format("{} ({} to {})", per_cent(mixture.judged.outlooks[i]->chance),
                                   per_cent(mixture.chance_bands[i]->low), per_cent(mixture.chance_bands[i]->high));
              });
  return text;
}

std::string planes_words(const Plan& plan, const Bench& bench) {
  std::string text = "Three views of Hansen space, dD with dH, dP with dH and dD with dP, in MPa^0.5, of " +
                     counted_mixtures(plan, bench);
  for (const PlannedLayer& layer : plan.layers)
    if (layer.sphere)
      text +=
          fmt::format("{}: range about {}, radius {}{}. ", layer_legend(layer), point_words(layer.sphere->mean.centre),
                      fixed(layer.sphere->mean.R0, 1), layer.reach.places.empty() ? "" : ", bent by observations");
  text += each_mixture(plan, bench, [](const BenchMixture& mixture) { return point_words(mixture.judged.point); });
  return text + bottles_words(plan, bench);
}

std::string triangle_words(const Plan& plan, const Bench& bench) {
  std::string text = "The triangle of fd, fp and fh with " + counted_mixtures(plan, bench);
  for (const PlannedLayer& layer : plan.layers)
    if (layer.sphere)
      text += fmt::format("{}: middle of its range at {}. ", layer_legend(layer),
                          teas_words(teas_fractions(layer.sphere->mean.centre)));
  text += each_mixture(plan, bench, [](const BenchMixture& mixture) { return teas_words(mixture.judged.teas); });
  return text + bottles_words(plan, bench);
}

std::string drying_words(const BenchMixture& mixture) {
  const Fate& fate = as_made(mixture).fate;
  if (!fate.drift) return drying_not_known;
  std::string text = fmt::format("from {} to {}, {} last", point_words(fate.drift->path.front().point),
                                 point_words(fate.drift->path.back().point), fate.drift->last);
  if (!fate.riskiest.empty())
    text += fmt::format(", risk {} in the vial and at most {} on the way", per_cent(fate.risk.at_start),
                        per_cent(fate.risk.worst));
  if (fate.drift->parts_at) text += fmt::format(", may part when {} % has gone", fixed(100 * *fate.drift->parts_at, 0));
  return text;
}

std::string drift_words(const Plan& plan, const Bench& bench) {
  return "Left the way through Hansen space while drying, right the risk on that way, for " +
         counted_mixtures(plan, bench) + each_mixture(plan, bench, drying_words) + "Risk limit " +
         per_cent(plan.job.limits.risk_limit) + ".";
}

std::string outlooks_words(const Plan& plan, const JudgedMixture& judged) {
  std::vector<std::string> words;
  for (std::size_t i = 0; i < plan.layers.size(); ++i)
    if (judged.outlooks[i]) words.push_back(plan.layers[i].name + " " + per_cent(judged.outlooks[i]->chance));
  return joined(words);
}

std::string drying_risk_words(const JudgedMixture& judged) {
  if (!judged.fate.drift) return drying_not_known;
  return judged.fate.riskiest.empty() ? point_words(judged.point)
                                      : fmt::format("risk {} at first, {} at most", per_cent(judged.fate.risk.at_start),
                                                    per_cent(judged.fate.risk.worst));
}

// What the picture of that kind shows of the job's own series.
std::string own_words(const std::string& kind, const Plan& plan, const Bench& bench) {
  return own_described(own_lines(bench.published), [&](const JudgedMixture& judged) {
    return kind == "risk"       ? effect_and_risk(judged)
           : kind == "chances"  ? outlooks_words(plan, judged)
           : kind == "planes"   ? point_words(judged.point)
           : kind == "triangle" ? teas_words(judged.teas)
                                : drying_risk_words(judged);
  });
}

}  // namespace

std::string describe_chart(const std::string& kind, const Plan& plan, const Bench& bench) {
  std::string words = kind == "risk"       ? risk_words(plan, bench)
                      : kind == "chances"  ? chances_words(plan, bench)
                      : kind == "planes"   ? planes_words(plan, bench)
                      : kind == "triangle" ? triangle_words(plan, bench)
                                           : drift_words(plan, bench);
  words.erase(words.find_last_not_of(' ') + 1);
  const std::string message = kind == "risk" || kind == "chances" ? main_message(plan, bench)
                              : kind == "drift"                   ? drying_message(plan, bench)
                                                                  : nearest_message(plan, bench);
  return message + words + named_letters(plan, bench) + own_words(kind, plan, bench);
}

}  // namespace gentlest
