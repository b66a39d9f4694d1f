// A folder of finished paintings: jobs with their logs beside them, and tables that others have shared.
#pragma once

#include "gentlest/studio/shared.hpp"
#include "gentlest/studio/studio.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

struct StudioFolder {
  std::vector<StudioPainting> paintings;  ///< by name; each with at least one reading
  std::vector<Diagnostic> left_out;       ///< one line for each file, row of a shared table or log that is not used
};

/// The folder and the folders in it. A job's log is the one of its name (pears.yaml, pears.log), or the only one beside
/// the only job of a folder. Pictures are passed over. `but_not`: a job that is not to count, since it is the very
/// painting that is planned. Throws InputError (Fault::file) where the folder cannot be read, or holds nothing that is
/// understood, with every reason.
StudioFolder read_studio_folder(const std::string& path, const Catalogue& catalogue,
                                const std::optional<std::string>& but_not = {});

/// One painting, whatever its files are called. Throws InputError (Fault::file).
StudioPainting read_studio_painting(const std::string& job, const std::string& log, const Catalogue& catalogue);

/// The log that stands beside a job by its name, or as the only one; empty where there is none.
std::string log_beside(const std::string& job);

/// Tests of a shared table, format of docs/studio.md. Rows that are not understood are told in `faults`, the others
/// count. Throws InputError (Fault::file) where the table as a whole cannot be read.
std::vector<SharedTest> read_shared_table(std::string_view text, const std::string& file, const Catalogue& catalogue,
                                          std::vector<Diagnostic>& faults);

}  // namespace gentlest
