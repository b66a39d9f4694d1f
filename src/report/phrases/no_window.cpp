#include "report/phrases/no_window.hpp"

#include "report/phrases/words.hpp"

#include "report/form/format.hpp"
#include "report/phrases/mixture_name.hpp"

#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

#include <cassert>

namespace gentlest {

namespace {

std::string headline(const Plan& plan) {
  return fmt::format(
      "No ladder reaches an effect of {} on \"{}\" while the risk to every layer to keep stays within {}. "
      "So there is no rung to begin with.",
      per_cent(plan.job.limits.wanted_effect), plan.layers[plan.target].name, per_cent(plan.job.limits.risk_limit));
}

std::string layer_closes(const Plan& plan) {
  const JudgedMixture& works = *plan.least_risk_that_works;
  return fmt::format(
      "What closes the window: \"{}\". Of all mixtures that move \"{}\" as wanted, the one of least risk carries {} to "
      "it; the limit is {}.",
      works.riskiest, plan.layers[plan.target].name, per_cent(works.risk), per_cent(plan.job.limits.risk_limit));
}

std::string closing_words(const Plan& plan) {
  const Limits& limits = plan.job.limits;
  switch (what_closes_window(plan)) {
    case WindowClosedBy::layer:
      return layer_closes(plan);
    case WindowClosedBy::shelf:
      return fmt::format(
          "What closes the window: the shelf. At no risk, however large, does a mixture of it reach an "
          "effect of {}; the most is {}.",
          per_cent(limits.wanted_effect), per_cent(plan.frontier.back().effect));
    case WindowClosedBy::other_limits:
      return "What closes the window: the other limits of the job (parting, drying, flash point, label, largest "
             "shares). They leave no mixture of the shelf at all.";
  }
  return {};
}

std::string what_is_left(const Plan& plan) {
  if (plan.nearest)
    return fmt::format("What is left: within the limit the shelf comes as far as an effect of {}, with {} (risk {}).",
                       per_cent(plan.nearest->effect), to_text(plan.nearest->mixture), per_cent(plan.nearest->risk));
  return fmt::format("What is left: nothing on this shelf; no mixture that the job allows stays within a risk of {}.",
                     per_cent(plan.job.limits.risk_limit));
}

}  // namespace

std::vector<std::string> no_window_sentences(const Plan& plan) {
  assert(plan.outcome == Outcome::no_window);
  return {headline(plan), closing_words(plan), what_is_left(plan)};
}

std::string closed_by_word(WindowClosedBy closed_by) {
  switch (closed_by) {
    case WindowClosedBy::layer:
      return "layer";
    case WindowClosedBy::shelf:
      return "shelf";
    case WindowClosedBy::other_limits:
      return "other limits";
  }
  return {};
}

std::string beyond_limit_words(const JudgedMixture& judged, const Limits& limits) {
  if (!is_beyond_limit(judged, limits)) return {};
  return fmt::format("Its risk exceeds the limit of {}: no ladder of this job would hold it.",
                     per_cent(limits.risk_limit));
}

std::vector<std::string> left_out_words(const Plan& plan, const Bench& bench) {
  std::vector<std::string> words;
  for (const BenchMixture& mixture : bench.mixtures)
    if (mixture.beyond_limit)
      words.push_back(fmt::format("{}: risk {}{}, beyond the limit of {}", mixture_name(mixture.judged),
                                  per_cent(as_made(mixture).risk), mixture.as_measured ? " as measured" : "",
                                  per_cent(plan.job.limits.risk_limit)));
  return words;
}

}  // namespace gentlest
