// A file that several programs add to: whole additions only, one writer at a time. Internal to io.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace gentlest {

/// Opens (or creates) the file for adding and holds an advisory lock on it until destroyed; waits for another holder.
/// Every failure is an InputError (Fault::file) that names the file and the system's reason.
class LockedFile {
 public:
  explicit LockedFile(std::string path);
  ~LockedFile();
  LockedFile(const LockedFile&) = delete;
  LockedFile& operator=(const LockedFile&) = delete;

  /// Everything that stands in it now.
  std::string text() const;

  /// Adds the text at the end with one write, and returns once it is on the disk. Where that fails, what was added is
  /// taken back.
  void append(std::string_view text);

 private:
  std::string path_;
  int handle_ = -1;
};

/// The whole file under a shared lock, so that no half-written addition is seen; nothing when there is no such file.
std::optional<std::string> read_shared(const std::string& path);

}  // namespace gentlest
