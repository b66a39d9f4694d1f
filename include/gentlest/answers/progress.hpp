// Job + catalogue + readings -> what is known now and the next test. Pure: same input, same answer.
#pragma once

#include "gentlest/learning/next_test.hpp"
#include "gentlest/learning/reading.hpp"
#include "gentlest/plan/plan.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// Why a test teaches nothing here.
enum class LeftOutWhy {
  unknown_passage,     ///< its passage is none of the job's
  unreadable_mixture,  ///< what is written of its mixture cannot be read
  other_layer          ///< it is about a layer that this plan does not remove
};
struct LeftOutTest {
  int test = 0;
  LeftOutWhy why = LeftOutWhy::unknown_passage;
  std::string what;  ///< the passage or layer; of a mixture the message that reading it gave
  bool operator==(const LeftOutTest&) const = default;
};

/// A reading of the original where it was a layer without a sphere: no belief learns from it, so it is told.
struct UnjudgedReading {
  int test = 0;
  std::string layer;
  std::string mixture;  ///< as written in the log
  std::string date;     ///< may be empty
  bool at_edge = false;
  std::optional<OriginalReading> original;
  bool harmed = false;  ///< by what the evidence rests on: a colour that was varnish is no harm
};

/// Where the testing of one painting stands.
struct Progress {
  std::vector<PlannedLayer> layers;
  std::size_t target = 0;                ///< index into layers
  std::vector<Mixture> mixtures;         ///< that may be proposed; positions are those of NextTestTask::candidates
  std::vector<JobBottle> left_off;       ///< bottles not used, each with the reason
  std::vector<Reading> counted;          ///< readings that count, by test number
  std::vector<LeftOutTest> not_counted;  ///< in the order of their numbers
  NextTestTask task;                     ///< beliefs after all readings; layers without a sphere have none
  NextTest next;
  std::optional<Mixture> mixture = {};  ///< that `next` speaks of: to try, that worked, or that came nearest
  std::map<std::string, std::vector<int>> heard =
      {};                                      ///< by layer: the tests behind what its belief has seen, in order
  std::optional<JudgedMixture> proposed = {};  ///< `mixture` as a plan judges it, where some layer has no sphere
  std::vector<UnjudgedReading> unjudged = {};  ///< in the order of their numbers
  std::size_t closed = 0;                      ///< mixtures taken off, since such a reading was a harm
  std::vector<FirstTest> first_tests = {};     ///< as in the plan, without what was tried
  std::vector<JudgedMixture> to_try = {};      ///< that first_tests speak of
};

/// Of the layer to remove, then of each to keep.
std::vector<LearntOfLayer> what_was_learnt(const Progress& progress);

/// Learns from the readings and chooses the next test. The job's risk limit, shelf, avoided statements, families and
/// solvents hold; the risk limit is approached by the steps of NextTestSettings. A passage without a material of its
/// own speaks of its layer; a reading without a passage of the uppermost kept layer. Passages that readings have not
/// reached are named. A reading on a layer without a sphere is told in `unjudged`; where it was a harm, no mixture with
/// at least as much of each active liquid is proposed again. While such a layer is to be kept, a new mixture goes first
/// where harm matters least, and where no layer to keep has a sphere, one rung of the ladder follows the other. Because
/// the response curve is borrowed from long contact, R0 is taken as uncertain by another 15 % (our choice). Throws
/// InputError (Fault::file) as make_plan does.
Progress follow_readings(const Job& job, const Catalogue& catalogue, const std::vector<Reading>& readings,
                         const std::string& target = {});

/// A mixture as beliefs see it: its point and the share of each bottle.
SwabMixture swab_mixture_of(const Mixture& mixture);

/// How much room the ladder has above a mixture: of its rungs with more effect, how many, from the gentlest on, stay
/// within the job's risk limit and did no harm when they were tested. Effect and risk as believed after all readings.
struct RungRoom {
  std::size_t within = 0;
  std::size_t stronger = 0;
};
RungRoom room_above(const Hansen& point, const Plan& plan, const Progress& progress);

/// The mixtures that the job allows, thinned to one for each cell of 1 MPa^0.5, fewest parts first. Mixtures that part
/// into two liquids are left out unless the job allows them, and so are those that break its largest shares or its
/// limits on flash point and label. How they drift while they dry is asked of those that would be chosen only.
std::vector<Mixture> allowed_mixtures(const std::vector<Liquid>& shelf, const Job& job, const Catalogue& catalogue);

}  // namespace gentlest
