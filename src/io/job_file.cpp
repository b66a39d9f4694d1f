#include "io/job_file.hpp"

#include "io/catalogue_records.hpp"
#include "io/file_kinds.hpp"
#include "io/yaml_reader.hpp"

#include "gentlest/afterwards/afterwards.hpp"
#include "gentlest/base/text.hpp"
#include "gentlest/job/limits.hpp"
#include "gentlest/noted/fields.hpp"
#include "gentlest/plan/check_job.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <utility>

namespace gentlest {

namespace {

constexpr int known_version = 1;

void check_version(YamlMap& map) {
  const YamlNode* node = map.need("gentlest_job", "1");
  if (!node) return;
  const std::size_t before = map.file().faults().size();
  const int version = map.file().whole(*node, "gentlest_job");
  if (map.file().faults().size() == before && version != known_version)
    map.file().complain(*node,
                        fmt::format("this job has format {}; this program reads format {}", version, known_version),
                        version > known_version ? "a newer program wrote it" : "");
}

// Where each key belongs, for one that stands in another group. Those of several groups are left out.
const std::map<std::string, std::string>& homes() {
  static const std::map<std::string, std::string> all = [] {
    std::map<std::string, std::string> keys;
    for (const Limit& limit : all_limits()) keys[limit.key] = "limits";
    for (const char* key : {"title", "owner_number", "width_cm", "height_cm", "paint_age_years"}) keys[key] = "object";
    for (const char* key : {"role", "recorded", "found", "own_sphere", "possible"}) keys[key] = "a layer";
    for (const char* key :
         {"object", "layers", "passages", "shelf", "afterwards", "series", "limits", "examination", "grades"})
      keys[key] = "the job itself, at the start of a line";
    keys["of"] = "a passage";
    return keys;
  }();
  return all;
}

std::optional<Centimetres> read_length(YamlMap& map, const char* key) {
  const auto value = map.number_within(key, 0.1, 5000);
  return value ? std::optional(Centimetres{*value}) : std::nullopt;
}

PaintingObject read_object(YamlMap& parent) {
  PaintingObject object;
  const YamlNode* node = parent.find("object");
  if (!node) return object;
  YamlMap map(parent.file(), *node, "object");
  object.title = map.text("title");
  object.owner_number = map.text("owner_number");
  object.width = read_length(map, "width_cm");
  object.height = read_length(map, "height_cm");
  object.paint_age_years = map.number_within("paint_age_years", 0, 5000);
  object.note = map.text("note");
  map.done(homes());
  return object;
}

double need_number(YamlMap& map, const char* key, double low, double high) {
  map.need(key);
  return map.number_within(key, low, high).value_or(low);
}

OwnSphere read_own_sphere(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "own_sphere", "each figure behind its key, as in {dD: 18, dP: 6, dH: 9, R0: 8}");
  OwnSphere own;
  own.sphere.mean = {{need_number(map, "dD", 10, 30), need_number(map, "dP", -10, 40), need_number(map, "dH", -10, 50)},
                     need_number(map, "R0", 0.1, 40)};
  own.sphere.sd = {need_number(map, "sd_dD", 0, 10), need_number(map, "sd_dP", 0, 10),
                   need_number(map, "sd_dH", 0, 10)};
  own.sphere.R0_sd = need_number(map, "sd_R0", 0, 10);
  own.source = map.need_text("source");
  map.done(homes());
  return own;
}

Role read_role(YamlMap& map) {
  const YamlNode* node = map.need("role");
  if (!node) return Role::keep;
  const std::size_t before = map.file().faults().size();
  if (node->kind == YamlNode::Kind::null) {
    map.file().complain_of_nothing(*node, "role", "remove or keep", false);
    return Role::keep;
  }
  const std::string word = map.file().text(*node, "role");
  if (word == "remove") return Role::remove;
  if (word == "keep" || map.file().faults().size() > before) return Role::keep;
  const std::string near = nearest_name(word, {"remove", "keep"});
  map.file().complain(*node, fmt::format("\"{}\" is not a role", word),
                      near.empty() ? "write remove or keep" : fmt::format("did you mean \"{}\"?", near));
  return Role::keep;
}

std::vector<Flag> read_suspected(YamlMap& map) {
  const YamlNode* node = map.find("suspected");
  return node ? read_flags(map.file(), *node, "suspected") : std::vector<Flag>();
}

// Of a record that was written as one word: that word, to be shown where it belongs.
std::string word_or(const YamlNode& node, const char* otherwise) {
  const bool is_short = node.kind == YamlNode::Kind::scalar && !node.text.empty() && node.text.size() < 40;
  return is_short ? node.text : otherwise;
}

// {material: id, percent: 30}
PossibleMaterial read_possible(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "possible material",
              fmt::format("{{material: {}, percent: 20}}, with your per cent", word_or(node, "mastic_aged")));
  PossibleMaterial possible;
  possible.where = file.place(node);
  possible.material = map.need_text("material");
  if (const YamlNode* name = map.find("material")) possible.where = file.place(*name);
  if (map.need("percent")) possible.percent = map.whole_within("percent", 1, 99).value_or(1);
  map.done(homes());
  return possible;
}

