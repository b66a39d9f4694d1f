// The conservator's own file about one painting. Format: docs/data-format.md.
#pragma once

#include "gentlest/job/job.hpp"

#include <string>

namespace gentlest {

/// Reads the YAML of a job and checks it against the catalogue. `file` is the name for messages. Throws InputError
/// (Fault::file) with every fault, each with its line: broken YAML, unknown key, wrong type, number out of range; and
/// where the form is right, all that check_job finds.
Job load_job(const std::string& text, const std::string& file, const Catalogue& catalogue);

/// True of a file that holds the version key of a job at the beginning of a line, and is no page.
bool is_job(const std::string& path);

/// The commented job that `gentlest new` writes; it loads without fault against the embedded catalogue.
std::string job_template();

/// The invented painting of `gentlest ladder demo`.
std::string demo_job_text();

}  // namespace gentlest
