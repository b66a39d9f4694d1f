// What the program may know of the terminal and the person at it. main.cpp asks the system; tests say what they need.
#pragma once

#include <functional>

namespace gentlest {

struct Surroundings {
  bool bold = false;                  ///< standard output is a terminal that can show bold, and NO_COLOR is not set
  bool errors_to_terminal = false;    ///< somebody watches standard error: progress may be shown there
  std::function<bool()> interrupted;  ///< true once the person has pressed Ctrl-C; may be empty
  bool can_be_asked = false;          ///< standard input and error are a terminal: a question will be answered
};

/// Asks the system: isatty, TERM, NO_COLOR. Installs a handler for Ctrl-C; a second Ctrl-C ends the program at once.
/// Also has writing to a closed pipe fail instead of ending the program.
Surroundings ask_system();

}  // namespace gentlest
