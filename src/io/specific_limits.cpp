#include "io/specific_limits.hpp"

#include "gentlest/base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <regex>

namespace gentlest {

namespace {

using FaultTexts = std::vector<std::string>;

// The signs of print as they are typed.
std::string with_plain_signs(std::string text) {
  for (const auto& [printed, typed] : {std::pair("\xE2\x89\xA5", ">="), std::pair("\xE2\x89\xA4", "<=")})
    for (std::size_t at = text.find(printed); at != std::string::npos; at = text.find(printed))
      text.replace(at, 3, typed);
  return text;
}

bool read_remark(const std::string& item, OwnLimits& own) {
  if (folded(item).rfind("note", 0) != 0) return false;
  own.remarks.push_back(item);
  return true;
}

// "C >= 25 %", "10 % <= C < 25 %", with or without "H335:" before it.
bool read_limit(const std::string& item, OwnLimits& own, FaultTexts& faults) {
  static const std::regex form(
      R"((EUH\d{3}[A-Z]?|H\d{3}[A-Za-z]*)\s*:\s*(?:([0-9.]+)\s*%\s*<=\s*C\s*<\s*([0-9.]+)\s*%|C\s*>=\s*([0-9.]+)\s*%))");
  std::smatch match;
  if (!std::regex_match(item, match, form)) return false;
  const auto from = number_from(match[match[2].matched ? 2 : 4].str());
  const auto below = number_from(match[3].str());
  if (!from || (match[3].matched && !below)) return false;
  if (!(*from > 0 && *from <= 100) || (below && !(*below > *from && *below <= 100)))
    faults.push_back(fmt::format("\"{}\" is no part of 0 to 100 %", item));
  own.limits.push_back({match[1], *from, below});
  return true;
}

bool read_ATE(const std::string& item, OwnLimits& own, FaultTexts& faults) {
  static const std::regex form(
      R"((oral|dermal|inhalation)\s*:\s*ATE\s*=\s*([0-9.]+)\s*(mg/kg(?:\s*bw)?|mg/L)\s*(\(vapours?\)|\((?:dusts?|mists?|dusts? or mists?|dusts?/mists?)\))?)",
      std::regex::icase);
  std::smatch match;
  if (!std::regex_match(item, match, form)) return false;
  const std::string route = folded(match[1].str());
  const auto ATE = number_from(match[2].str());
  const bool by_air = folded(match[3].str()) == "mg/l";
  if (!ATE || by_air != (route == "inhalation") || by_air != match[4].matched) return false;
  if (!(*ATE > 0)) faults.push_back(fmt::format("\"{}\": an estimate lies above 0", item));
  const bool vapour = by_air && folded(match[4].str()).rfind("(vapour", 0) == 0;
  auto& place = route == "oral"     ? own.ATE_oral_mg_per_kg
                : route == "dermal" ? own.ATE_dermal_mg_per_kg
                : vapour            ? own.ATE_vapour_mg_per_L
                                    : own.ATE_mist_mg_per_L;
  if (place) faults.push_back(fmt::format("\"{}\": the same estimate stands there twice", item));
  place = ATE;
  return true;
}

bool read_factor(const std::string& item, OwnLimits& own, FaultTexts& faults) {
  static const std::regex form(R"(M\s*(\((?:acute|chronic)\))?\s*=\s*([0-9.]+))", std::regex::icase);
  std::smatch match;
  if (!std::regex_match(item, match, form)) return false;
  const auto M = number_from(match[2].str());
  if (!M) return false;
  if (!(*M >= 1)) faults.push_back(fmt::format("\"{}\": a factor is at least 1", item));
  const std::string which = folded(match[1].str());
  if (which != "(chronic)") own.M_acute = *M;
  if (which != "(acute)") own.M_chronic = *M;
  return true;
}

bool is_class(const std::string& item) {
  static const std::regex form(R"([A-Z][A-Za-z. ]* [1-4][A-C]?)");
  return std::regex_match(item, form);
}

bool is_limit(const std::string& item) {
  return item.rfind("H", 0) == 0 || item.rfind("EUH", 0) == 0;
}

// Dangers that one statement speaks of, from the strongest to the mildest.
constexpr std::array<std::array<const char*, 4>, 11> kinds = {{{"H314", "H318", "H319", ""},
                                                               {"H314", "H315", "", ""},
                                                               {"H317", "EUH208", "", ""},
                                                               {"H334", "EUH208", "", ""},
                                                               {"H370", "H371", "", ""},
                                                               {"H372", "H373", "", ""},
                                                               {"H340", "H341", "", ""},
                                                               {"H350", "H351", "", ""},
                                                               {"H360", "H361", "", ""},
                                                               {"EUH380", "EUH381", "", ""},
                                                               {"EUH430", "EUH431", "", ""}}};

bool carries(const Hazards& hazards, const std::string& code) {
  const auto begins_alike = [&](const std::string& statement) { return statement.rfind(code, 0) == 0; };
  return std::any_of(hazards.statements.begin(), hazards.statements.end(), begins_alike) ||
         std::any_of(hazards.supplemental.begin(), hazards.supplemental.end(), begins_alike);
}

bool carries_or_stronger(const Hazards& hazards, const std::string& code) {
  const std::string plain = code.substr(0, code[0] == 'E' ? 6 : 4);  // H360D is H360
  if (carries(hazards, plain)) return true;
  for (const auto& kind : kinds) {
    const auto place = std::find(kind.begin(), kind.end(), plain);
    if (std::any_of(kind.begin(), place,
                    [&](const char* stronger) { return place != kind.end() && carries(hazards, stronger); }))
      return true;
  }
  return false;
}

// Statements whose rule asks for a limit of each part; one for a flammable class is printed, the flash point decides.
bool has_limits(const std::string& code) {
  static const std::regex form(
      "H22[456]|H304|H31[4578]|H319|H33[456]|H34[01]|H35[01]i?|H36[012][A-Za-z]*|H37[0-3]|EUH38[01]|EUH43[01]|EUH44[01]"
      "|EUH45["
      "01]");
  return std::regex_match(code, form);
}

bool carries_any(const Hazards& hazards, std::initializer_list<const char*> codes) {
  return std::any_of(codes.begin(), codes.end(), [&](const char* code) { return carries(hazards, code); });
}

}  // namespace

OwnLimits own_limits_from(const std::string& text, std::vector<std::string>& faults) {
  OwnLimits own;
  const std::vector<std::string> items = items_of(with_plain_signs(text), ";");
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (is_class(items[i]) && i + 1 < items.size() && is_limit(items[i + 1])) continue;
    if (read_remark(items[i], own) || read_limit(items[i], own, faults) || read_ATE(items[i], own, faults) ||
        read_factor(items[i], own, faults))
      continue;
    faults.push_back(fmt::format("\"{}\" is no limit that can be read", items[i]));
  }
  return own;
}

