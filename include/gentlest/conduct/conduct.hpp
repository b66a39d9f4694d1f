// How a careful conservator tests, as rules that stand above every chance; docs/conduct.md words them by number.
// Pure and without any probability: the mixtures of the plan and what the swabs did -> what is closed and why, what
// works, what may come next. Whoever chooses the next test chooses among `Conduct::open`.
#pragma once

#include "gentlest/learning/reading.hpp"
#include "gentlest/plan/plan.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// The rules, by their numbers.
enum class Rule {
  one_plan = 1,        ///< what is proposed is a rung, or half a step between two
  blanks_first,        ///< dry swab, then water or saliva; a blank that takes colour stops everything
  gentle_first,        ///< one rung above what was borne there; two only after two that did nothing
  edge_first,          ///< a new mixture goes first where harm matters least
  nothing_again,       ///< what did nothing, and what is weaker of the same bottles, is not asked again
  harm_closes,         ///< the mixture and all that is as strong on that layer, for good
  harmed_never_works,  ///< a mixture that harmed anywhere is none that works
  harm_not_repeated,   ///< nobody repeats a test that harmed
  passage_closed,      ///< harm on one passage closes it; the others go on, with a border
  edge_refuted,        ///< harm on the picture after a pass at the edge: the edge is not the picture
  two_harms_end,       ///< two harms, or a lasting one by the gentlest that did anything, end the series
  harm_said_first,     ///< every harm stands in the first line
  works_everywhere,    ///< moved as wanted, original untouched, nothing later that says otherwise
  not_by_luck,         ///< not found below one half; low confidence or long contact asks for a second spot
  half_a_step_back,    ///< after the first success, once; then each passage
  no_window_last,      ///< only after the gentlest rungs, with what closes it
  said_as_read         ///< what was read is told as read, what is believed in four words
};

enum class Place { edge, picture };

/// A mixture of the plan: a rung of a line, or half a step between two neighbouring ones where that can be measured.
struct PlanStep {
  Mixture mixture;
  Mixture as_measured;  ///< what the job's vial and measure make of it
  Origin origin;
  std::size_t line = 0;  ///< index into Plan::lines
  double height = 1;     ///< on its line: 1 the gentlest rung, 2.5 half way from rung 2 to rung 3
};

/// One swab as the rules see it.
struct SwabTest {
  int number = 0;
  std::string date, words;         ///< as written: the day, the mixture
  std::optional<Mixture> made;     ///< as recorded; nothing for a blank, or where it cannot be read
  std::optional<Mixture> mixture;  ///< the same, or the planned step whose measured recipe it is; nothing for a blank,
                                   ///< or where it cannot be read
  std::string unreadable;          ///< why it cannot be read; else empty
  bool is_blank = false;           ///< a dry swab, water or saliva
  bool is_aqueous = false;         ///< a solution of the person's own: it has no place in the order of strength
  Place place = Place::picture;
  std::string passage;                    ///< as written
  std::vector<std::string> layers;        ///< to keep, under the swab; all of them where that is not known
  bool is_passage_known = true;           ///< false: the job has no such passage or layer to keep
  std::optional<RemovalReading> removal;  ///< nothing where another layer was to be removed
  std::optional<OriginalReading> original;
  SwabColour colour = SwabColour::none;
  std::string signs;         ///< words of the trade beside the grades: "blanched"
  std::string seen_after;    ///< how long after the test the worst of the original was seen; empty: at once
  bool harmed = false;       ///< the original reacted in any way; a colour not known counts as original
  bool moved = false;        ///< the layer to remove moved as much as wanted
  bool did_nothing = false;  ///< neither to the one nor to the other, and both were looked at
  bool is_weak = false;      ///< of low confidence, or of a contact longer than `long_contact_s`
};
inline constexpr double long_contact_s = 40;  ///< twice the time that the response curve stands for; our choice

/// A planned mixture that may not be used on a layer any more.
struct Closure {
  std::size_t step = 0;  ///< index into Conduct::steps
  Rule rule = Rule::harm_closes;
  std::size_t by = 0;  ///< index into Conduct::tests
  std::string layer;   ///< for which; empty: for all
  bool operator==(const Closure&) const = default;
};

