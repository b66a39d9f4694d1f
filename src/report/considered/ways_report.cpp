#include "report/considered/ways_report.hpp"

#include "report/considered/way_words.hpp"
#include "report/examined/examination_words.hpp"
#include "report/form/format.hpp"
#include "report/form/json.hpp"
#include "report/form/sheet.hpp"
#include "report/form/short_screen.hpp"
#include "report/form/table.hpp"
#include "report/phrases/no_window.hpp"
#include "report/phrases/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace gentlest {

namespace {

std::string title_of(const WaysCase& one) {
  const std::string painting = one.plan ? title_of(one.plan->job.object) : std::string();
  return painting.empty() ? std::string("Other ways") : "Other ways: " + painting;
}

std::vector<std::string> words_of(const std::vector<Occasion>& occasions) {
  std::vector<std::string> words;
  for (const Occasion occasion : occasions) words.push_back(occasion_word(occasion));
  return words;
}

std::vector<std::string> occasions_in_words(const WaysCase& one) {
  std::vector<std::string> words;
  if (one.plan && one.plan->examination.verdict != ExaminationVerdict::go)
    words.push_back(verdict_sentence(one.plan->examination));
  for (const OccasionHere& here : one.answer.occasions) words.push_back(occasion_words(here));
  return words;
}

// Ways of one kind, which stand together.
using OfKind = std::vector<const WayHere*>;
std::vector<OfKind> by_kind(const WaysAnswer& answer) {
  std::vector<OfKind> kinds;
  for (const WayHere& one : answer.ways) {
    if (kinds.empty() || kinds.back().front()->way->kind != one.way->kind) kinds.emplace_back();
    kinds.back().push_back(&one);
  }
  return kinds;
}

// One kind on the first screen: its first way, what speaks against it here, how many stand behind it.
std::string short_line(const OfKind& kind) {
  const WayHere& first = *kind.front();
  std::string line = fmt::format("{}: {}", kind_title(first.way->kind), first.way->name);
  if (!first.careful.empty()) line += fmt::format(" [CAREFUL here: {}]", joined(words_of(first.careful)));
  line += fmt::format(". Watch: {}", first.way->watch);
  if (kind.size() > 1) line += fmt::format(". And {} more", kind.size() - 1);
  return line + ".";
}

std::string way_text(const WayHere& one, const std::vector<Source>& sources, const Style& style) {
  std::string text = "\n" + paragraph(one.way->name, style, 0);
  if (!one.because.empty()) text += paragraph("here because: " + joined(words_of(one.because)), style);
  if (!one.careful.empty()) text += paragraph("CAREFUL here: " + joined(words_of(one.careful)), style);
  for (const auto& [title, words] : fields_of(*one.way)) text += paragraph(title + ": " + words, style);
  text +=
      paragraph("says who: " + joined(citations_of(*one.way, sources), "; ") + "; " + standing_words(*one.way), style);
  return text;
}

std::string passed_over_words(const WaysAnswer& answer) {
  std::vector<std::string> names;
  for (const OtherWay* way : answer.passed_over) names.push_back(way->name);
  return joined(names, "; ");
}

std::string ways_text(const WaysCase& one, const Style& style, const Edition& edition) {
  std::string text = heading(title_of(one), style).substr(1) + paragraph(no_promise, style);
  const std::vector<std::string> here = occasions_in_words(one);
  if (!here.empty()) text += heading("Here", style);
  for (const std::string& words : here) text += bullet(words, style);
  for (const OfKind& kind : by_kind(one.answer)) {
    text += heading(kind_title(kind.front()->way->kind), style);
    for (const WayHere* way : kind) text += way_text(*way, one.sources, style);
  }
  if (!one.answer.passed_over.empty())
    text += heading("Not brought up by this plan", style) + paragraph(passed_over_words(one.answer), style);
  return text + "\n" + paragraph(edition_words(edition) + ".", style, 0);
}

Sheet ways_sheet(const WaysCase& one) {
  Sheet sheet;
  sheet.kind = "ways";
  for (const char* key : {"id", "kind", "name", "because", "careful", "when", "contact", "left_behind", "action",
                          "clearing", "watch", "not_modelled", "sources", "standing", "confidence", "doubt"})
    sheet.columns.push_back({key, key, -1, true});
  const auto cell = [](const std::string& text) { return text.empty() ? Cell() : Cell(text); };
  for (const WayHere& here : one.answer.ways) {
    const OtherWay& way = *here.way;
    sheet.rows.push_back(
        {cell(way.id), cell(std::string(to_word(way.kind))), cell(way.name), cell(joined(words_of(here.because))),
         cell(joined(words_of(here.careful))), cell(way.when), cell(way.contact), cell(way.left_behind),
         cell(way.action), cell(way.clearing), cell(way.watch), cell(way.not_modelled), cell(joined(way.sources)),
         cell(std::string(to_word(way.witness))), cell(std::string(to_word(way.confidence))), cell(way.doubt)});
  }
  return sheet;
}

Json names_of(const std::vector<Occasion>& occasions) {
  Json list = Json::array();
  for (const Occasion occasion : occasions) list.push_back(to_word(occasion));
  return list;
}

Json way_json(const WayHere& here) {
  const OtherWay& way = *here.way;
  return {{"id", way.id},
          {"kind", to_word(way.kind)},
          {"name", way.name},
          {"because", names_of(here.because)},
          {"careful", names_of(here.careful)},
          {"when", way.when},
          {"contact", json_text(way.contact)},
          {"left_behind", json_text(way.left_behind)},
          {"action", json_text(way.action)},
          {"clearing", json_text(way.clearing)},
          {"watch", way.watch},
          {"not_modelled", json_text(way.not_modelled)},
          {"sources", way.sources},
          {"standing", to_word(way.witness)},
          {"confidence", to_word(way.confidence)},
          {"doubt", json_text(way.doubt)}};
}

std::string ways_json(const WaysCase& one, const Edition& edition) {
  Json document = json_document("ways", edition);
  document["painting"] = one.plan ? json_text(one.plan->job.object.title) : Json();
  document["outcome"] = one.plan ? Json(outcome_word(one.plan->outcome)) : Json();
  document["promise"] = no_promise;
  document["occasions"] = Json::array();
  for (const OccasionHere& here : one.answer.occasions)
    document["occasions"].push_back(
        {{"occasion", to_word(here.occasion)}, {"names", here.names}, {"words", occasion_words(here)}});
  document["ways"] = Json::array();
  for (const WayHere& here : one.answer.ways) document["ways"].push_back(way_json(here));
  document["passed_over"] = Json::array();
  for (const OtherWay* way : one.answer.passed_over) document["passed_over"].push_back(way->id);
  document["sources"] = json_sources(one.sources);
  return json_dump(document);
}

std::string way_html(const WayHere& one, const std::vector<Source>& sources) {
  std::string text = element("h3", html_text(one.way->name));
  if (!one.careful.empty())
    text += element("p", "<b>CAREFUL here: " + html_text(joined(words_of(one.careful))) + "</b>");
  std::vector<std::string> items;
  for (const auto& [title, words] : fields_of(*one.way))
    items.push_back("<b>" + html_text(title) + "</b>: " + html_text(words));
  text += html_list(items);
  return element(
      "div",
      text + element("p", html_text(joined(citations_of(*one.way, sources), "; ") + "; " + standing_words(*one.way)),
                     "quiet"),
      "way");
}

constexpr const char* ways_css =
    R"(.way { break-inside: avoid; font-size: 9pt; } .way ul { margin: 0; } .way p { margin: .5mm 0; }
)";

}  // namespace