std::vector<std::string> limits_without_use(const Hazards& hazards) {
  std::vector<std::string> faults;
  for (const SpecificLimit& limit : hazards.own.limits) {
    if (!has_limits(limit.code))
      faults.push_back(fmt::format("no rule for mixtures has a limit for {}", limit.code));
    else if (limit.below_percent && !carries_or_stronger(hazards, limit.code))
      faults.push_back(fmt::format("there is a band for {}, which is not among the statements", limit.code));
  }
  const OwnLimits& own = hazards.own;
  if (own.ATE_oral_mg_per_kg && !carries_any(hazards, {"H300", "H301", "H302"}))
    faults.emplace_back("there is an estimate for swallowing, but no statement of H300 to H302");
  if (own.ATE_dermal_mg_per_kg && !carries_any(hazards, {"H310", "H311", "H312"}))
    faults.emplace_back("there is an estimate for the skin, but no statement of H310 to H312");
  if ((own.ATE_vapour_mg_per_L || own.ATE_mist_mg_per_L) && !carries_any(hazards, {"H330", "H331", "H332"}))
    faults.emplace_back("there is an estimate for breathing in, but no statement of H330 to H332");
  if ((own.M_acute > 1 || own.M_chronic > 1) && !carries_any(hazards, {"H400", "H410"}))
    faults.emplace_back("there is a factor M, but neither H400 nor H410");
  return faults;
}

}  // namespace gentlest
