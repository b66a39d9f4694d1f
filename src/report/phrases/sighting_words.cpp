#include "report/phrases/sighting_words.hpp"

#include "report/form/format.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/observation_words.hpp"
#include "report/phrases/words.hpp"

#include "gentlest/base/text.hpp"
#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

std::string liquid_of(const SeenRow& seen) {
  if (seen.solvents.empty()) return seen.row->liquids_in_words;
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < seen.solvents.size(); ++i)
    parts.push_back(seen.solvents[i]->name +
                    (seen.solvents.size() > 1 ? " " + as_recorded(seen.row->parts[i].percent) : ""));
  return joined(parts);
}

// "swells strongly (grade 2 to 4; swab, seconds; common_practice)"
std::string result_of(const Observation& seen) {
  std::vector<std::string> facts;
  for (const std::string& fact : {grades_in_words(seen), contact_in_words(seen), seen.source})
    if (!fact.empty()) facts.push_back(fact);
  return fmt::format("{} ({})", result_in_words(seen), joined(facts, "; "));
}

std::string results_of(const std::vector<SeenRow>& rows) {
  std::vector<std::string> results;
  for (const SeenRow& seen : rows) results.push_back(result_of(*seen.row));
  return joined(results, "; also ");
}

std::vector<std::string> parts_seen(const LayerSighting& sighting, Sighting seen) {
  std::vector<std::string> names;
  for (const PartSighting& part : sighting.parts)
    if (part.seen == seen) names.push_back(part.solvent->name);
  return names;
}

std::string mark_of(const LayerSighting& sighting) {
  const bool keep = sighting.role == Role::keep;
  switch (sighting.seen) {
    case Sighting::acts:
      return keep ? "SEEN TO ACT" : "seen to act";
    case Sighting::part_acts:
      return (keep ? "HOLDS " : "holds ") + joined(parts_seen(sighting, Sighting::acts)) +
             (keep ? ", SEEN TO ACT ALONE" : ", seen to act alone");
    case Sighting::may_act:
      return fmt::format("open ({})", joined(parts_seen(sighting, Sighting::may_act), ", ", "this mixture"));
    case Sighting::unknown:
      return fmt::format("{} ({})", not_known, joined(parts_seen(sighting, Sighting::unknown)));
    case Sighting::spares:
      return keep ? "nothing seen" : "seen not to act";
  }
  return {};
}

bool warns(const LayerSighting& sighting) {
  return sighting.role == Role::keep && (sighting.seen == Sighting::acts || sighting.seen == Sighting::part_acts);
}

std::string part_sentence(const PartSighting& part, const LayerSighting& sighting, bool is_whole) {
  const std::string on = "\"" + sighting.name + "\"";
  const std::string share = fixed(100 * part.fraction, part.fraction < 0.0995 ? 1 : 0);
  switch (part.seen) {
    case Sighting::acts:
    case Sighting::part_acts:
      if (is_whole) return fmt::format("Known to act on {}: {} {}.", on, part.solvent->name, results_of(part.rows));
      return fmt::format("Contains {} ({} %), which alone acts on {}: {}.", part.solvent->name, share, on,
                         results_of(part.rows));
    case Sighting::may_act:
      return fmt::format("{} alone on {}, which leaves open what this mixture does: {}.", part.solvent->name, on,
                         results_of(part.rows));
    case Sighting::unknown:
      return fmt::format("Nothing is known of {} on {}.", part.solvent->name, on);
    case Sighting::spares:
      return fmt::format("{} alone on {}: {}.", part.solvent->name, on, results_of(part.rows));
  }
  return {};
}

// "acts: ethanol dissolves (...), ...": the rows that say this.
std::string rows_that(const PlannedLayer& layer, Sighting says, const char* title) {
  std::vector<std::string> words;
  for (const SeenRow& seen : layer.seen)
    if (seen.says == says) words.push_back(liquid_of(seen) + ": " + result_of(*seen.row));
  return words.empty() ? std::string() : fmt::format("{}, {}: {}.", layer.name, title, joined(words, "; "));
}

std::string reason_of(const PlannedLayer& layer) {
  if (layer.material.empty()) return "nobody knows what it is";
  return "it has no sphere (" + layer.no_sphere + ")";
}

