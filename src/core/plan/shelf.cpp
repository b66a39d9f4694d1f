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

bool is_left_off_by_examination(const Liquid& liquid, const Job& job) {
  return std::any_of(job.left_off.begin(), job.left_off.end(), [&](const std::string& family) {
    return family == liquid.solvent->family || (family == "water" && liquid.water_fraction > 0);
  });
}

namespace {

std::optional<LeftOff> reason_to_leave_off(const Liquid& liquid, const std::vector<PlannedLayer>& layers,
                                           const Job& job, const Catalogue& catalogue) {
  if (auto reason = reason_to_leave_off(*liquid.solvent, job.limits, catalogue)) return reason;
  if (is_left_off_by_examination(liquid, job)) return LeftOff{LeftOffWhy::examination};
  return harm_seen(*liquid.solvent, layers, job.limits, catalogue);
}

}  // namespace

std::optional<LeftOff> reason_to_leave_off(const Liquid& liquid, const Job& job, const Catalogue& catalogue) {
  return reason_to_leave_off(liquid, layers_as_known(job, catalogue), job, catalogue);
}

Shelf shelf_of(const Job& job, const Catalogue& catalogue) {
  Shelf shelf;
  const std::vector<PlannedLayer> layers = layers_as_known(job, catalogue);
  for (const ShelfBottle& bottle : job.shelf) {
    const Meaning<Solvent> named = catalogue.meaning_of_solvent(bottle.solvent);
    const Solvent& solvent = *named.record;
    JobBottle own{&solvent, std::nullopt, std::nullopt, bottle.at_most_percent};
    if (solvent.hansen) own.liquid = make_liquid(named, bottle.grade, catalogue);
    own.left_off = own.liquid ? reason_to_leave_off(*own.liquid, layers, job, catalogue)
                              : reason_to_leave_off(solvent, job.limits, catalogue);
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
