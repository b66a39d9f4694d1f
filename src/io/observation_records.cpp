#include "io/observation_records.hpp"

#include "io/observed_parts.hpp"
#include "io/word_of_list.hpp"

#include "gentlest/base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

namespace {

// A result with its grades, or words in place of both.
void read_result(YamlMap& map, Observation& seen) {
  seen.said = map.text("said");
  const YamlNode* grades = map.find("grades");
  if (!map.find("result") && !grades && !seen.said.empty()) return;
  if (!seen.said.empty()) map.file().complain(map.node(), "an observation has either result and grades, or said");
  seen.result = read_word(map, "result", observed_result_from_word, ObservedResult::dissolves,
                          "dissolves, nearly_dissolves, swells_strongly, swells, swells_a_little, nothing_seen, "
                          "removed or not_removed");
  if (!grades) grades = map.need("grades");
  if (!grades) return;
  const std::size_t before = map.file().faults().size();
  const std::vector<double> ends = map.file().numbers(*grades, "grades [strongest, weakest]", 2, 2);
  const auto is_grade = [](double end) { return end >= 1 && end <= 6 && end == std::floor(end); };
  if (map.file().faults().size() == before && !(is_grade(ends[0]) && is_grade(ends[1]) && ends[0] <= ends[1]))
    return map.file().complain(*grades, fmt::format("[{}, {}] is no range of grades", ends[0], ends[1]),
                               "write two whole numbers from 1, the strongest, to 6, the smaller first");
  seen.grades = {static_cast<int>(ends[0]), static_cast<int>(ends[1])};
}

Observation read_observation(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "observation");
  Observation seen;
  seen.where = file.place(node);
  seen.material = map.need_text("material");
  seen.state = map.text("state");
  if (const YamlNode* liquid = map.find("liquid")) seen.parts = read_parts(file, *liquid);
  seen.liquids_in_words = map.text("liquids_in_words");
  if ((map.find("liquid") != nullptr) == !seen.liquids_in_words.empty())
    file.complain(node, "an observation has either liquid or liquids_in_words",
                  "liquids_in_words is for a source that names a class of liquids only");
  seen.contact = read_word(map, "contact", contact_from_word, Contact::not_told,
                           "swab, sponge, brush, poultice, immersion or not_told");
  seen.duration = map.text("duration");
  read_result(map, seen);
  seen.general = read_word(map, "general", generality_from_word, Generality::one_sample,
                           "held_generally, several_samples or one_sample");
  seen.source = map.need_text("source");
  seen.cite = map.text("cite");
  seen.witness = read_word(map, "standing", witness_from_word, Witness::memory, "seen, from memory or common practice");
  seen.confidence = read_word(map, "confidence", confidence_from_word, Confidence::low, "high, medium or low");
  seen.note = map.text("note");
  map.done();
  return seen;
}

}  // namespace

void read_observations(YamlFile& file, CatalogueRecords& records) {
  YamlMap map(file, file.root(), "a file of observations");
  if (const YamlNode* list = map.need("observations"))
    for (const YamlNode& item : file.list(*list, "observations"))
      records.observations.push_back(read_observation(file, item));
  map.done();
}

}  // namespace gentlest
