// Which bottles of a job's shelf may stand on a ladder, and why the others may not.
#include "gentlest/hazard.hpp"
#include "gentlest/plan.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

bool names_solvent(const std::vector<std::string>& names, const Solvent& solvent, const Catalogue& catalogue) {
  return std::any_of(names.begin(), names.end(),
                     [&](const std::string& name) { return catalogue.find_solvent(name) == &solvent; });
}

}  // namespace

std::string reason_to_leave_off(const Solvent& solvent, const Limits& limits, const Catalogue& catalogue) {
  if (!solvent.hansen) return "no Hansen parameters: " + solvent.no_hansen;
  if (solvent.family == "water") return "water acts by other ways than solubility; outside the model";
  const auto& families = limits.avoid_families;
  if (std::find(families.begin(), families.end(), solvent.family) != families.end())
    return fmt::format("family \"{}\" is to be avoided", solvent.family);
  if (names_solvent(limits.avoid_solvents, solvent, catalogue)) return "is to be avoided";
  if (!solvent.hazards && !limits.allow_unknown_hazards) return "no hazard record, and unknown hazards are not allowed";
  for (const std::string& avoided : limits.avoid_statements)
    for (const std::string& statement : known_statements(solvent))
      if (statement.rfind(avoided, 0) == 0) return fmt::format("carries {}, which is to be avoided", statement);
  return {};
}

std::vector<Liquid> usable_shelf(const Job& job, const Catalogue& catalogue, std::vector<std::string>& left_off) {
  std::vector<Liquid> shelf;
  for (const ShelfBottle& bottle : job.shelf) {
    const Solvent& solvent = *catalogue.find_solvent(bottle.solvent);
    const std::string reason = reason_to_leave_off(solvent, job.limits, catalogue);
    if (reason.empty())
      shelf.push_back(make_liquid(solvent, bottle.grade, catalogue));
    else
      left_off.push_back(fmt::format("{}: {}", solvent.name, reason));
  }
  std::sort(shelf.begin(), shelf.end(), [](const Liquid& a, const Liquid& b) { return a.label < b.label; });
  return shelf;
}

}  // namespace gentlest
