// What was tested, what came of it and what else was open: the matter of the report for the treatment file.
// Pure: same plan, same log, same review.
#pragma once

#include "gentlest/answers/bench.hpp"
#include "gentlest/answers/progress.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// One test with every line that the log holds of it.
struct RecordedTest {
  int number = 0;
  std::vector<Reading> lines;              ///< as written, oldest first; never empty
  std::optional<Mixture> mixture;          ///< of shown_line; nothing where it cannot be read
  std::optional<LeftOutTest> not_counted;  ///< why it teaches nothing here; empty where it counts or is withdrawn
};

/// The lines of a log gathered by test number; `mixture` and `not_counted` are left empty.
std::vector<RecordedTest> tests_in(const std::vector<Reading>& lines);

/// The last line that says what was done and seen: a withdrawal without a mixture does not hide what it withdraws.
const Reading& shown_line(const RecordedTest& test);

/// The later looks, each as its last correction says.
std::vector<const Reading*> later_looks(const RecordedTest& test);
bool is_withdrawn(const RecordedTest& test);

/// A layer under a mixture, as believed after all readings. Middle 90 %.
struct LayerOutlook {
  std::string layer;
  Role role = Role::keep;
  Estimate chance;             ///< of being moved (the layer to remove) or affected (one to keep)
  Estimate RED;                ///< the margin of a layer to keep is RED - 1
  bool margin_claimed = true;  ///< as in the plan: false where a warning on any material forbids to speak of one
};

/// A mixture that was open: a rung of the ladder, one that was tested, or the one that the tests point to.
struct ConsideredMixture {
  JudgedMixture judged;    ///< as planned, before any test; its origin is that in the plan, else the first test
  std::vector<int> tests;  ///< numbers of the tests made with it; withdrawn ones left out
  std::vector<LayerOutlook> outlooks;  ///< the layer to remove first; none of a layer without a sphere
};

/// The outlook of the layer to remove; nothing where it has no sphere.
const LayerOutlook* target_outlook(const ConsideredMixture& mixture);

/// The outlook of the layer most at risk; nothing where none is to be kept.
const LayerOutlook* riskiest_outlook(const ConsideredMixture& mixture);

struct TestReview {
  std::vector<RecordedTest> tests;            ///< by number
  std::vector<ConsideredMixture> considered;  ///< of the plan first, then others in the order of their first test
  std::optional<std::size_t> chosen;          ///< into `considered`: a mixture that worked and that the tests point to
  std::optional<RungRoom> room;               ///< above the chosen one
};

/// `progress` must come from the same job, target and lines as `plan` and `lines`.
TestReview review_tests(const Plan& plan, const Progress& progress, const std::vector<Reading>& lines,
                        const Catalogue& catalogue);

/// The mixtures that were tested or chosen, with their labels, for the notes of the report. Their origin is the
/// first test.
Bench labels_of_tests(const TestReview& review, const Catalogue& catalogue);

}  // namespace gentlest
