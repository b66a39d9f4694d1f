// Readings as people write them: what each text means, or what is asked.
#include "scale.hpp"
#include "shipped.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/learning/reading_fields.hpp"
#include "gentlest/liquids/notation.hpp"
#include "gentlest/noted/fields.hpp"
#include "gentlest/noted/noted.hpp"
#include "gentlest/noted/words.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

using namespace gentlest;
using gentlest::test::shipped_catalogue;

namespace {

const Job& job() {
  static const Job made = [] {
    Job easel;
    easel.layers.resize(2);
    easel.layers[0].name = "varnish";
    easel.layers[0].role = Role::remove;
    easel.layers[1].name = "oil paint";
    for (const char* name : {"sky", "red glaze", "red cloak"}) {
      easel.passages.emplace_back();
      easel.passages.back().name = name;
      easel.passages.back().of = "oil paint";
    }
    return easel;
  }();
  return made;
}

struct Read {
  TypedReading typed;
  std::vector<Diagnostic> faults;
};

Read read(const std::string& text, const std::vector<Reading>& lines = {}) {
  static const std::vector<Liquid> no_shelf;
  const NotedAgainst against{job(), shipped_catalogue(), no_shelf, lines, [](const TypedStep& step) {
                               if (step.height > 6) throw InputError(Fault::usage, "the ladder has no such rung");
                               return parse_mixture("isooctane 55, acetone 45", shipped_catalogue());
                             }};
  Read result;
  read_noted(text, against, result.typed, result.faults);
  try {
    if (!result.typed.reading.mixture.empty())
      result.typed.reading.mixture = mixture_in_full(result.typed.reading.mixture, against);
  } catch (const InputError& error) {
    result.faults.insert(result.faults.end(), error.faults().begin(), error.faults().end());
  }
  return result;
}

// "mixture=...; removal=...": the fields that are not empty, without how sure.
std::string fields_of(const Read& read) {
  std::string text;
  for (const ReadingField& field : reading_fields()) {
    const std::string value = get_field(read.typed.reading, field.key);
    if (value.empty() || (field.key == "confidence" && value == "medium") || (field.key == "test" && value == "0"))
      continue;
    text += (text.empty() ? "" : "; ") + std::string(field.key) + "=" + value;
  }
  return text;
}

const std::string rung = "mixture=isooctane 55, acetone 45; ";
const std::string partly_ok = "removal=partly removed; original=nothing seen";

}  // namespace

