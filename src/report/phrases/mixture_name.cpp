#include "report/phrases/mixture_name.hpp"

#include "gentlest/liquids/notation.hpp"

namespace gentlest {

std::string short_name(const JudgedMixture& judged) {
  const Origin& origin = judged.origin;
  const std::string number = std::to_string(origin.number);
  switch (origin.kind) {
    case OriginKind::asked:
      return "mixture";
    case OriginKind::rung:
    case OriginKind::published:
      return number;
    case OriginKind::half_step:
      return number + ".5";
    case OriginKind::finer_step:
      return number + "." + std::to_string(origin.step);
    case OriginKind::strongest_within_limit:
      return "strongest within the risk limit";
    case OriginKind::least_risk_that_works:
      return "least risk that reaches the effect";
    case OriginKind::first_test:
      return "first test " + number;
    case OriginKind::tested:
      return to_text(judged.mixture);
  }
  return {};
}

std::string mixture_name(const JudgedMixture& judged) {
  const bool is_on_line = judged.origin.kind == OriginKind::rung || judged.origin.kind == OriginKind::half_step;
  return (is_on_line ? "rung " : "") + short_name(judged);
}

std::string name_in_plan(const JudgedMixture& judged) {
  return is_of_plan(judged.origin) ? mixture_name(judged) : std::string();
}

}  // namespace gentlest
