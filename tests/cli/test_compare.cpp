// The ladder beside the published series, and finer steps between two rungs, through the whole program.
#include "csv_cells.hpp"
#include "program.hpp"

#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>
#include <regex>
#include "near.hpp"

#include <algorithm>
#include <cmath>

namespace gentlest::test {

namespace {

using nlohmann::json;

json json_answer(std::vector<std::string> args, const std::string& input = {}) {
  args.insert(args.end(), {"--format", "json"});
  return json::parse(call(args, input).out);
}

std::size_t column(const std::vector<std::string>& header, const std::string& name) {
  const auto at = std::find(header.begin(), header.end(), name);
  REQUIRE(at != header.end());
  return static_cast<std::size_t>(at - header.begin());
}

}  // namespace

TEST_CASE("compare shows the ladder first, then every published series with its source and standing") {
  const Result result = call({"compare", "demo", "--full"});
  CHECK(result.code == 0);
  const std::string text = unwrapped(result.out);
  std::size_t last = 0;
  for (const char* words : {"All of them at a glance", "the ladder of this job (", "the best of the whole shelf (",
                            "cyclohexane, toluene, acetone in 13 mixtures (", "Feller 1976, from memory",
                            "ligroin to acetone in 10 % steps (", "ligroin to ethanol in 10 % steps ("}) {
    INFO(words);
    const std::size_t at = text.find(words, last);
    REQUIRE(at != std::string::npos);
    last = at;
  }
  CHECK(holds(text, "BEYOND"));
  CHECK(holds(text, "Hazards of toluene: Danger"));
}

TEST_CASE("compare judges a series by the numbers of single mixtures, and counts what it says") {
  const json compared = json_answer({"compare", "demo", "--full"});
  REQUIRE(compared.at("series").size() == 5);
  const double limit = compared.at("risk_limit");
  for (const auto& series : compared.at("series")) {
    INFO(series.at("id"));
    std::size_t beyond = 0;
    std::size_t falls = 0;
    double largest = 0;
    double before = 0;
    for (const auto& step : series.at("mixtures")) {
      const double effect = step.at("mixture").at("effect");
      CHECK(step.at("beyond_risk_limit") == (step.at("mixture").at("risk").get<double>() > limit));
      beyond += step.at("beyond_risk_limit").get<bool>() ? 1U : 0U;
      if (!step.at("effect_rise").is_null()) {
        CHECK(step.at("effect_rise").get<double>() == near(effect - before, 2e-6));
        falls += effect < before ? 1U : 0U;
        largest = std::max(largest, effect - before);
      }
      before = effect;
    }
    const json& quality = series.at("quality");
    CHECK(quality.at("mixtures") == series.at("mixtures").size());
    CHECK(quality.at("bottles") == series.at("liquids").size());
    CHECK(quality.at("beyond_risk_limit") == beyond);
    CHECK(quality.at("falls_of_effect") == falls);
    CHECK(quality.at("largest_rise").get<double>() == near(largest, 2e-6));
  }
  const json& feller = compared.at("series")[2];
  CHECK(feller.at("mixtures").size() == 13);
  const json& tenth = feller.at("mixtures")[9].at("mixture");
  const json alone = json_answer({"mixture", "demo", tenth.at("recipe").get<std::string>()}).at("mixture");
  CHECK(alone.at("effect").get<double>() == near(tenth.at("effect").get<double>(), 2e-4));
  CHECK(alone.at("risk").get<double>() == near(tenth.at("risk").get<double>(), 2e-4));
}

TEST_CASE("the ladder inside compare is the ladder") {
  const json ladder = json_answer({"ladder", "demo", "--full"}).at("rungs");
  const json compared = json_answer({"compare", "demo", "--full"});
  const json& rungs = compared.at("series")[0].at("mixtures");
  REQUIRE(rungs.size() == ladder.size());
  for (std::size_t i = 0; i < ladder.size(); ++i) CHECK(rungs[i].at("mixture") == ladder[i]);
}

TEST_CASE("beside a ladder that is a line stands the best of the whole shelf, once") {
  const json best = json_answer({"ladder", "demo", "--full", "--lines", "0"}).at("rungs");
  const json compared = json_answer({"compare", "demo", "--full"});
  CHECK(compared.at("series")[1].at("id") == "best_of_shelf");
  const json& rungs = compared.at("series")[1].at("mixtures");
  REQUIRE(rungs.size() == best.size());
  for (std::size_t i = 0; i < best.size(); ++i) CHECK(rungs[i].at("mixture") == best[i]);
  const json asked = json_answer({"compare", "demo", "--full", "--lines", "0"});
  CHECK(asked.at("series").size() == 4);
  CHECK(asked.at("series")[0].at("mixtures").size() == best.size());
}

TEST_CASE("compare says what the job has against the bottles of a series") {
  const json demo = json_answer({"compare", "demo", "--full"});
  const auto against = [](const json& compared, std::size_t series) {
    return compared.at("series")[series].at("against_the_job").dump();
  };
  CHECK(holds(against(demo, 2), "toluene: carries H361d, which is to be avoided"));
  CHECK(holds(against(demo, 2), "cyclohexane: not on the shelf"));
  CHECK(demo.at("series")[0].at("against_the_job").empty());
  CHECK(holds(against(demo, 4), "ethanol: taken free of water; the shelf holds ethanol 96 %"));
  const std::string avoiding = replaced(demo_job_text(), "limits:", "limits:\n  avoid_solvents: [acetone]");
  CHECK(holds(against(json_answer({"compare", "-", "--full"}, avoiding), 3), "acetone: is to be avoided"));
  CHECK(holds(unwrapped(call({"compare", "demo", "--full"}).out), "judged as if these bottles stood there"));
}

TEST_CASE("without a window compare says so and judges the published series alone") {
  const Result text = call({"compare", "demo", "--full", "--risk-limit", "0.06"});
  CHECK(text.code == 1);
  CHECK(holds(text.out, "No window."));
  const json compared = json_answer({"compare", "demo", "--full", "--risk-limit", "0.06"});
  CHECK(compared.at("outcome") == "no window");
  CHECK(compared.at("series").size() == 3);
}

TEST_CASE("the table of compare has a row for every mixture") {
  const auto rows = csv_rows(call({"compare", "demo", "--full", "--format", "csv"}).out);
  const json compared = json_answer({"compare", "demo", "--full"});
  std::size_t at = 1;
  for (const auto& series : compared.at("series"))
    for (const auto& step : series.at("mixtures")) {
      REQUIRE(at < rows.size());
      CHECK(rows[at][column(rows[0], "series")] == series.at("id"));
      CHECK(rows[at][column(rows[0], "beyond_risk_limit")] ==
            (step.at("beyond_risk_limit").get<bool>() ? "yes" : "no"));
      CHECK(rows[at++][column(rows[0], "recipe_volume_percent")] == step.at("mixture").at("recipe"));
    }
  CHECK(at == rows.size());
}

TEST_CASE("finer steps stand between their rungs in all three forms, and leave the rungs as they were") {
  const json plain = json_answer({"ladder", "demo", "--full"});
  const json plan = json_answer({"ladder", "demo", "--full", "--finer", "2:4"});
  CHECK(plain.at("finer_steps").empty());
  CHECK(plan.at("rungs") == plain.at("rungs"));
  const json& steps = plan.at("finer_steps");
  REQUIRE(steps.size() >= 2);
  std::size_t off_the_grid = 0;
  for (const auto& step : steps) {
    const std::size_t below = step.at("after_rung");
    REQUIRE((below == 2 || below == 3));
    const json& mixture = step.at("mixture");
    CHECK(mixture.at("effect").get<double>() > plan.at("rungs")[below - 1].at("effect").get<double>() - 2e-4);
    CHECK(mixture.at("effect").get<double>() < plan.at("rungs")[below].at("effect").get<double>() + 2e-4);
    CHECK(mixture.at("risk").get<double>() <= plan.at("limits").at("risk_limit").get<double>());
    CHECK(mixture.at("fate").at("drifts_beyond_risk_limit") == false);
    for (const auto& part : mixture.at("parts")) {
      const double percent = part.at("volume_percent");
      CHECK(percent == near(std::round(percent), 1e-6));
      off_the_grid += std::abs(std::remainder(percent, 5)) > 0.5 ? 1U : 0U;
      CHECK(std::count(plan.at("bottles").begin(), plan.at("bottles").end(), part.at("liquid")) == 1);
    }
  }
  CHECK(off_the_grid > 0);
  const auto rows = csv_rows(call({"ladder", "demo", "--full", "--finer", "2:4", "--format", "csv"}).out);
  std::vector<std::string> names;
  for (std::size_t i = 1; i < rows.size(); ++i)
    if (rows[i][0].rfind("line ", 0) != 0) names.push_back(rows[i][0]);
  CHECK(names.size() == plan.at("rungs").size() + steps.size());
  CHECK(names[2] == "2.1");
  CHECK(std::is_sorted(names.begin(), names.end()));
  const std::string text = call({"ladder", "demo", "--full", "--finer", "2:4"}).out;
  CHECK(holds(unwrapped(text), "finer steps between two rungs, in shares of 1 %: 0.1 mL of a vial of 10 mL"));
  CHECK(holds(text, "\n  2.1 "));
  CHECK(call({"ladder", "demo", "--full", "--finer", "2:4", "--risk-limit", "0.06"}).code == 1);
}

TEST_CASE("the picture of effect and risk names the published series and draws their marks") {
  // A legend may be broken into lines.
  const std::string drawn = call({"chart", "demo"}).out;
  const std::string picture = unwrapped(std::regex_replace(drawn, std::regex("<[^>]*>\\s*"), " "));
  for (const char* words :
       {"cyclohexane, toluene, acetone in 13 mixtures (Feller 1976, from memory)", "ligroin to ethanol in 10 % steps",
        "published test series", "of their mixtures lie to the"})
    CHECK(holds(picture, words));
  CHECK_FALSE(holds(call({"chart", "demo", "--kind", "planes"}).out, "Feller"));
  CHECK(holds(unwrapped(call({"sheet", "demo", "--full"}).out), "published test series"));
}

}  // namespace gentlest::test
