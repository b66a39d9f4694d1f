// record, import, readings, next and fit through the whole program.
#include "cli/program.hpp"

#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

using namespace gentlest;
using namespace gentlest::test;

namespace {

const std::string mixture = "mixture=isooctane 70, acetone 30";

}  // namespace

TEST_CASE("a reading is recorded, listed and learnt from") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  const Result first = call({"record", "demo", log, mixture, "removal=partly removed", "original=nothing seen",
                             "seconds=20", "passage=white cloth", "x_cm=3.5", "y_cm=40"});
  INFO(first.err);
  CHECK(first.code == 0);
  CHECK(holds(first.out, "test 1 written to"));
  CHECK(holds(first.out, "holds 1 test"));
  CHECK(holds(read_file(log), "\"mixture\":\"isooctane 70, acetone 30\""));
  const auto listed = nlohmann::json::parse(call({"readings", log, "--format", "json"}).out);
  REQUIRE(listed.at("readings").size() == 1);
  CHECK(listed.at("readings")[0].at("seconds") == 20);
  const auto before = nlohmann::json::parse(call({"next", "demo", folder.file("none.log"), "--format", "json"}).out);
  const auto after = nlohmann::json::parse(call({"next", "demo", log, "--format", "json"}).out);
  CHECK(before.at("next")[0].at("readings_counted") == 0);
  CHECK(after.at("next")[0].at("readings_counted") == 1);
  CHECK(before.at("next")[0].at("effect") != after.at("next")[0].at("effect"));
  const Result text = call({"next", "demo", log, "--full"});
  CHECK(holds(text.out, "What the tests taught"));
  CHECK(holds(text.out, "particles effective"));
  for (const std::string& line : lines_of(text.out)) CHECK(line.size() <= 101);
  for (const char* word : {" safe ", " safe.", "recommended", "will not affect"}) CHECK_FALSE(holds(text.out, word));
}

TEST_CASE("a test at the edge says how it is recorded, and once it passed the mixture comes onto the picture") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  const Result first = call({"next", "demo", log});
  REQUIRE(holds(first.out, "rung 1, at the edge: "));
  CHECK(holds(first.out, "record it with at_edge=yes"));
  const auto row = nlohmann::json::parse(call({"next", "demo", log, "--format", "json"}).out).at("next")[0];
  const std::string proposed = row.at("mixture");
  CHECK(row.at("place") == "edge");
  CHECK(call({"record", "demo", log, "mixture=" + proposed, "at_edge=yes", "removal=fully removed",
              "original=nothing seen"})
            .code == 0);
  const Result second = call({"next", "demo", log});
  CHECK(holds(second.out, "rung 1, on the picture, white cloth: " + proposed));
  CHECK_FALSE(holds(second.out, "at_edge=yes"));
}

TEST_CASE("a correction and a withdrawal are later lines") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  call({"record", "demo", log, mixture, "removal=no effect"});
  call({"record", "demo", log, mixture, "removal=fully removed"});
  const std::string before = read_file(log);
  CHECK(call({"record", "demo", log, "test=1", mixture, "removal=partly removed", "correction=seen dry"}).code == 0);
  CHECK(call({"record", "demo", log, "test=2", "correction=wrong bottle", "withdrawn=yes"}).code == 0);
  CHECK(read_file(log).rfind(before, 0) == 0);
  const auto listed = nlohmann::json::parse(call({"readings", log, "--format", "json"}).out);
  REQUIRE(listed.at("readings").size() == 1);
  CHECK(listed.at("readings")[0].at("removal") == "partly removed");
}

