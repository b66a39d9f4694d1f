#include "gentlest/answers/substitute.hpp"

#include "gentlest/safety/person.hpp"

#include <algorithm>
#include <utility>

namespace gentlest {

namespace {

bool carries(const MixtureLabel& label, const char* code) {
  return std::any_of(label.statements.begin(), label.statements.end(),
                     [&](const LabelStatement& statement) { return statement.code.rfind(code, 0) == 0; });
}

int worst_part(const Mixture& mixture, const Catalogue& catalogue) {
  int worst = 0;
  for (const Part& part : mixture.parts())
    worst = std::max(worst, severity_of(label_of(Mixture({{part.liquid, 1.0}}), catalogue)));
  return worst;
}

// The shelf's liquids that may be used, and why the others may not.
std::vector<Liquid> gentler_liquids(const std::vector<Liquid>& shelf, int below, const Catalogue& catalogue,
                                    std::vector<LiquidNotTried>& not_tried) {
  std::vector<Liquid> kept;
  for (const Liquid& liquid : shelf) {
    if (!liquid.solvent->hazards) {
      not_tried.push_back({liquid.label, NotTried::no_hazard_record});
      continue;
    }
    const MixtureLabel label = label_of(Mixture({{liquid, 1.0}}), catalogue);
    if (severity_of(label) >= below)
      not_tried.push_back({liquid.label, NotTried::no_gentler});
    else
      kept.push_back(liquid);
  }
  std::sort(kept.begin(), kept.end(), [](const Liquid& a, const Liquid& b) { return a.label < b.label; });
  return kept;
}

struct Near {
  Composition composition;
  double Ra = 0;
};

bool same_liquids(const Composition& a, const Composition& b) {
  return a.parts == b.parts && a.liquid == b.liquid;
}

// The nearest composition of every set of liquids within the distance. Enumeration visits one set after the other.
std::vector<Near> nearest_of_each_set(const Hansen& goal, const SearchTask& task, double largest_Ra) {
  std::vector<std::uint16_t> all;
  for (std::size_t i = 0; i < task.shelf.size(); ++i) all.push_back(static_cast<std::uint16_t>(i));
  std::vector<Near> list;
  for_each_composition(all, task.parts, 100 / task.step_percent, [&](const Composition& composition) {
    const double Ra = distance_Ra(point_of(task, composition), goal);
    if (Ra > largest_Ra) return;
    if (list.empty() || !same_liquids(list.back().composition, composition))
      list.push_back({composition, Ra});
    else if (Ra < list.back().Ra)
      list.back() = {composition, Ra};
  });
  std::stable_sort(list.begin(), list.end(), [](const Near& a, const Near& b) {
    return a.Ra != b.Ra ? a.Ra < b.Ra : a.composition.parts < b.composition.parts;
  });
  return list;
}

std::optional<double> time_to_dry(const Mixture& mixture, const Catalogue& catalogue, Celsius temperature) {
  const auto drift = evaporate(mixture, catalogue, temperature);
  if (!drift) return std::nullopt;
  for (const DriftPoint& point : drift->path)
    if (point.evaporated >= judged_until - 1e-9) return point.time;
  return std::nullopt;
}

std::vector<std::string> added_statements(const MixtureLabel& label, const MixtureLabel& original) {
  std::vector<std::string> codes;
  for (const LabelStatement& statement : label.statements)
    if (!carries(original, statement.code.c_str())) codes.push_back(statement.code);
  return codes;
}

}  // namespace

SubstituteAnswer find_gentler(const Mixture& original, const std::vector<Liquid>& shelf, const Catalogue& catalogue,
                              const SubstituteWish& wish) {
  constexpr std::size_t most_labels = 400;  // labels and phases take time; the nearest sets are looked at
  SubstituteAnswer answer;
  const MixtureLabel own = label_of(original, catalogue);
  answer.severity = severity_of(own);
  answer.original_known = own.complete();
  SearchTask task;
  task.shelf = gentler_liquids(shelf, std::max(1, worst_part(original, catalogue)), catalogue, answer.not_tried);
  task.parts = wish.parts;
  task.step_percent = wish.step_percent;
  if (task.shelf.empty()) return answer;
  const auto own_time = time_to_dry(original, catalogue, wish.temperature);
  std::vector<Near> near = nearest_of_each_set(mix(original), task, wish.largest_Ra);
  if (near.size() > most_labels) near.resize(most_labels, {});
  for (const Near& one : near) {
    Substitute substitute{mixture_of(task, one.composition), one.Ra, 0, {}, {}, {}, {}};
    substitute.label = label_of(substitute.mixture, catalogue);
    substitute.severity = severity_of(substitute.label);
    if (!substitute.label.complete() || substitute.severity >= answer.severity) continue;
    substitute.phases = phases_of(substitute.mixture, catalogue, wish.temperature);
    if (substitute.phases.phases == Phases::two_liquids) continue;
    answer.found.push_back(std::move(substitute));
  }
  std::stable_sort(answer.found.begin(), answer.found.end(),
                   [](const Substitute& a, const Substitute& b) { return a.severity < b.severity; });
  if (answer.found.size() > wish.most)
    answer.found.erase(answer.found.begin() + static_cast<std::ptrdiff_t>(wish.most), answer.found.end());
  for (Substitute& substitute : answer.found) {
    const auto time = time_to_dry(substitute.mixture, catalogue, wish.temperature);
    if (time && own_time) substitute.drying_ratio = *time / *own_time;
    substitute.added_statements = added_statements(substitute.label, own);
  }
  return answer;
}

}  // namespace gentlest