// How a coat grew old, or will: {light: daylight, years: 40}.
Light read_light(YamlMap& map) {
  const YamlNode* node = map.find("light");
  if (!node) return Light::not_told;
  const std::vector<std::string> known = {"dark", "uv_filtered", "daylight", "strong"};
  const std::size_t before = map.file().faults().size();
  const std::string word = map.file().text(*node, "light");
  if (const std::optional<Light> light = light_from_word(word)) return *light;
  const std::string near = nearest_name(word, known);
  if (map.file().faults().size() == before)
    map.file().complain(*node, fmt::format("\"{}\" is no light that a coat grows old in", word),
                        near.empty() ? "write " + enumerated(known, "or") + ", or leave the line out"
                                     : fmt::format("did you mean \"{}\"?", near));
  return Light::not_told;
}

// {put_on: dammar_fresh, as: varnish, in: white_spirit}
ProposedCoat read_proposed(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "afterwards", fmt::format("{{put_on: {}, as: varnish}}", word_or(node, "dammar_fresh")));
  ProposedCoat coat;
  coat.where = file.place(node);
  coat.material = map.need_text("put_on");
  if (const YamlNode* name = map.find("put_on")) coat.where = file.place(*name);
  if (const YamlNode* use = map.need("as", "varnish")) {
    const std::size_t before = file.faults().size();
    const std::string word = file.text(*use, "as");
    const std::optional<FinishUse> meant = finish_use_from_word(word);
    if (meant && *meant != FinishUse::both)
      coat.use = *meant;
    else if (file.faults().size() == before)
      file.complain(*use, fmt::format("\"{}\" is not what a coat is put on as", word), "write retouching or varnish");
  }
  coat.in = map.text("in");
  coat.light = read_light(map);
  coat.years = map.number_within("years", 0, 5000);
  map.done(homes());
  return coat;
}

Layer read_layer(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "layer",
              fmt::format("\"- name: {}\", and role: and found: below it", word_or(node, "varnish")));
  Layer layer;
  layer.where = file.place(node);
  layer.name = map.need_text("name");
  layer.role = read_role(map);
  layer.recorded = map.text("recorded");
  layer.found = map.text("found");
  const YamlNode* recorded = map.find("recorded");
  if (recorded) layer.recorded_where = layer.where = file.place(*recorded);
  if (const YamlNode* found = map.find("found")) layer.where = file.place(*found);
  if (const YamlNode* possible = map.find("possible"))
    for (const YamlNode& item : file.list(*possible, "possible",
                                          fmt::format("write [{{material: {}, percent: 20}}], with your per cent",
                                                      word_or(*possible, "mastic_aged"))))
      layer.possible.push_back(read_possible(file, item));
  if (const YamlNode* own = map.find("own_sphere")) layer.own_sphere = read_own_sphere(file, *own);
  layer.suspected = read_suspected(map);
  layer.light = read_light(map);
  layer.years = map.number_within("years", 0, 5000);
  layer.note = map.text("note");
  map.done(homes());
  return layer;
}

Passage read_passage(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "passage", fmt::format("{{name: {}, of: LAYER}}", word_or(node, "sky")));
  Passage passage;
  passage.where = file.place(node);
  passage.name = map.need_text("name");
  passage.of = map.need_text("of");
  passage.material = map.text("material");
  passage.suspected = read_suspected(map);
  passage.note = map.text("note");
  map.done(homes());
  return passage;
}

// "ethanol: 96 %", which is meant for a name and its grade.
bool is_name_with_grade(const YamlNode& node) {
  if (node.kind != YamlNode::Kind::map || node.entries.size() != 1) return false;
  const YamlNode::Entry& entry = node.entries.front();
  return entry.value.kind == YamlNode::Kind::scalar && !entry.value.text.empty() && is_digit(entry.value.text[0]) &&
         entry.key != "solvent" && entry.key != "at_most_percent" && entry.key != "grade";
}

