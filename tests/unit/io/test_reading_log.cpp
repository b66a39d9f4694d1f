#include "gentlest/base/diagnostic.hpp"
#include "io/reading_log.hpp"
#include "io/reading_table.hpp"
#include "scratch.hpp"

#include <catch2/catch.hpp>

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <ctime>
#include <filesystem>
#include <set>

using namespace gentlest;
using gentlest::test::get;
using gentlest::test::put;
using gentlest::test::ScratchFolder;
namespace fs = std::filesystem;

namespace {

Reading simple(std::string who) {
  Reading reading;
  reading.who = std::move(who);
  reading.mixture = "isooctane 70, ethanol 96 % 30";
  reading.removal = RemovalReading::partly;
  reading.original = OriginalReading::nothing_seen;
  return reading;
}

Reading full() {
  Reading reading = simple("A.B.");
  reading.test = 4;
  reading.date = "2026-03-14";
  reading.layer = "varnish";
  reading.passage = "red glaze, \"lower\" left";
  reading.site = Site{{12.5}, {0}};
  reading.at_edge = true;
  reading.swab = "white cotton";
  reading.rolls = 0;
  reading.seconds = 7.25;
  reading.removal = RemovalReading::fully;
  reading.original = OriginalReading::colour_on_swab;
  reading.colour = SwabColour::not_known;
  reading.clearing = "isooctane, 3 swabs";
  reading.after_drying = "slight blanching";
  reading.confidence = ReadingConfidence::low;
  reading.remark = "line one\nline two\ttab \\ \u00e9";
  return reading;
}

// Nothing of what a finished append wrote may be missing.
void check_holds(const std::string& path, int finished) {
  const ReadingLog log = read_log(path);
  std::set<int> tests;
  for (const Reading& line : log.lines) tests.insert(line.test);
  for (int test = 1; test <= finished; ++test) REQUIRE(tests.count(test) == 1);
}

}  // namespace

TEST_CASE("a reading comes back from the log as it was written") {
  const ScratchFolder folder;
  append_readings(folder.file("tests.log"), {full()});
  Reading correction = full();
  correction.correction = "the colour was varnish";
  correction.colour = SwabColour::varnish;
  append_readings(folder.file("tests.log"), {correction});
  const ReadingLog log = read_log(folder.file("tests.log"));
  CHECK(log.faults.empty());
  REQUIRE(log.lines.size() == 2);
  CHECK(log.lines[0] == full());
  CHECK(log.lines[1] == correction);
  // One line a reading, and readable without us.
  const std::string text = get(folder.file("tests.log"));
  CHECK(std::count(text.begin(), text.end(), '\n') == 3);
  CHECK(text.rfind("{\"gentlest_log\":1}\n{\"test\":4,\"date\":\"2026-03-14\"", 0) == 0);
}

TEST_CASE("a missing log is empty, tests are numbered on, numbers are never given twice") {
  const ScratchFolder folder;
  CHECK(read_log(folder.file("tests.log")).lines.empty());
  CHECK_FALSE(fs::exists(folder.file("tests.log")));
  CHECK(append_readings(folder.file("tests.log"), {simple("a"), simple("b")}).back().test == 2);
  CHECK(append_readings(folder.file("tests.log"), {full()}).back().test == 4);
  CHECK(append_readings(folder.file("tests.log"), {simple("c")}).back().test == 5);
  const std::string before = get(folder.file("tests.log"));
  CHECK_THROWS_AS(append_readings(folder.file("tests.log"), {full()}), InputError);
  Reading correction = simple("d");
  correction.test = 9;
  correction.correction = "of nothing";
  CHECK_THROWS_AS(append_readings(folder.file("tests.log"), {correction}), InputError);
  CHECK_THROWS_AS(append_readings(folder.file("tests.log"), {Reading{}}), InputError);
  CHECK(get(folder.file("tests.log")) == before);
  // The number of a line that cannot be used is not given out again.
  put(folder.file("tests.log"), before + "{\"test\":8,\"mixture\":\"acetone 100\",\"removal\":\"somewhat\"}\n");
  CHECK(append_readings(folder.file("tests.log"), {simple("e")}).back().test == 9);
}

