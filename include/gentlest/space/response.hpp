// From RED to chance: how likely each grade of a solubility test is at a given RED.
// The figures are fitted by `gentlest calibrate` to published score sets; they live in solvents/response.yaml.
#pragma once

#include <array>
#include <string>

namespace gentlest {

/// Grades of the published score sets, from the strongest action to the weakest: 1 dissolves, 2 nearly dissolves, 3
/// swells strongly, 4 swells, 5 swells a little, 6 nothing seen.
inline constexpr int grade_count = 6;

/// Continuation-ratio ("sequential") ordinal regression of the grade on ln RED. Stage j (1..5) gives the chance of
/// stopping at grade j for a case that is not stronger than j:
///     P(grade = j | grade >= j) = 1 / (1 + exp(-(intercept_j + slope_j ln RED))),   slope_j <= 0.
/// Whatever the figures, the chances add up to 1, never cross, and P(grade <= j) never rises with RED.
/// Source of the form: Fienberg 1980, The Analysis of Cross-Classified Categorical Data, ch. 6 (from memory);
/// fit and cross-validation: docs/science.md, "Response curve".
struct Response {
  struct Stage {
    double intercept = 0;
    double slope = 0;
    bool operator==(const Stage&) const = default;
  };
  std::array<Stage, grade_count - 1> stages{};
  std::string source;  ///< key of sources.yaml
  /// The strongest grade that happens at all: 3 for a cross-linked film, which swells but never dissolves. What the
  /// stages would give to stronger grades counts as this one.
  int strongest = 1;
  bool operator==(const Response&) const = default;
};

/// Chance that the grade is `grade` or stronger at this RED. RED 0 gives 1; 0 for grades stronger than `strongest`.
/// Precondition: red >= 0, grade 1..6.
double chance_at_most(const Response& response, int grade, double red);

/// Chances of the six grades at this RED; they add up to 1.
std::array<double, grade_count> grade_chances(const Response& response, double red);

}  // namespace gentlest
