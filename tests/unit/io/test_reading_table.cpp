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
  CHECK(complaint_about("mixture,removal,\nacetone 100,none,softened\n").find("no heading") != std::string::npos);
  CHECK(complaint_about("Firnis;varnish\nnone;none\n").find("twice") != std::string::npos);
  CHECK(complaint_about("a;b\n1;2\n").find("no column is named") != std::string::npos);
}

TEST_CASE("what a cell does not say clearly is told with its place", "[table]") {
  const std::string complaint =
      complaint_about("mixture;removal;original;seconds\nacetone 100;a bit;ok;20\nacetone 100;none;slightly;2 h\n");
  INFO(complaint);
  for (const char* piece : {"bench.csv:2:13", "\"a bit\" is not understood under \"removal\"", "bench.csv:3:18",
                            "\"2 h\" is not understood"})
    CHECK(complaint.find(piece) != std::string::npos);
}
