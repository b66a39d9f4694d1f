#include "report/after/after_report.hpp"
#include "report/after/after_stacks.hpp"
#include "report/after/after_words.hpp"

#include "report/form/format.hpp"
#include "report/form/short_screen.hpp"
#include "report/form/table.hpp"
#include "report/phrases/words.hpp"

#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace gentlest {

namespace {

std::string stack_drawing(const std::vector<const Coat*>& from_below, const Style& style) {
  constexpr std::size_t edges = 8;
  const std::size_t room = style.width - edges;
  const std::string rule = "  +" + std::string(room + 2, '-') + "+\n";
  std::string text = rule;
  for (auto coat = from_below.rbegin(); coat != from_below.rend(); ++coat)
    for (const std::string& line : wrap(without_controls(coat_line(**coat)), room))
      text += "  | " + line + std::string(room - std::min(room, display_width(line)), ' ') + " |\n";
  return text + rule;
}

std::vector<const Coat*> painting_coats(const Afterwards& answer) {
  std::vector<const Coat*> coats;
  for (const Coat& coat : answer.painting) coats.push_back(&coat);
  return coats;
}

std::vector<const Coat*> coats_of(const JudgedStack& stack) {
  std::vector<const Coat*> coats;
  for (const JudgedCoat& one : stack.coats) coats.push_back(&one.coat);
  return coats;
}

std::string liquid_cell(const std::optional<ActInMixture>& act) {
  if (!act) return not_known;
  if (!act->mixture) return act->itself.verdict == CellVerdict::fails ? "nothing" : not_known;
  const auto& parts = act->mixture->parts();
  return (parts.size() == 1 ? parts.front().liquid.label : to_text(*act->mixture)) +
         (act->itself.why == CellWhy::may_not_dissolve ? "?" : "") + (act->on_shelf ? "" : "*");
}

std::string ranking(const std::vector<JudgedStack>& stacks, const char* title, std::size_t most, const Style& style) {
  Table table{{{"", Align::right, false},
               {title, Align::left, true},
               {"put on in", Align::left, true},
               {"off old in", Align::left, true},
               {"answer", Align::left, true}},
              {}};
  for (std::size_t i = 0; i < std::min(most, stacks.size()); ++i) {
    const JudgedCoat& coat = stacks[i].coats.back();
    table.rows.push_back({std::to_string(i + 1), coat.coat.name, liquid_cell(coat.put_on), liquid_cell(coat.off_aged),
                          link_words(stacks[i])});
  }
  std::string text = to_text(table, style);
  if (stacks.size() > most) text += "  " + more_in_full(stacks.size() - most) + "\n";
  return text;
}

std::string place_line(const RetouchingPlace& place) {
  const JudgedStack* best = best_place(place);
  if (!best) return place.retouching->word + ": " + not_known;
  std::string line =
      fmt::format("{}: {} {}: {}", place.retouching->word, place.is_better_under ? "under" : "over",
                  place.is_better_under ? best->coats.back().coat.name : best->coats[best->coats.size() - 2].coat.name,
                  link_words(*best));
  if (place.between && !place.is_better_under)
    line += fmt::format("; with {} over it: {}", place.between->coats.back().coat.name,
                        answer_word(place.between->link.weakest));
  return line;
}

std::string places_list(const Afterwards& answer, std::size_t most, const Style& style) {
  std::string text = heading("Where retouching lies best", style);
  for (std::size_t i = 0; i < std::min(most, answer.places.size()); ++i)
    text += bullet(place_line(answer.places[i]), style);
  if (answer.places.size() > most) text += "  " + more_in_full(answer.places.size() - most) + "\n";
  return text;
}

std::string mixtures_list(const Afterwards& answer, const Style& style) {
  std::string text;
  const std::vector<const Coat*> coats = answer.asked ? coats_of(*answer.asked) : painting_coats(answer);
  for (const MixtureOnStack& one : answer.mixtures) {
    text += heading("What " + to_text(one.mixture) + " does, from the top", style);
    for (std::size_t i = coats.size(); i-- > 0;)
      text += bullet(
          coats[i]->name + ": " +
              (coats[i]->kind == CoatKind::original ? std::string()
                                                    : "comes off: " + cell_words(one.coats[i].comes_off) + ". ") +
              "Spared: " + cell_words(one.coats[i].touched),
          style);
  }
  return text;
}

std::string cells_list(const JudgedStack& stack, const Catalogue& catalogue, const Style& style) {
  std::string text;
  for (const StackCell& cell : cells_of(stack)) {
    std::string line =
        act_words(stack, cell) + ": " + cell_words(*cell.judged) + " (" + why_words(cell.judged->why) + ")";
    if (!cell.counts) line += "; no loss";
    if (cell.judged->by_sphere && !cell.judged->chance)
      line += "; the range alone would say " + per_cent(*cell.judged->by_sphere);
    const std::vector<std::string> voices = voices_words(*cell.judged, catalogue);
    if (!voices.empty()) line += ". " + joined(voices, " | ");
    text += bullet(line, style);
  }
  for (const JudgedCoat& one : stack.coats) {
    if (!one.coat.is_proposed) continue;
    text += bullet(one.coat.name + ": " + ageing_words(one.coat), style);
    for (const auto* act : {&one.off_fresh, &one.off_aged})
      if (*act && (*act)->margin)
        text += bullet(fmt::format("{}: chance that it comes off less the largest that something below is touched: {}",
                                   one.coat.name, fixed(*(*act)->margin, 2)),
                       style);
  }
  return text;
}

std::string rules_list(const Catalogue& catalogue, const Style& style) {
  std::string text = heading("For every coat", style);
  for (const GeneralFact& fact : catalogue.finishes().general) text += bullet(rule_line(fact, catalogue), style);
  return text;
}

std::string dangers_list(const Afterwards& answer, const Style& style) {
  std::string text;
  for (const ActInMixture* act : named_liquids(answer))
    text += bullet(to_text(*act->mixture) + ": " + hazard_line(*act->mixture), style);
  return text;
}

std::string title_text(const Afterwards& answer, const Job& job, const Catalogue& catalogue, const Style& style) {
  std::string text = heading("Afterwards: " + without_controls(title_of(job.object)), style);
  const bool asked = answer.asked.has_value();
  text +=
      paragraph(asked ? "The stack that you ask about, from the top:" : "What it will lie on, from the top:", style);
  text += stack_drawing(asked ? coats_of(*answer.asked) : painting_coats(answer), style);
  if (asked) text += bullet("this stack: " + link_words(*answer.asked), style);
  for (const std::string& line : unsure_lines(job, catalogue)) text += bullet(line, style);
  return text;
}

std::string rankings(const Afterwards& answer, std::size_t rows, std::size_t places, const Style& style) {
  std::string text = "\n" + ranking(answer.retouchings, "retouching on it", rows, style);
  text += "\n" + ranking(answer.varnishes, "varnish on it", rows, style);
  text += paragraph("* not on the job's shelf. Old: " + light_words(answer.light) + ".", style);
  return text + places_list(answer, places, style);
}

std::string everything(const Afterwards& answer, const Job& job, const Catalogue& catalogue, const Style& style,
                       const Edition& edition) {
  constexpr std::size_t all = 1000;
  std::string text =
      title_text(answer, job, catalogue, style) + mixtures_list(answer, style) + rankings(answer, all, all, style);
  for (const ListedStack& one : listed_stacks(answer)) {
    text += heading(fmt::format("{} {}: {}", one.group, one.rank, stack_words(*one.stack)), style);
    text += cells_list(*one.stack, catalogue, style);
  }
  text += rules_list(catalogue, style);
  text += heading("What each answer means", style) + paragraph(after_legend_words, style);
  text += heading("Dangers of the liquids named", style) + dangers_list(answer, style);
  text += "\n" + paragraph(after_safety_words, style);
  return text + paragraph(after_not_told_words, style) + "\n" + paragraph(law_words(edition.law), style);
}

}  // namespace

std::string afterwards_text(const Afterwards& answer, const Job& job, const Catalogue& catalogue, bool full,
                            const Style& style, const Edition& edition) {
  if (full) return everything(answer, job, catalogue, style, edition);
  // As many rows as leave the whole on one screen; what is asked and the warning always stand.
  constexpr std::array<std::array<std::size_t, 2>, 5> rows_and_places = {{{4, 3}, {4, 2}, {3, 2}, {2, 1}, {1, 1}}};
  std::string text;
  for (const auto& [rows, places] : rows_and_places) {
    text = title_text(answer, job, catalogue, style) + mixtures_list(answer, style) +
           rankings(answer, rows, places, style);
    text += "\n" + paragraph(after_safety_words, style);
    if (fits_screen(text)) break;
  }
  return text;
}

}  // namespace gentlest
