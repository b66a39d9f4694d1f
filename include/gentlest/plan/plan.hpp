// Job + catalogue -> plan: the one entry for the program and the tests. Pure: same input, same plan.
#pragma once

#include "gentlest/examination/examination.hpp"
#include "gentlest/job/job.hpp"
#include "gentlest/ladder/ladder.hpp"
#include "gentlest/plan/advice.hpp"
#include "gentlest/plan/origin.hpp"
#include "gentlest/plan/shelf.hpp"
#include "gentlest/plan/sighting.hpp"
#include "gentlest/safety/caution.hpp"
#include "gentlest/safety/hazard.hpp"
#include "gentlest/vial/evaporation.hpp"
#include "gentlest/vial/parting.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// What a layer may be else, as the job says.
struct OtherMaterial {
  std::string material;  ///< id
  std::string material_name;
  std::optional<UncertainSphere> sphere;  ///< nothing: no reading can weigh it
  double share = 0;                       ///< how far it is believed, 0..1
  LocalReach reach = {};
  Response response = {};
};

/// What is suspected of a passage that is judged like its layer. A passage suspected to hold resin is no such one:
/// it is judged as a resinous glaze.
struct PassageWarning {
  std::string passage;
  std::vector<Flag> flags;
};

/// What a planned layer's sphere rests on.
enum class LayerBasis {
  found,      ///< the material that examination showed
  recorded,   ///< the material that the files say; not examined
  own_tests,  ///< the user's own tests: nothing is published of it, and the sphere's grade says nothing
  passage,    ///< the material that the job gives a passage
  suspected   ///< the material that stands for what is suspected of a passage of which no more is known
};

/// One thing on the painting that a mixture meets: a layer, or a passage with a material of its own.
struct PlannedLayer {
  std::string name;
  Role role = Role::keep;
  bool is_target = false;     ///< the layer this plan is for
  std::string material;       ///< id, empty for a sphere of the user's own and where nobody knows the material
  std::string material_name;  ///< empty where own tests speak of no material by name; may be `unknown_material`
  LayerBasis basis = LayerBasis::found;
  std::string passage_of;                 ///< for a passage: the layer that it belongs to
  std::optional<UncertainSphere> sphere;  ///< as published or measured; `met_by_liquids` is what a mixture meets.
                                          ///< Nothing: what was seen stands in its place, and no figure
  std::string no_sphere = {};             ///< without a sphere: why, as recorded; empty of an unknown material
  std::vector<SeenRow> seen = {};         ///< without a sphere: what was seen on the material
  std::vector<SeenRow> observed = {};     ///< with one: the same, beside the chance
  int observations_fitted = 0;            ///< that moved or bent the sphere
  Hansen liquid_sd;                       ///< largest deviation of a liquid of the job's shelf, MPa^0.5
  SphereGrade grade = SphereGrade::assumed;
  std::string sphere_source;                  ///< key of sources.yaml, or the user's words
  std::string assumption;                     ///< in plain words; empty when the sphere is the material's own
  bool own_response = false;                  ///< false: the response curve is borrowed from fresh resins that dissolve
  std::vector<Flag> flags;                    ///< of the material and as suspected of all of it in the job
  std::vector<OtherMaterial> possible;        ///< for the readings to weigh; effect and risk of the plan leave them out
  std::vector<PassageWarning> passages = {};  ///< that are judged like this layer and of which more is suspected
  LocalReach reach = {};                   ///< where observations bend the sphere; none for a sphere of the user's own
  Response response = {};                  ///< the material's own or the borrowed one, as a swab meets it
  std::optional<StudioStart> studio = {};  ///< the sphere is where the studio lets the material begin
  std::optional<UncertainSphere> without_studio = {};  ///< then: what it would be without
  std::optional<int> harm_grade = {};  ///< grades up to this one are harm to the material; nothing: as usual
};

/// Precondition: the layer has one. The layer's sphere as every mixture meets it, in the search as in what is printed:
/// widened by the largest deviation that a liquid of the shelf (or of the mixtures asked about) has, and known no
/// better than `best_known_sd`.
UncertainSphere met_by_liquids(const PlannedLayer& layer, const std::vector<Liquid>& liquids = {});

