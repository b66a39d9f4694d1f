#include "report/phrases/words.hpp"

#include "gentlest/safety/hazard.hpp"
#include "report/bottle/statement_words.hpp"
#include "report/bottle/vial_words.hpp"
#include "report/form/format.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/sighting_words.hpp"

#include <fmt/format.h>

namespace gentlest {

namespace {

constexpr const char* own_tests = "own tests";

void add_limit(std::vector<std::string>& parts, const std::string& when, const std::optional<double>& ppm,
               const std::optional<double>& mg) {
  if (ppm && mg)
    parts.push_back(when + " " + as_recorded(*ppm) + " ppm (" + as_recorded(*mg) + " mg/m3)");
  else if (ppm)
    parts.push_back(when + " " + as_recorded(*ppm) + " ppm");
  else if (mg)
    parts.push_back(when + " " + as_recorded(*mg) + " mg/m3");
}

}  // namespace

std::string grade_in_words(SphereGrade grade) {
  switch (grade) {
    case SphereGrade::fitted:
      return "published, and its own published tests bear it out";
    case SphereGrade::recalled:
      return "recalled from memory; its own published tests bear it out";
    case SphereGrade::unbracketed:
      return "published, but its tests do not close it in";
    case SphereGrade::weak:
      return "published, but it fits its own tests badly";
    case SphereGrade::unsupported:
      return "published, with no tests to check it against";
    case SphereGrade::assumed:
      return "stand-in: no sphere of this very material is published";
  }
  return {};
}

namespace {

std::string published_range_in_words(const PlannedLayer& layer) {
  if (layer.observations_fitted == 0) return grade_in_words(layer.grade);
  const std::string by = counted(static_cast<std::size_t>(layer.observations_fitted), "observation", "observations");
  return layer.grade == SphereGrade::assumed ? "stand-in, fitted to " + by + " of this material"
                                             : grade_in_words(layer.grade) + "; bent by " + by;
}

}  // namespace

std::string range_in_words(const PlannedLayer& layer) {
  if (!layer.sphere) return state_of_unjudged(layer);
  if (layer.basis == LayerBasis::own_tests) return "your own tests: " + layer.sphere_source;
  const std::string range = published_range_in_words(layer);
  return layer.studio ? range + "; moved by " + finished_paintings(*layer.studio) : range;
}

std::string finished_paintings(const StudioStart& start) {
  return counted(static_cast<std::size_t>(start.paintings), "finished painting", "finished paintings");
}

std::string sphere_in_words(const PlannedLayer& layer) {
  const std::string range = range_in_words(layer);
  return layer.basis == LayerBasis::own_tests ? range : basis_words(layer) + "; " + range;
}

std::string of_borrowed_curve(const std::vector<PlannedLayer>& layers) {
  std::vector<std::string> names;
  bool all = true;
  for (const PlannedLayer& layer : layers) {
    if (!layer.sphere) continue;
    all = all && !layer.own_response;
    if (!layer.own_response) names.push_back(layer.name);
  }
  return all ? "" : " of " + joined(names);
}

std::string basis_words(const PlannedLayer& layer) {
  switch (layer.basis) {
    case LayerBasis::found:
      return "found";
    case LayerBasis::recorded:
      return "recorded, not examined";
    case LayerBasis::own_tests:
      return own_tests;
    case LayerBasis::passage:
      return "passage of " + layer.passage_of;
    case LayerBasis::suspected:
      return "passage of " + layer.passage_of + ", judged as what is suspected";
  }
  return {};
}

std::string material_in_words(const PlannedLayer& layer) {
  return material_in_words(layer.material_name);
}

std::string material_in_words(const std::string& material_name) {
  return material_name.empty() ? own_tests : material_name;
}

std::string role_word(Role role) {
  return role == Role::remove ? "remove" : "keep";
}

std::string flags_text(const std::vector<Flag>& flags) {
  std::vector<std::string> words;
  for (const Flag flag : flags) {
    if (flag == Flag::cross_linked)
      words.emplace_back("cross-linked");
    else if (flag == Flag::water_sensitive)
      words.emplace_back("sensitive to water");
    else
      words.emplace_back(to_word(flag));
  }
  return joined(words);
}

std::string law_words(const Law& law) {
  if (law.seen_until.empty())
    return "This catalogue does not say up to which day the law on hazards was seen: take its records for old.";
  std::string text = "Law on hazards as seen until " + law.seen_until + ": " + law.seen + ".";
  if (!law.older.empty()) text += " Older: " + law.older + ".";
  return text + " What came later is not in here.";
}

std::string standing_mark(Standing standing) {
  return standing == Standing::measured ? std::string() : fmt::format(" [{}]", to_word(standing));
}

std::string limit_text(const ExposureLimit& limit) {
  std::vector<std::string> parts;
  add_limit(parts, "long term", limit.long_term_ppm, limit.long_term_mg_per_m3);
  add_limit(parts, "short term", limit.short_term_ppm, limit.short_term_mg_per_m3);
  add_limit(parts, "ceiling", limit.ceiling_ppm, limit.ceiling_mg_per_m3);
  if (limit.skin) parts.emplace_back(goes_through_skin);
  return joined(parts, ", ", not_known);
}

std::string hazard_line(const Mixture& mixture) {
  const HazardSummary hazards = hazards_of_parts(mixture);
  std::vector<std::string> parts;
  if (!hazards.signal_word.empty())
    parts.push_back(hazards.signal_word);
  else if (hazards.without_record.size() < mixture.parts().size())
    parts.emplace_back(no_signal_word);
  if (hazards.lowest_flash_point)
    parts.push_back("flash point " + as_recorded(hazards.lowest_flash_point->value) + " C (" +
                    hazards.lowest_flash_point_of + ")");
  else
    parts.emplace_back(flash_point_not_known);
  if (hazards.lowest_flash_point && !hazards.without_flash_point.empty())
    parts.push_back(std::string(flash_point_not_known) + ": " + joined(hazards.without_flash_point));
  if (!hazards.without_record.empty()) parts.push_back("no record: " + joined(hazards.without_record));
  return joined(parts, "; ");
}

std::string parting_words(const PartingPair& pair, bool kept_out) {
  const std::string parts = pair.from_percent == pair.to_percent
                                ? fmt::format("at {}", pair.from_percent)
                                : fmt::format("from {} to {}", pair.from_percent, pair.to_percent);
  std::string text = fmt::format("{} in {}: two liquids {} parts in 100 ({}){}", pair.bottle, pair.other, parts,
                                 to_word(pair.basis), kept_out ? ", so no such mixture is proposed" : "");
  if (!pair.stays_one_liquid) return text + "; no grade of it stays one liquid there";
  return text + fmt::format("; {} stays one liquid there", *pair.stays_one_liquid);
}

std::string title_of(const PaintingObject& object) {
  return object.title.empty() ? "Untitled painting" : object.title;
}

std::string object_facts(const PaintingObject& object) {
  std::vector<std::string> facts;
  if (!object.owner_number.empty()) facts.push_back("no. " + object.owner_number);
  if (object.width && object.height)
    facts.push_back(as_recorded(object.width->value) + " x " + as_recorded(object.height->value) + painting_size_unit);
  if (object.paint_age_years) facts.push_back("paint about " + as_recorded(*object.paint_age_years) + " years old");
  return joined(facts);
}

}  // namespace gentlest
