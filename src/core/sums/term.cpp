#include "gentlest/sums/term.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <utility>

namespace gentlest {

double rounded(double value, int places) {
  const double scale = std::pow(10, places);
  return std::round(value * scale) / scale + 0.0;  // no "-0"
}

Term number(double value, int places) {
  return {Operation::number, rounded(value, places), places, {}};
}

Term number(double value) {
  constexpr int most = 9;
  int places = 0;
  while (places < most && std::abs(rounded(value, places) - value) > 1e-12 * std::max(1.0, std::abs(value))) ++places;
  return number(value, places);
}

Term sum_of(std::vector<Term> parts) {
  return parts.size() == 1 ? std::move(parts.front()) : Term{Operation::add, 0, 0, std::move(parts)};
}

Term product_of(std::vector<Term> parts) {
  return {Operation::multiply, 0, 0, std::move(parts)};
}

Term difference_of(Term from, Term what) {
  return {Operation::subtract, 0, 0, {std::move(from), std::move(what)}};
}

Term quotient_of(Term what, Term by) {
  return {Operation::divide, 0, 0, {std::move(what), std::move(by)}};
}

Term apply(Operation operation, Term to) {
  return {operation, 0, 0, {std::move(to)}};
}

Term largest_of(std::vector<Term> parts) {
  return parts.size() == 1 ? std::move(parts.front()) : Term{Operation::largest, 0, 0, std::move(parts)};
}

double value_of(const Term& term) {
  std::vector<double> parts;
  for (const Term& part : term.parts) parts.push_back(value_of(part));
  assert(term.operation == Operation::number || !parts.empty());
  double result = 0;
  switch (term.operation) {
    case Operation::number:
      return term.value;
    case Operation::add:
      for (const double part : parts) result += part;
      return result;
    case Operation::subtract:
      return parts[0] - parts[1];
    case Operation::multiply:
      result = 1;
      for (const double part : parts) result *= part;
      return result;
    case Operation::divide:
      return parts[0] / parts[1];
    case Operation::square:
      return parts[0] * parts[0];
    case Operation::square_root:
      return std::sqrt(parts[0]);
    case Operation::exponential:
      return std::exp(parts[0]);
    case Operation::power_of_ten:
      return std::pow(10, parts[0]);
    case Operation::logarithm:
      return std::log(parts[0]);
    case Operation::largest:
      return *std::max_element(parts.begin(), parts.end());
  }
  return result;
}

}  // namespace gentlest
