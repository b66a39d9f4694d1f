// Will a mixture stay one liquid? Published behaviour first; then how much water the alcohol bears, as
// measured, else estimated by a group method that is corrected by what was measured; then the modified group method on
// the whole composition (water of the alcohols included), then an estimate that says it is one, else "not known".
#pragma once

#include "gentlest/vial/molecules.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

enum class Phases {
  one_liquid,
  near_border,  ///< may cloud or part: look at the vial
  two_liquids,
  unknown  ///< figures are missing
};

/// What an answer rests on, from the surest to the weakest.
enum class PhasesBasis {
  single,     ///< there is only one liquid
  measured,   ///< the water that this alcohol bears with this liquid was measured
  published,  ///< this very pair
  corrected,  ///< water that an alcohol bears with hydrocarbons: group method, corrected by measured limits
  computed,   ///< modified UNIFAC alone, stability of the composition
  estimate,   ///< pair by pair, by published pairs and miscibility numbers
  none
};

/// The published pair behind an answer.
struct DecidingPair {
  std::string a, b;                    ///< names
  Mixing mixing = Mixing::one_liquid;  ///< at the temperature asked for
  const KnownPair* record = nullptr;
};

/// The limit of water behind an answer. Shares are by volume before mixing, per cent.
struct DecidingWater {
  double wet_percent = 0;                 ///< alcohol with its water, in the mixture
  std::string alcohol;                    ///< name
  std::vector<std::string> hydrocarbons;  ///< names
  double limit_percent = 0;               ///< of water in the alcohol, at least 0
  double water_percent = 0;               ///< there is
  std::vector<std::string> corrected_by;  ///< names of the hydrocarbons measured; empty: measured for this very mixture
  std::string grade_that_mixes;           ///< weakest grade of the alcohol that stays one liquid; empty where this does
};

/// What the group method said of the whole composition.
struct ComputedPhases {
  Phases phases = Phases::unknown;
  bool holds_wet_alcohol = false;  ///< of which no limit of water is measured
  bool outweighed = false;         ///< every pair is published to mix, so the answer is a step milder
};

struct PhaseAnswer {
  Phases phases = Phases::unknown;
  PhasesBasis basis = PhasesBasis::none;
  std::vector<std::string> sources = {};        ///< keys of sources.yaml
  std::optional<DecidingPair> pair = {};        ///< of PhasesBasis::published
  std::optional<DecidingWater> water = {};      ///< of PhasesBasis::measured and corrected
  std::optional<ComputedPhases> computed = {};  ///< of PhasesBasis::computed
};

inline constexpr Celsius room_temperature{20};

/// The group method sees a split too early near the point where it begins: with the stand-in for white spirit it parts
/// ethanol and hydrocarbon with hardly any water. So a mixture counts as two liquids only when it also splits at a
/// temperature higher by this much; between the two it counts as near the border. Fitted to one published case (Hook
/// 1988: 15 parts of ethanol or isopropanol in 85 of white spirit part at about 5 % water in the alcohol; at this
/// margin the method says 4.7 and 6.9 %). K. Where limits of water speak, this margin is not used.
inline constexpr double border_margin_K = 60;

/// Range of temperature: 0 to 60 C; the published figures are for 15 to 25 C. Limits of water follow the temperature
/// where they were measured at two (ethanol with toluene), else they hold at 20 to 25 C. Shares are by volume before
/// mixing; that the mixture shrinks by about 1 % is neglected.
PhaseAnswer phases_of(const Mixture& mixture, const Catalogue& catalogue, Celsius temperature = room_temperature);

/// The same without reasons and sources, for a search that asks of thousands.
struct PhaseVerdict {
  Phases phases = Phases::unknown;
  PhasesBasis basis = PhasesBasis::none;
};
PhaseVerdict verdict_on_phases(const Mixture& mixture, const Catalogue& catalogue,
                               Celsius temperature = room_temperature);

/// True when the composition gains by parting into two liquids: Michelsen's tangent-plane test, started from near each
/// pure component. x adds up to 1 and holds no zero. The test can miss a split that no start leads to; it finds no
/// split where there is none.
/// Source: Michelsen 1982, Fluid Phase Equilibria 9, 1 (from memory).
bool is_unstable(const Activity& activity, const std::vector<double>& x);

}  // namespace gentlest
