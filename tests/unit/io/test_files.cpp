#include "scratch.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "io/files.hpp"

#include <catch2/catch.hpp>

#include <functional>

using namespace gentlest;
using gentlest::test::get;
using gentlest::test::put;
using gentlest::test::ScratchFolder;

namespace {

std::string fault_of(const std::function<void()>& action) {
  try {
    action();
  } catch (const InputError& error) {
    CHECK(error.kind() == Fault::file);
    return render(error.faults());
  }
  return "no fault";
}

std::size_t files_in(const ScratchFolder& folder) {
  std::size_t count = 0;
  for ([[maybe_unused]] const auto& entry : std::filesystem::directory_iterator(folder.path())) ++count;
  return count;
}

}  // namespace

TEST_CASE("what is written is read again, and nothing is left beside it") {
  const ScratchFolder folder;
  const std::string path = folder.file("a.txt");
  write_text_file(path, "first\n");
  write_text_file(path, "second, \xC3\xA4\n");
  CHECK(read_text_file(path) == "second, \xC3\xA4\n");
  CHECK(files_in(folder) == 1);
}

TEST_CASE("a file that cannot be written leaves everything as it was") {
  const ScratchFolder folder;
  CHECK(fault_of([&] { write_text_file(folder.file("no/such/folder.txt"), "x"); }).find("cannot be written") !=
        std::string::npos);
  CHECK(fault_of([&] { write_text_file(folder.path().string(), "x"); }).find("folder") != std::string::npos);
  CHECK(fault_of([&] { write_text_file("", "x"); }).find("error:") != std::string::npos);
  CHECK(files_in(folder) == 0);
}

TEST_CASE("a link stays a link, its target is replaced") {
  const ScratchFolder folder;
  put(folder.file("real.txt"), "old");
  std::filesystem::create_symlink(folder.file("real.txt"), folder.file("link.txt"));
  write_text_file(folder.file("link.txt"), "new");
  CHECK(get(folder.file("real.txt")) == "new");
  CHECK(std::filesystem::is_symlink(folder.file("link.txt")));
}

TEST_CASE("permissions of a replaced file stay") {
  const ScratchFolder folder;
  const std::string path = folder.file("a.txt");
  put(path, "old");
  std::filesystem::permissions(path, std::filesystem::perms::owner_read | std::filesystem::perms::owner_write);
  write_text_file(path, "new");
  CHECK(std::filesystem::status(path).permissions() ==
        (std::filesystem::perms::owner_read | std::filesystem::perms::owner_write));
}

TEST_CASE("devices are written to, not replaced") {
  write_text_file("/dev/null", "gone");
  CHECK_FALSE(std::filesystem::is_regular_file("/dev/null"));
}

TEST_CASE("files that are not there, not files, not text or far too large are refused") {
  const ScratchFolder folder;
  CHECK(fault_of([&] { read_text_file(folder.file("none.yaml")); }).find("cannot be read") != std::string::npos);
  CHECK(fault_of([&] { read_text_file(folder.path().string()); }).find("folder") != std::string::npos);
  const std::string path = folder.file("a.yaml");
  put(path, "ok\nnot \xFF ok\n");
  CHECK(fault_of([&] { read_text_file(path); }).find(":2:5: error: this is not UTF-8") != std::string::npos);
  put(path, std::string("nul \0 byte", 10));
  CHECK(fault_of([&] { read_text_file(path); }).find("not UTF-8") != std::string::npos);
  put(path, std::string(most_bytes_of_a_file + 1, 'x'));
  CHECK(fault_of([&] { read_text_file(path); }).find("larger than 8 MiB") != std::string::npos);
}

TEST_CASE("a byte order mark is dropped") {
  const ScratchFolder folder;
  put(folder.file("a.yaml"), "\xEF\xBB\xBFtext");
  CHECK(read_text_file(folder.file("a.yaml")) == "text");
}
