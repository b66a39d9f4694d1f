// A folder of finished paintings, what is learned from it, and what of it is handed on.
#include "cli/csv_cells.hpp"
#include "cli/program.hpp"

#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include <cctype>
#include <filesystem>
#include <set>

namespace gentlest::test {

namespace {

std::string replaced_all(std::string text, const std::string& from, const std::string& to) {
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
    text.replace(at, from.size(), to);
  return text;
}

const std::string log_text =
    "{\"gentlest_log\":1}\n"
    "{\"test\":1,\"date\":\"1987-06-05\",\"who\":\"Zanzibar\",\"mixture\":\"isooctane 90, acetone "
    "10\",\"passage\":\"narwhal cloth\",\"seconds\":20,\"removal\":\"fully removed\",\"original\":\"nothing "
    "seen\",\"remark\":\"near the Quetzal\"}\n"
    "{\"test\":2,\"who\":\"Zanzibar\",\"mixture\":\"isooctane 80, acetone "
    "20\",\"seconds\":20,\"removal\":\"fully removed\",\"original\":\"nothing seen\",\"signs\":\"xylophone\"}\n"
    "{\"test\":3,\"mixture\":\"aqueous: Mongoose brew\",\"removal\":\"no effect\",\"original\":\"nothing seen\"}\n";

// Three finished paintings: two by name, one in a folder of its own.
class Finished {
 public:
  Finished() {
    std::filesystem::create_directories(folder_.file("finished/third"));
    for (const char* name : {"finished/first", "finished/second", "finished/third/job"}) {
      write_file(folder_.file(std::string(name) + ".yaml"),
                 replaced_all(replaced_all(demo_job_text(), "Pears and a blue jug", "Wombat at Timbuktu"),
                              "white cloth", "narwhal cloth"));
      write_file(folder_.file(std::string(name) + (name == std::string("finished/third/job") ? "2.log" : ".log")),
                 log_text);
    }
  }
  std::string path() const { return folder_.file("finished"); }
  std::string file(const std::string& name) const { return folder_.file(name); }

