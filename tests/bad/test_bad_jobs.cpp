// Faulty jobs, one fault each: a small sound job with one piece replaced, and what the program must say about it.
#include "shipped.hpp"

#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gentlest;

namespace {

const std::string sound_job = R"(gentlest_job: 1
object: {title: "T", width_cm: 60, height_cm: 40}
layers:
  - name: varnish
    role: remove
    found: dammar_aged
  - name: paint
    role: keep
    found: oil_paint_old
passages:
  - {name: white, of: paint}
shelf:
  - isooctane
  - {solvent: ethanol, grade: "96 %"}
  - acetone
limits:
  parts: 3
  bottles: 3
  step_percent: 5
  risk_limit: 0.25
)";

struct BadJob {
  const char* what;
  const char* piece;    // of the sound job
  const char* instead;  // what stands there
  const char* message;  // must appear, with its place in front
};

const BadJob bad_jobs[] = {
    {"unknown solvent", "  - acetone", "  - acetnoe", "bad.yaml:15:5: error: no solvent \"acetnoe\" is known"},
    {"nearest solvent named", "  - acetone", "  - acetnoe", "did you mean \"acetone\"?"},
    {"unknown solvent, nothing near", "  - acetone", "  - qqqqqqqqqq", "`gentlest list solvents` shows them all"},
    {"solvent twice", "  - acetone", "  - isooctane", "bad.yaml:15:5: error: isooctane stands on the shelf twice"},
    {"solvent is a number list", "  - acetone", "  - [1, 2]", "bad.yaml:15:5: error: bottle must be a group"},
    {"solvent without name", "  - acetone", "  - {grade: \"96 %\"}", "bad.yaml:15:5: error: bottle lacks the key"},
    {"empty solvent", "  - acetone", "  - \"\"", "bad.yaml:15:5: error: the name of a solvent is empty"},
    {"grade not understood", "\"96 %\"", "\"9 %\"", "bad.yaml:14:31: error: grade \"9 %\""},
    {"grade that is no number", "\"96 %\"", "\"nan %\"", "bad.yaml:14:31: error: the grade \"nan %\" of ethanol"},
    {"grade with more in it", "\"96 %\"", "\"96 % denatured\"", "denatured alcohol, is not counted"},
    {"grade in words", "\"96 %\"", "\"denatured\"", "the grade \"denatured\" of ethanol is not understood"},
    {"grade above 100", "\"96 %\"", "\"104 %\"", "between 50 and 100 %"},
    {"ambiguous solvent", "  - acetone", "  - propanol",
     "bad.yaml:15:5: error: \"propanol\" may be more than one solvent"},
    {"its choices", "  - acetone", "  - propanol", "n_propanol (1-propanol) or isopropanol"},
    {"ambiguous material", "dammar_aged", "dammar",
     "bad.yaml:6:12: error: \"dammar\" may be more than one material (layer \"varnish\")"},
    {"what the catalogue does not hold", "dammar_aged", "epoxy", "no record yet: cured epoxy resin"},
    {"unknown material", "dammar_aged", "damar_aged", "bad.yaml:6:12: error: no material \"damar_aged\" is known"},
    {"nearest material named", "dammar_aged", "damar_aged", "did you mean \"dammar_aged\"?"},
    {"unknown material of a layer without a sphere", "oil_paint_old", "egg_temprea", "did you mean \"egg_tempera\"?"},
    {"what to write where nobody knows", "oil_paint_old", "qqqqqqqqqq", "where nobody knows it, write unknown"},
    {"unknown is no material to weigh", "found: dammar_aged",
     "found: dammar_aged\n    possible: [{material: unknown, percent: 20}]", "no material \"unknown\" is known"},
    {"unknown solvent to allow", "  parts: 3", "  allow_acting: [acetnoe]\n  parts: 3",
     "no solvent \"acetnoe\" is known"},
    {"layer without material", "    found: dammar_aged\n", "", "layer \"varnish\" has no material"},
    {"layer without name", "  - name: varnish\n    role", "  - role", "layer lacks the key \"name\""},
    {"layer without role", "    role: remove\n", "", "layer lacks the key \"role\""},
    {"unknown role", "role: remove", "role: removed", "bad.yaml:5:11: error: \"removed\" is not a role"},
    {"two layers of one name", "name: paint", "name: varnish", "two layers are called \"varnish\""},
    {"nothing to remove", "role: remove", "role: keep", "no layer has the role remove"},
    {"nothing to keep", "role: keep", "role: remove", "no layer has the role keep"},
    {"passage of no layer", "of: paint", "of: pant", "did you mean \"paint\"?"},
    {"passage of the varnish", "of: paint", "of: varnish", "belongs to a layer that must go"},
    {"passage named as a layer", "name: white", "name: paint", "a layer is called \"paint\" as well"},
    {"two passages of one name", "  - {name: white, of: paint}",
     "  - {name: white, of: paint}\n  - {name: White, of: paint}",
     "bad.yaml:12:5: error: two passages are called \"White\""},
    {"passage named almost as a layer", "name: white", "name: Paint", "a layer is called \"paint\" as well"},
    {"measure too coarse for the vial", "  parts: 3", "  parts: 3\n  measure_mL: 9",
     "bad.yaml:18:15: error: a vial of 10 mL holds 1 steps of 9 mL, too few for 3 liquids"},
    {"vial too small for the measure", "  parts: 3", "  parts: 3\n  vial_mL: 0.4",
     "bad.yaml:18:12: error: a vial of 0.4 mL cannot be filled in steps of 0.5 mL"},
    {"measure too fine", "  parts: 3", "  parts: 3\n  vial_mL: 9000\n  measure_mL: 0.001",
     "bad.yaml:19:15: error: steps of 0.001 mL are too fine"},
    {"limits that leave no bottle", "  parts: 3",
     "  parts: 3\n  avoid_families: [alcohol, ketone, aliphatic hydrocarbon]",
     "bad.yaml:13:3: error: no bottle of the shelf may be used"},
    {"unknown flag", "    found: oil_paint_old", "    found: oil_paint_old\n    suspected: [resinos]",
     "\"resinos\" is not a flag"},
    {"unknown key in the job", "shelf:", "shelve:", "bad.yaml:12:1: error: the job has no key \"shelve\""},
    {"unknown key in a layer", "    found: dammar_aged", "    fund: dammar_aged", "did you mean \"found\"?"},
    {"unknown key in limits", "  parts: 3", "  part: 3", "did you mean \"parts\"?"},
    {"doubled key", "  parts: 3", "  parts: 3\n  parts: 2", "bad.yaml:18:3: error: \"parts\" stands here twice"},
    {"wrong type", "  parts: 3", "  parts: three", "bad.yaml:17:10: error: parts must be a number"},
    {"fraction of a part", "  parts: 3", "  parts: 2.5", "parts must be a whole number"},
    {"parts out of range", "  parts: 3", "  parts: 5", "bad.yaml:17:10: error: parts is 5, outside 1 to 4"},
    {"no parts", "  parts: 3", "  parts: 0", "parts is 0, outside 1 to 4"},
    {"step does not divide", "step_percent: 5", "step_percent: 7", "bad.yaml:19:17: error: step_percent is 7"},
    {"step of 0", "step_percent: 5", "step_percent: 0", "does not divide 100"},
    {"contradictory limits", "  bottles: 3", "  bottles: 2", "bad.yaml:18:12: error: limits contradict each other"},
    {"risk limit in per cent", "risk_limit: 0.25", "risk_limit: 25", "risk_limit is 25, not between 0 and 1"},
    {"negative risk limit", "risk_limit: 0.25", "risk_limit: -0.1", "not between 0 and 1"},
    {"a risk limit that is none", "risk_limit: 0.25", "risk_limit: 1", "write for example 0.1 for 10 %"},
    {"warm room", "  parts: 3", "  parts: 3\n  room_C: 60", "bad.yaml:18:11: error: room_C is 60, outside 0 to 40"},
    {"swabs at the edge", "  parts: 3", "  parts: 3\n  edge_tests: 31", "edge_tests is 31, outside 0 to 30"},
    {"decimal comma", "risk_limit: 0.25", "risk_limit: 0,25", "with a point instead of the comma"},
    {"not a number", "risk_limit: 0.25", "risk_limit: .nan", "risk_limit must be a number"},
    {"infinite", "risk_limit: 0.25", "risk_limit: .inf", "risk_limit must be a number"},
    {"quoted number", "risk_limit: 0.25", "risk_limit: \"0.25\"", "leave the quotes out"},
    {"unknown family", "  parts: 3", "  parts: 3\n  avoid_families: [ketones]", "did you mean \"ketone\"?"},
    {"unknown avoided solvent", "  parts: 3", "  parts: 3\n  avoid_solvents: [tolune]", "did you mean \"toluene\"?"},
    {"no statement code", "  parts: 3", "  parts: 3\n  avoid_statements: [carcinogenic]",
     "\"carcinogenic\" is no GHS hazard statement code"},
    {"no statement code on the label", "  parts: 3", "  parts: 3\n  avoid_label: [H304, poison]",
     "bad.yaml:18:23: error: \"poison\" is no GHS hazard statement code"},
    {"avoided label is no list", "  parts: 3", "  parts: 3\n  avoid_label: 304", "avoid_label must be a list"},
    {"flash point out of range", "  parts: 3", "  parts: 3\n  lowest_flash_point_C: 300",
     "bad.yaml:18:25: error: lowest_flash_point_C is 300, outside -100 to 200"},
    {"flash point with unit", "  parts: 3", "  parts: 3\n  lowest_flash_point_C: 23 C",
     "lowest_flash_point_C must be a number"},
    {"share above all", "  - acetone", "  - {solvent: acetone, at_most_percent: 130}",
     "bad.yaml:15:41: error: at_most_percent is 130, outside 1 to 100"},
    {"share of nothing", "  - acetone", "  - {solvent: acetone, at_most_percent: 0}", "at_most_percent is 0"},
    {"half a per cent", "  - acetone", "  - {solvent: acetone, at_most_percent: 12.5}", "must be a whole number"},
    {"share below a step", "  - acetone", "  - {solvent: acetone, at_most_percent: 4}",
     "bad.yaml:15:15: error: acetone: at_most_percent is 4, less than one step of 5 %"},
    {"not true or false", "  parts: 3", "  parts: 3\n  allow_unknown_hazards: maybe", "must be true or false"},
    {"negative size", "width_cm: 60", "width_cm: -60", "bad.yaml:2:32: error: width_cm is -60"},
    {"size with unit", "width_cm: 60", "width_cm: 60 cm", "width_cm must be a number"},
    {"newer format", "gentlest_job: 1", "gentlest_job: 2", "bad.yaml:1:15: error: this job has format 2"},
    {"no version", "gentlest_job: 1\n", "", "the job lacks the key \"gentlest_job\""},
    {"open bracket", "white, of: paint}", "white, of: paint", "bad.yaml:11:5: error: this bracket is never closed"},
    {"open quote", "title: \"T\"", "title: \"T", "bad.yaml:2:17: error: this quote is never closed"},
    {"tab", "    role: remove", "\trole: remove", "bad.yaml:5:1: error: a tab at the start of line 5"},
    {"anchor", "name: paint", "name: &p paint", "anchors (&name) are not used here"},
    {"shelf is a text", "shelf:\n  - isooctane\n", "shelf: isooctane\nnote:\n", "shelf must be a list"},
    {"layers is a map", "layers:\n", "layers: {a: 1}\nmore:\n", "layers must be a list"},
    {"radius 0", "    found: oil_paint_old",
     "    own_sphere: {dD: 18, dP: 6, dH: 9, R0: 0, sd_dD: 1, sd_dP: 1, sd_dH: 1, sd_R0: 1, source: x}",
     "R0 is 0, outside 0.1 to 40"},
    {"own sphere without source", "    found: oil_paint_old",
     "    own_sphere: {dD: 18, dP: 6, dH: 9, R0: 5, sd_dD: 1, sd_dP: 1, sd_dH: 1, sd_R0: 1}",
     "own_sphere lacks the key \"source\""},
};

