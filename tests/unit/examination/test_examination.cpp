// What each answer of an examination does to the tests. The rules themselves are ours (solvents/examination.yaml); that
// a blank that takes colour stops everything, and that flaking paint takes no swab, is common practice
// (docs/conduct.md, rule 2; docs/examination.md).
#include "shipped.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/conduct/conduct.hpp"
#include "gentlest/examination/examination.hpp"
#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>

using namespace gentlest;
using namespace gentlest::test;

namespace {

std::string job_text(const std::string& findings) {
  return "gentlest_job: 1\nlayers:\n  - {name: varnish, role: remove, found: dammar_aged}\n"
         "  - {name: paint, role: keep, found: oil_paint_old}\n"
         "passages: [{name: cloth, of: paint}, {name: red cloak, of: paint}]\n"
         "shelf: [isooctane, acetone, toluene, {solvent: ethanol, grade: \"96 %\"}, isopropanol]\n"
         "limits: {risk_limit: 0.4, step_percent: 10, edge_tests: 5}\n" +
         findings;
}

Job job_with(const std::string& findings) {
  Job job = load_job(job_text(findings.empty() ? "" : "examination:\n" + findings), "job.yaml", shipped_catalogue());
  take_in_findings(job, shipped_catalogue());
  return job;
}

Examination weighed(const std::string& findings) {
  return weigh_examination(job_with(findings), shipped_catalogue());
}

const Passage& passage_of(const Job& job, const std::string& name) {
  return *std::find_if(job.passages.begin(), job.passages.end(), [&](const Passage& one) { return one.name == name; });
}

bool is_left_off(const Job& job, const std::string& solvent) {
  for (const JobBottle& bottle : shelf_of(job, shipped_catalogue()))
    if (bottle.solvent->id == solvent) return bottle.left_off.has_value();
  FAIL("no bottle of " + solvent);
  return false;
}

std::string fault_of(const std::string& findings) {
  try {
    load_job(job_text("examination:\n" + findings), "job.yaml", shipped_catalogue());
  } catch (const InputError& error) {
    return render(error.faults());
  }
  return {};
}

}  // namespace

TEST_CASE("what is not known counts on the careful side: without an examination it is not yet") {
  const Examination none = weighed("");
  CHECK(none.verdict == ExaminationVerdict::not_yet);
  CHECK(none.answers.size() == shipped_catalogue().examination().size());
  for (const WeighedAnswer& one : none.answers) CHECK_FALSE(is_known(one));
  CHECK(weighed("  flaking: not known\n").verdict == ExaminationVerdict::not_yet);
  CHECK(weighed("  flaking: no\n").verdict == ExaminationVerdict::go);
  CHECK(weighed("  flaking: widely\n").verdict == ExaminationVerdict::do_not);
  CHECK(weighed("  flaking: no\n  consent: no\n").verdict == ExaminationVerdict::not_yet);
}

TEST_CASE("no answer to any question lets more be done than not to have looked") {
  const Job silent = job_with("  flaking: no\n");
  for (const ExaminationQuestion& question : shipped_catalogue().examination())
    for (const ExaminationAnswer& answer : question.answers) {
      CAPTURE(question.id, answer.word);
      const std::string flaking = question.id == "flaking" ? "" : "  flaking: no\n";
      const Job job = job_with(flaking + "  " + question.id + ": {answer: \"" + answer.word + "\", where: [cloth]}\n");
      CHECK(job.limits.risk_limit <= silent.limits.risk_limit);
      CHECK(job.limits.edge_tests <= silent.limits.edge_tests);
      CHECK(usable_liquids(shelf_of(job, shipped_catalogue())).size() <=
            usable_liquids(shelf_of(silent, shipped_catalogue())).size());
    }
}

TEST_CASE("a place that is closed is left out of every test, the others go on") {
  const Job job = job_with("  flaking: {answer: somewhere, where: [Red Cloak, \"the lower edge\"]}\n");
  CHECK(passage_of(job, "red cloak").is_left_out);
  CHECK_FALSE(passage_of(job, "cloth").is_left_out);
  const Plan plan = make_plan(job, shipped_catalogue());
  const Conduct conduct = conduct_of(plan, {}, shipped_catalogue());
  CHECK_FALSE(conduct.end);
  REQUIRE_FALSE(conduct.open.empty());
  for (const OpenTest& test : conduct.open) CHECK(test.passage != "red cloak");
  const Job both = job_with("  flaking: {answer: somewhere, where: [red cloak, cloth]}\n");
  const Conduct closed = conduct_of(make_plan(both, shipped_catalogue()), {}, shipped_catalogue());
  REQUIRE(closed.end);
  CHECK(closed.end->why == EndWhy::every_passage_closed);
  CHECK(closed.open.empty());
}

