// What may go on the painting after the cleaning: each retouching medium and varnish judged against all that it will
// lie on, when it is put on and when it is taken off again, fresh and aged. What was seen or told outranks a sphere;
// what is not known counts against; the weakest link ranks, never a sum.
// What is meant and why: docs/afterwards.md.
#pragma once

#include "gentlest/finishes/finish.hpp"
#include "gentlest/job/job.hpp"
#include "gentlest/liquids/mixture.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace gentlest {

/// How a cell came out, from the worst on. `open`: nothing is known that could decide it.
enum class CellVerdict { fails, open, test_first, holds };
inline constexpr std::size_t verdict_count = 4;

/// What a cell rests on. `binder_alone`: an estimate or fact of the bare binder, of a retouching that lay and aged
/// under a varnish, with which it then acts as one.
enum class CellBasis { known, estimated, binder_alone, sources_disagree, not_known };

/// Why a cell came out as it did, where its basis does not say all.
enum class CellWhy {
  told,                ///< a source tells it of this very pair, or of this coat in this liquid
  seen,                ///< observations on the material decide it
  seen_open,           ///< what was seen leaves it open
  chance,              ///< the sphere
  each_part,           ///< each of the mixture's liquids alone was seen not to act
  a_part_acts,         ///< one of them alone was seen to act
  nothing_known,       ///< neither sphere nor observation
  water,               ///< acts by other ways than solubility, and nothing was seen of it here
  sensitive_to_water,  ///< the coat below is, whatever else is told
  may_not_dissolve,    ///< strong light, or a resin whose chains join
  goes_with_varnish,   ///< bedded between coats of one varnish, or soaked by it
  no_aged_record,      ///< nothing tells how it ages
  no_liquid            ///< no liquid is known that could be asked
};

/// One source behind a cell, of the catalogue: what was seen, or told of coming off, of a pair, of ageing, of putting
/// on, of bedding.
using CellVoice = std::variant<const Observation*, const ComesOffFact*, const Neighbour*, const AgeingFact*,
                               const AppliedIn*, const Voice*>;
/// Who speaks: source and standing, of an observation made into a Voice.
Voice voice_of(const CellVoice& one);

struct Judgement;
/// The best witness of a known cell: seen before practice, practice before memory; nothing where nobody speaks.
std::optional<Witness> best_witness(const Judgement& judged);

struct Judgement {
  CellVerdict verdict = CellVerdict::open;
  CellBasis basis = CellBasis::not_known;
  CellWhy why = CellWhy::nothing_known;
  std::optional<double> chance;  ///< that it is touched; of a coat that is to come off, that it does. 0..1
  std::vector<CellVoice> voices;
  /// What the sphere alone would say of touching, also where something stronger decides; nothing without a sphere.
  std::optional<double> by_sphere = {};
};

enum class CoatKind {
  original,  ///< paint, ground, a passage
  remnant,   ///< a layer that is to go: what may be left of it is no loss
  retouching,
  varnish
};

/// One coat of a stack.
struct Coat {
  std::string name;  ///< the layer's or passage's; of a proposed one the short name of its finish
  CoatKind kind = CoatKind::original;
  std::string material;            ///< id; empty where nobody knows it or own tests speak of none
  std::string material_name;       ///< may be empty
  const Finish* finish = nullptr;  ///< what is known of it as a retouching or varnish; null: nothing
  Light light = Light::not_told;
  std::optional<double> years;
  bool is_proposed = false;
  std::optional<Ageing> ageing;  ///< what that light makes of it; nothing: not told, or no finish
  std::vector<CellVoice> ageing_said;
};

/// What an act in this mixture does to the coats below.
struct ActInMixture {
  std::optional<Mixture> mixture;  ///< nothing: no liquid is known
  bool on_shelf = false;           ///< every liquid of it stands on the job's shelf and may be used
  bool avoided = false;            ///< the job's limits avoid a liquid of it
  Judgement itself;                ///< take off: whether the coat comes off; put on: whether it can be made up
  std::vector<Judgement> under;    ///< of each coat below, from the lowest up
  std::optional<double> margin;    ///< chance that it comes off less the largest chance of a coat below that stays;
                                   ///< only where all of these are chances
};

