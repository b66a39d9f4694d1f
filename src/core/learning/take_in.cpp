// Which tests speak of a layer, and what a new one adds to those before it.
#include "core/learning/luck.hpp"

#include <algorithm>

namespace gentlest {

namespace {

constexpr std::size_t most_shared = 3;  // tests; what more say of the luck is little, and costs time at every particle

double acts_longer(const std::optional<Evidence>& evidence) {
  return evidence ? evidence->radius_factor : 1;
}

// The tests heard before this one that its mixture shares most of its luck with.
std::vector<SharedLuck> shared_with(const std::vector<HeardLuck>& heard, const SwabMixture& mixture,
                                    const NextTestSettings& set) {
  constexpr double least = 0.05;
  std::vector<SharedLuck> shared;
  const double luck = set.luck_of_mixture * (1 - ReadingNoise{}.slip);
  for (std::size_t i = 0; i < heard.size(); ++i)
    shared.push_back({i, luck * shared_luck(heard[i].test->mixture, mixture, set.luck_reach)});
  std::stable_sort(shared.begin(), shared.end(),
                   [](const SharedLuck& a, const SharedLuck& b) { return a.share > b.share; });
  while (!shared.empty() && (shared.size() > most_shared || shared.back().share < least)) shared.pop_back();
  return shared;
}

void learn(LayerBelief& belief, Evidence evidence, const std::vector<HeardLuck>& heard, const SwabMixture& mixture,
           const NextTestSettings& set) {
  evidence.shared = shared_with(heard, mixture, set);
  belief.learn(evidence);
}

bool speaks_of(const PastTest& test, const KeptBelief& kept) {
  return test.on_original && (test.layer.empty() || test.layer == kept.name);
}

void learn_anew(KeptBelief& kept, const std::vector<PastTest>& past, const NextTestSettings& set) {
  kept.belief = kept.belief.before();
  std::vector<HeardLuck> before;
  for (const HeardLuck& heard : heard_of_kept(past, kept.name)) {
    if (heard.test->on_original) learn(kept.belief, *heard.test->on_original, before, heard.test->mixture, set);
    before.push_back(heard);
  }
}

}  // namespace

std::vector<HeardLuck> heard_of_target(const std::vector<PastTest>& past) {
  std::vector<HeardLuck> heard;
  for (const PastTest& test : past)
    if (test.removal) heard.push_back({&test, *test.removal, acts_longer(test.on_removal)});
  return heard;
}

std::vector<HeardLuck> heard_of_kept(const std::vector<PastTest>& past, const std::string& layer) {
  const bool is_refuted = is_edge_refuted(past);
  std::vector<HeardLuck> heard;
  for (const PastTest& test : past) {
    if (!test.original || (!test.layer.empty() && test.layer != layer)) continue;
    if (is_refuted && test.at_edge && *test.original == 0) continue;
    heard.push_back({&test, *test.original, acts_longer(test.on_original)});
  }
  return heard;
}

void take_in(NextTestTask& task, const PastTest& test) {
  const bool was_refuted = is_edge_refuted(task.past);
  if (task.target && test.on_removal)
    learn(*task.target, *test.on_removal, heard_of_target(task.past), test.mixture, task.settings);
  const bool is_pass_at_edge = test.at_edge && test.original == 0;
  if (!(was_refuted && is_pass_at_edge))
    for (KeptBelief& kept : task.kept)
      if (speaks_of(test, kept))
        learn(kept.belief, *test.on_original, heard_of_kept(task.past, kept.name), test.mixture, task.settings);
  task.past.push_back(test);
  if (was_refuted || !is_edge_refuted(task.past)) return;
  for (KeptBelief& kept : task.kept) learn_anew(kept, task.past, task.settings);
}

}  // namespace gentlest
