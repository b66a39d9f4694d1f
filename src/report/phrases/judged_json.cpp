#include "report/bottle/label_words.hpp"
#include "report/bottle/statement_words.hpp"
#include "report/form/format.hpp"
#include "report/phrases/fate.hpp"
#include "report/phrases/judged.hpp"
#include "report/phrases/likelihood.hpp"
#include "report/phrases/sighting_words.hpp"
#include "report/phrases/words.hpp"

#include "gentlest/liquids/notation.hpp"

namespace gentlest {

namespace {

// All figures are null of a layer without a sphere.
Json outlook_json(const std::optional<Outlook>& outlook, const PlannedLayer& layer) {
  const auto figure = [&](double value) { return outlook ? json_computed(value) : Json(); };
  const Outlook one = outlook.value_or(Outlook{});
  Json json = {{"layer", layer.name},
               {"role", role_word(layer.role)},
               {"Ra_MPa05", figure(one.Ra)},
               {"RED", figure(one.RED)},
               {"RED_low", figure(one.RED_band.low)},
               {"RED_high", figure(one.RED_band.high)},
               {"may_flip", outlook ? Json(one.may_flip) : Json()},
               {"chance", figure(one.chance)}};
  if (!layer.reach.places.empty()) json["reach_factor"] = figure(one.reach_factor);
  return json;
}

Json hazards_json(const JudgedMixture& judged) {
  const HazardSummary& hazards = judged.hazards;
  Json json = Json::object();
  json["signal_word"] = json_text(hazards.signal_word);
  json["statements"] = Json::array();
  for (const std::string& code : hazards.statements)
    json["statements"].push_back({{"code", code}, {"words", json_text(statement_words(code))}});
  json["pictograms"] = hazards.pictograms;
  json["lowest_flash_point_C"] =
      hazards.lowest_flash_point ? Json(data_value(hazards.lowest_flash_point->value)) : Json();
  json["lowest_flash_point_of"] = json_text(hazards.lowest_flash_point_of);
  json["lowest_exposure_limit_ppm"] = json_number(hazards.lowest_limit_ppm);
  json["lowest_exposure_limit_of"] = json_text(lowest_limit_words(hazards));
  json["parts_without_hazard_record"] = hazards.without_record;
  json["parts_without_flash_point"] = hazards.without_flash_point;
  json["parts_without_exposure_limit"] = hazards.without_limit;
  return json;
}

Json limit_json(const ExposureLimit& limit) {
  return {{"authority", limit.authority},
          {"long_term_ppm", json_number(limit.long_term_ppm)},
          {"long_term_mg_per_m3", json_number(limit.long_term_mg_per_m3)},
          {"short_term_ppm", json_number(limit.short_term_ppm)},
          {"short_term_mg_per_m3", json_number(limit.short_term_mg_per_m3)},
          {"ceiling_ppm", json_number(limit.ceiling_ppm)},
          {"ceiling_mg_per_m3", json_number(limit.ceiling_mg_per_m3)},
          {"skin", limit.skin},
          {"source", limit.source}};
}

Json classification_json(const std::optional<Hazards>& hazards) {
  if (!hazards) return nullptr;
  return {{"signal_word", json_text(hazards->signal_word)},
          {"statements", hazards->statements},
          {"supplemental", hazards->supplemental},
          {"words", statements_text(hazards)},
          {"minimum_only", hazards->minimum_only},
          {"standing", std::string(to_word(hazards->standing))},
          {"source", hazards->source}};
}

Json json_likelihood(const std::optional<double>& chance) {
  return chance ? Json(likelihood_word(*chance)) : Json();
}

}  // namespace

Json judged_json(const JudgedMixture& judged, const std::vector<PlannedLayer>& layers, const Limits& limits) {
  Json json = {{"recipe", to_text(judged.mixture)}};
  json["parts"] = Json::array();
  for (const Part& part : judged.mixture.parts())
    json["parts"].push_back({{"liquid", part.liquid.label},
                             {"solvent", part.liquid.solvent->id},
                             {"volume_percent", json_computed(100 * part.fraction)}});
  json["dD_MPa05"] = json_computed(judged.point.dD);
  json["dP_MPa05"] = json_computed(judged.point.dP);
  json["dH_MPa05"] = json_computed(judged.point.dH);
  json["fd_percent"] = json_computed(judged.teas.fd);
  json["fp_percent"] = json_computed(judged.teas.fp);
  json["fh_percent"] = json_computed(judged.teas.fh);
  json["effect"] = json_computed(judged.effect);
  json["risk"] = json_computed(judged.risk);
  json["effect_words"] = json_likelihood(judged.effect);
  json["risk_words"] = json_likelihood(judged.risk);
  json["riskiest_layer"] = json_text(judged.riskiest);
  json["margin_RED"] = json_computed(judged.margin_RED);
  json["layers"] = Json::array();
  for (std::size_t i = 0; i < judged.outlooks.size(); ++i)
    json["layers"].push_back(outlook_json(judged.outlooks[i], layers[i]));
  if (!judged.seen.empty()) json["seen"] = sightings_json(judged);
  if (!judged.very.empty()) json["seen_of_very_mixture"] = very_sightings_json(judged);
  if (!judged.seen.empty() || !judged.very.empty()) json["seen_words"] = sighting_sentences(judged);
  json["fate"] = fate_json(judged, limits.risk_limit);
  json["hazards_of_parts"] = hazards_json(judged);
  return json;
}

namespace {

// No unit, in the order of the deviations: dD with dP, dH and R0, dP with dH and R0, dH with R0.
Json correlations_json(const UncertainSphere& sphere) {
  const auto share = [](double covariance, double a, double b) {
    return json_computed(a > 0 && b > 0 ? covariance / (a * b) : 0);
  };
  const SphereCovariance& shared = sphere.shared;
  const Hansen& sd = sphere.sd;
  return {{"dD_dP", share(shared.dD_dP, sd.dD, sd.dP)},        {"dD_dH", share(shared.dD_dH, sd.dD, sd.dH)},
          {"dD_R0", share(shared.dD_R0, sd.dD, sphere.R0_sd)}, {"dP_dH", share(shared.dP_dH, sd.dP, sd.dH)},
          {"dP_R0", share(shared.dP_R0, sd.dP, sphere.R0_sd)}, {"dH_R0", share(shared.dH_R0, sd.dH, sphere.R0_sd)}};
}

Json reach_json(const LocalReach& reach) {
  Json json = {{"length_MPa05", json_computed(reach.length)}, {"places", Json::array()}};
  for (const LocalReach::Place& place : reach.places)
    json["places"].push_back(
        {{"dD_dP_dH_MPa05", {json_computed(place.at.dD), json_computed(place.at.dP), json_computed(place.at.dH)}},
         {"weight", json_computed(place.weight)}});
  return json;
}

// Null of a layer without a sphere.
void add_sphere(Json& json, const PlannedLayer& layer) {
  const auto figure = [&](double value) { return layer.sphere ? json_computed(value) : Json(); };
  const UncertainSphere sphere = layer.sphere.value_or(UncertainSphere{});
  json["dD_MPa05"] = figure(sphere.mean.centre.dD);
  json["dP_MPa05"] = figure(sphere.mean.centre.dP);
  json["dH_MPa05"] = figure(sphere.mean.centre.dH);
  json["R0_MPa05"] = figure(sphere.mean.R0);
  json["sd_dD_dP_dH_R0_MPa05"] = {figure(sphere.sd.dD), figure(sphere.sd.dP), figure(sphere.sd.dH),
                                  figure(sphere.R0_sd)};
  if (!(sphere.shared == SphereCovariance{})) json["correlations"] = correlations_json(sphere);
  if (layer.sphere && !layer.reach.places.empty()) json["reach"] = reach_json(layer.reach);
  if (!layer.sphere)
    json["sphere_grade"] = "none";
  else
    json["sphere_grade"] =
        layer.basis == LayerBasis::own_tests ? std::string("own_tests") : std::string(to_word(layer.grade));
  json["sphere_source"] = layer.sphere ? Json(layer.studio ? std::string("studio") : layer.sphere_source) : Json();
}

}  // namespace

Json layers_json(const std::vector<PlannedLayer>& layers, const Limits& limits) {
  Json list = Json::array();
  for (const PlannedLayer& layer : layers) {
    Json json = {{"name", layer.name}, {"role", role_word(layer.role)}, {"target", layer.is_target}};
    json["material"] = json_text(layer.material);
    json["material_name"] = material_in_words(layer);
    json["chosen_because"] = basis_words(layer);
    add_sphere(json, layer);
    json["assumption"] = json_text(layer.assumption);
    json["observations_fitted"] = layer.observations_fitted;
    json["possible"] = Json::array();
    for (const OtherMaterial& other : layer.possible)
      json["possible"].push_back({{"material", other.material},
                                  {"material_name", other.material_name},
                                  {"share", json_computed(other.share)}});
    json["response_curve_borrowed"] = !layer.own_response;
    json["grade_that_counts"] = grade_that_counts(layer, limits);
    json["warnings"] = Json::array();
    for (const Flag flag : layer.flags) json["warnings"].push_back(std::string(to_word(flag)));
    json["passage_warnings"] = Json::array();
    for (const PassageWarning& one : layer.passages) {
      Json words = Json::array();
      for (const Flag flag : one.flags) words.push_back(std::string(to_word(flag)));
      json["passage_warnings"].push_back({{"passage", one.passage}, {"warnings", std::move(words)}});
    }
    if (!layer.sphere) {
      json["no_sphere"] = json_text(layer.no_sphere);
      json["observations"] = seen_rows_json(layer.seen);
    }
    list.push_back(std::move(json));
  }
  return list;
}

Json liquids_json(const std::vector<Liquid>& liquids) {
  Json list = Json::array();
  for (const Liquid& liquid : liquids) {
    const Solvent& solvent = *liquid.solvent;
    Json json = {{"liquid", liquid.label}, {"solvent", solvent.id}};
    json["dD_dP_dH_MPa05"] = {json_computed(liquid.hansen.dD), json_computed(liquid.hansen.dP),
                              json_computed(liquid.hansen.dH)};
    json["hansen_standing"] = solvent.hansen ? Json(std::string(to_word(solvent.hansen->chosen.standing))) : Json();
    json["hansen_source"] = solvent.hansen ? Json(solvent.hansen->chosen.source) : Json();
    json["classification"] = classification_json(solvent.hazards);
    json["classification_words"] = statements_text(solvent.hazards);
    json["flash_point_C"] = solvent.flash_point_C ? Json(data_value(solvent.flash_point_C->chosen.value)) : Json();
    json["exposure_limits"] = Json::array();
    for (const ExposureLimit& limit : solvent.exposure_limits) json["exposure_limits"].push_back(limit_json(limit));
    list.push_back(std::move(json));
  }
  return list;
}

}  // namespace gentlest