/// No centre is taken as known better than this, MPa^0.5, whatever a job says: published parameters of the same liquid
/// differ by about as much (docs/science.md, "Uncertain spheres"), and it bounds the tables of a search.
inline constexpr Hansen best_known_sd = {0.125, 0.25, 0.25};

/// What one mixture means for one planned layer.
struct Outlook {
  double Ra = 0;
  double RED = 0;           ///< Ra / (R0 * reach_factor)
  Band RED_band;            ///< middle 90 % over what is not known of the sphere
  double chance = 0;        ///< effect for a layer to remove, chance of being affected for one to keep
  bool may_flip = false;    ///< the band holds RED = 1: inside or outside is open
  double reach_factor = 1;  ///< by which observations make the radius act larger here
};

/// What becomes of a mixture in the vial and on the swab.
struct Fate {
  PhaseAnswer phases;                        ///< one liquid or two
  std::optional<Drift> drift;                ///< nothing when figures are missing
  std::vector<MissingFigure> drift_missing;  ///< which ones
  std::vector<double> drying_risk;           ///< largest over the layers to keep, at each point of the drift
  DriftRisk risk;                            ///< of the kept layer that the drift threatens most
  std::string riskiest;                      ///< name of that layer; empty when nothing is to be kept
};

/// True when a mixture within the risk limit passes it while it dries.
bool drifts_beyond(const Fate& fate, double risk_limit);

/// One mixture judged against all planned layers.
struct JudgedMixture {
  Mixture mixture;
  Origin origin;
  Hansen point;
  Teas teas;
  std::vector<std::optional<Outlook>> outlooks;  ///< in the order of Plan::layers; nothing of one without a sphere
  std::optional<double> effect;                  ///< nothing where the layer to remove has no sphere
  std::optional<double> risk;                    ///< over the layers to keep that have a sphere; nothing where none has
  std::string riskiest;              ///< name of the planned layer that gives the risk; empty where there is none
  std::vector<LayerSighting> seen;   ///< of each layer without a sphere
  std::optional<double> margin_RED;  ///< smallest RED - 1 over the layers to keep; empty where no margin is claimed
  HazardSummary hazards;
  Fate fate;
  std::vector<VerySighting> very = {};  ///< of the very mixture, on layers with a sphere
};

/// True when the mixture's risk, as it stands in the vial, passes the job's limit. A risk that is not known passes
/// none.
bool is_beyond_limit(const JudgedMixture& judged, const Limits& limits);

/// How the answer came out.
enum class Outcome {
  window,     ///< the last rung reaches the wanted effect within the risk limit
  no_window,  ///< no mixture of the shelf does
  no_ladder   ///< the layer to remove has no sphere, so no effect can be told
};

/// What to test first where some layer has no sphere.
enum class FirstTestKind {
  dry_swab,       ///< on every such layer
  water,          ///< where the surface bears it
  no_water,       ///< a layer to keep is sensitive to it, or it was seen to act there
  gentlest_rung,  ///< on a layer to keep, where harm matters least, before any stronger one
  liquid          ///< seen to act on the layer to remove, and on no layer to keep
};
struct FirstTest {
  FirstTestKind kind = FirstTestKind::dry_swab;
  std::string layer = {};          ///< for `no_water` and `gentlest_rung`
  std::vector<SeenRow> rows = {};  ///< what was seen of water; for `liquid`, of it on the layer to remove
  std::size_t mixture = 0;         ///< for `liquid`: index into Plan::to_try
};

/// Finer steps asked for between two rungs, counted from 1 as reports count them.
struct Finer {
  int from = 1;   ///< the gentler rung
  int to = 2;     ///< the stronger one, on this ladder and above `from`
  int steps = 3;  ///< at most so many between each two neighbouring rungs
  bool operator==(const Finer&) const = default;
};

