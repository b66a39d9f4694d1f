#include "gentlest/plan/shelf.hpp"

#include "core/plan/planned_layers.hpp"

#include "gentlest/catalogue/statements.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace gentlest {

namespace {

bool names_solvent(const std::vector<std::string>& names, const Solvent& solvent, const Catalogue& catalogue) {
  return std::any_of(names.begin(), names.end(),
                     [&](const std::string& name) { return catalogue.find_solvent(name) == &solvent; });
}

// Where harm was seen of the liquid alone, no mixture of it is proposed unless the job names it: gentle first.
std::optional<LeftOff> harm_seen(const Solvent& solvent, const std::vector<PlannedLayer>& layers, const Limits& limits,
                                 const Catalogue& catalogue) {
  if (names_solvent(limits.allow_acting, solvent, catalogue)) return std::nullopt;
  for (const PlannedLayer& layer : layers) {
    if (layer.role != Role::keep || layer.sphere) continue;
    const std::vector<SeenRow> rows = rows_of_liquid(layer.seen, solvent);
    if (worst_of(rows) == Sighting::acts) return LeftOff{LeftOffWhy::acts_on_layer, {}, layer.name, rows.front().row};
  }
  return std::nullopt;
}

// "water" leaves off what holds any: 96 % ethanol too.
std::optional<LeftOff> examined_off(const Solvent& solvent, double water_fraction, const Job& job) {
  for (const std::string& family : job.left_off)
    if (family == solvent.family || (family == "water" && water_fraction > 0)) return LeftOff{LeftOffWhy::examination};
  return std::nullopt;
}

}  // namespace

std::optional<LeftOff> reason_to_leave_off(const Solvent& solvent, const Limits& limits, const Catalogue& catalogue) {
  if (!solvent.hansen) return LeftOff{LeftOffWhy::no_hansen};
  if (solvent.family == "water") return LeftOff{LeftOffWhy::water};
  const auto& families = limits.avoid_families;
  if (std::find(families.begin(), families.end(), solvent.family) != families.end()) return LeftOff{LeftOffWhy::family};
  if (names_solvent(limits.avoid_solvents, solvent, catalogue)) return LeftOff{LeftOffWhy::solvent};
  if (!limits.exactly.empty() && !names_solvent(limits.exactly, solvent, catalogue))
    return LeftOff{LeftOffWhy::not_demanded};
  if (!solvent.hazards && !limits.allow_unknown_hazards) return LeftOff{LeftOffWhy::no_hazard_record};
  for (const std::string& avoided : limits.avoid_statements)
    for (const std::string& statement : known_statements(solvent))
      if (statement.rfind(avoided, 0) == 0) return LeftOff{LeftOffWhy::statement, statement};
  return std::nullopt;
}

std::optional<LeftOff> reason_to_leave_off(const Solvent& solvent, const Job& job, const Catalogue& catalogue) {
  if (auto reason = reason_to_leave_off(solvent, job.limits, catalogue)) return reason;
  if (auto reason = examined_off(solvent, 0, job)) return reason;
  return harm_seen(solvent, layers_as_known(job, catalogue), job.limits, catalogue);
}

Shelf shelf_of(const Job& job, const Catalogue& catalogue) {
  Shelf shelf;
  const std::vector<PlannedLayer> layers = layers_as_known(job, catalogue);
  for (const ShelfBottle& bottle : job.shelf) {
    const Meaning<Solvent> named = catalogue.meaning_of_solvent(bottle.solvent);
    const Solvent& solvent = *named.record;
    JobBottle own{&solvent, std::nullopt, reason_to_leave_off(solvent, job.limits, catalogue), bottle.at_most_percent};
    if (!own.left_off) own.left_off = harm_seen(solvent, layers, job.limits, catalogue);
    if (solvent.hansen) own.liquid = make_liquid(named, bottle.grade, catalogue);
    if (!own.left_off && own.liquid) own.left_off = examined_off(solvent, own.liquid->water_fraction, job);
    shelf.push_back(std::move(own));
  }
  return shelf;
}

std::vector<Liquid> all_liquids(const Shelf& shelf) {
  std::vector<Liquid> liquids;
  for (const JobBottle& bottle : shelf)
    if (bottle.liquid) liquids.push_back(*bottle.liquid);
  return liquids;
}

std::vector<Liquid> usable_liquids(const Shelf& shelf) {
  std::vector<Liquid> liquids;
  for (const JobBottle& bottle : shelf)
    if (bottle.liquid && !bottle.left_off) liquids.push_back(*bottle.liquid);
  std::sort(liquids.begin(), liquids.end(), [](const Liquid& a, const Liquid& b) { return a.label < b.label; });
  return liquids;
}

std::vector<JobBottle> bottles_left_off(const Shelf& shelf) {
  std::vector<JobBottle> bottles;
  std::copy_if(shelf.begin(), shelf.end(), std::back_inserter(bottles),
               [](const JobBottle& bottle) { return bottle.left_off.has_value(); });
  return bottles;
}

}  // namespace gentlest
