// The table of a liquid's cited figures: nothing of it escapes the reader, the check of sources, the lists or the
// cards.
#include "gentlest/catalogue/figures.hpp"

#include "io/catalogue_records.hpp"
#include "io/yaml_reader.hpp"
#include "report/records/card.hpp"
#include "report/records/lists.hpp"
#include "shipped.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <iterator>
#include <set>
#include <sstream>

using namespace gentlest;
using gentlest::test::shipped_catalogue;

namespace {

template <class T>
void cite(Cited<T>& figure, const std::string& source) {
  figure.source = source;
}
template <class T>
void cite(Known<T>& figure, const std::string& source) {
  figure.chosen.source = "book";
  figure.others.emplace_back();
  figure.others.back().source = source;
}

// A catalogue whose one liquid has this one figure, out of a source.
std::vector<Diagnostic> faults_with(const SolventFigure& figure, const std::string& source) {
  CatalogueRecords records;
  records.sources = {{"book", "a book", "seen"}};
  records.response.source = "book";
  records.solvents.emplace_back();
  Solvent& solvent = records.solvents.back();
  solvent.id = solvent.name = "x";
  std::visit(
      [&](auto member) {
        (solvent.*member).emplace();
        cite(*(solvent.*member), source);
      },
      figure.member);
  try {
    const Catalogue catalogue(records);
  } catch (const InputError& error) {
    return error.faults();
  }
  return {};
}

std::string document() {
  std::ifstream in(std::string(GENTLEST_SOURCE_DIR) + "/docs/data-format.md");
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

}  // namespace

TEST_CASE("every figure of a liquid must name a source that exists", "[catalogue]") {
  for (const SolventFigure& figure : solvent_figures()) {
    INFO(figure.key);
    CHECK(faults_with(figure, "book").empty());
    const std::vector<Diagnostic> faults = faults_with(figure, "nowhere");
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].message.find("\"nowhere\"") != std::string::npos);
  }
}

TEST_CASE("every figure of a liquid is listed, shown and documented under a name of its own", "[catalogue]") {
  std::set<std::string> keys, names, data_keys;
  const std::vector<std::string> listed = names_of(solvent_holdings());
  const Card card = solvent_card(*shipped_catalogue().find_solvent("toluene"), shipped_catalogue());
  std::set<std::string> shown;
  for (const FigureGroup& group : card.groups)
    for (const Figure& figure : group.figures) shown.insert(figure.key);
  const std::string text = document();
  for (const SolventFigure& figure : solvent_figures()) {
    INFO(figure.key);
    CHECK(keys.insert(figure.key).second);
    CHECK(names.insert(figure.name).second);
    CHECK(data_keys.insert(figure.data_key).second);
    CHECK(std::count(listed.begin(), listed.end(), figure.name) == 1);
    CHECK(shown.count(figure.data_key) == 1);
    CHECK(text.find("\n        " + std::string(figure.key) + ": ") != std::string::npos);
    CHECK(find_solvent_figure(figure.key) == &figure);
  }
}

// Counted in the files themselves, whose keys stand at that depth nowhere else.
TEST_CASE("every figure that the files hold reaches the records", "[catalogue]") {
  for (const SolventFigure& figure : solvent_figures()) {
    INFO(figure.key);
    const std::string line = "\n    " + std::string(figure.key) + ":";
    std::ptrdiff_t in_files = 0;
    for (const NamedText& file : test::shipped_files()) {
      if (file.name.rfind("liquids/", 0) != 0) continue;
      for (std::size_t at = file.text.find(line); at != std::string::npos; at = file.text.find(line, at + 1))
        ++in_files;
    }
    const auto& solvents = shipped_catalogue().solvents();
    CHECK(std::count_if(solvents.begin(), solvents.end(),
                        [&](const Solvent& solvent) { return is_known(figure, solvent); }) == in_files);
  }
}