TEST_CASE("what a reading cannot be is told at once, and nothing is written") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  const Result bad =
      call({"record", "demo", log, "mixtur=x", "passage=white cloht", "removal=much", "seconds=-1", "plain"});
  CHECK(bad.code == 2);
  for (const char* piece : {"did you mean \"mixture=...\"?", "did you mean \"white cloth\"?", "\"much\" is not",
                            "contact time", "\"plain\" is not understood", "nothing was read"})
    CHECK(holds(bad.err, piece));
  CHECK(call({"record", "demo", log, "mixture=isooctane 70, acetne 30", "removal=no effect"}).code == 2);
  CHECK(folder.count() == 0);
  write_file(log, "{\"gentlest_log\":2}\n");
  CHECK(call({"record", "demo", log, mixture, "removal=no effect"}).code == 3);
  CHECK(call({"next", "demo", log}).code == 3);
  CHECK(read_file(log) == "{\"gentlest_log\":2}\n");
  CHECK(call({"readings", folder.file("none.log")}).code == 3);
}

TEST_CASE("what a table says clearly comes in, and the rest is told") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  write_file(folder.file("good.csv"),
             "mixture,removal,original,passage\r\n\"isooctane 70, acetone 30\",no effect,nothing seen,white cloth\r\n"
             "acetone 100,fully removed,softened,dark background\r\n");
  CHECK(call({"import", "demo", log, folder.file("good.csv")}).code == 0);
  write_file(folder.file("bad.csv"), "mixture,removal\r\nacetone 100,no effect\r\nacetone 100,some\r\n");
  const std::string before = read_file(log);
  const Result dry = call({"import", "demo", log, folder.file("bad.csv"), "--dry-run"});
  CHECK(dry.code == 3);
  CHECK(holds(dry.out, "nothing was written"));
  CHECK(holds(dry.out, "line 2: test 3: acetone 100; no effect\n"));
  CHECK(holds(dry.out, "line 3: not understood: \"some\" is not understood"));
  CHECK(holds(dry.out, "1 reading would be added to " + log + ", 0 left out, 1 not understood"));
  CHECK(read_file(log) == before);
  const Result bad = call({"import", "demo", log, folder.file("bad.csv")});
  CHECK(bad.code == 3);
  CHECK(holds(bad.err, "bad.csv:3:13"));
  CHECK(holds(bad.out, "test 3 written to"));
  CHECK(holds(bad.out, "not understood and left out: 1 row"));
  CHECK(read_file(log).rfind(before, 0) == 0);
  CHECK(lines_of(read_file(log)).size() == lines_of(before).size() + 1);
  // A harm reading counts against the paint.
  const Result next = call({"next", "demo", log, "--format", "json"});
  CHECK(nlohmann::json::parse(next.out).at("next")[0].at("readings_counted") == 3);
}

TEST_CASE("a dry run makes no log, and a table of which nothing is understood neither") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  const std::string table = folder.file("bench.csv");
  write_file(table, "mixture,removal\nacetone 100,no effect\n");
  const Result dry = call({"import", "demo", log, table, "--dry-run", "--format", "json"});
  CHECK(dry.code == 0);
  const auto rows = nlohmann::json::parse(dry.out).at("recorded");
  REQUIRE(rows.size() == 1);
  CHECK(rows[0].at("written") == false);
  CHECK(rows[0].at("why_not") == "dry run");
  CHECK_FALSE(std::filesystem::exists(log));
  write_file(table, "mixture,removal\nacetone 100,some\nno such liquid 100,no effect\n");
  const Result none = call({"import", "demo", log, table});
  CHECK(none.code == 3);
  CHECK(holds(none.err, "bench.csv:2:13"));
  CHECK(holds(none.err, "bench.csv:3: error"));
  CHECK_FALSE(std::filesystem::exists(log));
}

