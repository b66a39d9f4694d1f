#include "report/phrases/mixture_name.hpp"

#include "gentlest/liquids/notation.hpp"

namespace gentlest {

std::string origin_short_name(const Origin& origin) {
  const std::string number = std::to_string(origin.number);
  const std::string on_line = origin.line > 1 ? "line " + std::to_string(origin.line) + ", " : "";
  switch (origin.kind) {
    case OriginKind::asked:
    case OriginKind::tested:
      return "mixture";
    case OriginKind::rung:
      return on_line + number;
    case OriginKind::published:
      return number;
    case OriginKind::half_step:
      return on_line + number + ".5";
    case OriginKind::finer_step:
      return on_line + number + "." + std::to_string(origin.step);
    case OriginKind::strongest_within_limit:
      return "strongest within the risk limit";
    case OriginKind::least_risk_that_works:
      return "least risk that reaches the effect";
    case OriginKind::first_test:
      return "first test " + number;
  }
  return {};
}

std::string origin_name(const Origin& origin) {
  const bool is_on_line = origin.kind == OriginKind::rung || origin.kind == OriginKind::half_step;
  if (!is_on_line) return origin_short_name(origin);
  const std::string on_line = origin.line > 1 ? "line " + std::to_string(origin.line) + ", " : "";
  return on_line + "rung " + std::to_string(origin.number) + (origin.kind == OriginKind::half_step ? ".5" : "");
}

std::string short_name(const JudgedMixture& judged) {
  return judged.origin.kind == OriginKind::tested ? to_text(judged.mixture) : origin_short_name(judged.origin);
}

std::string mixture_name(const JudgedMixture& judged) {
  return judged.origin.kind == OriginKind::tested ? to_text(judged.mixture) : origin_name(judged.origin);
}

std::string name_in_plan(const JudgedMixture& judged) {
  return is_of_plan(judged.origin) ? mixture_name(judged) : std::string();
}

}  // namespace gentlest
