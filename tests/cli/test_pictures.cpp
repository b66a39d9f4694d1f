// What a screen reader is told: every picture has a title and a description, a label page is read label by label, and
// hazards are spoken as they are printed.
#include "pages.hpp"

#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include <set>

namespace gentlest::test {

namespace {

using nlohmann::json;

std::string log_in(const Folder& folder) {
  const std::string log = folder.file("easel.log");
  write_file(log,
             "{\"gentlest_log\":1}\n{\"test\":1,\"mixture\":\"isooctane 100\",\"x_cm\":3.5,\"y_cm\":41,"
             "\"removal\":\"no effect\"}\n");
  return log;
}

// Opening tags of pictures that are shown.
std::vector<std::string> pictures_on(const std::string& page) {
  static const std::regex tag("<svg[^>]*>\\s*<[a-z]+");
  std::vector<std::string> all;
  for (std::sregex_iterator at(page.begin(), page.end(), tag), end; at != end; ++at)
    if (!holds(at->str(), "aria-hidden=\"true\"")) all.push_back(at->str());
  return all;
}

std::string mixture_words(const json& mixture) {
  std::string words;
  for (const json& part : mixture.at("parts"))
    words += (words.empty() ? "" : ", ") + part.at("liquid").get<std::string>() + " " +
             std::to_string(static_cast<int>(part.at("volume_percent").get<double>() + 0.5));
  return words;
}

}  // namespace

TEST_CASE("every picture on every page has a title and a description, no two ids are the same") {
  const Folder folder;
  std::vector<std::vector<std::string>> calls = {{"sheet", "demo", "--sites", "12.5,30"},
                                                 {"sheet", "demo", "--risk-limit", "0.06"},
                                                 {"labels", "demo", "--copies", "12"},
                                                 {"report", "demo", log_in(folder)}};
  for (const char* kind : {"risk", "chances", "planes", "triangle", "drift", "mixing"})
    calls.push_back({"chart", "demo", "--kind", kind});
  for (const char* kind : {"timeline", "swabs"})
    calls.push_back({"chart", "demo", "--kind", kind, "--log", log_in(folder)});
  for (const std::vector<std::string>& args : calls) {
    INFO(args[0] << " " << args.back());
    const std::string page = call(args).out;
    REQUIRE_FALSE(pictures_on(page).empty());
    for (const std::string& picture : pictures_on(page)) {
      INFO(picture);
      CHECK(holds(picture, "<title"));
      CHECK((holds(picture, "role=\"img\"") || holds(picture, "role=\"group\"")));
    }
    // A title without an id is that of the page, or what a pointer reads on a mark.
    CHECK(count_of(page, "<title id=") == count_of(page, "<desc id="));
    for (const Spoken& one : spoken_on(page)) {
      CHECK(one.title.size() > 5);
      CHECK(one.description.size() > 20);
    }
    CHECK(spoken_on(page).size() == count_of(page, "aria-labelledby="));
    std::set<std::string> ids;
    static const std::regex id(" id=\"([^\"]+)\"");
    for (std::sregex_iterator at(page.begin(), page.end(), id), end; at != end; ++at) {
      INFO(at->str());
      CHECK(ids.insert((*at)[1]).second);
    }
  }
}

TEST_CASE("descriptions hold the numbers of the picture") {
  const json plan = json::parse(call({"ladder", "demo", "--full", "--format", "json"}).out);
  for (const char* kind : {"risk", "chances", "planes", "triangle", "drift"}) {
    INFO(kind);
    const std::vector<Spoken> spoken = spoken_on(call({"chart", "demo", "--kind", kind}).out);
    REQUIRE(spoken.size() == 1);
    const std::string& words = spoken[0].description;
    CHECK(holds(words, std::to_string(plan.at("rungs").size()) + " rungs and 2 layers"));
    for (std::size_t i = 1; i <= plan.at("rungs").size(); ++i) CHECK(holds(words, "rung " + std::to_string(i) + ": "));
    if (std::string(kind) == "planes") CHECK(holds(words, "varnish (remove): range about dD "));
    if (std::string(kind) == "risk") CHECK(holds(words, "Risk limit 25 %, effect wanted 50 %"));
  }
  const std::string map = spoken_on(call({"sheet", "demo", "--sites", "12.5,30"}).out)[0].description;
  CHECK(map == "The outline of the painting, 62 x 48 cm, with 1 test. Test 1: x 12.5, y 30 cm.");
}

TEST_CASE("what a picture shows can be pointed at, and says what it is") {
  const Folder folder;
  const json plan = json::parse(call({"ladder", "demo", "--format", "json"}).out);
  for (const char* kind : {"risk", "chances", "planes", "triangle", "drift", "mixing"}) {
    const std::string picture = call({"chart", "demo", "--kind", kind}).out;
    for (std::size_t i = 1; i <= plan.at("rungs").size(); ++i) {
      INFO(kind << ", rung " << i);
      const std::regex mark("<g data-rung=\"" + std::to_string(i) + "\"[^>]*>\\s*<title>[^<]*rung " +
                            std::to_string(i) + "[:<]");
      CHECK(std::regex_search(picture, mark));
    }
  }
  const std::string picture = call({"chart", "demo", "--kind", "planes"}).out;
  for (const json& layer : plan.at("layers"))
    CHECK(holds(picture, "data-layer=\"" + layer.at("name").get<std::string>() + "\""));
  // Each bottle is named in the picture, or by letter in its caption.
  CHECK(count_of(picture, "data-bottle=\"butanone\"") == 3);
  CHECK(holds(picture, ">butanone<"));
  CHECK_FALSE(holds(picture, "No room for"));
}

TEST_CASE("the triangle of three bottles takes those asked for, and says what it cannot take") {
  const std::string picture = call({"chart", "demo", "--kind", "mixing", "--of", "isooctane; ethanol, acetone"}).out;
  CHECK(holds(picture, "Every mixture of isooctane, ethanol 96 %, acetone"));
  CHECK(holds(picture, "risk 25 %"));
  CHECK(holds(picture, "parts into two liquids"));
  const Result two = call({"chart", "demo", "--kind", "mixing", "--of", "isooctane, acetone, acetone"});
  CHECK(two.code == 2);
  CHECK(holds(two.err, "names 2 bottles, and a triangle has three corners"));
  CHECK(holds(call({"chart", "demo", "--of", "isooctane, ethanol, acetone"}).err, "--kind mixing"));
}

TEST_CASE("a place outside the painting is refused, and an old one is named beside the map") {
  const Folder folder;
  const std::string log = folder.file("places.log");
  const Result wide = call({"record", "demo", log, "mixture=isooctane 100", "removal=no effect", "x_cm=70", "y_cm=10"});
  CHECK(wide.code == 2);
  CHECK(holds(wide.err, "x_cm 70 lies outside the painting, which is 62 cm wide"));
  CHECK(count_of(wide.err, "error:") == 1);
  const Result high = call({"record", "demo", log, "mixture=isooctane 100", "removal=no effect", "x_cm=7", "y_cm=480"});
  CHECK(holds(high.err, "y_cm 480 lies outside the painting, which is 48 cm high"));
  const std::string table = folder.file("bench.csv");
  write_file(table, "mixture,removal,x_cm,y_cm\nisooctane 100,no effect,62,48\nacetone 100,no effect,63,1\n");
  const Result taken = call({"import", "demo", log, table});
  CHECK(taken.code == 3);
  CHECK(holds(taken.err, "bench.csv:3"));
  CHECK(holds(taken.err, "x_cm 63 lies outside the painting"));
  write_file(log,
             "{\"gentlest_log\":1}\n{\"test\":1,\"mixture\":\"isooctane 100\",\"x_cm\":70,\"y_cm\":10,"
             "\"removal\":\"no effect\"}\n");
  const Result sheet = call({"sheet", "demo", "--log", log});
  CHECK(sheet.code == 0);
  CHECK(holds(sheet.out, ">Outside the painting: test 1 at x 70, y 10 cm"));
}

TEST_CASE("a label page is read label by label, with the whole of what is printed and the pictograms by name") {
  const json plan = json::parse(call({"ladder", "demo", "--full", "--format", "json"}).out);
  const std::vector<Spoken> spoken = spoken_on(call({"labels", "demo", "--date", "2026-03-14"}).out);
  REQUIRE(spoken.size() == plan.at("rungs").size() + 1);
  CHECK(spoken[0].title == "Labels for the vials, page 1");
  CHECK(holds(spoken[0].description,
              std::to_string(plan.at("rungs").size()) + " labels of one size, to be cut out: rung 1, rung 2"));
  for (std::size_t i = 1; i < spoken.size(); ++i) {
    CHECK(spoken[i].title == "Rung " + std::to_string(i));
    CHECK(holds(spoken[i].description, " %"));
    CHECK(holds(spoken[i].description, "made 2026-03-14"));
  }
  CHECK_FALSE(holds(call({"labels", "demo"}).out, "role=\"img\" font-family"));
}

TEST_CASE("label, sheet and vial give one and the same hazards for each rung") {
  const json plan = json::parse(call({"ladder", "demo", "--full", "--format", "json"}).out);
  const std::string page = call({"labels", "demo"}).out;
  const std::vector<Spoken> labels = spoken_on(page);
  const std::string sheet = call({"sheet", "demo"}).out;
  const std::string sheet_words = page_words(sheet);
  std::size_t at = 1;
  for (const json& rung : plan.at("rungs")) {
    const std::string mixture = mixture_words(rung);
    INFO(mixture);
    const json label = json::parse(call({"vial", "demo", "--full", mixture, "--format", "json"}).out).at("label");
    const std::string& spoken = labels[at].description;
    std::string codes;
    for (const json& statement : label.at("statements")) {
      const std::string code = statement.at("code");
      codes += (codes.empty() ? "" : ", ") + code;
      CHECK(holds(spoken, code));
      CHECK(std::regex_search(page_words(page), std::regex("\n" + code + " [a-z]")));
      CHECK(std::regex_search(sheet_words, std::regex("[\n:;] ?" + code + " [a-z]")));
    }
    CHECK(holds(sheet_words, ": " + codes + "; "));
    for (const json& pictogram : label.at("pictograms"))
      CHECK(holds(spoken, "pictogram " + pictogram.get<std::string>() + ", "));
    if (!label.at("signal_word").is_null())
      CHECK(holds(spoken, "; " + label.at("signal_word").get<std::string>() + "; "));
    CHECK(count_of(spoken, "pictogram ") == label.at("pictograms").size());
    ++at;
  }
}

}  // namespace gentlest::test
