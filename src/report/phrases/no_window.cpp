#include "report/phrases/no_window.hpp"

#include "report/phrases/words.hpp"

#include "report/form/format.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/phrases/sighting_words.hpp"

#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

#include <cassert>

namespace gentlest {

namespace {

std::string headline(const Plan& plan) {
  if (plan.by_effect_alone)
    return fmt::format("No ladder reaches an effect of {} on \"{}\". So there is no rung to begin with.",
                       per_cent(plan.job.limits.wanted_effect), plan.layers[plan.target].name);
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
      works.riskiest, plan.layers[plan.target].name, known_chance(works.risk), per_cent(plan.job.limits.risk_limit));
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
          per_cent(limits.wanted_effect), per_cent(plan.most_effect));
    case WindowClosedBy::sightings:
      return "What closes the window: what was seen. Every bottle that the limits leave acts, alone, on a layer to "
             "keep "
             "that has no sphere; \"Bottles left off\" says which, and how to allow them.";
    case WindowClosedBy::examination:
      return "What closes the window: the examination. With what it leaves off, no bottle of the shelf is left; "
             "\"Bottles left off\" says which.";
    case WindowClosedBy::other_limits:
      return "What closes the window: the other limits of the job (parting, drying, flash point, label, largest "
             "shares). They leave no mixture of the shelf at all.";
  }
  return {};
}

std::string what_is_left(const Plan& plan) {
  if (plan.nearest)
    return fmt::format("What is left: within the limit the shelf comes as far as an effect of {}, with {} (risk {}).",
                       known_chance(plan.nearest->effect), to_text(plan.nearest->mixture),
                       known_chance(plan.nearest->risk));
  if (plan.by_effect_alone || plan.shelf.empty())
    return "What is left: other bottles on the shelf, and the first tests by hand.";
  return fmt::format("What is left: nothing on this shelf; no mixture that the job allows stays within a risk of {}.",
                     per_cent(plan.job.limits.risk_limit));
}

}  // namespace

const char* no_rungs_heading(const Plan& plan) {
  return plan.outcome == Outcome::no_ladder ? no_ladder_heading : "No window.";
}

std::vector<std::string> no_window_sentences(const Plan& plan) {
  assert(plan.outcome != Outcome::window);
  if (plan.outcome == Outcome::no_ladder) return no_ladder_sentences(plan.layers, plan.target, plan.to_try.size());
  return {headline(plan), closing_words(plan), what_is_left(plan)};
}

std::string outcome_word(Outcome outcome) {
  switch (outcome) {
    case Outcome::window:
      return "window";
    case Outcome::no_window:
      return "no window";
    case Outcome::no_ladder:
      return "no ladder";
  }
  return {};
}

std::string closed_by_word(WindowClosedBy closed_by) {
  switch (closed_by) {
    case WindowClosedBy::layer:
      return "layer";
    case WindowClosedBy::shelf:
      return "shelf";
    case WindowClosedBy::sightings:
      return "observations";
    case WindowClosedBy::examination:
      return "examination";
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
                                  known_chance(as_made(mixture).risk), mixture.as_measured ? " as measured" : "",
                                  per_cent(plan.job.limits.risk_limit)));
  return words;
}

}  // namespace gentlest
