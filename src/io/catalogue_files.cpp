#include "io/catalogue_files.hpp"

#include "io/catalogue_records.hpp"
#include "io/chemistry_records.hpp"
#include "io/conditioning_records.hpp"
#include "io/examination_records.hpp"
#include "io/files.hpp"
#include "io/finish_records.hpp"
#include "io/kept_tree.hpp"
#include "io/name_records.hpp"
#include "io/observation_records.hpp"
#include "io/other_way_records.hpp"
#include "io/yaml_reader.hpp"

#include "gentlest/base/diagnostic.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <utility>

namespace gentlest {

namespace {

namespace fs = std::filesystem;

bool begins_with(const std::string& text, std::string_view start) {
  return text.compare(0, start.size(), start) == 0;
}

std::string without_line_end(std::string text) {
  while (!text.empty() && (text.back() == '\n' || text.back() == '\r' || text.back() == ' ')) text.pop_back();
  return text;
}

void read_file(const std::string& name, YamlFile file, CatalogueRecords& records, std::vector<Diagnostic>& faults) {
  if (file.faults().empty()) {
    if (begins_with(name, "liquids/"))
      read_liquids(file, records);
    else if (name == "materials/spreads.yaml")
      read_spreads(file, records);
    else if (begins_with(name, "materials/"))
      read_materials(file, records);
    else if (begins_with(name, "observations/"))
      read_observations(file, records);
    else if (name == "examination.yaml")
      read_examination(file, records);
    else if (name == "afterwards.yaml")
      read_finishes(file, records);
    else if (name == "law.yaml")
      read_law(file, records);
    else if (name == "sources.yaml")
      read_sources(file, records);
    else if (name == "names.yaml")
      read_ambiguous_names(file, records);
    else if (name == "conditioned.yaml")
      read_conditionings(file, records);
    else if (name == "response.yaml")
      read_response(file, records);
    else if (begins_with(name, "unifac"))
      read_unifac(file, records.chemistry);
    else if (name == "stand_ins.yaml")
      read_stand_ins(file, records.chemistry);
    else if (name == "miscibility.yaml")
      read_miscibility(file, records.chemistry);
    else if (name == "water_limits.yaml")
      read_water_limits(file, records.chemistry);
    else if (name == "strengths.yaml")
      read_strengths(file, records.chemistry);
    else if (name == "cautions.yaml")
      read_cautions(file, records.chemistry);
    else if (name == "other_ways.yaml")
      read_other_ways(file, records);
    else
      file.complain(1, 1, "the catalogue has no file of this name", "see docs/data-format.md");
  }
  for (Diagnostic& fault : file.take_faults()) faults.push_back(std::move(fault));
}

}  // namespace

std::vector<NamedText> collect_catalogue(const std::string& folder) {
  std::error_code error;
  std::vector<NamedText> files;
  fs::recursive_directory_iterator entry(folder, error);
  if (error)
    throw InputError(Fault::file, {{{folder, 0, 0},
                                    "this folder cannot be read: " + error.message(),
                                    "name a folder laid out like solvents/",
                                    ""}});
  for (; entry != fs::recursive_directory_iterator(); entry.increment(error)) {
    if (error) throw InputError(Fault::file, {{{folder, 0, 0}, "cannot be read: " + error.message(), "", ""}});
    const fs::path path = entry->path();
    if (path.extension() == ".yaml" || path.filename() == "VERSION")
      files.push_back({fs::relative(path, folder).generic_string(), read_text_file(path.string())});
  }
  std::sort(files.begin(), files.end(), [](const NamedText& a, const NamedText& b) { return a.name < b.name; });
  return files;
}

namespace {

template <class Parse>
Catalogue read_files(const std::vector<NamedText>& files, const std::string& folder, const Parse& parse) {
  CatalogueRecords records;
  std::vector<Diagnostic> faults;
  for (const NamedText& named : files) {
    if (named.name == "VERSION")
      records.version = without_line_end(named.text);
    else
      read_file(named.name, parse(folder + "/" + named.name, named.text), records, faults);
  }
  for (const char* needed : {"VERSION", "law.yaml", "sources.yaml", "response.yaml", "materials/spreads.yaml"})
    if (std::none_of(files.begin(), files.end(), [&](const NamedText& named) { return named.name == needed; }))
      faults.push_back({{folder + "/" + needed, 0, 0}, "this file of the catalogue is missing", "", ""});
  if (!faults.empty()) throw InputError(Fault::file, std::move(faults));
  try {
    return Catalogue(std::move(records));
  } catch (const InputError& error) {
    std::vector<Diagnostic> located = error.faults();
    for (Diagnostic& fault : located)
      if (fault.where.file.empty()) fault.where.file = folder;
    throw InputError(Fault::file, std::move(located));
  }
}

}  // namespace

Catalogue read_catalogue(const std::vector<NamedText>& files, const std::string& folder) {
  return read_files(files, folder,
                    [](std::string name, const std::string& text) { return YamlFile(std::move(name), text); });
}

Catalogue read_kept_catalogue(const std::vector<NamedText>& trees) {
  return read_files(trees, "solvents", [](std::string name, const std::string& text) {
    return YamlFile(std::move(name), kept_tree(text));
  });
}

}  // namespace gentlest
