#include "io/files.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/letters.hpp"

#include "io/file_kinds.hpp"
#include "io/log_names.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <system_error>
#include <utility>

#include <fcntl.h>
#include <unistd.h>

namespace gentlest {

namespace {

namespace fs = std::filesystem;

[[noreturn]] void fail(const std::string& path, std::string message, std::string remedy = {}, int line = 0,
                       int column = 0, std::string excerpt = {}) {
  throw InputError(Fault::file, {{{path, line, column}, std::move(message), std::move(remedy), std::move(excerpt)}});
}

constexpr const char* utf8_remedy = "save it as plain text in UTF-8; spreadsheets call it \"CSV UTF-8\"";

std::string reason(int number) {
  return std::generic_category().message(number);
}

// What the byte is in the other usual encoding, so that the person recognises the letter.
std::string windows_1252(unsigned char byte) {
  if (byte < 0xA0) return {};
  const std::string letter = {static_cast<char>(0xC0u | (byte >> 6)), static_cast<char>(0x80u | (byte & 0x3Fu))};
  return fmt::format(", in Windows-1252 the letter \"{}\"", letter);
}

}  // namespace

bool begins_as_utf16(std::string_view bytes) {
  return bytes.substr(0, 2) == "\xFF\xFE" || bytes.substr(0, 2) == "\xFE\xFF";
}

void expect_kind_of_text(const std::string& path, const std::string& text) {
  if (const std::string kind = foreign_kind(text); !kind.empty())
    fail(path, fmt::format("this is {}, not plain text", kind), "name the text file itself, or save it as plain text",
         1, 1);
  if (begins_as_utf16(text)) fail(path, "this is text in UTF-16, not in UTF-8", utf8_remedy, 1, 1);
}

namespace {

void expect_text(const std::string& path, const std::string& text) {
  expect_kind_of_text(path, text);
  const std::size_t at = std::min(first_stray_byte(text).value_or(text.size()), text.find('\0'));
  if (at >= text.size()) return;
  const std::string_view before = std::string_view(text).substr(0, at);
  const auto line = static_cast<int>(std::count(before.begin(), before.end(), '\n')) + 1;
  const auto column = static_cast<int>(at - (before.rfind('\n') + 1)) + 1;
  const auto byte = static_cast<unsigned char>(text[at]);
  fail(path, fmt::format("this is not UTF-8 text: byte {:02X}{}", static_cast<unsigned>(byte), windows_1252(byte)),
       utf8_remedy, line, column);
}

// A neighbour of the file, on the same disk, so that renaming is one step.
fs::path neighbour_of(const fs::path& target) {
  std::random_device device;
  return target.parent_path() / fmt::format(".{}.{:08x}.part", target.filename().string(), device());
}

// A pipe or a device (/dev/stdout) cannot be replaced, only written to.
void write_into(const fs::path& target, const std::string& text) {
  std::ofstream out(target, std::ios::binary);
  out.write(text.data(), static_cast<std::streamsize>(text.size()));
  out.close();
  if (!out) fail(target.string(), "cannot be written: " + reason(errno));
}

// To the disk itself, so that a power cut after the rename cannot leave an empty file.
void flush_to_disk(const fs::path& path) {
  const int descriptor = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (descriptor < 0) return;
  ::fsync(descriptor);
  ::close(descriptor);
}

}  // namespace

std::string read_bytes(const std::string& path, std::size_t most_bytes) {
  std::error_code ignored;
  if (fs::is_directory(path, ignored)) fail(path, "this is a folder, not a file", "name the file inside it");
  errno = 0;
  std::ifstream in(path, std::ios::binary);
  if (!in) {
    const int number = errno;
    const std::string near = number == ENOENT ? nearest_file(path, files_beside(path)) : "";
    fail(path, "cannot be read: " + reason(number),
         near.empty() ? "check the name and the folder" : fmt::format("did you mean \"{}\"?", near));
  }
  std::string bytes;
  std::string piece(1u << 16, '\0');
  while (in && bytes.size() <= most_bytes) {
    in.read(piece.data(), static_cast<std::streamsize>(piece.size()));
    bytes.append(piece, 0, static_cast<std::size_t>(in.gcount()));
  }
  if (in.bad()) fail(path, "cannot be read: " + reason(errno));
  if (bytes.size() > most_bytes)
    fail(path, fmt::format("is larger than {} MiB", most_bytes >> 20), "is this the right file?");
  return bytes;
}

std::string read_text_file(const std::string& path) {
  return as_text(read_bytes(path, most_bytes_of_a_file), path);
}

std::string as_text(std::string bytes, const std::string& name) {
  if (bytes.compare(0, 3, "\xEF\xBB\xBF") == 0) bytes.erase(0, 3);
  expect_text(name, bytes);
  return bytes;
}

ImageFile read_image_file(const std::string& path) {
  std::string bytes = read_bytes(path, most_bytes_of_a_file);
  if (bytes.compare(0, 8, "\x89PNG\r\n\x1A\n") == 0) return {"image/png", std::move(bytes)};
  if (bytes.compare(0, 3, "\xFF\xD8\xFF") == 0) return {"image/jpeg", std::move(bytes)};
  fail(path, "is neither a PNG nor a JPEG picture", "convert it first");
}

namespace {

bool may_write(const fs::path& path) {
  return ::access(path.c_str(), W_OK) == 0;
}

// A link is followed: what it points to is replaced, not the link.
fs::path target_of(const std::string& path) {
  std::error_code error;
  const fs::path target = fs::is_symlink(path, error) ? fs::weakly_canonical(path, error) : fs::path(path);
  if (path.empty() || fs::is_directory(target, error)) fail(path, "is a folder, not a file to write");
  if (is_log(target.string()))
    throw InputError(Fault::usage, {{{path, 0, 0},
                                     "this is a log of tests, which is only ever added to",
                                     "choose another name; nothing was written to it",
                                     {}}});
  return target;
}

}  // namespace

void expect_writable(const std::string& path) {
  const fs::path target = target_of(path);
  std::error_code error;
  const bool is_there = fs::exists(target, error);
  const fs::path folder = target.has_parent_path() ? target.parent_path() : fs::path(".");
  // A file is replaced by a neighbour, so it is the folder that must allow it.
  if (!may_write(is_there && !fs::is_regular_file(target, error) ? target : folder))
    fail(path, "cannot be written: " + reason(errno), "does the folder exist, and may you write there?");
}

void write_text_file(const std::string& path, const std::string& text) {
  std::error_code error;
  const fs::path target = target_of(path);
  if (fs::exists(target, error) && !fs::is_regular_file(target, error)) return write_into(target, text);
  const fs::path part = neighbour_of(target);
  errno = 0;
  std::ofstream out(part, std::ios::binary | std::ios::trunc);
  if (!out) fail(path, "cannot be written: " + reason(errno), "does the folder exist, and may you write there?");
  out.write(text.data(), static_cast<std::streamsize>(text.size()));
  out.close();
  if (!out) {
    const int number = errno;
    fs::remove(part, error);
    fail(path, "cannot be written: " + reason(number), "nothing was changed");
  }
  flush_to_disk(part);
  if (const fs::file_status old = fs::status(target, error); fs::is_regular_file(old))
    fs::permissions(part, old.permissions(), error);
  fs::rename(part, target, error);
  if (error) {
    std::error_code ignored;
    fs::remove(part, ignored);
    fail(path, "cannot be written: " + error.message(), "nothing was changed");
  }
}

}  // namespace gentlest