std::string with(const BadJob& bad) {
  std::string text = sound_job;
  const std::size_t at = text.find(bad.piece);
  if (at != std::string::npos) text.replace(at, std::string(bad.piece).size(), bad.instead);
  return text;
}

std::string complaint_about_job(const std::string& text) {
  try {
    load_job(text, "bad.yaml", gentlest::test::shipped_catalogue());
  } catch (const InputError& error) {
    CHECK(error.kind() == Fault::file);
    return render(error.faults());
  }
  return "no complaint";
}

}  // namespace

TEST_CASE("the job that the bad ones are made from is sound") {
  CHECK(complaint_about_job(sound_job) == "no complaint");
}

TEST_CASE("every faulty job gets its message at its place") {
  for (const BadJob& bad : bad_jobs) {
    INFO(bad.what);
    REQUIRE(sound_job.find(bad.piece) != std::string::npos);
    const std::string complaint = complaint_about_job(with(bad));
    INFO(complaint);
    CHECK(complaint.find(bad.message) != std::string::npos);
    CHECK(complaint.find("bad.yaml:") == 0);
  }
}

TEST_CASE("an empty shelf is pointed out") {
  const std::string text = sound_job.substr(0, sound_job.find("shelf:")) + "shelf: []\n";
  CHECK(complaint_about_job(text).find("bad.yaml:12:8: error: the shelf is empty") == 0);
}

