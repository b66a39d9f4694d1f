#include "gentlest/search/search.hpp"

#include "core/base/sums.hpp"
#include "core/search/staircase.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numeric>

namespace gentlest {

double rounded_chance(double chance) {
  return std::round(chance * 1e9) / 1e9;
}

HansenBox bounding_box(const std::vector<Liquid>& shelf) {
  assert(!shelf.empty());
  HansenBox box{shelf.front().hansen, shelf.front().hansen};
  for (const Liquid& liquid : shelf) {
    box.low = {std::min(box.low.dD, liquid.hansen.dD), std::min(box.low.dP, liquid.hansen.dP),
               std::min(box.low.dH, liquid.hansen.dH)};
    box.high = {std::max(box.high.dD, liquid.hansen.dD), std::max(box.high.dP, liquid.hansen.dP),
                std::max(box.high.dH, liquid.hansen.dH)};
  }
  return box;
}

Verdict judge(const SearchTask& task, const Hansen& point) {
  assert(task.target.size() == 1);
  const ChanceField& target = task.target.front();
  const FieldPlace place = place_on(target.lattice(), point);
  Verdict verdict;
  verdict.effect = rounded_chance(target.at(place));
  for (std::size_t i = 0; i < task.kept.size(); ++i) {
    const ChanceField& kept = task.kept[i];
    const double chance = rounded_chance(kept.lattice() == target.lattice() ? kept.at(place) : kept(point));
    if (verdict.riskiest >= 0 && chance <= verdict.risk) continue;
    verdict.risk = chance;
    verdict.riskiest = static_cast<int>(i);
  }
  return verdict;
}

Hansen point_of(const SearchTask& task, const Composition& composition) {
  Hansen sum;
  for (std::size_t i = 0; i < static_cast<std::size_t>(composition.parts); ++i) {
    const Hansen& liquid = task.shelf[composition.liquid[i]].hansen;
    const double share = composition.share[i];
    sum.dD += share * liquid.dD;
    sum.dP += share * liquid.dP;
    sum.dH += share * liquid.dH;
  }
  const double steps = steps_of(task);
  return {sum.dD / steps, sum.dP / steps, sum.dH / steps};
}

bool keeps_largest_shares(const SearchTask& task, const Composition& composition) {
  for (std::size_t i = 0; !task.most_percent.empty() && i < static_cast<std::size_t>(composition.parts); ++i)
    if (composition.share[i] * task.step_percent > task.most_percent[composition.liquid[i]] * task.cuts) return false;
  return true;
}

bool is_allowed(const SearchTask& task, const Composition& composition) {
  return keeps_largest_shares(task, composition) && (!task.allowed || task.allowed(task, composition));
}

Mixture mixture_of(const SearchTask& task, const Composition& composition) {
  assert(add_up_to(composition.share, steps_of(task)));
  std::vector<Part> parts;
  for (std::size_t i = 0; i < static_cast<std::size_t>(composition.parts); ++i)
    parts.push_back(
        {task.shelf[composition.liquid[i]], composition.share[i] * task.step_percent / (100.0 * task.cuts)});
  return Mixture(std::move(parts));
}

std::uint64_t count_mixtures(std::size_t liquids, int parts, int steps) {
  // Supports of p liquids times ways to cut `steps` into p positive shares.
  const auto choose = [](std::uint64_t n, std::uint64_t k) {
    if (k > n) return std::uint64_t{0};
    std::uint64_t product = 1;
    for (std::uint64_t i = 1; i <= k; ++i) product = product * (n - k + i) / i;
    return product;
  };
  std::uint64_t sum = 0;
  for (int p = 1; p <= parts; ++p)
    sum += choose(liquids, static_cast<std::uint64_t>(p)) *
           choose(static_cast<std::uint64_t>(steps - 1), static_cast<std::uint64_t>(p - 1));
  return sum;
}

namespace {

using Visit = std::function<void(const Composition&)>;

// Cuts `left` steps into positive shares for the parts from `part` on.
void cut_shares(Composition& composition, int part, int left, const Visit& visit) {
  const auto at = static_cast<std::size_t>(part);
  const int parts_after = composition.parts - part - 1;
  if (parts_after == 0) {
    composition.share[at] = static_cast<std::uint16_t>(left);
    visit(composition);
    return;
  }
  for (int share = 1; share <= left - parts_after; ++share) {
    composition.share[at] = static_cast<std::uint16_t>(share);
    cut_shares(composition, part + 1, left - share, visit);
  }
}

void choose_liquids(const std::vector<std::uint16_t>& liquids, std::size_t from, Composition& composition, int part,
                    int steps, const Visit& visit) {
  if (part == composition.parts) {
    cut_shares(composition, 0, steps, visit);
    return;
  }
  for (std::size_t i = from; i < liquids.size(); ++i) {
    composition.liquid[static_cast<std::size_t>(part)] = liquids[i];
    choose_liquids(liquids, i + 1, composition, part + 1, steps, visit);
  }
}

}  // namespace

void for_each_composition(const std::vector<std::uint16_t>& liquids, int parts, int steps, const Visit& visit) {
  for (int p = 1; p <= std::min(parts, steps); ++p) {
    Composition composition;
    composition.parts = p;
    choose_liquids(liquids, 0, composition, 0, steps, visit);
  }
}

bool beats(const Verdict& a, const Verdict& b) {
  return a.effect >= b.effect && a.risk <= b.risk && (a.effect > b.effect || a.risk < b.risk);
}

namespace {

// Candidates by rising risk and rising effect. Visiting order (fewer parts first, then shelf order, which is label
// order) decides between equals: the first one stays.
class FrontierKeeper {
 public:
  bool would_keep(const Verdict& verdict) const {
    const auto after = first_riskier(verdict.risk);
    return after == kept_.begin() || std::prev(after)->verdict.effect < verdict.effect;
  }

