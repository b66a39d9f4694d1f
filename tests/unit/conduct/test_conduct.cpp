// The rules of docs/conduct.md one by one, on one small job. Random sessions: tests/property/test_conduct.cpp.
#include "shipped.hpp"

#include "gentlest/conduct/conduct.hpp"
#include "gentlest/liquids/notation.hpp"
#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gentlest;
using namespace gentlest::test;

namespace {

const Plan& plan() {
  static const Plan made = make_plan(
      load_job("gentlest_job: 1\nlayers:\n  - {name: varnish, role: remove, found: dammar_aged}\n"
               "  - {name: paint, role: keep, found: oil_paint_old}\n"
               "passages:\n  - {name: cloth, of: paint}\n  - {name: glaze, of: paint, suspected: [resinous]}\n"
               "shelf: [isooctane, acetone, {solvent: ethanol, grade: \"96 %\"}, ethyl_acetate]\nlimits: {risk_limit: "
               "0.6}\n",
               "job.yaml", shipped_catalogue()),
      shipped_catalogue());
  return made;
}

std::string rung(std::size_t number, std::size_t line = 0) {
  return to_text(plan().lines[line].rungs[number - 1].mixture);
}

// A log written in the order of its lines.
class Log {
 public:
  Log& edge(const std::string& mixture, RemovalReading removal,
            OriginalReading original = OriginalReading::nothing_seen) {
    add(mixture, removal, original).at_edge = true;
    return *this;
  }
  Log& picture(const std::string& mixture, const std::string& passage, RemovalReading removal,
               OriginalReading original = OriginalReading::nothing_seen) {
    add(mixture, removal, original).passage = passage;
    return *this;
  }
  Reading& last() { return lines_.back(); }
  Conduct conduct() const { return conduct_of(plan(), lines_, shipped_catalogue()); }

 private:
  Reading& add(const std::string& mixture, RemovalReading removal, OriginalReading original) {
    Reading reading;
    reading.test = static_cast<int>(lines_.size()) + 1;
    reading.mixture = mixture;
    reading.removal = removal;
    reading.original = original;
    lines_.push_back(reading);
    return lines_.back();
  }
  std::vector<Reading> lines_;
};

constexpr auto nothing = RemovalReading::no_effect;
constexpr auto softened = RemovalReading::softened;
constexpr auto mostly = RemovalReading::mostly;

bool is_first(const Conduct& conduct, const std::string& mixture, Place place, const std::string& passage = {}) {
  return !conduct.open.empty() && to_text(conduct.open.front().mixture) == mixture &&
         conduct.open.front().place == place && conduct.open.front().passage == passage;
}

bool is_open(const Conduct& conduct, const std::string& mixture) {
  return std::any_of(conduct.open.begin(), conduct.open.end(),
                     [&](const OpenTest& one) { return to_text(one.mixture) == mixture; });
}

// Of an open test on the first line.
double height_of(const OpenTest& open) {
  const Conduct conduct = conduct_of(plan(), {}, shipped_catalogue());
  return conduct.steps[*open.step].height;
}

}  // namespace

TEST_CASE("rules 1, 3, 4: the gentlest rung at the edge, one after the other, two after two that did nothing") {
  REQUIRE(plan().lines.size() > 1);
  REQUIRE(plan().lines[0].rungs.size() >= 5);
  CHECK(is_first(Log().conduct(), rung(1), Place::edge));
  CHECK(is_first(Log().edge(rung(1), nothing).conduct(), rung(2), Place::edge));
  CHECK(is_first(Log().edge(rung(1), nothing).edge(rung(2), softened).conduct(), rung(3), Place::edge));
  const Conduct two = Log().edge(rung(1), nothing).edge(rung(2), nothing).conduct();
  CHECK(is_first(two, rung(4), Place::edge));
  CHECK(two.open.front().purpose == Purpose::climb_two);
  CHECK(two.open[1].purpose == Purpose::climb);
  // What moved it at the edge goes on the picture, from the gentlest on there too.
  const Conduct moved = Log().edge(rung(1), nothing).edge(rung(2), mostly).conduct();
  CHECK(is_first(moved, rung(1), Place::picture, "cloth"));
  CHECK(is_first(Log().edge(rung(1), nothing).edge(rung(2), mostly).picture(rung(1), "cloth", nothing).conduct(),
                 rung(2), Place::picture, "cloth"));
}