// Either a plain name or {solvent: name, grade: "96 %", at_most_percent: 30}.
ShelfBottle read_bottle(YamlFile& file, const YamlNode& node) {
  ShelfBottle bottle;
  bottle.where = file.place(node);
  if (node.kind == YamlNode::Kind::scalar) {
    bottle.solvent = file.text(node, "solvent");
    if (bottle.solvent.empty()) file.complain(node, "the name of a solvent is empty");
    return bottle;
  }
  if (is_name_with_grade(node)) {
    const YamlNode::Entry& entry = node.entries.front();
    file.complain(node, fmt::format("\"{}: {}\" names no bottle", entry.key, entry.value.text),
                  fmt::format("write {{solvent: {}, grade: \"{}\"}}", entry.key, entry.value.text));
    return bottle;
  }
  YamlMap map(file, node, "bottle", "the name of a solvent");
  bottle.solvent = map.need_text("solvent");
  if (const YamlNode* name = map.find("solvent")) bottle.where = file.place(*name);
  bottle.grade = map.text("grade");
  if (const YamlNode* grade = map.find("grade")) bottle.grade_where = file.place(*grade);
  bottle.at_most_percent = map.whole_within("at_most_percent", 1, 100).value_or(bottle.at_most_percent);
  map.done(homes());
  return bottle;
}

// {name: "our spirits", mixtures: ["isooctane 100", "isooctane 80, ethanol 20"]}
OwnSeries read_series(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "series", "{name: our spirits, mixtures: [\"isooctane 100\", \"isooctane 80, ethanol 20\"]}");
  OwnSeries series;
  series.where = file.place(node);
  series.name = map.need_text("name");
  if (const YamlNode* mixtures = map.need("mixtures"))
    for (const YamlNode& item : file.list(*mixtures, "mixtures", "[\"isooctane 100\"]")) {
      series.mixtures.push_back(file.text(item, "mixture"));
      series.mixtures_where.push_back(file.place(item));
    }
  map.done(homes());
  return series;
}

void note_places(YamlMap& map, const YamlNode& limits, Places& places) {
  for (const YamlNode::Entry& entry : limits.entries) {
    const std::string key = "limits." + entry.key;
    places.at[key] = map.file().place(entry.value);
    for (std::size_t i = 0; i < entry.value.items.size(); ++i)
      places.at[fmt::format("{}.{}", key, i)] = map.file().place(entry.value.items[i]);
  }
}

// One for each kind of limit; what is left out stays as it is. check_job() knows the ranges.
void read_limit(YamlMap& map, const Limit& limit, int& value) {
  value = map.whole(limit.key, wanted_of(limit)).value_or(value);
}
void read_limit(YamlMap& map, const Limit& limit, double& value) {
  value = map.number(limit.key, wanted_of(limit)).value_or(value);
}
void read_limit(YamlMap& map, const Limit& limit, std::optional<int>& value) {
  value = map.whole(limit.key, wanted_of(limit));
}
void read_limit(YamlMap& map, const Limit& limit, std::optional<double>& value) {
  value = map.number(limit.key, wanted_of(limit));
}
void read_limit(YamlMap& map, const Limit& limit, bool& value) {
  value = map.truth(limit.key, value);
}
void read_limit(YamlMap& map, const Limit& limit, std::vector<std::string>& value) {
  value = map.texts(limit.key);
}

Limits read_limits(YamlMap& parent, Places& places) {
  Limits limits;
  const YamlNode* node = parent.find("limits");
  if (!node) return limits;
  YamlMap map(parent.file(), *node, "limits");
  note_places(map, *node, places);
  for (const Limit& limit : all_limits())
    std::visit([&](auto member) { read_limit(map, limit, limits.*member); }, limit.member);
  map.done(homes());
  return limits;
}

template <class Record, class Read>
std::vector<Record> read_all(YamlMap& map, const char* key, Places& places, Read read, const char* example = "") {
  std::vector<Record> records;
  const YamlNode* node = map.find(key);
  if (!node) return records;
  places.at[key] = map.file().place(*node);
  if (node->kind == YamlNode::Kind::null) return records;  // "shelf:" with nothing under it is an empty list
  for (const YamlNode& item : map.file().list(*node, key, example)) records.push_back(read(map.file(), item));
  return records;
}

// "none", or {answer: somewhere, where: [red cloak], note: "..."}
Finding read_finding(YamlFile& file, const YamlNode::Entry& entry) {
  Finding finding;
  finding.question = entry.key;
  finding.place = file.place(entry.line, entry.column);
  if (entry.value.kind != YamlNode::Kind::map) {
    finding.answer = file.text(entry.value, entry.key);
    return finding;
  }
  YamlMap map(file, entry.value, "finding");
  finding.answer = map.need_text("answer");
  if (const YamlNode* where = map.find("where")) {
    if (where->kind == YamlNode::Kind::scalar)
      finding.where = {file.text(*where, "where")};
    else
      finding.where = map.texts("where");
  }
  finding.note = map.text("note");
  map.done(homes());
  return finding;
}

std::vector<Finding> read_examined(YamlMap& parent, Places& places) {
  std::vector<Finding> findings;
  const YamlNode* node = parent.find("examination");
  if (!node) return findings;
  places.at["examination"] = parent.file().place(*node);
  if (node->kind == YamlNode::Kind::null) return findings;
  if (node->kind != YamlNode::Kind::map) {
    parent.file().complain(*node, "examination is no list of questions with their answers",
                           "write one on each line: \"flaking: no\"");
    return findings;
  }
  for (const YamlNode::Entry& entry : node->entries) findings.push_back(read_finding(parent.file(), entry));
  return findings;
}