  void offer(const Composition& composition, const Verdict& verdict) {
    if (!would_keep(verdict)) return;
    const auto after = first_riskier(verdict.risk);
    auto first = after;
    if (first != kept_.begin() && std::prev(first)->verdict.risk == verdict.risk) --first;
    auto last = first;
    while (last != kept_.end() && last->verdict.effect <= verdict.effect) ++last;
    const auto place = kept_.erase(first, last);
    kept_.insert(place, {composition, verdict});
  }

  std::vector<Candidate> take() { return std::move(kept_); }

 private:
  std::vector<Candidate>::const_iterator first_riskier(double risk) const {
    return std::upper_bound(kept_.begin(), kept_.end(), risk,
                            [](double value, const Candidate& candidate) { return value < candidate.verdict.risk; });
  }

  std::vector<Candidate> kept_;
};

}  // namespace

namespace {

// So many mixtures may be held at once; above that each is asked about as it comes.
constexpr std::uint64_t most_gathered = 1u << 18;

std::vector<Candidate> frontier_of(const SearchTask& task, const std::vector<std::uint16_t>& liquids,
                                   const SearchProgress& progress, bool ask_allowed) {
  assert(task.parts >= 1 && task.parts <= static_cast<int>(most_parts));
  assert(task.step_percent >= 1 && 100 % task.step_percent == 0 && task.cuts == 1);
  const int steps = 100 / task.step_percent;
  const std::uint64_t all = count_mixtures(liquids.size(), task.parts, steps);
  const bool gather = ask_allowed && task.allowed && all <= most_gathered;
  std::uint64_t done = 0;
  const auto may_stay = [&](const Composition& composition) {
    if (progress) progress(done, all);  // asking can take a millisecond
    return ask_allowed ? is_allowed(task, composition) : keeps_largest_shares(task, composition);
  };
  std::vector<Candidate> gathered;
  FrontierKeeper keeper;
  for_each_composition(liquids, task.parts, steps, [&](const Composition& composition) {
    if ((++done & 0xFFFFU) == 0 && progress) progress(done, all);
    const Verdict verdict = judge(task, point_of(task, composition));
    if (gather)
      gathered.push_back({composition, verdict});
    else if (keeper.would_keep(verdict) && may_stay(composition))
      keeper.offer(composition, verdict);
  });
  return gather ? sift_frontier(std::move(gathered), may_stay) : keeper.take();
}

}  // namespace

std::vector<Candidate> find_frontier_on(const SearchTask& task, const std::vector<std::uint16_t>& bottles,
                                        bool ask_allowed) {
  return frontier_of(task, bottles, {}, ask_allowed);
}

std::vector<Candidate> find_frontier_by_visiting(const SearchTask& task, const SearchProgress& progress,
                                                 const SearchWitness& witness) {
  std::vector<std::uint16_t> everything(task.shelf.size());
  std::iota(everything.begin(), everything.end(), std::uint16_t{0});
  if (witness)
    for_each_composition(everything, task.parts, 100 / task.step_percent, [&](const Composition& composition) {
      if (is_allowed(task, composition)) witness(composition, judge(task, point_of(task, composition)));
    });
  return frontier_of(task, everything, progress, true);
}

}  // namespace gentlest
