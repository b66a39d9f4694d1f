// The cards to fill in, dealt onto pages, and the map.
#include "report/paper/bench_sheet.hpp"

#include "report/bottle/contact_words.hpp"

#include "report/draw/svg.hpp"
#include "report/form/format.hpp"
#include "report/paper/swab_card.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/phrases/no_window.hpp"
#include "report/phrases/sighting_words.hpp"
#include "report/rules/conduct_words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

constexpr const char* cards_heading = "The tests, to be filled in";
constexpr const char* how_to_fill_in =
    "x and y from the lower left corner; tick one grade a row and every sign that was seen.";

// The blanks that come before any solvent; water not where a layer without a sphere is known not to bear it.
std::vector<std::string> blank_tests(const Plan& plan) {
  const bool bears_water = std::none_of(plan.first_tests.begin(), plan.first_tests.end(),
                                        [](const FirstTest& test) { return test.kind == FirstTestKind::no_water; });
  std::vector<std::string> blanks = {"dry swab"};
  if (bears_water) blanks.emplace_back("water or saliva, where the surface bears it");
  return blanks;
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

// How long, how many rolls, when to look again, what to clear with.
std::string contact_line(const BenchMixture& mixture) {
  return user_text(contact_in_short(mixture.contact));
}

std::string sites_table(const std::vector<MapSite>& sites) {
  std::vector<std::vector<std::string>> rows;
  for (const MapSite& site : sites)
    rows.push_back({html_text(site.number), as_recorded(site.x_cm), as_recorded(site.y_cm), user_text(site.what)});
  return html_table({"test", "x, cm from the left edge", "y, cm from the lower edge", "what is there"}, rows, "sites");
}

}  // namespace

std::string map_section(const Job& job, const std::vector<MapSite>& sites,
                        const std::optional<MapBackground>& background, MapTable table) {
  std::string text = "<section class=\"map\">\n" + element("h2", "Map of the tests");
  if (job.object.width && job.object.height)
    text += chart_figure(test_map(job.object, sites, background, job.series));
  else
    text += element("p", "The size of the painting is not in the job, so no map is drawn.");
  if (!sites.empty() && table == MapTable::below) text += sites_table(sites);
  return text + "</section>\n";
}

namespace {

// Cards to be printed, and what is said above them on each page.
struct CardDeck {
  std::vector<SwabCard> cards;
  std::string how;                 ///< HTML
  std::string spare = "mixture:";  ///< what a card says that no test is planned for
};

// With a log: the proposed test first, then what may follow it; after a stop no card.
CardDeck cards_ahead(const Plan& plan, const SheetInputs& inputs) {
  CardDeck deck;
  const Progress& progress = inputs.followed->progress;
  const std::vector<TestAhead>& ahead = inputs.followed->ahead;
  deck.how =
      "The first card is the test that is proposed now; each further one only if the one before it came out as it "
      "says, and after a new reading print the sheet anew. What is closed has no card;";
  deck.spare = "another place for a mixture that is still open:";
  int number = inputs.tests_so_far;
  if (progress.conduct.tests.empty() && !ahead.empty())
    for (const std::string& blank : blank_tests(plan)) deck.cards.push_back(make_card({++number, blank, {}}, plan));
  for (const TestAhead& test : ahead) {
    ++number;
    std::string recipe = recipe_words(test.mixture) + warning_of(test.mixture) + " " + label_signs(test.mixture.label);
    for (const std::string& mark : marks_of(test.mixture, plan)) recipe += "; " + html_text(mark);
    deck.cards.push_back(make_card(
        {number, "<span class=\"when\">" + user_text(ahead_words(test, progress, number)) + "</span>" + recipe,
         contact_line(test.mixture)},
        plan));
  }
  return deck;
}

bool proposes(const Plan& plan) {
  return plan.outcome == Outcome::window || !plan.to_try.empty();
}

CardDeck cards_of_ladder(const Plan& plan, const Bench& bench, const SheetInputs& inputs) {
  CardDeck deck;
  deck.how = proposes(plan) ? "One card a swab, in the order of the work, the gentlest first;"
                            : "One card a swab; none names a mixture, since none is proposed;";
  int number = inputs.tests_so_far;
  if (proposes(plan) || !plan.first_tests.empty())
    for (const std::string& blank : blank_tests(plan)) deck.cards.push_back(make_card({++number, blank, {}}, plan));
  for (const BenchMixture& mixture : bench.mixtures)
    if (proposes(plan) && !mixture.beyond_limit)
      deck.cards.push_back(
          make_card({++number, recipe_words(mixture) + warning_of(mixture), contact_line(mixture)}, plan));
  return deck;
}

// Cards on pages, as many as fit; the last page is filled up with spare ones, at least one.
std::vector<std::string> dealt(const CardDeck& deck, const std::string& caution, const Plan& plan,
                               const SheetInputs& inputs) {
  constexpr double head_mm = 8;
  constexpr double gap_mm = 1.5;
  constexpr double letters_mm = 2.6;  // 8 pt, condensed
  constexpr double line_mm = 3.4;
  const auto lines =
      static_cast<double>(text_lines(html_words(caution), letters_mm, size_of(inputs.paper).width_mm - 34).size());
  const double room = text_page_height_mm(inputs.paper) - head_mm - lines * line_mm - 2;
  std::vector<std::string> pages;
  double left = 0;
  const auto deal = [&](const SwabCard& card) {
    if (pages.empty() || card.height_mm > left) {
      pages.emplace_back();
      left = room;
    }
    pages.back() += card.html;
    left -= card.height_mm + gap_mm;
  };
  for (const SwabCard& card : deck.cards) deal(card);
  int number = inputs.tests_so_far + static_cast<int>(deck.cards.size());
  const auto spare = [&] { return make_card({++number, deck.spare, {}}, plan); };
  deal(spare());
  for (SwabCard card = spare(); card.height_mm <= left; card = spare()) deal(card);
  return pages;
}

}  // namespace

std::string no_card_html(const SheetInputs& inputs) {
  if (!inputs.followed || !inputs.followed->ahead.empty()) return {};
  const Progress& progress = inputs.followed->progress;
  return element("h2", cards_heading) +
         element("p", "No card: " + user_text(next_words(progress)) + ". Why: " + user_text(why_words(progress)) + ".");
}

std::string without_card_html(const Plan& plan, const Bench& bench) {
  std::vector<std::string> items;
  for (const std::string& words : left_out_words(plan, bench)) items.push_back("no card for " + user_text(words));
  return html_list(items);
}

std::string sheet_cards(const Plan& plan, const Bench& bench, const SheetInputs& inputs) {
  if (inputs.followed && inputs.followed->ahead.empty()) return {};
  const CardDeck deck = inputs.followed ? cards_ahead(plan, inputs) : cards_of_ladder(plan, bench, inputs);
  const std::string caution = carried_caution(bench, deck.how + " " + how_to_fill_in + " ");
  const std::vector<std::string> pages = dealt(deck, caution, plan, inputs);
  std::string text;
  for (std::size_t i = 0; i < pages.size(); ++i) {
    const std::string part =
        fmt::format("<b role=\"heading\" aria-level=\"2\">{}</b>, page {} of {}", cards_heading, i + 1, pages.size());
    text += single_page(sheet_head(plan, part), caution + pages[i], "cards");
  }
  return text;
}

}  // namespace gentlest
