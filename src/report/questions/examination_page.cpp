#include "report/questions/examination_page.hpp"

#include "report/examined/examination_words.hpp"
#include "report/form/format.hpp"
#include "report/form/json.hpp"
#include "report/form/sheet.hpp"
#include "report/form/short_screen.hpp"
#include "report/form/table.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

constexpr const char* defers =
    "What an answer does is our choice, on the careful side; the licensed conservator in front of the painting "
    "decides.";

std::vector<std::string> open_questions(const Examination& examination) {
  std::vector<std::string> open;
  for (const WeighedAnswer& one : examination.answers)
    if (!is_known(one)) open.push_back(one.question->id);
  return open;
}

std::vector<std::string> words_of_answers(const ExaminationQuestion& question) {
  std::vector<std::string> words;
  for (const ExaminationAnswer& answer : question.answers) words.push_back(answer.word);
  return words;
}

std::string question_text(const WeighedAnswer& one, const Catalogue& catalogue, const Style& style) {
  std::string text = bullet(fmt::format("{}: {}", one.question->id, one.question->question), style);
  text += paragraph(
      fmt::format("answer: {} (of {})",
                  one.where.empty() ? one.answer->word : fmt::format("{}, {}", one.answer->word, joined(one.where)),
                  joined(words_of_answers(*one.question), " / ")),
      style, 6);
  const std::string effects = effect_words(*one.answer);
  if (!one.answer->says.empty() || !effects.empty())
    text += paragraph(fmt::format("so: {}{}", one.answer->says, effects.empty() ? "" : " [" + effects + "]"), style, 6);
  if (!one.note.empty()) text += paragraph("note: " + one.note, style, 6);
  text += paragraph(fmt::format("why: {} ({})", one.question->why, reason_source(*one.question, catalogue)), style, 6);
  return text;
}

}  // namespace

std::string examination_text(const Examination& examination, const std::string& title, const Catalogue& catalogue,
                             bool full, const Style& style, const Edition& edition) {
  std::string text = heading(title.empty() ? "Before the first swab" : "Before the first swab: " + title, style);
  text += paragraph(fmt::format("Verdict: {}.", verdict_word(examination.verdict)), style);
  for (const std::string& line : first_lines(examination)) text += bullet(line, style);
  std::vector<ScreenPart> parts = {must_stand(text)};
  const std::vector<std::string> changed = consequence_lines(examination);
  if (full) {
    text += changed.empty() ? std::string() : heading("What the findings change", style);
    for (const std::string& line : changed) text += bullet(line, style);
    std::string topic;
    for (const WeighedAnswer& one : examination.answers) {
      if (one.question->topic != topic) text += heading(topic = one.question->topic, style);
      text += question_text(one, catalogue, style);
    }
    text += "\n" + paragraph(defers, style);
    return text + paragraph(edition_words(edition) + ".", style, 0);
  }
  parts.push_back(screen_list("What the findings change", changed, 4, style));
  std::vector<std::string> careful;
  for (const WeighedAnswer& one : examination.answers)
    if (!is_known(one) && does(*one.answer, ExaminationEffect::first_test))
      careful.push_back(fmt::format("{}: {}", one.question->id, one.answer->says));
  parts.push_back(screen_list("Try first, since it is not known", careful, 2, style));
  const std::vector<std::string> open = open_questions(examination);
  if (!open.empty())
    parts.push_back(
        must_stand(heading(fmt::format("Not known ({} of {})", open.size(), examination.answers.size()), style) +
                   paragraph(joined(open), style)));
  parts.push_back(must_stand(
      "\n" +
      paragraph(std::string(defers) + " Reasons and sources: --full; a page to fill in: --html --output FILE.", style) +
      paragraph(edition_words(edition) + ".", style, 0)));
  return screen_of(parts, style);
}

std::string examination_json(const Examination& examination, const std::string& title, const Catalogue& catalogue,
                             const Edition& edition) {
  Json document = json_document("examination", edition);
  document["title"] = title.empty() ? Json() : Json(title);
  document["verdict"] = verdict_word(examination.verdict);
  document["in_short"] = verdict_sentence(examination);
  document["first"] = first_lines(examination);
  document["changes"] = consequence_lines(examination);
  document["questions"] = Json::array();
  for (const WeighedAnswer& one : examination.answers) {
    Json answers = Json::array();
    for (const ExaminationAnswer& answer : one.question->answers)
      answers.push_back({{"answer", answer.word},
                         {"asks_where", answer.asks_where},
                         {"effects", effect_words(answer)},
                         {"says", answer.says}});
    document["questions"].push_back({{"id", one.question->id},
                                     {"topic", one.question->topic},
                                     {"question", one.question->question},
                                     {"why", one.question->why},
                                     {"source", reason_source(*one.question, catalogue)},
                                     {"standing", std::string(to_word(one.question->witness))},
                                     {"answers", std::move(answers)},
                                     {"answer", one.answer->word},
                                     {"where", one.where},
                                     {"note", one.note}});
  }
  return json_dump(document);
}

