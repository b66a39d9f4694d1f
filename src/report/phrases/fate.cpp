#include "report/phrases/fate.hpp"

#include "report/bottle/vial_words.hpp"
#include "report/form/format.hpp"
#include "report/phrases/headings.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

constexpr double rise_that_counts = 0.005;

std::string dried(double share) {
  return fixed(100 * share, 0) + " % dried";
}

std::string liquid_mark(Phases phases) {
  switch (phases) {
    case Phases::one_liquid:
      return "one liquid";
    case Phases::near_border:
      return "may cloud";
    case Phases::two_liquids:
      return "TWO LIQUIDS";
    case Phases::unknown:
      return "mixing not known";
  }
  return {};
}

// Behind a verdict that is not plainly one liquid: what it stands on, in a word.
std::string basis_mark(const PhaseAnswer& answer) {
  if (answer.phases != Phases::near_border && answer.phases != Phases::two_liquids) return {};
  switch (answer.basis) {
    case PhasesBasis::measured:
      return " (measured)";
    case PhasesBasis::published:
      return " (published)";
    case PhasesBasis::corrected:
      return " (estimated)";
    case PhasesBasis::computed:
      return " (group method)";
    default:
      return " (rough estimate)";
  }
}

bool has_open_risk(const JudgedMixture& judged) {
  return std::any_of(judged.seen.begin(), judged.seen.end(),
                     [](const LayerSighting& one) { return one.role == Role::keep; });
}

std::string drift_mark(const JudgedMixture& judged, double risk_limit) {
  const Fate& fate = judged.fate;
  if (!fate.drift) return drying_not_known;
  if (fate.riskiest.empty() && has_open_risk(judged)) return "leaves " + fate.drift->last + " last; no risk to tell";
  if (drifts_beyond(fate, risk_limit))
    return "RISK " + per_cent_beside(fate.risk.worst, risk_limit) + " AT " + dried(fate.risk.worst_at);
  if (fate.risk.worst > fate.risk.at_start + rise_that_counts)
    return "risk " + per_cent(fate.risk.worst) + " at " + dried(fate.risk.worst_at);
  return "risk does not rise";
}

std::string risk_sentence(const JudgedMixture& judged, double risk_limit) {
  const Fate& fate = judged.fate;
  if (fate.riskiest.empty() && has_open_risk(judged))
    return "What drying does to the layers to keep is not known: none has a sphere.";
  if (fate.riskiest.empty()) return "Nothing is to be kept, so drying carries no risk here.";
  if (fate.risk.worst <= fate.risk.at_start + rise_that_counts)
    return fmt::format("While it dries the risk to {} does not rise above that of the start, {}.", fate.riskiest,
                       per_cent(fate.risk.at_start));
  std::string text = fmt::format("While it dries the risk to {} goes from {} to at most {}, at {}", fate.riskiest,
                                 per_cent_beside(fate.risk.at_start, risk_limit),
                                 per_cent_beside(fate.risk.worst, risk_limit), dried(fate.risk.worst_at));
  if (drifts_beyond(fate, risk_limit))
    text += fmt::format("; it passes the limit of {} at {}: by default no ladder holds such a mixture",
                        per_cent(risk_limit), dried(*fate.risk.beyond_limit_at));
  return text + ".";
}

}  // namespace

std::string fate_mark(const JudgedMixture& judged, double risk_limit) {
  return liquid_mark(judged.fate.phases.phases) + basis_mark(judged.fate.phases) + "; " +
         drift_mark(judged, risk_limit);
}

std::vector<std::string> short_fate_marks(const JudgedMixture& judged, double risk_limit) {
  const Fate& fate = judged.fate;
  std::vector<std::string> marks;
  if (fate.phases.phases != Phases::one_liquid) marks.push_back(liquid_mark(fate.phases.phases));
  if (!fate.drift)
    marks.emplace_back(drying_not_known);
  else if (drifts_beyond(fate, risk_limit))
    marks.push_back(fmt::format("RISK TO \"{}\" PASSES YOUR LIMIT WHILE IT DRIES", fate.riskiest));
  else if (!fate.riskiest.empty() && fate.risk.worst > fate.risk.at_start + rise_that_counts)
    marks.push_back(fmt::format("risk to \"{}\" rises while it dries", fate.riskiest));
  if (fate.drift && fate.drift->parts_at && *fate.drift->parts_at > 0)
    marks.emplace_back("parts into two liquids while it dries");
  return marks;
}

std::vector<std::string> fate_sentences(const JudgedMixture& judged, double risk_limit) {
  const Fate& fate = judged.fate;
  std::vector<std::string> sentences = {fmt::format("{} ({}): {}.", liquid_mark(fate.phases.phases),
                                                    to_word(fate.phases.basis), phases_because(fate.phases))};
  if (!fate.drift) {
    sentences.push_back("How it drifts while it dries is not known: " + joined(missing_words(fate.drift_missing)) +
                        ".");
    return sentences;
  }
  sentences.push_back(risk_sentence(judged, risk_limit));
  sentences.push_back(fmt::format("Most of what dries last comes from {}.", fate.drift->last));
  if (fate.drift->parts_at && *fate.drift->parts_at > 0)
    sentences.push_back(
        fmt::format("What is left parts into two liquids from about {} on.", dried(*fate.drift->parts_at)));
  for (const std::string& warning : drift_warnings(*fate.drift)) sentences.push_back(warning + ".");
  return sentences;
}

Json fate_json(const JudgedMixture& judged, double risk_limit) {
  const Fate& fate = judged.fate;
  Json json = {{"phases", std::string(to_word(fate.phases.phases))},
               {"phases_basis", std::string(to_word(fate.phases.basis))},
               {"phases_because", phases_because(fate.phases)}};
  json["drift_known"] = fate.drift.has_value();
  json["drift_missing"] = missing_words(fate.drift_missing);
  json["drifts_beyond_risk_limit"] = drifts_beyond(fate, risk_limit);
  if (!fate.drift) return json;
  json["drift_riskiest_layer"] = json_text(fate.riskiest);
  const bool any_risk = !fate.riskiest.empty() || !has_open_risk(judged);
  json["drift_worst_risk"] = any_risk ? Json(computed_value(fate.risk.worst)) : Json();
  json["drift_worst_at"] = any_risk ? Json(computed_value(fate.risk.worst_at)) : Json();
  json["drift_passes_limit_at"] = fate.risk.beyond_limit_at ? Json(computed_value(*fate.risk.beyond_limit_at)) : Json();
  json["leaves_last"] = fate.drift->last;
  json["parts_at"] = fate.drift->parts_at ? Json(computed_value(*fate.drift->parts_at)) : Json();
  json["warnings"] = drift_warnings(*fate.drift);
  return json;
}

std::vector<std::string> fate_keys() {
  return {"phases", "phases_basis", "drift_worst_risk_chance", "drift_worst_at_dried_share", "leaves_last"};
}

std::vector<Cell> fate_cells(const JudgedMixture& judged) {
  const Fate& fate = judged.fate;
  std::vector<Cell> cells = {std::string(to_word(fate.phases.phases)), std::string(to_word(fate.phases.basis))};
  if (!fate.drift) {
    cells.resize(5);
    return cells;
  }
  const bool any_risk = !fate.riskiest.empty() || !has_open_risk(judged);
  cells.push_back(any_risk ? Cell(computed_value(fate.risk.worst)) : Cell());
  cells.push_back(any_risk ? Cell(computed_value(fate.risk.worst_at)) : Cell());
  cells.emplace_back(fate.drift->last);
  return cells;
}

}  // namespace gentlest