struct JudgedCoat {
  Coat coat;
  std::optional<ActInMixture> put_on;               ///< of a proposed coat
  std::optional<ActInMixture> off_fresh, off_aged;  ///< of a proposed coat
};

/// What decides a rank: the weakest cell; then how many fail or are open; then how many are in doubt, a test to be made
/// or no clear fact, or a coat that wants another liquid when old; then how far the worst of the proposed coats ages;
/// then how many rest on no clear fact; then the largest chance of harm. Compared in this order, so the weakest link
/// decides.
struct Link {
  CellVerdict weakest = CellVerdict::holds;
  std::array<int, verdict_count> count{};  ///< [CellVerdict]
  int in_doubt = 0;
  Ageing ageing = Ageing::none;  ///< not told counts as the worst; none and slight count as one
  int no_facts = 0;              ///< cells that rest on no clear fact, whatever they say
  double largest_chance = 0;
};
/// True when `a` stands before `b`.
bool is_better(const Link& a, const Link& b);

/// A stack from below up: the painting, then what is proposed.
struct JudgedStack {
  std::vector<JudgedCoat> coats;
  Link link;
};

/// A cell that counts, with its place in the stack.
struct StackCell {
  FinishAct act = FinishAct::put_on;       ///< put_on or take_off
  FinishState state = FinishState::fresh;  ///< of the upper coat when it is taken off
  std::size_t upper = 0;
  std::optional<std::size_t> lower;  ///< nothing: the coat itself
  const Judgement* judged = nullptr;
  bool counts = true;  ///< false of a remnant below
};
/// False where it is no loss if the lower coat is touched: what was to go anyway; a varnish of the same work below a
/// retouching, where another varnish is worked on. `next`: nothing lies between the two.
bool is_loss_below(const Coat& upper, const Coat& lower, bool next);

/// Every cell of the stack, none left out. The stack must outlive them.
std::vector<StackCell> cells_of(const JudgedStack& stack);
/// Of these the first that is as bad as the weakest link. Precondition: a coat is proposed.
StackCell weakest_cell(const JudgedStack& stack);

/// One retouching medium with varnish: what is best of it under the varnish, and over it.
struct RetouchingPlace {
  const Finish* retouching = nullptr;
  std::optional<JudgedStack> under;    ///< straight on the painting, a varnish over it
  std::optional<JudgedStack> over;     ///< on a varnish, nothing over it
  std::optional<JudgedStack> between;  ///< on that varnish, and another coat of varnish over it
  bool is_better_under = true;         ///< than over
};

/// What one mixture does to every coat of a stack.
struct MixtureOnCoat {
  Judgement comes_off;
  Judgement touched;
};
struct MixtureOnStack {
  Mixture mixture;
  std::vector<MixtureOnCoat> coats;  ///< from below up
};

struct Afterwards {
  std::vector<Coat> painting;            ///< from below up
  std::vector<JudgedStack> retouchings;  ///< one on the painting each, best first
  std::vector<JudgedStack> varnishes;    ///< the same
  std::vector<RetouchingPlace> places;   ///< each retouching with the varnish that suits it best; best first
  std::optional<JudgedStack> asked;      ///< the job's own `afterwards`
  std::vector<MixtureOnStack> mixtures;  ///< as asked, on the asked stack, else on the painting
  std::size_t mixtures_tried = 0;
  Light light = Light::not_told;             ///< as asked
  double risk_limit = 0, wanted_effect = 0;  ///< by which a chance holds
};

/// What is asked besides what the job says.
struct AfterwardsQuestion {
  std::vector<Mixture> mixtures;  ///< to be shown on the stack, in this order
  Light light = Light::not_told;  ///< in which the painting will hang, where a coat of the job says nothing else
  bool rank_candidates = true;    ///< false: only the job's own stack and the mixtures
};

/// What is wrong with the job's `afterwards`: a material or a mixture that cannot be read, each with its place.
std::vector<Diagnostic> check_coats(const Job& job, const Catalogue& catalogue);

/// Precondition: check_coats finds no fault, and check_job none but for missing roles. Never refuses a material without
/// a sphere.
Afterwards judge_afterwards(const Job& job, const Catalogue& catalogue, const AfterwardsQuestion& question = {});

}  // namespace gentlest
