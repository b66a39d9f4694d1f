#include "gentlest/job/limits.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <type_traits>

namespace gentlest {

int risk_grade_of(std::optional<int> harm_grade, int strongest_grade, const Limits& limits) {
  return std::max(limits.risk_grade.value_or(harm_grade.value_or(usual_risk_grade)), strongest_grade);
}

int effect_grade_of(int strongest_grade, const Limits& limits) {
  return std::max(limits.effect_grade, strongest_grade);
}

const std::vector<Limit>& all_limits() {
  static const std::vector<Limit> limits = {
      {"parts", &Limits::parts, 1, 4, Ends::belong, "", "parts"},
      {"bottles", &Limits::bottles, 1, 8, Ends::belong, "", "bottles"},
      {"step_percent", &Limits::step_percent, 1, 50, Ends::divide_100, "% by volume", "step"},
      {"rungs", &Limits::rungs, 2, 30, Ends::belong, "", "rungs"},
      {"lines", &Limits::lines, 0, 6, Ends::belong, "", "lines"},
      // A limit of 1 would be none, and is what somebody types who means 1 %.
      {"risk_limit", &Limits::risk_limit, 0, 1, Ends::excluded, "", "risk-limit"},
      {"wanted_effect", &Limits::wanted_effect, 0, 1},
      {"effect_grade", &Limits::effect_grade, 1, 5},
      {"risk_grade", &Limits::risk_grade, 1, 5},
      {"avoid_families", &Limits::avoid_families},
      {"avoid_statements", &Limits::avoid_statements},
      {"avoid_solvents", &Limits::avoid_solvents},
      {"exactly", &Limits::exactly},
      {"allow_acting", &Limits::allow_acting},
      {"lowest_flash_point_C", &Limits::lowest_flash_point_C, -100, 200, Ends::belong, "C"},
      {"avoid_label", &Limits::avoid_label},
      {"allow_unknown_hazards", &Limits::allow_unknown_hazards},
      {"allow_splitting", &Limits::allow_splitting},
      {"allow_drift", &Limits::allow_drift},
      {"prefer_healthier", &Limits::prefer_healthier},
      {"edge_tests", &Limits::edge_tests, 0, 30},
      {"vial_mL", &Limits::vial_mL, 0.1, 10000, Ends::belong, "mL", "vial"},
      {"measure_mL", &Limits::measure_mL, 0.001, 100, Ends::belong, "mL", "measure"},
      {"room_C", &Limits::room_C, 0, 40, Ends::belong, "C"},
  };
  return limits;
}

const Limit* find_limit(std::string_view key) {
  for (const Limit& limit : all_limits())
    if (key == limit.key) return &limit;
  return nullptr;
}

std::optional<double> number_of(const Limit& limit, const Limits& limits) {
  return std::visit(
      [&](auto member) -> std::optional<double> {
        using Value = std::decay_t<decltype(limits.*member)>;
        if constexpr (std::is_same_v<Value, int> || std::is_same_v<Value, double>)
          return static_cast<double>(limits.*member);
        else if constexpr (std::is_same_v<Value, std::optional<double>> || std::is_same_v<Value, std::optional<int>>)
          return limits.*member;
        else
          return std::nullopt;
      },
      limit.member);
}

void put_number(const Limit& limit, double value, Limits& limits) {
  assert(has_range(limit));
  std::visit(
      [&](auto member) {
        using Value = std::decay_t<decltype(limits.*member)>;
        if constexpr (std::is_same_v<Value, int> || std::is_same_v<Value, std::optional<int>>)
          limits.*member = static_cast<int>(value);
        else if constexpr (std::is_same_v<Value, double> || std::is_same_v<Value, std::optional<double>>)
          limits.*member = value;
      },
      limit.member);
}

bool is_whole(const Limit& limit) {
  return std::holds_alternative<int Limits::*>(limit.member) ||
         std::holds_alternative<std::optional<int> Limits::*>(limit.member);
}

bool has_range(const Limit& limit) {
  return limit.smallest < limit.largest;
}

bool is_within(const Limit& limit, double value) {
  if (limit.ends == Ends::excluded) return value > limit.smallest && value < limit.largest;
  if (!(value >= limit.smallest && value <= limit.largest)) return false;
  return limit.ends == Ends::belong || 100 % static_cast<int>(value) == 0;
}

std::string range_words(const Limit& limit) {
  switch (limit.ends) {
    case Ends::excluded:
      return fmt::format("between {} and {}", limit.smallest, limit.largest);
    case Ends::divide_100:
      return "divides 100";
    case Ends::belong:
      break;
  }
  return fmt::format("{} to {}", limit.smallest, limit.largest);
}

std::string outside_words(const Limit& limit) {
  switch (limit.ends) {
    case Ends::excluded:
      return "not " + range_words(limit);
    case Ends::divide_100:
      return "which does not divide 100";
    case Ends::belong:
      break;
  }
  return "outside " + range_words(limit);
}

WantedNumber wanted_of(const Limit& limit) {
  return {unit_of_key(limit.key), limit.smallest, limit.largest, is_whole(limit)};
}

std::string range_remedy(const Limit& limit, double value) {
  if (std::string cure = cure_of_range(value, wanted_of(limit)); !cure.empty()) return cure;
  switch (limit.ends) {
    case Ends::excluded:
      return "write for example 0.1 for 10 %";
    case Ends::divide_100:
      return "take 1, 2, 4, 5, 10, 20, 25 or 50";
    case Ends::belong:
      break;
  }
  return {};
}

}  // namespace gentlest