TEST_CASE("rules 6, 8: harm closes the mixture, what is nearer to the layer, and as much of the same liquid") {
  const Conduct conduct = Log().edge(rung(1), nothing).edge(rung(2), nothing, OriginalReading::recovers).conduct();
  for (std::size_t i = 0; i < conduct.steps.size(); ++i) {
    const PlanStep& step = conduct.steps[i];
    if (step.line == 0) CHECK((closure_of(conduct, i) != nullptr) == (step.height > 1.9));
  }
  REQUIRE_FALSE(conduct.open.empty());
  CHECK_FALSE(is_open(conduct, rung(2)));
  CHECK_FALSE(is_open(conduct, rung(3)));
  CHECK(conduct.open.front().purpose == Purpose::between);
  CHECK(height_of(conduct.open.front()) == 1.5);
}

TEST_CASE("rule 6: a colour of which nobody noted what it was is the original's; varnish and dirt are none") {
  for (int i = 0; i < swab_colour_count; ++i) {
    const auto colour = static_cast<SwabColour>(i);
    Log log;
    log.edge(rung(1), softened, OriginalReading::colour_on_swab).last().colour = colour;
    INFO(to_word(colour));
    CHECK(log.conduct().harms.empty() == (colour == SwabColour::varnish || colour == SwabColour::dirt));
  }
}

TEST_CASE("rule 9: harm on a passage closes it and leaves the others open") {
  const Conduct conduct = Log()
                              .edge(rung(1), nothing)
                              .edge(rung(2), mostly)
                              .picture(rung(1), "glaze", softened, OriginalReading::recovers)
                              .picture(rung(1), "cloth", nothing)
                              .conduct();
  REQUIRE(conduct.passages.size() == 2);
  CHECK_FALSE(conduct.passages[0].closed_by);
  CHECK(conduct.passages[1].closed_by == 2U);
  for (const OpenTest& open : conduct.open) CHECK(open.passage != "glaze");
}

TEST_CASE("rule 10: harm on the picture with what passed at the edge ends the tests there") {
  const Conduct conduct = Log()
                              .edge(rung(1), nothing)
                              .edge(rung(2), softened)
                              .edge(rung(3), mostly)
                              .picture(rung(1), "cloth", nothing)
                              .picture(rung(2), "cloth", softened)
                              .picture(rung(3), "cloth", mostly, OriginalReading::recovers)
                              .conduct();
  CHECK(conduct.edge_refuted_by == 5U);
  CHECK_FALSE(conduct.end);
  for (const OpenTest& open : conduct.open) CHECK(open.place == Place::picture);
}

TEST_CASE("rules 2 and 11: a blank that takes colour, two harms, or a lasting one by the gentlest end the series") {
  Log blank;
  blank.edge("saliva", nothing, OriginalReading::colour_on_swab);
  REQUIRE(blank.conduct().end);
  CHECK(blank.conduct().end->why == EndWhy::blank_took_colour);
  CHECK(blank.conduct().open.empty());
  const Conduct two = Log()
                          .edge(rung(1), nothing, OriginalReading::recovers)
                          .edge(rung(2, 1), nothing, OriginalReading::recovers)
                          .conduct();
  REQUIRE(two.end);
  CHECK(two.end->why == EndWhy::two_harms);
  CHECK(two.harms.size() == 2);
  const Conduct lasting = Log().picture(rung(2), "cloth", softened, OriginalReading::stays).conduct();
  REQUIRE(lasting.end);
  CHECK(lasting.end->why == EndWhy::lasting_harm_by_the_gentlest);
  CHECK_FALSE(Log()
                  .picture(rung(1), "cloth", softened)
                  .picture(rung(3), "cloth", mostly, OriginalReading::stays)
                  .conduct()
                  .end);
}

TEST_CASE("rules 7, 13, 14: what works, what is mixed, what wants a second spot") {
  Log log;
  log.edge(rung(1), nothing).edge(rung(2), mostly).picture(rung(1), "cloth", nothing).picture(rung(2), "cloth", mostly);
  Conduct conduct = log.conduct();
  REQUIRE(working_now(conduct));
  CHECK(working_now(conduct)->passed == std::vector<std::string>{"cloth"});
  CHECK(working_now(conduct)->untested == std::vector<std::string>{"glaze"});
  log.last().confidence = ReadingConfidence::low;
  conduct = log.conduct();
  CHECK(working_now(conduct)->needs_second_spot);
  log.last().confidence = ReadingConfidence::medium;
  log.last().seconds = long_contact_s + 1;
  CHECK(working_now(log.conduct())->needs_second_spot);
  log.last().seconds = long_contact_s;
  CHECK_FALSE(working_now(log.conduct())->needs_second_spot);
  Log mixed = log;
  mixed.picture(rung(2), "cloth", softened);
  CHECK_FALSE(working_now(mixed.conduct()));
  REQUIRE(mixed.conduct().working.size() == 1);
  CHECK(mixed.conduct().working[0].otherwise == std::vector<std::size_t>{4});
  Log harmed = log;
  harmed.edge(rung(2), mostly, OriginalReading::stays);
  CHECK(harmed.conduct().working.empty());
}