TEST_CASE("an old table comes in: strokes, a title, years, ratios, signs of its own, an old encoding") {
  const Folder folder;
  const std::string job = folder.file("easel.yaml");
  const std::string log = folder.file("easel.log");
  const std::string table = folder.file("old.csv");
  write_file(job, demo_job_text() + "\ngrades: {\"++\": dissolves, \"+\": partly removed, \"-\": none}\n");
  write_file(table,
             "Tests of the summer|\n"
             "YEAR|Solvents|Ratio|RESULT|Paint|Weather|By\n"
             "1987|acetone : isooctane|1:4|-|-|rain|M\xFCller\n"
             "1987|ethanol / isooctane 1:1||++|-||M\xC3\xBCller\n"
             "1987|acetone|||-||\n"
             "1987|aceton 50 isoctan 50 or so||++|-||\n"
             "1987|acetone||++|-||\x81\n");
  const Result taken = call({"import", job, log, table});
  INFO(taken.out << taken.err);
  CHECK(taken.code == 3);
  CHECK(lines_of(read_file(log)).size() == 4);
  CHECK(holds(read_file(log), "\"mixture\":\"isooctane 80, acetone 20\""));
  CHECK(holds(read_file(log), "\"date\":\"1987\",\"who\":\"M\xC3\xBCller\""));
  CHECK(holds(read_file(log), "\"removal\":\"fully removed\""));
  CHECK(holds(read_file(log), "\"remark\":\"Weather: rain\""));
  CHECK(holds(taken.err, "old.csv:6"));
  CHECK(holds(taken.err, "old.csv:7: error: the line is neither"));
  CHECK(holds(taken.out, "1 row above the headings left out"));
  CHECK(holds(taken.out, "1 line read as Windows-1252"));
  // What came in is known again.
  CHECK(holds(call({"import", job, log, table}).out, "nothing new was written"));
}

TEST_CASE("signs for grades are held to the words of the trade") {
  const Folder folder;
  const std::string job = folder.file("easel.yaml");
  write_file(job, demo_job_text() + "\ngrades:\n  \"++\": gone\n  original: {\"+\": blanched}\n  removal: partly\n");
  const Result result = call({"check", job});
  INFO(result.out);
  CHECK(result.code == 3);
  CHECK(holds(result.out, "\"gone\" is no grade of a reading"));
  CHECK(holds(result.out, "write removal: {\"+\": partly removed}"));
  CHECK_FALSE(holds(result.out, "blanched"));
}

TEST_CASE("record and import answer in rows as well, and the log is the same") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  const std::string table = folder.file("bench.csv");
  write_file(table, "mixture,removal\nisooctane 100,no effect\nacetone 100,fully removed\n");
  const auto first = call({"record", "demo", log, mixture, "removal=no effect", "--format", "json"});
  const auto one = nlohmann::json::parse(first.out).at("recorded");
  REQUIRE(one.size() == 1);
  CHECK(one[0].at("test") == 1);
  CHECK(one[0].at("written") == true);
  CHECK(one[0].at("line_of_table").is_null());
  CHECK(one[0].at("log") == log);
  CHECK(call({"import", "demo", log, table}).code == 0);
  const auto again = nlohmann::json::parse(call({"import", "demo", log, table, "--format", "json"}).out).at("recorded");
  REQUIRE(again.size() == 2);
  CHECK(again[1].at("test") == 3);
  CHECK(again[1].at("written") == false);
  CHECK(again[1].at("line_of_table") == 3);
  const Result csv = call({"record", "demo", log, mixture, "removal=no effect", "--format", "csv"});
  CHECK(holds(csv.out, "test,written,line_of_table,log,why_not,law_seen_until,program,catalogue\r\n4,yes,not known,"));
  CHECK(lines_of(read_file(log)).size() == 5);
}

TEST_CASE("an option that would change nothing is neither offered nor taken") {
  for (const char* command : {"manual", "completion"})
    for (const char* option : {"--format", "--data"}) {
      const Result result = call({command, option, "json"});
      CHECK(result.code == 2);
      CHECK(holds(result.err, "takes no option " + std::string(option)));
      CHECK_FALSE(holds(call({"help", command}).out, option));
    }
  CHECK_FALSE(holds(call({"help", "sheet"}).out, "--format"));
  CHECK(call({"new", "-", "--format", "json"}).code == 2);
}

TEST_CASE("two reactions of the original end in exit code 1") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  for (const char* share : {"mixture=acetone 100", "mixture=acetone 90, isooctane 10"})
    REQUIRE(call({"record", "demo", log, share, "removal=softened or gelled", "original=softened"}).code == 0);
  const Result next = call({"next", "demo", log});
  CHECK(next.code == 1);
  CHECK(holds(next.out, "stop, look, talk it over"));
}

