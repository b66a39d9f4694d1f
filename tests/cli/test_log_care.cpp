// The log of the tests under careless hands: repeats, corrections, mistyped names, other editors, lost answers.
#include "cli/program.hpp"

#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include <cerrno>
#include <streambuf>

namespace gentlest::test {

namespace {

const std::string mixture = "mixture=isooctane 70, acetone 30";

nlohmann::json tests_of(const std::string& log) {
  return nlohmann::json::parse(call({"readings", log, "--format", "json"}).out).at("readings");
}

// Takes nothing, and says why.
class Broken : public std::streambuf {
 public:
  explicit Broken(int reason) : reason_(reason) {}

 protected:
  int_type overflow(int_type) override {
    errno = reason_;
    return traits_type::eof();
  }

 private:
  int reason_;
};

Result call_into(std::streambuf& buffer, const std::vector<std::string>& args, const Surroundings& surroundings = {}) {
  std::ostream out(&buffer);
  std::istringstream in;
  std::ostringstream err;
  const int code = run(args, in, out, err, surroundings);
  return {code, {}, err.str()};
}

}  // namespace

TEST_CASE("a table that is taken in again counts once, and what is new in it is added") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  const std::string table = folder.file("bench.csv");
  const std::string first =
      "mixture,removal,seconds\n\"isooctane 70, acetone 30\",no effect,20\nacetone 100,fully removed,5\n";
  write_file(table, first);
  REQUIRE(call({"import", "demo", log, table}).code == 0);
  const std::string before = read_file(log);
  const Result again = call({"import", "demo", log, table});
  CHECK(again.code == 0);
  CHECK(holds(again.out, "nothing new was written"));
  CHECK(holds(again.out, "line 2 says what test 1 says"));
  CHECK(holds(again.out, "line 3 says what test 2 says"));
  CHECK(read_file(log) == before);
  // A first reading that was corrected since is known too.
  REQUIRE(call({"record", "demo", log, "test=1", "seconds=25", "correction=clock"}).code == 0);
  write_file(table, first + "acetone 100,fully removed,6\nacetone 100,fully removed,6\n");
  const Result grown = call({"import", "demo", log, table});
  CHECK(holds(grown.out, "test 3 written to"));
  CHECK(holds(grown.out, "line 5 says what test 3 says"));
  CHECK(tests_of(log).size() == 3);
  CHECK(call({"import", "demo", log, table, "--again"}).code == 0);
  CHECK(tests_of(log).size() == 7);
}

TEST_CASE("rows with numbers and corrections are known again too") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  const std::string table = folder.file("bench.csv");
  write_file(
      table,
      "test,mixture,removal,passage,correction\n4,acetone 100,no effect,white cloth,\n4,,partly removed,,seen dry\n");
  REQUIRE(call({"import", "demo", log, table}).code == 0);
  REQUIRE(tests_of(log).size() == 1);
  CHECK(tests_of(log)[0].at("removal") == "partly removed");
  CHECK(tests_of(log)[0].at("passage") == "white cloth");
  const std::string before = read_file(log);
  CHECK(call({"import", "demo", log, table}).code == 0);
  CHECK(read_file(log) == before);
  write_file(table, "mixture,removal,passage\nacetone 100,no effect,white cloht\n");
  CHECK(
      holds(call({"import", "demo", log, table}).err, "bench.csv:2: error: the job knows no passage \"white cloht\""));
  // The same number with another reading stays a fault, with its row.
  write_file(table, "test,mixture,removal\n4,acetone 100,fully removed\n");
  const Result other = call({"import", "demo", log, table});
  CHECK(other.code == 3);
  CHECK(holds(other.err, "bench.csv:2: error: test 4 stands in the log already"));
}