TEST_CASE("where it says do not, no test is open, whatever the ladder") {
  const Plan plan = make_plan(job_with("  dry_swab: colour widely\n"), shipped_catalogue());
  CHECK(plan.examination.verdict == ExaminationVerdict::do_not);
  const Conduct conduct = conduct_of(plan, {}, shipped_catalogue());
  REQUIRE(conduct.end);
  CHECK(conduct.end->why == EndWhy::examination);
  CHECK(conduct.open.empty());
}

TEST_CASE("paint that is sensitive to water leaves off whatever holds water, 96 % ethanol too") {
  const Job job = job_with("  water: {answer: swells, where: [cloth]}\n");
  CHECK(is_left_off(job, "ethanol"));
  CHECK_FALSE(is_left_off(job, "isopropanol"));
  CHECK_FALSE(is_left_off(job, "acetone"));
  CHECK_FALSE(is_left_off(job_with("  water: nothing\n"), "ethanol"));
  const std::vector<Flag>& flags = passage_of(job, "cloth").suspected;
  CHECK(std::find(flags.begin(), flags.end(), Flag::water_sensitive) != flags.end());
}

TEST_CASE("acrylic dispersion paint leaves aliphatic hydrocarbons alone on the shelf") {
  const Job job = job_with("  binder: acrylic dispersion\n");
  const std::vector<Liquid> usable = usable_liquids(shelf_of(job, shipped_catalogue()));
  REQUIRE(usable.size() == 1);
  CHECK(usable.front().solvent->id == "isooctane");
}

TEST_CASE("soft paint halves the risk limit, once however many answers ask for it") {
  CHECK(job_with("  soft_paint: soft\n").limits.risk_limit == Approx(0.2));
  CHECK(job_with("  soft_paint: soft\n  regenerated: yes\n  soft_medium: resin\n").limits.risk_limit == Approx(0.2));
  CHECK(job_with("  soft_paint: hard\n").limits.risk_limit == Approx(0.4));
  CHECK(job_with("  edge: no\n").limits.edge_tests == 0);
}

TEST_CASE("suspicion without a place is of all the paint") {
  const Job job = job_with("  soft_medium: wax\n");
  CHECK(job.layers[1].suspected == std::vector<Flag>{Flag::waxy});
  CHECK(job.layers[0].suspected.empty());
  CHECK(job_with("  glazes: {answer: somewhere, where: [red cloak]}\n").layers[1].suspected.empty());
}

TEST_CASE("a question or an answer that there is not is one fault at its line") {
  const std::string question = fault_of("  flakking: no\n");
  CHECK(question.find("job.yaml:9") != std::string::npos);
  CHECK(question.find("did you mean \"flaking\"?") != std::string::npos);
  const std::string answer = fault_of("  flaking: no\n  lining: velcro\n");
  CHECK(answer.find("job.yaml:10") != std::string::npos);
  CHECK(answer.find("unlined, glue, wax, heat-seal, other, not known") != std::string::npos);
  CHECK(fault_of("  flaking: {where: [cloth]}\n").find("answer") != std::string::npos);
  CHECK(fault_of("  - flaking\n").find("write one on each line") != std::string::npos);
  CHECK(fault_of("  flaking: {answer: somewhere, place: [cloth]}\n").find("place") != std::string::npos);
}

TEST_CASE("flakes whose place no test is kept off are no go: not to say where is no better than not to have looked") {
  CHECK(weighed("  flaking: {answer: somewhere, where: [cloth]}\n").verdict == ExaminationVerdict::go);
  for (const char* where : {"", ", where: [red cloack]", ", where: [cloth, \"lower edge\"]"}) {
    CAPTURE(where);
    CHECK(weighed("  flaking: {answer: somewhere" + std::string(where) + "}\n").verdict == ExaminationVerdict::not_yet);
  }
  const Job mixed = job_with("  glazes: {answer: somewhere, where: [cloth, \"lower edge\"]}\n");
  CHECK(mixed.layers[1].suspected == std::vector<Flag>{Flag::resinous});
}