TEST_CASE("a log cut at any byte keeps its whole lines, and the next reading is not harmed") {
  const ScratchFolder folder;
  append_readings(folder.file("whole"), {simple("a")});
  append_readings(folder.file("whole"), {simple("b")});
  const std::string whole = get(folder.file("whole"));
  const std::string path = folder.file("tests.log");
  for (std::size_t length = 0; length <= whole.size(); ++length) {
    INFO("cut after " << length << " bytes");
    const std::string cut = whole.substr(0, length);
    put(path, cut);
    const auto lines = std::count(cut.begin(), cut.end(), '\n');
    const bool only_break_missing = length + 1 == whole.size() || (length < whole.size() && whole[length] == '\n');
    const long kept = std::max(0L, lines - 1) + (only_break_missing && lines > 0 ? 1 : 0);
    const ReadingLog log = read_log(path);
    REQUIRE(static_cast<long>(log.lines.size()) == kept);
    const bool is_clean = cut.empty() || cut.back() == '\n' || only_break_missing || lines == 0;
    REQUIRE(log.faults.empty() == is_clean);
    const Reading added = append_readings(path, {simple("c")}).front();
    REQUIRE(get(path).rfind(cut, 0) == 0);
    const ReadingLog after = read_log(path);
    REQUIRE(static_cast<long>(after.lines.size()) == kept + 1);
    REQUIRE(after.lines.back() == added);
  }
}

TEST_CASE("a log of another version is refused and left untouched") {
  const ScratchFolder folder;
  for (const char* text : {"{\"gentlest_log\":2}\n{\"test\":1}\n", "{\"gentlest_log\":1,\"more\":2}\n", "test,date\n",
                           "{\"gentlest_log\":10}", "\x7f"}) {
    INFO(text);
    put(folder.file("tests.log"), text);
    CHECK_THROWS_AS(read_log(folder.file("tests.log")), InputError);
    CHECK_THROWS_AS(append_readings(folder.file("tests.log"), {simple("a")}), InputError);
    CHECK(get(folder.file("tests.log")) == text);
  }
}

TEST_CASE("lines that make no sense are told with their place and do not hide the others") {
  const ScratchFolder folder;
  const std::string good = R"(","mixture":"acetone 100","original":"nothing seen"})";
  put(folder.file("tests.log"),
      "{\"gentlest_log\":1}\n"
      "{\"test\":1,\"who\":\"a" +
          good + "\n" +
          "garbage\n[1,2]\n\n"
          "{\"test\":1,\"who\":\"twice" +
          good + "\n" + "{\"test\":\"2\",\"who\":\"type" + good + "\n" +
          "{\"test\":3,\"pressure\":\"firm\",\"who\":\"key" + good + "\n" +
          "{\"test\":7,\"correction\":\"x\",\"who\":\"early" + good + "\n" + "{\"who\":\"no number" + good +
          "\n\xff\xfe\n{\"test\":4");
  const ReadingLog log = read_log(folder.file("tests.log"));
  REQUIRE(log.lines.size() == 2);
  CHECK(log.lines[0].who == "a");
  CHECK(log.lines[1].who == "key");
  std::vector<int> places;
  for (const Diagnostic& fault : log.faults) {
    CHECK(fault.where.file == folder.file("tests.log"));
    places.push_back(fault.where.line);
  }
  CHECK(places == std::vector<int>{3, 4, 6, 7, 8, 9, 10, 11, 12});
}

