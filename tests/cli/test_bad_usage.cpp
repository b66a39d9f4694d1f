// Command lines that cannot be right: what is said, that the exit code is right, and that nothing else is written.
#include "program.hpp"

#include <catch2/catch.hpp>

namespace gentlest::test {

namespace {

struct BadCall {
  std::vector<std::string> args;
  int code;
  std::string message;  // must stand in what is said
  std::string remedy;   // likewise
};

const std::vector<BadCall>& bad_calls() {
  static const std::vector<BadCall> calls = {
      // commands and their words
      {{"laddr", "demo"}, 2, "unknown command \"laddr\"", "did you mean \"ladder\"?"},
      {{"qqqqqqqq"}, 2, "unknown command \"qqqqqqqq\"", "`gentlest help` lists the commands"},
      {{""}, 2, "unknown command \"\"", "`gentlest help` lists the commands"},
      {{"ladder"}, 2, "\"ladder\" needs more words", "write: gentlest ladder JOB|demo"},
      {{"ladder", "demo", "--full", "demo"}, 2, "does not know what to do with \"demo\"", "gentlest ladder JOB|demo"},
      {{"mixture", "demo"}, 2, "\"mixture\" needs more words", "NAME SHARE"},
      {{"show"}, 2, "\"show\" needs more words", "write: gentlest show NAME..."},
      {{"check"}, 2, "\"check\" needs more words", "write: gentlest check FILE..."},
      {{"new"}, 2, "\"new\" needs more words", "write: gentlest new FILE"},
      {{"version", "please"}, 2, "does not know what to do with \"please\"", "write: gentlest version"},
      {{"help", "laddr"}, 2, "unknown command \"laddr\"", "did you mean \"ladder\"?"},
      // options
      {{"ladder", "demo", "--full", "--formt", "json"}, 2, "unknown option \"--formt\"", "did you mean \"--format\"?"},
      {{"ladder", "demo", "--full", "--form", "json"}, 2, "unknown option \"--form\"", ""},
      {{"ladder", "demo", "--full", "--zzzzzzzz"}, 2, "unknown option \"--zzzzzzzz\"", "gentlest help COMMAND"},
      {{"ladder", "demo", "--full", "-z"}, 2, "unknown option \"-z\"", "gentlest help COMMAND"},
      {{"ladder", "demo", "--full", "--family", "alcohol"},
       2,
       "\"ladder\" takes no option --family",
       "it belongs to: list"},
      {{"show", "ethanol", "--risk-limit", "0.1"}, 2, "takes no option --risk-limit", "ladder, compare, mixture"},
      {{"ladder", "demo", "--full", "--parts", "2", "--parts", "3"}, 2, "--parts stands twice", "give it once"},
      {{"ladder", "demo", "--full", "--format"}, 2, "--format has no value", "write --format FORM"},
      {{"ladder", "demo", "--full", "--output="}, 2, "--output has no value", "write --output FILE"},
      {{"ladder", "demo", "--full", "--quiet=1"}, 2, "--quiet takes no value", "write it alone"},
      {{"ladder", "demo", "--full", "--target", ""}, 2, "--target has an empty value", "leave it out or fill it"},
      // values
      {{"ladder", "demo", "--format", "jsn"}, 2, "unknown format \"jsn\"", "did you mean \"json\"?"},
      {{"ladder", "demo", "--format", "parquet"}, 2, "unknown format \"parquet\"", "text, csv or json"},
      {{"ladder", "demo", "--risk-limit", "0,1"},
       2,
       "\"0,1\" is not a chance between 0 and 1",
       "write 0.1, with a point"},
      {{"ladder", "demo", "--risk-limit", "-0.1"}, 2, "\"-0.1\" is not a chance", "did you mean 0.1?"},
      {{"ladder", "demo", "--risk-limit", "nan"}, 2, "\"nan\" is not a chance", "0.1 for 10 %"},
      {{"ladder", "demo", "--risk-limit", "10"}, 2, "\"10\" is not a chance", "did you mean 0.1?"},
      {{"ladder", "demo", "--risk-limit", "0"}, 2, "\"0\" is not a chance", "0.1 for 10 %"},
      {{"ladder", "demo", "--parts", "5"}, 2, "\"5\" is not a whole number from 1 to 4", "--parts 1"},
      {{"ladder", "demo", "--parts", "2.5"}, 2, "\"2.5\" is not a whole number", "--parts 1"},
      {{"ladder", "demo", "--parts", "two"}, 2, "\"two\" is not a whole number", "write 2"},
      {{"ladder", "demo", "--bottles", "99999999999"}, 2, "is not a whole number from 1 to", "--bottles 1"},
      {{"ladder", "demo", "--rungs", "-3"}, 2, "\"-3\" is not a whole number", "did you mean 3?"},
      {{"ladder", "demo", "--finer", "3"}, 2, "\"3\" is not a stretch", "--finer 3:4"},
      {{"ladder", "demo", "--finer", "4:3"}, 2, "\"4:3\" is not a stretch", "--finer 3:4"},
      {{"ladder", "demo", "--finer", "3:3"}, 2, "\"3:3\" is not a stretch", "--finer 3:4"},
      {{"ladder", "demo", "--finer", "0:3"}, 2, "\"0:3\" is not a stretch", "--finer 3:4"},
      {{"ladder", "demo", "--finer", "3:4:5"}, 2, "\"3:4:5\" is not a stretch", "--finer 3:4"},
      {{"ladder", "demo", "--finer", "3:"}, 2, "\"3:\" is not a stretch", "--finer 3:4"},
      {{"ladder", "demo", "--finer", "7:8"}, 2, "no stretch from rung 7 to rung 8", "its rungs are 1 to 7 at most"},
      {{"compare", "demo", "--finer", "1:2"}, 2, "\"compare\" takes no option --finer", "it belongs to: ladder"},
      {{"compare"}, 2, "\"compare\" needs more words", "write: gentlest compare JOB|demo"},
      {{"ladder", "demo", "--full", "--step", "7"}, 2, "does not divide 100", "5, 10"},
      {{"ladder", "demo", "--full", "--parts", "3", "--bottles", "2"},
       2,
       "contradict each other",
       "at least as many bottles"},
      {{"ladder", "demo", "--full", "--target", "varnsh"}, 2, "no layer \"varnsh\"", "did you mean \"varnish\"?"},
      {{"ladder", "demo", "--full", "--target", "oil paint"}, 2, "no layer \"oil paint\" with role remove", ""},
      {{"list", "solvent"}, 2, "unknown list \"solvent\"", "did you mean \"solvents\"?"},
      {{"list", "paintings"}, 2, "unknown list \"paintings\"", "solvents, materials, names, sources, families"},
      {{"list", "solvents", "--family", "alcohl"}, 2, "unknown family \"alcohl\"", "did you mean \"alcohol\"?"},
      {{"list", "solvents", "--having", "hazrds"}, 2, "unknown figure \"hazrds\"", "did you mean \"hazards\"?"},
      {{"list", "materials", "--having", "antoine"}, 2, "unknown figure \"antoine\"", "sphere"},
      {{"list", "sources", "--family", "alcohol"}, 2, "takes neither --family nor --having", "`list solvents`"},
      {{"show", "ethnol"}, 2, "unknown solvent or material \"ethnol\"", "did you mean \"ethanol\"?"},
      {{"show", "dammar"}, 2, "\"dammar\" may be more than one material", "dammar_aged (aged, yellowed)"},
      {{"show", "white", "spirit", "x"}, 2, "unknown solvent or material \"x\"", "gentlest list"},
      {{"show", "damar_aged"}, 2, "unknown solvent or material \"damar_aged\"", "did you mean \"dammar_aged\"?"},
      // mixtures
      {{"mixture", "demo", "ethnol 30, isooctane 70"}, 2, "unknown solvent \"ethnol\"", "did you mean \"ethanol\"?"},
      {{"mixture", "demo", "ethanol 30, isooctane 60"}, 2, "add up to 90", "100 (per cent) or to 1"},
      {{"mixture", "demo", "ethanol -30, isooctane 130"}, 2, "the share -30 must be above 0", "leave the liquid out"},
      {{"mixture", "demo", "ethanol nan, isooctane 70"}, 2, "not a number", "e.g. 30"},
      {{"mixture", "demo", "ethanol 30, ethanol 70"}, 2, "stands twice", "add the shares up"},
      {{"mixture", "demo", "   "}, 2, "the mixture is empty", "ethanol 30, isooctane 70"},
      // files
      {{"ladder", "/nowhere/easel.yaml", "--full"}, 3, "/nowhere/easel.yaml", "cannot be read"},
      {{"ladder", "/", "--full"}, 3, "/: error:", ""},
      {{"ladder", "demo", "--full", "--data", "/nowhere"}, 3, "/nowhere", "laid out like solvents/"},
      {{"ladder", "demo", "--full", "--output", "/nowhere/plan.txt"}, 3, "/nowhere/plan.txt", "cannot be written"},
      {{"ladder", "demo", "--full", "--output", "/"}, 3, "is a folder", ""},
      {{"new", "/nowhere/easel.yaml"}, 3, "/nowhere/easel.yaml", "cannot be written"},
      {{"calibrate", "/nowhere"}, 3, "/nowhere/published.csv", "folder of score sets"},
  };
  return calls;
}

std::string command_line(const std::vector<std::string>& args) {
  std::string line = "gentlest";
  for (const std::string& arg : args) line += " \"" + arg + "\"";
  return line;
}

}  // namespace

TEST_CASE("a command line that cannot be right is refused with what would be right") {
  for (const BadCall& bad : bad_calls()) {
    INFO(command_line(bad.args));
    const Result result = call(bad.args);
    INFO(result.err);
    CHECK(result.code == bad.code);
    CHECK(result.out.empty());
    CHECK(holds(result.err, "error: "));
    CHECK(holds(result.err, bad.message));
    CHECK(holds(result.err, bad.remedy));
  }
}

TEST_CASE("all unknown names are reported at once") {
  const Result result = call({"show", "ethnol", "acetnoe", "isooctane"});
  CHECK(result.code == 2);
  CHECK(holds(result.err, "\"ethnol\""));
  CHECK(holds(result.err, "\"acetnoe\""));
  CHECK_FALSE(holds(result.err, "\"isooctane\""));
}

TEST_CASE("a faulty job is refused with its line, and nothing is written") {
  const Folder folder;
  const std::string job = folder.file("easel.yaml");
  const std::string out = folder.file("plan.txt");
  write_file(job, "gentlest_job: 1\nlayers:\n  - {name: varnish, role: remoev}\n");
  for (const char* command : {"ladder", "mixture"}) {
    std::vector<std::string> args = {command, job, "--output", out};
    if (std::string(command) == "mixture") args.insert(args.begin() + 2, "ethanol 100");
    const Result result = call(args);
    INFO(result.err);
    CHECK(result.code == 3);
    CHECK(result.out.empty());
    CHECK(holds(result.err, "easel.yaml:3:"));
    CHECK(holds(result.err, "^"));
  }
  CHECK(folder.count() == 1);
}

}  // namespace gentlest::test
