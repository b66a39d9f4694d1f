#include "report/paper/swab_card.hpp"

#include "report/draw/svg.hpp"
#include "report/phrases/reading_titles.hpp"

#include "gentlest/learning/reading_fields.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

// In mm. A line to write on is 8 high, a box to tick 4; tests/browser measures both.
constexpr double line_mm = 8.2;  // with its border
constexpr double ticks_mm = 4.9;
constexpr double head_text_mm = 3.1;   // size of its letters, a little more than 8.5 pt
constexpr double head_line_mm = 3.9;   // from line to line
constexpr double head_width_mm = 112;  // beside "Test 12" and the boxes for day and initials
constexpr double contact_text_mm = 2.85;
constexpr double contact_width_mm = 130;

// Two keys of a field may stand in one cell, parted by a space.
std::string cell(const char* keys, double share, const std::string& title, const std::string& inner = {}) {
  return fmt::format("<div data-field=\"{}\" style=\"flex:{} 0 0\"><span class=\"key\">{}</span> {}</div>\n", keys,
                     share, title, inner);
}

std::string write_in(const char* key, double share, const char* title = nullptr) {
  return cell(key, share, title ? title : title_of_field(key));
}

// A box that is always ticked by hand, and words with one each.
std::string tick(std::string_view word) {
  return fmt::format("<span class=\"tick\">{}</span> ", html_text(word));
}

template <class Words>
std::string ticks(const Words& words) {
  std::string text;
  for (const auto& word : words) text += tick(word);
  return text;
}

std::string grades(const char* key) {
  return ticks(find_field(key)->words);
}

std::string row(const char* css_class, const std::string& cells) {
  return element("div", "\n" + cells, css_class);
}

std::string before_the_swab() {
  return row("line", write_in("passage", 5, "passage") +
                         cell("at_edge", 3.4, "", ticks(std::vector<const char*>{"edge", "picture"})) +
                         write_in("x_cm", 1.7, "x cm") + write_in("y_cm", 1.7, "y cm") + write_in("window_mm", 2.4)) +
         row("line", cell("light", 5.4, title_of_field("light"), ticks(lights())) + write_in("magnification", 2.3) +
                         write_in("uv_before", 3) + write_in("photo_before", 2.8)) +
         row("line", write_in("swab", 3.2) + cell("wetness", 4.2, "", grades("wetness")) + write_in("rolls", 1.6) +
                         write_in("first_effect_s", 2.8) + write_in("seconds", 2.6, "contact, s"));
}

// The layer's name is cut, not wrapped: a row is a row.
std::string what_was_seen(const Plan& plan) {
  constexpr double letters_mm = 2.9;
  constexpr double room_mm = 20;
  const std::string layer = user_text(shortened(plan.layers[plan.target].name, letters_mm, room_mm));
  std::string text = row("seen", cell("removal layer", 1, layer + ":", grades("removal"))) +
                     row("seen", cell("signs", 3, "", ticks(removal_signs())) +
                                     cell("colour", 11, title_of_field("colour"), grades("colour"))) +
                     row("seen", cell("original", 1, "original:", grades("original"))) +
                     row("seen", cell("signs", 8, "", ticks(original_signs())) +
                                     cell("confidence", 6, title_of_field("confidence"), grades("confidence")));
  for (const PlannedLayer& one : plan.layers)
    if (is_kept_unjudged(one))
      text += row("seen", cell("original", 1, "not judged: " + user_text(one.name), grades("original")));
  return text;
}

std::string after_the_swab() {
  return row("line", write_in("clearing", 5) + write_in("uv_after", 3) + write_in("photo", 3)) +
         row("line", cell("after_drying", 7, title_of_field("after_drying"), ticks(drying_signs())) +
                         cell("looked_after", 6.4, title_of_field("looked_after"), ticks(later_looks()))) +
         row("line", write_in("remark", 1));
}

double lines_in(const std::string& html, double letters_mm, double width_mm) {
  return static_cast<double>(text_lines(html_words(html), letters_mm, width_mm).size());
}

double height_of(const CardWords& words, const Plan& plan) {
  constexpr double rows_of_lines = 6;
  constexpr double rows_of_ticks = 4;
  constexpr double border_mm = 0.8;
  const auto open = std::count_if(plan.layers.begin(), plan.layers.end(), is_kept_unjudged);
  const bool has_signs = words.head.find("<svg") != std::string::npos;
  const double lines = lines_in(words.head, head_text_mm, head_width_mm) +
                       (words.contact.empty() ? 0 : lines_in(words.contact, contact_text_mm, contact_width_mm));
  const double head = std::max(line_mm, lines * head_line_mm + 0.8 + (has_signs ? 2 : 0));
  return head + rows_of_lines * line_mm + (rows_of_ticks + 2 * static_cast<double>(open)) * ticks_mm + border_mm;
}

}  // namespace

const char* const card_css = R"(.card { border: .4mm solid #000; break-inside: avoid; margin: 0 0 1.5mm; font-size: 8pt;
  line-height: 1.2; font-family: Arial, Helvetica, 'Liberation Sans', 'DejaVu Sans Condensed', 'DejaVu Sans', sans-serif; }
.card-head { display: flex; } .card-head > div { border-left: .2mm solid #767676; padding: .4mm 1mm; width: 24mm;
  min-height: 8mm; box-sizing: border-box; } .card-head > .named { flex: 1 1 0; width: auto; min-width: 0; border: 0;
  padding: .4mm 1.2mm; font-size: 8.5pt; line-height: 1.28; } .card-head b { font-size: 10pt; white-space: nowrap; }
.line, .seen { display: flex; border-top: .2mm solid #767676; } .line > div, .seen > div { box-sizing: border-box;
  border-left: .2mm solid #767676; padding: .5mm 1mm 0; min-width: 0; } .line > div { min-height: 8mm; }
.seen > div { padding: .2mm 1mm; min-height: 4.7mm; } .line > div:first-child, .seen > div:first-child { border-left: 0; }
.line > div > .tick { line-height: 6.6mm; }
.tick { white-space: nowrap; margin-right: 1.6mm; } .tick::before { content: ""; display: inline-block; width: 4mm;
  height: 4mm; border: .25mm solid #000; margin-right: .8mm; vertical-align: -1mm; box-sizing: border-box; }
.key { color: #404040; } .when { display: block; font-weight: bold; } .contact { display: block; font-size: 8pt; }
.card .pictogram { width: 5mm; height: 5mm; }
)";

SwabCard make_card(const CardWords& words, const Plan& plan) {
  const std::string contact = words.contact.empty() ? std::string() : element("span", words.contact, "contact");
  const std::string head = fmt::format(
      "<div class=\"card-head\"><div class=\"named\" data-field=\"test mixture\"><b>Test {}</b> <span>{}</span>{}</div>"
      "<div data-field=\"date\"><span class=\"key\">{}</span></div><div data-field=\"who\"><span "
      "class=\"key\">initials</span></div></div>\n",
      words.number, words.head, contact, title_of_field("date"));
  return {element("div", head + before_the_swab() + what_was_seen(plan) + after_the_swab(), "card"),
          height_of(words, plan)};
}

}  // namespace gentlest