TEST_CASE("a reading is read in short words in any order", "[noted]") {
  const std::pair<const char*, std::string> table[] = {
      {"rung 4: partly, nothing seen, sky, 20 s, edge", rung + "passage=sky; at_edge=yes; seconds=20; " + partly_ok},
      {"edge, 20 s, sky, nothing seen, partly, rung 4", rung + "passage=sky; at_edge=yes; seconds=20; " + partly_ok},
      {"rung 4 partly nothing seen sky 20 s edge", rung + "passage=sky; at_edge=yes; seconds=20; " + partly_ok},
      {"isooctane 55, acetone 45: partly, ok", rung + partly_ok},
      {"partly, ok, isooctane 55, acetone 45", rung + partly_ok},
      {"sky, acetone 45, isooctane 55: partly, ok", "mixture=acetone 45, isooctane 55; passage=sky; " + partly_ok},
      {"1:3 acetone / isooctane: partly, ok", "mixture=isooctane 75, acetone 25; " + partly_ok},
      {"acetone : isooctane 1:3: partly, ok", "mixture=isooctane 75, acetone 25; " + partly_ok},
      {"line 2 rung 4: partly, ok", rung + partly_ok},
      {"line 2, rung 4: partly, ok", rung + partly_ok},
      {"Rung 3,5: Partly, OK", rung + partly_ok},
      {"rung 4: none, none", rung + "removal=no effect; original=nothing seen"},
      {"rung 4: nothing moved, unaffected", rung + "removal=no effect; original=nothing seen"},
      {"rung 4: softened, nothing seen", rung + "removal=softened or gelled; original=nothing seen"},
      {"rung 4: partly, softened", rung + "removal=partly removed; original=softened"},
      {"rung 4: softened, blanched", rung + "removal=softened or gelled; original=change that stays; signs=blanched"},
      {"rung 4: varnish tacky", rung + "removal=softened or gelled; signs=varnish tacky"},
      {"rung 4: paint tacky", rung + "original=softened; signs=paint tacky"},
      {"rung 4: varnish: softened, paint: ok", rung + "removal=softened or gelled; original=nothing seen"},
      {"rung 4: sky softened", rung + "passage=sky; original=softened"},
      {"rung 4: patchy, smeared, ok", rung + partly_ok + "; signs=patchy, smeared"},
      {"rung 4: mostly, patchy, ok", rung + "removal=mostly removed; original=nothing seen; signs=patchy"},
      {"rung 4: fully, blanched, recovers",
       rung + "removal=fully removed; original=change that recovers; signs=blanched"},
      {"rung 4: fully, lifted, recovers", rung + "removal=fully removed; original=softened; signs=lifted"},
      {"rung 4: all, lost gloss", rung + "removal=fully removed; original=change that stays; signs=lost gloss"},
      {"rung 4: fully, matt, halo", rung + "removal=fully removed; original=change that stays; signs=matt, halo"},
      {"rung 4: fully, color on the swab", rung + "removal=fully removed; original=colour on the swab"},
      {"rung 4: partly, ok, colour: dirt", rung + "removal=partly removed; original=nothing seen; colour=dirt"},
      {"rung 4: partly, ok, varnish on the swab",
       rung + "removal=partly removed; original=nothing seen; colour=varnish"},
      {"rung 4: partly, ok, red gl", rung + "passage=red glaze; " + partly_ok},
      {"rung 4: partly, ok, 1 min", rung + "seconds=60; " + partly_ok},
      {"rung 4: partly, ok, 8 rolls, damp, 5x5 mm, 10x, raking, UV",
       rung + "window_mm=5 x 5; light=raking, UV; magnification=10x; wetness=damp; rolls=8; " + partly_ok},
      {"rung 4: partly, ok, 3.2/4.5 cm", rung + "x_cm=3.2; y_cm=4.5; " + partly_ok},
      {"rung 4: partly, ok, at 3.2, 4.5", rung + "x_cm=3.2; y_cm=4.5; " + partly_ok},
      {"rung 4: partly, ok, 3,2/4,5 cm", rung + "x_cm=3.2; y_cm=4.5; " + partly_ok},
      {"rung 4: partly, ok, 2026-03-14, by AB, unsure",
       "date=2026-03-14; who=AB; " + rung + partly_ok + "; confidence=low"},
      {"rung 4: partly, ok, 14.3.2026", "date=2026-03-14; " + rung + partly_ok},
      {"rung 4: partly, ok, IMG_12.jpg, before IMG_11.JPG",
       rung + partly_ok + "; photo_before=IMG_11.JPG; photo=IMG_12.jpg"},
      {"rung 4: partly, ok, first effect 5 s, 20 s", rung + "seconds=20; first_effect_s=5; " + partly_ok},
      {"rung 4: partly, ok, cleared with isooctane 2x", rung + partly_ok + "; clearing=isooctane 2x"},
      {"rung 4: partly, after drying matt",
       rung + "removal=partly removed; original=change that stays; after_drying=matt"},
      {"rung 4: partly, ok \"slow, then quick\"", rung + partly_ok + "; remark=slow, then quick"},
      {"rung 4: partly, ok -- slow: then quick", rung + partly_ok + "; remark=slow: then quick"},
      {"rung 4: partly, ok, clearing: n/a, colour: none", rung + partly_ok},
      {"aqueous: citrate 2 % pH 7: none, none",
       "mixture=aqueous: citrate 2 % pH 7; removal=no effect; original=nothing seen"},
      {"solution: my gel, partly, ok", "mixture=aqueous: my gel; " + partly_ok},
      {"dry swab: none, ok", "mixture=dry swab; removal=no effect; original=nothing seen"},
      {"saliva: partly, ok", "mixture=saliva; " + partly_ok},
      {"water, none, ok", "mixture=water; removal=no effect; original=nothing seen"},
      {"test 7, rung 4: partly, ok", "test=7; " + rung + partly_ok},
      {"test 4, next day: blanched", "test=4; original=change that stays; signs=blanched; looked_after=1 day"},
      {"test 4, after a week, nothing seen", "test=4; original=nothing seen; looked_after=7 days"},
  };
  for (const auto& [text, meaning] : table) {
    INFO(text);
    const Read result = read(text);
    INFO(render(result.faults));
    CHECK(result.faults.empty());
    CHECK(fields_of(result) == meaning);
  }
}

