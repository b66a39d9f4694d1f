#include "report/draw/html.hpp"

#include "report/draw/svg.hpp"

#include <fmt/format.h>

namespace gentlest {

namespace {

constexpr int top_margin_mm = 8;
constexpr int bottom_margin_mm = 11;

// Shared by all pages. Sizes in pt and mm, so that screen and paper agree. Black, white, and greys of at least 4.5:1.
constexpr const char* shared_css = R"(
html { background: #fff; color: #000; }
body { font: 9.5pt/1.38 Arial, Helvetica, 'Liberation Sans', 'DejaVu Sans', sans-serif; margin: 0 auto;
  overflow-wrap: anywhere; }
h1 { font-size: 17pt; line-height: 1.2; margin: 0 0 1mm; }
h2 { font-size: 12.5pt; margin: 4.5mm 0 1.2mm; padding-bottom: .6mm; border-bottom: .4mm solid #000; break-after: avoid; }
h3 { font-size: 10pt; margin: 2.6mm 0 .8mm; break-after: avoid; }
p { margin: 0 0 1.6mm; } ul { margin: 0 0 2mm; padding-left: 5mm; } li { margin: 0 0 .8mm; }
table { border-collapse: collapse; width: 100%; margin: 1mm 0 2.5mm; }
th, td { border: .2mm solid #767676; padding: .8mm 1.2mm; text-align: left; vertical-align: top; font-weight: normal; }
thead th { font-weight: bold; background: #ececec; overflow-wrap: normal; } tbody th { font-weight: bold; }
tr, figure { break-inside: avoid; } thead { display: table-header-group; }
figure { margin: 2mm 0 5mm; } figure svg { display: block; width: 100%; max-width: 130mm; height: auto; }
figcaption { margin-top: 1mm; } .quiet { color: #595959; } .nowrap { white-space: nowrap; }
.pictogram { width: 8mm; height: 8mm; vertical-align: middle; margin-right: .5mm; } .definitions { position: absolute; }
pre { white-space: pre-wrap; font: 8pt/1.3 'DejaVu Sans Mono', 'Liberation Mono', monospace; border: .2mm solid #767676;
  padding: 2mm; margin: 0; }
.pages { margin: 0; } .pages > * > tr > td { border: 0; padding: 0; } .pages > tbody > tr { break-inside: auto; }
.run, .page { break-after: page; } .run:last-child, .page:last-child { break-after: auto; }
.running { display: flex; justify-content: space-between; gap: 4mm; font-size: 8pt; line-height: 1.2;
  border-bottom: .2mm solid #767676; padding-bottom: .5mm; margin-bottom: 2mm; }
@media screen { .run, .page { margin-bottom: 8mm; } }
@media print { figure svg { max-height: 230mm; } }
* { -webkit-print-color-adjust: exact; print-color-adjust: exact; }
)";

}  // namespace

PaperSize size_of(Paper paper) {
  if (paper == Paper::letter) return {215.9, 279.4, "letter"};
  return {210, 297, "A4"};
}

std::optional<Paper> paper_from_word(std::string_view word) {
  if (word == "a4" || word == "A4") return Paper::A4;
  if (word == "letter" || word == "Letter") return Paper::letter;
  return std::nullopt;
}

std::string html_text(std::string_view text) {
  return xml_escape(text);
}

std::string user_text(std::string_view text) {
  return "<bdi>" + xml_escape(text) + "</bdi>";
}

std::string html_words(const std::string& html) {
  std::string text;
  bool inside = false;
  for (const char c : html) {
    if (c == '<') inside = true;
    if (!inside) text += c;
    if (c == '>') inside = false;
  }
  return text;
}

std::string element(const char* name, const std::string& inner, const char* css_class) {
  return *css_class ? fmt::format("<{0} class=\"{1}\">{2}</{0}>\n", name, css_class, inner)
                    : fmt::format("<{0}>{1}</{0}>\n", name, inner);
}

std::string html_list(const std::vector<std::string>& items) {
  std::string text;
  for (const std::string& item : items) text += element("li", item);
  return text.empty() ? text : "<ul>\n" + text + "</ul>\n";
}

std::string column_head(std::size_t column, const std::string& words) {
  return fmt::format("<th scope=\"col\" class=\"c{}\">{}</th>", column, words);
}

std::string html_table(const std::vector<std::string>& header, const std::vector<std::vector<std::string>>& rows,
                       const char* css_class) {
  std::string text = fmt::format("<table class=\"{}\">\n<thead><tr>", css_class);
  for (std::size_t i = 0; i < header.size(); ++i) text += column_head(i, header[i]);
  text += "</tr></thead>\n<tbody>\n";
  for (const std::vector<std::string>& row : rows) {
    text += "<tr>";
    for (std::size_t i = 0; i < row.size(); ++i)
      text += i == 0 ? "<th scope=\"row\">" + row[i] + "</th>" : "<td>" + row[i] + "</td>";
    text += "</tr>\n";
  }
  return text + "</tbody></table>\n";
}

std::string page_head(std::string_view title, const std::string& part, std::string_view day) {
  constexpr double letters_mm = 2.85;  // 8 pt
  constexpr double room_mm = 86;
  return element("div",
                 "<span>" + user_text(shortened(title, letters_mm, room_mm)) + "</span> <span>" + part +
                     "</span> <span class=\"nowrap\">" +
                     (day.empty() ? std::string("date ______________") : html_text(day)) + "</span>",
                 "running");
}

std::string running_pages(const std::string& head, const std::string& body, const char* css_class,
                          const std::string& foot) {
  const std::string table_foot = foot.empty() ? foot : "<tfoot><tr><td>\n" + foot + "</td></tr></tfoot>\n";
  return fmt::format(
      "<div class=\"run {}\">\n<table class=\"pages\" role=\"presentation\">\n<thead><tr><td>\n{}</td></tr></thead>\n"
      "<tbody><tr><td>\n{}</td></tr></tbody>{}</table>\n</div>\n",
      css_class, head, body, table_foot);
}

std::string single_page(const std::string& head, const std::string& body, const char* css_class) {
  return fmt::format("<div class=\"page {}\">\n{}{}</div>\n", css_class, head, body);
}

double text_page_height_mm(Paper paper) {
  return size_of(paper).height_mm - top_margin_mm - bottom_margin_mm;
}

std::string text_page_css(const std::string& foot) {
  return fmt::format(R"(
body {{ max-width: 180mm; padding: 0 2mm; }}
@page {{ margin: {}mm 15mm {}mm; @bottom-right {{ content: counter(page) " / " counter(pages); font: 8pt Arial, sans-serif; }}
  @bottom-left {{ content: "{}"; font: 8pt Arial, sans-serif; }} }}
@media print {{ body {{ max-width: none; padding: 0 .3mm; }} }}
)",
                     top_margin_mm, bottom_margin_mm, foot);
}

std::string html_page(std::string_view title, Paper paper, const std::string& css, const std::string& body) {
  const PaperSize size = size_of(paper);
  return fmt::format(
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
      // Nothing may be fetched or run, whatever stands in the text.
      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; "
      "img-src data:\">\n<title>{}</title>\n<style>\n@page {{ size: {}; }}\n{}{}</style>\n</head>\n<body>\n{}</body>\n"
      "</html>\n",
      html_text(title), size.css, shared_css, css, body);
}

}  // namespace gentlest
