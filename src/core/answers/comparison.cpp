#include "gentlest/answers/comparison.hpp"

#include "gentlest/liquids/notation.hpp"

#include <algorithm>
#include <utility>

namespace gentlest {

namespace {

// Empty where the liquid stands on the shelf as the series takes it.
std::optional<Objection> objection_to(const Liquid& liquid, const Job& job, const Catalogue& catalogue) {
  if (const auto left_off = reason_to_leave_off(liquid, job, catalogue)) return Objection{liquid, left_off};
  std::vector<Liquid> own;
  for (const Liquid& one : all_liquids(shelf_of(job, catalogue)))
    if (one.solvent == liquid.solvent) own.push_back(one);
  if (own.empty()) return Objection{liquid};
  const auto fits = [&](const Liquid& one) { return one.water_fraction == liquid.water_fraction; };
  if (std::any_of(own.begin(), own.end(), fits)) return std::nullopt;
  return Objection{liquid, {}, own.front().label};
}

std::vector<Series> own_series(const Job& job, const Catalogue& catalogue) {
  std::vector<Series> all;
  const std::vector<Liquid> bottles = all_liquids(shelf_of(job, catalogue));
  for (const OwnSeries& own : job.series) {
    Series series{SeriesKind::own, {}, own.name};
    for (const std::string& text : own.mixtures) series.mixtures.push_back(parse_mixture(text, catalogue, bottles));
    all.push_back(std::move(series));
  }
  return all;
}

std::vector<ComparedSeries> compare(std::vector<Series> all, const Plan& plan, const Catalogue& catalogue) {
  std::vector<ComparedSeries> compared;
  for (Series& series : all) {
    ComparedSeries one;
    one.judged = judge_series(series.mixtures, plan.layers, plan.job.limits, catalogue);
    int step = 0;
    for (JudgedMixture& mixture : one.judged.mixtures) mixture.origin = {OriginKind::published, ++step};
    std::vector<Liquid> liquids;
    for (const Mixture& mixture : series.mixtures) add_liquids(liquids, mixture);
    for (const Liquid& liquid : liquids) {
      one.liquids.push_back(liquid.label);
      if (auto objection = objection_to(liquid, plan.job, catalogue)) one.objections.push_back(std::move(*objection));
    }
    one.series = std::move(series);
    compared.push_back(std::move(one));
  }
  return compared;
}

}  // namespace

std::vector<ComparedSeries> compare_published(const Plan& plan, const Catalogue& catalogue) {
  std::vector<Series> all = published_series(catalogue);
  for (Series& series : own_series(plan.job, catalogue)) all.push_back(std::move(series));
  return compare(std::move(all), plan, catalogue);
}

std::vector<ComparedSeries> compare_own(const Plan& plan, const Catalogue& catalogue) {
  return compare(own_series(plan.job, catalogue), plan, catalogue);
}

}  // namespace gentlest
