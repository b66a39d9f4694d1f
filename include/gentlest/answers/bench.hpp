// What a person needs at the easel besides the plan: volumes to measure, the label, and how wide the chances
// are. For all mixtures of a plan at once; pure, like the plan.
#pragma once

#include "gentlest/answers/comparison.hpp"
#include "gentlest/answers/contact.hpp"
#include "gentlest/liquids/recipe.hpp"
#include "gentlest/plan/plan.hpp"
#include "gentlest/safety/caution.hpp"
#include "gentlest/safety/mixture_hazard.hpp"
#include "gentlest/safety/person.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// One mixture of the plan, ready for the vial.
struct BenchMixture {
  JudgedMixture judged;                      ///< as planned, with its origin
  Recipe recipe;                             ///< by the job's vial and measure
  std::optional<JudgedMixture> as_measured;  ///< set where rounding to the measuring step changed the mixture
  MixtureLabel label;
  std::vector<std::optional<Band>> chance_bands;  ///< middle 90 % of each layer's chance, in the order of Plan::layers
  bool beyond_limit = false;  ///< as made its risk passes the job's limit: shown, never proposed, measured or labelled
  std::optional<Millilitres> top_up = {};  ///< of a rung of a line: what of the active stock makes it out of a vial of
                                           ///< the rung before; nothing of the first rung and of the active stock alone
  PersonHazard person = {};                ///< of what the vial holds
  SwabContact contact = {};
};

/// The mixture as the vial holds it: as measured where rounding changed it, else as planned.
const JudgedMixture& as_made(const BenchMixture& mixture);

struct Bench {
  std::vector<BenchMixture> mixtures;    ///< of ladder_mixtures, in its order
  std::vector<SessionTotal> totals;      ///< of one vial of each mixture that is not beyond the limit
  std::vector<Caution> cautions;         ///< that fit these mixtures, each once
  std::vector<SessionExposure> session;  ///< of one vial of each, all dried away in the room of a usual day
  std::string vapour_list;               ///< by which the mixtures' vapour compares; empty where none has a limit
  std::vector<std::string> not_needed;   ///< bottles of the shelf that no rung of any line holds
  std::vector<std::string> gravest;      ///< bottles used that may cause cancer or harm genes, fertility or the unborn
  std::vector<std::string> without_record;  ///< bottles used of which that is not known
  std::vector<ComparedSeries> published;    ///< to be drawn beside the ladder; prepare_bench leaves it empty
};

/// The middle 90 % of what each layer's chance may be, in the order of Plan::layers; nothing of one without a sphere.
std::vector<std::optional<Band>> chance_bands(const JudgedMixture& judged, const Plan& plan);

/// One mixture that the layers were judged against, ready for the vial. Throws as prepare_bench.
BenchMixture bench_mixture(const JudgedMixture& judged, const Plan& plan, const Catalogue& catalogue);

/// Throws InputError (Fault::usage) when a recipe cannot be measured with the job's vial and measure.
Bench prepare_bench(const Plan& plan, const Catalogue& catalogue);

}  // namespace gentlest
