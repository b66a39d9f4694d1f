#include "report/form/format.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdlib>

namespace gentlest {

namespace {

// Digits of `value` to so many significant places, written out without an exponent and without trailing zeros.
std::string significant(double value, int digits) {
  if (value == 0) return "0";
  const int magnitude = static_cast<int>(std::floor(std::log10(std::abs(value))));
  const int places = digits - 1 - magnitude;
  if (places <= 0) return fmt::format("{:.0f}", value);
  std::string text = fmt::format("{:.{}f}", value, places);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text == "-0" ? "0" : text;
}

int usual_places(double percent) {
  return percent < 19.95 ? 1 : 0;
}

std::string to_places(double percent, int places) {
  return fmt::format("{:.{}f}", percent, places);
}

}  // namespace

std::string fixed(double value, int places) {
  std::string text = fmt::format("{:.{}f}", value, places);
  if (text.front() == '-' && text.find_first_of("123456789") == std::string::npos) text.erase(0, 1);
  return text;
}

std::string as_recorded(double value) {
  return significant(value, 6);
}

std::string as_data(double value) {
  return significant(value, 12);
}

double data_value(double value) {
  return std::strtod(as_data(value).c_str(), nullptr);
}

double computed_value(double value) {
  return std::strtod(fixed(value, 6).c_str(), nullptr);
}

std::string fixed_or_unknown(const std::optional<double>& value, int places) {
  return value ? fixed(*value, places) : not_known;
}

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

std::string with_commas(std::uint64_t count) {
  std::string text = fmt::format("{}", count);
  for (std::size_t at = text.size(); at > 3;) {
    at -= 3;
    text.insert(at, ",");
  }
  return text;
}

std::string counted(std::size_t count, const std::string& one, const std::string& many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

std::string edition_words(const Edition& edition) {
  return fmt::format("gentlest {}, catalogue {}", edition.program, edition.catalogue);
}

std::string joined(const std::vector<std::string>& items, const std::string& between, const std::string& none) {
  if (items.empty()) return none;
  std::string text = items.front();
  for (std::size_t i = 1; i < items.size(); ++i) text += between + items[i];
  return text;
}

}  // namespace gentlest
