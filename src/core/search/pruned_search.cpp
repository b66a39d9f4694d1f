// The complete search: products of clusters of liquids are ruled out while they lie in space that the frontier found so
// far beats; what remains is judged one by one with the very function of the plain search.
#include "core/search/pruned_search.hpp"

#include "core/search/living_space.hpp"
#include "core/search/shelf_tree.hpp"
#include "core/search/staircase.hpp"
#include "core/search/watch.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <deque>
#include <numeric>
#include <utility>

namespace gentlest {

namespace {

// Shares in grid steps, falling; liquids are put to them in every way.
struct Pattern {
  std::array<int, most_parts> share{};
  std::size_t parts = 0;
};

// For each part the cluster that its liquid comes from.
using Product = std::array<std::uint32_t, most_parts>;

std::vector<Pattern> patterns_of(std::size_t parts, int steps) {
  std::vector<Pattern> patterns;
  Pattern pattern;
  pattern.parts = parts;
  const auto fill = [&](const auto& self, std::size_t at, int left, int most) -> void {
    if (at + 1 == parts) {
      if (left > most) return;
      pattern.share[at] = left;
      patterns.push_back(pattern);
      return;
    }
    const int after = static_cast<int>(parts - at - 1);
    for (int share = std::min(most, left - after); share * (after + 1) >= left; --share) {
      pattern.share[at] = share;
      self(self, at + 1, left - share, share);
    }
  };
  if (static_cast<int>(parts) <= steps) fill(fill, 0, steps, steps);
  return patterns;
}

// What all tasks of one round share and none of them changes.
struct Round {
  const SearchTask& task;
  const SearchWatch& watch;
  const ShelfTree& tree;
  const LivingSpace& space;
  const Staircase& staircase;
  int steps;
};

// One task of a round: walks through products of clusters and hands on what the staircase does not beat.
class Walk {
 public:
  explicit Walk(const Round& round, Visitor found = {}) : round_(round), found_(std::move(found)) {}

  void visit(const Pattern& pattern, const Product& product);

  /// The product's halves along its widest part; nothing when it is ruled out, itself when it is small.
  std::vector<Product> split(const Pattern& pattern, const Product& product) const;

 private:
  bool may_live(const Pattern& pattern, const Product& product) const;
  std::size_t widest(const Pattern& pattern, const Product& product) const;
  void enumerate(const Pattern& pattern, const Product& product, std::size_t part, const CellPoint& sum);
  void judge_one(const Pattern& pattern);
  void count_work(std::size_t pieces);
  double weight(const Pattern& pattern, std::size_t part) const {
    return static_cast<double>(pattern.share[part]) / round_.steps;
  }

