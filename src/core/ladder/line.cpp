#include "gentlest/ladder/line.hpp"

#include "core/search/bottles.hpp"

#include "gentlest/catalogue/statements.hpp"
#include "gentlest/ladder/ladder.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>
#include <string>
#include <tuple>

namespace gentlest {

namespace {

// Of effect given up: within it hazards decide.
double much_the_same(const LadderGoal& goal) {
  return goal.prefer_healthier ? 0.02 : 0.01;
}
constexpr int quarters_of_a_stock = 4;

// One mixture on the way along two stocks.
struct Share {
  int percent = 0;
  StockMixture made;
  Hansen point;
  Verdict verdict;
};

std::vector<double> distances(const SearchTask& task, const Hansen& point) {
  std::vector<double> REDs = {task.target.front().RED(point)};
  for (const ChanceField& kept : task.kept) REDs.push_back(kept.RED(point));
  return REDs;
}

bool any_grows(const std::vector<double>& now, const std::vector<double>& before) {
  constexpr double last_bits = 1e-9;
  for (std::size_t i = 0; i < now.size(); ++i)
    if (now[i] > before[i] + last_bits) return true;
  return false;
}

SearchTask cut_task(const SearchTask& task, int cuts) {
  SearchTask cut = task;
  cut.cuts = cuts;
  return cut;
}

// The way from the gentle stock as far as it rises, keeps within the limit and passes no layer. `cut` is the task with
// the cuts that the stocks need.
std::vector<Share> way_along(const SearchTask& cut, const Stocks& stocks, double risk_limit, bool ask_allowed) {
  std::vector<Share> way;
  std::vector<double> before;
  for (int percent = 0; percent <= 100; percent += cut.step_percent) {
    const StockMixture made = stock_mixture(cut, stocks, percent);
    const bool fits = made.composition.parts <= cut.parts && keeps_largest_shares(cut, made.composition);
    if (!fits && way.empty()) continue;
    if (!fits) break;
    const Hansen point = point_of(cut, made.composition);
    const Verdict verdict = judge(cut, point);
    if (verdict.risk > risk_limit) break;
    if (!way.empty() && (verdict.effect <= way.back().verdict.effect || verdict.risk < way.back().verdict.risk)) break;
    const std::vector<double> now = distances(cut, point);
    if (!way.empty() && any_grows(now, before)) break;
    if (ask_allowed && cut.allowed && !cut.allowed(cut, made.composition)) {
      if (way.empty()) continue;
      break;
    }
    way.push_back({percent, made, point, verdict});
    before = now;
  }
  return way;
}

std::vector<Verdict> verdicts_of(const std::vector<Share>& way) {
  std::vector<Verdict> verdicts;
  for (const Share& share : way) verdicts.push_back(share.verdict);
  return verdicts;
}

// Every so many shares of the way, as many as there may be rungs.
std::vector<Share> every(const std::vector<Share>& way, std::size_t stride, int rungs) {
  std::vector<Share> picked;
  for (std::size_t i = 0; i < way.size() && static_cast<int>(picked.size()) < std::max(rungs, 2); i += stride)
    picked.push_back(way[i]);
  return picked;
}

struct Search {
  const SearchTask& task;
  const std::vector<Candidate>& frontier;
  const LadderGoal& goal;

