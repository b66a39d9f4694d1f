// What the tests taught and why the next one: every step and reason has its own words.
#include "shipped.hpp"

#include "gentlest/answers/progress.hpp"
#include "io/job_file.hpp"
#include "report/phrases/learning_words.hpp"

#include <catch2/catch.hpp>

#include <set>

using namespace gentlest;

namespace {

LearntOfLayer some_learnt() {
  LearntOfLayer learnt;
  learnt.layer = "varnish";
  learnt.is_tested = true;
  learnt.dD = {{17, 16.5, 17.5}, 0.95, Narrowing::open};
  learnt.dP = {{6, 5, 7}, 0.5, Narrowing::learnt};
  learnt.dH = {{9, 8, 10}, 0.74, Narrowing::learnt};
  learnt.R0 = {{8, 7, 9}, 0.8, Narrowing::little};
  learnt.stray_chance = 0.25;
  learnt.effective_particles = 4999.6;
  learnt.particles = 8000;
  return learnt;
}

}  // namespace

TEST_CASE("what was learnt of a layer is told figure by figure") {
  LearntOfLayer learnt = some_learnt();
  CHECK(words_of(learnt) ==
        std::vector<std::string>{
            "varnish: dD 17.0 (90 % between 16.5 and 17.5), dP 6.0 (90 % between 5.0 and 7.0), dH 9.0 (90 % between "
            "8.0 and 10.0) and R0 8.0 (90 % between 7.0 and 9.0), in MPa^0.5",
            "varnish: the tests narrowed dP to 50 % and dH to 74 % of the range held before",
            "varnish: still as open as before: dD", "varnish: 5000 of 8000 particles effective"});
  learnt.hypotheses = {{"aged dammar", 0.5}, {"", 0.25}};
  learnt.is_stray = true;
  learnt.surprising = {{3, 0.01}};
  const std::vector<std::string> more = words_of(learnt);
  REQUIRE(more.size() == 9);
  CHECK(more[3].find("do not fit what it was taken for (25 %") != std::string::npos);
  CHECK(more[4] == "varnish: 50 % that it is aged dammar");
  CHECK(more[5] == "varnish: 25 % that it is own tests");
  CHECK(more[6] == "varnish: 25 % that it is none of these, or not as published");
  CHECK(more[7].find("what test 3 says of it was hardly to be expected (chance 1.0 %)") != std::string::npos);
  learnt.is_tested = false;
  CHECK(words_of(learnt) == std::vector<std::string>{"varnish: no test has spoken of it yet"});
}

TEST_CASE("a test that is not counted is told with its reason") {
  CHECK(words_of(LeftOutTest{2, LeftOutWhy::unknown_passage, "sky"}) == "the job knows no passage \"sky\"");
  CHECK(words_of(LeftOutTest{2, LeftOutWhy::other_layer, "dirt"}) == "it is about \"dirt\"");
  CHECK(words_of(LeftOutTest{2, LeftOutWhy::unreadable_mixture, "no solvent is known"}) == "no solvent is known");
}