/// A passage that the job lists; without any, one entry with an empty name stands for the picture.
struct PassageState {
  std::string name;
  std::string layer;                     ///< planned layer that it is judged as
  std::optional<std::size_t> closed_by;  ///< index into Conduct::tests
  bool is_left_out = false;              ///< by what the examination showed
};
bool is_closed(const PassageState& passage);

/// Why the series ends.
enum class EndWhy { blank_took_colour, two_harms, lasting_harm_by_the_gentlest, every_passage_closed, examination };
struct SeriesEnd {
  EndWhy why = EndWhy::two_harms;
  Rule rule = Rule::two_harms_end;
  std::vector<std::size_t> tests;  ///< indices into Conduct::tests
};

/// A mixture that moved the layer on the picture and left the original untouched there.
struct WorkingMixture {
  Mixture mixture;
  std::optional<std::size_t> step;     ///< of the plan, where it is one
  std::vector<std::size_t> tests;      ///< its successes on the picture
  std::vector<std::size_t> otherwise;  ///< its readings on the picture that did not move the layer: mixed
  std::vector<std::string> passed, untested, closed;  ///< of the job's passages
  std::optional<std::size_t> closed_by = {};  ///< index into Conduct::tests: a harm that closed it where it worked
  bool needs_second_spot = false;             ///< rule 14: no success that is not weak
};

/// What a test is for.
enum class Purpose { climb, climb_two, from_edge, between, step_back, second_spot, other_passage };

/// A test that the rules allow.
struct OpenTest {
  std::optional<std::size_t> step;  ///< of the plan; nothing for a second spot or passage of a mixture that is none
  Mixture mixture;
  Place place = Place::edge;
  std::string passage;  ///< on the picture; may be empty
  Purpose purpose = Purpose::climb;
  Rule rule = Rule::gentle_first;  ///< that shaped it most
};

struct Conduct {
  std::vector<PlanStep> steps;     ///< line by line, gentle to strong, with the half steps
  std::vector<SwabTest> tests;     ///< that count, by number; withdrawn ones left out
  std::vector<std::size_t> harms;  ///< indices into tests: never forgotten
  std::vector<Closure> closures;
  std::vector<PassageState> passages;
  int edge_tests_left = 0;
  std::optional<std::size_t> edge_refuted_by;  ///< index into tests
  std::optional<SeriesEnd> end;
  std::vector<WorkingMixture> working;  ///< gentlest first; not those that harmed anywhere
  std::vector<OpenTest> open;           ///< in the order in which they should be made; empty after an end
};

/// Precondition: `readings` are current_readings of the plan's log. Throws nothing: what cannot be read counts on the
/// careful side.
Conduct conduct_of(const Plan& plan, const std::vector<Reading>& readings, const Catalogue& catalogue);

/// The planned step (index into Conduct::steps) that a mixture is; nothing of one that is none.
std::optional<std::size_t> step_of(const Conduct& conduct, const Mixture& mixture);

/// The closure of a planned mixture for a layer (for all where `layer` is empty): the first that closes it.
const Closure* closure_of(const Conduct& conduct, std::size_t step, const std::string& layer = {});

/// The mixture that works now: the gentlest that no later reading contradicts and no harm closed; null where there is
/// none.
const WorkingMixture* working_now(const Conduct& conduct);

/// The layer to keep that a passage speaks of: itself, that of the passage, the uppermost for an empty name. Empty
/// where the job has no such passage.
std::string layer_under(const Plan& plan, const std::string& passage);

/// The harm (index into Conduct::tests) that closes any mixture, of the plan or not, for a layer to keep; for some
/// layer where `layer` is empty.
std::optional<std::size_t> closed_by(const Plan& plan, const Conduct& conduct, const Mixture& mixture,
                                     const std::string& layer = {});

/// True when two mixtures hold the same liquids, each share within a hundredth of the volume.
bool is_same_mixture(const Mixture& a, const Mixture& b);

}  // namespace gentlest
