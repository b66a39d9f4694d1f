#include "report/worked/worked_report.hpp"

#include "report/bottle/label_words.hpp"
#include "report/bottle/statement_words.hpp"
#include "report/form/format.hpp"
#include "report/form/json.hpp"
#include "report/form/short_screen.hpp"
#include "report/form/table.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/worked/sum_words.hpp"

#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

constexpr const char* signs_in_short =
    "Each line is reckoned from its own digits: x is times, ^2 the square, sqrt the root, exp(a) e to the power a.";
constexpr const char* how_to_read =
    "Each line is reckoned from the digits that stand in it: x is times, ^2 the square, sqrt the root, ln the natural "
    "logarithm, exp(a) e to the power a, ten_to(a) ten to the power a, max the largest.";

std::string subject_words(const WorkedCase& one) {
  switch (one.what) {
    case Explained::mixture:
      return "effect and risk";
    case Explained::label:
      return "label";
    case Explained::flash_point:
      return "flash point";
  }
  return {};
}

std::string title_of_case(const WorkedCase& one) {
  const std::string rung = one.sums.rung ? origin_name(*one.sums.rung) + ", " : std::string();
  return fmt::format("How it is reckoned: {} of {}{}", subject_words(one), rung, to_text(one.sums.mixture));
}

std::string section_title(SumSection section) {
  switch (section) {
    case SumSection::point:
      return "The mixture's point, shares times parameters";
    case SumSection::teas:
      return "The triangle, each parameter's share";
    case SumSection::layer:
      return "Layers: distance, RED, chance";
    case SumSection::recipe:
      return "In the vial";
    case SumSection::weights:
      return "By weight";
    case SumSection::label:
      return "Against the limits of the label's rules";
    case SumSection::fire:
      return "Fire: each part's share of what a flame needs";
  }
  return {};
}

std::string value_words(const SumInput& input) {
  const std::string unit = unit_text(input.unit);
  return fmt::format("{} {}{}{}", input_kind_title(input), sum_text(input.value), unit.empty() ? "" : " ", unit);
}

// What is put in, together where it is of one thing and from one place: "isooctane (catalogue, ...): dD 14.1 ...".
std::vector<std::string> input_lines(const WorkedSums& sums, bool full) {
  std::vector<std::string> lines;
  std::string last;
  for (const SumInput& input : sums.inputs) {
    if (!full && input.is_detail) continue;
    const std::string head = fmt::format("{}({})", input.of.empty() ? "" : input.of + " ", input_from(input));
    if (head == last)
      lines.back() += "; " + value_words(input);
    else
      lines.push_back(head + ": " + value_words(input));
    last = head;
  }
  return lines;
}

// Where the last digit of a figure hangs on the last bits of a machine, both are named.
std::vector<std::string> rounding_words(const WorkedSums& sums) {
  std::vector<std::string> words;
  for (const SumStep& step : sums.steps) {
    if (step.printed_as == PrintedAs::nowhere) continue;
    SumStep reckoned = step;
    const bool is_chance = step.printed_as == PrintedAs::chance && step.unit == SumUnit::per_cent;
    reckoned.printed = is_chance ? step.result.value / 100 : step.result.value;
    if (printed_text(reckoned) != printed_text(step))
      words.push_back(fmt::format("{}: the sum would print {}; both round the same figure, which ends in a five",
                                  step_title(step), printed_text(reckoned)));
  }
  return words;
}

std::vector<std::string> label_lines_of(const MixtureLabel& label) {
  std::vector<std::string> lines;
  for (const LabelStatement& statement : label.statements)
    lines.push_back(fmt::format("{}: {}; because {}", statement.code, statement_text(statement.code),
                                because_words(statement.because)));
  for (const std::string& words : not_known_words(label)) lines.push_back("NOT KNOWN: " + words);
  for (const std::string& words : remark_words(label)) lines.push_back(words);
  return lines;
}

std::vector<std::string> words_beside(const WorkedCase& one) {
  std::vector<std::string> words;
  if (one.label) words = label_lines_of(*one.label);
  if (one.flash) {
    words.push_back(flash_because(*one.flash));
    if (one.flash->estimate)
      words.push_back(
          fmt::format("{}{} C", one.flash->measured() ? "" : "about ", fixed(one.flash->estimate->value, 0)));
  }
  return words;
}

const char* heading_beside(const WorkedCase& one) {
  return one.label ? "The statements, and the rule that put each there" : "How it was had";
}

std::vector<std::string> not_by_hand_words(const WorkedCase& one) {
  if (one.what == Explained::mixture)
    return {
        "The average over what is not known of a range is the program's table, not to be redone by hand; --full has "
        "its entries, and a check by hand. The swab decides.",
        "The table is read with the cubic through four nodes along each axis; 9 equally likely slices check it from "
        "the curve alone.",
        "The response curve comes from fresh resins in long contact: the order of the rungs is surer than the size "
        "of these chances."};
  if (one.what == Explained::flash_point)
    return {"Activity coefficients by groups, and the temperature at which all adds up to 1, are the program's."};
  return {"Rules that weigh their parts, or records with limits of their own, are told in words."};
}

