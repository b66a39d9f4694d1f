// Other ways, figures explained, own series and exactly these liquids, through the whole program.
#include "pages.hpp"

#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

namespace gentlest::test {

namespace {

using nlohmann::json;

json answer(std::vector<std::string> args) {
  args.insert(args.end(), {"--format", "json"});
  return json::parse(call(args).out);
}

// Three bottles: planned in no time.
std::string small_job(const Folder& folder, const std::string& more) {
  const std::string job = folder.file("easel.yaml");
  write_file(job,
             "gentlest_job: 1\nlayers:\n  - {name: varnish, role: remove, found: dammar_aged}\n"
             "  - {name: paint, role: keep, found: oil_paint_old}\nshelf: [isooctane, isopropanol, {solvent: ethanol, "
             "grade: \"96 %\"}]\n" +
                 more);
  return job;
}

}  // namespace

TEST_CASE("other ways fit one screen, promise nothing and say who says so") {
  const Folder folder;
  const std::string no_window = small_job(folder, "limits: {risk_limit: 0.0001}\n");
  for (const std::vector<std::string>& args :
       {std::vector<std::string>{"ways", "demo"}, {"ways", no_window}, {"ways"}}) {
    const Result result = call(args, {}, page_of(80));
    CHECK(result.code == 0);
    CHECK(lines_of(result.out).size() <= 40);
    CHECK(holds(unwrapped(result.out), "models none of these ways and promises nothing"));
  }
  const Result full = call({"ways", "demo", "--full"});
  const std::string words = unwrapped(full.out);
  CHECK(holds(words, "says who: "));
  CHECK(holds(words, "not modelled: "));
  CHECK(holds(words, "common practice, no source"));
  CHECK(holds(words, "our doubt: "));
  for (const char* kind : {"Leaving it", "Thinning", "Solvent gels", "Emulsions", "Loaded tissue", "Dry methods",
                           "Water, pH, conductivity, chelators"})
    CHECK(holds(full.out, kind));
  const json all = answer({"ways"});
  CHECK(all.at("ways").size() == 37);
  CHECK(all.at("painting").is_null());
}

TEST_CASE("a page of other ways can be printed, and --html stands alone") {
  const Result page = call({"ways", "demo", "--html"});
  CHECK(page.code == 0);
  CHECK(holds(page.out, "<html"));
  CHECK(!holds(page.out, "<script"));
  CHECK(holds(unwrapped(page_words(page.out)), "promises nothing of them"));
  CHECK(call({"ways", "demo", "--html", "--format", "json"}).code == 2);
  const Folder folder;
  CHECK(call({"ways", "demo", "--html", "--output", folder.file("ways.html")}).code == 0);
  CHECK(call({"ways", "demo", "--output", folder.file("ways2.html")}).code == 2);
}

TEST_CASE("where a ladder ends or never begins, one line leads to the other ways") {
  const Folder folder;
  const std::string log = log_of(folder);
  const std::string job = small_job(folder, "limits: {risk_limit: 0.0001}\n");
  const std::vector<std::vector<std::string>> calls = {
      {"ladder", job}, {"ladder", job, "--full"}, {"next", job, log}, {"report", job, log}, {"sheet", job}};
  for (const std::vector<std::string>& args : calls) {
    INFO(args.front());
    const Result result = call(args, {}, page_of(80));
    CHECK(holds(unwrapped(holds(result.out, "<html") ? page_words(result.out) : result.out), "gentlest ways JOB"));
  }
  CHECK(!holds(call({"next", small_job(folder, ""), log}).out, "gentlest ways"));
}

TEST_CASE("a rung explained ends with the very figures of the ladder") {
  const json ladder = answer({"ladder", "demo", "--full"});
  const json rung = ladder.at("rungs").at(2);
  const json explained = answer({"explain", "demo", "rung", "3"});
  CHECK(explained.at("rung") == "rung 3");
  const json& last = explained.at("steps").back();
  CHECK(last.at("what") == "risk");
  CHECK(std::abs(std::stod(last.at("result").get<std::string>()) - 100 * rung.at("risk").get<double>()) < 2e-4);
  CHECK(answer({"explain", "demo", "3"}).at("steps") == explained.at("steps"));
  CHECK(answer({"explain", "demo", "rung 2 of line 2"}).at("rung") == "line 2, rung 2");
  const std::string text = call({"explain", "demo", "rung 3"}, {}, page_of(80)).out;
  CHECK(lines_of(text).size() <= 40);
  const std::string printed = last.at("printed_as").get<std::string>();
  CHECK(text.rfind(printed + "\n") == text.size() - printed.size() - 1);
}

TEST_CASE("a mixture, a label, a flash point and the next test are explained; what is none of these is asked back") {
  const std::string mixture = "ethanol 96 % 30, isooctane 70";
  const json judged = answer({"mixture", "demo", mixture});
  const json explained = answer({"explain", "demo", mixture});
  CHECK(explained.at("rung").is_null());
  CHECK(std::abs(std::stod(explained.at("steps").back().at("result").get<std::string>()) -
                 100 * judged.at("mixture").at("risk").get<double>()) < 2e-4);
  const Result label = call({"explain", "demo", "label", mixture});
  CHECK(holds(label.out, "H225"));
  const Result flash = call({"explain", "demo", "flash", "point", "rung", "2"});
  CHECK(holds(flash.out, "FLASH POINT"));
  const Folder folder;
  const std::string log = log_of(
      folder, "{\"test\":1,\"mixture\":\"isooctane 100\",\"removal\":\"no effect\",\"original\":\"nothing seen\"}\n");
  const Result next = call({"explain", "demo", "next", "--log", log});
  CHECK(next.code == 0);
  CHECK(holds(next.out, "rule "));
  CHECK(holds(unwrapped(next.out), "not above the cap of"));
  CHECK(call({"explain", "demo"}).code == 2);
  CHECK(call({"explain", "demo", "rung 99"}).code == 2);
  CHECK(call({"explain", "demo", "moonshine"}).code == 2);
  CHECK(call({"explain", "demo", "rung 1", "--format", "csv"}).code == 2);
  CHECK(call({"explain", "demo", "rung 1", "--log", log}).code == 2);
  CHECK(call({"explain", "demo", "label", "--risk-limit", "0.0001"}).code == 2);
}

TEST_CASE("own series stand beside the ladder, in the comparison, on the sheet and on every picture") {
  const Folder folder;
  const std::string job =
      small_job(folder,
                "object: {width_cm: 40, height_cm: 30}\n"
                "series:\n  - {name: our old spirits, mixtures: [\"isooctane 100\", \"isooctane 80, ethanol 20\"]}\n");
  const json compared = answer({"compare", job});
  const json& own = compared.at("series").back();
  CHECK(own.at("id") == "own_1");
  CHECK(own.at("name") == "our old spirits");
  CHECK(own.at("mixtures").size() == 2);
  CHECK(own.at("against_the_job").empty());  // both bottles stand on the shelf, the ethanol as it is there
  CHECK(holds(call({"compare", job}).out, "our old spirits"));
  // The sheet holds every picture of the plan; the one of three bottles stands alone.
  const std::string sheet = call({"sheet", job, "--full"}).out;
  CHECK(count_of(sheet, ">our old spirits (of this job)</text>") == 4);  // risk, planes, triangle, drift
  CHECK(holds(sheet, "<title>varnish, our old spirits 2: "));            // chances
  CHECK(holds(unwrapped(sheet), "have no place on a map of the painting: our old spirits."));
  const std::string mixing = call({"chart", job, "--kind", "mixing"}).out;
  CHECK(count_of(mixing, "data-series=\"our old spirits\"") == 2);
  CHECK(holds(mixing, ">our old spirits (of this job)</text>"));
  const Result bad = call({"check", small_job(folder,
                                              "series:\n  - {name: a, mixtures: [\"isoctane 80, ethanol 20\"]}\n"
                                              "  - {name: a, mixtures: []}\n")});
  CHECK(bad.code == 3);
  CHECK(holds(bad.out + bad.err, "series \"a\": "));
  CHECK(holds(bad.out + bad.err, "two series are called \"a\""));
  CHECK(holds(bad.out + bad.err, "has no mixture"));
}

TEST_CASE("exactly these liquids can be demanded, in the job and on the command line") {
  const Folder folder;
  const std::string job = small_job(folder, "");
  CHECK(answer({"ladder", job}).at("limits").at("exactly").empty());
  for (const json& plan : {answer({"ladder", job, "--exactly", "isooctane, isopropanol"}),
                           answer({"ladder", small_job(folder, "limits: {exactly: [isooctane, 2-propanol]}\n")})}) {
    REQUIRE(!plan.at("rungs").empty());
    for (const json& line : plan.at("lines")) {
      std::vector<std::string> bottles = line.at("bottles").get<std::vector<std::string>>();
      std::sort(bottles.begin(), bottles.end());
      CHECK(bottles == std::vector<std::string>{"isooctane", "isopropanol"});
    }
    CHECK(plan.at("limits").at("exactly").size() == 2);
  }
  const Result unknown = call({"ladder", "demo", "--exactly", "isooctane, moonshine"});
  CHECK(unknown.code == 2);
  CHECK(holds(unknown.err, "moonshine"));
  const Result absent = call({"ladder", "demo", "--exactly", "isooctane, toluene"});
  CHECK(absent.code == 2);
  CHECK(holds(absent.err, "\"toluene\" is demanded and does not stand on the shelf"));
}

}  // namespace gentlest::test
