#include "core/job/job_cures.hpp"

#include "gentlest/base/text.hpp"
#include "gentlest/liquids/grade.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <vector>

namespace gentlest {

namespace {

// Cut at the words and signs that stand between two names.
std::vector<std::string> names_in(std::string_view typed) {
  constexpr std::array<std::string_view, 7> between = {", ", ";", " + ", " and ", " or ", " / ", " & "};
  std::vector<std::string> names;
  while (true) {
    std::size_t cut = typed.size();
    std::size_t width = 0;
    for (const std::string_view sign : between)
      if (const std::size_t at = typed.find(sign); at < cut) {
        cut = at;
        width = sign.size();
      }
    names.emplace_back(trimmed(typed.substr(0, cut)));
    if (width == 0) return names;
    typed.remove_prefix(cut + width);
  }
}

bool is_amount(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size() && (is_digit(text[at]) || text[at] == '.' || text[at] == ',' || text[at] == ' ')) ++at;
  const std::string unit = folded(text.substr(at));
  return at > 0 && (unit == "ml" || unit == "l" || unit == "cl" || unit == "litre" || unit == "litres" || unit == "g" ||
                    unit == "kg");
}

// "ethanol 96 %": the longest start that names a solvent, and what stands behind it.
std::string cure_of_rest(std::string_view typed, const Catalogue& catalogue) {
  for (std::size_t at = typed.rfind(' '); at != std::string_view::npos && at > 0; at = typed.rfind(' ', at - 1)) {
    const std::string_view name = trimmed(typed.substr(0, at));
    if (!catalogue.find_solvent(name)) continue;
    const std::string_view rest = trimmed(typed.substr(at));
    const char* sign = is_digit(rest.back()) ? " %" : "";
    if (is_grade(rest)) return fmt::format("write {{solvent: {}, grade: \"{}{}\"}}", name, rest, sign);
    if (is_amount(rest)) return fmt::format("write {} alone; how much is in the bottle is not counted", name);
    return {};
  }
  return {};
}

}  // namespace

std::string bottle_cure(std::string_view typed, const Catalogue& catalogue) {
  const std::vector<std::string> names = names_in(typed);
  const bool are_solvents = std::all_of(names.begin(), names.end(), [&](const std::string& name) {
    return catalogue.find_solvent(name) || !cure_of_rest(name, catalogue).empty();
  });
  if (names.size() > 1 && are_solvents)
    return fmt::format("each bottle has a line of its own: \"- {}\" and so on", names.front());
  return cure_of_rest(typed, catalogue);
}

std::string material_cure(std::string_view typed, const Catalogue& catalogue) {
  const std::vector<std::string> names = names_in(typed);
  const bool are_materials = std::all_of(names.begin(), names.end(), [&](const std::string& name) {
    const Meaning<Material> meaning = catalogue.meaning_of_material(name);
    return meaning.record || meaning.ask;
  });
  if (names.size() < 2 || !are_materials) return {};
  return "name the likeliest; what else it may be stands under possible, with per cent";
}

bool is_statement_code(std::string_view code) {
  return code.size() >= 4 && code[0] == 'H' && is_digit(code[1]) && is_digit(code[2]) && is_digit(code[3]) &&
         code.find_first_not_of("FDfdi", 4) == std::string_view::npos;
}

std::string code_cure(std::string_view typed) {
  std::vector<std::string> codes;
  for (std::size_t at = 0; at + 3 <= typed.size(); ++at) {
    const bool is_number = is_digit(typed[at]) && is_digit(typed[at + 1]) && is_digit(typed[at + 2]) &&
                           (at + 3 == typed.size() || !is_digit(typed[at + 3]));
    if (!is_number) continue;
    const std::size_t end = std::min(typed.find_first_not_of("FDfdi", at + 3), typed.size());
    const bool starts_well =
        folded(trimmed(typed.substr(0, at))).find_first_not_of("h +/&,;0123456789fdi") == std::string::npos;
    if (starts_well) codes.push_back("H" + std::string(typed.substr(at, end - at)));
    at = end - 1;
  }
  if (codes.size() == 1) return fmt::format("did you mean \"{}\"?", codes.front());
  if (codes.size() > 1) return fmt::format("write each alone: [{}]", fmt::join(codes, ", "));
  return "write them like H360";
}

}  // namespace gentlest