/// What some layers or passages to keep cost: the ladder as it would be without them. Those of one material count
/// together, for each would hold the ladder where it is.
struct LayerCost {
  std::vector<std::string> without;  ///< names, in the order of Plan::layers
  int rungs = 0;
  double strongest_effect = 0;  ///< of the last rung
};

/// The ladder as it would be if a little more risk were borne.
struct HigherLimit {
  double risk_limit = 0;
  int rungs = 0;
  double strongest_effect = 0;  ///< of the last rung
};

/// A walk from gentle to strong on few bottles. A line in the narrow sense is topped up from one gentle stock with one
/// active one, in even steps of share; only the walk over the frontier is not.
struct LadderLine {
  std::vector<std::string> bottles;      ///< labels; of a line the gentle one first, then the active one or ones
  std::vector<JudgedMixture> rungs;      ///< gentle to strong, none beyond the risk limit; at least one
  std::optional<Mixture> active;         ///< the stock that is added; nothing for the walk over the frontier
  std::string family = {};               ///< of the active liquid of most share; empty without one
  std::vector<int> active_percent = {};  ///< of the active stock in each rung, % by volume; empty without one
  int step_percent = 0;  ///< more of the active stock from rung to rung, % by volume, of which the first step may be
                         ///< less; 0 without one
  LineReason reason = LineReason::frontier;
  double effect_given_up = 0;  ///< mean over the risks up to the limit of (best effect of the shelf - of the line, or
                               ///< of the walk's bottles)
  std::optional<double> risk_given_up = {};  ///< at the first rung that works: its risk less the least risk on the
                                             ///< frontier at no less effect; nothing where none works
};

struct Plan {
  Job job;
  std::string catalogue_version;
  Examination examination;  ///< the job's findings weighed; they are in the job already (take_in_findings)
  std::vector<PlannedLayer> layers;
  std::size_t target = 0;  ///< index into layers
  Outcome outcome = Outcome::no_window;
  std::vector<Liquid> shelf;             ///< the bottles that may be used, sorted by label
  std::vector<Verdict> frontier;         ///< what nothing on that shelf beats, by rising risk; past the limit too
  std::vector<LadderLine> lines;         ///< the first is the ladder; empty where there is no window
  bool by_effect_alone = false;          ///< no layer to keep has a sphere: no risk, no frontier, steps of two bottles
  double most_effect = 0;                ///< of the mixtures that the limits leave; 0 where no effect can be told
  std::vector<FirstTest> first_tests;    ///< in the order of the work; empty where every layer has a sphere
  std::vector<JudgedMixture> to_try;     ///< for Outcome::no_ladder: single liquids, in the order of the first tests
  std::optional<Finer> finer_asked;      ///< as asked, where there is a ladder
  std::vector<JudgedMixture> finer;      ///< steps between rungs by rising effect; empty where nothing lies between
  std::optional<JudgedMixture> nearest;  ///< without a window: the strongest mixture within the risk limit
  std::optional<JudgedMixture>
      least_risk_that_works;                       ///< without a window: least risk among those that reach the effect
  std::vector<JudgedMixture> without_studio = {};  ///< by answers/without_studio
  std::vector<LayerCost> costs;  ///< at most three, where the ladder would go clearly further; never without all
  std::optional<HigherLimit>
      at_higher_limit;  ///< without a window or with few rungs, where 0.1 more of risk gives more
  std::uint64_t mixtures_judged = 0;
  bool margin_claimed = true;          ///< by margin_may_be_claimed
  std::vector<JobBottle> left_off;     ///< bottles not used, each with the reason
  std::vector<PartingPair> parting;    ///< bottles with water in them that part from others of the shelf
  std::vector<Watch> watch;            ///< what to watch on this painting
  std::vector<Caution> cautions;       ///< for the person's health and the painting
  std::vector<WeakPoint> weak_points;  ///< the figures this plan rests on that are weak
  std::vector<Source> sources;         ///< of every figure used
};

/// Rungs and bottles of the first line, which is the ladder; empty where there is none.
const std::vector<JudgedMixture>& ladder_rungs(const Plan& plan);
const std::vector<std::string>& ladder_bottles(const Plan& plan);

