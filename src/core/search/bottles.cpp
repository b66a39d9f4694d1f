#include "core/search/bottles.hpp"

#include "core/search/pruned_search.hpp"

#include <algorithm>
#include <cmath>
#include <deque>
#include <numeric>
#include <unordered_map>

namespace gentlest {

namespace {

using Bottles = std::vector<std::uint16_t>;

constexpr double tie = 1e-12;

double level_of(std::size_t i, double risk_limit) {
  return risk_limit / static_cast<double>(risk_levels) * static_cast<double>(i + 1);
}

void raise(Profile& profile, const Verdict& verdict, double risk_limit) {
  for (std::size_t i = risk_levels; i-- > 0 && verdict.risk <= level_of(i, risk_limit);)
    profile[i] = std::max(profile[i], verdict.effect);
}

Profile profile_of(const std::vector<Candidate>& frontier, double risk_limit) {
  Profile profile{};
  for (const Candidate& member : frontier) raise(profile, member.verdict, risk_limit);
  return profile;
}

double mean_gap(const Profile& best, const Profile& profile) {
  double sum = 0;
  for (std::size_t i = 0; i < risk_levels; ++i) sum += best[i] - profile[i];
  return sum / static_cast<double>(risk_levels);
}

// What one search for bottles is about.
class Quest {
 public:
  Quest(const SearchTask& the_task, const std::vector<Candidate>& frontier, double limit)
      : task(the_task), risk_limit(limit), best(profile_of(frontier, limit)) {}

  const SearchTask& task;
  const double risk_limit;
  const Profile best;

  // Infinite where no mixture of these bottles stays within the limit, and where the gap is surely above `of_interest`:
  // whether a mixture is allowed can take a millisecond, so a set is first measured as if all were.
  double gap_of(const Bottles& bottles, double of_interest = std::numeric_limits<double>::infinity()) const {
    if (task.beat) task.beat();
    if (task.allowed && gap_of(find_frontier_on(task, bottles, false)) > of_interest)
      return std::numeric_limits<double>::infinity();
    return gap_of(find_frontier_on(task, bottles));
  }

