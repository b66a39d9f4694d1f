#include "report/paper/label_sheet.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "report/bottle/label_words.hpp"
#include "report/bottle/statement_words.hpp"
#include "report/draw/pictogram.hpp"
#include "report/draw/svg.hpp"
#include "report/form/format.hpp"
#include "report/paper/bench_sheet.hpp"
#include "report/paper/carried.hpp"
#include "report/paper/conduct_html.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/phrases/no_window.hpp"
#include "report/phrases/sighting_words.hpp"
#include "report/phrases/words.hpp"
#include "report/rules/conduct_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <set>

namespace gentlest {

namespace {

// Everything below in mm.
constexpr double padding = 1.6;
constexpr double line_height = 1.2;  // of the size of the letters
constexpr double mm_of_a_point = 25.4 / 72;
constexpr double usual_letters = 8 * mm_of_a_point;
constexpr double small_letters = 7 * mm_of_a_point;
// Only labels below this are set in small letters.
constexpr double small_width = 55;
constexpr double small_height = 30;

constexpr const char* label_css = R"(
@page { margin: 0; } body { margin: 0; line-height: 1; }
.sheet { display: block; break-after: page; overflow: hidden; } .sheet > svg { display: block; }
.words { padding: 15mm; line-height: 1.38; }
@media screen { .sheet { border: .2mm solid #767676; margin-bottom: 4mm; } }
)";

std::vector<double> sizes_of(const LabelGrid& grid) {
  if (grid.width_mm < small_width || grid.height_mm < small_height) return {usual_letters, small_letters};
  return {10 * mm_of_a_point, 9 * mm_of_a_point, usual_letters};
}

// A pictogram's width: two rows of them beside the text at most.
double pictogram_size(const LabelGrid& grid) {
  return std::clamp(grid.height_mm * 0.36, 7.0, 16.0);
}

struct PictogramBlock {
  double size = 0;
  std::size_t columns = 0;
  std::size_t rows = 0;
};

PictogramBlock pictogram_block(const BenchMixture& mixture, const LabelGrid& grid) {
  const std::size_t count = mixture.label.pictograms.size();
  if (count == 0) return {};
  const double size = pictogram_size(grid);
  const auto rows = static_cast<std::size_t>(std::max(1.0, std::floor((grid.height_mm - padding) / size)));
  return {size, (count + rows - 1) / rows, std::min(rows, count)};
}

// "37.5 %", of the volume as measured.
std::string share_text(const Part& part) {
  return as_recorded(std::round(1000 * part.fraction) / 10) + " %";
}

struct SetLine {
  std::string text;
  bool bold = false;
  double size = 0;
};

std::vector<SetLine> set_lines(const std::vector<LabelLine>& lines, double size, double width) {
  std::vector<SetLine> set;
  for (const LabelLine& line : lines)
    for (const std::string& text : text_lines(line.text, size, width, line.bold))
      set.push_back({text, line.bold, size});
  return set;
}

bool fits(const std::vector<SetLine>& set, double size, double height) {
  return static_cast<double>(set.size()) * size * line_height <= height;
}

// The largest letters with which everything fits. If none do, one line a part, its name cut: hazards are not cut
// before names are. What is then still too long says so.
std::vector<SetLine> fit_lines(const BenchMixture& mixture, const std::vector<double>& sizes, double width,
                               double height) {
  for (const double size : sizes) {
    std::vector<SetLine> set = set_lines(label_lines(mixture), size, width);
    if (fits(set, size, height)) return set;
  }
  const double least = sizes.back();
  std::vector<SetLine> set = {{label_lines(mixture).front().text, true, least}};
  for (const Part& part : mixture.recipe.as_measured.parts()) {
    const std::string share = " " + share_text(part);
    const double room = width - text_width(share, least);
    set.push_back({isolated(shortened(part.liquid.label, least, room)) + share, false, least});
  }
  const std::vector<LabelLine> lines = label_lines(mixture);
  for (const SetLine& line : set_lines({lines.begin() + 2, lines.end()}, least, width)) set.push_back(line);
  if (fits(set, least, height)) return set;
  set.resize(std::max<std::size_t>(static_cast<std::size_t>(height / (least * line_height)), 1));
  set.back() = {shortened("\u2026 more on the sheet", least, width, true), true, least};
  return set;
}

std::string drawn_pictograms(const BenchMixture& mixture, const PictogramBlock& block, Xy corner, double width) {
  std::string text;
  const std::vector<std::string>& codes = mixture.label.pictograms;
  for (std::size_t i = 0; i < codes.size(); ++i) {
    const std::size_t from_right = block.columns - i / block.rows;
    const double x = corner.x + width - padding - block.size * static_cast<double>(from_right);
    const double y = corner.y + padding / 2 + block.size * static_cast<double>(i % block.rows);
    text += fmt::format(
        "<use href=\"#{0}\" role=\"img\" aria-label=\"{0}, {5}\" x=\"{1}\" y=\"{2}\" width=\"{3}\" height=\"{4}\"/>\n",
        xml_escape(codes[i]), svg_number(x), svg_number(y), svg_number(block.size), svg_number(block.size),
        pictogram_words(codes[i]));
  }
  return text;
}

std::string made_line(const LabelInputs& inputs) {
  const std::string line = "________";
  return "made " + (inputs.date.empty() ? line : inputs.date) + "  by " +
         (inputs.maker.empty() ? "____" : inputs.maker);
}

// In short for each label; the page says it in full.
std::string law_in_short(const LabelInputs& inputs) {
  const std::string& day = inputs.edition.law.seen_until;
  return "law seen " + (day.empty() ? "on an unknown day" : day);
}

// The line at the foot; with the day of the law where there is room for it.
std::string foot_line(const LabelInputs& inputs, double size, double width) {
  const std::string dated = made_line(inputs) + "  " + law_in_short(inputs);
  return text_width(dated, size) <= width ? dated : shortened(made_line(inputs), size, width);
}

// The whole label in words: what stands on it may be cut to fit, this is not.
std::string spoken_label(const BenchMixture& mixture, const LabelInputs& inputs) {
  std::vector<std::string> words;
  const std::vector<LabelLine> lines = label_lines(mixture);
  for (std::size_t i = 1; i < lines.size(); ++i) words.push_back(lines[i].text);
  for (const std::string& code : mixture.label.pictograms)
    words.push_back("pictogram " + code + ", " + pictogram_words(code));
  words.push_back(inputs.date.empty() && inputs.maker.empty() ? "lines to write on: made when, by whom"
                                                              : made_line(inputs));
  words.push_back(law_in_short(inputs));
  return joined(words, "; ");
}

void draw_label(Drawing& page, const BenchMixture& mixture, const LabelInputs& inputs, Xy corner) {
  const LabelGrid& grid = inputs.grid;
  add_rectangle(page, corner, grid.width_mm, grid.height_mm, {"#bbbbbb", 0.1});
  const PictogramBlock block = pictogram_block(mixture, grid);
  const double width =
      grid.width_mm - 2 * padding - (block.columns > 0 ? block.size * static_cast<double>(block.columns) + 0.6 : 0);
  const std::vector<double> sizes = sizes_of(grid);
  const double made_size = sizes.back();
  const double height = grid.height_mm - 2 * padding - made_size * line_height - 0.4;
  double y = corner.y + padding;
  for (const SetLine& line : fit_lines(mixture, sizes, width, height)) {
    add_text(page, {corner.x + padding, y + line.size * 0.85}, line.text, {line.size, Anchor::start, line.bold});
    y += line.size * line_height;
  }
  page.body += drawn_pictograms(mixture, block, corner, grid.width_mm);
  const double foot = static_cast<double>(block.rows) * block.size + padding > grid.height_mm - padding - made_size
                          ? width
                          : grid.width_mm - 2 * padding;
  add_text(page, {corner.x + padding, corner.y + grid.height_mm - padding}, foot_line(inputs, made_size, foot),
           {made_size});
}

std::vector<const BenchMixture*> all_copies(const Bench& bench, int copies) {
  std::vector<const BenchMixture*> all;
  for (const BenchMixture& mixture : bench.mixtures)
    for (int i = 0; i < copies && !mixture.beyond_limit; ++i) all.push_back(&mixture);
  return all;
}

// "Labels for the vials, page 1": which are on it, a copy named once with its number.
PictureWords words_of_page(const std::vector<const BenchMixture*>& labels, std::size_t from, std::size_t on_a_page) {
  const std::size_t page = from / on_a_page + 1;
  const std::size_t to = std::min(labels.size(), from + on_a_page);
  std::vector<std::string> names;
  for (std::size_t i = from; i < to; ++i)
    if (i == from || labels[i] != labels[i - 1]) names.push_back(mixture_name(labels[i]->judged));
  return {fmt::format("labels-{}", page), fmt::format("Labels for the vials, page {}", page),
          fmt::format("{} of one size, to be cut out: {}.", counted(to - from, "label", "labels"), joined(names)),
          true};
}

// Above the labels, where the margin has room: harms, the proposed test, what is closed. In full on the page of words.
void draw_note(Drawing& page, const Plan& plan, const LabelInputs& inputs, Xy corner) {
  constexpr double size = usual_letters;
  constexpr double line = 3.5;
  if (!inputs.progress) return;
  const Progress& progress = *inputs.progress;
  const std::string harms = joined(harm_words(progress.conduct), " ");
  std::string state = next_words(progress);
  for (const std::string& closed : closure_words(plan, progress.conduct)) state += "; " + closed;
  double y = corner.y - 1.5 - (harms.empty() ? 0 : line);
  if (y - size < 2) return;
  const double width = page.width - corner.x - 5;
  if (!harms.empty()) add_text(page, {corner.x, y}, shortened(harms, size, width, true), {size, Anchor::start, true});
  y = corner.y - 1.5;
  add_text(page, {corner.x, y}, shortened("no label, a note: " + state, size, width), {size});
}

// Below the labels, where the margin has room: which painting, which page, and who decides.
void draw_foot(Drawing& page, const Plan& plan, const std::string& number, double below) {
  constexpr double least_room = 8;
  constexpr double from_edge = 5.2;
  constexpr double side = 12;
  if (page.height - below < least_room) return;
  const std::string words = "labels, page " + number + "; the safety data sheet of every bottle decides";
  const double room = page.width - 2 * side;
  const double left = room - text_width(words, usual_letters) - 4;
  if (left > 0)
    add_text(page, {side, page.height - from_edge}, shortened(title_of(plan.job.object), usual_letters, left),
             {usual_letters});
  add_text(page, {page.width - side, page.height - from_edge}, shortened(words, usual_letters, room),
           {usual_letters, Anchor::end});
}

std::string label_pages(const Plan& plan, const Bench& bench, const LabelInputs& inputs) {
  const PaperSize paper = size_of(inputs.paper);
  const GridCount count = count_labels(inputs.grid, inputs.paper);
  const LabelGrid& grid = inputs.grid;
  const double left = (paper.width_mm - count.columns * (grid.width_mm + grid.gap_mm) + grid.gap_mm) / 2;
  const double top = (paper.height_mm - count.rows * (grid.height_mm + grid.gap_mm) + grid.gap_mm) / 2;
  const std::vector<const BenchMixture*> labels = all_copies(bench, inputs.copies);
  const auto columns = static_cast<std::size_t>(count.columns);
  const std::size_t on_a_page = columns * static_cast<std::size_t>(count.rows);
  std::string text;
  for (std::size_t from = 0; from < labels.size(); from += on_a_page) {
    Drawing page{paper.width_mm, paper.height_mm};
    draw_note(page, plan, inputs, {left, top});
    draw_foot(page, plan, fmt::format("{} of {}", from / on_a_page + 1, (labels.size() + on_a_page - 1) / on_a_page),
              paper.height_mm - top);
    for (std::size_t i = from; i < std::min(labels.size(), from + on_a_page); ++i) {
      const auto column = static_cast<double>((i - from) % columns);
      const std::size_t above = (i - from) / columns;
      const auto row = static_cast<double>(above);
      begin_group(page, fmt::format("label-{}", i + 1), label_lines(*labels[i]).front().text,
                  spoken_label(*labels[i], inputs));
      draw_label(page, *labels[i], inputs,
                 {left + column * (grid.width_mm + grid.gap_mm), top + row * (grid.height_mm + grid.gap_mm)});
      end_group(page);
    }
    // A hair less than the page, lest rounding starts another one.
    text +=
        fmt::format("<div class=\"sheet\" style=\"width:{0}mm;height:{1}mm\">\n{2}</div>\n", svg_number(paper.width_mm),
                    svg_number(paper.height_mm - 0.2), inline_svg(page, words_of_page(labels, from, on_a_page)));
  }
  return text;
}

// Where the tests stand, before all else on the page of words; empty without a log.
std::string followed_html(const Plan& plan, const LabelInputs& inputs) {
  if (!inputs.progress) return {};
  const Progress& progress = *inputs.progress;
  const char* which = "No label: nothing is proposed.";
  if (progress.next.kind == NextKind::test)
    which = "The first label is the vial that is proposed. What is closed has no label.";
  else if (progress.proposed)
    which = "The only label is the vial that worked.";
  return element("h2", where_tests_stand_heading) + state_html(plan, progress) + element("p", which);
}

// Without a window the page says so first; a mixture beyond the risk limit has no label, and is named.
std::string left_out_html(const Plan& plan, const Bench& bench) {
  std::string text;
  if (plan.outcome != Outcome::window) {
    std::string words = std::string("<b>") + no_rungs_heading(plan) + "</b>";
    for (const std::string& sentence : no_window_sentences(plan)) words += " " + user_text(sentence);
    text += element("p", words);
  }
  std::vector<std::string> items;
  for (const std::string& words : left_out_words(plan, bench)) items.push_back("no label for " + user_text(words));
  return text + html_list(items);
}

// What was seen where no figure speaks, mixture by mixture.
std::string unjudged_html(const Plan& plan, const Bench& bench) {
  if (!any_unjudged(plan.layers)) return {};
  std::vector<std::string> items;
  for (const PlannedLayer& layer : plan.layers)
    if (!layer.sphere) items.push_back(user_text(layer.name) + ": " + html_text(state_of_unjudged(layer)));
  for (const BenchMixture& mixture : bench.mixtures)
    if (!mixture.beyond_limit)
      items.push_back(html_text(mixture_name(mixture.judged)) + ": " + user_text(sighting_mark(mixture.judged)));
  return element("h2", unjudged_heading) + html_list(items);
}

// Every label once, whole, for whoever reads by ear, and where one was cut to fit.
std::string labels_in_words(const Bench& bench, const LabelInputs& inputs) {
  std::string text;
  for (const BenchMixture& mixture : bench.mixtures) {
    if (mixture.beyond_limit) continue;
    text += element("h3", user_text(label_lines(mixture).front().text)) +
            element("p", user_text(spoken_label(mixture, inputs)));
  }
  return text.empty() ? text : element("h2", "What each label says") + "<div class=\"columns\">\n" + text + "</div>\n";
}

std::string words_page(const Plan& plan, const Bench& bench, const LabelInputs& inputs) {
  std::set<std::string> codes;
  std::vector<std::string> missing;
  for (const BenchMixture& mixture : bench.mixtures) {
    if (mixture.beyond_limit) continue;
    for (const LabelStatement& statement : mixture.label.statements) codes.insert(statement.code);
    for (const std::string& words : not_known_words(mixture.label))
      missing.push_back(html_text(mixture_name(mixture.judged)) + ": " + user_text(words));
  }
  std::vector<std::string> words;
  for (const std::string& code : codes) words.push_back(html_text(statement_text(code)));
  std::string text = inputs.progress ? harms_html(inputs.progress->conduct) : std::string();
  text += element("h1", "Labels: " + user_text(title_of(plan.job.object)));
  text +=
      carried_caution(bench) + followed_html(plan, inputs) + left_out_html(plan, bench) + unjudged_html(plan, bench);
  if (!words.empty()) text += element("h2", "Statements on the labels, in words of ours") + html_list(words);
  text += element("p", "The safety data sheet of every bottle decides; records here are minimum classifications.");
  text += element("p", html_text(law_words(inputs.edition.law)));
  if (!missing.empty()) text += element("h2", "Not known, and so missing on the labels") + html_list(missing);
  text += labels_in_words(bench, inputs);
  text += element("p", html_text(edition_words(inputs.edition)), "quiet");
  return "<div class=\"words\">\n" + text + "</div>\n";
}

void check_grid(const LabelInputs& inputs) {
  const LabelGrid& grid = inputs.grid;
  if (grid.width_mm < least_label_width_mm || grid.height_mm < least_label_height_mm)
    throw InputError(
        Fault::usage,
        fmt::format("a label of {} x {} mm is too small to read", as_recorded(grid.width_mm),
                    as_recorded(grid.height_mm)),
        fmt::format("at least {} x {} mm", as_recorded(least_label_width_mm), as_recorded(least_label_height_mm)));
  const GridCount count = count_labels(grid, inputs.paper);
  if (count.columns < 1 || count.rows < 1)
    throw InputError(Fault::usage, "no label of this size fits on the paper", "choose a smaller label or margin");
}

}  // namespace

GridCount count_labels(const LabelGrid& grid, Paper paper) {
  const PaperSize size = size_of(paper);
  constexpr double slack = 1e-6;  // a grid that fills the page exactly fits
  const auto fit = [&](double page, double label) {
    return static_cast<int>(std::floor((page - 2 * grid.margin_mm + grid.gap_mm) / (label + grid.gap_mm) + slack));
  };
  return {std::max(0, fit(size.width_mm, grid.width_mm)), std::max(0, fit(size.height_mm, grid.height_mm))};
}

std::vector<LabelLine> label_lines(const BenchMixture& mixture) {
  std::vector<std::string> parts;
  for (const Part& part : mixture.recipe.as_measured.parts())
    parts.push_back(isolated(part.liquid.label) + " " + share_text(part));
  std::string name = mixture_name(mixture.judged);
  name.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(name.front())));
  std::vector<LabelLine> lines = {{name, true}, {joined(parts, ", "), false}};
  for (const std::string& warning : sighting_warnings(mixture.judged)) lines.push_back({warning, true});
  if (as_made(mixture).fate.phases.phases == Phases::two_liquids) lines.push_back({"two layers: shake", true});
  if (as_made(mixture).fate.phases.phases == Phases::near_border) lines.push_back({"may part: look, shake", true});
  std::vector<std::string> codes;
  for (const LabelStatement& statement : mixture.label.statements) codes.push_back(statement.code);
  if (!mixture.label.signal_word.empty()) lines.push_back({mixture.label.signal_word, true});
  // Before the statements: should there be no room for all, this is not what is cut.
  if (!mixture.label.complete()) lines.push_back({"hazard record missing: more may apply", true});
  if (!codes.empty()) lines.push_back({joined(codes, " "), false});
  return lines;
}

std::string label_sheet(const Plan& plan, const Bench& bench, const LabelInputs& inputs) {
  check_grid(inputs);
  const std::string body = pictogram_definitions(pictogram_codes()) + "<main>\n" + label_pages(plan, bench, inputs) +
                           words_page(plan, bench, inputs) + "</main>\n";
  return html_page("Labels: " + title_of(plan.job.object), inputs.paper,
                   std::string(label_css) + carried_css + conduct_css, body);
}

}  // namespace gentlest