TEST_CASE("what may mean two things is asked, and what means nothing is told with the nearest word", "[noted]") {
  const std::pair<const char*, const char*> table[] = {
      {"rung 4: softened", "write \"varnish softened\" or \"paint softened\""},
      {"rung 4: tacky, swollen", "write \"varnish tacky\" or \"paint tacky\""},
      {"rung 4: partly, ok, tacky", "may speak of the layer to remove or of the original"},
      {"rung 4: none", "may speak of the layer to remove or of the original"},
      {"rung 4: partli, ok", "did you mean \"partly\"?"},
      {"rung 4: partly, ok, skyy", "did you mean \"sky\"?"},
      {"rung 4: partly, ok, red", "\"red\" may be \"red glaze\" or \"red cloak\""},
      {"rung 4: partly, mostly, ok", "it is said to be both"},
      {"rung 4: partly, ok, blanched", "\"nothing seen\" stands beside \"blanched\""},
      {"rung 4: no effect, smeared, ok", "\"no effect\" stands beside \"smeared\""},
      {"rung 4: partly, ok, after drying blanched", "\"nothing seen\" stands beside \"blanched\" after drying"},
      {"rung 4: partly, no blanching", "is not understood"},
      {"rung 4: hardly softened, ok", "is not understood"},
      {"rung 4: not softened, ok", "is not understood"},
      {"rung 4: partly, ok, 20 s, 30 s", "contact is said twice"},
      {"rung 4: partly, ok, rung 3", "is not understood"},
      {"rung 9: partly, ok", "no such rung"},
      {"citrate 2 %: partly, ok", "unknown solvent \"citrate\""},
      {"acetne 30, isooctane 70: partly, ok", "did you mean \"acetone\"?"},
      {"ethanol 96 isooctane 4: partly, ok", "is \"96\" the grade of ethanol or its share?"},
      {"rung 4: partly, ok, 20 min", "of contact, or a later look?"},
      {"rung 4: partly, ok, 3/4/2026", "is not understood"},
  };
  for (const auto& [text, wanted] : table) {
    INFO(text);
    const Read result = read(text);
    const std::string told = render(result.faults);
    INFO(told);
    INFO(fields_of(result));
    CHECK(told.find(wanted) != std::string::npos);
  }
}

TEST_CASE("minutes of a test that is there say when it was looked at again", "[noted]") {
  Reading there;
  there.test = 4;
  const Read result = read("test 4, 20 min: paint swollen", {there});
  CHECK(result.faults.empty());
  CHECK(fields_of(result) == "test=4; original=softened; signs=paint swollen; looked_after=20 min");
}

