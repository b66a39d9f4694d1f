// First answers: one screen, words of the trade, and nothing that hurts only in --full.
#include "program.hpp"
#include "scale.hpp"

#include "gentlest/catalogue/statements.hpp"
#include "io/catalogue_files.hpp"
#include "report/form/short_screen.hpp"
#include "report/form/table.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cctype>

namespace gentlest::test {

namespace {

const char* const layers_begin =
    "gentlest_job: 1\nobject: {title: Invented}\nlayers:\n"
    "  - {name: varnish, role: remove, found: dammar_aged}\n";
const char* const usual_shelf =
    "shelf:\n  - {solvent: isooctane}\n  - {solvent: acetone}\n  - {solvent: ethanol, grade: \"96 %\"}\n"
    "  - {solvent: toluene}\n  - {solvent: isopropanol}\n";

std::string many_layers() {
  std::string job = layers_begin;
  for (int i = 1; i <= 9; ++i)
    job += "  - {name: paint " + std::to_string(i) + ", role: keep, found: oil_paint_old, suspected: [resinous]}\n";
  return job + usual_shelf + "limits: {parts: 4, bottles: 4, lines: 0, rungs: 12}\n";
}

std::string not_judged() {
  return std::string(layers_begin) + "  - {name: size, role: keep, found: unknown}\n" +
         "  - {name: oil paint, role: keep, found: oil_paint_old}\n" + usual_shelf;
}

std::string nothing_known() {
  return "gentlest_job: 1\nobject: {title: Invented}\nlayers:\n  - {name: coat, role: remove, found: unknown}\n" +
         std::string("  - {name: oil paint, role: keep, found: oil_paint_old}\n") + usual_shelf;
}

struct Screen {
  std::vector<std::string> args;
  std::string job;
};

std::vector<Screen> screens() {
  std::vector<Screen> all = {{{"ladder", "demo"}, {}},
                             {{"ladder", "demo", "--lines", "0"}, {}},
                             {{"ladder", "demo", "--risk-limit", "0.06"}, {}},
                             {{"ladder", "demo", "--risk-limit", "0.01"}, {}},
                             {{"ladder", "demo", "--finer", "2:4"}, {}},
                             {{"compare", "demo"}, {}},
                             {{"compare", "demo", "--risk-limit", "0.06"}, {}},
                             {{"vial", "demo", "ethanol 30, isooctane 70"}, {}},
                             {{"vial", "demo", "isooctane 25, acetone 25, ethanol 25, butanone 25"}, {}},
                             {{"next", "demo", "none.log"}, {}}};
  for (const std::string& job : {many_layers(), not_judged(), nothing_known()}) {
    all.push_back({{"ladder", "-"}, job});
    all.push_back({{"compare", "-"}, job});
    all.push_back({{"vial", "-", "acetone 30, isooctane 70"}, job});
    all.push_back({{"next", "-", "none.log"}, job});
  }
  return all;
}

std::string name_of(const Screen& screen) {
  std::string name;
  for (const std::string& word : screen.args) name += word + " ";
  return name + screen.job;
}

// Words of the trade, and the caution at the end.
void check_words(std::string text, bool is_closed) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  for (const char* word : {"stand-in", "sphere", "particle", "flip", "risk does not rise", "borrowed curve", "frontier",
                           "posterior", "mpa"})
    CHECK(text.find(word) == std::string::npos);
  if (is_closed) CHECK(text.find("not a permission") != std::string::npos);
  if (is_closed) CHECK(text.substr(text.size() - 18) == "the swab decides.\n");
}

}  // namespace

TEST_CASE("a first answer is one screen from 80 columns on, never wider, in words of the trade") {
  for (const Screen& screen : screens()) {
    INFO(name_of(screen));
    // The jobs written here at the usual width alone: each takes a search.
    const bool at_all_widths = test::cases(2) > 1 && screen.job.empty() && screen.args[0] != "compare";
    const std::vector<std::size_t> widths =
        at_all_widths ? std::vector<std::size_t>{60, 80, 140} : std::vector<std::size_t>{80};
    for (const std::size_t width : widths) {
      const Result result = call(screen.args, screen.job, page_of(width));
      INFO(width << "\n" << result.out << result.err);
      CHECK(result.code <= 1);
      const std::vector<std::string> lines = lines_of(result.out);
      if (width >= 80) CHECK(lines.size() <= screen_lines);
      for (const std::string& line : lines) CHECK(display_width(line) <= width);
      if (width == 80) check_words(result.out, screen.args[0] != "next");
    }
  }
}

TEST_CASE("what can hurt stands on the first answer, and a missing record as missing") {
  const Catalogue catalogue = read_kept_catalogue(embedded_catalogue());
  const std::string job = std::string(layers_begin) + "  - {name: oil paint, role: keep, found: oil_paint_old}\n" +
                          "shelf:\n  - {solvent: isooctane}\n  - {solvent: toluene}\n  - {solvent: acetone}\n";
  const std::string text =
      unwrapped(call({"vial", "-", "isooctane 40, toluene 30, acetone 30"}, job, page_of(140)).out);
  INFO(text);
  for (const char* words : {"catches fire very easily", "deadly if it gets into the lungs",
                            "suspected of harming the unborn child", "goes through the skin", "makes drowsy or dizzy",
                            "irritates the eyes strongly", "catches fire at room temperature"})
    CHECK(text.find(words) != std::string::npos);
  const std::string ladder = unwrapped(call({"ladder", "demo"}, {}, page_of(140)).out);
  CHECK(ladder.find("deadly if it gets into the lungs") != std::string::npos);
  CHECK(ladder.find("forms explosive peroxides") != std::string::npos);
  for (const Solvent& solvent : catalogue.solvents()) {
    if (solvent.hazards || !solvent.hansen || solvent.id == "water") continue;
    const std::string one = std::string(layers_begin) + "  - {name: oil paint, role: keep, found: oil_paint_old}\n" +
                            "shelf:\n  - {solvent: " + solvent.id + "}\n  - {solvent: acetone}\n";
    const Result shown = call({"vial", "-", solvent.id + " 50, acetone 50"}, one, page_of(140));
    INFO(shown.out << shown.err);
    CHECK(shown.out.find("NO HAZARD RECORD") != std::string::npos);
    break;
  }
}

TEST_CASE("a screen leaves out the end of lists and says how much") {
  const Style style;
  std::vector<std::string> items(60, "one");
  const std::string text =
      screen_of({must_stand("top\n"), screen_list("List", items, 2, style), must_stand("end\n")}, style);
  CHECK(lines_of(text).size() == screen_lines);
  CHECK(text.find("  - 24 more in --full\n") != std::string::npos);
  CHECK(screen_of({screen_list("List", items, 60, style)}, style).find("more in") == std::string::npos);
}

}  // namespace gentlest::test
