// What no command may write over: the log, the job, the table, the catalogue that it works with, under whatever name.
#include "program.hpp"

#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <filesystem>

namespace gentlest::test {

namespace {

namespace fs = std::filesystem;

const std::string reading = "mixture=isooctane 70, acetone 30";

// A folder with a job, a log of one test and a table.
class Bench {
 public:
  Bench() {
    write_file(job(), demo_job_text());
    REQUIRE(call({"record", job(), log(), reading, "removal=no effect"}).code == 0);
    write_file(table(), "mixture,removal\n\"isooctane 60, acetone 40\",no effect\n");
    write_file(own_tests(), "solvent,dissolves\nisooctane,no\n");
  }
  std::string job() const { return folder.file("easel.yaml"); }
  std::string log() const { return folder.file("easel.log"); }
  std::string table() const { return folder.file("bench.csv"); }
  std::string own_tests() const { return folder.file("resin.csv"); }
  Folder folder;
};

// The file stands as it stood, and the person is told which it is.
void check_refused(const std::vector<std::string>& args, const std::string& file) {
  std::string line;
  for (const std::string& arg : args) line += " " + arg;
  INFO(line);
  const std::string before = read_file(file);
  const Result result = call(args);
  INFO(result.err);
  CHECK(result.code == 2);
  CHECK(result.out.empty());
  CHECK(holds(result.err, "choose another name"));
  CHECK(read_file(file) == before);
}

}  // namespace

TEST_CASE("no command writes over a file that it works with") {
  const Bench bench;
  const std::string job = bench.job();
  const std::string log = bench.log();
  const std::string table = bench.table();
  for (const std::vector<std::string>& args : {std::vector<std::string>{"sheet", job, "--log", log},
                                               {"record", job, log, reading, "removal=no effect"},
                                               {"import", job, log, table},
                                               {"readings", log},
                                               {"next", job, log},
                                               {"report", job, log},
                                               {"check", log}}) {
    std::vector<std::string> with_output = args;
    with_output.insert(with_output.end(), {"--output", log});
    check_refused(with_output, log);
  }
  for (const std::vector<std::string>& args : {std::vector<std::string>{"ladder", job, "--full"},
                                               {"compare", job, "--full"},
                                               {"mixture", job, "acetone 100"},
                                               {"vial", job, "--full", "acetone 100"},
                                               {"sheet", job},
                                               {"labels", job},
                                               {"chart", job},
                                               {"check", job},
                                               {"next", job, log},
                                               {"record", job, log, reading, "removal=no effect"}}) {
    std::vector<std::string> with_output = args;
    with_output.insert(with_output.end(), {"--output", job});
    check_refused(with_output, job);
  }
  check_refused({"import", job, log, table, "--output", table}, table);
  check_refused({"fit", bench.own_tests(), "--format", "csv", "--output", bench.own_tests()}, bench.own_tests());
}

TEST_CASE("a link, another spelling of the path and a second name are the same file") {
  const Bench bench;
  const std::string log = bench.log();
  const std::string link = bench.folder.file("link.html");
  const std::string second_name = bench.folder.file("second.html");
  fs::create_symlink(log, link);
  fs::create_hard_link(log, second_name);
  fs::create_directory(bench.folder.file("inner"));
  for (const std::string& name : {link, second_name, bench.folder.file("./easel.log"),
                                  bench.folder.file("inner/../easel.log"), fs::relative(log).string()})
    check_refused({"sheet", bench.job(), "--log", log, "--output", name}, log);
  CHECK(fs::is_symlink(link));
}

TEST_CASE("a log that is not there yet is not made to be overwritten") {
  const Folder folder;
  const std::string log = folder.file("new.log");
  check_refused({"record", "demo", log, reading, "removal=no effect", "--output", folder.file("./new.log")}, log);
  CHECK_FALSE(fs::exists(log));
  // A link that leads nowhere is known for the log only once the log is there.
  fs::create_symlink(log, folder.file("link"));
  const Result result = call({"record", "demo", log, reading, "removal=no effect", "--output", folder.file("link")});
  CHECK(result.code == 2);
  CHECK(holds(read_file(log), "\"test\":1"));
  CHECK(holds(result.err, "test 1 is in the log"));
}

TEST_CASE("logs and jobs that the command does not read are kept as well") {
  const Bench bench;
  check_refused({"ladder", "demo", "--full", "--output", bench.log()}, bench.log());
  check_refused({"show", "ethanol", "--output", bench.log()}, bench.log());
  check_refused({"new", bench.log(), "--force"}, bench.log());
  check_refused({"ladder", "demo", "--full", "--output", bench.job()}, bench.job());
  check_refused({"new", "-", "--output", bench.job()}, bench.job());
  check_refused({"new", bench.folder.file("a.yaml"), "--output", bench.folder.file("a.yaml")}, bench.job());
  CHECK_FALSE(fs::exists(bench.folder.file("a.yaml")));
  CHECK(call({"new", bench.job(), "--force"}).code == 0);
  // A report shows the job, and is a result all the same.
  const std::string report = bench.folder.file("report.html");
  for (int i = 0; i < 2; ++i) CHECK(call({"report", bench.job(), bench.log(), "--output", report}).code == 0);
}

TEST_CASE("a catalogue folder is not written into where a file of it stands") {
  const Folder folder;
  const std::string data = folder.file("solvents");
  fs::copy(std::string(GENTLEST_SOURCE_DIR) + "/solvents", data, fs::copy_options::recursive);
  const std::string alcohols = data + "/sources.yaml";
  for (const std::vector<std::string>& args : {std::vector<std::string>{"ladder", "demo", "--full", "--data", data},
                                               {"list", "sources", "--data", data},
                                               {"check", data}}) {
    std::vector<std::string> with_output = args;
    with_output.insert(with_output.end(), {"--output", alcohols});
    check_refused(with_output, alcohols);
  }
  check_refused({"new", alcohols, "--force", "--data", data}, alcohols);
}

TEST_CASE("a name that is no file may be a result's") {
  const Folder folder;
  const fs::path before = fs::current_path();
  fs::current_path(folder.file(""));
  for (int i = 0; i < 2; ++i) {
    CHECK(call({"show", "ethanol", "--output", "ethanol"}).code == 0);
    CHECK(call({"ladder", "demo", "--full", "--output", "demo"}).code == 0);
  }
  fs::current_path(before);
}

TEST_CASE("an ending that promises another kind of file is refused with what to do") {
  const Folder folder;
  const std::vector<std::pair<std::vector<std::string>, std::string>> calls = {
      {{"sheet", "demo", "--output", folder.file("sheet.pdf")}, "print it from there, as PDF too"},
      {{"labels", "demo", "--output", folder.file("labels.PDF")}, "labels.html"},
      {{"report", "demo", folder.file("x.log"), "--output", folder.file("report.docx")}, "report.html"},
      {{"chart", "demo", "--output", folder.file("chart.png")}, "chart.svg"},
      {{"ladder", "demo", "--full", "--output", folder.file("ladder.csv")}, "add --format csv"},
      {{"ladder", "demo", "--full", "--output", folder.file("ladder.pdf")}, "ladder.txt"},
      {{"ladder", "demo", "--full", "--format", "csv", "--output", folder.file("ladder.xlsx")}, "ladder.csv"}};
  for (const auto& [args, remedy] : calls) {
    INFO(args.front() << " " << args.back());
    const Result result = call(args);
    CHECK(result.code == 2);
    CHECK(holds(result.err, remedy));
  }
  CHECK(folder.count() == 0);
  CHECK(call({"sheet", "demo", "--output", folder.file("sheet.HTML")}).code == 0);
  CHECK(call({"ladder", "demo", "--full", "--format", "csv", "--output", folder.file("ladder.csv")}).code == 0);
}

}  // namespace gentlest::test