TEST_CASE("whatever is echoed is read again as the same reading", "[noted]") {
  const std::vector<std::vector<std::string>> pools = {
      {"rung 4", "1:3 acetone / isooctane", "dry swab", "aqueous: citrate 2 % pH 7", "ethanol 96 % 30, isooctane 70"},
      {"no effect", "varnish softened", "patchy", "mostly", "all", "smeared"},
      {"nothing seen", "blanched", "recovers", "paint tacky", "lifted", "color on swab"},
      {"", "sky", "red glaze", "oil paint"},
      {"", "edge", "picture"},
      {"", "20 s", "1 min", "first effect 3 s"},
      {"", "8 rolls", "damp", "wet"},
      {"", "5x5 mm", "4 mm"},
      {"", "3.2/4.5 cm", "at 1, 2"},
      {"", "2026-03-14", "14.3.2026"},
      {"", "by AB", "unsure", "sure"},
      {"", "10x", "raking", "a.jpg", "before b.png"},
      {"", "colour: dirt", "varnish on the swab", "colour: not known"},
      {"", "cleared with isooctane, twice", "uv before: greenish", "\"slow, then: quick\"",
       "-- a note; with 2:1, \"odd\" signs"},
  };
  std::mt19937 random(14);
  for (int round = 0; round < test::cases(100); ++round) {
    std::vector<std::string> words;
    for (const auto& pool : pools)
      if (const std::string& word = pool[random() % pool.size()]; !word.empty()) words.push_back(word);
    const bool has_note = words.back().rfind("--", 0) == 0;
    std::shuffle(words.begin(), words.end() - (has_note ? 1 : 0), random);
    std::string text;
    for (const std::string& word : words) text += (text.empty() ? "" : word.rfind("--", 0) == 0 ? " " : ", ") + word;
    INFO(text);
    const Read once = read(text);
    if (!once.faults.empty()) continue;  // a drawn remark that says something else
    std::string echo;
    for (const std::string& line : noted_lines(once.typed)) echo += (echo.empty() ? "" : "; ") + line;
    INFO(echo);
    const Read again = read(echo);
    INFO(render(again.faults));
    CHECK(again.faults.empty());
    Reading expected = once.typed.reading;
    std::replace(expected.remark.begin(), expected.remark.end(), '"', '\'');
    CHECK(again.typed.reading == expected);
  }
}

TEST_CASE("every word of the trade says something of a side that it may speak of", "[noted]") {
  for (const std::string& text : trade_word_texts()) {
    INFO(text);
    const TradeWord& word = *find_trade_word(text);
    CHECK(word.removal.has_value() == (word.side != Side::original));
    CHECK(word.original.has_value() == (word.side != Side::removal));
  }
  for (int i = 0; i < removal_reading_count; ++i) {
    const auto reading = static_cast<RemovalReading>(i);
    REQUIRE(find_trade_word(to_word(reading)));
    CHECK(find_trade_word(to_word(reading))->removal == reading);
  }
  for (int i = 0; i < original_reading_count; ++i) {
    const auto reading = static_cast<OriginalReading>(i);
    REQUIRE(find_trade_word(to_word(reading)));
    CHECK(find_trade_word(to_word(reading))->original == reading);
  }
  // A harm is never read as less than a change that stays, unless it is said to recover.
  for (const char* text : {"blanched", "lost gloss", "matt", "halo"})
    CHECK(find_trade_word(text)->original == OriginalReading::stays);
  for (const char* text : {"lifted", "flaked", "swollen", "tacky", "softened"})
    CHECK(find_trade_word(text)->original == OriginalReading::softened);
}

TEST_CASE("headings lead to their fields, whatever their case and units", "[noted]") {
  const std::pair<const char*, const char*> table[] = {{"Mixture", "mixture"},
                                                       {"AT EDGE", "at_edge"},
                                                       {"x (cm)", "x_cm"},
                                                       {"window_mm", "window_mm"},
                                                       {"Window [mm]", "window_mm"},
                                                       {"Nr.", "test"},
                                                       {"Malschicht", "original"},
                                                       {"Firnis:", "removal"},
                                                       {"couche picturale", "original"},
                                                       {"Farbe am Tupfer", "colour"},
                                                       {"Datum", "date"},
                                                       {"m\xC3\xA9lange", "mixture"},
                                                       {"M\xC3\x89LANGE", "mixture"},
                                                       {"secondes", "seconds"},
                                                       {"after drying", "after_drying"},
                                                       {"weather", ""}};
  for (const auto& [heading, key] : table) {
    INFO(heading);
    CHECK(key_of_heading(heading) == key);
  }
}

TEST_CASE("a date is read where day and month can be meant one way only", "[noted]") {
  CHECK(date_from("2026-03-14") == "2026-03-14");
  CHECK(date_from("14.3.2026") == "2026-03-14");
  CHECK(date_from("3.4.2026") == "2026-04-03");
  CHECK(date_from("14/3/2026") == "2026-03-14");
  CHECK(date_from("3/14/2026") == "2026-03-14");
  for (const char* text : {"3/4/2026", "31.2.2026", "today", "14.3.26"}) CHECK(date_from(text).empty());
}
