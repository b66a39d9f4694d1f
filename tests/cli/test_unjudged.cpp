// Layers without a sphere through the program itself: every page says so, none refuses, none makes a figure up.
#include "pages.hpp"
#include "unjudged_job.hpp"

#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

namespace gentlest::test {

namespace {

using nlohmann::json;

std::string words_of(const Result& result) {
  return unwrapped(holds(result.out, "<html") || holds(result.out, "<svg") ? page_words(result.out) : result.out);
}

struct Written {
  Folder folder;
  std::string job = folder.file("job.yaml");
  std::string log = folder.file("easel.log");
  explicit Written(const std::string& text) { write_file(job, text); }
};

}  // namespace

TEST_CASE("a layer to keep without a sphere is named with its observations on every page") {
  const Written written(unjudged_job_text("dammar_aged", {"animal_glue", "oil_paint_old"}));
  for (const char* command : {"ladder", "compare", "sheet"}) {
    const Result result = call(in_full({command, written.job}));
    INFO(command);
    CHECK(result.code == 0);
    const std::string words = words_of(result);
    CHECK(holds(words, "\"kept 1\" (animal glue): judged by what was seen alone"));
    CHECK(holds(words, "water: swells strongly (grade 2 to 4; swab, seconds; common_practice)"));
    CHECK(holds(words, "A dry swab"));
    CHECK(holds(words, "No water on \"kept 1\""));
  }
  CHECK(holds(words_of(call({"labels", written.job})), "kept 1: no sphere: judged by what was seen alone"));
  const Result vial = call({"vial", written.job, "--full", "ethanol 96 % 50, acetone 50"});
  CHECK(vial.code == 0);
  CHECK(holds(words_of(vial), "which alone acts on \"kept 1\": swells strongly"));
  CHECK(holds(words_of(call({"mixture", written.job, "acetone"})), "acetone alone on \"kept 1\": nothing seen"));
  CHECK(
      holds(words_of(call({"chart", written.job, "--kind", "planes"})), "Not drawn, since it has no sphere: kept 1."));
  CHECK(holds(words_of(call({"sheet", written.job})), "not judged: kept 1"));  // boxes of its own
}

TEST_CASE("without a sphere of the layer to go every page says that no ladder can be worked out") {
  const Written written(unjudged_job_text("copal_hard", {"animal_glue"}));
  for (const char* command : {"ladder", "compare", "sheet", "labels", "chart"}) {
    const Result result = call(in_full({command, written.job}));
    INFO(command);
    CHECK(result.code == 1);
    CHECK(holds(words_of(result), "No ladder can be worked out for \"varnish\""));
  }
  const Result ladder = call({"ladder", written.job, "--full"});
  CHECK(holds(words_of(ladder), "diacetone alcohol: dissolves (grade 1 to 2"));
  CHECK(holds(words_of(ladder), "diacetone alcohol 100, where harm matters least"));
  const Result sheet = call({"sheet", written.job});
  CHECK(holds(words_of(sheet), "first test 1: diacetone alcohol 10 mL"));
  CHECK(holds(words_of(sheet), "dry swab"));
  const json plan = json::parse(call({"ladder", written.job, "--full", "--format", "json"}).out);
  CHECK(plan.at("outcome") == "no ladder");
  CHECK(plan.at("to_try")[0].at("effect").is_null());
  CHECK(call({"next", written.job, written.log}).code == 1);
}

TEST_CASE("where no risk can be told no page prints one") {
  const Written written(unjudged_job_text("dammar_aged", {"egg_tempera"}));
  const json plan = json::parse(call({"ladder", written.job, "--full", "--format", "json"}).out);
  CHECK(plan.at("by_effect_alone") == true);
  for (const json& rung : plan.at("rungs")) {
    CHECK(rung.at("risk").is_null());
    CHECK(rung.at("fate").at("drift_worst_risk").is_null());
    CHECK(rung.at("layers")[1].at("chance").is_null());
  }
  const std::string words = words_of(call({"ladder", written.job, "--full"}));
  CHECK(holds(words, "no risk is told and none bounds the ladder"));
  CHECK_FALSE(holds(words, "nothing to keep"));
  CHECK_FALSE(holds(words, "<0.1 %"));
  CHECK(holds(words_of(call({"chart", written.job})), "there is no risk to draw"));
  CHECK(holds(words_of(call({"mixture", written.job, "isooctane 50, xylene 50"})),
              "What drying does to the layers to keep is not known"));
}

TEST_CASE("a harm on a layer without a sphere stands in the first lines of next and of the report") {
  const Written written(unjudged_job_text("dammar_aged", {"animal_glue", "oil_paint_old"}));
  REQUIRE(call({"record", written.job, written.log, "mixture=isooctane 80, ethanol 96 % 20", "removal=partly removed",
                "original=softened", "date=2026-11-02"})
              .code == 0);
  const Result next = call({"next", written.job, written.log});
  CHECK(lines_of(next.out)[0].find("HARM on kept 1") != std::string::npos);
  const std::string report = words_of(call({"report", written.job, written.log}));
  const std::size_t harm = report.find("HARM on kept 1");
  REQUIRE(harm != std::string::npos);
  CHECK(harm < report.find("Where the tests stand"));
  CHECK(holds(unwrapped(call({"readings", written.log}).out), "softened"));
}

TEST_CASE("a bottle left off for what was seen is named with reason, source and remedy") {
  const Written written(unjudged_job_text("dammar_aged", {"oil_paint_old", "copal_hard"}));
  const std::string words = words_of(call({"ladder", written.job, "--full"}));
  CHECK(holds(words,
              "diacetone alcohol: alone it acts on \"kept 2\", which has no sphere: dissolves (grade 1 to 2; "
              "immersion, hours; cameo); to propose it all the same, name it in allow_acting"));
}

TEST_CASE("a material that nobody knows is not judged, on every page with what to do first") {
  const Written written(unjudged_job_text("dammar_aged", {"unknown", "oil_paint_old"}));
  for (const char* command : {"ladder", "sheet", "compare"}) {
    INFO(command);
    CHECK(holds(words_of(call(in_full({command, written.job}))), "NOT JUDGED, for nobody knows what it is"));
  }
  CHECK(holds(words_of(call({"labels", written.job})), "kept 1: not judged: no sphere, nothing seen; test it first"));
  CHECK(call({"check", written.job}).code == 0);
}

}  // namespace gentlest::test
