// Reading and writing whole text files, so that nothing is ever half written.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace gentlest {

/// Larger input files are refused: no file of ours comes near.
inline constexpr std::size_t most_bytes_of_a_file = 8u << 20;

/// The whole file, whatever it holds. Throws InputError (Fault::file) when it is missing, a folder, unreadable or
/// larger.
std::string read_bytes(const std::string& path, std::size_t most_bytes);

/// The whole file. Throws InputError (Fault::file) when it is missing (with the nearest name of its folder), a folder,
/// unreadable, larger than most_bytes_of_a_file, or not UTF-8 text (with line and column of the first byte that is
/// none).
std::string read_text_file(const std::string& path);

/// The same for bytes that came otherwise, e.g. from standard input; `name` is for messages.
std::string as_text(std::string bytes, const std::string& name);

/// True of bytes that begin with the byte order mark of UTF-16, either byte first.
bool begins_as_utf16(std::string_view bytes);

/// Throws InputError (Fault::file) for bytes that begin as another kind of file does, or as text in UTF-16.
void expect_kind_of_text(const std::string& path, const std::string& text);

/// A picture to be put into a page.
struct ImageFile {
  std::string media_type;  ///< "image/png" or "image/jpeg", by its first bytes
  std::string bytes;
};

/// Throws InputError (Fault::file) when it cannot be read, is larger than most_bytes_of_a_file, or is neither PNG nor
/// JPEG.
ImageFile read_image_file(const std::string& path);

/// Throws as write_text_file would, where that can be told beforehand, so that nothing is done whose result has no
/// place.
void expect_writable(const std::string& path);

/// Replaces or creates the file in one step: a neighbour file is written, flushed and renamed over it, so a reader
/// sees the old text or the new, and a failure leaves the old one as it was. A log of tests is never replaced
/// (Fault::usage). Throws InputError (Fault::file).
void write_text_file(const std::string& path, const std::string& text);

}  // namespace gentlest
