// Writes the C++ file that holds the catalogue, read and told again as trees, and the two job texts byte for byte:
//   gentlest_embed solvents demo_job.yaml job_template.yaml embedded_catalogue.cpp
// A file that is no sound YAML ends the build with its line.
#include "gentlest/base/diagnostic.hpp"
#include "io/catalogue_files.hpp"
#include "io/files.hpp"
#include "io/kept_tree.hpp"

#include <cstdio>
#include <string>

using namespace gentlest;

namespace {

std::string literal(const std::string& text) {
  return "R\"__verbatim__(" + text + ")__verbatim__\"";
}

std::string embedded_text(const NamedText& file, const std::string& folder) {
  if (file.name == "VERSION") return file.text;
  YamlFile yaml(folder + "/" + file.name, file.text);
  if (!yaml.faults().empty()) throw InputError(Fault::file, yaml.take_faults());
  return kept_text(yaml.root());
}

void write_code(const std::string& folder, const std::string& demo, const std::string& start, const std::string& out) {
  std::string code =
      "// Written by gentlest_embed; do not edit.\n#include \"io/catalogue_files.hpp\"\n#include "
      "\"io/job_file.hpp\"\n\n"
      "#ifdef __clang__\n#pragma clang diagnostic ignored \"-Woverlength-strings\"\n#endif\n\n"
      "namespace gentlest {\n\nstd::vector<NamedText> embedded_catalogue() {\n  return {\n";
  for (const NamedText& file : collect_catalogue(folder))
    code += "{\"" + file.name + "\", " + literal(embedded_text(file, folder)) + "},\n";
  code += "  };\n}\n";
  code += "\nstd::string demo_job_text() {\n  return " + literal(read_text_file(demo)) + ";\n}\n";
  code += "\nstd::string job_template() {\n  return " + literal(read_text_file(start)) + ";\n}\n";
  write_text_file(out, code + "\n}  // namespace gentlest\n");
}

}  // namespace

int main(int count, char** words) {
  if (count != 5) {
    std::fputs("usage: gentlest_embed FOLDER DEMO TEMPLATE OUT\n", stderr);
    return 2;
  }
  try {
    write_code(words[1], words[2], words[3], words[4]);
  } catch (const InputError& error) {
    std::fputs(render(error.faults()).c_str(), stderr);
    return 1;
  }
  return 0;
}