TEST_CASE("lines of a log that make no sense are told while the others count") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  call({"record", "demo", log, mixture, "removal=no effect"});
  write_file(log, read_file(log) + "garbage\n{\"test\":2");
  const Result next = call({"next", "demo", log, "--format", "json"});
  CHECK(next.code == 0);
  CHECK(holds(next.err, "easel.log:3: error"));
  CHECK(holds(next.err, "easel.log:4: error: the last line was cut off"));
  CHECK(nlohmann::json::parse(next.out).at("next")[0].at("readings_counted") == 1);
}

TEST_CASE("own tests become a sphere that a job takes") {
  const Folder folder;
  const std::string table = folder.file("resin.csv");
  write_file(table,
             "solvent,dissolves\nisooctane,no\ntoluene,yes\nacetone,yes\nethanol,no\nethyl_acetate,yes\nbutanone,yes\n"
             "n_butanol,no\nwhite_spirit_dearomatised,no\ncyclohexanone,yes\nxylene,yes\nbenzyl_alcohol,no\n");
  const Result fit = call({"fit", table});
  INFO(fit.err);
  CHECK(fit.code == 0);
  CHECK(holds(fit.out, "own_sphere: {dD: "));
  CHECK(holds(fit.out, "5 of 11 liquids") == false);
  CHECK(holds(fit.out, "6 of 11 liquids dissolve it"));
  const auto json = nlohmann::json::parse(call({"fit", table, "--format", "json"}).out);
  CHECK(json.at("sphere").size() == 4);
  write_file(table, "solvent,grade\nacetne,1\n");
  const Result bad = call({"fit", table});
  CHECK(bad.code == 3);
  CHECK(holds(bad.err, "did you mean \"acetone\"?"));
}

TEST_CASE("free words are shown and asked before they are written", "[noted]") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  const std::vector<std::string> words = {"record",  "demo",  log,      "rung", "4:", "partly,",
                                          "nothing", "seen,", "white,", "20",   "s,", "edge"};
  const Result unasked = call(words);
  CHECK(unasked.code == 2);
  CHECK(holds(unasked.err, "mixture: isooctane 55, acetone 45\n    rung 4\n"));
  CHECK(holds(unasked.err, "passage: white cloth"));
  CHECK(holds(unasked.err, "add --yes"));
  CHECK(folder.count() == 0);
  Surroundings terminal;
  terminal.can_be_asked = true;
  for (const char* answer : {"n\n", "\n", "", "maybe\n"}) {
    const Result refused = call(words, answer, terminal);
    CHECK(refused.code == 0);
    CHECK(holds(refused.err, "write this? [y/N] "));
    CHECK(holds(refused.out, "nothing was written"));
    CHECK(folder.count() == 0);
  }
  const Result agreed = call(words, "y\n", terminal);
  CHECK(agreed.code == 0);
  CHECK(holds(read_file(log),
              "\"mixture\":\"isooctane 55, acetone 45\",\"passage\":\"white cloth\",\"at_edge\":true,"
              "\"seconds\":20,\"removal\":\"partly removed\",\"original\":\"nothing seen\""));
  const Result later =
      call({"record", "demo", log, "--yes", "test 1, next day: blanched", "--", "seen", "in", "raking light"});
  CHECK(later.code == 0);
  CHECK(holds(later.out, "This counts as HARM to the original."));
  CHECK(holds(read_file(log), "\"remark\":\"seen in raking light\""));
  CHECK(call({"record", "demo", log, "--yes", "test 1, next day: blanched"}).code == 3);
  CHECK(call({"record", "demo", log, "--yes", "test 9, next day: blanched"}).code == 3);
  const Result next = call({"next", "demo", log});
  CHECK(holds(next.out, "(1 day after)"));
  // KEY=VALUE alone is written at once, with the rung in full.
  CHECK(call({"record", "demo", log, "mixture=rung 2", "removal=none", "original=ok"}).code == 0);
  CHECK(holds(read_file(log), "isooctane 85, acetone 15"));
  const Result unknown = call({"record", "demo", log, "--yes", "citrate 2 %: none, none"});
  CHECK(unknown.code == 2);
  CHECK(holds(unknown.err, "\"aqueous: NAME\""));
}

