// The page to print: the best stacks drawn as coats one above the other, then every answer with who says so.
#include "report/after/after_report.hpp"
#include "report/after/after_stacks.hpp"
#include "report/after/after_words.hpp"

#include "report/draw/palette.hpp"
#include "report/draw/svg.hpp"
#include "report/form/format.hpp"
#include "report/phrases/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

constexpr double picture_width = 660;
constexpr double coat_height = 46;
constexpr double band_width = 300;
constexpr double letters = 12;

const char* colour_of(CoatKind kind) {
  switch (kind) {
    case CoatKind::original:
      return keep_ink;
    case CoatKind::remnant:
      return axis_ink;
    case CoatKind::retouching:
      return "#00664b";
    case CoatKind::varnish:
      break;
  }
  return remove_ink;
}

Hatch hatch_of(CoatKind kind) {
  switch (kind) {
    case CoatKind::original:
      return Hatch::falling;
    case CoatKind::remnant:
      return Hatch::dots;
    case CoatKind::retouching:
      return Hatch::crossed;
    case CoatKind::varnish:
      break;
  }
  return Hatch::rising;
}

std::vector<std::string> beside(const JudgedStack& stack, std::size_t i) {
  const JudgedCoat& coat = stack.coats[i];
  if (!coat.coat.is_proposed) return {coat_line(coat.coat)};
  CellVerdict on = CellVerdict::holds;
  CellVerdict off = CellVerdict::holds;
  for (const StackCell& cell : cells_of(stack)) {
    if (cell.upper != i || !cell.counts) continue;
    CellVerdict& worst = cell.act == FinishAct::put_on ? on : off;
    worst = std::min(worst, cell.judged->verdict);
  }
  return {"on: " + in_words(*coat.put_on) + ": " + answer_word(on),
          "off: " + in_words(*coat.off_aged) + ": " + answer_word(off)};
}

std::string drawn(const JudgedStack& stack, const std::string& id) {
  Drawing drawing{picture_width, coat_height * static_cast<double>(stack.coats.size()) + 8};
  std::string description;
  for (std::size_t i = 0; i < stack.coats.size(); ++i) {
    const Coat& coat = stack.coats[i].coat;
    const double top = 4 + coat_height * static_cast<double>(stack.coats.size() - 1 - i);
    const std::string fill = add_hatch(drawing, fmt::format("{}-{}", id, i), hatch_of(coat.kind), colour_of(coat.kind));
    add_rectangle(drawing, {4, top}, band_width, coat_height, {colour_of(coat.kind), 1.5, "", "#ffffff"});
    add_rectangle(drawing, {4, top}, 40, coat_height, {colour_of(coat.kind), 1.5, "", fill});
    add_text(drawing, {52, top + coat_height / 2 + 4},
             isolated(shortened(coat_words(coat), letters, band_width - 56, true)), {letters, Anchor::start, true});
    const std::vector<std::string> words = beside(stack, i);
    for (std::size_t line = 0; line < words.size(); ++line) {
      add_text(drawing, {band_width + 16, top + 18 + 17 * static_cast<double>(line)},
               isolated(shortened(words[line], letters, picture_width - band_width - 24)), {letters});
      description += (description.empty() ? "" : "; ") + coat_words(coat) + ": " + words[line];
    }
  }
  return inline_svg(drawing, {id, stack_words(stack), description});
}

std::string cells_table(const JudgedStack& stack, const Catalogue& catalogue) {
  std::vector<std::vector<std::string>> rows;
  for (const StackCell& cell : cells_of(stack))
    rows.push_back({user_text(act_words(stack, cell)),
                    html_text(cell_words(*cell.judged) + (cell.counts ? "" : " (no loss)")),
                    html_text(why_words(cell.judged->why)),
                    html_text(joined(voices_words(*cell.judged, catalogue), " | ", "nobody"))});
  return html_table({"what is done", "answer", "why", "who says so"}, rows, "cells");
}

