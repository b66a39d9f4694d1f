// Sums as they are written down: numbers of so many decimals and what is done with them, so that the printed line and
// its result come from one thing.
#pragma once

#include <vector>

namespace gentlest {

enum class Operation {
  number,
  add,       ///< of all parts
  subtract,  ///< the second from the first
  multiply,  ///< of all parts
  divide,    ///< the first by the second
  square,
  square_root,
  exponential,   ///< e to the power
  power_of_ten,  ///< 10 to the power
  logarithm,     ///< natural
  largest        ///< of all parts
};

/// A number as it is printed, or an operation on parts.
struct Term {
  Operation operation = Operation::number;
  double value = 0;  ///< of a number: rounded to `places`
  int places = 0;    ///< decimals that are printed, 0 to 12
  std::vector<Term> parts = {};
  bool operator==(const Term&) const = default;
};

/// Rounded to so many decimals, to the double that a reader of the printed digits would get.
double rounded(double value, int places);

/// A number that is printed with so many decimals; the other with as many, up to 9, as it takes.
Term number(double value, int places);
Term number(double value);

Term sum_of(std::vector<Term> parts);
Term product_of(std::vector<Term> parts);
Term difference_of(Term from, Term what);
Term quotient_of(Term what, Term by);
Term apply(Operation operation, Term to);  ///< square, square_root, exponential, power_of_ten, logarithm
Term largest_of(std::vector<Term> parts);

/// What comes out, from the numbers as printed.
double value_of(const Term& term);

}  // namespace gentlest
