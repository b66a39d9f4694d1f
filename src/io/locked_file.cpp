#include "io/locked_file.hpp"

#include "gentlest/base/diagnostic.hpp"

#include <fmt/format.h>

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>

namespace gentlest {

namespace {

[[noreturn]] void fail(const std::string& path, const char* what, const char* remedy) {
  const std::string reason = std::strerror(errno);
  throw InputError(Fault::file, {{{path, 0, 0}, std::string(what) + ": " + reason, remedy, {}}});
}

void lock(int handle, int kind, const std::string& path) {
  while (::flock(handle, kind) != 0)
    if (errno != EINTR) fail(path, "the log cannot be locked", "keep it on a disk of this machine");
}

// Beyond this size a file is no log: no painting has so many tests, with a photograph of each.
constexpr std::size_t most_bytes = 256u << 20;

std::string read_all(int handle, const std::string& path) {
  struct stat about {};
  if (::fstat(handle, &about) != 0) fail(path, "the log cannot be read", "");
  if (!S_ISREG(about.st_mode))
    throw InputError(Fault::file, {{{path, 0, 0}, "this is not a plain file", "name a file for the log", {}}});
  std::string text;
  std::array<char, 65536> buffer{};
  off_t at = 0;
  while (true) {
    const ssize_t got = ::pread(handle, buffer.data(), buffer.size(), at);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) fail(path, "the log cannot be read", "");
    if (got == 0) return text;
    text.append(buffer.data(), static_cast<std::size_t>(got));
    at += got;
    if (text.size() > most_bytes)
      throw InputError(Fault::file, {{{path, 0, 0}, "this file is too large for a log", "", {}}});
  }
}

// A new file is on the disk only when its folder is too.
void flush_folder(const std::string& path) {
  std::filesystem::path folder = std::filesystem::path(path).parent_path();
  if (folder.empty()) folder = ".";
  const int handle = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (handle < 0) return;
  ::fsync(handle);
  ::close(handle);
}

struct Closer {
  int handle;
  ~Closer() { ::close(handle); }
};

}  // namespace

LockedFile::LockedFile(std::string path) : path_(std::move(path)) {
  handle_ = ::open(path_.c_str(), O_RDWR | O_CREAT | O_APPEND | O_CLOEXEC, 0644);
  if (handle_ < 0) fail(path_, "the log cannot be written", "is the folder there, and may you write in it?");
  try {
    lock(handle_, LOCK_EX, path_);
  } catch (...) {
    ::close(handle_);
    throw;
  }
}

LockedFile::~LockedFile() {
  ::close(handle_);
}

std::string LockedFile::text() const {
  return read_all(handle_, path_);
}

void LockedFile::append(std::string_view text) {
  const off_t before = ::lseek(handle_, 0, SEEK_END);
  if (before >= 0 && static_cast<std::size_t>(before) + text.size() > most_bytes)
    throw InputError(Fault::file, {{{path_, 0, 0},
                                    fmt::format("with this the log would be larger than {} MiB", most_bytes >> 20),
                                    "nothing was added; leave photographs beside the log, or begin another log",
                                    {}}});
  while (!text.empty()) {
    const ssize_t put = ::write(handle_, text.data(), text.size());
    if (put < 0 && errno == EINTR) continue;
    if (put < 0) {
      const int reason = errno;
      // What this very call put there is taken back: all of an addition or nothing.
      const bool is_back = before >= 0 && ::ftruncate(handle_, before) == 0;
      errno = reason;
      fail(path_, "the log could not be written",
           is_back ? "nothing was added; make room on the disk and record the test again"
                   : "look at its last lines, make room on the disk and record the test again");
    }
    text.remove_prefix(static_cast<std::size_t>(put));  // the rest, where the system took a part only
  }
  if (::fsync(handle_) != 0) fail(path_, "the log may not have reached the disk", "check that its last line is there");
  flush_folder(path_);
}

std::optional<std::string> read_shared(const std::string& path) {
  const int handle = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (handle < 0 && errno == ENOENT) return std::nullopt;
  if (handle < 0) fail(path, "the log cannot be read", "");
  const Closer closer{handle};
  lock(handle, LOCK_SH, path);
  return read_all(handle, path);
}

}  // namespace gentlest