 private:
  double gap_of(std::vector<Candidate> frontier) const {
    std::erase_if(frontier, [&](const Candidate& member) { return member.verdict.risk > risk_limit; });
    if (frontier.empty()) return std::numeric_limits<double>::infinity();
    return mean_gap(best, profile_of(frontier, risk_limit));
  }
};

bool is_better(double gap, const Bottles& bottles, const BottleChoice& than) {
  if (std::isinf(gap)) return false;
  if (std::isinf(than.gap) || gap < than.gap - tie) return true;
  return gap <= than.gap + tie && bottles < than.bottles;
}

template <class Visit>
void for_each_set(std::size_t count, std::size_t size, Visit&& visit) {
  Bottles chosen(size);
  std::iota(chosen.begin(), chosen.end(), std::uint16_t{0});
  while (true) {
    visit(chosen);
    std::size_t place = size;
    while (place > 0 && chosen[place - 1] == count - size + place - 1) --place;
    if (place == 0) return;
    ++chosen[place - 1];
    for (std::size_t i = place; i < size; ++i) chosen[i] = static_cast<std::uint16_t>(chosen[i - 1] + 1);
  }
}

// Adds the bottle that helps most, then exchanges single bottles while that helps: a good set to measure others by.
BottleChoice good_bottles(const Quest& quest, std::size_t size) {
  BottleChoice choice;
  const auto count = static_cast<std::uint16_t>(quest.task.shelf.size());
  const auto try_in_place_of = [&](std::size_t place) {
    const Bottles from = choice.bottles;
    for (std::uint16_t bottle = 0; bottle < count; ++bottle) {
      if (std::find(from.begin(), from.end(), bottle) != from.end()) continue;
      Bottles bottles = from;
      if (place < bottles.size()) bottles.erase(bottles.begin() + static_cast<std::ptrdiff_t>(place));
      bottles.insert(std::upper_bound(bottles.begin(), bottles.end(), bottle), bottle);
      const bool grows = choice.bottles.size() < bottles.size();
      const double gap = grows ? quest.gap_of(bottles) : quest.gap_of(bottles, choice.gap);
      if (gap < choice.gap - tie || grows) choice = {bottles, gap};
    }
  };
  while (choice.bottles.size() < size) try_in_place_of(choice.bottles.size());
  for (double before = 2; choice.gap < before - tie;) {
    before = choice.gap;
    for (std::size_t place = 0; place < size; ++place) try_in_place_of(place);
  }
  return choice;
}

// For each level how much a set of liquids gives up there, in 255ths of the tolerance, rounded down; 255: that or more.
using Lack = std::array<std::uint8_t, risk_levels>;

void lessen(Lack& lack, const Lack& other) {
  for (std::size_t i = 0; i < risk_levels; ++i) lack[i] = std::min(lack[i], other[i]);
}

std::uint32_t total(const Lack& lack) {
  return std::accumulate(lack.begin(), lack.end(), std::uint32_t{0});
}

std::uint64_t key_of(const std::uint16_t* liquids, std::size_t count) {
  std::uint64_t key = 0;
  for (std::size_t i = 0; i < count; ++i) key = key << 16 | static_cast<std::uint64_t>(liquids[i] + 1);
  return key;
}

using LackBySupport = std::unordered_map<std::uint64_t, Lack>;

// Lack of every set of liquids that holds a mixture near the frontier, as if all mixtures were allowed: a lower bound.
LackBySupport survey(const Quest& quest, const std::vector<Candidate>& frontier, double tolerance) {
  std::deque<LackBySupport> parts;
  const auto make_visitor = [&]() -> Visitor {
    LackBySupport& lacks = parts.emplace_back();
    return [&](const Composition& composition, const Verdict& verdict) {
      Lack lack;
      lack.fill(255);
      for (std::size_t i = risk_levels; i-- > 0 && verdict.risk <= level_of(i, quest.risk_limit);)
        lack[i] = static_cast<std::uint8_t>(std::clamp((quest.best[i] - verdict.effect) / tolerance, 0.0, 1.0) * 255);
      const auto count = static_cast<std::size_t>(composition.parts);
      const auto [at, is_new] = lacks.try_emplace(key_of(composition.liquid.data(), count), lack);
      if (!is_new) lessen(at->second, lack);
    };
  };
  visit_near_frontier(quest.task, frontier, tolerance, quest.risk_limit, make_visitor);
  LackBySupport all;
  std::uint64_t merged = 0;
  for (LackBySupport& part : parts) {
    for (const auto& [key, lack] : part) {
      if ((++merged & 0xFFFFU) == 0 && quest.task.beat) quest.task.beat();
      const auto [at, is_new] = all.try_emplace(key, lack);
      if (!is_new) lessen(at->second, lack);
    }
    part = {};
  }
  return all;
}

// Walks through all sets of bottles, each a smaller set and one bottle more, and keeps those whose lack stays within
// the budget.
class SetWalk {
 public:
  struct Found {
    std::uint32_t lack;
    Bottles bottles;
  };

  SetWalk(const Quest& quest, const LackBySupport& lacks, std::size_t size, std::uint32_t budget)
      : lacks_(lacks),
        beat_(quest.task.beat),
        count_(quest.task.shelf.size()),
        parts_(static_cast<std::size_t>(quest.task.parts)),
        size_(size),
        budget_(budget),
        pairs_(count_ * count_, nullptr) {
    for (const auto& [key, lack] : lacks_)
      if (key >> 16 != 0 && key >> 32 == 0) pairs_[((key >> 16) - 1) * count_ + ((key & 0xFFFF) - 1)] = &lack;
  }

  std::vector<Found> all() {
    Lack nothing;
    nothing.fill(255);
    extend(nothing, 0);
    std::sort(found_.begin(), found_.end(), [](const Found& a, const Found& b) {
      return a.lack != b.lack ? a.lack < b.lack : a.bottles < b.bottles;
    });
    return std::move(found_);
  }

 private:
  void extend(const Lack& lack, std::uint16_t from) {
    if (chosen_.size() == size_) {
      if ((++visited_ & 0xFFFFU) == 0 && beat_) beat_();
      const std::uint32_t sum = total(lack);
      if (sum <= budget_) found_.push_back({sum, chosen_});
      return;
    }
    const std::size_t left = size_ - chosen_.size();
    for (std::uint16_t bottle = from; bottle + left <= count_; ++bottle) {
      Lack with = lack;
      chosen_.push_back(bottle);
      add_supports(with, 0, 0, 0);
      extend(with, static_cast<std::uint16_t>(bottle + 1));
      chosen_.pop_back();
    }
  }

