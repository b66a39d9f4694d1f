// Tables as old programs and other countries saved them: each line in UTF-8 or in Windows-1252 (which holds Latin-1).
#pragma once

#include <string>
#include <vector>

namespace gentlest {

struct TableText {
  std::string text;            ///< UTF-8, lines ended by LF or CR LF
  std::vector<int> odd_lines;  ///< lines, from 1, that are neither; U+FFFD stands there for what is not understood
  int converted_lines = 0;     ///< read as Windows-1252
};

/// Each line is taken as UTF-8 where it is, else as Windows-1252 where every byte is a letter of it, else it is odd. A
/// byte order mark is skipped; a file whose lines end in CR alone is read as well, and one in UTF-16 that begins with
/// its mark. Throws InputError (Fault::file) for what is no text at all.
TableText table_text(std::string bytes, const std::string& name);

/// The same of a file. Throws as read_bytes does, too.
TableText read_table_file(const std::string& path);

}  // namespace gentlest
