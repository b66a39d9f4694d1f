#include "report/phrases/fit_words.hpp"

#include <fmt/format.h>

#include <array>

namespace gentlest {

namespace {

const char* words_of(FitDoubt doubt) {
  switch (doubt) {
    case FitDoubt::few_bad_solvents:
      return "fewer than 10 solvents fail to dissolve it";
    case FitDoubt::radius_runs_away:
      return "the radius runs away";
    case FitDoubt::larger_fits:
      return "a sphere more than 40 % larger fits almost as well";
    case FitDoubt::liquids_alike_in_dD:
      return "the liquids hardly differ in dD";
    case FitDoubt::liquids_alike_in_dP:
      return "the liquids hardly differ in dP";
    case FitDoubt::liquids_alike_in_dH:
      return "the liquids hardly differ in dH";
  }
  return "";
}

}  // namespace

const char* grade_words(int grade) {
  static constexpr std::array<const char*, grade_count> words = {"dissolves", "nearly dissolves", "swells strongly",
                                                                 "swells",    "swells a little",  "nothing seen"};
  return words[static_cast<std::size_t>(grade - 1)];
}

std::vector<std::string> doubt_words(const std::vector<FitDoubt>& doubts) {
  std::vector<std::string> words;
  for (const FitDoubt doubt : doubts) words.emplace_back(words_of(doubt));
  return words;
}

std::string group_words(SpreadGroup group) {
  switch (group) {
    case SpreadGroup::held:
      return fmt::format("held, up to {} misplaced", weak_from_misplaced - 1);
    case SpreadGroup::weak:
      return fmt::format("held, {} or more misplaced", weak_from_misplaced);
    case SpreadGroup::open:
      return "not held by its solvents";
    case SpreadGroup::all:
      return "all sets";
    case SpreadGroup::kin:
      return "one resin for another like it";
  }
  return {};
}

}  // namespace gentlest
