// Reads the specific limits of a hazard record, as they are printed.
#include "gentlest/mixture_hazard.hpp"
#include "gentlest/text.hpp"

#include <algorithm>
#include <cctype>

namespace gentlest {

namespace {

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

// The number that starts at `at`, after spaces and signs of comparison.
std::optional<double> number_at(const std::string& text, std::size_t at) {
  while (at < text.size() && (text[at] == ' ' || text[at] == '=' || text[at] == '>' || text[at] == '<')) ++at;
  std::size_t end = at;
  while (end < text.size() && (is_digit(text[end]) || text[end] == '.')) ++end;
  return number_from(std::string_view(text).substr(at, end - at));
}

// "C >= 25 %", "3 % <= C < 10 %", "C < 10 %": the two ends.
std::optional<SpecificLimit> limit_from(const std::string& code, const std::string& range) {
  const std::size_t C = range.find('C');
  if (C == std::string::npos) return std::nullopt;
  SpecificLimit limit{code, 0, std::nullopt};
  const std::string after = range.substr(C + 1);
  const auto first = number_at(after, 0);
  const bool at_least = after.find(">=") != std::string::npos;
  if (at_least && first) limit.from_percent = *first;
  if (!at_least && after.find('<') != std::string::npos) limit.below_percent = first;
  if (const auto before = number_at(range.substr(0, C), 0)) limit.from_percent = *before;
  return limit;
}

}  // namespace

std::vector<SpecificLimit> specific_limits_in(const std::string& text) {
  std::vector<SpecificLimit> limits;
  for (std::size_t at = text.find('H'); at != std::string::npos; at = text.find('H', at + 1)) {
    std::size_t end = at + 1;
    while (end < text.size() && is_digit(text[end])) ++end;
    if (end != at + 4) continue;
    while (end < text.size() && std::isalpha(static_cast<unsigned char>(text[end])) != 0) ++end;
    if (end >= text.size() || text[end] != ':') continue;
    const std::string code = text.substr(at, end - at);
    const std::size_t stop = text.find(';', end);
    if (const auto limit = limit_from(code, text.substr(end + 1, stop == std::string::npos ? stop : stop - end - 1)))
      limits.push_back(*limit);
  }
  return limits;
}

std::optional<double> recorded_ATE(const std::string& text, const std::string& route) {
  const std::size_t at = text.find(route + ":");
  if (at == std::string::npos) return std::nullopt;
  const std::size_t ATE = text.find("ATE", at);
  if (ATE == std::string::npos || text.find(';', at) < ATE) return std::nullopt;
  return number_at(text, ATE + 3);
}

double M_factor(const std::string& text) {
  const std::size_t at = text.find("M=");
  if (at == std::string::npos) return 1;
  return number_at(text, at + 2).value_or(1);
}

}  // namespace gentlest
