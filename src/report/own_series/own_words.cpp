#include "report/own_series/own_words.hpp"

#include "gentlest/liquids/notation.hpp"
#include "report/form/format.hpp"
#include "report/phrases/sighting_words.hpp"

namespace gentlest {

std::string own_absence_words(const std::vector<OwnSeries>& series, OwnAbsence why) {
  if (series.empty()) return {};
  std::vector<std::string> names;
  for (const OwnSeries& one : series) names.push_back(one.name);
  const char* reason = why == OwnAbsence::nothing_drawn ? "no picture to stand in"
                       : why == OwnAbsence::shows_tests ? "no place here, since this picture is of what was tested"
                                                        : "no place on a map of the painting";
  return fmt::format(" The job's own series have {}: {}.", reason, joined(names));
}

std::string own_lines_words(const std::vector<OwnLine>& lines) {
  if (lines.empty()) return {};
  return " Dashed, with marks that nothing else has: the job's own series, each named where it ends.";
}

std::string own_panels_words(const std::vector<OwnLine>& lines) {
  if (lines.empty()) return {};
  return " Below the ladder, each on its own: the job's own series.";
}

std::string own_numbered(const OwnLine& line, const std::vector<std::string>& numbers) {
  return fmt::format("{} of \"{}\"", joined(numbers), line.name);
}

std::string own_numbers(const OwnLine& line, const std::vector<std::size_t>& which) {
  if (which.empty()) return {};
  if (which.size() == line.compared->judged.mixtures.size()) return "\"" + line.name + "\"";
  std::vector<std::string> numbers;
  for (const std::size_t one : which) numbers.push_back(std::to_string(one + 1));
  return own_numbered(line, numbers);
}

std::string pointed_own_words(const OwnLine& line, std::size_t mixture) {
  const JudgedMixture& judged = line.compared->judged.mixtures[mixture];
  return fmt::format("{} {}: {}; {}", line.name, mixture + 1, to_text(judged.mixture), effect_and_risk(judged));
}

}  // namespace gentlest
