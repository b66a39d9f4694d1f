#include "gentlest/catalogue/sighting.hpp"

#include <algorithm>
#include <utility>

namespace gentlest {

Sighting sighting_of(const Observation& seen, int grade) {
  return seen.grades ? sighting_of(*seen.grades, grade) : Sighting::may_act;
}

Sighting sighting_of(const GradeRange& seen, int grade) {
  if (seen.weakest <= grade) return Sighting::acts;
  return seen.strongest > grade ? Sighting::spares : Sighting::may_act;
}

std::vector<SeenRow> rows_on(const Material& material, int grade, const Catalogue& catalogue) {
  std::vector<SeenRow> rows;
  for (const Observation* seen : catalogue.observations_on(material)) {
    SeenRow row{seen, {}, sighting_of(*seen, grade)};
    for (const ObservedPart& part : seen->parts) row.solvents.push_back(catalogue.find_solvent(part.solvent));
    rows.push_back(std::move(row));
  }
  return rows;
}

Sighting worst_of(const std::vector<SeenRow>& rows) {
  Sighting worst = rows.empty() ? Sighting::unknown : Sighting::spares;
  for (const SeenRow& row : rows) worst = std::min(worst, row.says);
  return worst;
}

std::vector<SeenRow> rows_of_liquid(const std::vector<SeenRow>& rows, const Solvent& solvent) {
  std::vector<SeenRow> found;
  for (const SeenRow& row : rows)
    if (row.solvents.size() == 1 && row.solvents.front() == &solvent) found.push_back(row);
  std::stable_sort(found.begin(), found.end(), [](const SeenRow& a, const SeenRow& b) { return a.says < b.says; });
  return found;
}

}  // namespace gentlest
