// Calls the program as a function, and as a process.
#pragma once

#include "cli/run.hpp"

#include <sys/wait.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace gentlest::test {

struct Result {
  int code = 0;
  std::string out;
  std::string err;
};

/// Wide enough that no sentence looked for is broken in another place than it always was.
inline constexpr std::size_t test_width = 100;

inline Surroundings page_of(std::size_t width, bool bold = false) {
  Surroundings surroundings;
  surroundings.width = width;
  surroundings.bold = bold;
  return surroundings;
}

inline Result call(const std::vector<std::string>& args, const std::string& input = {},
                   const Surroundings& surroundings = page_of(test_width)) {
  std::istringstream in(input);
  std::ostringstream out;
  std::ostringstream err;
  const int code = run(args, in, out, err, surroundings);
  return {code, out.str(), err.str()};
}

/// The same call for the whole answer, where the command has a first screen.
inline std::vector<std::string> in_full(std::vector<std::string> args) {
  if (args.front() == "ladder" || args.front() == "compare" || args.front() == "vial") args.emplace_back("--full");
  return args;
}

/// Standard output and exit code of a shell command in which PROGRAM stands for the built program.
inline Result shell(std::string command) {
  for (std::size_t at = command.find("PROGRAM"); at != std::string::npos; at = command.find("PROGRAM"))
    command.replace(at, 7, GENTLEST_PROGRAM);
  FILE* pipe = popen(command.c_str(), "r");
  if (!pipe) throw std::runtime_error("cannot start: " + command);
  Result result;
  for (int c = std::fgetc(pipe); c != EOF; c = std::fgetc(pipe)) result.out += static_cast<char>(c);
  const int status = pclose(pipe);
  result.code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  return result;
}

/// A folder of its own that goes away with the test.
class Folder {
 public:
  Folder() {
    std::string pattern = (std::filesystem::temp_directory_path() / "gentlest_test_XXXXXX").string();
    if (!mkdtemp(pattern.data())) throw std::runtime_error("cannot make a folder");
    path_ = pattern;
  }
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;

  std::string file(const std::string& name) const { return (path_ / name).string(); }

  std::size_t count() const {
    std::size_t files = 0;
    for ([[maybe_unused]] const auto& entry : std::filesystem::directory_iterator(path_)) ++files;
    return files;
  }

 private:
  std::filesystem::path path_;
};

inline void write_file(const std::string& path, const std::string& text) {
  std::ofstream(path, std::ios::binary) << text;
}

/// A log that holds these lines; returns its path.
inline std::string log_of(const Folder& folder, const std::string& lines = {}) {
  const std::string log = folder.file("easel.log");
  write_file(log, "{\"gentlest_log\":1}\n" + lines);
  return log;
}

inline std::string read_file(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

inline std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

inline bool holds(const std::string& text, const std::string& piece) {
  return text.find(piece) != std::string::npos;
}

/// The text with every run of spaces and line breaks as one space, for looking up what may be wrapped.
inline std::string unwrapped(const std::string& text) {
  std::istringstream in(text);
  std::string flat;
  for (std::string word; in >> word;) flat += (flat.empty() ? "" : " ") + word;
  return flat;
}

inline std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  if (at == std::string::npos) throw std::runtime_error("not in the text: " + from);
  return text.replace(at, from.size(), to);
}

}  // namespace gentlest::test
