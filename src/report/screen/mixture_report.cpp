#include "report/screen/mixture_report.hpp"

#include "report/form/format.hpp"
#include "report/form/table.hpp"
#include "report/phrases/fate.hpp"
#include "report/phrases/judged.hpp"
#include "report/phrases/no_window.hpp"
#include "report/phrases/sighting_words.hpp"
#include "report/phrases/words.hpp"

#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

namespace gentlest {

namespace {

std::string layers_table(const MixtureCase& one, const Style& style) {
  Table table;
  table.columns = {{"layer", Align::left, true},
                   {"role", Align::left, false},
                   {"Ra", Align::right, false},
                   {"RED", Align::right, false},
                   {"RED, middle 90 %", Align::left, false},
                   {"chance", Align::right, false},
                   {"margin", Align::right, true}};
  for (std::size_t i = 0; i < one.layers.size(); ++i) {
    if (!one.judged.outlooks[i]) {
      table.rows.push_back({one.layers[i].name, role_word(one.layers[i].role)});
      table.rows.back().resize(table.columns.size(), no_sphere_cell);
      continue;
    }
    const Outlook& outlook = *one.judged.outlooks[i];
    const bool keep = one.layers[i].role == Role::keep;
    std::string margin = keep ? fixed(outlook.RED - 1, 2) : "";
    if (keep && !one.judged.margin_RED) margin = "not claimed";
    table.rows.push_back(
        {one.layers[i].name, role_word(one.layers[i].role), fixed(outlook.Ra, 1), fixed(outlook.RED, 2),
         fixed(outlook.RED_band.low, 2) + " to " + fixed(outlook.RED_band.high, 2) + (outlook.may_flip ? " ?" : ""),
         per_cent(outlook.chance), margin});
  }
  return to_text(table, style);
}

std::string numbers_text(const MixtureCase& one, const Style& style) {
  const JudgedMixture& judged = one.judged;
  return paragraph(fmt::format("dD {}, dP {}, dH {} MPa^0.5; in the triangle fd {} %, fp {} %, fh {} %",
                               fixed(judged.point.dD, 1), fixed(judged.point.dP, 1), fixed(judged.point.dH, 1),
                               fixed(judged.teas.fd, 0), fixed(judged.teas.fp, 0), fixed(judged.teas.fh, 0)),
                   style) +
         paragraph(
             fmt::format("Effect {}. Risk {}{}.", effect_words(judged, one.job.limits),
                         risk_words(judged, one.job.limits), judged.riskiest.empty() ? "" : ", to " + judged.riskiest),
             style);
}

std::string mixture_text(const MixtureCase& one, const Style& style, const Edition& edition) {
  std::string text = heading("Mixture: " + to_text(one.judged.mixture) + " (% by volume)", style).substr(1);
  if (!one.job.object.title.empty()) text += paragraph("Painting: " + one.job.object.title, style);
  text += numbers_text(one, style);
  for (const std::string& note : mixture_notes(one)) text += bullet(note, style);
  text += layers_text(one.layers, one.job.passages, StandIns::in_full, style);
  text += unjudged_text(one.layers, {}, {}, style);
  text += heading("What it means for each layer", style) + two_numbers_text(one.layers, one.job.limits, style);
  text +=
      paragraph("RED below 1: inside the layer's range; a question mark: that is open within what is known.", style);
  text += "\n" + layers_table(one, style);
  text += liquids_text(liquids_of({&one.judged}), style);
  text += "\n" + paragraph(
                     "The hazards are those of the separate liquids as far as recorded; the mixture's own may be "
                     "greater. Only a swab decides what a mixture does.",
                     style, 0);
  text += paragraph(law_words(edition.law), style, 0);
  return text + paragraph(edition_words(edition) + ".", style, 0);
}

}  // namespace

std::vector<std::string> mixture_notes(const MixtureCase& one) {
  std::vector<std::string> notes;
  const std::string beyond = beyond_limit_words(one.judged, one.job.limits);
  if (!beyond.empty()) notes.push_back(beyond);
  for (const std::string& sentence : fate_sentences(one.judged, one.job.limits.risk_limit)) notes.push_back(sentence);
  if (any_unjudged(one.layers))
    notes.emplace_back("No margin is claimed: a layer has no sphere.");
  else if (!one.judged.margin_RED)
    notes.emplace_back("No margin is claimed: a layer carries a warning.");
  for (const std::string& sentence : sighting_sentences(one.judged)) notes.push_back(sentence);
  for (const Part& part : one.judged.mixture.parts()) {
    if (part.liquid.solvent->family == "water")
      notes.emplace_back("Water acts by other ways than solubility; these numbers do not see them.");
    if (!part.liquid.solvent->hazards) notes.push_back(part.liquid.label + ": hazards: " + no_record + ".");
  }
  return notes;
}

std::string mixture_report(const MixtureCase& one, Form form, const Style& style, const Edition& edition) {
  if (form == Form::text) return mixture_text(one, style, edition);
  const std::vector<const JudgedMixture*> mixtures = {&one.judged};
  if (form == Form::csv) return sheet_csv(judged_sheet(mixtures, one.layers), edition);
  Json document = json_document("mixture", edition);
  document["painting"] = json_text(one.job.object.title);
  document["risk_limit"] = data_value(one.job.limits.risk_limit);
  document["notes"] = mixture_notes(one);
  document["layers"] = layers_json(one.layers, one.job.limits);
  document["mixture"] = judged_json(one.judged, one.layers, one.job.limits);
  document["liquids"] = liquids_json(liquids_of(mixtures));
  return json_dump(document);
}

}  // namespace gentlest
