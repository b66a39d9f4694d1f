// What `record` and `import` share: readings are read against the job, checked, and added to the log.
#pragma once

#include "cli/commands.hpp"
#include "gentlest/noted/noted.hpp"
#include "io/reading_log.hpp"
#include "io/reading_table.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// The job and the log that a command names first.
class Recording {
 public:
  /// Throws InputError, as loading either does.
  Recording(const Request& request, Session& session);
  Recording(const Recording&) = delete;
  Recording& operator=(const Recording&) = delete;

  const NotedAgainst& against() const { return against_; }
  const Plan& plan();

  /// Puts the mixture in full and holds layer and passage against the job.
  void complete(TypedReading& typed, std::vector<Diagnostic>& faults);

  /// What cannot be of a reading as it will stand. That a correction names no test is told where the log is locked.
  void expect_sound(const TypedReading& typed, std::vector<Diagnostic>& faults) const;

  /// Adds the readings to the log and says so behind `shown`. `faults` are those found so far; throws InputError (kind)
  /// where there are any.
  Answer append(const std::vector<TypedReading>& readings, Fault kind, std::vector<Diagnostic> faults,
                const std::string& shown);

  /// Adds what is understood of a table and says so behind `shown`; every row that is not is told on standard error,
  /// and the exit code is then exit_file. With --dry-run the rows are told one by one and nothing is written.
  /// Throws InputError (Fault::file) where no row is understood.
  Answer append(ReadingTable table, const std::string& shown);

  const Job& job() const { return job_; }

 private:
  Answer answer_of(const Addition& addition, const std::string& shown, const std::string& withdrawn) const;

  const Request& request_;
  Session& session_;
  const Catalogue& catalogue_;
  Job job_;
  std::vector<Liquid> shelf_;
  ReadingLog log_;
  std::optional<Plan> plan_;
  NotedAgainst against_;
};

}  // namespace gentlest
