#include "io/files.hpp"

#include "gentlest/diagnostic.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <system_error>
#include <utility>

#ifdef _WIN32
#include <io.h>
#else
#include <fcntl.h>
#include <unistd.h>
#endif

namespace gentlest {

namespace {

namespace fs = std::filesystem;

[[noreturn]] void fail(const std::string& path, std::string message, std::string remedy = {}, int line = 0,
                       int column = 0, std::string excerpt = {}) {
  throw InputError(Fault::file, {{{path, line, column}, std::move(message), std::move(remedy), std::move(excerpt)}});
}

std::string reason(int number) {
  return std::generic_category().message(number);
}

// Length of the UTF-8 character that starts here, or 0 where none does.
std::size_t character_length(const std::string& text, std::size_t at) {
  const auto byte = [&](std::size_t i) {
    return i < text.size() ? static_cast<unsigned>(static_cast<unsigned char>(text[i])) : 0u;
  };
  const auto follows = [&](std::size_t i) { return (byte(i) & 0xC0u) == 0x80u; };
  const unsigned first = byte(at);
  if (first < 0x80) return first == 0 ? 0 : 1;
  if (first >= 0xC2 && first <= 0xDF) return follows(at + 1) ? 2 : 0;
  if (first >= 0xE0 && first <= 0xEF) {
    const unsigned second = byte(at + 1);
    const bool overlong = first == 0xE0 && second < 0xA0;
    const bool surrogate = first == 0xED && second >= 0xA0;
    return follows(at + 1) && follows(at + 2) && !overlong && !surrogate ? 3 : 0;
  }
  if (first >= 0xF0 && first <= 0xF4) {
    const unsigned second = byte(at + 1);
    const bool outside = (first == 0xF0 && second < 0x90) || (first == 0xF4 && second >= 0x90);
    return follows(at + 1) && follows(at + 2) && follows(at + 3) && !outside ? 4 : 0;
  }
  return 0;
}

void expect_text(const std::string& path, const std::string& text) {
  int line = 1;
  std::size_t line_start = 0;
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t length = character_length(text, i);
    if (length == 0)
      fail(path, "this is not UTF-8 text", "save the file as plain text in UTF-8", line,
           static_cast<int>(i - line_start) + 1);
    if (text[i] == '\n') {
      ++line;
      line_start = i + 1;
    }
    i += length;
  }
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
#ifndef _WIN32
  const int descriptor = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (descriptor < 0) return;
  ::fsync(descriptor);
  ::close(descriptor);
#else
  static_cast<void>(path);
#endif
}

// The whole file, whatever it holds.
std::string read_bytes(const std::string& path) {
  std::error_code ignored;
  if (fs::is_directory(path, ignored)) fail(path, "this is a folder, not a file");
  errno = 0;
  std::ifstream in(path, std::ios::binary);
  if (!in) fail(path, "cannot be read: " + reason(errno), "check the name and the folder");
  std::string bytes(most_bytes_of_a_file + 1, '\0');
  in.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  if (in.bad()) fail(path, "cannot be read: " + reason(errno));
  bytes.resize(static_cast<std::size_t>(in.gcount()));
  if (bytes.size() > most_bytes_of_a_file)
    fail(path, fmt::format("is larger than {} MiB", most_bytes_of_a_file >> 20), "is this the right file?");
  return bytes;
}

}  // namespace

std::string read_text_file(const std::string& path) {
  std::string text = read_bytes(path);
  if (text.compare(0, 3, "\xEF\xBB\xBF") == 0) text.erase(0, 3);
  expect_text(path, text);
  return text;
}

ImageFile read_image_file(const std::string& path) {
  std::string bytes = read_bytes(path);
  if (bytes.compare(0, 8, "\x89PNG\r\n\x1A\n") == 0) return {"image/png", std::move(bytes)};
  if (bytes.compare(0, 3, "\xFF\xD8\xFF") == 0) return {"image/jpeg", std::move(bytes)};
  fail(path, "is neither a PNG nor a JPEG picture", "convert it first");
}

void write_text_file(const std::string& path, const std::string& text) {
  std::error_code error;
  // A link is followed: what it points to is replaced, not the link.
  const fs::path target = fs::is_symlink(path, error) ? fs::weakly_canonical(path, error) : fs::path(path);
  if (path.empty() || fs::is_directory(target, error)) fail(path, "is a folder, not a file to write");
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