/// What is measured and tested by this plan: each rung of the first line with the finer steps behind it; without a
/// window the nearest ones, without a ladder the liquids to try. The plan must outlive the result.
std::vector<const JudgedMixture*> ladder_mixtures(const Plan& plan);

/// Every mixture the plan shows: the same, then the rungs of the other lines; none twice. The plan must outlive the
/// result.
std::vector<const JudgedMixture*> planned_mixtures(const Plan& plan);

/// The plan for one job. `target` names the layer to remove; empty takes the uppermost.
/// `run` may carry out the search's tasks on several threads; the plan is the same without.
/// Without a window there are no finer steps either.
/// Throws InputError (Fault::file) with everything check_job finds, and (Fault::usage) for a target that the job does
/// not hold or a stretch that is not on the ladder.
Plan make_plan(const Job& job, const Catalogue& catalogue, const std::string& target = {},
               const SearchProgress& progress = {}, const RunTasks& run = {}, const std::optional<Finer>& finer = {});

/// What keeps a plan without a window from having one.
enum class WindowClosedBy {
  layer,        ///< the gentlest mixture that works is too risky for a layer to keep
  shelf,        ///< no mixture of the shelf works, however risky
  sightings,    ///< every bottle was seen to act on a layer to keep that has no sphere
  examination,  ///< every bottle is left off, some by what the examination showed
  other_limits  ///< no mixture of the shelf is allowed at all
};
/// Precondition: the plan has no window.
WindowClosedBy what_closes_window(const Plan& plan);

/// What is said of a stretch that the ladder does not have; `remedy`: which rungs there are.
Diagnostic no_such_stretch(const Finer& finer, std::string remedy);

/// What is wrong with `target`: the job has no layer of that name to remove. Nothing where it is sound or empty.
std::optional<Diagnostic> target_fault(const Job& job, const std::string& target);

/// The job's layers as the plan sees them: spheres, grades, flags. Throws InputError (Fault::usage) for target_fault.
std::vector<PlannedLayer> planned_layers(const Job& job, const Catalogue& catalogue, const std::string& target = {});

/// True of a passage that none of these planned layers speaks of by name.
bool is_judged_like_layer(const Passage& passage, const std::vector<PlannedLayer>& layers);

/// The warnings for which no margin is claimed, of the layer (without the name of a passage) and of its passages; and
/// whether no layer has any, and each has a sphere.
std::vector<PassageWarning> warnings_against_margin(const PlannedLayer& layer);
bool margin_may_be_claimed(const std::vector<PlannedLayer>& layers);

/// Grades up to this one count on the layer: as "affected" for one to keep, by the job's limit where it states one,
/// else by what is harm to the material, else `usual_risk_grade`, and never only what cannot happen to it; as "moved"
/// for one to remove, by the job's effect_grade, or the strongest grade that happens to the material at all.
int grade_that_counts(const PlannedLayer& layer, const Limits& limits);

/// True of a layer to keep of which no chance can be told.
bool is_kept_unjudged(const PlannedLayer& layer);

/// A single mixture judged against planned layers. Its origin is left at "asked", for the caller to say better.
JudgedMixture judge_mixture(const Mixture& mixture, const std::vector<PlannedLayer>& layers, const Limits& limits,
                            const Catalogue& catalogue);

/// What a ladder of these limits is to be.
LadderGoal goal_of(const Limits& limits);

/// How well judged mixtures climb, in their order; nothing where effect or risk of one is not known.
std::optional<SeriesQuality> quality_of(const std::vector<JudgedMixture>& mixtures, const Limits& limits);

/// A series of mixtures judged against the layers in one go, and how well it climbs.
struct JudgedSeries {
  std::vector<JudgedMixture> mixtures;
  std::optional<SeriesQuality> quality;  ///< nothing where effect or risk is not known
};
JudgedSeries judge_series(const std::vector<Mixture>& series, const std::vector<PlannedLayer>& layers,
                          const Limits& limits, const Catalogue& catalogue);

}  // namespace gentlest