  const Round& round_;
  std::array<std::uint32_t, most_parts> chosen_{};  // in tree order
  std::size_t worked_ = 0;                          // products and mixtures looked at since the last beat
  Visitor found_;
};

// Parts of equal share are interchangeable: only rising tree order counts.
bool has_rising_choice(const Pattern& pattern, const Product& product, const ShelfTree& tree) {
  for (std::size_t i = 1; i < pattern.parts; ++i) {
    if (pattern.share[i] != pattern.share[i - 1]) continue;
    if (tree.nodes[product[i - 1]].begin + 1 >= tree.nodes[product[i]].end) return false;
  }
  return true;
}

bool Walk::may_live(const Pattern& pattern, const Product& product) const {
  if (!has_rising_choice(pattern, product, round_.tree)) return false;
  CellPoint low{};
  CellPoint high{};
  for (std::size_t i = 0; i < pattern.parts; ++i) {
    const ShelfTree::Node& node = round_.tree.nodes[product[i]];
    if (node.most_steps < pattern.share[i]) return false;
    const double w = weight(pattern, i);
    for (std::size_t axis = 0; axis < 3; ++axis) {
      low[axis] += w * node.low[axis];
      high[axis] += w * node.high[axis];
    }
  }
  return round_.space.any_lives(low, high);
}

// The part whose cluster spreads the product most; pattern.parts when the product is as small as the space can tell.
std::size_t Walk::widest(const Pattern& pattern, const Product& product) const {
  constexpr double small = 0.5;  // of a cell
  std::size_t part = pattern.parts;
  double most = small;
  for (std::size_t i = 0; i < pattern.parts; ++i) {
    const ShelfTree::Node& node = round_.tree.nodes[product[i]];
    const double extent = node.extent * weight(pattern, i);
    if (node.children == 0 || extent <= most) continue;
    most = extent;
    part = i;
  }
  return part;
}

std::vector<Product> Walk::split(const Pattern& pattern, const Product& product) const {
  if (!may_live(pattern, product)) return {};
  const std::size_t part = widest(pattern, product);
  if (part == pattern.parts) return {product};
  std::vector<Product> halves(2, product);
  halves[0][part] = round_.tree.nodes[product[part]].children;
  halves[1][part] = halves[0][part] + 1;
  return halves;
}

// Some 0.1 to 5 ms of work lie between two beats.
void Walk::count_work(std::size_t pieces) {
  constexpr std::size_t between_beats = 4096;
  worked_ += pieces;
  if (worked_ < between_beats) return;
  worked_ = 0;
  if (round_.watch.beat) round_.watch.beat();
}

void Walk::visit(const Pattern& pattern, const Product& product) {
  count_work(1);
  if (!may_live(pattern, product)) return;
  const std::size_t part = widest(pattern, product);
  if (part == pattern.parts) return enumerate(pattern, product, 0, {});
  Product half = product;
  half[part] = round_.tree.nodes[product[part]].children;
  visit(pattern, half);
  ++half[part];
  visit(pattern, half);
}

void Walk::enumerate(const Pattern& pattern, const Product& product, std::size_t part, const CellPoint& sum) {
  const ShelfTree& tree = round_.tree;
  const ShelfTree::Node& node = tree.nodes[product[part]];
  const double w = weight(pattern, part);
  std::uint32_t first = node.begin;
  if (part > 0 && pattern.share[part] == pattern.share[part - 1]) first = std::max(first, chosen_[part - 1] + 1);
  count_work(1 + (node.end - node.begin));
  for (std::uint32_t liquid = first; liquid < node.end; ++liquid) {
    if (tree.most_steps[liquid] < pattern.share[part]) continue;
    if (std::find(chosen_.begin(), chosen_.begin() + part, liquid) != chosen_.begin() + part) continue;
    CellPoint point = sum;
    for (std::size_t axis = 0; axis < 3; ++axis) point[axis] += w * tree.points[liquid][axis];
    chosen_[part] = liquid;
    if (part + 1 < pattern.parts)
      enumerate(pattern, product, part + 1, point);
    else if (round_.space.lives(point))
      judge_one(pattern);
  }
}

void Walk::judge_one(const Pattern& pattern) {
  std::array<std::pair<std::uint16_t, std::uint16_t>, most_parts> parts{};
  for (std::size_t i = 0; i < pattern.parts; ++i)
    parts[i] = {round_.tree.order[chosen_[i]], static_cast<std::uint16_t>(pattern.share[i])};
  std::sort(parts.begin(), parts.begin() + static_cast<std::ptrdiff_t>(pattern.parts));
  Composition composition;
  composition.parts = static_cast<int>(pattern.parts);
  for (std::size_t i = 0; i < pattern.parts; ++i) {
    composition.liquid[i] = parts[i].first;
    composition.share[i] = parts[i].second;
  }
  const Verdict verdict = judge(round_.task, point_of(round_.task, composition));
  if (!round_.staircase.beats(verdict)) found_(composition, verdict);
}

// Collects candidates and sifts them whenever they have doubled, by what is allowed as well.
class Sieve {
 public:
  explicit Sieve(const MayStay& may_stay) : may_stay_(may_stay) {}
  void add(const Composition& composition, const Verdict& verdict) {
    found_.push_back({composition, verdict});
    if (found_.size() < plenty_) return;
    found_ = sift_frontier(std::move(found_), may_stay_);
    plenty_ = std::max(plenty_, 2 * found_.size());
  }
  const std::vector<Candidate>& found() const { return found_; }

