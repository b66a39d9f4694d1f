// What the page asks: the very commands of the program, as JSON. In the browser the same is compared to the byte
// (tests/page/same_answers.mjs).
#include "program.hpp"

#include "cli/question.hpp"
#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include <filesystem>
#include <set>

namespace gentlest::test {

namespace {

using Json = nlohmann::json;

Json asked(const Json& question, const Surroundings& surroundings = {}) {
  return Json::parse(answer_question(question.dump(), surroundings));
}

}  // namespace

TEST_CASE("a question of the page is answered as the command line would") {
  const Folder folder;
  const std::string job = folder.file("job.yaml");
  write_file(job, demo_job_text());
  const std::string log = folder.file("tests.log");
  write_file(log, "{\"gentlest_log\":1}\n");
  const std::vector<std::pair<Json, std::vector<std::string>>> pairs = {
      {{{"command", "ladder"}, {"words", {job}}, {"options", {{"format", "json"}}}},
       {"ladder", job, "--format", "json"}},
      {{{"command", "ladder"}, {"words", {job}}, {"options", {{"full", true}, {"risk-limit", "0.1"}}}},
       {"ladder", job, "--full", "--risk-limit", "0.1"}},
      {{{"command", "sheet"}, {"words", {job}}, {"options", {{"log", log}}}}, {"sheet", job, "--log", log}},
      {{{"command", "next"}, {"words", {job, log}}}, {"next", job, log}},
      {{{"command", "list"}, {"words", {"names"}}}, {"list", "names"}}};
  for (const auto& [question, words] : pairs) {
    INFO(question.dump());
    const Json answer = asked(question);
    const Result said = call(words, {}, page_of(usual_width));
    CHECK(answer.at("text") == said.out);
    CHECK(answer.at("exit") == said.code);
    CHECK(answer.at("faults").empty());
  }
}

// The page lays finished paintings down as files in a folder, each choice of files in one of its own.
TEST_CASE("a question takes a folder of finished paintings as the command line does") {
  const Folder folder;
  const std::string job = folder.file("job.yaml");
  write_file(job, demo_job_text() + "\n");
  for (const char* one : {"studio/1/quinces", "studio/2/quinces"}) {
    const std::string file = folder.file(one);
    std::filesystem::create_directories(std::filesystem::path(file).parent_path());
    write_file(file + ".yaml", demo_job_text());
    write_file(file + ".log",
               "{\"gentlest_log\":1}\n{\"test\":1,\"who\":\"Zanzibar\",\"mixture\":\"isooctane 90, acetone 10\","
               "\"seconds\":20,\"removal\":\"fully removed\",\"original\":\"nothing seen\"}\n");
  }
  const std::string studio = folder.file("studio");
  const Json answer =
      asked({{"command", "ladder"}, {"words", {job}}, {"options", {{"format", "json"}, {"studio", studio}}}});
  CHECK(answer.at("text") == call({"ladder", job, "--format", "json", "--studio", studio}).out);
  CHECK(Json::parse(answer.at("text").get<std::string>()).at("studio").at(0).at("paintings") == 2);
  const Json taught = asked({{"command", "studio"}, {"words", {studio}}});
  CHECK(holds(taught.at("text").get<std::string>(), "2 finished paintings"));
  CHECK_FALSE(holds(taught.at("text").get<std::string>(), "Zanzibar"));
}

TEST_CASE("faults of the page's files come with their places, apart from one another") {
  const Folder folder;
  const std::string job = folder.file("job.yaml");
  write_file(
      job,
      "gentlest_job: 1\nobject: {title: x, width_cm: wide}\nlayers:\n  - {name: v, role: remoove}\nshelf: [acetone]\n");
  const Json answer = asked({{"command", "ladder"}, {"words", {job}}});
  CHECK(answer.at("exit") == 3);
  CHECK(answer.at("text") == "");
  REQUIRE(answer.at("faults").size() >= 2);
  CHECK(answer.at("faults")[0].at("file") == job);
  CHECK(answer.at("faults")[0].at("line") == 2);
  CHECK(answer.at("faults")[0].at("column").get<int>() > 0);
  CHECK_FALSE(answer.at("faults")[0].at("message").get<std::string>().empty());
}

TEST_CASE("a question that cannot be read is a fault and fails nothing") {
  for (const std::string& question :
       {std::string("{"), std::string("[]"), std::string(R"({"command":"ladder"})"),
        std::string(R"({"command":"paint","words":[]})"),
        std::string(R"({"command":"ladder","words":["demo"],"options":{"colour":"red"}})"),
        std::string(R"({"command":"ladder","words":["demo"],"options":{"full":"yes"}})"),
        std::string(R"({"command":"ladder","words":["demo"],"options":{"format":true}})"),
        std::string("{\"command\":\"\xff\",\"words\":[]}")}) {
    INFO(question);
    const Json answer = Json::parse(answer_question(question, {}));
    CHECK(answer.at("exit") == 2);
    REQUIRE(answer.at("faults").size() == 1);
    CHECK_FALSE(answer.at("faults")[0].at("message").get<std::string>().empty());
  }
}

TEST_CASE("the page gets the demo and the empty job, and both load") {
  for (const Json& question :
       {Json{{"command", "demo"}, {"words", Json::array()}}, Json{{"command", "new"}, {"words", {"-"}}}}) {
    const Folder folder;
    const Json answer = asked(question);
    const std::string job = folder.file("job.yaml");
    write_file(job, answer.at("text").get<std::string>());
    CHECK(call({"check", job}).code == 0);
  }
}

TEST_CASE("every name of the catalogue is listed once with what it leads to") {
  const Json answer = Json::parse(call({"list", "names", "--format", "json"}).out);
  std::set<std::string> known;
  for (const std::string of : {"solvent", "material"}) {
    const Json list = Json::parse(call({"list", of + "s", "--format", "json"}).out);
    for (const Json& record : list.at(of + "s")) known.insert(of + " " + record.at("id").get<std::string>());
  }
  std::size_t asks = 0;
  std::set<std::string> seen;
  for (const Json& row : answer.at("names")) {
    const auto name = row.at("name").get<std::string>();
    INFO(name);
    CHECK((row.at("id").is_null() != row.at("asks").is_null()));
    CHECK(
        seen.insert(row.at("of").get<std::string>() + " " + name + " " + row.at("language").get<std::string>()).second);
    if (!row.at("asks").is_null()) ++asks;
    if (!row.at("id").is_null())
      CHECK(known.count(row.at("of").get<std::string>() + " " + row.at("id").get<std::string>()) == 1);
  }
  CHECK(seen.size() > 1000);
  CHECK(asks > 10);
}

}  // namespace gentlest::test
