// A job in which no mixture passes: every page says what closes the window and what is left, and none proposes,
// measures or labels what is beyond the limit.
#include "pages.hpp"

#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

namespace gentlest::test {

namespace {

using nlohmann::json;

const char* const log_of_one =
    "{\"gentlest_log\":1}\n{\"test\":1,\"mixture\":\"isooctane 100\",\"removal\":\"no effect\"}\n";

// What a person reads, whatever the form.
std::string words_of(const Result& result) {
  return unwrapped(holds(result.out, "<html") || holds(result.out, "<svg") ? page_words(result.out) : result.out);
}

std::string demo_with_shelf(const std::string& shelf) {
  const std::string job = demo_job_text();
  const std::size_t from = job.find("shelf:");
  const std::size_t to = job.find("limits:");
  return job.substr(0, from) + "shelf:\n" + shelf + job.substr(to);
}

}  // namespace

TEST_CASE("without a window every answer says what closes it and what is left, in the same sentences") {
  for (const char* limit : {"0.06", "0.0001"}) {
    INFO(limit);
    const json plan = json::parse(call({"ladder", "demo", "--full", "--risk-limit", limit, "--format", "json"}).out);
    const json& no_window = plan.at("no_window");
    CHECK(no_window.at("closed_by") == "layer");
    CHECK(no_window.at("layer") == plan.at("least_risk_that_works").at("riskiest_layer"));
    REQUIRE(no_window.at("sentences").size() == 3);
    for (const char* command : {"ladder", "sheet", "labels", "compare"}) {
      const Result result = call(in_full({command, "demo", "--risk-limit", limit}));
      INFO(command);
      CHECK(result.code == 1);
      const std::string words = words_of(result);
      for (const json& sentence : no_window.at("sentences")) CHECK(holds(words, sentence.get<std::string>()));
    }
    const Result chart = call({"chart", "demo", "--kind", "risk", "--risk-limit", limit});
    CHECK(holds(words_of(chart), no_window.at("sentences")[1].get<std::string>()));
  }
  CHECK(json::parse(call({"ladder", "demo", "--full", "--format", "json"}).out).at("no_window").is_null());
}

TEST_CASE("without a window nothing is begun with, and no risk is said to stay within the limit that does not") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  write_file(log, log_of_one);
  for (const char* limit : {"0.06", "0.0001"}) {
    std::vector<std::vector<std::string>> calls = {{"ladder", "demo", "--full"},
                                                   {"ladder", "demo", "--full", "--format", "json"},
                                                   {"sheet", "demo"},
                                                   {"labels", "demo"},
                                                   {"compare", "demo", "--full"},
                                                   {"report", "demo", log}};
    for (const char* kind : {"risk", "chances", "planes", "triangle", "drift"})
      calls.push_back({"chart", "demo", "--kind", kind});
    for (std::vector<std::string>& args : calls) {
      args.insert(args.end(), {"--risk-limit", limit});
      INFO(args[0] << " " << limit);
      const std::string words = words_of(call(args));
      for (const char* wrong : {"Begin with rung 1", "Begin with the gentlest", "does not pass the limit",
                                "From gentle to strong", "no rung exceeds", "The ladder in the triangle"})
        CHECK_FALSE(holds(words, wrong));
    }
  }
}

