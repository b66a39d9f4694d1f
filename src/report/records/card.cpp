#include "report/records/card.hpp"

#include "report/form/format.hpp"
#include "report/form/json.hpp"
#include "report/form/sheet.hpp"
#include "report/form/table.hpp"
#include "report/phrases/observation_words.hpp"
#include "report/phrases/words.hpp"
#include "report/records/observed_rows.hpp"

#include <algorithm>

namespace gentlest {

namespace {

std::string value_text(const Statement& statement, const std::string& unit) {
  if (statement.values.empty()) return statement.words;
  std::vector<std::string> numbers;
  for (const double value : statement.values) numbers.push_back(as_recorded(value));
  return joined(numbers) + (unit.empty() ? "" : " " + unit);
}

// "[3]", the place of the source in the card's list.
std::string source_mark(const Card& card, const std::string& key) {
  for (std::size_t i = 0; i < card.sources.size(); ++i)
    if (card.sources[i].key == key) return "[" + std::to_string(i + 1) + "]";
  return key;
}

std::string unknown_words(const Figure& figure) {
  return figure.unknown.empty() ? not_known : figure.unknown;
}

void add_rows(Table& table, const Card& card, const Figure& figure) {
  if (figure.statements.empty()) table.rows.push_back({figure.title, unknown_words(figure), "", "", ""});
  for (std::size_t i = 0; i < figure.statements.size(); ++i) {
    const Statement& statement = figure.statements[i];
    std::string note = statement.note;
    if (i == 0 && figure.statements.size() > 1 && !figure.why.empty())
      note += (note.empty() ? "" : "; ") + ("chosen because: " + figure.why);
    table.rows.push_back({i == 0 ? figure.title : "  another value", value_text(statement, figure.unit),
                          statement.standing, source_mark(card, statement.source), note});
  }
}

std::string card_text(const Card& card, const Style& style) {
  std::string text = heading(card.name + " (" + card.kind + " \"" + card.id + "\")", style).substr(1);
  for (const auto& [what, words] : card.facts) text += paragraph(what + ": " + words, style);
  for (const FigureGroup& group : card.groups) {
    Table table;
    table.columns = {{"figure", Align::left, true},
                     {"value", Align::left, true},
                     {"standing", Align::left, false},
                     {"source", Align::left, false},
                     {"note", Align::left, true}};
    for (const Figure& figure : group.figures) add_rows(table, card, figure);
    text += heading(group.title, style) + to_text(table, style);
  }
  text += observed_text(card, style, source_mark);
  text += heading("Sources", style);
  if (card.sources.empty()) text += paragraph("none: nothing of this record rests on a publication", style);
  for (std::size_t i = 0; i < card.sources.size(); ++i) {
    const Source& source = card.sources[i];
    text += paragraph("[" + std::to_string(i + 1) + "] " + source.key + ": " + source.citation +
                          (source.seen.empty() ? "" : " (" + source.seen + ")"),
                      style);
  }
  return text;
}

// Cells that only observations fill stay empty elsewhere.
void add_sheet_row(Sheet& sheet, std::vector<Cell> cells) {
  cells.resize(sheet.columns.size(), Cell(std::string()));
  sheet.rows.push_back(std::move(cells));
}

void add_sheet_row(Sheet& sheet, const Card& card, const ObservedRow& row) {
  const Observation& seen = *row.judged.seen;
  std::vector<Cell> cells = {card.kind,
                             card.id,
                             std::string("observation"),
                             card.kind == "material" ? row.liquid : row.material,
                             result_in_words(seen),
                             std::string(),
                             std::string(),
                             std::string(to_word(seen.witness)),
                             seen.source,
                             remark_text(seen)};
  for (Cell& cell : observed_cells(row)) cells.push_back(std::move(cell));
  sheet.rows.push_back(std::move(cells));
}

void add_sheet_rows(Sheet& sheet, const Card& card, const Figure& figure) {
  const auto row = [&](Cell value, const std::string& chosen, const Statement& statement) {
    add_sheet_row(sheet, {card.kind, card.id, figure.key, figure.title, std::move(value), figure.unit, chosen,
                          statement.standing, statement.source, statement.note});
  };
  if (figure.statements.empty()) row(unknown_words(figure), "", {});
  for (std::size_t i = 0; i < figure.statements.size(); ++i) {
    const Statement& statement = figure.statements[i];
    const bool single = statement.values.size() == 1;
    row(single ? Cell(statement.values.front()) : Cell(value_text(statement, "")), i == 0 ? "yes" : "no", statement);
  }
}

Sheet cards_sheet(const std::vector<Card>& cards) {
  Sheet sheet{"figures", {}, {}};
  for (const char* key :
       {"record_kind", "record", "figure", "title", "value", "unit", "chosen", "standing", "source", "note"})
    sheet.columns.push_back({key, key, -1, false});
  for (const char* key : observed_columns()) sheet.columns.push_back({key, key, -1, false});
  for (const Card& card : cards) {
    for (const auto& [what, words] : card.facts)
      add_sheet_row(sheet, {card.kind, card.id, std::string("fact"), what, words});
    for (const FigureGroup& group : card.groups)
      for (const Figure& figure : group.figures) add_sheet_rows(sheet, card, figure);
    for (const ObservedRow& row : card.observations) add_sheet_row(sheet, card, row);
  }
  return sheet;
}

Json statement_json(const Statement& statement) {
  Json values = Json::array();
  for (const double value : statement.values) values.push_back(data_value(value));
  Json json = {{"values", values.empty() ? Json() : values}, {"words", json_text(statement.words)}};
  json["standing"] = json_text(statement.standing);
  json["source"] = json_text(statement.source);
  json["note"] = json_text(statement.note);
  return json;
}

Json figure_json(const Figure& figure) {
  Json json = {{"figure", figure.key}, {"title", figure.title}, {"unit", json_text(figure.unit)}};
  json["known"] = !figure.statements.empty();
  if (figure.statements.empty()) {
    json["unknown"] = unknown_words(figure);
    return json;
  }
  json["chosen"] = statement_json(figure.statements.front());
  json["others"] = Json::array();
  for (std::size_t i = 1; i < figure.statements.size(); ++i)
    json["others"].push_back(statement_json(figure.statements[i]));
  json["why"] = json_text(figure.why);
  return json;
}

Json card_json(const Card& card) {
  Json json = {{"kind", card.kind}, {"id", card.id}, {"name", card.name}};
  json["facts"] = Json::object();
  for (const auto& [what, words] : card.facts) json["facts"][what] = words;
  json["groups"] = Json::array();
  for (const FigureGroup& group : card.groups) {
    Json figures = Json::array();
    for (const Figure& figure : group.figures) figures.push_back(figure_json(figure));
    json["groups"].push_back({{"title", group.title}, {"figures", std::move(figures)}});
  }
  json["observations"] = Json::array();
  for (const ObservedRow& row : card.observations) json["observations"].push_back(observed_json(row));
  json["sources"] = json_sources(card.sources);
  return json;
}

}  // namespace

std::string cards_report(const std::vector<Card>& cards, Form form, const Style& style, const Edition& edition) {
  if (form == Form::csv) return sheet_csv(cards_sheet(cards), edition);
  if (form == Form::json) {
    Json document = json_document("cards", edition);
    document["cards"] = Json::array();
    for (const Card& card : cards) document["cards"].push_back(card_json(card));
    return json_dump(document);
  }
  std::string text;
  for (const Card& card : cards) text += card_text(card, style) + "\n";
  if (std::any_of(cards.begin(), cards.end(), [](const Card& card) { return card.kind == "solvent"; }))
    text += paragraph(law_words(edition.law), style, 0);
  return text + "gentlest " + edition.program + ", catalogue " + edition.catalogue + "\n";
}

}  // namespace gentlest
