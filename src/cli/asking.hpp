// The examination asked question by question, for whoever begins a job file.
#pragma once

#include "cli/commands.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// Asks on the error stream, reads a line for each: a number or the answer's words; nothing, or the end of the input,
/// leaves a question open; "?" says why it is asked; "end" leaves the rest open. What is none of the answers is asked
/// again. Throws Interrupted.
std::vector<Finding> asked_findings(const Catalogue& catalogue, Session& session);

/// The job file with these findings as its examination, in place of the one it has.
std::string with_examination(const std::string& job_text, const std::vector<Finding>& findings);

}  // namespace gentlest