std::string ways_short_text(const WaysCase& one, const Style& style, const Edition& edition) {
  const std::vector<std::string> here = occasions_in_words(one);
  std::vector<std::string> kinds;
  for (const OfKind& kind : by_kind(one.answer)) kinds.push_back(short_line(kind));
  std::vector<ScreenPart> parts = {
      must_stand(heading(title_of(one), style).substr(1) + paragraph(no_promise, style)),
      screen_list("Here", here, std::min<std::size_t>(here.size(), 3), style),
      screen_list("What people then consider, the least first", kinds, std::min<std::size_t>(kinds.size(), 6), style),
      must_stand("\n" + paragraph("How long, what stays behind, how to clear, sources: --full; to print: --html. " +
                                      edition_words(edition) + ".",
                                  style, 0))};
  return screen_of(std::move(parts), style);
}

std::string ways_report(const WaysCase& one, Form form, const Style& style, const Edition& edition) {
  if (form == Form::csv) return sheet_csv(ways_sheet(one), edition);
  return form == Form::json ? ways_json(one, edition) : ways_text(one, style, edition);
}

std::string ways_page(const WaysCase& one, Paper paper, const Edition& edition) {
  std::string body = element("h1", user_text(title_of(one))) + element("p", "<b>" + html_text(no_promise) + "</b>");
  std::vector<std::string> here;
  for (const std::string& words : occasions_in_words(one)) here.push_back(user_text(words));
  if (!here.empty()) body += element("h2", "Here") + html_list(here);
  for (const OfKind& kind : by_kind(one.answer)) {
    body += element("h2", html_text(kind_title(kind.front()->way->kind)));
    for (const WayHere* way : kind) body += way_html(*way, one.sources);
  }
  if (!one.answer.passed_over.empty())
    body += element("h2", "Not brought up by this plan") + element("p", html_text(passed_over_words(one.answer)));
  body += element("p", html_text(edition_words(edition) + "."), "quiet");
  return html_page(title_of(one), paper, text_page_css("gentlest: other ways, none of them modelled") + ways_css,
                   "<main>\n" + body + "</main>\n");
}

}  // namespace gentlest