TEST_CASE("a correction keeps what it does not name, and empties what it names without content") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  REQUIRE(
      call({"record", "demo", log, mixture, "date=2026-03-14", "who=A.B.", "x_cm=3.5", "y_cm=40", "passage=white cloth",
            "removal=no effect", "original=nothing seen", "confidence=high", "remark=quick look"})
          .code == 0);
  REQUIRE(call({"record", "demo", log, "test=1", "removal=partly removed", "correction=seen dry"}).code == 0);
  const auto line = nlohmann::json::parse(lines_of(read_file(log)).back());
  CHECK(line == nlohmann::json::parse(R"({"test":1,"date":"2026-03-14","who":"A.B.",
    "mixture":"isooctane 70, acetone 30","passage":"white cloth","x_cm":3.5,"y_cm":40.0,"removal":"partly removed",
    "original":"nothing seen","confidence":"high","remark":"quick look","correction":"seen dry"})"));
  CHECK(holds(call({"sheet", "demo", "--log", log}).out, "on white cloth"));
  REQUIRE(
      call({"record", "demo", log, "test=1", "remark=", "confidence=", "x_cm=", "y_cm=", "correction=tidied"}).code ==
      0);
  const auto emptied = nlohmann::json::parse(lines_of(read_file(log)).back());
  CHECK_FALSE(emptied.contains("remark"));
  CHECK_FALSE(emptied.contains("x_cm"));
  CHECK(emptied.at("confidence") == "medium");
  CHECK(emptied.at("who") == "A.B.");
  // Nothing may be emptied that a reading needs.
  const Result bare = call({"record", "demo", log, "test=1", "mixture=", "correction=x"});
  CHECK(bare.code == 2);
  CHECK(holds(bare.err, "the mixture is missing"));
}

TEST_CASE("a withdrawal keeps what was read, and is taken back by name only") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  REQUIRE(call({"record", "demo", log, mixture, "x_cm=3", "y_cm=4", "removal=no effect"}).code == 0);
  REQUIRE(call({"record", "demo", log, "test=1", "correction=wrong bottle", "withdrawn=yes"}).code == 0);
  CHECK(holds(lines_of(read_file(log)).back(), "\"x_cm\":3"));
  CHECK(tests_of(log).empty());
  const Result still = call({"record", "demo", log, "test=1", "seconds=9", "correction=clock"});
  CHECK(holds(still.out, "test 1 stays withdrawn"));
  CHECK(tests_of(log).empty());
  REQUIRE(call({"record", "demo", log, "test=1", "withdrawn=no", "correction=right bottle after all"}).code == 0);
  REQUIRE(tests_of(log).size() == 1);
  CHECK(tests_of(log)[0].at("seconds") == 9);
}

TEST_CASE("a reading is in the log though its answer is lost, and that is said") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  const std::vector<std::string> record = {"record", "demo", log, mixture, "removal=no effect"};
  Broken full(ENOSPC);
  const Result lost = call_into(full, record);
  CHECK(lost.code == 3);
  CHECK(holds(lost.err, "test 1 is in the log " + log + "; only the answer could not be shown"));
  CHECK(tests_of(log).size() == 1);
  // What can be known beforehand is refused before anything is written.
  std::vector<std::string> nowhere = record;
  nowhere.insert(nowhere.end(), {"--output", "/nowhere/answer.txt"});
  CHECK(call(nowhere).code == 3);
  CHECK(tests_of(log).size() == 1);
  Surroundings pressed;
  pressed.interrupted = [] { return true; };
  const Result interrupted = call(record, {}, pressed);
  CHECK(interrupted.code == 130);
  CHECK(holds(interrupted.err, "interrupted; test 2 is in the log"));
  CHECK(tests_of(log).size() == 2);
  const std::string job = folder.file("new.yaml");
  CHECK(holds(call_into(full, {"new", job}).err, job + " is written"));
}

TEST_CASE("a reader that has seen enough is no fault") {
  Broken closed(EPIPE);
  const Result result = call_into(closed, {"list", "solvents"});
  CHECK(result.code == 0);
  CHECK(result.err.empty());
  CHECK(call_into(closed, {"ladder", "demo", "--full", "--risk-limit", "0.01"}).code == 1);
}

TEST_CASE("a log with a byte order mark and Windows line breaks is read and goes on so") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  REQUIRE(call({"record", "demo", log, mixture, "removal=no effect"}).code == 0);
  std::string saved = "\xEF\xBB\xBF";
  for (const std::string& line : lines_of(read_file(log))) saved += line + "\r\n";
  write_file(log, saved);
  CHECK(tests_of(log).size() == 1);
  for (const char* command : {"next", "report"}) {
    const Result result = call({command, "demo", log});
    CHECK(result.code == 0);
    CHECK(result.err.empty());
  }
  REQUIRE(call({"record", "demo", log, mixture, "removal=fully removed"}).code == 0);
  const std::string now = read_file(log);
  CHECK(now.rfind(saved, 0) == 0);
  CHECK(holds(now.substr(saved.size()), "\"test\":2"));
  CHECK(now.substr(now.size() - 2) == "\r\n");
  CHECK(now.find("gentlest_log", 10) == std::string::npos);
  CHECK(tests_of(log).size() == 2);
}

