// What a file is that was given in place of another, so that a person sees which one was taken by mistake.
#pragma once

#include "gentlest/base/diagnostic.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace gentlest {

/// "a PDF document", "a Word or spreadsheet file" and so on, by the first bytes; empty for what may be plain text of
/// ours.
std::string foreign_kind(std::string_view bytes);

/// The one fault of a text that holds no key of a job: empty, a log of tests, a table, anything else. Nothing where it
/// may be a job, however faulty.
std::optional<Diagnostic> no_job_fault(std::string_view text, const std::string& file);

/// True of a line that holds the version of a job.
bool begins_job(std::string_view line);

}  // namespace gentlest
