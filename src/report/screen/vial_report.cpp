#include "report/screen/vial_report.hpp"

#include "report/bottle/caution_words.hpp"
#include "report/bottle/gentler_words.hpp"
#include "report/bottle/label_words.hpp"
#include "report/bottle/liquid_words.hpp"
#include "report/bottle/statement_words.hpp"
#include "report/form/format.hpp"
#include "report/form/table.hpp"
#include "report/phrases/fate.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/judged.hpp"
#include "report/phrases/no_window.hpp"
#include "report/phrases/sighting_words.hpp"
#include "report/phrases/words.hpp"

#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

#include <cmath>

namespace gentlest {

namespace {

// The layers that have a sphere.
std::vector<PlannedLayer> judged_layers(const std::vector<PlannedLayer>& layers) {
  std::vector<PlannedLayer> judged;
  for (const PlannedLayer& layer : layers)
    if (layer.sphere) judged.push_back(layer);
  return judged;
}

// RED of a point of the path for each of them.
std::vector<double> REDs_at(const DriftPoint& point, const std::vector<PlannedLayer>& layers) {
  std::vector<double> REDs;
  for (const PlannedLayer& layer : layers)
    if (layer.sphere) REDs.push_back(relative_distance_RED(point.point, layer.sphere->mean, layer.reach));
  return REDs;
}

std::string recipe_text(const VialCase& one, const Style& style) {
  const VialStudy& study = one.study;
  std::string text = heading(to_measure_heading, style);
  text +=
      paragraph(fmt::format("{} = {} mL", recipe_words(study.recipe), as_recorded(study.recipe.total.value)), style);
  if (study.as_measured)
    text += paragraph(
        fmt::format("Rounded, this is another mixture: {}. Effect {} (was {}), risk {} (was {}). Label, fire and "
                    "breath below are those of the rounded one.",
                    to_text(study.as_measured->mixture), effect_words(*study.as_measured, one.job.limits),
                    effect_words(study.judged, one.job.limits), risk_words(*study.as_measured, one.job.limits),
                    risk_words(study.judged, one.job.limits)),
        style);
  return text;
}

std::string path_table(const VialCase& one, const Style& style) {
  const JudgedMixture& judged = one.study.judged;
  if (!judged.fate.drift) return {};
  Table table;
  table.columns = {{"% dried", Align::right, false}, {"time", Align::right, false}};
  for (const Part& part : judged.mixture.parts())
    table.columns.push_back({part.liquid.label + " %", Align::right, true});
  for (const char* title : {"dD", "dP", "dH"}) table.columns.push_back({title, Align::right, false});
  for (const PlannedLayer& layer : judged_layers(one.layers))
    table.columns.push_back({"RED to " + layer.name, Align::right, true});
  for (const DriftPoint& point : judged.fate.drift->path) {
    const long percent = std::lround(100 * point.evaporated);
    if (percent % 10 != 0 && percent != 95) continue;
    std::vector<std::string> row = {std::to_string(percent), fixed(point.time, 2)};
    for (const double fraction : point.volume_fractions) row.push_back(fixed(100 * fraction, 0));
    for (const double value : {point.point.dD, point.point.dP, point.point.dH}) row.push_back(fixed(value, 1));
    for (const double RED : REDs_at(point, one.layers)) row.push_back(fixed(RED, 2));
    table.rows.push_back(std::move(row));
  }
  return "\n" + to_text(table, style) +
         paragraph(fmt::format("At {} C. Time 1: as much n-butyl acetate would have dried away. The liquid is taken as "
                               "well stirred and one.",
                               as_recorded(judged.fate.drift->temperature.value)),
                   style);
}

std::string label_text(const MixtureLabel& label, const Style& style) {
  std::string text = heading("Label of the mixture, by the rules of the GHS", style);
  std::string word = label.signal_word.empty() ? no_signal_word : label.signal_word;
  if (!label.complete()) word += label.signal_word.empty() ? " known" : ", at least";
  text += paragraph(fmt::format("{}; pictograms {}", word, joined(label.pictograms, " ", "none")), style);
  for (const LabelStatement& statement : label.statements)
    text += bullet(fmt::format("{} ({})", statement_text(statement.code), because_words(statement.because)), style);
  for (const std::string& gap : not_known_words(label)) text += bullet("NOT KNOWN: " + gap, style);
  for (const std::string& remark : remark_words(label)) text += bullet(remark, style);
  return text + paragraph("The safety data sheets decide; records are a minimum classification.", style);
}

std::string flash_words(const FlashPoint& flash) {
  if (flash.nothing_burns()) return "no flash point: " + flash_because(flash);
  if (!flash.estimate) return std::string(flash_point_not_known) + ": " + flash_because(flash);
  std::string text = fmt::format("flash point {} {} C, {}", flash.measured() ? "" : "about",
                                 fixed(flash.estimate->value, 0), flash_because(flash));
  if (flash.lowest_part && !flash.measured())
    text += fmt::format("; lowest part {} C ({})", as_recorded(flash.lowest_part->value), flash.lowest_of);
  return text;
}

std::string ratio_words(const VapourHazard& hazard) {
  if (hazard.ratio) return fmt::format("{}: {}", hazard.authority, fixed(*hazard.ratio, 0));
  return fmt::format("{}: not known, no limit for {}", hazard.authority, joined(hazard.without, ", ", "its parts"));
}

std::string index_words(const SessionExposure& exposure) {
  if (exposure.index)
    return fmt::format("{}: {} over the day, {} if it dried at once", exposure.authority, fixed(*exposure.index, 3),
                       fixed(*exposure.index_at_once, 2));
  return fmt::format("{}: not known, no limit for {}", exposure.authority, joined(exposure.without));
}

std::string fire_and_breath_text(const VialStudy& study, const Style& style) {
  std::string text = heading("Fire and breath", style) + bullet(flash_words(study.flash), style);
  text += bullet("lower explosive limit of its vapour: " +
                     (study.lower_explosive_limit_percent ? fixed(*study.lower_explosive_limit_percent, 1) + " % in air"
                                                          : std::string(not_known)),
                 style);
  text += bullet("starts to boil at " + (study.start_of_boiling ? fixed(study.start_of_boiling->value, 0) + " C"
                                                                : std::string("a temperature that is not known")),
                 style);
  text +=
      paragraph("Vapour hazard ratio (saturated vapour over the limit of one list; to rank, not to predict):", style);
  for (const VapourHazard& hazard : study.vapour_hazards) text += bullet(ratio_words(hazard), style);
  if (study.vapour_hazards.empty()) text += bullet("not known: no list has a limit for any part", style);
  text +=
      paragraph(fmt::format("Additive exposure index of this vial dried away in a room of {} m3 with {} air changes "
                            "an hour, over {} hours (above 1 is too much; at the face it is higher):",
                            as_recorded(study.room.volume_m3), as_recorded(study.room.air_changes_per_hour),
                            as_recorded(study.room.hours)),
                style);
  for (const SessionExposure& exposure : study.exposure) text += bullet(index_words(exposure), style);
  if (study.exposure.empty()) text += bullet("not known: no list has a limit for any part", style);
  return text;
}

std::string gentler_text(const VialStudy& study, const Style& style) {
  std::string text = heading("Gentler for the person, from your shelf", style);
  if (study.gentler.found.empty())
    return text + paragraph("No mixture of less hazardous liquids of the shelf lies within 2 MPa^0.5.", style);
  for (std::size_t i = 0; i < study.gentler.found.size(); ++i) {
    const Substitute& one = study.gentler.found[i];
    const JudgedMixture& judged = study.gentler_judged[i];
    const std::string seen = sighting_mark(judged);
    text += bullet(fmt::format("{}: {}; {}", to_text(one.mixture), effect_and_risk(judged),
                               joined(gives_up_words(one), "; ") + (seen.empty() ? "" : "; " + seen)),
                   style);
  }
  return text;
}

std::string vial_text(const VialCase& one, const Style& style, const Edition& edition) {
  const VialStudy& study = one.study;
  std::string text = heading("Vial: " + to_text(study.judged.mixture) + " (% by volume)", style).substr(1);
  if (!one.job.object.title.empty()) text += paragraph("Painting: " + one.job.object.title, style);
  text += paragraph(fmt::format("Effect {}. Risk {}{}.", effect_words(study.judged, one.job.limits),
                                risk_words(study.judged, one.job.limits),
                                study.judged.riskiest.empty() ? "" : ", to " + study.judged.riskiest),
                    style);
  const std::string beyond = beyond_limit_words(study.as_measured ? *study.as_measured : study.judged, one.job.limits);
  if (!beyond.empty()) text += paragraph(beyond, style);
  text += unjudged_text(one.layers, {}, {}, style);
  for (const std::string& sentence : sighting_sentences(study.judged)) text += bullet(sentence, style);
  text += recipe_text(one, style) + heading(in_the_vial_heading, style);
  for (const std::string& sentence : fate_sentences(study.judged, one.job.limits.risk_limit))
    text += bullet(sentence, style);
  text += path_table(one, style) + label_text(study.label, style) + fire_and_breath_text(study, style);
  text += heading("What to mind", style);
  for (const Remark& caution : caution_words(study.cautions))
    text += bullet(caution.text + " [" + caution.source + "]", style);
  text += gentler_text(study, style) + heading("Sources", style);
  for (const Source& source : study.sources) text += bullet(source.key + ": " + source.citation, style);
  text += "\n" + paragraph("Estimates from published rules; only a vial shows what mixes, only a swab what it does.",
                           style, 0);
  text += paragraph(law_words(edition.law), style, 0);
  return text + paragraph(edition_words(edition) + ".", style, 0);
}

Json label_json(const MixtureLabel& label) {
  Json json = {{"complete", label.complete()}, {"signal_word", json_text(label.signal_word)}};
  json["statements"] = Json::array();
  for (const LabelStatement& statement : label.statements)
    json["statements"].push_back({{"code", statement.code}, {"because", because_words(statement.because)}});
  json["pictograms"] = label.pictograms;
  json["not_known"] = not_known_words(label);
  json["remarks"] = remark_words(label);
  json["acute_toxicity_estimate_oral_mg_per_kg"] = json_number(label.oral.ATE);
  json["acute_toxicity_estimate_dermal_mg_per_kg"] = json_number(label.dermal.ATE);
  json["acute_toxicity_estimate_vapour_mg_per_L"] = json_number(label.vapour.ATE);
  return json;
}

Json path_json(const VialCase& one) {
  Json list = Json::array();
  if (!one.study.judged.fate.drift) return list;
  for (const DriftPoint& point : one.study.judged.fate.drift->path) {
    Json json = {{"dried_share", computed_value(point.evaporated)}, {"time", computed_value(point.time)}};
    for (std::size_t i = 0; i < point.volume_fractions.size(); ++i)
      json["volume_percent"][one.study.judged.mixture.parts()[i].liquid.label] =
          computed_value(100 * point.volume_fractions[i]);
    json["dD_dP_dH_MPa05"] = {computed_value(point.point.dD), computed_value(point.point.dP),
                              computed_value(point.point.dH)};
    const std::vector<double> REDs = REDs_at(point, one.layers);
    const std::vector<PlannedLayer> judged = judged_layers(one.layers);
    for (std::size_t i = 0; i < REDs.size(); ++i) json["RED"][judged[i].name] = computed_value(REDs[i]);
    list.push_back(std::move(json));
  }
  return list;
}

Json air_json(const VialStudy& study) {
  Json json = {{"flash_point_C", study.flash.estimate ? Json(computed_value(study.flash.estimate->value)) : Json()},
               {"flash_point_because", flash_because(study.flash)},
               {"nothing_burns", study.flash.nothing_burns()}};
  json["lower_explosive_limit_percent"] = json_computed(study.lower_explosive_limit_percent);
  json["start_of_boiling_C"] = study.start_of_boiling ? json_computed(study.start_of_boiling->value) : Json();
  json["vapour_hazard_ratios"] = Json::array();
  for (const VapourHazard& hazard : study.vapour_hazards)
    json["vapour_hazard_ratios"].push_back(
        {{"authority", hazard.authority}, {"ratio", json_computed(hazard.ratio)}, {"without_limit", hazard.without}});
  json["exposure"] = Json::array();
  for (const SessionExposure& exposure : study.exposure)
    json["exposure"].push_back({{"authority", exposure.authority},
                                {"index", json_computed(exposure.index)},
                                {"index_at_once", json_computed(exposure.index_at_once)},
                                {"without_limit", exposure.without}});
  return json;
}

std::string vial_json(const VialCase& one, const Edition& edition) {
  const VialStudy& study = one.study;
  Json document = json_document("vial", edition);
  document["painting"] = json_text(one.job.object.title);
  document["mixture"] = judged_json(study.judged, one.layers, one.job.limits);
  document["recipe"] = Json::array();
  for (const RecipeLine& line : study.recipe.lines)
    document["recipe"].push_back({{"liquid", line.liquid.label}, {"mL", computed_value(line.volume.value)}});
  document["as_measured"] = study.as_measured ? judged_json(*study.as_measured, one.layers, one.job.limits) : Json();
  document["drying"] = path_json(one);
  document["label"] = label_json(study.label);
  document["fire_and_breath"] = air_json(study);
  document["cautions"] = Json::array();
  for (const Remark& caution : caution_words(study.cautions))
    document["cautions"].push_back({{"text", caution.text}, {"source", caution.source}});
  document["gentler"] = Json::array();
  for (std::size_t i = 0; i < study.gentler.found.size(); ++i)
    document["gentler"].push_back({{"mixture", judged_json(study.gentler_judged[i], one.layers, one.job.limits)},
                                   {"Ra_MPa05", computed_value(study.gentler.found[i].Ra)},
                                   {"label", label_json(study.gentler.found[i].label)},
                                   {"gives_up", gives_up_words(study.gentler.found[i])}});
  document["sources"] = json_sources(study.sources);
  return json_dump(document);
}

Sheet path_sheet(const VialCase& one) {
  Sheet sheet{"drying", {{"dried_share", "", -1, false}, {"time", "", -1, false}}, {}};
  const JudgedMixture& judged = one.study.judged;
  for (const Part& part : judged.mixture.parts())
    sheet.columns.push_back({"volume_percent " + part.liquid.label, "", -1, false});
  for (const char* key : {"dD_MPa05", "dP_MPa05", "dH_MPa05"}) sheet.columns.push_back({key, "", -1, false});
  for (const PlannedLayer& layer : judged_layers(one.layers))
    sheet.columns.push_back({"RED " + layer.name, "", -1, false});
  if (!judged.fate.drift) return sheet;
  for (const DriftPoint& point : judged.fate.drift->path) {
    std::vector<Cell> row = {computed_value(point.evaporated), computed_value(point.time)};
    for (const double fraction : point.volume_fractions) row.emplace_back(computed_value(100 * fraction));
    for (const double value : {point.point.dD, point.point.dP, point.point.dH}) row.emplace_back(computed_value(value));
    for (const double RED : REDs_at(point, one.layers)) row.emplace_back(computed_value(RED));
    sheet.rows.push_back(std::move(row));
  }
  return sheet;
}

}  // namespace

std::string vial_report(const VialCase& one, Form form, const Style& style, const Edition& edition) {
  switch (form) {
    case Form::text:
      return vial_text(one, style, edition);
    case Form::csv:
      return sheet_csv(path_sheet(one), edition);
    case Form::json:
      return vial_json(one, edition);
  }
  return {};
}

}  // namespace gentlest
