#include "gentlest/liquids/notation.hpp"

#include "gentlest/liquids/grade.hpp"

#include <fmt/format.h>

namespace gentlest {

std::string grade_of_percent(int percent) {
  return percent == 100 ? "absolute" : fmt::format("{} %", percent);
}

std::string grade_text(double percent, StrengthBasis basis) {
  return fmt::format("{:.6g} {}", percent, basis == StrengthBasis::weight ? "% w/w" : "%");
}

std::string bottle_label(std::string_view solvent, std::string_view grade) {
  return grade.empty() ? std::string(solvent) : fmt::format("{} {}", solvent, grade);
}

std::string to_text(const Mixture& mixture) {
  std::string text;
  for (const Part& part : mixture.parts())
    text += fmt::format("{}{} {:.4g}", text.empty() ? "" : ", ", part.liquid.label, 100 * part.fraction);
  return text;
}

std::string unnamed_solution() {
  return "aqueous: not named";
}

}  // namespace gentlest
