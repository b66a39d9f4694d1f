#include "cli/surroundings.hpp"

#include <csignal>
#include <cstdlib>
#include <string>

#include <fcntl.h>
#include <unistd.h>

namespace gentlest {

namespace {

// The one global of the program: a signal handler can reach nothing else.
volatile std::sig_atomic_t interrupt_seen = 0;

extern "C" void note_interrupt(int) {
  interrupt_seen = 1;
}

// A closed stream would lend its number to the next file that is opened, and messages would go into a log. Opened for
// reading, so that writing to it still fails.
void occupy_closed_streams() {
  for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO})
    if (fcntl(stream, F_GETFD) < 0) static_cast<void>(open("/dev/null", O_RDONLY));
}

bool set_and_not_empty(const char* name) {
  const char* value = std::getenv(name);
  return value && *value;
}

}  // namespace

Surroundings ask_system() {
  occupy_closed_streams();
  struct sigaction action = {};
  action.sa_handler = note_interrupt;
  action.sa_flags = static_cast<int>(SA_RESETHAND);
  sigaction(SIGINT, &action, nullptr);
  std::signal(SIGPIPE, SIG_IGN);
  const char* terminal = std::getenv("TERM");
  const bool can_bold = terminal && std::string(terminal) != "dumb" && !set_and_not_empty("NO_COLOR");
  const bool can_be_asked = isatty(STDIN_FILENO) == 1 && isatty(STDERR_FILENO) == 1;
  return {isatty(STDOUT_FILENO) == 1 && can_bold, isatty(STDERR_FILENO) == 1, [] { return interrupt_seen != 0; },
          can_be_asked};
}

}  // namespace gentlest
