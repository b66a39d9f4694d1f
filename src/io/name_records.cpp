#include "io/name_records.hpp"

#include <fmt/format.h>

#include <utility>

namespace gentlest {

namespace {

void add_names(YamlFile& file, const YamlNode& list, NameKind kind, std::vector<OtherName>& names) {
  for (const YamlNode& item : file.list(list, "names")) {
    std::string text = file.text(item, "name");
    if (!text.empty()) names.push_back({std::move(text), kind, file.place(item)});
  }
}

NameChoice read_choice(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "choice");
  NameChoice choice{map.text("id"), map.text("no_record"), map.need_text("word"), file.place(node)};
  if (choice.id.empty() == choice.no_record.empty())
    file.complain(node, "a choice has either id or no_record, which says what the catalogue does not hold yet");
  map.done();
  return choice;
}

AmbiguousName read_ambiguous(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "ambiguous name");
  AmbiguousName one;
  one.names = read_names(map, "names");
  if (one.names.empty() && file.faults().empty())
    file.complain(node, "an ambiguous name has no names", "list them under names");
  if (const YamlNode* choices = map.need("choices"))
    for (const YamlNode& item : file.list(*choices, "choices")) one.choices.push_back(read_choice(file, item));
  one.note = map.text("note");
  map.done();
  return one;
}

void read_list(YamlMap& map, const char* key, std::vector<AmbiguousName>& names) {
  if (const YamlNode* node = map.need(key))
    for (const YamlNode& item : map.file().list(*node, key)) names.push_back(read_ambiguous(map.file(), item));
}

}  // namespace

std::vector<OtherName> read_names(YamlMap& record, const char* key) {
  std::vector<OtherName> names;
  YamlFile& file = record.file();
  const YamlNode* node = record.find(key);
  if (!node) return names;
  if (node->kind != YamlNode::Kind::map) {
    add_names(file, *node, NameKind::english, names);
    return names;
  }
  for (const YamlNode::Entry& entry : node->entries)
    if (const auto kind = name_kind_from_word(entry.key))
      add_names(file, entry.value, *kind, names);
    else
      file.complain(entry.line, entry.column, fmt::format("\"{}\" is not a language of names", entry.key),
                    "write en, de, fr, it, es, abbr, trade or denatured");
  return names;
}

void read_ambiguous_names(YamlFile& file, CatalogueRecords& records) {
  YamlMap map(file, file.root(), "names.yaml");
  read_list(map, "solvents", records.ambiguous_solvents);
  read_list(map, "materials", records.ambiguous_materials);
  map.done();
}

}  // namespace gentlest
