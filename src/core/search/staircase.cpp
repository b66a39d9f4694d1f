#include "core/search/staircase.hpp"

#include <algorithm>

namespace gentlest {

bool comes_before(const Composition& a, const Composition& b) {
  if (a.parts != b.parts) return a.parts < b.parts;
  if (a.liquid != b.liquid) return a.liquid < b.liquid;
  return a.share < b.share;
}

std::vector<Candidate> sift_frontier(std::vector<Candidate> candidates, const MayStay& may_stay) {
  std::sort(candidates.begin(), candidates.end(), [](const Candidate& a, const Candidate& b) {
    if (a.verdict.risk != b.verdict.risk) return a.verdict.risk < b.verdict.risk;
    if (a.verdict.effect != b.verdict.effect) return a.verdict.effect > b.verdict.effect;
    return comes_before(a.composition, b.composition);
  });
  std::size_t kept = 0;
  for (const Candidate& candidate : candidates)
    if ((kept == 0 || candidate.verdict.effect > candidates[kept - 1].verdict.effect) &&
        (!may_stay || may_stay(candidate.composition)))
      candidates[kept++] = candidate;
  candidates.resize(kept);
  return candidates;
}

void Staircase::Steps::index() {
  std::uint32_t count = 0;
  for (std::size_t slot = 0; slot <= slot_count; ++slot) {
    const double risk = static_cast<double>(slot) / static_cast<double>(slot_count);
    while (count < steps_.size() && steps_[count].risk <= risk) ++count;
    slots_.push_back(count);
  }
}

std::size_t Staircase::Steps::count_within(double risk) const {
  if (risk < 0) return 0;
  const auto slot = static_cast<std::size_t>(std::min(risk, 1.0) * static_cast<double>(slot_count));
  const auto first = steps_.begin() + slots_[slot];
  const auto last = slot < slot_count ? steps_.begin() + slots_[slot + 1] : steps_.end();
  const auto after = std::upper_bound(first, last, risk, [](double r, const Step& step) { return r < step.risk; });
  return static_cast<std::size_t>(after - steps_.begin());
}

double Staircase::Steps::effect_within(double risk) const {
  const std::size_t count = count_within(risk);
  return count == 0 ? -1 : steps_[count - 1].effect;
}

Staircase::Staircase(const std::vector<Candidate>& frontier) {
  // One member in so many is enough for bounds; the last must be among them.
  constexpr std::size_t enough = 4096;
  const std::size_t stride = frontier.size() / enough + 1;
  for (std::size_t i = 0; i < frontier.size(); ++i) {
    const Step step{frontier[i].verdict.risk, frontier[i].verdict.effect};
    if (i % stride == 0 || i + 1 == frontier.size()) coarse_.add(step);
    steps_.add(step);
  }
  steps_.index();
  coarse_.index();
}

double Staircase::effect_within(double risk) const {
  return steps_.effect_within(risk);
}

double Staircase::coarse_effect_within(double risk) const {
  return coarse_.effect_within(risk);
}

bool Staircase::beats(const Verdict& verdict) const {
  const std::size_t count = steps_.count_within(verdict.risk);
  if (count == 0) return false;
  const Step& step = steps_[count - 1];
  return step.effect > verdict.effect || (step.effect == verdict.effect && step.risk < verdict.risk);
}

double Staircase::lowest_above_line(double from, double to, double slope) const {
  std::size_t next = coarse_.count_within(from);
  double effect = next == 0 ? -1 : coarse_[next - 1].effect;
  double lowest = 2;
  // Between two steps the staircase is flat, so the line (slope >= 0) is nearest at the right end.
  for (; next < coarse_.size() && coarse_[next].risk < to; ++next) {
    lowest = std::min(lowest, effect - slope * coarse_[next].risk);
    effect = coarse_[next].effect;
  }
  return std::min(lowest, effect - slope * to);
}

}  // namespace gentlest
