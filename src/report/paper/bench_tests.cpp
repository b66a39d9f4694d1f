// Boxes to fill in, one card a test, and the map.
#include "report/paper/bench_sheet.hpp"
#include "report/phrases/words.hpp"

#include "gentlest/learning/reading.hpp"
#include "report/form/format.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/phrases/no_window.hpp"
#include "report/phrases/sighting_words.hpp"
#include "report/rules/conduct_words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

constexpr int blank_cards = 2;
constexpr const char* cards_heading = "The tests, to be filled in";
constexpr const char* how_to_fill_in =
    "x and y in cm from the lower left corner of the painting. Tick one word in each row; copy a card where a mixture "
    "is tried again.";

// The words of the log, one box to tick each, from the first reading to the last.
template <class Reading>
std::string ticks(Reading last) {
  std::string text;
  for (int i = 0; i <= static_cast<int>(last); ++i)
    text += fmt::format("<span class=\"tick\">{}</span> ", to_word(static_cast<Reading>(i)));
  return text;
}

std::string box(const char* css_class, const char* key, const std::string& inner = {}) {
  return fmt::format("<div class=\"{}\"><span class=\"key\">{}</span>{}</div>\n", css_class, key, inner);
}

// One row of boxes for each layer to keep that no figure speaks of.
std::string unjudged_boxes(const Plan& plan) {
  std::string text;
  for (const PlannedLayer& layer : plan.layers)
    if (is_kept_unjudged(layer))
      text += box("w100", ("not judged: " + user_text(layer.name)).c_str(), ticks(OriginalReading::colour_on_swab));
  return text;
}

std::string boxes(const std::string& more) {
  std::string text = "<div class=\"boxes\">\n";
  text += box("w25", "date, by whom") + box("w15", "site: x cm") + box("w15", "site: y cm");
  text += box("w15", "size, mm") + box("w15", "rolls") + box("w15", "seconds");
  text += box("w60", removal_column, ticks(RemovalReading::fully)) + box("w40", "swab (kind, damp or wet)");
  text += box("w60", "the original", ticks(OriginalReading::colour_on_swab)) + box("w40", "cleared with");
  text += box("w60", "colour on the swab is", ticks(SwabColour::not_known));
  text += box("w40", "how sure", ticks(ReadingConfidence::high));
  return text + more + box("w100", "after drying; remarks") + "</div>\n";
}

std::string card(int number, const std::string& mixture, const std::string& more) {
  return fmt::format("<div class=\"card\"><div class=\"card-head\"><b>Test {}</b> <span>{}</span></div>\n{}</div>\n",
                     number, mixture, boxes(more));
}

// The blanks that come before any solvent; water not where a layer without a sphere is known not to bear it.
std::vector<std::string> blank_tests(const Plan& plan) {
  const bool bears_water = std::none_of(plan.first_tests.begin(), plan.first_tests.end(),
                                        [](const FirstTest& test) { return test.kind == FirstTestKind::no_water; });
  std::vector<std::string> blanks = {"dry swab"};
  if (bears_water) blanks.emplace_back("water or saliva, where the surface bears it");
  return blanks;
}

// Where the swab goes is told by the reading before.
std::string place_boxes() {
  return box("w40", "where", "<span class=\"tick\">edge</span> <span class=\"tick\">picture</span>") +
         box("w60", "passage");
}

// "rung 3, at the edge", or when it is made: "only if test 7 left the original untouched ...".
std::string ahead_words(const TestAhead& test, const Progress& progress, int number) {
  const std::string name = mixture_name(test.mixture.judged);
  const std::string& layer = progress.layers[progress.target].name;
  switch (test.when) {
    case AheadIf::now:
      return progress.next.test ? at_place_words(name, *test.place, test.passage) : name;
    case AheadIf::borne_without_gain:
      return fmt::format(
          "{}, only if test {} left the original untouched and did not move {} enough; at the edge before the picture",
          name, number - 1, layer);
    case AheadIf::worked:
      return fmt::format("{}, only if test {} moved {} and left the original untouched",
                         at_place_words(name, *test.place, test.passage), number - 1, layer);
  }
  return name;
}

std::string warning_of(const BenchMixture& mixture) {
  const std::vector<std::string> warnings = sighting_warnings(mixture.judged);
  return warnings.empty() ? std::string() : " <b>" + user_text(joined(warnings, "; ")) + "</b>";
}

