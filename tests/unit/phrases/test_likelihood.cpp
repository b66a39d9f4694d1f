// A chance in four words, with its bar.
#include "report/phrases/likelihood.hpp"

#include <catch2/catch.hpp>

using namespace gentlest;

TEST_CASE("what is believed is said in four words") {
  CHECK(likelihood_word(0) == "hardly");
  CHECK(likelihood_word(0.149) == "hardly");
  CHECK(likelihood_word(0.15) == "perhaps");
  CHECK(likelihood_word(0.5) == "likely");
  CHECK(likelihood_word(0.849) == "likely");
  CHECK(likelihood_word(0.85) == "nearly sure");
  CHECK(likelihood_word(1) == "nearly sure");
}

TEST_CASE("the bar fills with the word") {
  CHECK(likelihood_bar(0) == "#...");
  CHECK(likelihood_bar(0.15) == "##..");
  CHECK(likelihood_bar(0.5) == "###.");
  CHECK(likelihood_bar(1) == "####");
}
