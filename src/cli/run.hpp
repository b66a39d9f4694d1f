// The whole program as a function.
#pragma once

#include "cli/surroundings.hpp"

#include <iosfwd>
#include <string>
#include <vector>

namespace gentlest {

inline constexpr int exit_done = 0;
inline constexpr int exit_no_window = 1;
inline constexpr int exit_usage = 2;
inline constexpr int exit_file = 3;
inline constexpr int exit_interrupted = 130;

/// Runs one command line (without the program's own name) and returns the exit code. The result goes to `out` in one
/// piece, or to the file of --output; messages go to `err`. Nothing is written when the command fails.
int run(const std::vector<std::string>& args, std::istream& in, std::ostream& out, std::ostream& err,
        const Surroundings& surroundings = {});

}  // namespace gentlest