std::string recipe_words(const BenchMixture& mixture) {
  std::vector<std::string> parts;
  for (const RecipeLine& line : mixture.recipe.lines)
    parts.push_back(user_text(line.liquid.label) + " " + as_recorded(line.volume.value) + " mL");
  return html_text(mixture_name(mixture.judged)) + ": " + joined(parts, " + ");
}

std::string sites_table(const std::vector<MapSite>& sites) {
  std::vector<std::vector<std::string>> rows;
  for (const MapSite& site : sites)
    rows.push_back({html_text(site.number), as_recorded(site.x_cm), as_recorded(site.y_cm), user_text(site.what)});
  return html_table({"test", "x, cm from the left edge", "y, cm from the lower edge", "what is there"}, rows, "sites");
}

std::string left_out_html(const Plan& plan, const Bench& bench) {
  std::vector<std::string> items;
  for (const std::string& words : left_out_words(plan, bench)) items.push_back("no card for " + user_text(words));
  return html_list(items);
}

}  // namespace

std::string map_section(const PaintingObject& object, const std::vector<MapSite>& sites,
                        const std::optional<MapBackground>& background) {
  std::string text = "<section>\n" + element("h2", "Map of the tests");
  if (object.width && object.height)
    text += chart_figure(test_map(object, sites, background));
  else
    text += element("p", "The size of the painting is not in the job, so no map is drawn.");
  if (!sites.empty()) text += sites_table(sites);
  return text + "</section>\n";
}

namespace {

std::string cards_text(const Plan& plan, const SheetInputs& inputs) {
  const Progress& progress = inputs.followed->progress;
  const std::vector<TestAhead>& ahead = inputs.followed->ahead;
  const std::string inner = unjudged_boxes(plan);
  int number = inputs.tests_so_far;
  std::string text;
  if (progress.conduct.tests.empty() && !ahead.empty())
    for (const std::string& blank : blank_tests(plan)) text += card(++number, blank, inner);
  for (const TestAhead& test : ahead) {
    ++number;
    std::string recipe = recipe_words(test.mixture) + warning_of(test.mixture) + " " + label_signs(test.mixture.label);
    for (const std::string& mark : marks_of(test.mixture, plan)) recipe += "; " + html_text(mark);
    text += card(number, "<span class=\"when\">" + user_text(ahead_words(test, progress, number)) + "</span>" + recipe,
                 test.place ? inner : place_boxes() + inner);
  }
  return text;
}

// With a log: the proposed test first, then what may follow it; after a stop no card.
std::string cards_ahead(const Plan& plan, const SheetInputs& inputs) {
  const Progress& progress = inputs.followed->progress;
  std::string text = "<section>\n" + element("h2", cards_heading);
  if (inputs.followed->ahead.empty())
    text +=
        element("p", "No card: " + user_text(next_words(progress)) + ". Why: " + user_text(why_words(progress)) + ".");
  else
    text += element("p",
                    "One card a swab. The first is the test that is proposed now; each further one only if the one "
                    "before it came out as it says, and after a new reading print the sheet anew. What is closed has "
                    "no card. " +
                        std::string(how_to_fill_in));
  text += cards_text(plan, inputs);
  return text + "</section>\n" + map_section(plan.job.object, inputs.sites, inputs.background);
}

}  // namespace

std::string sheet_tests(const Plan& plan, const Bench& bench, const SheetInputs& inputs) {
  const bool proposes = plan.outcome == Outcome::window || !plan.to_try.empty();
  if (inputs.followed) return cards_ahead(plan, inputs);
  std::string text = "<section>\n" + element("h2", cards_heading);
  text += element("p", std::string(proposes ? "One card a swab, in the order of the work. Begin with the gentlest."
                                            : "One card a swab. No card names a mixture, since none is proposed.") +
                           " " + how_to_fill_in);
  if (proposes) text += left_out_html(plan, bench);
  int number = inputs.tests_so_far;
  const std::string inner = unjudged_boxes(plan);
  if (proposes || !plan.first_tests.empty())
    for (const std::string& blank : blank_tests(plan)) text += card(++number, blank, inner);
  for (const BenchMixture& mixture : bench.mixtures)
    if (proposes && !mixture.beyond_limit) text += card(++number, recipe_words(mixture) + warning_of(mixture), inner);
  for (int i = 0; i < blank_cards; ++i) text += card(++number, "mixture:", inner);
  return text + "</section>\n" + map_section(plan.job.object, inputs.sites, inputs.background);
}

}  // namespace gentlest