 private:
  Folder folder_;
};

// Words of three letters or more, in lower case.
std::set<std::string> words_of(const std::string& text) {
  std::set<std::string> words;
  std::string word;
  for (const char c : text + " ") {
    if (std::isalpha(static_cast<unsigned char>(c)) != 0) {
      word += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
      continue;
    }
    if (word.size() > 2) words.insert(word);
    word.clear();
  }
  return words;
}

}  // namespace

TEST_CASE("a folder of finished paintings is learned from, and told", "[studio]") {
  const Finished finished;
  const Result text = call({"studio", finished.path()});
  INFO(text.out << text.err);
  CHECK(text.code == 0);
  CHECK(text.err.empty());
  CHECK(holds(text.out, "The studio: 3 finished paintings"));
  CHECK(holds(text.out, "foretold by the others"));
  const auto rows = nlohmann::json::parse(call({"studio", finished.path(), "--format", "json"}).out).at("studio");
  REQUIRE(rows.size() == 6);  // varnish and paint of each
  CHECK(rows[0].at("material") == "dammar_aged");
  CHECK(rows[0].at("tests") == 2);
  CHECK(rows[0].at("chance_of_readings") > rows[0].at("chance_without_studio"));
}

TEST_CASE("a plan begins where the studio leaves off, says so, and what it would be without", "[studio]") {
  const Finished finished;
  const auto without = nlohmann::json::parse(call({"ladder", "demo", "--format", "json"}).out);
  const Result with_studio = call({"ladder", "demo", "--studio", finished.path(), "--format", "json"});
  const auto with = nlohmann::json::parse(with_studio.out);
  CHECK_FALSE(without.contains("studio"));
  REQUIRE(with.at("studio").size() == 2);
  CHECK(with.at("studio")[0].at("paintings") == 3);
  CHECK(with.at("studio")[0].at("now") != with.at("studio")[0].at("without"));
  CHECK(with.at("rungs")[0].at("effect") != without.at("rungs")[0].at("effect"));
  const Result text = call({"ladder", "demo", "--studio", finished.path()});
  INFO(text.out);
  CHECK(holds(text.out, "From the studio: \"varnish\" begins"));
  CHECK(holds(text.out, "3 finished paintings"));
  CHECK(holds(text.out, "Without it"));
  CHECK_FALSE(holds(call({"ladder", "demo"}).out, "studio"));
  const std::string log = finished.file("none.log");
  CHECK(holds(call({"next", "demo", log, "--studio", finished.path()}).out, "From the studio"));
  CHECK(holds(call({"sheet", "demo", "--studio", finished.path()}).out, "From the studio"));
}

TEST_CASE("how a figure came follows the studio, and names it as the source", "[studio]") {
  const Finished finished;
  const auto told = [](const Result& result) { return nlohmann::json::parse(result.out); };
  const auto with = told(call({"explain", "demo", "rung 4", "--studio", finished.path(), "--format", "json"}));
  const auto without = told(call({"explain", "demo", "rung 4", "--format", "json"}));
  CHECK(with.at("steps") != without.at("steps"));
  std::size_t from_studio = 0;
  for (const auto& input : with.at("inputs")) {
    if (input.at("from") != "studio") continue;
    ++from_studio;
    CHECK(input.at("source").is_null());
    CHECK(input.at("standing").is_null());
  }
  CHECK(from_studio >= 8);  // centre and radius of the two layers
  CHECK(call({"ways", "demo", "--studio", finished.path()}).code == 0);
}

TEST_CASE("the painting that is planned does not count among the finished ones", "[studio]") {
  const Finished finished;
  const std::string job = finished.path() + "/first.yaml";
  const auto with = nlohmann::json::parse(call({"ladder", job, "--studio", finished.path(), "--format", "json"}).out);
  CHECK(with.at("studio")[0].at("paintings") == 2);
}

TEST_CASE("broken and foreign files of a studio are told in a line each, and the rest is used", "[studio]") {
  const Finished finished;
  write_file(finished.path() + "/broken.yaml", "gentlest_job: 1\nlayers: [\n");
  write_file(finished.path() + "/broken.log", log_text);
  write_file(finished.path() + "/alone.yaml", demo_job_text());
  write_file(finished.path() + "/orphan.log", log_text);
  write_file(finished.path() + "/letter.pdf", "%PDF-1.4\n");
  write_file(finished.path() + "/prices.csv", "a,b\n1,2\n");
  write_file(finished.path() + "/spot.png", "\x89PNG\r\n\x1A\n");
  const Result result = call({"studio", finished.path()});
  INFO(result.err);
  CHECK(result.code == 0);
  CHECK(holds(result.out, "The studio: 3 finished paintings"));
  CHECK(lines_of(result.err).size() == 5);
  for (const char* told : {"broken.yaml", "alone.yaml: error: this job has no log",
                           "orphan.log: error: this log has no job", "letter.pdf: error: this is no job", "prices.csv"})
    CHECK(holds(result.err, told));
  CHECK_FALSE(holds(result.err, "spot.png"));
}

TEST_CASE("a studio of nothing is a fault, and so is no folder", "[studio]") {
  const Folder folder;
  std::filesystem::create_directories(folder.file("empty"));
  CHECK(call({"studio", folder.file("empty")}).code == 3);
  CHECK(call({"studio", folder.file("nowhere")}).code == 3);
  CHECK(call({"ladder", "demo", "--studio", folder.file("nowhere")}).code == 3);
}

TEST_CASE("what is shared holds no word of title, place, person or remark", "[studio]") {
  const Finished finished;
  const std::string out = finished.file("shared.csv");
  const Result result = call({"share", finished.path(), "--output", out});
  INFO(result.err);
  CHECK(result.code == 0);
  const std::string text = read_file(out);
  const auto rows = csv_rows(text);
  REQUIRE(rows.size() == 10);
  CHECK(rows[0][0] == "shared_format");
  CHECK(rows[1][1] == "1");
  CHECK(rows[9][1] == "3");
  std::set<std::string> allowed;  // of the catalogue's names and the columns
  for (const char* word : {"isooctane", "acetone", "aqueous", "not", "nothing", "removed", "effect", "seen"})
    allowed.insert(word);
  const std::set<std::string> shared = words_of(text);
  for (const char* word : {"zanzibar", "wombat", "timbuktu", "quetzal", "xylophone", "mongoose", "narwhal", "pears"})
    CHECK(shared.count(word) == 0);
  for (const std::string& word : words_of(log_text + " Wombat at Timbuktu, narwhal cloth, dark background, varnish"))
    if (word != "original" && word != "mixture" && word != "removal" && word != "seconds" && word != "removed" &&
        word != "fully" && allowed.count(word) == 0) {
      INFO(word);
      CHECK(shared.count(word) == 0);
    }
  CHECK_FALSE(holds(text, "1987"));
  CHECK(call({"share", finished.path() + "/first.yaml", "--output", "-"}).out ==
        call({"share", finished.path() + "/first.yaml", finished.path() + "/first.log"}).out);
}

TEST_CASE("a folder takes in what others shared, by its source, and does not hand it on", "[studio]") {
  const Finished finished;
  const std::string others = finished.file("others");
  std::filesystem::create_directories(others);
  REQUIRE(call({"share", finished.path(), "--output", others + "/north.csv"}).code == 0);
  const auto rows = nlohmann::json::parse(call({"studio", others, "--format", "json"}).out).at("studio");
  REQUIRE(rows.size() == 6);
  CHECK(rows[0].at("source") == "north.csv");
  CHECK(rows[0].at("tests") == 2);
  CHECK(call({"share", others}).code == 3);
}

}  // namespace gentlest::test
