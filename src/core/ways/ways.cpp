#include "gentlest/ways/ways.hpp"

#include "gentlest/catalogue/figures.hpp"

#include <algorithm>
#include <optional>
#include <set>
#include <utility>

namespace gentlest {

namespace {

using Names = std::vector<std::string>;

std::optional<Occasion> end_of(const Plan& plan) {
  if (plan.outcome == Outcome::window) return Occasion::ladder_ends;
  if (plan.outcome == Outcome::no_ladder) return Occasion::not_judged;
  switch (what_closes_window(plan)) {
    case WindowClosedBy::layer:
      return Occasion::layer_closes;
    case WindowClosedBy::shelf:
      return Occasion::shelf_too_weak;
    case WindowClosedBy::sightings:
      return Occasion::sightings_close;
    case WindowClosedBy::examination:
    case WindowClosedBy::other_limits:
      return Occasion::limits_close;
  }
  return std::nullopt;
}

// Whose name belongs to how the plan ends.
Names names_at_end(const Plan& plan, Occasion end) {
  if (end == Occasion::layer_closes && plan.least_risk_that_works) return {plan.least_risk_that_works->riskiest};
  if (end == Occasion::ladder_ends || end == Occasion::limits_close || end == Occasion::sightings_close) return {};
  return {plan.layers[plan.target].name};
}

void add_once(Names& names, const std::string& name) {
  if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
}

bool holds_any(const std::vector<Flag>& flags, const std::vector<Flag>& wanted) {
  return std::any_of(wanted.begin(), wanted.end(),
                     [&](Flag flag) { return std::find(flags.begin(), flags.end(), flag) != flags.end(); });
}

// Layers to keep and passages with one of the flags, known or suspected: both count on the careful side.
Names flagged(const Plan& plan, const std::vector<Flag>& wanted) {
  Names names;
  for (const PlannedLayer& layer : plan.layers) {
    if (layer.role != Role::keep) continue;
    if (holds_any(layer.flags, wanted)) add_once(names, layer.name);
    for (const PassageWarning& passage : layer.passages)
      if (holds_any(passage.flags, wanted)) add_once(names, passage.passage);
  }
  for (const Passage& passage : plan.job.passages)
    if (holds_any(passage.suspected, wanted)) add_once(names, passage.name);
  return names;
}

// The kind of the material, as its record has it; empty where nobody knows.
std::string kind_of(const PlannedLayer& layer, const Catalogue& catalogue) {
  const Material* material = layer.material.empty() ? nullptr : catalogue.find_material(layer.material);
  return material ? material->kind : std::string();
}

bool is_one_of(const std::string& word, const std::vector<std::string>& words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

// The mixture that the plan would have to rest on: the gentlest that works, else the strongest rung.
const JudgedMixture* what_works(const Plan& plan) {
  if (plan.outcome == Outcome::window && !ladder_rungs(plan).empty()) return &ladder_rungs(plan).back();
  return plan.least_risk_that_works ? &*plan.least_risk_that_works : nullptr;
}

Names polar_liquids(const Plan& plan) {
  Names names;
  if (const JudgedMixture* works = what_works(plan))
    for (const Part& part : works->mixture.parts()) {
      const Solvent& solvent = *part.liquid.solvent;
      if (!is_hydrocarbon_or_cut(solvent) && !is_one_of(solvent.family, {"aromatic hydrocarbon", "terpene"}))
        names.push_back(part.liquid.label);
    }
  return names;
}

Names kept_of_kind(const Plan& plan, const Catalogue& catalogue, const std::string& kind) {
  Names names;
  for (const PlannedLayer& layer : plan.layers)
    if (layer.role == Role::keep && kind_of(layer, catalogue) == kind) add_once(names, layer.name);
  return names;
}

Names kept_not_judged(const Plan& plan) {
  Names names;
  for (const PlannedLayer& layer : plan.layers)
    if (is_kept_unjudged(layer)) add_once(names, layer.name);
  return names;
}

bool is_here(const std::vector<OccasionHere>& here, Occasion occasion) {
  return std::any_of(here.begin(), here.end(), [&](const OccasionHere& one) { return one.occasion == occasion; });
}

std::vector<Occasion> those_here(const std::vector<Occasion>& wanted, const std::vector<OccasionHere>& here) {
  std::vector<Occasion> found;
  for (const Occasion occasion : wanted)
    if (is_here(here, occasion)) found.push_back(occasion);
  return found;
}

void put_in_order(WaysAnswer& answer) {
  std::stable_sort(answer.ways.begin(), answer.ways.end(), [](const WayHere& a, const WayHere& b) {
    return std::pair(a.way->kind, !a.careful.empty()) < std::pair(b.way->kind, !b.careful.empty());
  });
}

}  // namespace

std::vector<OccasionHere> occasions_of(const Plan& plan, const Catalogue& catalogue) {
  std::vector<OccasionHere> here;
  const auto add_where_any = [&](Occasion occasion, Names names) {
    if (!names.empty()) here.push_back({occasion, std::move(names)});
  };
  const PlannedLayer& target = plan.layers[plan.target];
  const std::string kind = kind_of(target, catalogue);
  if (const std::optional<Occasion> end = end_of(plan)) here.push_back({*end, names_at_end(plan, *end)});
  if (target.response.strongest > 1) here.push_back({Occasion::only_swells, {target.name}});
  add_where_any(Occasion::polar_liquid, polar_liquids(plan));
  if (is_one_of(kind, {"natural resin", "natural resin derivative"}))
    here.push_back({Occasion::natural_resin, {target.name}});
  if (is_one_of(kind, {"acrylic resin", "vinyl resin", "hydrocarbon resin", "ketone resin", "aldehyde resin"}))
    here.push_back({Occasion::synthetic_resin, {target.name}});
  Names no_water = flagged(plan, {Flag::water_sensitive});
  // The examination keeps water off without saying of which layer: then of all that stay.
  const auto& off = plan.job.left_off;
  if (no_water.empty() && std::find(off.begin(), off.end(), "water") != off.end())
    for (const PlannedLayer& layer : plan.layers)
      if (layer.role == Role::keep) no_water.push_back(layer.name);
  add_where_any(Occasion::water_sensitive, std::move(no_water));
  add_where_any(Occasion::soft_layer, flagged(plan, {Flag::resinous, Flag::waxy, Flag::bituminous}));
  add_where_any(Occasion::acrylic_paint, kept_of_kind(plan, catalogue, "acrylic paint"));
  add_where_any(Occasion::kept_not_judged, kept_not_judged(plan));
  return here;
}

WaysAnswer ways_for(const Plan& plan, const Catalogue& catalogue) {
  WaysAnswer answer;
  answer.occasions = occasions_of(plan, catalogue);
  for (const OtherWay& way : catalogue.other_ways()) {
    WayHere one{&way, those_here(way.brought_up_by, answer.occasions), those_here(way.careful_with, answer.occasions)};
    if (way.brought_up_by.empty() || !one.because.empty())
      answer.ways.push_back(std::move(one));
    else
      answer.passed_over.push_back(&way);
  }
  put_in_order(answer);
  return answer;
}

WaysAnswer all_ways(const Catalogue& catalogue) {
  WaysAnswer answer;
  for (const OtherWay& way : catalogue.other_ways()) answer.ways.push_back({&way});
  put_in_order(answer);
  return answer;
}

std::vector<Source> sources_of(const WaysAnswer& answer, const Catalogue& catalogue) {
  std::set<std::string> keys;
  for (const WayHere& one : answer.ways) keys.insert(one.way->sources.begin(), one.way->sources.end());
  return named_sources(keys, catalogue);
}

}  // namespace gentlest
