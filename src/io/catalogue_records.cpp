#include "io/catalogue_records.hpp"

#include "gentlest/base/text.hpp"
#include "gentlest/catalogue/figures.hpp"
#include "gentlest/catalogue/statements.hpp"
#include "gentlest/learning/reading.hpp"
#include "io/cited_figures.hpp"
#include "io/name_records.hpp"
#include "io/specific_limits.hpp"

#include <fmt/format.h>

namespace gentlest {

namespace {

void check_id(YamlFile& file, const YamlNode* node, const std::string& id) {
  if (node && id.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_") != std::string::npos)
    file.complain(*node, fmt::format("\"{}\" is not an id", id), "use lower-case letters, digits and _ only");
}

// The list under a key of the file; nothing when it is missing.
const std::vector<YamlNode>& records_of(YamlMap& map, const char* key) {
  static const std::vector<YamlNode> none;
  const YamlNode* node = map.need(key);
  return node ? map.file().list(*node, key) : none;
}

std::vector<GroupCount> read_groups(YamlMap& parent) {
  std::vector<GroupCount> groups;
  const YamlNode* node = parent.find("unifac_groups");
  if (!node) return groups;
  YamlMap map(parent.file(), *node, "unifac_groups");
  for (const YamlNode::Entry& entry : node->entries) {
    const bool plain = entry.key.size() < 5 && entry.key.find_first_not_of("0123456789") == std::string::npos;
    if (!plain) {
      parent.file().complain(entry.line, entry.column, fmt::format("\"{}\" is not a subgroup number", entry.key));
      continue;
    }
    groups.push_back({std::stoi(entry.key), parent.file().whole(entry.value, "count")});
    if (groups.back().count < 1) parent.file().complain(entry.value, "a group must occur at least once");
  }
  return groups;
}

// A misspelt code would bring no pictogram, no signal word and no rule with it.
std::vector<std::string> read_codes(YamlMap& map, const char* key) {
  const YamlNode* node = map.find(key);
  if (node && node->kind == YamlNode::Kind::list)
    for (const YamlNode& item : node->items)
      if (item.kind == YamlNode::Kind::scalar && row_of_statement(item.text).empty())
        map.file().complain(item, fmt::format("\"{}\" is not a hazard statement this program knows", item.text),
                            "write a code of the GHS, e.g. H225, or of CLP Annex II, e.g. EUH066");
  return map.texts(key);
}

void read_specific_limits(YamlMap& map, Hazards& hazards) {
  const YamlNode* node = map.find("specific_limits");
  hazards.specific_limits = map.text("specific_limits");
  std::vector<std::string> faults;
  hazards.own = own_limits_from(hazards.specific_limits, faults);
  if (faults.empty()) faults = limits_without_use(hazards);
  for (const std::string& fault : faults)
    map.file().complain(*node, "specific_limits: " + fault,
                        "write \"H335: C >= 25 %\", \"H315: 10 % <= C < 25 %\", \"Oral: ATE = 1200 mg/kg bw\", "
                        "\"Inhalation: ATE = 3 mg/L (vapours)\", \"M=10\" or \"note ...\", divided by semicolons");
}

std::optional<Hazards> read_hazards(YamlMap& parent) {
  const YamlNode* node = parent.find("hazards");
  if (!node) return std::nullopt;
  YamlMap map(parent.file(), *node, "hazards");
  Hazards hazards;
  hazards.statements = read_codes(map, "statements");
  hazards.supplemental = read_codes(map, "supplemental");
  hazards.classes = map.texts("classes");
  hazards.pictograms = map.texts("pictograms");
  hazards.signal_word = map.text("signal_word");
  read_specific_limits(map, hazards);
  hazards.minimum_only = map.truth("minimum_only", false);
  hazards.source = map.need_text("source");
  hazards.standing = read_standing(map);
  hazards.note = map.text("note");
  map.done();
  return hazards;
}

ExposureLimit read_exposure_limit(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "exposure limit");
  ExposureLimit limit;
  limit.authority = map.need_text("authority");
  limit.long_term_ppm = map.number_within("long_term_ppm", 0, 1e6);
  limit.long_term_mg_per_m3 = map.number_within("long_term_mg_per_m3", 0, 1e7);
  limit.short_term_ppm = map.number_within("short_term_ppm", 0, 1e6);
  limit.short_term_mg_per_m3 = map.number_within("short_term_mg_per_m3", 0, 1e7);
  limit.ceiling_ppm = map.number_within("ceiling_ppm", 0, 1e6);
  limit.ceiling_mg_per_m3 = map.number_within("ceiling_mg_per_m3", 0, 1e7);
  limit.skin = map.truth("skin", false);
  limit.source = map.need_text("source");
  limit.standing = read_standing(map);
  limit.note = map.text("note");
  map.done();
  return limit;
}

void read_dangers(YamlMap& map, Solvent& solvent) {
  solvent.hazards = read_hazards(map);
  if (const YamlNode* limits = map.find("exposure_limits"))
    for (const YamlNode& item : map.file().list(*limits, "exposure_limits"))
      solvent.exposure_limits.push_back(read_exposure_limit(map.file(), item));
  if (const YamlNode* restrictions = map.find("restrictions"))
    for (const YamlNode& item : map.file().list(*restrictions, "restrictions")) {
      YamlMap restriction(map.file(), item, "restriction");
      solvent.restrictions.push_back(read_cited<std::string>(restriction));
      restriction.done();
    }
}

Solvent read_solvent(YamlFile& file, const YamlNode& node, const std::string& family) {
  YamlMap map(file, node, "solvent");
  Solvent solvent;
  solvent.family = family;
  solvent.id = map.need_text("id");
  check_id(file, map.find("id"), solvent.id);
  solvent.name = map.need_text("name");
  solvent.other_names = read_names(map, "other_names");
  solvent.cas = map.text("cas");
  solvent.is_blend = map.truth("blend", false);
  solvent.reference_only = map.truth("reference_only", false);
  for (const SolventFigure& figure : solvent_figures())
    std::visit([&](auto member) { read_figure(map, figure.key, solvent.*member); }, figure.member);
  solvent.no_hansen = map.text("no_hansen");
  if (solvent.hansen.has_value() == !solvent.no_hansen.empty())
    file.complain(node, "a solvent has either hansen or no_hansen, which says why there are none");
  solvent.unifac_groups = read_groups(map);
  read_dangers(map, solvent);
  solvent.remark = map.text("remark");
  map.done();
  return solvent;
}

Response read_stages(YamlMap& map) {
  Response response;
  const YamlNode* node = map.need("stages");
  if (!node) return response;
  const auto& stages = map.file().list(*node, "stages");
  if (stages.size() != response.stages.size())
    map.file().complain(*node, fmt::format("stages must hold {} pairs", response.stages.size()));
  for (std::size_t i = 0; i < stages.size() && i < response.stages.size(); ++i) {
    const std::vector<double> pair = map.file().numbers(stages[i], "stage [intercept, slope]", 2, 2);
    response.stages[i] = {pair[0], pair[1]};
    if (pair[1] > 0) map.file().complain(stages[i], "a slope above 0 would make a distant liquid act more");
  }
  response.source = map.need_text("source");
  return response;
}

TeasRegion read_region(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "teas_region");
  TeasRegion region;
  if (const YamlNode* mean = map.need("mean")) read_value(file, *mean, region.mean);
  if (const YamlNode* low = map.need("low")) read_value(file, *low, region.low);
  if (const YamlNode* high = map.need("high")) read_value(file, *high, region.high);
  region.source = map.need_text("source");
  region.standing = read_standing(map);
  region.note = map.text("note");
  map.done();
  return region;
}

SphereGrade read_grade(YamlMap& map, const char* key) {
  const YamlNode* node = map.need(key);
  if (!node) return SphereGrade::assumed;
  const std::string word = map.file().text(*node, key);
  if (const auto grade = sphere_grade_from_word(word)) return *grade;
  map.file().complain(*node, fmt::format("\"{}\" is not a grade of a sphere", word),
                      "write fitted, recalled, unbracketed, weak, unsupported or assumed");
  return SphereGrade::assumed;
}

std::optional<SphereRecord> read_sphere(YamlMap& map) {
  const auto sphere = read_known<Sphere>(map, "sphere");
  SphereRecord record;
  record.stand_in_for = map.text("stand_in_for");
  record.assumption = map.text("assumption");
  record.own_spread = read_cited<UncertainSphere>(map, "spread");
  if (!sphere) {
    map.find("sphere_grade");
    return std::nullopt;
  }
  record.sphere = *sphere;
  record.grade = read_grade(map, "sphere_grade");
  if ((record.grade == SphereGrade::assumed) == record.assumption.empty())
    map.file().complain(map.node(), "an assumed sphere says in \"assumption\" what was assumed, and only such a one");
  return record;
}

std::optional<Cited<int>> read_grade_figure(YamlMap& map, const char* key) {
  const auto read = read_cited<double>(map, key);
  if (!read) return std::nullopt;
  const int grade = static_cast<int>(read->value);
  if (grade != read->value || grade < 1 || grade > grade_count)
    map.file().complain(*map.find(key), "a grade is 1 (dissolves) to 6 (nothing seen)");
  return Cited<int>{grade, read->source, read->standing, read->note};
}

Material read_material(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "material");
  Material material;
  material.id = map.need_text("id");
  check_id(file, map.find("id"), material.id);
  material.name = map.need_text("name");
  material.kind = map.need_text("kind");
  material.state = map.text("state");
  material.other_names = read_names(map, "other_names");
  material.sphere = read_sphere(map);
  material.no_sphere = map.text("no_sphere");
  if (material.sphere.has_value() == !material.no_sphere.empty())
    file.complain(node, "a material has either sphere or no_sphere, which says why there is none");
  if (const YamlNode* response = map.find("response")) {
    YamlMap stages(file, *response, "response");
    material.response = read_stages(stages);
    stages.done();
  }
  material.strongest_grade = read_grade_figure(map, "strongest_grade");
  material.harm_grade = read_grade_figure(map, "harm_grade");
  material.observed_like = map.texts("observed_like");
  if (const YamlNode* region = map.find("teas_region")) material.teas_region = read_region(file, *region);
  material.score_set = map.text("score_set");
  if (const YamlNode* flags = map.find("flags")) material.flags = read_flags(file, *flags, "flags");
  material.remark = map.text("remark");
  map.done();
  return material;
}

}  // namespace