TEST_CASE("rule 15: after the first success half a step back, once, then the other passages") {
  Log log;
  log.edge(rung(1), nothing).edge(rung(2), mostly).picture(rung(1), "cloth", nothing).picture(rung(2), "cloth", mostly);
  Conduct conduct = log.conduct();
  REQUIRE_FALSE(conduct.open.empty());
  CHECK(conduct.open.front().purpose == Purpose::step_back);
  CHECK(height_of(conduct.open.front()) == 1.5);
  CHECK(conduct.open.front().place == Place::edge);
  const std::string half = to_text(conduct.open.front().mixture);
  Log spared = log;
  spared.edge(half, nothing);  // too weak there: that settles it
  CHECK(spared.conduct().open.front().purpose == Purpose::other_passage);
  CHECK(is_first(spared.conduct(), rung(2), Place::picture, "glaze"));
  log.edge(half, mostly);
  CHECK(is_first(log.conduct(), half, Place::picture, "cloth"));
  log.picture(half, "cloth", mostly);
  conduct = log.conduct();
  CHECK(to_text(working_now(conduct)->mixture) == half);
  CHECK(is_first(conduct, half, Place::picture, "glaze"));
}

TEST_CASE("a name that the job does not know counts on the careful side") {
  Log log;
  log.picture(rung(2), "sky", mostly);
  CHECK(log.conduct().working.empty());
  CHECK(is_first(log.conduct(), rung(1), Place::edge));
  log.picture(rung(2), "sky", mostly, OriginalReading::recovers);
  CHECK(log.conduct().tests[1].layers == std::vector<std::string>{"paint", "glaze"});
  Log unreadable;
  unreadable.edge("something", softened, OriginalReading::recovers);
  CHECK(unreadable.conduct().harms.size() == 1);
  CHECK(unreadable.conduct().open.empty());
}

TEST_CASE("a vial made by a step's rounded recipe is that step: it is not asked again, and its harm closes it") {
  Log log;
  log.edge(rung(1), nothing).edge(rung(2), mostly).picture(rung(1), "cloth", nothing).picture(rung(2), "cloth", mostly);
  const Conduct before = log.conduct();
  REQUIRE(before.open.front().purpose == Purpose::step_back);
  const PlanStep& half = before.steps[*before.open.front().step];
  REQUIRE_FALSE(is_same_mixture(half.as_measured, half.mixture));  // 0.5 mL is coarser than the recipe
  Log tried = log;
  tried.edge(to_text(half.as_measured), nothing);
  CHECK(tried.conduct().open.front().purpose == Purpose::other_passage);
  CHECK(to_text(*tried.conduct().tests.back().made) == to_text(half.as_measured));
  Log harmed = log;
  harmed.edge(to_text(half.as_measured), nothing, OriginalReading::recovers);
  CHECK(closure_of(harmed.conduct(), *before.open.front().step));
}

TEST_CASE("a solution of one's own that harmed closes its passage and counts, but closes no rung", "[conduct]") {
  const std::string citrate = "aqueous: citrate 2 % pH 7";
  Log log;
  log.picture(citrate, "cloth", softened, OriginalReading::stays);
  const Conduct one = log.conduct();
  REQUIRE(one.tests.size() == 1);
  CHECK(one.tests[0].is_aqueous);
  CHECK(one.tests[0].unreadable.empty());
  CHECK(one.harms == std::vector<std::size_t>{0});
  CHECK(one.closures.empty());
  CHECK_FALSE(one.end);
  CHECK(one.passages[0].closed_by == std::size_t{0});
  CHECK_FALSE(one.passages[1].closed_by);
  CHECK(is_first(one, rung(1), Place::edge));
  // Two harms with different things end it.
  const Conduct two = log.edge(rung(1), nothing, OriginalReading::recovers).conduct();
  REQUIRE(two.end);
  CHECK(two.end->why == EndWhy::two_harms);
  // Nothing seen of it opens nothing.
  const Conduct borne = Log().edge(citrate, nothing).edge(citrate, nothing).conduct();
  CHECK(is_first(borne, rung(1), Place::edge));
  CHECK(borne.open.size() == Log().conduct().open.size());
}

TEST_CASE("a blank is no mixture, and takes its words however they are written", "[conduct]") {
  for (const char* words : {"dry swab", "Dry swab", "saliva", "water", "blank"}) {
    INFO(words);
    const Conduct conduct = Log().edge(words, nothing, OriginalReading::stays).conduct();
    CHECK(conduct.tests[0].is_blank);
    REQUIRE(conduct.end);
    CHECK(conduct.end->why == EndWhy::blank_took_colour);
  }
}
