#define CATCH_CONFIG_RUNNER
#include <catch2/catch.hpp>

#include <cstdlib>

int main(int argc, char** argv) {
  // RapidCheck would otherwise draw a seed of its own and print it; every case here is the same in every run.
  ::setenv("RC_PARAMS", "seed=20261125", 1);
  return Catch::Session().run(argc, argv);
}
