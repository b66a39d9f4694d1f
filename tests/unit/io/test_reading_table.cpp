// Tables as spreadsheets save them.
#include "gentlest/base/diagnostic.hpp"
#include "io/reading_table.hpp"

#include <catch2/catch.hpp>

using namespace gentlest;

namespace {

std::string complaint_about(const std::string& text) {
  try {
    readings_from_table(text, "bench.csv");
  } catch (const InputError& error) {
    CHECK(error.kind() == Fault::file);
    return render(error.faults());
  }
  return "no complaint";
}

}  // namespace

TEST_CASE("semicolons, tabs, capitals, German and French headings and extra columns come in", "[table]") {
  const ReadingTable english = readings_from_table(
      "Test,MIXTURE,At Edge,Seconds,Removal,Original,Colour,X (cm),y_cm\n"
      "1,\"isooctane 70, acetone 30\",yes,20,partly,nothing seen,none,3.2,4.5\n",
      "bench.csv");
  const ReadingTable german = readings_from_table(
      "Nr.;Gemisch;Rand;Sekunden;Firnis;Malschicht;Farbe am Tupfer;x (cm);y (cm)\r\n"
      "1;isooctane 70, acetone 30;ja;20,0;teilweise;nichts gesehen;keine;3,2;4,5\r\n;;;;;;;;\r\n",
      "bench.csv");
  const ReadingTable french = readings_from_table(
      "essai\tM\xC3\xA9lange\tau bord\tsecondes\tvernis\tcouche picturale\tcouleur sur le coton\tx\ty\n"
      "1\tisooctane 70, acetone 30\toui\t20 s\tpartiellement\trien vu\taucune\t3,2\t4,5 cm\n",
      "bench.csv");
  REQUIRE(english.readings.size() == 1);
  const Reading& one = english.readings[0].reading;
  CHECK(one.removal == RemovalReading::partly);
  CHECK(one.original == OriginalReading::nothing_seen);
  CHECK(one.at_edge);
  CHECK(one.seconds == 20);
  CHECK(one.site == Site{{3.2}, {4.5}});
  for (const ReadingTable* other : {&german, &french}) {
    REQUIRE(other->readings.size() == 1);
    CHECK(other->readings[0].reading == one);
    CHECK(other->taken.size() >= 7);
  }
}

TEST_CASE("a column that means nothing goes into the remark and is told; a slip in a heading is a fault", "[table]") {
  const ReadingTable table = readings_from_table(
      "mixture,removal,Humidity,remark,program\nacetone 100,patchy,45 %,slow,0.1.0\nacetone 100,none,,,0.1.0\n",
      "bench.csv");
  REQUIRE(table.readings.size() == 2);
  CHECK(table.readings[0].reading.remark == "slow; Humidity: 45 %");
  CHECK(table.readings[0].reading.signs == "patchy");
  CHECK(table.readings[1].reading.remark.empty());
  CHECK(table.readings[1].reading.removal == RemovalReading::no_effect);
  CHECK(table.to_remark == std::vector<std::string>{"Humidity"});
  CHECK(complaint_about("mixture,removal,orignal\nacetone 100,none,softened\n").find("did you mean \"original\"?") !=
        std::string::npos);
  const ReadingTable nameless = readings_from_table("mixture,removal,\nacetone 100,none,softened\n", "bench.csv");
  REQUIRE(nameless.refused.size() == 1);
  CHECK(nameless.refused[0].message.find("no heading") != std::string::npos);
  CHECK(complaint_about("Firnis;varnish\nnone;none\n").find("twice") != std::string::npos);
  CHECK(complaint_about("a;b\n1;2\n").find("no column is named") != std::string::npos);
}

TEST_CASE("what a cell does not say clearly is told with its place, and the other rows come in", "[table]") {
  const ReadingTable table = readings_from_table(
      "mixture;removal;original;seconds\nacetone 100;a bit;ok;20\nacetone 100;none;slightly;2 h\n"
      "acetone 100;partly;ok;20\n",
      "bench.csv");
  REQUIRE(table.readings.size() == 1);
  CHECK(table.readings[0].where.line == 4);
  const std::string complaint = render(table.refused);
  INFO(complaint);
  for (const char* piece : {"bench.csv:2:13", "\"a bit\" is not understood under \"removal\"", "bench.csv:3:18",
                            "\"2 h\" is not understood"})
    CHECK(complaint.find(piece) != std::string::npos);
}