TEST_CASE("killed at any instant, a writer loses at most the reading being written") {
  const ScratchFolder folder;
  const std::string path = folder.file("tests.log");
  int finished = 0;
  std::uint64_t random = 12345;
  for (int round = 0; round < 500; ++round) {
    int pipe_ends[2];
    REQUIRE(::pipe(pipe_ends) == 0);
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
      ::close(pipe_ends[0]);
      for (int i = 0; i < 1000; ++i) {
        append_readings(path, {simple("child")});
        if (::write(pipe_ends[1], "x", 1) != 1) break;
      }
      ::_exit(0);
    }
    ::close(pipe_ends[1]);
    random = random * 6364136223846793005u + 1442695040888963407u;
    const timespec pause{0, static_cast<long>((random >> 33) % 3'000'000)};  // below 3 ms
    ::nanosleep(&pause, nullptr);
    ::kill(child, SIGKILL);
    int status = 0;
    ::waitpid(child, &status, 0);
    char done = 0;
    while (::read(pipe_ends[0], &done, 1) == 1) ++finished;
    ::close(pipe_ends[0]);
    // What the child reported as done is there; a reading may be on disk that it had no time to report.
    const ReadingLog log = read_log(path);
    REQUIRE(static_cast<int>(log.lines.size()) >= finished);
    finished = static_cast<int>(log.lines.size());
    if (round % 50 == 49) check_holds(path, finished);
    if (log.lines.size() > 300) {  // keeps the test fast: start a new log
      fs::remove(path);
      finished = 0;
    }
  }
}

TEST_CASE("two writers at once lose nothing and never share a number") {
  const ScratchFolder folder;
  const std::string path = folder.file("tests.log");
  std::vector<pid_t> children;
  for (int writer = 0; writer < 3; ++writer) {
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
      for (int i = 0; i < 60; ++i) append_readings(path, {simple("writer " + std::to_string(writer))});
      ::_exit(0);
    }
    children.push_back(child);
  }
  for (const pid_t child : children) {
    int status = 0;
    ::waitpid(child, &status, 0);
    CHECK(status == 0);
  }
  const ReadingLog log = read_log(path);
  CHECK(log.faults.empty());
  CHECK(log.lines.size() == 180);
  CHECK(current_readings(log.lines).size() == 180);
}

TEST_CASE("files that cannot be a log are refused with the reason") {
  const ScratchFolder folder;
  CHECK_THROWS_AS(append_readings(folder.file("no/such/folder"), {simple("a")}), InputError);
  CHECK_THROWS_AS(read_log(fs::path(folder.file("tests.log")).parent_path().string()), InputError);
  Reading bad = simple("a\xff");
  CHECK_THROWS_AS(append_readings(folder.file("tests.log"), {bad}), InputError);
}

TEST_CASE("the table of a bench sheet becomes readings") {
  const std::string text =
      "\xEF\xBB\xBFtest,mixture,removal,original,x_cm,y_cm,at_edge,remark\r\n"
      "1,\"isooctane 70, ethanol 30\",Partly removed,nothing seen,12.5,3,no,\"says \"\"tacky\"\"\r\nsecond line\"\r\n"
      "\r\n"
      ",acetone 100,,softened,,,yes,\r\n";
  std::vector<Reading> readings;
  for (const TypedReading& typed : readings_from_table(text, "sheet.csv").readings) readings.push_back(typed.reading);
  REQUIRE(readings.size() == 2);
  CHECK(readings[0].remark == "says \"tacky\"\r\nsecond line");
  CHECK(readings[0].mixture == "isooctane 70, ethanol 30");
  CHECK(readings[0].site == Site{{12.5}, {3}});
  CHECK(readings[1].test == 0);
  CHECK(readings[1].at_edge);
  CHECK_FALSE(readings[1].removal.has_value());
  CHECK(readings[1].original == OriginalReading::softened);
}

TEST_CASE("every fault of a table is told with its place, and refuses its row") {
  const std::string text =
      "mixture,removal,seconds\n"
      "acetone 100,a little,5\n"
      "acetone 100,no effect,\"5,5,5\"\n"
      "acetone 100,no effect,5,6\n"
      "acetone 100,,\n"
      "acetone 100,no effect,5\n";
  const ReadingTable table = readings_from_table(text, "sheet.csv");
  REQUIRE(table.refused.size() == 4);
  CHECK(table.refused[0].where == Location{"sheet.csv", 2, 13});
  CHECK(table.refused[1].where == Location{"sheet.csv", 3, 23});
  CHECK(table.refused[2].where == Location{"sheet.csv", 4, 25});
  CHECK(table.refused[3].where == Location{"sheet.csv", 5, 0});
  REQUIRE(table.readings.size() == 1);
  CHECK(table.readings[0].where.line == 6);
  CHECK_THROWS_AS(readings_from_table("", "sheet.csv"), InputError);
  CHECK_THROWS_AS(readings_from_table("mixture,mixture\n", "sheet.csv"), InputError);
  CHECK_THROWS_AS(readings_from_table("mixtur,removal\nx,no effect\n", "sheet.csv"), InputError);
  CHECK_THROWS_AS(readings_from_table("mixture,removal\n\"open,no effect\n", "sheet.csv"), InputError);
}