TEST_CASE("a byte that is not UTF-8: the log is read all the same by every command, files of hand are refused") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  REQUIRE(call({"record", "demo", log, mixture, "removal=no effect", "who=Andre"}).code == 0);
  write_file(log, replaced(read_file(log), "Andre", "Andr\xE9"));
  for (const std::vector<std::string>& args : {std::vector<std::string>{"readings", log},
                                               {"next", "demo", log},
                                               {"report", "demo", log},
                                               {"sheet", "demo", "--log", log},
                                               {"record", "demo", log, mixture, "removal=no effect"}}) {
    INFO(args.front());
    const Result result = call(args);
    CHECK(result.code == 0);
    CHECK(holds(result.err, "easel.log:2:22: error: this byte is not UTF-8"));
    CHECK_FALSE(holds(result.err, "\xE9"));
  }
  CHECK(tests_of(log).size() == 2);
  CHECK(tests_of(log)[0].at("who") == "Andr\xEF\xBF\xBD");
  const std::string job = folder.file("easel.yaml");
  write_file(job, replaced(demo_job_text(), "title: \"Pears",
                           "title: \"P\xEA"
                           "ars"));
  const std::string table = folder.file("bench.csv");
  write_file(table, "mixture,removal,who\nacetone 100,no effect,M\xFCller\n");
  const Result bad_job = call({"check", job});
  CHECK(bad_job.code == 3);
  CHECK(holds(bad_job.out, "easel.yaml:5:12: error: this is not UTF-8 text: byte EA"));
  CHECK(call({"ladder", job, "--full"}).code == 3);
  CHECK(holds(call({"ladder", "-", "--full"}, read_file(job)).err, "standard input:5:12: error: this is not UTF-8"));
  CHECK(call({"record", "demo", log, mixture, "removal=no effect", "who=\xFC"}).code == 2);
  CHECK(tests_of(log).size() == 2);
  // A table may be in the encoding of old spreadsheets.
  const Result old_table = call({"import", "demo", log, table});
  CHECK(old_table.code == 0);
  CHECK(holds(old_table.out, "1 line read as Windows-1252"));
  CHECK(tests_of(log).size() == 3);
  CHECK(tests_of(log)[2].at("who") == "M\xC3\xBCller");
}

TEST_CASE("a mistyped log is not an empty one") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  REQUIRE(call({"record", "demo", log, mixture, "removal=no effect"}).code == 0);
  const std::string typed = folder.file("easle.log");
  for (const std::vector<std::string>& args : {std::vector<std::string>{"next", "demo", typed},
                                               {"readings", typed},
                                               {"report", "demo", typed},
                                               {"sheet", "demo", "--log", typed},
                                               {"record", "demo", typed, mixture, "removal=no effect"}}) {
    INFO(args.front());
    const Result result = call(args);
    CHECK(result.code == 3);
    CHECK(holds(result.err, "easle.log: error: there is no log of this name"));
    CHECK(holds(result.err, "did you mean \"" + log + "\"?"));
  }
  CHECK(folder.count() == 1);
  CHECK(call({"next", "demo", typed, "--new-log"}).code == 0);
  // Far from any, or another painting's number: the place to begin, and that is said.
  for (const char* name : {"jug.log", "easel2.log"}) {
    const Result first = call({"next", "demo", folder.file(name)});
    CHECK(first.code == 0);
    CHECK(holds(first.err, "there is no log " + folder.file(name) + " yet"));
  }
  CHECK(holds(call({"record", "demo", folder.file("easel2.log"), mixture, "removal=no effect"}).out, "the new log"));
  CHECK_FALSE(holds(call({"next", "demo", log}).err, "yet"));
  CHECK(holds(call({"ladder", folder.file("easel2.lgo"), "--full"}).err,
              "did you mean \"" + folder.file("easel2.log") + "\"?"));
}

TEST_CASE("the test that was hardly to be expected is named by its number in the log") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  for (int i = 0; i < 2; ++i) REQUIRE(call({"record", "demo", log, mixture, "removal=no effect"}).code == 0);
  REQUIRE(call({"record", "demo", log, "test=1", "correction=wrong bottle", "withdrawn=yes"}).code == 0);
  // The mildest liquid takes all of it off, and a strong one nothing.
  REQUIRE(call({"record", "demo", log, "mixture=isooctane 100", "removal=fully removed", "confidence=high"}).code == 0);
  const std::string text = unwrapped(call({"next", "demo", log, "--full"}).out);
  INFO(text);
  CHECK(holds(text, "what test 3 says of it was hardly to be expected"));
  CHECK_FALSE(holds(text, "repeat"));  // whatever the surprise, nobody is told to repeat what may have harmed
  CHECK(holds(unwrapped(call({"report", "demo", log, "--full"}).out),
              "what test 3 says of it was hardly to be expected"));
}

