// Sums in words and signs. A line is "TITLE: SUM = RESULT UNIT", and holds all it takes to reckon it again.
#pragma once

#include "gentlest/sums/sums.hpp"

#include <string>

namespace gentlest {

/// "4 x (15.15 - 17.4)^2 + (2.64 - 6.1)^2": x is times, ^2 the square, ln the natural logarithm, exp(a) e to the power
/// a, max the largest. Negative numbers stand in brackets.
std::string sum_text(const Term& sum);

/// What the number is: "dD, isooctane"; the same without whose it is.
std::string input_title(const SumInput& input);
std::string input_kind_title(const SumInput& input);

/// "of the catalogue, alshehri_2022, measured", "as the job says", "reckoned by the program; no hand repeats it".
std::string input_from(const SumInput& input);

std::string step_title(const SumStep& step);
std::string unit_text(SumUnit unit);

/// The figure as the program prints it elsewhere; empty where it prints it nowhere.
std::string printed_text(const SumStep& step);

/// "RED to oil paint: 7.12 / 8.3 = 0.857831, printed as 0.86". In short, long sums are left to the whole answer.
std::string step_line(const SumStep& step, bool in_short = false);

/// A word for programs.
std::string input_key(InputKind kind);
std::string step_key(StepKind kind);
std::string from_key(InputFrom from);

}  // namespace gentlest
