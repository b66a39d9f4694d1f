// "A mistake of the program is an assertion" (docs/architecture.md): in a build without NDEBUG, such as that of the
// sanitizers, a broken precondition stops the program. Each case is tried in a child, for it must die.
#ifndef NDEBUG

#include "gentlest/ladder/ladder.hpp"
#include "gentlest/safety/exposure.hpp"
#include "gentlest/space/response.hpp"

#include <catch2/catch.hpp>

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>
#include <csignal>
#include <functional>

using namespace gentlest;

namespace {

bool dies(const std::function<void()>& mistake) {
  const pid_t child = fork();
  if (child == 0) {
    std::signal(SIGABRT, SIG_DFL);                     // not the handler of the tests
    dup2(open("/dev/null", O_WRONLY), STDERR_FILENO);  // what it says is known
    mistake();
    _exit(0);
  }
  int status = 0;
  waitpid(child, &status, 0);
  return WIFSIGNALED(status) && WTERMSIG(status) == SIGABRT;
}

const Response curve{{{{1.0, -12}, {0.5, -8}, {0.3, -5}, {0.2, -5}, {0.1, -3}}}, "test"};

}  // namespace

TEST_CASE("a broken precondition is caught where it is broken") {
  CHECK_FALSE(dies([] { chance_at_most(curve, 1, 0.5); }));
  CHECK(dies([] { chance_at_most(curve, 0, 0.5); }));
  CHECK(dies([] { chance_at_most(curve, 1, -0.5); }));
  CHECK(dies([] { relative_distance_RED({16, 5, 5}, {{16, 5, 5}, 0}); }));
  CHECK(dies([] { additive_index({1, 2}, {1}); }));
  CHECK(dies([] { quality_of({{16, 5, 5}}, {}, {}); }));
}

#else

#include <catch2/catch.hpp>

#include <cassert>

TEST_CASE("what users run does not pay for assertions") {
  bool is_looked_at = false;
  assert((is_looked_at = true));
  CHECK_FALSE(is_looked_at);
}

#endif