 private:
  const MayStay& may_stay_;
  std::vector<Candidate> found_;
  std::size_t plenty_ = std::size_t{1} << 16;
};

struct Job {
  Pattern pattern;
  Product product;
};

// Enough products to keep several threads busy, in an order that mixes easy and hard ones.
std::vector<Job> cut_into_jobs(const Round& round, const std::vector<Pattern>& patterns) {
  constexpr std::size_t enough = 256;
  const Walk walk(round);
  std::vector<Job> jobs;
  for (const Pattern& pattern : patterns) jobs.push_back({pattern, Product{}});
  for (int depth = 0; depth < 8 && jobs.size() < enough; ++depth) {
    std::vector<Job> finer;
    for (const Job& job : jobs)
      for (const Product& product : walk.split(job.pattern, job.product)) finer.push_back({job.pattern, product});
    jobs = std::move(finer);
  }
  return jobs;
}

void walk_round(const Round& round, const std::vector<Pattern>& patterns,
                const std::function<Visitor()>& make_visitor) {
  constexpr std::size_t task_count = 32;
  const std::vector<Job> jobs = cut_into_jobs(round, patterns);
  std::vector<std::function<void()>> tasks;
  for (std::size_t first = 0; first < std::min(task_count, jobs.size()); ++first)
    tasks.push_back([&round, &jobs, first, visitor = make_visitor()] {
      Walk walk(round, visitor);
      for (std::size_t i = first; i < jobs.size(); i += task_count) walk.visit(jobs[i].pattern, jobs[i].product);
    });
  if (round.watch.run)
    round.watch.run(tasks);
  else
    for (const auto& task : tasks) task();
}

void improve(std::vector<Candidate>& frontier, const Round& round, const std::vector<Pattern>& patterns) {
  MayStay may_stay;
  if (round.watch.allowed)
    may_stay = [&round](const Composition& composition) { return round.watch.allowed(round.task, composition); };
  std::deque<Sieve> sieves;
  walk_round(round, patterns, [&]() -> Visitor {
    Sieve& sieve = sieves.emplace_back(may_stay);
    return [&sieve](const Composition& composition, const Verdict& verdict) { sieve.add(composition, verdict); };
  });
  for (const Sieve& sieve : sieves) frontier.insert(frontier.end(), sieve.found().begin(), sieve.found().end());
  frontier = sift_frontier(std::move(frontier), may_stay);
}

// Rounds of patterns: a coarse grid first, so that the frontier is good before the bulk comes.
std::vector<std::vector<Pattern>> rounds_of(std::size_t parts, int steps) {
  std::vector<std::vector<Pattern>> rounds(parts < 4 ? 2 : 4);
  std::size_t turn = 0;
  for (const Pattern& pattern : patterns_of(parts, steps)) {
    const bool coarse = parts > 2 && std::all_of(pattern.share.begin(), pattern.share.end(),
                                                 [&](int share) { return share * 10 % steps == 0; });
    rounds[coarse ? 0 : 1 + turn++ % (rounds.size() - 1)].push_back(pattern);
  }
  std::erase_if(rounds, [](const std::vector<Pattern>& round) { return round.empty(); });
  return rounds;
}

bool share_their_lattice(const SearchTask& task) {
  return std::all_of(task.kept.begin(), task.kept.end(),
                     [&](const ChanceField& kept) { return kept.lattice() == task.target.front().lattice(); });
}

}  // namespace

std::vector<Candidate> find_frontier_by_pruning(const SearchTask& task, const SearchProgress& progress) {
  assert(!task.shelf.empty() && share_their_lattice(task));
  const int steps = 100 / task.step_percent;
  Pulse pulse(progress, count_mixtures(task.shelf.size(), task.parts, steps));
  const SearchWatch watched = watch(task, progress ? std::function<void()>([&pulse] { pulse.beat(); }) : task.beat);
  LivingSpace space(task);
  const ShelfTree tree = make_shelf_tree(task, space);
  std::vector<Candidate> frontier;
  for (std::size_t parts = 1; parts <= static_cast<std::size_t>(task.parts); ++parts) {
    for (const std::vector<Pattern>& patterns : rounds_of(parts, steps)) {
      const Staircase staircase(frontier);
      if (parts > 1) space.shrink(staircase, static_cast<int>(parts) - 2, watched.run);
      improve(frontier, {task, watched, tree, space, staircase, steps}, patterns);
    }
    pulse.settle(count_mixtures(task.shelf.size(), static_cast<int>(parts), steps));
  }
  return frontier;
}

namespace {

// Below this many mixtures judging each is quicker than bounding the space.
bool pays_to_prune(const SearchTask& task) {
  constexpr std::uint64_t few = 300000;
  return share_their_lattice(task) && count_mixtures(task.shelf.size(), task.parts, 100 / task.step_percent) >= few;
}

// The frontier lowered by the tolerance, with a step behind the limit that beats everything there.
Staircase lowered(std::vector<Candidate> frontier, double tolerance, double risk_limit) {
  std::erase_if(frontier, [&](const Candidate& member) { return member.verdict.risk > risk_limit; });
  for (Candidate& member : frontier) member.verdict.effect -= tolerance;
  frontier.push_back({{}, {2, std::nextafter(risk_limit, 2), -1}});
  return Staircase(frontier);
}

}  // namespace

void visit_near_frontier(const SearchTask& task, const std::vector<Candidate>& frontier, double tolerance,
                         double risk_limit, const std::function<Visitor()>& make_visitor) {
  const Staircase staircase = lowered(frontier, tolerance, risk_limit);
  if (!pays_to_prune(task)) {
    const Visitor visitor = make_visitor();
    std::vector<std::uint16_t> everything(task.shelf.size());
    std::iota(everything.begin(), everything.end(), std::uint16_t{0});
    for_each_composition(everything, task.parts, 100 / task.step_percent, [&](const Composition& composition) {
      const Verdict verdict = judge(task, point_of(task, composition));
      if (!staircase.beats(verdict) && keeps_largest_shares(task, composition)) visitor(composition, verdict);
    });
    return;
  }
  const int steps = 100 / task.step_percent;
  const SearchWatch watched = watch(task, task.beat);
  LivingSpace space(task);
  space.shrink(staircase, std::max(task.parts - 2, 0), watched.run);
  const ShelfTree tree = make_shelf_tree(task, space);
  std::vector<Pattern> patterns;
  for (std::size_t parts = 1; parts <= static_cast<std::size_t>(task.parts); ++parts)
    for (const Pattern& pattern : patterns_of(parts, steps)) patterns.push_back(pattern);
  walk_round({task, watched, tree, space, staircase, steps}, patterns, make_visitor);
}

std::vector<Candidate> find_frontier(const SearchTask& task, const SearchProgress& progress) {
  if (!pays_to_prune(task)) return find_frontier_by_visiting(task, progress);
  return find_frontier_by_pruning(task, progress);
}

}  // namespace gentlest
