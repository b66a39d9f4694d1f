// A limit means the same in a job and behind its option.
#include "program.hpp"

#include "gentlest/job/limits.hpp"
#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include <sstream>

using namespace gentlest;
using namespace gentlest::test;

namespace {

std::string text_of(double value) {
  std::ostringstream text;
  text << value;
  return text.str();
}

std::string job_with(const Limit& limit, double value) {
  return std::string(
             "gentlest_job: 1\nlayers:\n  - {name: varnish, role: remove, recorded: dammar_aged}\n"
             "  - {name: paint, role: keep, recorded: oil_paint_old}\nshelf: [isooctane, acetone]\nlimits: {") +
         limit.key + ": " + text_of(value) + "}\n";
}

// What both messages must hold.
std::string range_of(const Limit& limit) {
  if (limit.ends == Ends::belong) return text_of(limit.smallest) + " to " + text_of(limit.largest);
  return limit.ends == Ends::excluded ? "between 0 and 1" : "divide";
}

}  // namespace

TEST_CASE("job and command line refuse the same values of a limit, with the same range", "[limits]") {
  const Folder folder;
  const std::string job = folder.file("easel.yaml");
  int asked = 0;
  for (const Limit& limit : all_limits()) {
    if (!*limit.option) continue;
    const double beyond = is_whole(limit) ? 1 : limit.smallest / 2 + (limit.ends == Ends::excluded ? 0 : 1e-4);
    std::vector<double> outside = {limit.smallest - (is_whole(limit) ? 1 : limit.smallest / 2), limit.largest + beyond};
    if (limit.ends == Ends::divide_100) outside = {7, 30};
    for (const double value : outside) {
      ++asked;
      write_file(job, job_with(limit, value));
      const Result in_file = call({"check", job});
      const Result typed = call({"ladder", "demo", "--full", "--" + std::string(limit.option), text_of(value)});
      INFO(limit.key << " " << value << "\n" << in_file.out << typed.err);
      CHECK(in_file.code == 3);
      CHECK(typed.code == 2);
      CHECK(holds(in_file.out, range_of(limit)));
      CHECK(holds(typed.err, range_of(limit)));
      CHECK(holds(typed.err, "--" + std::string(limit.option)));
    }
  }
  CHECK(asked == 16);
}

TEST_CASE("check names faults in the order of the file, in rows too", "[limits]") {
  const Folder folder;
  const std::string job = folder.file("easel.yaml");
  write_file(job,
             "gentlest_job: 1\nlimits:\n  room_C: 60\n  parts: 7\nlayers:\n  - {name: varnish, role: remove, recorded: "
             "dammar_aged}\nshelf: [isooctane, water_of_life]\n");
  const auto rows = nlohmann::json::parse(call({"check", job, "--format", "json"}).out).at("faults");
  REQUIRE(rows.size() >= 4);
  for (std::size_t i = 1; i < rows.size(); ++i) CHECK(rows[i - 1].at("line") <= rows[i].at("line"));
}

TEST_CASE("faults of the command line come together", "[limits]") {
  const Result values = call({"ladder", "demo", "--full", "--parts", "7", "--rungs", "x", "--risk-limit", "1", "--step",
                              "7", "--finer", "3", "--format", "jsn", "--family", "ketone"});
  CHECK(values.code == 2);
  for (const char* words :
       {"--parts \"7\"", "--rungs \"x\"", "--risk-limit \"1\" is not a chance between 0 and 1",
        "--step is 7, which does not divide 100", "--finer \"3\"", "unknown format", "no option --family"})
    CHECK(holds(values.err, words));
  const Result wishes =
      call({"ladder", "demo", "--full", "--parts", "3", "--bottles", "2", "--target", "varnsh", "--finer", "2:9"});
  CHECK(wishes.code == 2);
  for (const char* words : {"contradict each other", "no layer \"varnsh\"", "no stretch from rung 2 to rung 9",
                            "its rungs are 1 to 7 at most"})
    CHECK(holds(wishes.err, words));
}

TEST_CASE("what a sheet, a page of labels and a picture are asked for comes together too", "[limits]") {
  const auto expect_all = [](const std::vector<std::string>& args, const std::vector<std::string>& words) {
    const Result result = call(args);
    INFO(result.err);
    CHECK(result.code == 2);
    for (const std::string& one : words) CHECK(holds(result.err, one));
  };
  expect_all({"sheet", "demo", "--paper", "a3", "--sites", "here", "--log", "none.log", "--format", "csv"},
             {"unknown paper \"a3\"", "both --sites and --log", "no CSV or JSON"});
  expect_all({"labels", "demo", "--paper", "a3", "--label", "50"},
             {"unknown paper \"a3\"", "--label \"50\" is no size"});
  expect_all({"chart", "demo", "--kind", "pie", "--format", "json"}, {"unknown kind of chart", "no CSV or JSON"});
  expect_all({"list", "solvents", "--family", "alcohl", "--having", "hazrds"}, {"\"alcohl\"", "\"hazrds\""});
}

// A finer stretch that the limits allow and the ladder has not.
TEST_CASE("a stretch beyond the rungs that a ladder has is refused", "[limits]") {
  const Result result = call({"ladder", "demo", "--full", "--step", "20", "--rungs", "30", "--finer", "28:30"});
  CHECK(result.code == 2);
  CHECK(holds(result.err, "no stretch from rung 28 to rung 30"));
}
