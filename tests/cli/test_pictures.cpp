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
  for (const char* kind : {"risk", "chances", "planes", "triangle", "drift"})
    calls.push_back({"chart", "demo", "--kind", kind});
  for (const std::vector<std::string>& args : calls) {
    INFO(args[0] << " " << args.back());
    const std::string page = call(args).out;
    REQUIRE_FALSE(pictures_on(page).empty());
    for (const std::string& picture : pictures_on(page)) {
      INFO(picture);
      CHECK(holds(picture, "<title"));
      CHECK((holds(picture, "role=\"img\"") || holds(picture, "role=\"group\"")));
    }
    CHECK(count_of(page, "<title") == count_of(page, "<desc") + (holds(page, "<html") ? 1 : 0));
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
      CHECK(std::regex_search(sheet_words, std::regex("\n" + code + " [a-z]")));
    }
    CHECK(holds(sheet_words, codes + " | "));
    for (const json& pictogram : label.at("pictograms"))
      CHECK(holds(spoken, "pictogram " + pictogram.get<std::string>() + ", "));
    if (!label.at("signal_word").is_null())
      CHECK(holds(spoken, "; " + label.at("signal_word").get<std::string>() + "; "));
    CHECK(count_of(spoken, "pictogram ") == label.at("pictograms").size());
    ++at;
  }
}

}  // namespace gentlest::test