std::string ranked_table(const std::vector<JudgedStack>& stacks, const char* title) {
  std::vector<std::vector<std::string>> rows;
  for (const JudgedStack& stack : stacks) {
    const JudgedCoat& coat = stack.coats.back();
    rows.push_back({html_text(coat.coat.name), html_text(in_words(*coat.put_on)), html_text(in_words(*coat.off_fresh)),
                    html_text(in_words(*coat.off_aged)), html_text(link_words(stack))});
  }
  return html_table({title, "goes on in", "comes off fresh in", "comes off old in", "weakest link"}, rows, "ranked");
}

std::string section(const std::string& title, const JudgedStack& stack, const std::string& id,
                    const Catalogue& catalogue) {
  return element("section", element("h3", html_text(title)) + drawn(stack, id) + cells_table(stack, catalogue));
}

std::string mixtures_tables(const Afterwards& answer) {
  std::string html;
  for (const MixtureOnStack& one : answer.mixtures) {
    std::vector<std::vector<std::string>> rows;
    for (std::size_t i = one.coats.size(); i-- > 0;) {
      const Coat& coat = answer.asked ? answer.asked->coats[i].coat : answer.painting[i];
      rows.push_back({user_text(coat.name), html_text(cell_words(one.coats[i].comes_off)),
                      html_text(cell_words(one.coats[i].touched))});
    }
    html += element("h3", html_text(in_words({one.mixture, true, false, {}, {}, {}}))) +
            html_table({"coat, from the top", "does it come off", "is it spared"}, rows);
  }
  return html;
}

std::string dangers(const Afterwards& answer) {
  std::vector<std::string> items;
  for (const ActInMixture* act : named_liquids(answer))
    items.push_back(html_text(in_words(*act) + ": " + hazard_line(*act->mixture)));
  return html_list(items);
}

constexpr const char* page_css = R"(
h2 { margin: 5mm 0 2mm; font-size: 12pt; }
h3 { margin: 4mm 0 1mm; font-size: 10.5pt; break-after: avoid; }
svg { max-width: 100%; height: auto; break-inside: avoid; }
td, th { vertical-align: top; overflow-wrap: anywhere; }
tr { break-inside: avoid; }
.cells td, .cells th { font-size: 8.5pt; }
.cells { table-layout: fixed; }
.cells .c0 { width: 27%; }
.cells .c1 { width: 16%; }
.cells .c2 { width: 15%; }
.ranked { table-layout: fixed; }
)";

}  // namespace

std::string afterwards_html(const Afterwards& answer, const Job& job, const Catalogue& catalogue, Paper paper,
                            const Edition& edition) {
  std::string body = element("h1", "Afterwards: " + user_text(title_of(job.object)));
  body += element("p", html_text(after_safety_words)) + element("p", html_text(after_legend_words));
  std::vector<std::string> unsure;
  for (const std::string& line : unsure_lines(job, catalogue)) unsure.push_back(html_text(line));
  if (!unsure.empty()) body += html_list(unsure);
  if (answer.asked) body += section("As asked", *answer.asked, "asked", catalogue);
  body += mixtures_tables(answer);
  body += element("h2", "Straight on the painting") + ranked_table(answer.retouchings, "retouching");
  body += ranked_table(answer.varnishes, "varnish");
  body += element("h2", "Retouching and varnish, from below up");
  for (std::size_t i = 0; i < answer.places.size(); ++i) {
    const RetouchingPlace& place = answer.places[i];
    const std::string id = fmt::format("place{}", i + 1);
    if (const JudgedStack* best = best_place(place))
      body +=
          section(fmt::format("{}: best {} varnish", place.retouching->word, place.is_better_under ? "below" : "above"),
                  *best, id, catalogue);
  }
  std::vector<std::string> rules;
  for (const GeneralFact& fact : catalogue.finishes().general) rules.push_back(html_text(rule_line(fact, catalogue)));
  body += element("h2", "What holds of all") + html_list(rules) + element("p", html_text(after_not_told_words));
  body +=
      element("h2", "Liquids and their dangers") + dangers(answer) + element("p", html_text(law_words(edition.law)));
  const std::string foot = "gentlest " + edition.program + ", catalogue " + edition.catalogue;
  return html_page("Afterwards: " + title_of(job.object), paper, text_page_css(foot) + page_css, body);
}

}  // namespace gentlest