TEST_CASE("strokes part the cells too, with or without one at either end", "[table]") {
  const ReadingTable table =
      readings_from_table("| Solvent | Result | Paint |\n|---|:---|---|\n| acetone 100 | partly | ok |\n", "bench.csv");
  REQUIRE(table.readings.size() == 1);
  CHECK(table.refused.empty());
  CHECK(table.readings[0].reading.mixture == "acetone 100");
  CHECK(table.readings[0].reading.removal == RemovalReading::partly);
  CHECK(table.readings[0].reading.original == OriginalReading::nothing_seen);
  // A stroke within a cell of a table of commas parts nothing.
  CHECK(readings_from_table("mixture,removal,remark\nacetone 100,none,a|b\n", "bench.csv").readings[0].reading.remark ==
        "a|b");
}

TEST_CASE("a title above the headings is left out; a row of words never takes their place", "[table]") {
  const ReadingTable table =
      readings_from_table("Solvent tests; summer\n\nYear;Solvent;Result\n1987;acetone 100;partly\n", "bench.csv");
  REQUIRE(table.readings.size() == 1);
  CHECK(table.lines_above == 1);
  CHECK(table.readings[0].reading.date == "1987");
  // "no", "edge", "dry" and "paint" are headings as well: the first row stays the header.
  const ReadingTable words = readings_from_table("mixture;a;b;c;d;e\nsolvent;no;edge;dry;paint;varnish\n", "bench.csv");
  CHECK(words.lines_above == 0);
}

TEST_CASE("a month or a year alone is a date, half a year is none", "[table]") {
  const ReadingTable table = readings_from_table(
      "date,mixture,removal\n1987,acetone 100,none\n1987-06,acetone 100,none\n1987-13,acetone 100,none\n87,acetone "
      "100,none\n",
      "bench.csv");
  REQUIRE(table.readings.size() == 2);
  CHECK(table.readings[1].reading.date == "1987-06");
  CHECK(table.refused.size() == 2);
}

TEST_CASE("a ratio in a column of its own stands behind the names", "[table]") {
  const ReadingTable table =
      readings_from_table("Solvents;Ratio;Result\nacetone : white spirit;1:4;partly\nacetone 100;;none\n", "bench.csv");
  REQUIRE(table.readings.size() == 2);
  CHECK(table.readings[0].reading.mixture == "acetone : white spirit 1:4");
  CHECK(table.readings[1].reading.mixture == "acetone 100");
}

TEST_CASE("signs of the job's own stand for grades, of each side what is said of it", "[table]") {
  GradeSigns signs;
  signs.removal = {{"++", "fully removed"}, {"-", "no effect"}, {"(+)", "patchy"}};
  signs.original = {{"-", "nothing seen"}};
  const ReadingTable table = readings_from_table(
      "mixture;removal;original\nacetone 100;++;-\nacetone 90, isooctane 10;-;-\nacetone 80, isooctane 20;(+);-\n"
      "acetone 70, isooctane 30;+;-\nacetone 60, isooctane 40;-;++\n",
      "bench.csv", signs);
  REQUIRE(table.readings.size() == 3);
  CHECK(table.readings[0].reading.removal == RemovalReading::fully);
  CHECK(table.readings[0].reading.original == OriginalReading::nothing_seen);
  CHECK(table.readings[1].reading.removal == RemovalReading::no_effect);
  CHECK(table.readings[2].reading.removal == RemovalReading::partly);
  CHECK(table.readings[2].reading.signs == "patchy");
  REQUIRE(table.refused.size() == 2);  // "+" stands for nothing, and "++" for nothing of the original
  CHECK(table.refused[0].where.line == 5);
  CHECK(table.refused[0].remedy.find("grades:") != std::string::npos);
  CHECK(table.refused[1].where.line == 6);
  // Without the job's word for it "-" says nothing.
  CHECK_FALSE(readings_from_table("mixture;removal;original\nacetone 100;none;-\n", "t").readings[0].reading.original);
}

TEST_CASE("a line that is neither UTF-8 nor Windows-1252 is named, the others come in", "[table]") {
  const ReadingTable table = readings_from_table(
      table_text("mixture;removal;who\nacetone 100;none;M\xFCller\nacetone 90, isooctane 10;none;\x81\n"
                 "isooctane 100;none;\"two\nlines\"\n",
                 "bench.csv"),
      "bench.csv");
  REQUIRE(table.readings.size() == 2);
  CHECK(table.readings[0].reading.who == "M\xC3\xBCller");
  REQUIRE(table.refused.size() == 1);
  CHECK(table.refused[0].where.line == 3);
}

TEST_CASE("a second column of remarks goes into the remark", "[table]") {
  const ReadingTable table =
      readings_from_table("mixture,removal,remark,Notes\nacetone 100,none,slow,smelly\n", "bench.csv");
  REQUIRE(table.readings.size() == 1);
  CHECK(table.readings[0].reading.remark == "slow; Notes: smelly");
}