std::string examination_csv(const Examination& examination, const Catalogue& catalogue, const Edition& edition) {
  Sheet sheet{"examination",
              {{"question", "", -1, false},
               {"asked", "", -1, false},
               {"answer", "", -1, false},
               {"where", "", -1, false},
               {"effects", "", -1, false},
               {"says", "", -1, false},
               {"why", "", -1, false},
               {"source", "", -1, false}},
              {}};
  for (const WeighedAnswer& one : examination.answers)
    sheet.rows.push_back({one.question->id, one.question->question, one.answer->word, joined(one.where, "; "),
                          effect_words(*one.answer), one.answer->says, one.question->why,
                          reason_source(*one.question, catalogue)});
  return sheet_csv(sheet, edition);
}

std::string examination_block(const Examination& examination) {
  std::vector<std::string> items;
  for (const std::string& line : consequence_lines(examination)) items.push_back(user_text(line));
  return element("section", element("h2", "Before the first swab") +
                                element("p", user_text(verdict_sentence(examination))) + html_list(items));
}

namespace {

constexpr const char* form_css =
    ".exam { table-layout: fixed; }\n"
    ".exam .c0 { width: 24%; }\n.exam .c1 { width: 26%; }\n.exam .c2 { width: 25%; }\n"
    ".exam td, .exam th { vertical-align: top; padding: 1.2mm 1.5mm; }\n"
    ".exam ul { margin: 0; padding-left: 4mm; }\n"
    ".exam tr { break-inside: avoid; }\n"
    ".box { display: inline-block; width: 3mm; height: 3mm; border: 0.3mm solid black; margin: 0 1mm 0 0; }\n"
    ".box.ticked { background: black; }\n"
    ".choice { white-space: nowrap; margin-right: 3mm; display: inline-block; }\n"
    ".line { display: inline-block; border-bottom: 0.2mm solid black; min-width: 45mm; height: 4mm; }\n";

std::string box(bool ticked) {
  return element("span", "", ticked ? "box ticked" : "box");
}

std::string choices(const WeighedAnswer& one) {
  std::string html;
  for (const ExaminationAnswer& answer : one.question->answers)
    html += element("span", box(is_known(one) && &answer == one.answer) + html_text(answer.word), "choice");
  const bool asks_where = std::any_of(one.question->answers.begin(), one.question->answers.end(),
                                      [](const ExaminationAnswer& answer) { return answer.asks_where; });
  if (asks_where)
    html +=
        element("div", "where: " + (one.where.empty() ? element("span", "", "line") : user_text(joined(one.where))));
  return html;
}

std::string effects_of(const ExaminationQuestion& question) {
  std::vector<std::string> items;
  for (const ExaminationAnswer& answer : question.answers) {
    const std::string effects = effect_words(answer);
    if (!effects.empty()) items.push_back(html_text(fmt::format("{}: {}", answer.word, effects)));
  }
  return html_list(items);
}

}  // namespace

std::string examination_html(const Examination& examination, const std::string& title, const Catalogue& catalogue,
                             Paper paper, const Edition& edition) {
  std::string body = element("h1", "Before the first swab");
  body += element("p", "Painting: " + (title.empty() ? element("span", "", "line") : user_text(title)));
  body += element("p", html_text(verdict_sentence(examination)));
  std::string topic;
  std::vector<std::vector<std::string>> rows;
  const auto close_table = [&] {
    if (!rows.empty()) body += html_table({"looked at", "found", "what it does", "why"}, rows, "exam");
    rows.clear();
  };
  for (const WeighedAnswer& one : examination.answers) {
    if (one.question->topic != topic) {
      close_table();
      body += element("h2", html_text(topic = one.question->topic));
    }
    rows.push_back({html_text(one.question->question), choices(one), effects_of(*one.question),
                    html_text(fmt::format("{} ({})", one.question->why, reason_source(*one.question, catalogue)))});
  }
  close_table();
  body += element("p", html_text(defers));
  body += element("p", html_text(edition_words(edition) + "."));
  return html_page("Before the first swab", paper, text_page_css("Before the first swab") + form_css,
                   "<main class=\"report\">\n" + body + "</main>\n");
}

}  // namespace gentlest
