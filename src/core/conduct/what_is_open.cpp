// What may come next, in the order in which a careful conservator would do it.
#include "core/conduct/parts.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>

namespace gentlest {

namespace {

constexpr double hair = 1e-6;

class Opener {
 public:
  Opener(const Plan& plan, const Conduct& conduct) : plan_(plan), conduct_(conduct) {
    is_edge_open_ = conduct.edge_tests_left > 0 && !conduct.edge_refuted_by;
  }

  std::vector<OpenTest> run() {
    if (conduct_.end) return {};
    if (const WorkingMixture* working = working_now(conduct_)) {
      after_success(*working);
      return std::move(open_);
    }
    for (std::size_t line = 0; line < plan_.lines.size(); ++line) climb(line);
    return std::move(open_);
  }

 private:
  // Where a swab is, as far as the rule of one rung goes.
  struct Spot {
    Place place;
    std::string passage, layer;
  };

  struct Climbed {
    double highest = 0;  // borne there without harm; 0: none yet
    double reach = 1;    // rungs above it that may be tried
    bool has_moved = false;
  };

  bool is_at(const SwabTest& test, const Spot& spot) const {
    if (test.place != spot.place) return false;
    if (spot.place == Place::edge || test.passage == spot.passage) return true;
    return test.is_passage_known && test.layers.size() == 1 && test.layers.front() == spot.layer;
  }

  Climbed climbed(std::size_t line, const Spot& spot) const {
    Climbed so_far;
    std::map<double, bool> borne;  // by height: it did nothing, each time
    for (const SwabTest& test : conduct_.tests) {
      if (!test.mixture || !left_untouched(test) || !is_at(test, spot)) continue;
      const std::optional<double> height = height_on(plan_, line, *test.mixture);
      if (!height) continue;
      so_far.has_moved = so_far.has_moved || test.moved;
      const auto [entry, is_new] = borne.try_emplace(*height, test.did_nothing);
      if (!is_new) entry->second = entry->second && test.did_nothing;
    }
    if (borne.empty()) return so_far;
    const auto highest = borne.rbegin();
    so_far.highest = highest->first;
    if (borne.size() > 1 && highest->second && std::next(highest)->second) so_far.reach = 2;
    return so_far;
  }

  std::optional<std::size_t> step_at(std::size_t line, double height) const {
    for (std::size_t i = 0; i < conduct_.steps.size(); ++i)
      if (conduct_.steps[i].line == line && std::abs(conduct_.steps[i].height - height) <= hair) return i;
    return std::nullopt;
  }

  bool is_closed(std::size_t step, const Spot& spot) const {
    return closure_of(conduct_, step, spot.place == Place::edge ? std::string() : spot.layer) != nullptr;
  }

  bool was_tried(std::size_t step, const Spot& spot) const {
    return std::any_of(conduct_.tests.begin(), conduct_.tests.end(), [&](const SwabTest& test) {
      return test.mixture && is_at(test, spot) && is_same_mixture(*test.mixture, conduct_.steps[step].mixture);
    });
  }

  // It did nothing at the edge, or something stronger of the same bottles did nothing there.
  bool has_passed_edge(std::size_t step) const {
    const PlanStep& one = conduct_.steps[step];
    return std::any_of(conduct_.tests.begin(), conduct_.tests.end(), [&](const SwabTest& test) {
      if (!test.mixture || test.place != Place::edge || !left_untouched(test)) return false;
      if (is_same_mixture(*test.mixture, one.mixture)) return true;
      const std::optional<double> height = height_on(plan_, one.line, *test.mixture);
      return height && *height > one.height && test.did_nothing;
    });
  }

  void offer(std::size_t step, const Spot& spot, Purpose purpose, Rule rule) {
    const bool is_new = std::none_of(open_.begin(), open_.end(), [&](const OpenTest& one) {
      return one.place == spot.place && one.passage == spot.passage &&
             is_same_mixture(one.mixture, conduct_.steps[step].mixture);
    });
    if (is_new)
      open_.push_back({step, conduct_.steps[step].mixture, spot.place,
                       spot.place == Place::edge ? std::string() : spot.passage, purpose, rule});
  }

  // At the edge first while there is one; on the picture what passed there.
  void offer_where_it_may_be(std::size_t step, const Spot& spot, Purpose purpose, Rule rule) {
    if (is_closed(step, spot)) return;
    if (spot.place == Place::picture && is_edge_open_ && !has_passed_edge(step)) {
      const Spot edge{Place::edge, {}, {}};
      if (!is_closed(step, edge) && is_within_reach(step, edge)) offer(step, edge, purpose, Rule::edge_first);
      return;
    }
    if (spot.place == Place::picture && purpose == Purpose::climb && is_edge_open_) {
      purpose = Purpose::from_edge;
      rule = Rule::edge_first;
    }
    offer(step, spot, purpose, rule);
  }