std::vector<Flag> read_flags(YamlFile& file, const YamlNode& node, const char* key) {
  const std::vector<std::string> known = {"resinous", "waxy", "bituminous", "cross_linked", "water_sensitive"};
  std::vector<Flag> flags;
  for (const YamlNode& item : file.list(node, key)) {
    const std::size_t before = file.faults().size();
    const std::string word = file.text(item, key);
    const std::string near = nearest_name(word, known);
    if (const auto flag = flag_from_word(word))
      flags.push_back(*flag);
    else if (file.faults().size() == before)
      file.complain(item, fmt::format("\"{}\" is not a flag", word),
                    near.empty() ? "write " + enumerated(known, "or") : fmt::format("did you mean \"{}\"?", near));
  }
  return flags;
}

void read_law(YamlFile& file, CatalogueRecords& records) {
  YamlMap map(file, file.root(), "law.yaml");
  if (const YamlNode* node = map.need("law")) {
    YamlMap law(file, *node, "law");
    records.law = {law.need_text("seen_until"), law.need_text("seen"), law.text("older")};
    const YamlNode* day = law.find("seen_until");
    if (day && !records.law.seen_until.empty() && !is_date(records.law.seen_until))
      file.complain(*day, fmt::format("\"{}\" is not a day", records.law.seen_until),
                    "write a day such as \"2026-03-14\"");
    law.done();
  }
  map.done();
}

