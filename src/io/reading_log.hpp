// The log of a painting's tests: plain text, one JSON object a line, only ever added to. First line: its version.
// Readable without this program; a correction is a later line of the same test, nothing is rewritten.
#pragma once

#include "gentlest/learning/typed_reading.hpp"

#include <map>
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
  std::map<std::string, std::string> photographs;  ///< kept in the log: a JPEG in base64 by name
  bool exists = true;                              ///< false where there is no such file
};

/// Reads a log's text. Line breaks may be LF or CR LF, a byte order mark is skipped; a byte that is not UTF-8 is told
/// and read as U+FFFD. Throws InputError (Fault::file) when the first line is not a version this program knows.
ReadingLog parse_log(std::string_view text, const std::string& file);

/// Reads the file, waiting for a writer to finish. A missing file is an empty log.
/// Throws InputError (Fault::file) where it cannot be read or parse_log throws.
ReadingLog read_log(const std::string& path);

/// The log as it stands in its file, U+FFFD for every byte that is not UTF-8. Throws as read_log does.
std::string read_log_text(const std::string& path);

/// A row that was not added, since it says what a test of the log says already.
struct RepeatedRow {
  Location where;
  int test = 0;
};

struct Addition {
  std::vector<Reading> added;        ///< as written
  std::vector<Location> added_from;  ///< where each of them was typed, in the same order
  std::vector<RepeatedRow> repeated;
  std::vector<Diagnostic> refused;  ///< with FaultyRows::leave_out: what keeps the others from being written
};

/// Whether one reading that cannot be written keeps all others of the addition out.
enum class FaultyRows { refuse_all, leave_out };

/// Whether the photographs that added readings name stay files beside the log, or travel inside it, made small.
enum class Photographs { stay_beside, go_into_the_log };

/// What to do with readings that say what the log, or one before them, says already.
enum class Repeats { add, leave_out };

/// Adds readings with one write and flushes them to the disk, under an advisory lock, so that two writers lose nothing.
/// Several readings carry their place in the addition ("3 of 12"), so that one that was cut off counts as none of them.
/// Gives the next number to each reading without one. A last line that was cut off is first ended by a line break.
/// Throws InputError (Fault::file) and writes nothing when the log is of an unknown version, a reading is faulty
/// (check_reading), a test number is taken already (unless it is a correction or a later look), or a correction or a
/// later look names no test.
/// Photographs that go into the log stand before the readings, each as a line of its own; throws also where one cannot
/// be read, or where the log holds another of its name. One that the log holds need not be beside it any more.
Addition append_readings(const std::string& path, const std::vector<TypedReading>& readings, Repeats repeats,
                         Photographs photographs = Photographs::stay_beside,
                         FaultyRows faulty = FaultyRows::refuse_all);

/// What append_readings would write into this log, faulty rows left out. Nothing is written.
Addition addition_to(const ReadingLog& log, const std::string& path, const std::vector<TypedReading>& readings,
                     Repeats repeats);

/// The same for readings that name everything. Returns them as written.
std::vector<Reading> append_readings(const std::string& path, const std::vector<Reading>& readings);

/// The text of a log with the pictures in it told by their size alone, for pages that show the log.
std::string without_pictures(const std::string& log_text);

/// The line of one reading, without the line break. Keys without content are left out. `place` as in "3 of 12".
std::string to_log_line(const Reading& reading, const std::string& place = {});

}  // namespace gentlest
