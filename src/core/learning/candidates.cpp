#include "core/learning/candidates.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace gentlest {

namespace {

constexpr std::size_t refined = 24;  // candidates that are judged by all particles, of each ranking

// Scores that differ by the last bits are equal, so that no machine chooses another mixture.
double rounded_score(double score) {
  return std::round(score * 1e9) / 1e9;
}

}  // namespace

bool left_original(const PastTest& test) {
  return test.original.has_value() && *test.original == 0;
}

bool has_passed_at_edge(const NextTestTask& task, const Hansen& point, const std::string& layer) {
  return std::any_of(task.past.begin(), task.past.end(), [&](const PastTest& test) {
    return test.at_edge && (layer.empty() || test.layer.empty() || test.layer == layer) &&
           is_same(test.mixture.point, point) && left_original(test);
  });
}

Choice::Choice(const NextTestTask& task, const DriftQuestion& drifts_to)
    : task_(task), drifts_to_(drifts_to), rough_(task.candidates.size()) {
  const NextTestSettings& set = task.settings;
  good_RED_ = task.target->curve().RED_where(set.effect_level, set.good_effect);
  for (std::size_t i = 0; i < rough_.size(); ++i) {
    const Hansen& point = task.candidates[i];
    rough_[i].candidate = i;
    rough_[i].point = point;
    rough_[i].effect = task.target->rough_chance(point, set.effect_level);
    for (const KeptBelief& kept : task.kept)
      rough_[i].risk = std::max(rough_[i].risk, kept.belief.rough_chance(point, kept.risk_level));
  }
  for (const PastTest& test : task.past)
    if (!test.at_edge) boldest_ = std::max(boldest_, task.target->chance_before(test.mixture.point, set.effect_level));
}

void Choice::judge_good() {
  for (CandidateOutlook& one : rough_) {
    one.good = task_.target->rough_share_nearer(one.point, good_RED_);
    for (const KeptBelief& kept : task_.kept)
      one.good *= 1 - kept.belief.rough_share_nearer(
                          one.point, kept.belief.curve().RED_where(kept.risk_level, task_.settings.good_risk));
  }
}

// A little more than the limit: the rough figure may be off, and knows nothing of what passed at the edge.
std::vector<std::size_t> Choice::ranked(const Score& score, double risk_limit, Place place) const {
  std::vector<std::pair<double, std::size_t>> order;
  for (const CandidateOutlook& one : rough_)
    if (place == Place::picture_after_edge || one.risk <= 1.5 * risk_limit + 0.005)
      order.emplace_back(-rounded_score(score(one)), *one.candidate);
  std::sort(order.begin(), order.end());
  std::vector<std::size_t> candidates;
  for (const auto& [rank, candidate] : order) {
    if (candidates.size() == refined) break;
    const Hansen& point = task_.candidates[candidate];
    if (is_open(point, place) && is_within_step(point)) candidates.push_back(candidate);
  }
  return candidates;
}

std::optional<CandidateOutlook> Choice::best(const Score& score, double risk_limit, Place place) {
  std::optional<CandidateOutlook> found;
  for (const std::size_t candidate : ranked(score, risk_limit, place)) {
    CandidateOutlook outlook = outlook_of(task_, {task_.candidates[candidate]});
    outlook.candidate = candidate;
    if (outlook.risk > risk_limit || (found && rounded_score(score(outlook)) <= rounded_score(score(*found)))) continue;
    const double most =
        std::max(place == Place::edge ? task_.settings.edge_risk : 0, task_.settings.risk_limits.back());
    // What passed at the edge dried there too.
    if (place != Place::picture_after_edge && drifts_beyond(candidate, most)) continue;
    found = outlook;
  }
  return found;
}

// The same mixture twice would mostly tell the same again, and one that reacted at the edge is not put on the
// picture.
bool Choice::is_open(const Hansen& point, Place place) const {
  if (place == Place::picture_after_edge && !has_passed_at_edge(task_, point)) return false;
  return std::none_of(task_.past.begin(), task_.past.end(), [&](const PastTest& test) {
    return is_same(test.mixture.point, point) &&
           (!test.at_edge || place == Place::edge || test.original.value_or(0) > 0);
  });
}

bool Choice::drifts_beyond(std::size_t candidate, double risk_limit) {
  if (!drifts_to_) return false;
  const bool beyond = drifts_to_(candidate, [&](const Hansen& point) {
    return std::any_of(task_.kept.begin(), task_.kept.end(),
                       [&](const KeptBelief& kept) { return kept.belief.chance(point, kept.risk_level) > risk_limit; });
  });
  if (beyond) drifting_.insert(candidate);
  return beyond;
}

bool Choice::is_within_step(const Hansen& point) const {
  return task_.target->chance_before(point, task_.settings.effect_level) <= boldest_ + task_.settings.step;
}

}  // namespace gentlest
