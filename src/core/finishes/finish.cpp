#include "gentlest/finishes/finish.hpp"

#include "core/base/enum_words.hpp"

#include <array>
#include <utility>

namespace gentlest {

namespace {

template <class Enum, std::size_t N>
using Words = std::array<std::pair<Enum, std::string_view>, N>;

constexpr Words<Confidence, 3> confidence_words = {
    {{Confidence::high, "high"}, {Confidence::medium, "medium"}, {Confidence::low, "low"}}};

constexpr Words<Witness, 3> witness_words = {
    {{Witness::seen, "seen"}, {Witness::memory, "from memory"}, {Witness::practice, "common practice"}}};

constexpr Words<FinishUse, 3> use_words = {
    {{FinishUse::retouching, "retouching"}, {FinishUse::varnish, "varnish"}, {FinishUse::both, "both"}}};

constexpr Words<Light, 4> light_words = {{{Light::dark, "dark"},
                                          {Light::uv_filtered, "uv_filtered"},
                                          {Light::daylight, "daylight"},
                                          {Light::strong, "strong"}}};

constexpr Words<Ageing, 5> ageing_words = {{{Ageing::none, "none"},
                                            {Ageing::slight, "slight"},
                                            {Ageing::somewhat_more_polar, "somewhat_more_polar"},
                                            {Ageing::much_more_polar, "much_more_polar"},
                                            {Ageing::may_not_dissolve, "may_not_dissolve"}}};

constexpr Words<ComesOff, 4> comes_off_words = {{{ComesOff::comes_off, "comes_off"},
                                                 {ComesOff::swells, "swells"},
                                                 {ComesOff::stays, "stays"},
                                                 {ComesOff::untouched, "untouched"}}};

constexpr Words<FinishState, 3> state_words = {
    {{FinishState::either, "either"}, {FinishState::fresh, "fresh"}, {FinishState::aged, "aged"}}};

constexpr Words<FinishAct, 3> act_words = {
    {{FinishAct::put_on, "put_on"}, {FinishAct::take_off, "take_off"}, {FinishAct::both, "both"}}};

constexpr Words<NeighbourSays, 4> says_words = {{{NeighbourSays::spares, "spares"},
                                                 {NeighbourSays::slight, "slight"},
                                                 {NeighbourSays::may_touch, "may_touch"},
                                                 {NeighbourSays::touches, "touches"}}};

constexpr Words<FinishRule, 7> rule_words = {{{FinishRule::leaches_like_a_cleaning, "leaches_like_a_cleaning"},
                                              {FinishRule::one_system_with_its_varnish, "one_system_with_its_varnish"},
                                              {FinishRule::differ_in_solubility, "differ_in_solubility"},
                                              {FinishRule::ask_mixtures, "ask_mixtures"},
                                              {FinishRule::wait_after_cleaning, "wait_after_cleaning"},
                                              {FinishRule::wait_between_coats, "wait_between_coats"},
                                              {FinishRule::swollen_coats_heal_slowly, "swollen_coats_heal_slowly"}}};

}  // namespace

std::string_view to_word(Confidence confidence) {
  return word_of(confidence_words, confidence);
}
std::optional<Confidence> confidence_from_word(std::string_view word) {
  return value_of<Confidence>(confidence_words, word);
}

std::string_view to_word(Witness witness) {
  return word_of(witness_words, witness);
}
std::optional<Witness> witness_from_word(std::string_view word) {
  return value_of<Witness>(witness_words, word);
}
std::string_view to_word(FinishUse use) {
  return word_of(use_words, use);
}
std::optional<FinishUse> finish_use_from_word(std::string_view word) {
  return value_of<FinishUse>(use_words, word);
}
std::string_view to_word(Light light) {
  return word_of(light_words, light);
}
std::optional<Light> light_from_word(std::string_view word) {
  return value_of<Light>(light_words, word);
}
std::string_view to_word(Ageing change) {
  return word_of(ageing_words, change);
}
std::optional<Ageing> ageing_from_word(std::string_view word) {
  return value_of<Ageing>(ageing_words, word);
}
std::string_view to_word(ComesOff result) {
  return word_of(comes_off_words, result);
}
std::optional<ComesOff> comes_off_from_word(std::string_view word) {
  return value_of<ComesOff>(comes_off_words, word);
}
std::string_view to_word(FinishState state) {
  return word_of(state_words, state);
}
std::optional<FinishState> finish_state_from_word(std::string_view word) {
  return value_of<FinishState>(state_words, word);
}
std::string_view to_word(FinishAct act) {
  return word_of(act_words, act);
}
std::optional<FinishAct> finish_act_from_word(std::string_view word) {
  return value_of<FinishAct>(act_words, word);
}
std::string_view to_word(NeighbourSays says) {
  return word_of(says_words, says);
}
std::optional<NeighbourSays> neighbour_says_from_word(std::string_view word) {
  return value_of<NeighbourSays>(says_words, word);
}
std::string_view to_word(FinishRule rule) {
  return word_of(rule_words, rule);
}
std::optional<FinishRule> finish_rule_from_word(std::string_view word) {
  return value_of<FinishRule>(rule_words, word);
}

const Finish* finish_of(const Finishes& finishes, std::string_view material) {
  for (const Finish& finish : finishes.all)
    if (!material.empty() && (finish.material == material || finish.aged == material)) return &finish;
  return nullptr;
}

}  // namespace gentlest