// "++": fully removed, for each side that the word may speak of.
void read_sign(YamlFile& file, const YamlNode::Entry& entry, bool of_removal, bool of_original, GradeSigns& signs) {
  const std::string word = file.text(entry.value, entry.key);
  Reading reading;
  const bool speaks_of_removal = of_removal && set_noted_field(reading, "removal", word) && reading.removal;
  const bool speaks_of_original = of_original && set_noted_field(reading, "original", word) && reading.original;
  if (speaks_of_removal) signs.removal[folded(entry.key)] = word;
  if (speaks_of_original) signs.original[folded(entry.key)] = word;
  if (speaks_of_removal || speaks_of_original || entry.value.kind != YamlNode::Kind::scalar) return;
  file.complain(
      entry.value, fmt::format("\"{}\" is no grade of a reading", word),
      fmt::format("write for example \"{}\": {}", entry.key, of_removal ? "partly removed" : "change that stays"));
}

// Of either side, or in two groups where one sign says another thing of each.
GradeSigns read_grades(YamlMap& parent) {
  GradeSigns signs;
  const YamlNode* node = parent.find("grades");
  if (!node) return signs;
  YamlFile& file = parent.file();
  const YamlMap map(file, *node, "grades", "{\"++\": fully removed, \"-\": no effect}");
  for (const YamlNode::Entry& entry : node->entries) {
    const bool is_group = entry.key == "removal" || entry.key == "original";
    if (!is_group)
      read_sign(file, entry, true, true, signs);
    else if (entry.value.kind != YamlNode::Kind::map)
      file.complain(entry.value,
                    fmt::format("{} holds {}, not signs with their grades", entry.key, kind_words(entry.value)),
                    fmt::format("write {}: {{\"+\": {}}}", entry.key,
                                entry.key == "removal" ? "partly removed" : "change that stays"));
    else
      for (const YamlNode::Entry& sign : entry.value.entries)
        read_sign(file, sign, entry.key == "removal", entry.key == "original", signs);
  }
  return signs;
}

Job read_tree(YamlFile& file, const std::string& name) {
  YamlMap map(file, file.root(), "the job");
  Job job;
  job.file = name;
  check_version(map);
  job.object = read_object(map);
  job.examination = read_examined(map, job.places);
  job.layers =
      read_all<Layer>(map, "layers", job.places, read_layer, "put a dash in front of each layer: \"- name: varnish\"");
  job.passages = read_all<Passage>(map, "passages", job.places, read_passage,
                                   "write each on a line of its own: \"- {name: sky, of: LAYER}\"");
  job.shelf = read_all<ShelfBottle>(map, "shelf", job.places, read_bottle);
  job.series = read_all<OwnSeries>(map, "series", job.places, read_series);
  job.afterwards = read_all<ProposedCoat>(map, "afterwards", job.places, read_proposed,
                                          "put a dash in front of each: \"- {put_on: dammar_fresh, as: varnish}\"");
  job.limits = read_limits(map, job.places);
  job.grades = read_grades(map);
  map.done(homes());
  return job;
}

Job read_from(YamlFile& file, const std::string& name) {
  Job job;
  if (file.faults().empty()) job = read_tree(file, name);
  std::vector<Diagnostic> faults = file.take_faults();
  if (!faults.empty()) throw InputError(Fault::file, std::move(faults));
  return job;
}

}  // namespace

Job load_job(const std::string& text, const std::string& file, const Catalogue& catalogue) {
  if (auto fault = no_job_fault(text, file)) throw InputError(Fault::file, {std::move(*fault)});
  YamlFile yaml(file, text);
  Job job = read_from(yaml, file);
  std::vector<Diagnostic> faults = check_job(job, catalogue);
  for (Diagnostic& fault : check_coats(job, catalogue)) faults.push_back(std::move(fault));
  for (Diagnostic& fault : faults) fault.excerpt = yaml.line_text(fault.where.line);
  if (!faults.empty()) throw InputError(Fault::file, std::move(faults));
  return job;
}

bool is_job(const std::string& path) {
  std::error_code error;
  if (!std::filesystem::is_regular_file(path, error)) return false;  // reading a pipe would wait
  std::ifstream in(path, std::ios::binary);
  std::string line;
  for (bool is_first = true; std::getline(in, line); is_first = false) {
    if (is_first && !line.empty() && (line.front() == '<' || line.front() == '{'))
      return false;  // a report shows the job
    if (line.rfind("gentlest_job:", 0) == 0) return true;
  }
  return false;
}

}  // namespace gentlest
