// What is put on a cleaned painting, retouching media and varnishes: in what they are put on, in what they come off
// again, and what either did to what lay under. Facts as their sources tell them; sources that contradict each other
// are all kept.
#pragma once

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/finishes/witness.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

enum class FinishUse { retouching, varnish, both };
std::string_view to_word(FinishUse use);
std::optional<FinishUse> finish_use_from_word(std::string_view word);

/// The light in which a coat grew old, from the mildest on; years alone do not age it.
enum class Light { not_told, dark, uv_filtered, daylight, strong };
std::string_view to_word(Light light);  ///< empty for `not_told`
std::optional<Light> light_from_word(std::string_view word);

/// What ageing does to the liquid that takes a coat off, from the mildest on.
enum class Ageing { none, slight, somewhat_more_polar, much_more_polar, may_not_dissolve };
std::string_view to_word(Ageing change);
std::optional<Ageing> ageing_from_word(std::string_view word);

/// What became of a coat under a liquid. `untouched` says that it was not even swollen, `stays` only that it did not
/// come off.
enum class ComesOff { comes_off, swells, stays, untouched };
std::string_view to_word(ComesOff result);
std::optional<ComesOff> comes_off_from_word(std::string_view word);

/// State of a coat of which a fact speaks.
enum class FinishState { either, fresh, aged };
std::string_view to_word(FinishState state);
std::optional<FinishState> finish_state_from_word(std::string_view word);

enum class FinishAct { put_on, take_off, both };
std::string_view to_word(FinishAct act);
std::optional<FinishAct> finish_act_from_word(std::string_view word);

/// What an act did to the coat below.
enum class NeighbourSays { spares, slight, may_touch, touches };
std::string_view to_word(NeighbourSays says);
std::optional<NeighbourSays> neighbour_says_from_word(std::string_view word);

/// Who says so, as of an observation.
struct Voice {
  std::string source;  ///< key of sources.yaml
  Witness witness = Witness::memory;
  std::string cite;  ///< where in it and what it says there, in our words
  std::string note;
  Location where;  ///< in the files of the catalogue, for messages
  bool operator==(const Voice&) const = default;
};

struct AppliedIn {
  std::vector<ObservedPart> parts;  ///< per cent by volume
  FinishUse as = FinishUse::both;   ///< where only the retouching or only the varnish is put on in it
  Voice voice;
  bool operator==(const AppliedIn&) const = default;
};

struct AgeingFact {
  std::vector<Light> lights;  ///< at least one
  Ageing change = Ageing::none;
  Voice voice;
  bool operator==(const AgeingFact&) const = default;
};

struct ComesOffFact {
  FinishState state = FinishState::either;
  std::vector<Light> lights;        ///< empty: whatever the light was
  std::vector<ObservedPart> parts;  ///< empty where `any_liquid` or `liquids_in_words` stands in its place
  bool any_liquid = false;
  std::string liquids_in_words;
  ComesOff result = ComesOff::stays;
  Voice voice;
  bool operator==(const ComesOffFact&) const = default;
};

/// One retouching medium or varnish.
struct Finish {
  std::string material;  ///< id, as it is when it is put on
  std::string aged;      ///< id of the same when old; empty where the catalogue has no record of it
  FinishUse use = FinishUse::varnish;
  std::string word;     ///< short name for tables
  bool propose = true;  ///< false: known from old treatments, never proposed
  std::vector<AppliedIn> applied_in;
  std::vector<AgeingFact> ageing;
  std::vector<ComesOffFact> comes_off;
  std::optional<Voice> bedded;  ///< bedded in a varnish it comes off as that varnish does
  Location where;
  bool operator==(const Finish&) const = default;
};

/// Word in a list of materials that means every one.
inline constexpr const char* any_material = "any";

/// What putting one on, or taking it off, did to a coat below. Ids name the material as it is put on and speak of it
/// fresh and aged, or, of one that no finish is made of, that very record.
struct Neighbour {
  std::vector<std::string> upper;
  std::vector<std::string> lower;
  FinishAct act = FinishAct::both;
  FinishState state = FinishState::either;  ///< of the upper one, when it is taken off
  std::vector<ObservedPart> parts;          ///< empty: whatever liquid it is
  NeighbourSays says = NeighbourSays::touches;
  Voice voice;
  bool operator==(const Neighbour&) const = default;
};

/// What holds of every coat; the report words it.
enum class FinishRule {
  leaches_like_a_cleaning,
  one_system_with_its_varnish,
  differ_in_solubility,
  ask_mixtures,
  wait_after_cleaning,
  wait_between_coats,
  swollen_coats_heal_slowly
};
std::string_view to_word(FinishRule rule);
std::optional<FinishRule> finish_rule_from_word(std::string_view word);

struct GeneralFact {
  FinishRule what = FinishRule::ask_mixtures;
  Voice voice;
  bool operator==(const GeneralFact&) const = default;
};

/// solvents/afterwards.yaml as a whole.
struct Finishes {
  std::vector<Finish> all;
  std::vector<Neighbour> neighbours;
  std::vector<GeneralFact> general;
  bool operator==(const Finishes&) const = default;
};

/// The finish that this material is, fresh or aged; null where none is made of it.
const Finish* finish_of(const Finishes& finishes, std::string_view material);

}  // namespace gentlest