// What the answer ends with.
bool is_verdict(const SumStep& step) {
  return step.kind == StepKind::effect || step.kind == StepKind::risk || step.kind == StepKind::flash_point;
}

struct SectionLines {
  SumSection section;
  std::vector<std::string> lines;
};

std::vector<SectionLines> sections_of(const WorkedSums& sums, bool full) {
  std::vector<SectionLines> sections;
  for (const SumStep& step : sums.steps) {
    if (!full && step.is_detail) continue;
    if (is_verdict(step)) continue;
    if (sections.empty() || sections.back().section != step.section) sections.push_back({step.section, {}});
    sections.back().lines.push_back(step_line(step, !full));
  }
  return sections;
}

std::vector<std::string> verdict_lines(const WorkedSums& sums) {
  std::vector<std::string> lines;
  for (const SumStep& step : sums.steps)
    if (is_verdict(step)) lines.push_back(step_line(step));
  return lines;
}

std::string ending(const WorkedCase& one, bool full, const Style& style, const Edition& edition) {
  std::string text;
  for (const std::string& words : not_by_hand_words(one)) {
    text += paragraph(words, style, 0);
    if (!full) break;
  }
  return text +
         paragraph(fmt::format("{}{}.", full ? "" : "All that is put in, each stage of the curve, sources: --full. ",
                               edition_words(edition)),
                   style, 0);
}

std::string worked_text(const WorkedCase& one, bool full, const Style& style, const Edition& edition) {
  std::string top = heading(title_of_case(one), style).substr(1);
  if (full && !one.painting.empty()) top += paragraph("Painting: " + one.painting, style);
  top += paragraph(full ? how_to_read : signs_in_short, style);
  const std::vector<std::string> inputs = input_lines(one.sums, full);
  std::vector<ScreenPart> parts = {must_stand(top), screen_list("Put in", inputs, 1, style)};
  for (const SectionLines& section : sections_of(one.sums, full))
    parts.push_back(screen_list(section_title(section.section), section.lines,
                                section.section == SumSection::recipe ? 2 : section.lines.size(), style));
  const std::vector<std::string> beside = words_beside(one);
  parts.push_back(screen_list(heading_beside(one), beside, 4, style));
  const std::vector<std::string> rounding = rounding_words(one.sums);
  parts.push_back(screen_list("", rounding, rounding.size(), style));
  if (full) {
    std::vector<std::string> sources;
    for (const Source& source : one.sums.sources)
      sources.push_back(fmt::format("{}: {} (read: {})", source.key, source.citation, source.seen));
    parts.push_back(screen_list("Sources", sources, sources.size(), style));
  }
  const std::vector<std::string> verdict = verdict_lines(one.sums);
  parts.push_back(must_stand("\n" + ending(one, full, style, edition)));
  parts.push_back(screen_list("So", verdict, verdict.size(), style));
  return full ? whole_of(parts) : screen_of(std::move(parts), style);
}

Json standing_json(const std::optional<Standing>& standing) {
  return standing ? Json(to_word(*standing)) : Json();
}

std::string worked_json(const WorkedCase& one, const Edition& edition) {
  Json document = json_document("explanation", edition);
  document["painting"] = json_text(one.painting);
  document["of"] = subject_words(one);
  document["mixture"] = to_text(one.sums.mixture);
  document["rung"] = one.sums.rung ? Json(origin_name(*one.sums.rung)) : Json();
  document["inputs"] = Json::array();
  for (const SumInput& input : one.sums.inputs)
    document["inputs"].push_back({{"what", input_key(input.kind)},
                                  {"of", json_text(input.of)},
                                  {"number", input.number_of},
                                  {"title", input_title(input)},
                                  {"value", sum_text(input.value)},
                                  {"unit", json_text(unit_text(input.unit))},
                                  {"from", from_key(input.from)},
                                  {"source", json_text(input.source)},
                                  {"standing", standing_json(input.standing)}});
  document["steps"] = Json::array();
  for (const SumStep& step : one.sums.steps)
    document["steps"].push_back({{"what", step_key(step.kind)},
                                 {"of", json_text(step.of)},
                                 {"number", step.number_of},
                                 {"title", step_title(step)},
                                 {"sum", sum_text(step.sum)},
                                 {"result", sum_text(step.result)},
                                 {"unit", json_text(unit_text(step.unit))},
                                 {"limit_percent", json_number(step.limit)},
                                 {"printed_as", json_text(printed_text(step))}});
  document["words"] = words_beside(one);
  document["rounding"] = rounding_words(one.sums);
  document["not_by_hand"] = not_by_hand_words(one);
  document["sources"] = json_sources(one.sums.sources);
  return json_dump(document);
}

}  // namespace

std::string worked_report(const WorkedCase& one, bool full, Form form, const Style& style, const Edition& edition) {
  return form == Form::json ? worked_json(one, edition) : worked_text(one, full, style, edition);
}

}  // namespace gentlest
