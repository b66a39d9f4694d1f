// What the reports must say, whatever the figures are.
#include "csv_cells.hpp"
#include "program.hpp"

#include "io/job_file.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include "near.hpp"

#include <algorithm>
#include <map>
#include <regex>

namespace gentlest::test {

namespace {

using nlohmann::json;

constexpr const char* no_record = "no record (not a sign of harmlessness)";

json as_json(std::vector<std::string> args, const std::string& input = {}) {
  args.insert(args.end(), {"--format", "json"});
  return json::parse(call(args, input).out);
}

// A solvent with Hansen parameters and without a hazard record; empty when the catalogue has none.
std::string solvent_without_record() {
  const json list = as_json({"list", "solvents", "--having", "hansen"});
  for (const auto& solvent : list.at("solvents"))
    if (solvent.at("signal_word") == "no record") return solvent.at("id");
  return {};
}

}  // namespace

TEST_CASE("the demo's ladder rises in effect and in risk and stays within the risk limit") {
  const Result result = call({"ladder", "demo", "--full", "--format", "json"});
  CHECK(result.code == 0);
  const json plan = json::parse(result.out);
  CHECK(plan.at("outcome") == "window");
  const auto& rungs = plan.at("rungs");
  REQUIRE(rungs.size() >= 2);
  for (std::size_t i = 0; i < rungs.size(); ++i) {
    CHECK(rungs[i].at("risk").get<double>() <= plan.at("limits").at("risk_limit").get<double>());
    double sum = 0;
    for (const auto& part : rungs[i].at("parts")) sum += part.at("volume_percent").get<double>();
    CHECK(sum == Approx(100));
    if (i == 0) continue;
    CHECK(rungs[i].at("effect").get<double>() > rungs[i - 1].at("effect").get<double>());
    CHECK(rungs[i].at("risk").get<double>() >= rungs[i - 1].at("risk").get<double>());
  }
  CHECK(rungs.back().at("effect").get<double>() >= plan.at("limits").at("wanted_effect").get<double>());
}

TEST_CASE("the ladder's text says everything the plan holds") {
  const json plan = as_json({"ladder", "demo", "--full"});
  const std::string text = unwrapped(call({"ladder", "demo", "--full"}).out);
  for (const auto& layer : plan.at("layers")) CHECK(holds(text, layer.at("material_name")));
  for (const auto& advice : plan.at("watch")) CHECK(holds(text, unwrapped(advice.at("text"))));
  for (const auto& advice : plan.at("not_seen")) CHECK(holds(text, unwrapped(advice.at("text"))));
  for (const auto& advice : plan.at("cautions")) CHECK(holds(text, unwrapped(advice.at("text"))));
  for (const auto& point : plan.at("weak_points")) CHECK(holds(text, unwrapped(point)));
  for (const auto& reason : plan.at("left_off_shelf")) CHECK(holds(text, unwrapped(reason)));
  for (const auto& source : plan.at("sources")) CHECK(holds(text, unwrapped(source.at("citation"))));
  for (const auto& liquid : plan.at("liquids")) CHECK(holds(text, unwrapped(liquid.at("classification_words"))));
  CHECK(holds(text, "gentlest " + plan.at("program").get<std::string>() + ", catalogue " +
                        plan.at("catalogue").get<std::string>()));
  CHECK(holds(text, "Effect: the chance that"));
  CHECK(holds(text, "Risk: the largest chance"));
  CHECK(holds(text, "The swab decides."));
}

TEST_CASE("without a window it says so first, shows no ladder and leaves with 1") {
  const std::vector<std::string> args = {"ladder", "demo", "--full", "--risk-limit", "0.06"};
  const Result text = call(args);
  CHECK(text.code == 1);
  const std::size_t no_window = text.out.find("No window.");
  REQUIRE(no_window != std::string::npos);
  CHECK(no_window < text.out.find("The painting, from the top down"));
  CHECK_FALSE(holds(text.out, "The ladder for"));
  CHECK(holds(text.out, "What people then consider"));
  CHECK(holds(text.out, "What the model does not see"));
  const json plan = as_json(args);
  CHECK(plan.at("outcome") == "no window");
  CHECK(plan.at("rungs").empty());
  CHECK(plan.at("strongest_within_risk_limit").at("risk").get<double>() <= 0.06);
  CHECK(plan.at("least_risk_that_works").at("risk").get<double>() > 0.06);
  CHECK(csv_rows(call({"ladder", "demo", "--full", "--risk-limit", "0.06", "--format", "csv"}).out).size() == 3);
}

TEST_CASE("with nothing within the risk limit that is said as well") {
  const Result text = call({"ladder", "demo", "--full", "--risk-limit", "0.0001"});
  CHECK(text.code == 1);
  CHECK(holds(unwrapped(text.out), "no mixture that the job allows stays within a risk of"));
  CHECK(as_json({"ladder", "demo", "--full", "--risk-limit", "0.0001"}).at("strongest_within_risk_limit").is_null());
}

TEST_CASE("no margin is claimed beside a layer that may hold resin") {
  const std::string job =
      replaced(demo_job_text(), "found: oil_paint_old", "found: oil_paint_old\n    suspected: [resinous]");
  const Result text = call({"ladder", "-", "--full"}, job);
  CHECK(holds(unwrapped(text.out), "No margin is claimed, because of oil paint (resinous)"));
  CHECK_FALSE(holds(text.out, "margin: how far"));
  const json plan = as_json({"ladder", "-", "--full"}, job);
  CHECK(plan.at("margin_claimed") == false);
  for (const auto& rung : plan.at("rungs")) CHECK(rung.at("margin_RED").is_null());
  CHECK(holds(call({"ladder", "demo", "--full"}).out, "margin: how far"));
}

TEST_CASE("a missing hazard record is shown as missing, never as harmless") {
  const std::string id = solvent_without_record();
  REQUIRE_FALSE(id.empty());
  INFO(id);
  CHECK(holds(unwrapped(call({"show", id}).out), no_record));
  CHECK(holds(unwrapped(call({"mixture", "demo", id + " 100"}).out), no_record));
  CHECK(holds(call({"mixture", "demo", id + " 100", "--format", "csv"}).out, no_record));
  const json mixture = as_json({"mixture", "demo", id + " 100"});
  CHECK(mixture.at("liquids")[0].at("classification").is_null());
  CHECK(mixture.at("liquids")[0].at("classification_words") == no_record);
  CHECK(mixture.at("mixture").at("hazards_of_parts").at("parts_without_hazard_record").size() == 1);
}

TEST_CASE("a mixture above the risk limit is judged and marked") {
  const Result strong = call({"mixture", "demo", "ethanol 30, isooctane 70", "--risk-limit", "0.01"});
  CHECK(strong.code == 0);
  CHECK(holds(unwrapped(strong.out), "Its risk exceeds the limit of 1.0 %"));
  CHECK_FALSE(holds(call({"mixture", "demo", "ethanol 30, isooctane 70", "--risk-limit", "0.99"}).out, "exceeds"));
}

TEST_CASE("a mixture may be written in fractions, by CAS number, without quotes, and takes the shelf's grade") {
  const json first = as_json({"mixture", "demo", "ethanol 30, isooctane 70"});
  CHECK(first.at("mixture").at("recipe") == "isooctane 70, ethanol 96 % 30");
  for (const auto& text : {"64-17-5 0.3, 540-84-1 0.7", "isooctane 70 %; ethanol 30 %"})
    CHECK(as_json({"mixture", "demo", text}).at("mixture") == first.at("mixture"));
  CHECK(as_json({"mixture", "demo", "ethanol", "30,", "isooctane", "70"}).at("mixture") == first.at("mixture"));
}

TEST_CASE("the same mixture has the same numbers on the ladder and alone") {
  const json plan = as_json({"ladder", "demo", "--full"});
  for (const auto& rung : plan.at("rungs")) {
    const json alone = as_json({"mixture", "demo", rung.at("recipe").get<std::string>()}).at("mixture");
    CHECK(alone.at("effect").get<double>() == near(rung.at("effect").get<double>(), 2e-4));
    CHECK(alone.at("risk").get<double>() == near(rung.at("risk").get<double>(), 2e-4));
    CHECK(alone.at("dH_MPa05") == rung.at("dH_MPa05"));
  }
}

TEST_CASE("a card shows disagreeing values side by side, and what is not known") {
  const json card = as_json({"show", "ethyl_acetate"}).at("cards")[0];
  bool disagreement = false;
  for (const auto& group : card.at("groups"))
    for (const auto& figure : group.at("figures"))
      disagreement = disagreement || !figure.value("others", json::array()).empty();
  CHECK(disagreement);
  const Result text = call({"show", "ethyl", "acetate"});
  CHECK(text.code == 0);
  CHECK(holds(text.out, "another value"));
  CHECK(holds(text.out, "not known"));
}

TEST_CASE("list keeps to the family and the figure asked for") {
  const json all = as_json({"list", "solvents"}).at("solvents");
  const json alcohols = as_json({"list", "solvents", "--family", "alcohol"}).at("solvents");
  CHECK(alcohols.size() > 3);
  CHECK(alcohols.size() < all.size());
  for (const auto& solvent : alcohols) CHECK(solvent.at("family") == "alcohol");
  const json known = as_json({"list", "solvents", "--having", "flash_point"}).at("solvents");
  for (const auto& solvent : known) CHECK(solvent.at("flash_point_C").is_number());
  const auto without =
      std::count_if(all.begin(), all.end(), [](const json& s) { return s.at("flash_point_C").is_null(); });
  CHECK(known.size() + static_cast<std::size_t>(without) == all.size());
}

TEST_CASE("check finds the faults of all files and leaves with 3") {
  const Folder folder;
  write_file(folder.file("good.yaml"), call({"new", "-"}).out);
  write_file(folder.file("bad.yaml"), "gentlest_job: 1\ntitel: x\n");
  CHECK(call({"check", folder.file("good.yaml"), "demo"}).code == 0);
  const Result bad = call({"check", folder.file("bad.yaml"), folder.file("good.yaml"), "/nowhere"});
  CHECK(bad.code == 3);
  CHECK(holds(bad.out, "bad.yaml:2:1"));
  CHECK(holds(bad.out, "/nowhere"));
  CHECK(holds(bad.out, "3 files looked at"));
  CHECK(call({"check", std::string(GENTLEST_SOURCE_DIR) + "/solvents"}).code == 0);
}

TEST_CASE("the built-in catalogue and its folder give the same plan") {
  const std::string folder = std::string(GENTLEST_SOURCE_DIR) + "/solvents";
  CHECK(call({"ladder", "demo", "--full", "--data", folder}).out == call({"ladder", "demo", "--full"}).out);
}

TEST_CASE("no report promises what the program cannot know") {
  const std::regex promise("\\b(safe|safely|harmless|guaranteed?|recommend(ed|s)?|will not affect)\\b",
                           std::regex::icase);
  for (const std::vector<std::string>& args : {std::vector<std::string>{"ladder", "demo", "--full"},
                                               {"ladder", "demo", "--full", "--risk-limit", "0.06"},
                                               {"mixture", "demo", "ethanol 30, isooctane 70"},
                                               {"compare", "demo", "--full"},
                                               {"compare", "demo", "--full", "--risk-limit", "0.06"},
                                               {"ladder", "demo", "--full", "--finer", "1:7"},
                                               {"help"},
                                               {"help", "ladder"},
                                               {"new", "-"}}) {
    std::smatch found;
    const std::string text = call(args).out;
    const bool promised = std::regex_search(text, found, promise);
    INFO(args[0] << ": " << (promised ? found.str() : ""));
    CHECK_FALSE(promised);
  }
}

TEST_CASE("the ladder says what to measure, bottle by bottle and in all") {
  const json measures = as_json({"ladder", "demo", "--full"}).at("what_to_measure");
  std::map<std::string, double> totals;
  for (const auto& mixture : measures.at("mixtures")) {
    CHECK(mixture.at("as_measured").is_null());  // 5 % of 10 mL is one step
    double sum = 0;
    for (const auto& line : mixture.at("volumes")) {
      sum += line.at("mL").get<double>();
      totals[line.at("liquid")] += line.at("mL").get<double>();
    }
    CHECK(sum == Approx(10));
  }
  REQUIRE(totals.size() == measures.at("bottles").size());
  for (const auto& bottle : measures.at("bottles"))
    CHECK(bottle.at("mL").get<double>() == Approx(totals.at(bottle.at("liquid"))));
  CHECK(holds(call({"ladder", "demo", "--full"}).out, "changes no mixture."));
}

TEST_CASE("a coarse measure shows both the mixture as planned and as measured") {
  const std::vector<std::string> args = {"ladder", "demo", "--full", "--vial", "3", "--measure", "1"};
  const json plan = as_json(args);
  const auto& mixtures = plan.at("what_to_measure").at("mixtures");
  REQUIRE(mixtures.size() == plan.at("rungs").size());
  int rounded = 0;
  for (std::size_t i = 0; i < mixtures.size(); ++i) {
    const auto& made = mixtures[i].at("as_measured");
    if (made.is_null()) continue;
    ++rounded;
    CHECK(made.at("recipe") != plan.at("rungs")[i].at("recipe"));
    CHECK(made.at("risk") != plan.at("rungs")[i].at("risk"));
  }
  CHECK(rounded > 0);
  const std::string text = call(args).out;
  CHECK(holds(text, "what rounding changes"));
  CHECK(holds(text, "was "));
}

TEST_CASE("a vial too small for the job's parts is a fault of the command line") {
  const Result result = call({"ladder", "demo", "--full", "--vial", "1"});
  CHECK(result.code == 2);
  CHECK(holds(result.err, "too few for 3 liquids"));
}

TEST_CASE("limits on flash point, label and shares are named in the plan and kept") {
  std::string job = demo_job_text();
  const auto put = [&](const std::string& piece, const std::string& instead) {
    REQUIRE(job.find(piece) != std::string::npos);
    job.replace(job.find(piece), piece.size(), instead);
  };
  put("  - isopropanol\n", "  - {solvent: isopropanol, at_most_percent: 20}\n");
  put("limits:\n", "limits:\n  lowest_flash_point_C: 10\n  avoid_label: [H319]\n");
  const std::string text = call({"ladder", "-", "--full"}, job).out;
  CHECK(holds(text, "flash point below 10 C"));
  CHECK(holds(text, "carries H319"));
  const json plan = as_json({"ladder", "-", "--full"}, job);
  CHECK(plan.at("limits").at("lowest_flash_point_C") == 10);
  CHECK(plan.at("limits").at("avoid_label") == json::array({"H319"}));
  CHECK(plan.at("largest_shares")[0].at("at_most_percent") == 20);
}

}  // namespace gentlest::test
