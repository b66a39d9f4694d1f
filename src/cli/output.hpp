// Where an answer goes, and what it must never replace.
#pragma once

#include "cli/commands.hpp"

#include <iosfwd>
#include <string>

namespace gentlest {

/// Before anything is done: refuses an --output that cannot be written, that has the ending of another kind of file
/// (.pdf of a page that is HTML), or that would replace what the request reads or other work of hand. Throws
/// InputError.
void check_output(const Request& request);

/// Refuses a file to be written that the request reads: a word, --log, --background, or any file below a folder; under
/// whatever name, by links too. Throws InputError (Fault::usage).
void refuse_to_replace_input(const std::string& file, const Request& request);

/// To standard output in one piece, or to the file of --output. A reader that has seen enough (`| head`) is no fault.
/// Throws InputError.
void deliver(const Answer& answer, const Request& request, std::ostream& out);

}  // namespace gentlest