TEST_CASE("several faults are told in one go") {
  std::string text = sound_job;
  text.replace(text.find("acetone"), 7, "acetnoe");
  text.replace(text.find("dammar_aged"), 11, "damar_aged");
  const std::string complaint = complaint_about_job(text);
  CHECK(complaint.find("acetnoe") != std::string::npos);
  CHECK(complaint.find("damar_aged") != std::string::npos);
}

TEST_CASE("a job cut off anywhere is refused or is a whole job, and never crashes") {
  for (std::size_t length = 0; length < sound_job.size(); ++length) {
    INFO(length);
    const std::string complaint = complaint_about_job(sound_job.substr(0, length));
    CHECK((complaint == "no complaint" || complaint.find("bad.yaml:") == 0));
  }
}

TEST_CASE("a job cut off inside quotes or brackets is asked whether it is whole") {
  for (const char* part :
       {"gentlest_job: 1\nobject: {title: \"T\", note: \"half a no", "gentlest_job: 1\nobject: {title: T"})
    CHECK(complaint_about_job(part).find("is the file cut off?") != std::string::npos);
  // One cut is one fault: what the parser takes for a key on the way out is not told as well.
  const std::string cut = complaint_about_job(
      "gentlest_job: 1\nlayers:\n  - {name: varnish, role: remove, found: dammar_aged}\n  - {name: paint, role: ke");
  CHECK(cut.find("bad.yaml:4:") == 0);
  CHECK(cut.find("is the file cut off?") != std::string::npos);
  CHECK(cut.find("bad.yaml:", 1) == std::string::npos);
}