void read_sources(YamlFile& file, CatalogueRecords& records) {
  YamlMap map(file, file.root(), "sources.yaml");
  for (const YamlNode& item : records_of(map, "sources")) {
    YamlMap source(file, item, "source");
    records.sources.push_back({source.need_text("key"), source.need_text("citation"), source.need_text("seen")});
    source.done();
  }
  map.done();
}

void read_liquids(YamlFile& file, CatalogueRecords& records) {
  YamlMap map(file, file.root(), "a file of liquids");
  const std::string family = map.need_text("family");
  for (const YamlNode& item : records_of(map, "solvents")) records.solvents.push_back(read_solvent(file, item, family));
  map.done();
}

void read_materials(YamlFile& file, CatalogueRecords& records) {
  YamlMap map(file, file.root(), "a file of materials");
  for (const YamlNode& item : records_of(map, "materials")) records.materials.push_back(read_material(file, item));
  map.done();
}

void read_spreads(YamlFile& file, CatalogueRecords& records) {
  YamlMap map(file, file.root(), "spreads.yaml");
  for (const YamlNode& item : records_of(map, "spreads")) {
    YamlMap spread(file, item, "spread");
    GradeSpread read;
    read.grade = read_grade(spread, "grade");
    if (const YamlNode* sd = spread.need("sd")) read_value(file, *sd, read.sd);
    if (!spread.find("R0_sd")) spread.need("R0_sd");
    read.R0_sd = spread.number_within("R0_sd", 0, 20).value_or(0);
    read.source = spread.need_text("source");
    spread.done();
    records.spreads.push_back(std::move(read));
  }
  map.done();
}

void read_response(YamlFile& file, CatalogueRecords& records) {
  YamlMap map(file, file.root(), "response.yaml");
  if (const YamlNode* node = map.need("response")) {
    YamlMap response(file, *node, "response");
    records.response = read_stages(response);
    response.done();
  }
  map.done();
}

}  // namespace gentlest