TEST_CASE("without a window no card names a mixture, and only what is within the limit is measured or labelled") {
  const std::string sheet = call({"sheet", "demo", "--risk-limit", "0.06"}).out;
  const auto cards = count_of(sheet, "<div class=\"card\">");
  CHECK(cards >= 2);
  CHECK(count_of(sheet, "</b> <span>mixture:</span>") == cards);  // each to be filled in by hand
  CHECK(holds(sheet, "BEYOND THE RISK LIMIT of 6.0 %: not proposed"));
  CHECK_FALSE(holds(sheet, " mL</b>"));

  const json plan = json::parse(call({"ladder", "demo", "--full", "--risk-limit", "0.06", "--format", "json"}).out);
  REQUIRE(plan.at("least_risk_that_works").at("risk").get<double>() > 0.06);
  REQUIRE(plan.at("what_to_measure").at("mixtures").size() == 1);
  CHECK(plan.at("what_to_measure").at("mixtures")[0].at("name") == "strongest within the risk limit");
  double total = 0;
  for (const json& bottle : plan.at("what_to_measure").at("bottles")) total += bottle.at("mL").get<double>();
  CHECK(total == Approx(10));

  const std::string labels = call({"labels", "demo", "--risk-limit", "0.06"}).out;
  const std::vector<Spoken> spoken = spoken_on(labels);
  REQUIRE(spoken.size() == 2);  // the page and one label
  CHECK(spoken[1].title == "Strongest within the risk limit");
  CHECK(
      std::regex_search(page_words(labels), std::regex("no label for least risk that reaches the effect: risk [0-9.]+ "
                                                       "%, beyond the limit of 6.0 %")));
  CHECK_FALSE(holds(labels, ">Least risk"));

  const std::string none = call({"labels", "demo", "--risk-limit", "0.0001"}).out;
  CHECK(spoken_on(none).empty());
  CHECK(holds(page_words(none), "no label for least risk that reaches the effect"));
  CHECK_FALSE(holds(call({"ladder", "demo", "--full", "--risk-limit", "0.0001"}).out, "What to measure"));
}

TEST_CASE("a shelf that cannot move the layer closes the window itself, and limits may leave no mixture at all") {
  const auto closed_by = [](const std::string& job) {
    const Result result = call({"ladder", "-", "--full", "--format", "json"}, job);
    CHECK(result.code == 1);
    return json::parse(result.out).at("no_window");
  };
  const std::string hydrocarbons = demo_with_shelf("  - isooctane\n  - white_spirit_dearomatised\n");
  const json shelf = closed_by(hydrocarbons);
  CHECK(shelf.at("closed_by") == "shelf");
  CHECK(shelf.at("layer").is_null());
  CHECK(holds(shelf.at("sentences")[1].get<std::string>(), "What closes the window: the shelf."));
  const std::string none =
      replaced(demo_job_text(), "  step_percent: 5", "  step_percent: 5\n  lowest_flash_point_C: 200");
  CHECK(closed_by(none).at("closed_by") == "other limits");
  for (const std::string& job : {hydrocarbons, none})
    for (const char* command : {"ladder", "sheet", "labels"}) {
      const std::string words = words_of(call(in_full({command, "-"}), job));
      CHECK(holds(words, "What closes the window: the "));
      CHECK(holds(words, "What is left: "));
      CHECK_FALSE(holds(words, "Begin with"));
    }
}

TEST_CASE("a rung that rounding pushes beyond the risk limit gets no card and no label, and is named") {
  bool seen = false;
  for (const std::vector<std::string>& coarse : {std::vector<std::string>{"--vial", "3", "--measure", "1"},
                                                 {"--vial", "2", "--measure", "0.5"},
                                                 {"--vial", "4", "--measure", "1"}}) {
    const auto asked = [&](std::vector<std::string> args) {
      args.insert(args.end(), coarse.begin(), coarse.end());
      args.insert(args.end(), {"--risk-limit", "0.21", "--lines", "0"});
      return call(args).out;
    };
    const json plan = json::parse(asked({"ladder", "demo", "--full", "--format", "json"}));
    const std::string sheet = page_words(asked({"sheet", "demo"}));
    const std::string labels = page_words(asked({"labels", "demo"}));
    for (const json& mixture : plan.at("what_to_measure").at("mixtures")) {
      const json& made = mixture.at("as_measured");
      const std::string name = "rung " + mixture.at("name").get<std::string>();
      const bool beyond = !made.is_null() && made.at("risk").get<double>() > 0.21;
      seen = seen || beyond;
      INFO(coarse[1] << " mL, " << name);
      CHECK(holds(sheet, "no card for " + name + ":") == beyond);
      CHECK(std::regex_search(sheet, std::regex("Test [0-9]+ " + name + ": ")) == !beyond);
      CHECK(holds(labels, "no label for " + name + ":") == beyond);
    }
  }
  CHECK(seen);
}

TEST_CASE("a vial whose risk passes the limit says so, as a mixture does") {
  for (const char* command : {"mixture", "vial"}) {
    CHECK(holds(unwrapped(call({command, "demo", "acetone 100"}).out), "Its risk exceeds the limit of 25 %"));
    CHECK_FALSE(holds(call({command, "demo", "isooctane 100"}).out, "exceeds the limit"));
  }
}

}  // namespace gentlest::test
