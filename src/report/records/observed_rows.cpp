#include "report/records/observed_rows.hpp"

#include "report/form/format.hpp"
#include "report/form/table.hpp"
#include "report/phrases/observation_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace gentlest {

namespace {

std::string chance_text(const JudgedObservation& judged, double ActionChances::*which) {
  return judged.chances ? per_cent((*judged.chances).*which) : "-";
}

std::string seen_text(const Observation& seen) {
  std::vector<std::string> pieces;
  for (const std::string& piece : {result_in_words(seen), grades_in_words(seen), contact_in_words(seen), seen.state})
    if (!piece.empty()) pieces.push_back(piece);
  return joined(pieces, "; ");
}

std::string basis_text(const Observation& seen) {
  return std::string(to_word(seen.witness)) + "; " + generality_in_words(seen.general) + "; confidence " +
         std::string(to_word(seen.confidence));
}

std::string counts_text(const std::vector<ObservedRow>& rows) {
  const auto disagree = std::count_if(
      rows.begin(), rows.end(), [](const ObservedRow& row) { return row.judged.agreement == Agreement::disagrees; });
  return counted(rows.size(), "observation", "observations") + "; " +
         (disagree == 1 ? "1 disagrees with the chance." : std::to_string(disagree) + " disagree with the chance.");
}

Cell number_cell(const std::optional<ActionChances>& chances, double ActionChances::*which) {
  return chances ? Cell(computed_value((*chances).*which)) : Cell(std::string());
}

Cell end_cell(const std::optional<GradeRange>& grades, int GradeRange::*which) {
  return grades ? Cell(static_cast<double>((*grades).*which)) : Cell(std::string());
}

}  // namespace

std::vector<ObservedRow> observed_rows(const std::vector<const Observation*>& observations,
                                       const Catalogue& catalogue) {
  std::vector<ObservedRow> rows;
  for (const JudgedObservation& judged : judge_observations(observations, catalogue)) {
    const Material* material = catalogue.find_material(judged.seen->material);
    rows.push_back(
        {liquid_in_words(*judged.seen, catalogue), material ? material->name : judged.seen->material, judged});
  }
  return rows;
}

namespace {

bool counts_otherwise(const ActionChances& chances) {
  const ActionChances usual;
  return chances.moves_grade != usual.moves_grade || chances.affects_grade != usual.affects_grade;
}

// Each material once for which other grades count than the legend says.
std::string counted_otherwise_text(const std::vector<ObservedRow>& rows, const Style& style) {
  std::map<std::string, ActionChances> materials;
  for (const ObservedRow& row : rows)
    if (row.judged.chances && counts_otherwise(*row.judged.chances))
      materials.emplace(row.material, *row.judged.chances);
  std::string text;
  for (const auto& [material, chances] : materials)
    text += paragraph(fmt::format("On {}, moves means grade {} or stronger, affects grade {} or stronger.", material,
                                  chances.moves_grade, chances.affects_grade),
                      style);
  return text;
}

}  // namespace

std::string observed_text(const Card& card, const Style& style,
                          std::string (*source_mark)(const Card&, const std::string&)) {
  std::string text = heading(observed_heading, style);
  if (card.observations.empty()) return text + paragraph("none recorded", style);
  const bool on_material = card.kind == "material";
  Table table;
  table.columns = {{on_material ? "liquid" : "material", Align::left, true},
                   {"seen", Align::left, true},
                   {"moves", Align::right, false},
                   {"affects", Align::right, false},
                   {"compared", Align::left, true},
                   {"standing", Align::left, true},
                   {"source", Align::left, false},
                   {"note", Align::left, true}};
  for (const ObservedRow& row : card.observations) {
    const Observation& seen = *row.judged.seen;
    const bool mixed = seen.parts.size() > 1;
    table.rows.push_back({on_material ? row.liquid : row.material + (mixed ? ": " + row.liquid : ""), seen_text(seen),
                          chance_text(row.judged, &ActionChances::moves),
                          chance_text(row.judged, &ActionChances::affects), agreement_in_words(row.judged),
                          basis_text(seen), source_mark(card, seen.source), remark_text(seen)});
  }
  return text + to_text(table, style) + paragraph(counts_text(card.observations), style) +
         paragraph(observed_legend(), style) + counted_otherwise_text(card.observations, style);
}

const std::vector<const char*>& observed_columns() {
  static const std::vector<const char*> keys = {"liquid",     "material",     "state",          "contact",
                                                "duration",   "grade_from",   "grade_to",       "general",
                                                "confidence", "chance_moves", "chance_affects", "agreement"};
  return keys;
}

std::vector<Cell> observed_cells(const ObservedRow& row) {
  const Observation& seen = *row.judged.seen;
  return {row.liquid,
          seen.material,
          seen.state,
          std::string(to_word(seen.contact)),
          seen.duration,
          end_cell(seen.grades, &GradeRange::strongest),
          end_cell(seen.grades, &GradeRange::weakest),
          std::string(to_word(seen.general)),
          std::string(to_word(seen.confidence)),
          number_cell(row.judged.chances, &ActionChances::moves),
          number_cell(row.judged.chances, &ActionChances::affects),
          agreement_in_words(row.judged)};
}

Json observed_json(const ObservedRow& row) {
  const Observation& seen = *row.judged.seen;
  const std::optional<ActionChances>& chances = row.judged.chances;
  Json json = {{"material", seen.material}, {"liquid", row.liquid}};
  json["volume_percent"] = Json::object();
  for (const ObservedPart& part : seen.parts) json["volume_percent"][part.solvent] = data_value(part.percent);
  json["state"] = json_text(seen.state);
  json["contact"] = std::string(to_word(seen.contact));
  json["duration"] = json_text(seen.duration);
  json["result"] = seen.result ? Json(std::string(to_word(*seen.result))) : Json();
  json["grade_from"] = seen.grades ? Json(seen.grades->strongest) : Json();
  json["grade_to"] = seen.grades ? Json(seen.grades->weakest) : Json();
  json["said"] = json_text(seen.said);
  json["general"] = std::string(to_word(seen.general));
  json["source"] = seen.source;
  json["cite"] = json_text(seen.cite);
  json["standing"] = std::string(to_word(seen.witness));
  json["confidence"] = std::string(to_word(seen.confidence));
  json["note"] = json_text(seen.note);
  json["chance_moves"] = json_computed(chances ? std::optional(chances->moves) : std::nullopt);
  json["chance_affects"] = json_computed(chances ? std::optional(chances->affects) : std::nullopt);
  if (chances && counts_otherwise(*chances)) {
    json["moves_grade"] = chances->moves_grade;
    json["affects_grade"] = chances->affects_grade;
  }
  json["agreement"] = json_text(agreement_word(row.judged));
  json["not_judged"] = json_text(not_judged_word(row.judged));
  return json;
}

}  // namespace gentlest