TEST_CASE("what is suspected of a passage is not said of its whole layer, and in words") {
  const Folder folder;
  const std::string job = folder.file("easel.yaml");
  write_file(job, replaced(demo_job_text(), "  - {name: white cloth",
                           "  - {name: red glaze, of: oil paint, suspected: [resinous, water_sensitive]}\n"
                           "  - {name: white cloth"));
  const Result ladder = call({"ladder", job, "--full"});
  INFO(ladder.out + ladder.err);
  const std::string text = unwrapped(ladder.out);
  CHECK(holds(text, "Warning for red glaze: resinous, sensitive to water"));
  CHECK_FALSE(holds(text, "Passage red glaze: judged like its layer"));
  CHECK(holds(text, "\"red glaze\": may hold resin"));
  CHECK(holds(text, "No margin is claimed, because of red glaze (resinous)"));
  CHECK_FALSE(holds(text, "Warning for oil paint"));
  CHECK_FALSE(holds(text, "water_sensitive"));
  const std::string sheet = call({"sheet", job}).out;
  CHECK(holds(sheet, "warning: resinous, sensitive to water"));
  const auto json = nlohmann::json::parse(call({"ladder", job, "--full", "--format", "json"}).out);
  for (const auto& layer : json.at("layers")) {
    CHECK(layer.at("warnings").empty() == (layer.at("name") != "red glaze"));
    CHECK(layer.at("passage_warnings").empty());
    if (layer.at("name") == "red glaze") CHECK(layer.at("material") == "oil_resin_glaze");
  }
}

TEST_CASE("no text of a file steers the terminal") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  const std::string job = folder.file("easel.yaml");
  write_file(job, replaced(demo_job_text(), "title: \"", "title: \"\\e]0;owned\\a"));
  write_file(folder.file("raw.yaml"), replaced(demo_job_text(), "role: remove",
                                               "role: \"\xC2\x9B"
                                               "31mx\""));
  REQUIRE(call({"record", "demo", log, mixture, "removal=no effect",
                "remark=\033[2J\xC2\x9B"
                "1m",
                "who=\x07"})
              .code == 0);
  write_file(log, read_file(log) + "\033[31mgarbage\n");
  for (const std::vector<std::string>& args : {std::vector<std::string>{"readings", log},
                                               {"readings", log, "--format", "csv"},
                                               {"readings", log, "--format", "json"},
                                               {"report", "demo", log, "--format", "csv"},
                                               {"next", "demo", log},
                                               {"check", job},
                                               {"ladder", job, "--full"},
                                               {"check", folder.file("raw.yaml")},
                                               {"show", "\033[31m"},
                                               {"ladder", "/\033[31m.yaml", "--full"}}) {
    INFO(args.front() << " " << args.back());
    const Result result = call(args);
    for (const char* raw : {"\033", "\x07", "\xC2\x9B"}) {
      CHECK_FALSE(holds(result.out, raw));
      CHECK_FALSE(holds(result.err, raw));
    }
  }
  CHECK(holds(call({"readings", log, "--format", "csv"}).out, "\\x1b[2J\\x9b1m"));
  CHECK(holds(call({"readings", log}).err, "\\x1b[31mgarbage"));
  CHECK(tests_of(log)[0].at("remark") ==
        "\033[2J\xC2\x9B"
        "1m");
}

TEST_CASE("a vial that cannot be filled is found where it stands, by check and by every command") {
  const Folder folder;
  const std::string job = folder.file("easel.yaml");
  write_file(job, replaced(demo_job_text(), "limits:\n", "limits:\n  measure_mL: 9\n"));
  const std::string place = "easel.yaml:60:15: error: a vial of 10 mL holds 1 steps of 9 mL";
  CHECK(holds(call({"check", job}).out, place));
  for (const char* command : {"check", "ladder", "sheet", "labels", "chart", "compare"}) {
    const Result result = call({command, job});
    CHECK(result.code == 3);
    CHECK(holds(result.out + result.err, place));
  }
  // On the command line it is a matter of usage.
  const Result typed = call({"ladder", "demo", "--full", "--measure", "9"});
  CHECK(typed.code == 2);
  CHECK(holds(typed.err, "command line: error: a vial of 10 mL"));
}

TEST_CASE("the option --version answers as version does") {
  CHECK(call({"--version"}).out == call({"version"}).out);
  CHECK(call({"--version", "--format", "json"}).out == call({"version", "--format", "json"}).out);
}

}  // namespace gentlest::test