std::string unjudged_headline(const PlannedLayer& layer) {
  const std::string what = fmt::format("\"{}\" ({}): ", layer.name, material_in_words(layer));
  const std::string no_figure = "; no effect, risk or margin of this plan speaks of it.";
  if (!layer.seen.empty()) return what + "judged by what was seen alone, for " + reason_of(layer) + no_figure;
  return what + "NOT JUDGED, for " + reason_of(layer) + ", and nothing was seen on it" + no_figure +
         " Test it first with a dry swab, then with the gentlest mixture, where harm matters least.";
}

std::string rows_behind(const std::vector<SeenRow>& rows) {
  return rows.empty() ? std::string() : " Water there: " + results_of(rows) + ".";
}

std::string words_of(const FirstTest& test, const std::vector<JudgedMixture>& to_try) {
  switch (test.kind) {
    case FirstTestKind::dry_swab:
      return "A dry swab: colour on it stops everything.";
    case FirstTestKind::water:
      return "Water or saliva on a swab, where the surface bears it." +
             (test.rows.empty() ? std::string() : " On the layer to go: " + results_of(test.rows) + ".");
    case FirstTestKind::no_water:
      return fmt::format("No water on \"{}\": it is sensitive to it or was seen to suffer.{}", test.layer,
                         rows_behind(test.rows));
    case FirstTestKind::gentlest_rung:
      return fmt::format(
          "Rung 1 on \"{}\", where harm matters least (tacking edge, under the frame), and each stronger "
          "rung there before it goes on the picture.",
          test.layer);
    case FirstTestKind::liquid: {
      const JudgedMixture& judged = to_try[test.mixture];
      return fmt::format("{}, where harm matters least: {}. Risk to what is judged: {}.", to_text(judged.mixture),
                         results_of(test.rows), known_chance(judged.risk));
    }
  }
  return {};
}

}  // namespace

bool any_unjudged(const std::vector<PlannedLayer>& layers) {
  return std::any_of(layers.begin(), layers.end(), [](const PlannedLayer& layer) { return !layer.sphere; });
}

std::string known_chance(const std::optional<double>& chance, double limit) {
  return chance ? per_cent_beside(*chance, limit) : not_known;
}

std::string known_chance(const std::optional<double>& chance) {
  return chance ? per_cent(*chance) : not_known;
}

std::string effect_and_risk(const JudgedMixture& judged) {
  return fmt::format("effect {}, risk {}", known_chance(judged.effect), known_chance(judged.risk));
}

std::string riskiest_words(const JudgedMixture& judged) {
  if (!judged.riskiest.empty()) return judged.riskiest;
  const bool any_open = std::any_of(judged.seen.begin(), judged.seen.end(),
                                    [](const LayerSighting& one) { return one.role == Role::keep; });
  return any_open ? "no figure on what stays" : nothing_to_keep;
}

std::string state_of_unjudged(const PlannedLayer& layer) {
  if (layer.seen.empty()) return "not judged: no sphere, nothing seen; test it first with a dry swab";
  return fmt::format("no sphere: judged by what was seen alone ({})",
                     counted(layer.seen.size(), "observation", "observations"));
}

std::string sighting_mark(const JudgedMixture& judged) {
  std::vector<std::string> marks;
  for (const LayerSighting& sighting : judged.seen) marks.push_back(sighting.name + ": " + mark_of(sighting));
  return joined(marks, "; ");
}

std::vector<std::string> sighting_warnings(const JudgedMixture& judged) {
  std::vector<std::string> warnings;
  for (const LayerSighting& sighting : judged.seen)
    if (warns(sighting)) warnings.push_back(sighting.name + ": " + mark_of(sighting));
  return warnings;
}

std::vector<std::string> very_sentences(const JudgedMixture& judged) {
  std::vector<std::string> sentences;
  for (const VerySighting& very : judged.very)
    sentences.push_back(fmt::format("{} on \"{}\": this very {} {}. That outranks the chance.",
                                    worst_of(very.rows) == Sighting::acts ? "Seen to act" : "Seen", very.layer,
                                    judged.mixture.parts().size() == 1 ? "liquid" : "mixture", results_of(very.rows)));
  return sentences;
}

std::vector<std::string> sighting_sentences(const JudgedMixture& judged) {
  std::vector<std::string> sentences = very_sentences(judged);
  for (const LayerSighting& sighting : judged.seen) {
    const bool one_liquid = judged.mixture.parts().size() == 1;
    for (const SeenRow& seen : sighting.of_mixture)
      sentences.push_back(fmt::format("{} \"{}\": this very mixture {}.",
                                      seen.says == Sighting::acts ? "Known to act on" : "Seen on", sighting.name,
                                      result_of(*seen.row)));
    for (const PartSighting& part : sighting.parts)
      sentences.push_back(part_sentence(part, sighting, one_liquid && &part == &sighting.parts.front()));
  }
  return sentences;
}

