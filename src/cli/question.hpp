// The page's one narrow way to the program: a command as JSON, its answer as JSON.
#pragma once

#include "cli/surroundings.hpp"

#include <string>
#include <string_view>

namespace gentlest {

inline constexpr int exit_engine = 4;  ///< the program itself failed; the page says what to save

/// Answers {"command": "ladder", "words": ["job.yaml"], "options": {"format": "json"}}: the very command of the command
/// line, options by name without dashes, that of a switch true. Files are those of the working folder. One question
/// is the page's alone: "demo" answers the text of the invented painting's job.
///
/// The answer: {"exit": code, "text": what would go to standard output, "notes": to standard error,
/// "faults": [{"file", "line", "column", "message", "remedy"}]}. Throws nothing: a question that cannot be read is a
/// fault with exit code 2, a failure of the program one with `exit_engine`. Bytes that are not UTF-8 become U+FFFD.
std::string answer_question(std::string_view question, const Surroundings& surroundings);

}  // namespace gentlest
