#include "staircase.hpp"

#include <algorithm>

namespace gentlest {

bool comes_before(const Composition& a, const Composition& b) {
  if (a.parts != b.parts) return a.parts < b.parts;
  if (a.liquid != b.liquid) return a.liquid < b.liquid;
  return a.share < b.share;
}

std::vector<Candidate> sift_frontier(std::vector<Candidate> candidates) {
  std::sort(candidates.begin(), candidates.end(), [](const Candidate& a, const Candidate& b) {
    if (a.verdict.risk != b.verdict.risk) return a.verdict.risk < b.verdict.risk;
    if (a.verdict.effect != b.verdict.effect) return a.verdict.effect > b.verdict.effect;
    return comes_before(a.composition, b.composition);
  });
  std::size_t kept = 0;
  for (const Candidate& candidate : candidates)
    if (kept == 0 || candidate.verdict.effect > candidates[kept - 1].verdict.effect) candidates[kept++] = candidate;
  candidates.resize(kept);
  return candidates;
}

Staircase::Staircase(const std::vector<Candidate>& frontier) {
  constexpr double thinning = 3e-5;  // in effect or risk; far below what the bounds over a cell lose anyway
  for (const Candidate& member : frontier) {
    const Step step{member.verdict.risk, member.verdict.effect};
    if (coarse_.empty() || step.effect - coarse_.back().effect > thinning || step.risk - coarse_.back().risk > thinning)
      coarse_.push_back(step);
    steps_.push_back(step);
  }
  if (!steps_.empty() && steps_.back().effect > coarse_.back().effect) coarse_.push_back(steps_.back());
  std::uint32_t count = 0;
  for (std::size_t slot = 0; slot <= slot_count; ++slot) {
    const double risk = static_cast<double>(slot) / static_cast<double>(slot_count);
    while (count < steps_.size() && steps_[count].risk <= risk) ++count;
    slots_.push_back(count);
  }
}

std::size_t Staircase::steps_within(double risk) const {
  if (risk < 0) return 0;
  const auto slot = static_cast<std::size_t>(std::min(risk, 1.0) * static_cast<double>(slot_count));
  const auto first = steps_.begin() + slots_[slot];
  const auto last = slot < slot_count ? steps_.begin() + slots_[slot + 1] : steps_.end();
  const auto after = std::upper_bound(first, last, risk, [](double r, const Step& step) { return r < step.risk; });
  return static_cast<std::size_t>(after - steps_.begin());
}

double Staircase::effect_within(double risk) const {
  const std::size_t count = steps_within(risk);
  return count == 0 ? -1 : steps_[count - 1].effect;
}

bool Staircase::beats(const Verdict& verdict) const {
  const std::size_t count = steps_within(verdict.risk);
  if (count == 0) return false;
  const Step& step = steps_[count - 1];
  return step.effect > verdict.effect || (step.effect == verdict.effect && step.risk < verdict.risk);
}

double Staircase::coarse_effect_within(double risk) const {
  const auto after =
      std::upper_bound(coarse_.begin(), coarse_.end(), risk, [](double r, const Step& step) { return r < step.risk; });
  return after == coarse_.begin() ? -1 : std::prev(after)->effect;
}

double Staircase::lowest_above_line(double from, double to, double slope) const {
  auto next =
      std::upper_bound(coarse_.begin(), coarse_.end(), from, [](double r, const Step& step) { return r < step.risk; });
  double effect = next == coarse_.begin() ? -1 : std::prev(next)->effect;
  double lowest = 2;
  // Between two steps the staircase is flat, so the line (slope >= 0) is nearest at the right end.
  for (; next != coarse_.end() && next->risk < to; ++next) {
    lowest = std::min(lowest, effect - slope * next->risk);
    effect = next->effect;
  }
  return std::min(lowest, effect - slope * to);
}

}  // namespace gentlest
