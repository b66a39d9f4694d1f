// What was learnt, in plain words.
#include "gentlest/base/text.hpp"
#include "gentlest/learning/learning.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

// A reading as unlikely as this was hardly to be expected.
constexpr double surprising = 0.05;
constexpr double mostly_stray = 0.5;

std::string range_words(const char* what, const Estimate& now) {
  return fmt::format("{} {:.1f} (90 % between {:.1f} and {:.1f})", what, now.mean, now.low, now.high);
}

// How wide the present interval is against that of the prior.
double width_left(const Estimate& now, const Estimate& before) {
  const double was = before.high - before.low;
  return was > 0 ? (now.high - now.low) / was : 1;
}

struct Figure {
  const char* name;
  Estimate now;
  Estimate before;
};

std::string join(const std::vector<std::string>& words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i)
    text += (i == 0 ? "" : i + 1 == words.size() ? " and " : ", ") + words[i];
  return text;
}

void say_figures(const LayerBelief& belief, const LayerBelief& before, const std::string& layer,
                 std::vector<std::string>& lines) {
  const std::vector<Figure> figures = {{"dD", belief.dD(), before.dD()},
                                       {"dP", belief.dP(), before.dP()},
                                       {"dH", belief.dH(), before.dH()},
                                       {"R0", belief.R0(), before.R0()}};
  std::vector<std::string> ranges, learnt, open;
  for (const Figure& figure : figures) {
    ranges.push_back(range_words(figure.name, figure.now));
    const double left = width_left(figure.now, figure.before);
    if (left < 0.75) learnt.push_back(fmt::format("{} to {:.0f} %", figure.name, 100 * left));
    if (left > 0.9) open.push_back(figure.name);
  }
  lines.push_back(fmt::format("{}: {}, in MPa^0.5", layer, join(ranges)));
  if (!learnt.empty())
    lines.push_back(fmt::format("{}: the tests narrowed {} of the range held before", layer, join(learnt)));
  if (!open.empty()) lines.push_back(fmt::format("{}: still as open as before: {}", layer, join(open)));
}

void say_hypotheses(const LayerBelief& belief, const std::string& layer, std::vector<std::string>& lines) {
  const std::vector<double> chances = belief.hypothesis_chances();
  if (chances.back() > mostly_stray)
    lines.push_back(
        fmt::format("{}: the tests do not fit what it was taken for ({} that it is none of these or not "
                    "as published); ranges were widened, go slowly",
                    layer, per_cent(chances.back())));
  if (belief.prior().hypotheses.size() < 2) return;
  for (std::size_t i = 0; i + 1 < chances.size(); ++i)
    lines.push_back(
        fmt::format("{}: {} that it is {}", layer, per_cent(chances[i]), belief.prior().hypotheses[i].what));
  lines.push_back(fmt::format("{}: {} that it is none of these, or not as published", layer, per_cent(chances.back())));
}

}  // namespace

std::vector<std::string> describe_learning(const LayerBelief& belief, const std::string& layer,
                                           const std::vector<int>& tests) {
  if (belief.seen().empty()) return {fmt::format("{}: no test has spoken of it yet", layer)};
  LearningSettings settings;
  settings.particles = belief.particles().size();
  const LayerBelief before(belief.prior(), belief.curve(), settings);
  std::vector<std::string> lines;
  say_figures(belief, before, layer, lines);
  say_hypotheses(belief, layer, lines);
  // Never an advice to repeat: the reading may be a harm, and a surprise is no proof of a mistake.
  for (std::size_t i = 0; i < belief.predicted().size(); ++i)
    if (belief.predicted()[i] < surprising)
      lines.push_back(
          fmt::format("{}: what test {} says of it was hardly to be expected (chance {}); it counts as read: look at "
                      "that spot again before the next swab",
                      layer, tests.at(i), per_cent(belief.predicted()[i])));
  lines.push_back(fmt::format("{}: {} of {} particles effective", layer,
                              static_cast<long>(std::lround(belief.effective_particles())), belief.particles().size()));
  return lines;
}

}  // namespace gentlest