  double given_up(const std::vector<Share>& way) const {
    return effect_given_up(frontier, verdicts_of(way), goal.risk_limit);
  }
};

// The end of the way and every so many shares before it, with the beginning; nothing where these are too many rungs.
std::vector<Share> every_from_the_end(const std::vector<Share>& way, std::size_t stride, int rungs) {
  std::vector<Share> picked;
  for (std::size_t i = way.size() - 1; i > 0; i = i > stride ? i - stride : 0) picked.push_back(way[i]);
  picked.push_back(way.front());
  std::reverse(picked.begin(), picked.end());
  if (static_cast<int>(picked.size()) > std::max(rungs, 2)) picked.clear();
  return picked;
}

struct Steps {
  std::size_t stride = 0;
  std::vector<Share> rungs;
  bool works = false;
  double gap = 0;  // of the rungs alone
};

// The stride whose rungs work where one does, and of those the one whose rungs alone give up least.
template <class Pick>
Steps best_steps(const Search& search, const std::vector<Share>& way, Pick&& pick) {
  Steps best;
  for (std::size_t stride = 1; stride < way.size(); ++stride) {
    Steps steps{stride, pick(way, stride, search.goal.rungs)};
    if (steps.rungs.empty()) continue;
    steps.works = steps.rungs.back().verdict.effect >= search.goal.wanted_effect;
    steps.gap = search.given_up(steps.rungs);
    constexpr double tie = 1e-12;
    if (best.stride > 0 && (steps.works != best.works ? !steps.works : steps.gap >= best.gap - tie)) continue;
    best = std::move(steps);
  }
  return best;
}

// Even steps from the beginning. Where only few of them would be left, for the sake of a last rung that works, all but
// the first are even: nobody is sent from nothing to the strongest mixture at once.
Steps steps_along(const Search& search, const std::vector<Share>& way) {
  constexpr std::size_t few = 4;
  Steps even = best_steps(search, way, every);
  if (even.rungs.size() >= few) return even;
  Steps other = best_steps(search, way, every_from_the_end);
  return other.works >= even.works && other.rungs.size() > even.rungs.size() ? other : even;
}

std::optional<double> risk_given_up(const Search& search, const std::vector<LineRung>& rungs) {
  const auto works = [&](const auto& one) { return one.verdict.effect >= search.goal.wanted_effect; };
  const auto rung = std::find_if(rungs.begin(), rungs.end(), works);
  if (rung == rungs.end()) return std::nullopt;
  for (const Candidate& member : search.frontier)
    if (member.verdict.effect >= rung->verdict.effect) return rounded_chance(rung->verdict.risk - member.verdict.risk);
  return std::nullopt;
}

std::optional<StockLine> line_along(const Search& search, const SearchTask& cut, const Stocks& stocks) {
  std::vector<Share> way = way_along(cut, stocks, search.goal.risk_limit, true);
  const Steps steps = steps_along(search, way);
  if (steps.stride == 0) return std::nullopt;
  StockLine line;
  line.stocks = stocks;
  line.step_percent = static_cast<int>(steps.stride) * cut.step_percent;
  for (const Share& share : steps.rungs)
    line.rungs.push_back({share.percent, mixture_of(cut, share.made.composition), share.point, share.verdict});
  way.erase(std::find_if(way.begin(), way.end(),
                         [&](const Share& share) { return share.percent > line.rungs.back().percent; }),
            way.end());
  line.works = line.rungs.back().verdict.effect >= search.goal.wanted_effect;
  line.effect_given_up = search.given_up(way);
  line.risk_given_up = risk_given_up(search, line.rungs);
  return line;
}

// ---- Which stocks

double polarity(const Liquid& liquid) {
  return std::hypot(liquid.hansen.dP, liquid.hansen.dH);
}

// Saturated: an aromatic cut stands in the same family, but is more polar than this.
bool is_gentle(const Liquid& liquid) {
  constexpr double hardly_polar = 1;  // MPa^0.5
  return is_hydrocarbon_or_cut(*liquid.solvent) && polarity(liquid) < hardly_polar;
}

std::vector<std::uint16_t> gentle_stocks(const SearchTask& task) {
  std::vector<std::uint16_t> gentle;
  std::size_t least = 0;
  for (std::size_t i = 0; i < task.shelf.size(); ++i) {
    if (is_gentle(task.shelf[i])) gentle.push_back(static_cast<std::uint16_t>(i));
    if (polarity(task.shelf[i]) < polarity(task.shelf[least])) least = i;
  }
  if (gentle.empty()) gentle.push_back(static_cast<std::uint16_t>(least));
  return gentle;
}

const std::string& family_of(const SearchTask& task, const Stocks& stocks) {
  return task.shelf[stocks.active.front()].solvent->family;
}

std::vector<Stocks> pairs_of(const SearchTask& task) {
  std::vector<Stocks> pairs;
  for (const std::uint16_t gentle : gentle_stocks(task))
    for (std::uint16_t active = 0; active < task.shelf.size(); ++active)
      if (active != gentle) pairs.push_back({gentle, {active}, {quarters_of_a_stock}});
  return pairs;
}

std::vector<Stocks> triples_of(const SearchTask& task, std::uint16_t gentle) {
  std::vector<Stocks> triples;
  const auto count = static_cast<std::uint16_t>(task.shelf.size());
  for (std::uint16_t a = 0; a < count; ++a)
    for (auto b = static_cast<std::uint16_t>(a + 1); b < count; ++b) {
      if (a == gentle || b == gentle) continue;
      triples.push_back({gentle, {a, b}, {3, 1}});
      triples.push_back({gentle, {a, b}, {2, 2}});
      triples.push_back({gentle, {b, a}, {3, 1}});
    }
  return triples;
}

// A liquid without a record counts as worse than any.
struct Hazardous {
  std::vector<int> severities;  // for the person, worst bottle first: what all have in common hides no difference
  std::size_t statements = 0;   // of all
};
Hazardous hazards_of(const SearchTask& task, const Stocks& stocks) {
  constexpr std::size_t no_record = 1000;
  constexpr int worse_than_any = 6;
  Hazardous sum;
  const auto add = [&](std::uint16_t at) {
    const Solvent& solvent = *task.shelf[at].solvent;
    const std::vector<std::string> statements = known_statements(solvent);
    sum.severities.push_back(solvent.hazards ? severity_of_statements(statements) : worse_than_any);
    sum.statements += solvent.hazards ? statements.size() : no_record;
  };
  add(stocks.gentle);
  for (const std::uint16_t active : stocks.active) add(active);
  std::sort(sum.severities.rbegin(), sum.severities.rend());
  return sum;
}

// ---- The choice among them

using Fits = std::function<bool(double strongest_effect)>;

// All lines of these stocks that fit and give up no more than a hair beyond the best of them. To ask whether a mixture
// is allowed can take a millisecond, so each way is first measured as if all were, which never gives up more.
std::vector<StockLine> nearest_lines(const Search& search, const std::vector<Stocks>& all, const Fits& fits,
                                     double at_most) {
  struct Bound {
    double gap;
    const Stocks* stocks;
  };
  if (all.empty()) return {};
  const SearchTask cut = cut_task(search.task, all.front().active.size() > 1 ? quarters_of_a_stock : 1);
  std::vector<Bound> bounds;
  for (const Stocks& stocks : all) {
    if (cut.beat) cut.beat();
    const std::vector<Share> way = way_along(cut, stocks, search.goal.risk_limit, false);
    // Without a first share that is allowed a way begins later, where more of it may rise: no bound then.
    if (cut.allowed && (way.empty() || !cut.allowed(cut, way.front().made.composition)))
      bounds.push_back({0, &stocks});
    else if (way.size() > 1 && fits(way.back().verdict.effect))
      bounds.push_back({search.given_up(way), &stocks});
  }
  std::stable_sort(bounds.begin(), bounds.end(), [](const Bound& a, const Bound& b) { return a.gap < b.gap; });
  const double same = much_the_same(search.goal);
  std::vector<StockLine> lines;
  double best = at_most - same;
  for (const Bound& bound : bounds) {
    if (bound.gap > best + same) break;
    if (cut.beat) cut.beat();
    std::optional<StockLine> line = line_along(search, cut, *bound.stocks);
    if (!line || !fits(line->rungs.back().verdict.effect) || line->effect_given_up > best + same) continue;
    best = std::min(best, line->effect_given_up);
    lines.push_back(std::move(*line));
  }
  std::erase_if(lines, [&](const StockLine& line) { return line.effect_given_up > best + same; });
  return lines;
}

// Of lines that are much the same: fewer hazards, then the shelf's order.
StockLine choose(const Search& search, const std::vector<StockLine>& lines) {
  const auto key = [&](const StockLine& line) {
    const Hazardous hazards = hazards_of(search.task, line.stocks);
    const std::vector<int> severities = search.goal.prefer_healthier ? hazards.severities : std::vector<int>();
    return std::make_tuple(severities, hazards.statements, line.stocks.gentle, line.stocks.active,
                           line.stocks.quarters);
  };
  assert(!lines.empty());
  return *std::min_element(lines.begin(), lines.end(),
                           [&](const StockLine& a, const StockLine& b) { return key(a) < key(b); });
}

using Families = std::map<std::string, std::vector<Stocks>>;

Families by_family(const SearchTask& task, const std::vector<Stocks>& all) {
  Families families;
  for (const Stocks& stocks : all) families[family_of(task, stocks)].push_back(stocks);
  return families;
}

std::optional<StockLine> best_line(const Search& search, const std::vector<Stocks>& all, const Fits& fits) {
  const std::vector<StockLine> near = nearest_lines(search, all, fits, 1);
  if (near.empty()) return std::nullopt;
  return choose(search, near);
}

// The best of these with the gentle stock that is open already, else with any.
std::optional<StockLine> fellow_line(const Search& search, const std::vector<Stocks>& family, std::uint16_t gentle,
                                     const Fits& fits) {
  std::vector<Stocks> same;
  for (const Stocks& stocks : family)
    if (stocks.gentle == gentle) same.push_back(stocks);
  std::optional<StockLine> line = best_line(search, same, fits);
  return line ? line : best_line(search, family, fits);
}

std::optional<StockLine> three_bottles(const Search& search, const std::optional<StockLine>& pair, const Fits& fits) {
  if (search.task.parts < 3 || search.goal.bottles < 3) return std::nullopt;
  std::vector<Stocks> triples;
  const std::vector<std::uint16_t> gentle =
      pair ? std::vector<std::uint16_t>{pair->stocks.gentle} : gentle_stocks(search.task);
  for (const std::uint16_t one : gentle)
    for (Stocks& stocks : triples_of(search.task, one)) triples.push_back(std::move(stocks));
  std::vector<StockLine> lines =
      nearest_lines(search, triples, fits, pair ? pair->effect_given_up - worth_a_third_bottle : 1);
  std::erase_if(lines, [&](const StockLine& line) {
    return pair && line.effect_given_up >= pair->effect_given_up - worth_a_third_bottle;
  });
  if (lines.empty()) return std::nullopt;
  StockLine line = choose(search, lines);
  line.reason = LineReason::third_bottle;
  return line;
}

std::vector<StockLine> lines_that(const Search& search, const Fits& fits) {
  const SearchTask& task = search.task;
  const std::vector<Stocks> pairs = pairs_of(task);
  const std::optional<StockLine> pair = best_line(search, pairs, fits);
  std::optional<StockLine> first = three_bottles(search, pair, fits);
  if (!first) first = pair;
  if (!first) return {};
  std::vector<StockLine> others;
  for (const auto& [family, members] : by_family(task, pairs)) {
    if (family == family_of(task, first->stocks)) continue;
    std::optional<StockLine> line = fellow_line(search, members, first->stocks.gentle, fits);
    if (!line) continue;
    line->reason = LineReason::other_family;
    others.push_back(std::move(*line));
  }
  std::stable_sort(others.begin(), others.end(),
                   [](const StockLine& a, const StockLine& b) { return a.effect_given_up < b.effect_given_up; });
  others.insert(others.begin(), std::move(*first));
  const auto most = static_cast<std::size_t>(search.goal.lines);
  if (others.size() > most) others.erase(others.begin() + search.goal.lines, others.end());
  return others;
}

}  // namespace

StockMixture stock_mixture(const SearchTask& task, const Stocks& stocks, int percent) {
  const int cuts = stocks.active.size() > 1 ? quarters_of_a_stock : 1;
  const int steps = percent / task.step_percent;
  std::vector<std::pair<std::uint16_t, int>> shares = {{stocks.gentle, (100 / task.step_percent - steps) * cuts}};
  for (std::size_t i = 0; i < stocks.active.size(); ++i)
    shares.push_back({stocks.active[i], steps * stocks.quarters[i] * cuts / quarters_of_a_stock});
  std::sort(shares.begin(), shares.end());
  StockMixture made;
  made.cuts = cuts;
  for (const auto& [liquid, share] : shares) {
    if (share == 0) continue;
    const auto at = static_cast<std::size_t>(made.composition.parts++);
    made.composition.liquid[at] = liquid;
    made.composition.share[at] = static_cast<std::uint16_t>(share);
  }
  return made;
}

std::vector<StockLine> design_lines(const SearchTask& task, const std::vector<Candidate>& frontier,
                                    const LadderGoal& goal) {
  if (goal.lines < 1 || goal.bottles < 2 || task.parts < 2 || task.shelf.size() < 2) return {};
  const Search search{task, frontier, goal};
  const auto reaches = [](double wanted) -> Fits { return [wanted](double effect) { return effect >= wanted; }; };
  std::vector<StockLine> lines = lines_that(search, reaches(goal.wanted_effect));
  return lines.empty() ? lines_that(search, reaches(goal.wanted_effect / 2)) : lines;
}

std::vector<LineRung> finer_steps(const SearchTask& task, const StockLine& line, const LineRung& weaker,
                                  const LineRung& stronger, int count) {
  SearchTask fine = task;
  fine.step_percent = 1;
  fine.cuts = stock_mixture(fine, line.stocks, 0).cuts;
  std::vector<LineRung> steps;
  const int between = stronger.percent - weaker.percent;
  for (int i = 1; i <= count; ++i) {
    const int percent = weaker.percent + static_cast<int>(std::lround(static_cast<double>(between) * i / (count + 1)));
    if (percent <= (steps.empty() ? weaker.percent : steps.back().percent) || percent >= stronger.percent) continue;
    const Composition composition = stock_mixture(fine, line.stocks, percent).composition;
    const Hansen point = point_of(fine, composition);
    const Verdict verdict = judge(fine, point);
    if (verdict.effect <= weaker.verdict.effect || verdict.effect >= stronger.verdict.effect ||
        verdict.risk > stronger.verdict.risk || !is_allowed(fine, composition))
      continue;
    steps.push_back({percent, mixture_of(fine, composition), point, verdict});
  }
  return steps;
}

void prefer_lines_of(std::vector<StockLine>& lines, std::size_t bottles) {
  const auto is_of_fewer = [&](const StockLine& line) { return 1 + line.stocks.active.size() < bottles; };
  if (!std::all_of(lines.begin(), lines.end(), is_of_fewer))
    lines.erase(std::remove_if(lines.begin(), lines.end(), is_of_fewer), lines.end());
}

}  // namespace gentlest
