#include "core/answers/unjudged_readings.hpp"

#include "core/learning/candidates.hpp"
#include "core/plan/unjudged.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/liquids/notation.hpp"

#include <algorithm>

namespace gentlest {

namespace {

std::optional<Mixture> readable(const std::string& text, const std::vector<Liquid>& shelf, const Catalogue& catalogue) {
  try {
    return parse_mixture(text, catalogue, shelf);
  } catch (const InputError&) {
    return std::nullopt;  // the reading is named among those that are not counted
  }
}

bool is_harm(const Reading& reading, const Hansen& point) {
  const auto evidence = evidence_on_original(reading, point, ReadingNoise{});
  return evidence && evidence->match.front() < *std::max_element(evidence->match.begin() + 1, evidence->match.end());
}

const PlannedLayer* layer_of(const std::vector<PlannedLayer>& layers, const std::string& name) {
  const auto found =
      std::find_if(layers.begin(), layers.end(), [&](const PlannedLayer& layer) { return layer.name == name; });
  return found == layers.end() ? nullptr : &*found;
}

double share_of(const Mixture& mixture, const Solvent* solvent) {
  double share = 0;
  for (const Part& part : mixture.parts())
    if (part.liquid.solvent == solvent) share += part.fraction;
  return share;
}

// What was seen elsewhere does not excuse a liquid here: something acted.
std::vector<const Solvent*> active_liquids(const Mixture& mixture) {
  std::vector<const Solvent*> all;
  std::vector<const Solvent*> active;
  for (const Part& part : mixture.parts()) {
    const std::string& family = part.liquid.solvent->family;
    all.push_back(part.liquid.solvent);
    if (family != "aliphatic hydrocarbon" && family != "petroleum fraction") active.push_back(all.back());
  }
  return active.empty() ? all : active;
}

bool is_closed_by(const Mixture& mixture, const Mixture& harmful, const std::vector<const Solvent*>& active) {
  constexpr double last_bits = 1e-9;
  return std::all_of(active.begin(), active.end(), [&](const Solvent* solvent) {
    return share_of(mixture, solvent) >= share_of(harmful, solvent) - last_bits;
  });
}

bool was_tried(const Mixture& mixture, const std::vector<PastTest>& past) {
  const Hansen point = mix(mixture);
  return std::any_of(past.begin(), past.end(), [&](const PastTest& test) { return is_same(test.mixture.point, point); });
}

}  // namespace

std::string kept_under(const Job& job, const std::vector<PlannedLayer>& layers, const std::string& passage) {
  const auto is_kept = [&](const PlannedLayer& one, const std::string& name) {
    return one.role == Role::keep && (name.empty() || one.name == name);
  };
  const auto find = [&](const std::string& name) {
    const auto found =
        std::find_if(layers.begin(), layers.end(), [&](const PlannedLayer& one) { return is_kept(one, name); });
    return found == layers.end() ? std::string() : found->name;
  };
  const std::string own = find(passage);
  if (!own.empty() || passage.empty()) return own;
  for (const Passage& known : job.passages)
    if (known.name == passage) return find(known.of);
  return {};
}

std::vector<UnjudgedReading> unjudged_readings(const Job& job, const std::vector<PlannedLayer>& layers,
                                               const std::vector<Reading>& readings, const std::vector<Liquid>& shelf,
                                               const Catalogue& catalogue) {
  std::vector<UnjudgedReading> found;
  for (const Reading& reading : readings) {
    const PlannedLayer* layer = layer_of(layers, kept_under(job, layers, reading.passage));
    if (!layer || layer->sphere || !reading.original) continue;
    const std::optional<Mixture> mixture = readable(reading.mixture, shelf, catalogue);
    if (!mixture) continue;
    found.push_back({reading.test, layer->name, reading.mixture, reading.date, reading.at_edge, reading.original,
                     is_harm(reading, mix(*mixture))});
  }
  return found;
}

std::size_t close_harmful(std::vector<Mixture>& mixtures, const std::vector<UnjudgedReading>& readings,
                          const std::vector<Liquid>& shelf, const Catalogue& catalogue) {
  std::size_t closed = 0;
  for (const UnjudgedReading& reading : readings) {
    if (!reading.harmed) continue;
    const Mixture harmful = *readable(reading.mixture, shelf, catalogue);
    const std::vector<const Solvent*> active = active_liquids(harmful);
    closed += std::erase_if(mixtures, [&](const Mixture& one) { return is_closed_by(one, harmful, active); });
  }
  return closed;
}

std::vector<Mixture> next_rungs(const std::vector<Mixture>& rungs, const std::vector<UnjudgedReading>& readings,
                                const std::vector<Liquid>& shelf, const Catalogue& catalogue) {
  std::size_t until = rungs.size();
  std::size_t borne = 0;  // rungs up to the strongest that was borne
  for (const UnjudgedReading& reading : readings) {
    const Hansen point = mix(*readable(reading.mixture, shelf, catalogue));
    for (std::size_t i = 0; i < rungs.size(); ++i) {
      if (!is_same(mix(rungs[i]), point)) continue;
      if (reading.harmed)
        until = std::min(until, i);
      else
        borne = std::max(borne, i + 1);
    }
  }
  const std::size_t count = std::min(until, borne + 1);
  return {rungs.begin(), rungs.begin() + static_cast<std::ptrdiff_t>(std::min(count, rungs.size()))};
}

void fill_first_tests(Progress& progress, const Job& job, const std::vector<Liquid>& shelf,
                      const Catalogue& catalogue) {
  std::vector<JudgedMixture> left = liquids_to_try(job, progress.layers, shelf, catalogue);
  for (JudgedMixture& one : left) {
    std::vector<Mixture> alone = {one.mixture};
    if (was_tried(one.mixture, progress.task.past)) continue;
    if (close_harmful(alone, progress.unjudged, shelf, catalogue) > 0) continue;
    progress.to_try.push_back(std::move(one));
  }
  progress.first_tests = first_tests_of(progress.layers, progress.to_try, false, catalogue);
}

}  // namespace gentlest