  // Supports that end in the bottle just added: some of the earlier ones (from `at` on), then that one.
  void add_supports(Lack& lack, std::size_t at, std::uint64_t key, std::size_t taken) {
    const std::uint64_t whole = key << 16 | static_cast<std::uint64_t>(chosen_.back() + 1);
    if (const Lack* found = find(whole, taken + 1)) lessen(lack, *found);
    if (taken + 1 == parts_) return;
    for (std::size_t i = at; i + 1 < chosen_.size(); ++i)
      add_supports(lack, i + 1, key << 16 | static_cast<std::uint64_t>(chosen_[i] + 1), taken + 1);
  }

  const Lack* find(std::uint64_t key, std::size_t parts) const {
    if (parts == 2) return pairs_[((key >> 16) - 1) * count_ + ((key & 0xFFFF) - 1)];
    const auto found = lacks_.find(key);
    return found == lacks_.end() ? nullptr : &found->second;
  }

  const LackBySupport& lacks_;
  const std::function<void()>& beat_;
  std::uint64_t visited_ = 0;
  std::size_t count_;
  std::size_t parts_;
  std::size_t size_;
  std::uint32_t budget_;
  std::vector<const Lack*> pairs_;
  Bottles chosen_;
  std::vector<Found> found_;
};

std::uint64_t count_sets(std::size_t count, std::size_t size) {
  double product = 1;
  for (std::size_t i = 1; i <= size; ++i) product *= static_cast<double>(count - size + i) / static_cast<double>(i);
  return static_cast<std::uint64_t>(std::min(product + 0.5, 1e18));
}

}  // namespace

double effect_given_up(const std::vector<Candidate>& frontier, const std::vector<Verdict>& walk, double risk_limit) {
  Profile profile{};
  for (const Verdict& verdict : walk) raise(profile, verdict, risk_limit);
  return mean_gap(profile_of(frontier, risk_limit), profile);
}

BottleChoice best_bottles_by_visiting(const SearchTask& task, const std::vector<Candidate>& frontier, double risk_limit,
                                      std::size_t size) {
  const Quest quest(task, frontier, risk_limit);
  BottleChoice choice;
  for_each_set(task.shelf.size(), size, [&](const Bottles& bottles) {
    const double gap = quest.gap_of(bottles, choice.gap + tie);
    if (is_better(gap, bottles, choice)) choice = {bottles, gap};
  });
  return choice;
}

BottleChoice these_bottles(const SearchTask& task, const std::vector<Candidate>& frontier, double risk_limit,
                           const std::vector<std::uint16_t>& bottles) {
  return {bottles, Quest(task, frontier, risk_limit).gap_of(bottles)};
}

BottleChoice best_bottles(const SearchTask& task, const std::vector<Candidate>& frontier, double risk_limit,
                          std::size_t size, double enough) {
  const int most = std::min(task.parts, static_cast<int>(size));
  const double cost = static_cast<double>(count_sets(task.shelf.size(), size)) *
                      static_cast<double>(count_mixtures(size, most, 100 / task.step_percent));
  constexpr double cheap = 3e5;  // mixtures to judge
  if (cost < cheap) {
    BottleChoice choice = best_bottles_by_visiting(task, frontier, risk_limit, size);
    return choice.gap <= enough ? choice : BottleChoice{};
  }
  return best_bottles_by_bounds(task, frontier, risk_limit, size, enough);
}

BottleChoice best_bottles_by_bounds(const SearchTask& task, const std::vector<Candidate>& frontier, double risk_limit,
                                    std::size_t size, double enough) {
  const Quest quest(task, frontier, risk_limit);
  BottleChoice choice = good_bottles(quest, size);
  if (count_sets(task.shelf.size(), size) > most_bottle_sets) return choice.gap <= enough ? choice : BottleChoice{};
  // A set with a smaller mean gap stays within twice the mean on more than half of the levels: only mixtures that near
  // to the frontier matter, and a level without one costs the whole tolerance.
  const double goal = std::min({choice.gap, enough, 1.0});
  if (goal < choice.gap) choice = {};
  const double tolerance = std::max(2 * goal, 1e-3);
  const auto budget =
      static_cast<std::uint32_t>(std::ceil((goal + tie) * static_cast<double>(risk_levels) / tolerance * 255));
  const LackBySupport lacks = survey(quest, frontier, tolerance);
  const double unit = tolerance / 255 / static_cast<double>(risk_levels);
  for (const SetWalk::Found& found : SetWalk(quest, lacks, size, budget).all()) {
    if (static_cast<double>(found.lack) * unit > choice.gap + tie) break;
    const double gap = quest.gap_of(found.bottles, choice.gap + tie);
    if (gap <= enough && is_better(gap, found.bottles, choice)) choice = {found.bottles, gap};
  }
  return choice;
}

}  // namespace gentlest