TEST_CASE("a rung is a mixture wherever one is typed, a solution of one's own is none", "[noted]") {
  const Result vial = call({"vial", "demo", "rung", "3", "--format", "json"});
  CHECK(vial.code == 0);
  CHECK(vial.out == call({"vial", "demo", "isooctane 70, acetone 30", "--format", "json"}).out);
  CHECK(call({"mixture", "demo", "rung 3", "--format", "json"}).out ==
        call({"mixture", "demo", "isooctane 70, acetone 30", "--format", "json"}).out);
  CHECK(call({"mixture", "demo", "rung", "99"}).code == 2);
  CHECK(holds(call({"vial", "demo", "aqueous: citrate"}).err, "is no solvent mixture"));
}

TEST_CASE("a table of a spreadsheet comes in, and a list of readings comes back in unchanged", "[table]") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  const std::string table = folder.file("bench.csv");
  write_file(table,
             "Nr.;Gemisch;Firnis;Malschicht;Stelle;Wetter\n1;rung 3;teilweise;nichts gesehen;white cloth;Regen\n"
             "2;aqueous: citrate 2 %;keine;nichts gesehen;white cloth;\n");
  const Result result = call({"import", "demo", log, table});
  INFO(result.err);
  CHECK(result.code == 0);
  CHECK(holds(result.out, "Firnis as removal"));
  CHECK(holds(result.out, "into the remark: Wetter"));
  CHECK(holds(read_file(log), "\"mixture\":\"isooctane 70, acetone 30\""));
  CHECK(holds(read_file(log), "\"remark\":\"Wetter: Regen\""));
  const Result next = call({"next", "demo", log, "--full"});
  CHECK(holds(next.out, "the beliefs leave out test 2: aqueous: citrate 2 % is no solvent mixture"));
  const std::string before = read_file(log);
  write_file(folder.file("listed.csv"), call({"readings", log, "--format", "csv"}).out);
  const Result again = call({"import", "demo", log, folder.file("listed.csv")});
  INFO(again.err);
  CHECK(again.code == 0);
  CHECK(holds(again.out, "line 2 says what test 1 says"));
  CHECK(read_file(log) == before);
}

// From the printed card to the log in under 30 s a swab: at three keys a second, which is slow, that is 90 keys.
TEST_CASE("six swabs are recorded with less than 90 keys each", "[noted]") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  const std::string typed_before = "gentlest record easel.yaml easel.log ";
  Surroundings terminal;
  terminal.can_be_asked = true;
  std::size_t keys = 0;
  for (const char* swab : {"rung 1: none, ok, edge, 20 s", "rung 2: none, ok, edge, 20 s",
                           "rung 4: softened, ok, edge, 20 s", "rung 4: partly, ok, white, 20 s",
                           "rung 5: mostly, ok, white, 20 s, 8 rolls", "rung 5: mostly, blanched, dark, 20 s"}) {
    INFO(swab);
    const Result result = call({"record", "demo", log, swab}, "y\n", terminal);
    INFO(result.err);
    CHECK(result.code == 0);
    const std::size_t here = typed_before.size() + std::string(swab).size() + 3;  // Enter, y, Enter
    CHECK(here < 90);
    keys += here;
  }
  CHECK(keys == 435);  // docs/data-format.md says so
  CHECK(lines_of(read_file(log)).size() == 7);
}

