#include "gentlest/answers/review.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/learning/typed_reading.hpp"
#include "gentlest/liquids/notation.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace gentlest {

namespace {

std::optional<Mixture> readable_mixture(const std::string& text, const Catalogue& catalogue,
                                        const std::vector<Liquid>& shelf) {
  try {
    return parse_mixture(text, catalogue, shelf);
  } catch (const InputError&) {
    return std::nullopt;  // the report then shows the words alone
  }
}

std::optional<LeftOutTest> reason_of(const Progress& progress, int test) {
  for (const LeftOutTest& one : progress.not_counted)
    if (one.test == test) return one;
  return std::nullopt;
}

std::vector<RecordedTest> tests_of(const Plan& plan, const Progress& progress, const std::vector<Reading>& lines,
                                   const Catalogue& catalogue) {
  std::vector<RecordedTest> tests = tests_in(lines);
  const std::vector<Liquid> shelf = all_liquids(shelf_of(plan.job, catalogue));
  for (RecordedTest& test : tests) {
    test.mixture = readable_mixture(shown_line(test).mixture, catalogue, shelf);
    if (!is_withdrawn(test)) test.not_counted = reason_of(progress, test.number);
  }
  return tests;
}

std::vector<LayerOutlook> outlooks_of(const Progress& progress, const Hansen& point) {
  const NextTestTask& task = progress.task;
  const PlannedLayer& target = progress.layers[progress.target];
  const bool claimed = margin_may_be_claimed(progress.layers);
  std::vector<LayerOutlook> outlooks;
  if (task.target)
    outlooks.push_back({target.name, Role::remove, task.target->chance_estimate(point, task.settings.effect_level),
                        task.target->RED_estimate(point), true});
  for (const KeptBelief& kept : task.kept)
    outlooks.push_back({kept.name, Role::keep, kept.belief.chance_estimate(point, kept.risk_level),
                        kept.belief.RED_estimate(point), claimed});
  return outlooks;
}

class Gatherer {
 public:
  Gatherer(const Plan& plan, const Progress& progress, const Catalogue& catalogue)
      : plan_(plan), progress_(progress), catalogue_(catalogue) {}

  void take_plan() {
    for (const JudgedMixture* planned : planned_mixtures(plan_)) add(*planned);
  }

  // Of a mixture that came with this test.
  std::size_t place_of(const Mixture& mixture, int test) {
    const std::string words = to_text(mixture);
    for (std::size_t i = 0; i < considered.size(); ++i)
      if (to_text(considered[i].judged.mixture) == words) return i;
    JudgedMixture judged = judge_mixture(mixture, progress_.layers, plan_.job.limits, catalogue_);
    judged.origin = {OriginKind::tested, test};
    add(std::move(judged));
    return considered.size() - 1;
  }

  std::vector<ConsideredMixture> considered;

 private:
  void add(JudgedMixture judged) {
    std::vector<LayerOutlook> outlooks = outlooks_of(progress_, judged.point);
    considered.push_back({std::move(judged), {}, std::move(outlooks)});
  }

  const Plan& plan_;
  const Progress& progress_;
  const Catalogue& catalogue_;
};

}  // namespace

std::vector<RecordedTest> tests_in(const std::vector<Reading>& lines) {
  std::map<int, RecordedTest> by_number;
  for (const Reading& line : lines) by_number[line.test].lines.push_back(line);
  std::vector<RecordedTest> tests;
  for (auto& [number, test] : by_number) {
    test.number = number;
    tests.push_back(std::move(test));
  }
  return tests;
}

const Reading& shown_line(const RecordedTest& test) {
  const auto says = std::find_if(test.lines.rbegin(), test.lines.rend(),
                                 [](const Reading& line) { return !line.mixture.empty() && !is_later_look(line); });
  return says == test.lines.rend() ? test.lines.back() : *says;
}

std::vector<const Reading*> later_looks(const RecordedTest& test) {
  std::vector<const Reading*> looks;
  for (const Reading& line : test.lines)
    if (is_later_look(line) && line_before(line, test.lines) == &line) looks.push_back(&line);
  return looks;
}

bool is_withdrawn(const RecordedTest& test) {
  // A later look that is withdrawn leaves its test as it was.
  const auto last =
      std::find_if(test.lines.rbegin(), test.lines.rend(), [](const Reading& line) { return !is_later_look(line); });
  return last != test.lines.rend() && last->withdrawn;
}

const LayerOutlook* target_outlook(const ConsideredMixture& mixture) {
  const bool has_target = !mixture.outlooks.empty() && mixture.outlooks.front().role == Role::remove;
  return has_target ? &mixture.outlooks.front() : nullptr;
}

const LayerOutlook* riskiest_outlook(const ConsideredMixture& mixture) {
  const LayerOutlook* riskiest = nullptr;
  for (const LayerOutlook& outlook : mixture.outlooks)
    if (outlook.role == Role::keep && (!riskiest || outlook.chance.mean > riskiest->chance.mean)) riskiest = &outlook;
  return riskiest;
}

TestReview review_tests(const Plan& plan, const Progress& progress, const std::vector<Reading>& lines,
                        const Catalogue& catalogue) {
  Gatherer gatherer(plan, progress, catalogue);
  TestReview review;
  gatherer.take_plan();
  review.tests = tests_of(plan, progress, lines, catalogue);
  for (const RecordedTest& test : review.tests)
    if (test.mixture && !is_withdrawn(test)) {
      const std::size_t place = gatherer.place_of(*test.mixture, test.number);
      gatherer.considered[place].tests.push_back(test.number);
    }
  if (progress.next.working) {
    const WorkingMixture& working = *progress.next.working;
    review.chosen = gatherer.place_of(working.mixture, progress.conduct.tests[working.tests.front()].number);
    review.room = room_above(working.mixture, plan, progress);
  }
  review.considered = std::move(gatherer.considered);
  return review;
}

Bench labels_of_tests(const TestReview& review, const Catalogue& catalogue) {
  Bench bench;
  std::vector<LabelledMixture> labelled;
  for (const ConsideredMixture& one : review.considered) {
    if (one.tests.empty()) continue;
    const Mixture& mixture = one.judged.mixture;
    labelled.push_back({mixture, label_of(mixture, catalogue)});
    bench.mixtures.push_back({one.judged, Recipe{{}, {}, {}, mixture, 0}, {}, labelled.back().label, {}});
    bench.mixtures.back().judged.origin = {OriginKind::tested, one.tests.front()};
  }
  bench.cautions = cautions_for(labelled, catalogue);
  return bench;
}

}  // namespace gentlest
