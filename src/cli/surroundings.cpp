#include "cli/surroundings.hpp"

#include <algorithm>
#include <csignal>
#include <cstdlib>
#include <string>

#include <fcntl.h>
#include <sys/ioctl.h>
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

// 0 where standard output is no terminal, or one that does not tell its size.
std::size_t terminal_columns() {
  winsize size = {};
  if (isatty(STDOUT_FILENO) != 1 || ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0) return 0;
  return size.ws_col;
}

// A whole number that a terminal could have, else 0.
std::size_t number_in(const char* text) {
  const std::string digits = text ? text : "";
  if (digits.empty() || digits.size() > 6 || digits.find_first_not_of("0123456789") != std::string::npos) return 0;
  return std::stoul(digits);
}

}  // namespace

std::size_t width_of_page(std::size_t terminal_columns, const char* columns_set) {
  std::size_t width = terminal_columns;
  if (width == 0) width = number_in(columns_set);
  return width == 0 ? usual_width : std::clamp(width, narrowest_width, widest_width);
}

Surroundings ask_system() {
  occupy_closed_streams();
  struct sigaction action = {};
  action.sa_handler = note_interrupt;
  action.sa_flags = static_cast<int>(SA_RESETHAND);
  sigaction(SIGINT, &action, nullptr);
  std::signal(SIGPIPE, SIG_IGN);
  const char* terminal = std::getenv("TERM");
  const bool can_bold = terminal && std::string(terminal) != "dumb" && !set_and_not_empty("NO_COLOR");
  const bool to_terminal = isatty(STDOUT_FILENO) == 1;
  const bool can_be_asked = isatty(STDIN_FILENO) == 1 && isatty(STDERR_FILENO) == 1;
  return {to_terminal && can_bold,
          to_terminal,
          isatty(STDERR_FILENO) == 1,
          width_of_page(terminal_columns(), std::getenv("COLUMNS")),
          [] { return interrupt_seen != 0; },
          can_be_asked,
          {}};
}

}  // namespace gentlest