TEST_CASE("readings added together count all or none, wherever the addition was cut off") {
  const ScratchFolder folder;
  const std::string path = folder.file("tests.log");
  append_readings(path, {simple("before")});
  const std::string before = get(path);
  append_readings(path, {simple("a"), simple("b"), simple("c")});
  const std::string whole = get(path);
  for (std::size_t length = before.size(); length <= whole.size(); ++length) {
    INFO("cut after " << length << " bytes");
    put(path, whole.substr(0, length));
    const bool is_complete = length + 1 >= whole.size();  // the last line break is not needed
    const ReadingLog log = read_log(path);
    REQUIRE(log.lines.size() == (is_complete ? 4 : 1));
    REQUIRE(log.faults.empty() == (is_complete || length == before.size()));
    // The next reading is not taken for a part of what was cut off, and no number is given twice.
    append_readings(path, {simple("later")});
    const ReadingLog after = read_log(path);
    REQUIRE(after.lines.size() == log.lines.size() + 1);
    REQUIRE(after.lines.back().test > log.highest_test);
  }
}

TEST_CASE("a bad line inside an addition leaves the others of it in") {
  const ScratchFolder folder;
  const std::string path = folder.file("tests.log");
  append_readings(path, {simple("a"), simple("b"), simple("c")});
  for (const char* bad : {"garbage", "{\"test\":2,\"removal\":\"somewhat\",\"import\":\"2 of 3\"}"}) {
    std::string text = get(path);
    const std::size_t from = text.find("{\"test\":2");
    text.replace(from, text.find('\n', from) - from, bad);
    put(folder.file("bad"), text);
    const ReadingLog log = read_log(folder.file("bad"));
    REQUIRE(log.lines.size() == 2);
    CHECK(log.lines[1].who == "c");
    REQUIRE(log.faults.size() == 1);
    CHECK(log.faults[0].where.line == 3);
  }
}

TEST_CASE("killed at any instant, an import is in the log whole or not at all") {
  const ScratchFolder folder;
  const std::string path = folder.file("tests.log");
  std::vector<Reading> table(3000, simple("child"));
  std::uint64_t random = 54321;
  std::size_t some = 0;
  for (int round = 0; round < 40; ++round) {
    fs::remove(path);
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
      append_readings(path, table);
      ::_exit(0);
    }
    random = random * 6364136223846793005u + 1442695040888963407u;
    const timespec pause{0, static_cast<long>((random >> 33) % 60'000'000)};  // below 60 ms
    ::nanosleep(&pause, nullptr);
    ::kill(child, SIGKILL);
    int status = 0;
    ::waitpid(child, &status, 0);
    const std::size_t count = read_log(path).lines.size();
    REQUIRE((count == 0 || count == table.size()));
    some += count > 0 ? 1 : 0;
  }
  INFO(some << " of 40 were whole");
}

TEST_CASE("an addition for which the disk has no room is taken back") {
  const ScratchFolder folder;
  const std::string path = folder.file("tests.log");
  append_readings(path, {simple("before")});
  const std::string before = get(path);
  const pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    // A file may grow a little and no further: the system takes a part of the addition, then none.
    std::signal(SIGXFSZ, SIG_IGN);
    const rlimit most{before.size() + 700, before.size() + 700};
    ::setrlimit(RLIMIT_FSIZE, &most);
    try {
      append_readings(path, std::vector<Reading>(20, simple("child")));
    } catch (const InputError& error) {
      ::_exit(error.faults().front().remedy.find("nothing was added") == 0 ? 7 : 8);
    }
    ::_exit(0);
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  CHECK(WEXITSTATUS(status) == 7);
  CHECK(get(path) == before);
}
