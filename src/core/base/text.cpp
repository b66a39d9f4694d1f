#include "gentlest/base/text.hpp"

#include <fmt/format.h>

namespace gentlest {

namespace {

int usual_places(double percent) {
  return percent < 19.95 ? 1 : 0;
}

std::string to_places(double percent, int places) {
  return fmt::format("{:.{}f}", percent, places);
}

}  // namespace

std::string per_cent(double chance) {
  const double percent = 100 * chance;
  if (percent < 0.05) return "<0.1 %";
  if (percent > 99.5) return ">99 %";
  return to_places(percent, usual_places(percent)) + " %";
}

std::string per_cent_beside(double chance, double limit) {
  constexpr double equal = 1e-9;
  constexpr int most_places = 8;
  const std::string usual = per_cent(chance);
  if (std::abs(chance - limit) < equal || usual.front() == '<' || usual.front() == '>') return usual;
  const double percent = 100 * chance;
  for (int places = usual_places(percent); places <= most_places; ++places) {
    const std::string text = to_places(percent, places);
    const double printed = std::strtod(text.c_str(), nullptr) / 100;
    if (std::abs(printed - limit) >= equal && (printed < limit) == (chance < limit)) return text + " %";
  }
  return usual;
}

std::string setting_per_cent(double share) {
  return fmt::format("{:.4g} %", 100 * share);
}

}  // namespace gentlest
