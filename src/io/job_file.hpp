// The conservator's own file about one painting. Format: docs/data-format.md.
#pragma once

#include "gentlest/plan/job.hpp"

#include <string>

namespace gentlest {

/// Reads the YAML of a job. `file` is the name for messages. Throws InputError (Fault::file) with every fault of form:
/// broken YAML, unknown key, wrong type, number out of range. Does not know the catalogue.
Job read_job(const std::string& text, const std::string& file);

/// read_job, then check_job against the catalogue; every fault carries its line of the file. Throws as read_job does.
Job load_job(const std::string& text, const std::string& file, const Catalogue& catalogue);

/// True of a file that holds the version key of a job at the beginning of a line, and is no page.
bool is_job(const std::string& path);

/// The commented job that `gentlest new` writes; it loads without fault against the embedded catalogue.
std::string job_template();

/// The invented painting of `gentlest ladder demo`.
std::string demo_job_text();

}  // namespace gentlest
