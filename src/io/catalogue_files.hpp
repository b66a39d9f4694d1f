// Reads the catalogue: the YAML files of solvents/, from a folder or from inside the program.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// A file's path inside the catalogue folder ("liquids/alcohols.yaml", "VERSION") and its text.
struct NamedText {
  std::string name;
  std::string text;
};

/// All files of a catalogue folder, sorted by name. Throws InputError (Fault::file) when the folder cannot be read.
std::vector<NamedText> collect_catalogue(const std::string& folder);

/// The files as they were when the program was built: VERSION as its text, the others as the text of a kept tree
/// (kept_tree.hpp).
std::vector<NamedText> embedded_catalogue();

/// Throws InputError (Fault::file) with every fault of all files: wrong keys, types, figures without a source,
/// standings, doubled ids, sources that do not exist. The format is described in docs/data-format.md. `folder` stands
/// before the names in messages.
Catalogue read_catalogue(const std::vector<NamedText>& files, const std::string& folder = "solvents");

/// The same of what embedded_catalogue() gives: its faults, which the build refuses, have no lines.
Catalogue read_kept_catalogue(const std::vector<NamedText>& trees);

}  // namespace gentlest
