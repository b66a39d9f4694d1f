// What the program may know of the terminal and the person at it. main.cpp asks the system; tests say what they need.
#pragma once

#include "report/form/form.hpp"

#include <cstddef>
#include <cstdint>
#include <functional>

namespace gentlest {

struct Surroundings {
  bool bold = false;                  ///< standard output is a terminal that can show bold, and NO_COLOR is not set
  bool to_terminal = false;           ///< standard output is a terminal: somebody reads it there
  bool errors_to_terminal = false;    ///< somebody watches standard error: progress may be shown there
  std::size_t width = usual_width;    ///< columns of a text on standard output, within the bounds of a page
  std::function<bool()> interrupted;  ///< true once the person has pressed Ctrl-C; may be empty
  bool can_be_asked = false;          ///< standard input and error are a terminal: a question will be answered
  std::function<void(std::uint64_t done, std::uint64_t total)> hears_progress = {};  ///< of a long search; may be empty
};

/// The width of a page: that of the terminal (0 where standard output is none), else that of COLUMNS where it is a
/// number, else the usual one; no narrower and no wider than a page may be.
std::size_t width_of_page(std::size_t terminal_columns, const char* columns_set);

/// Asks the system: isatty, the size of the terminal, TERM, NO_COLOR, COLUMNS. Installs a handler for Ctrl-C; a second
/// Ctrl-C ends the program at once. Also has writing to a closed pipe fail instead of ending the program.
Surroundings ask_system();

}  // namespace gentlest