TEST_CASE("a word of harm beside nothing seen is asked back, wherever a reading is written") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  const auto record = [&](const char* said) {
    return call(
        {"record", "demo", log, "mixture=isooctane 100", "removal=partly removed", "original=nothing seen", said});
  };
  for (const char* said :
       {"signs=blanched", "after_drying=blanched", "signs=paint tacky", "signs=patchy, lost gloss"}) {
    const Result refused = record(said);
    INFO(said << refused.out << refused.err);
    CHECK(refused.code == 2);
    CHECK(holds(refused.err, "contradict each other"));
  }
  const std::string table = folder.file("table.csv");
  write_file(table, "mixture,removal,original,signs\nisooctane 100,no effect,nothing seen,blanched\n");
  const Result taken = call({"import", "demo", log, table});
  CHECK(taken.code == 3);
  CHECK(holds(taken.err, "table.csv:2"));
  CHECK_FALSE(std::filesystem::exists(log));
  // Of the layer to go, and of drying that left nothing, it is none.
  for (const char* said : {"signs=varnish tacky", "signs=patchy", "after_drying=nothing seen"})
    CHECK(record(said).code == 0);
}

TEST_CASE("a person's own column \"Harm\" goes to the remark") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  const std::string table = folder.file("table.csv");
  write_file(table, "mixture,removal,Harm\nisooctane 100,no effect,blanched badly\n");
  const Result taken = call({"import", "demo", log, table});
  INFO(taken.err);
  CHECK(taken.code == 0);
  CHECK(holds(read_file(log), "blanched badly"));
}

TEST_CASE(
    "a table that says \"edge\" where a passage stands means the edge, unless the job has a passage of that name") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  const std::string table = folder.file("table.csv");
  write_file(
      table,
      "Mixture,Result,Where,When\nisooctane 100,no effect,Edge,2019\nacetone 20 isooctane 80,no effect,am Rand,\n");
  const Result taken = call({"import", "demo", log, table});
  INFO(taken.err);
  CHECK(taken.code == 0);
  const std::string lines = read_file(log);
  CHECK(holds(lines, "\"at_edge\":true"));
  CHECK(holds(lines, "\"date\":\"2019\""));
  CHECK_FALSE(holds(lines, "\"passage\""));
  const std::string job = folder.file("job.yaml");
  write_file(job,
             "gentlest_job: 1\nlayers:\n  - {name: varnish, role: remove, found: dammar_aged}\n"
             "  - {name: paint, role: keep, found: oil_paint_old}\npassages: [{name: edge, of: paint}]\n"
             "shelf: [isooctane, acetone]\n");
  write_file(table, "Mixture,Result,Where\nisooctane 100,no effect,edge\n");
  const std::string other = folder.file("other.log");
  CHECK(call({"import", job, other, table, "--new-log"}).code == 0);
  CHECK(holds(read_file(other), "\"passage\":\"edge\""));
}

TEST_CASE("a refused row that tells of harm keeps the whole table out of the log") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  const std::string table = folder.file("table.csv");
  for (const char* row : {"acetone 30 isooctane 70,partly removed,change that stays,2026-13-45\n",
                          "moonshine 100,partly removed,softened,\n"}) {
    write_file(table, std::string("mixture,removal,original,date\nisooctane 100,no effect,nothing seen,\n") + row);
    const Result taken = call({"import", "demo", log, table});
    INFO(row << taken.err);
    CHECK(taken.code == 3);
    CHECK(holds(taken.err, "table.csv:3: error: this row tells of harm"));
    CHECK_FALSE(std::filesystem::exists(log));
  }
}

TEST_CASE("every rung that a harm closed is named by its recipe for the page") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  CHECK(call({"record", "demo", log, "--yes", "rung 3: partly, softened, white cloth"}).code == 0);
  const auto row = nlohmann::json::parse(call({"next", "demo", log, "--format", "json"}).out).at("next").at(0);
  const std::string closed = row.at("closed_mixtures");
  // As the ladder writes them: the greater share first.
  for (const char* recipe : {"isooctane 55, acetone 45", "acetone 60, isooctane 40", "acetone 75, isooctane 25"})
    CHECK(holds(" | " + closed + " | ", std::string(" | ") + recipe + " | "));
  CHECK_FALSE(holds(closed, "isooctane 85"));
}