std::vector<std::string> unjudged_words(const std::vector<PlannedLayer>& layers) {
  std::vector<std::string> words;
  for (const PlannedLayer& layer : layers) {
    if (layer.sphere) continue;
    words.push_back(unjudged_headline(layer));
    const bool keep = layer.role == Role::keep;
    for (const std::string& rows :
         {rows_that(layer, Sighting::acts, keep ? "seen to be affected" : "seen to be moved"),
          rows_that(layer, Sighting::may_act, "seen, but left open"),
          rows_that(layer, Sighting::spares, keep ? "nothing or little seen" : "seen not to be moved")})
      if (!rows.empty()) words.push_back(rows);
  }
  return words;
}

std::vector<std::string> first_test_words(const std::vector<FirstTest>& tests, const std::vector<JudgedMixture>& to_try,
                                          const std::vector<PlannedLayer>& layers) {
  std::vector<std::string> words;
  for (const FirstTest& test : tests) words.push_back(words_of(test, to_try));
  const bool target_open = std::any_of(layers.begin(), layers.end(),
                                       [](const PlannedLayer& layer) { return layer.is_target && !layer.sphere; });
  if (target_open && to_try.empty())
    words.emplace_back(
        "No bottle here was seen to act on the layer to go and to spare what stays: no liquid is named.");
  return words;
}

std::vector<std::string> no_ladder_sentences(const std::vector<PlannedLayer>& layers, std::size_t target,
                                             std::size_t to_try) {
  const PlannedLayer& layer = layers[target];
  return {fmt::format("No ladder can be worked out for \"{}\" ({}): {}. So no effect can be told, and no mixture is "
                      "ordered from gentle to strong.",
                      layer.name, material_in_words(layer), reason_of(layer)),
          to_try == 0 ? std::string("What is left: the first tests by hand, and what was seen of it elsewhere.")
                      : fmt::format("What is left: {} seen to act on it and not on what stays, to be tested alone.",
                                    counted(to_try, "bottle was", "bottles were"))};
}

std::string acting_words(const Observation& seen, const std::string& layer) {
  return fmt::format(
      "alone it acts on \"{}\", which has no sphere: {}; to propose it all the same, name it in "
      "allow_acting",
      layer, result_of(seen));
}

std::string sighting_word(Sighting seen) {
  switch (seen) {
    case Sighting::acts:
      return "acts";
    case Sighting::part_acts:
      return "part_acts";
    case Sighting::may_act:
      return "may_act";
    case Sighting::unknown:
      return "not_known";
    case Sighting::spares:
      return "spares";
  }
  return {};
}

Json seen_rows_json(const std::vector<SeenRow>& rows) {
  Json list = Json::array();
  for (const SeenRow& seen : rows)
    list.push_back({{"liquid", liquid_of(seen)},
                    {"says", sighting_word(seen.says)},
                    {"result", result_in_words(*seen.row)},
                    {"grade_from", seen.row->grades ? Json(seen.row->grades->strongest) : Json()},
                    {"grade_to", seen.row->grades ? Json(seen.row->grades->weakest) : Json()},
                    {"contact", contact_in_words(*seen.row)},
                    {"source", seen.row->source},
                    {"standing", std::string(to_word(seen.row->witness))}});
  return list;
}

Json very_sightings_json(const JudgedMixture& judged) {
  Json list = Json::array();
  for (const VerySighting& very : judged.very)
    list.push_back({{"layer", very.layer},
                    {"role", role_word(very.role)},
                    {"seen", sighting_word(worst_of(very.rows))},
                    {"observations", seen_rows_json(very.rows)}});
  return list;
}

Json sightings_json(const JudgedMixture& judged) {
  Json list = Json::array();
  for (const LayerSighting& sighting : judged.seen) {
    Json parts = Json::array();
    for (const PartSighting& part : sighting.parts)
      parts.push_back({{"solvent", part.solvent->id},
                       {"volume_percent", json_computed(100 * part.fraction)},
                       {"seen", sighting_word(part.seen)}});
    list.push_back({{"layer", sighting.name},
                    {"role", role_word(sighting.role)},
                    {"seen", sighting_word(sighting.seen)},
                    {"parts", std::move(parts)}});
  }
  return list;
}

}  // namespace gentlest
