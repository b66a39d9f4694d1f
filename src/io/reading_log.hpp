// The log of a painting's tests: plain text, one JSON object a line, only ever added to. First line: its version.
// Readable without this program; a correction is a later line of the same test, nothing is rewritten.
#pragma once

#include "gentlest/reading.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// The lines of a log, oldest first, and what could not be read. Faults do not stop the reading: a conservation record
/// with one bad line is still a record.
struct ReadingLog {
  std::vector<Reading> lines;      ///< every line that could be read, corrections too
  int highest_test = 0;            ///< largest test number of any line, readable or not
  std::vector<Diagnostic> faults;  ///< line by line: cut, not JSON, unknown key or word, test number used twice
};

/// Reads a log's text. Throws InputError (Fault::file) when the first line is not a version this program knows.
ReadingLog parse_log(std::string_view text, const std::string& file);

/// Reads the file, waiting for a writer to finish. A missing file is an empty log.
/// Throws InputError (Fault::file) where it cannot be read or parse_log throws.
ReadingLog read_log(const std::string& path);

/// Adds readings with one write and flushes them to the disk, under an advisory lock, so that two writers lose nothing.
/// Gives the next number to each reading without one. A last line that was cut off is first ended by a line break.
/// Returns the readings as written. Throws InputError (Fault::file) and writes nothing when the log is of an unknown
/// version, a reading is faulty (check_reading), a test number is taken already (unless it is a correction), or a
/// correction names no test.
std::vector<Reading> append_readings(const std::string& path, std::vector<Reading> readings);

/// The line of one reading, without the line break. Keys without content are left out.
std::string to_log_line(const Reading& reading);

/// Readings from a table whose header names the keys of the log line; columns may be missing and in any order, a cell
/// without text is "not noted". Throws InputError (Fault::file) with every fault found.
std::vector<Reading> readings_from_csv(std::string_view text, const std::string& file);

}  // namespace gentlest