  bool is_within_reach(std::size_t step, const Spot& spot) const {
    const PlanStep& one = conduct_.steps[step];
    const Climbed so_far = climbed(one.line, spot);
    return one.height <= std::max(1.0, so_far.highest + so_far.reach) + hair &&
           (so_far.highest > 0 || one.height <= 1 + hair);
  }

  void climb_at(std::size_t line, const Spot& spot) {
    const Climbed so_far = climbed(line, spot);
    const double whole = std::floor(so_far.highest + hair);
    if (so_far.reach > 1)
      if (const auto step = step_at(line, whole + 2); step && !is_closed(*step, spot))
        offer_where_it_may_be(*step, spot, Purpose::climb_two, Rule::gentle_first);
    const auto next = step_at(line, whole + 1);
    if (next && !is_closed(*next, spot)) return offer_where_it_may_be(*next, spot, Purpose::climb, Rule::gentle_first);
    // The next rung is closed: between the last that was borne and it there is half a step.
    if (!next || so_far.highest < 1 - hair || so_far.highest > whole + hair) return;
    const auto half = step_at(line, whole + 0.5);
    if (half && !was_tried(*half, spot)) offer_where_it_may_be(*half, spot, Purpose::between, Rule::nothing_again);
  }

  void climb(std::size_t line) {
    const Spot edge{Place::edge, {}, {}};
    if (is_edge_open_ && !climbed(line, edge).has_moved) climb_at(line, edge);
    for (const PassageState& passage : conduct_.passages)
      if (!gentlest::is_closed(passage)) climb_at(line, {Place::picture, passage.name, passage.layer});
    if (is_edge_open_) climb_at(line, edge);
  }

  void after_success(const WorkingMixture& working) {
    const SwabTest& success = conduct_.tests[working.tests.front()];
    step_back(working, success);
    const auto repeat = [&](const std::string& passage, Purpose purpose, Rule rule) {
      open_.push_back({working.step, working.mixture, Place::picture, passage, purpose, rule});
    };
    const PassageState* there = open_passage(success.passage);
    if (working.needs_second_spot && there && !is_closed_for(working, there->name))
      repeat(there->name, Purpose::second_spot, Rule::not_by_luck);
    for (const std::string& passage : working.untested)
      if (!is_closed_for(working, passage)) repeat(passage, Purpose::other_passage, Rule::half_a_step_back);
  }

  // The passage itself while it is open, else the first that is; null where none is.
  const PassageState* open_passage(const std::string& name) const {
    const PassageState* first = nullptr;
    for (const PassageState& one : conduct_.passages) {
      if (gentlest::is_closed(one)) continue;
      if (one.name == name) return &one;
      if (!first) first = &one;
    }
    return first;
  }

  bool is_closed_for(const WorkingMixture& working, const std::string& passage) const {
    return closed_by(plan_, conduct_, working.mixture, layer_under(plan_, passage)).has_value();
  }

  // Once, from the first that worked: half of the last step.
  void step_back(const WorkingMixture& working, const SwabTest& success) {
    const bool is_first = std::all_of(conduct_.working.begin(), conduct_.working.end(), [&](const WorkingMixture& one) {
      return one.tests.front() >= working.tests.front();
    });
    if (!working.step || !is_first) return;
    const PassageState* there = open_passage(success.passage);
    if (!there) return;
    const PlanStep& works = conduct_.steps[*working.step];
    const Spot picture{Place::picture, there->name, there->layer};
    double below = 0;
    for (const SwabTest& test : conduct_.tests) {
      if (!test.mixture) continue;
      const std::optional<double> height = height_on(plan_, works.line, *test.mixture);
      if (!height || *height > works.height - hair) continue;
      if (test.number > success.number && settles_the_step_back(test)) return;
      if (is_at(test, picture)) below = std::max(below, *height);
    }
    const double gap = works.height - below;
    if (below < 1 - hair || gap < 1 - hair) return;
    const auto back = step_at(works.line, gap > 1 + hair ? works.height - 1 : works.height - 0.5);
    // Where the success was closed since, another layer may lie there, which bore less.
    if (back && !was_tried(*back, picture) && is_within_reach(*back, picture))
      offer_where_it_may_be(*back, picture, Purpose::step_back, Rule::half_a_step_back);
  }

  // On the picture it settles the step back; at the edge only where it did not move the layer there.
  static bool settles_the_step_back(const SwabTest& test) {
    return test.place == Place::picture || !test.moved || test.harmed;
  }

  const Plan& plan_;
  const Conduct& conduct_;
  bool is_edge_open_ = false;
  std::vector<OpenTest> open_;
};

}  // namespace

std::vector<OpenTest> open_tests(const Plan& plan, const Conduct& conduct) {
  return Opener(plan, conduct).run();
}

}  // namespace gentlest
