// What is wrong with an input, where, and what would be right.
// Every reader collects all its faults first and throws them together as one InputError.
#pragma once

#include <cstddef>
#include <stdexcept>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

namespace gentlest {

/// A place in a file. Lines and columns count from 1; 0 means "not known". In order of file, line and column.
struct Location {
  std::string file;
  int line = 0;
  int column = 0;
  bool operator==(const Location&) const = default;
  bool operator<(const Location& other) const {
    return std::tie(file, line, column) < std::tie(other.file, other.line, other.column);
  }
};

/// One fault of an input.
struct Diagnostic {
  Location where;
  std::string message;  ///< what is wrong, in one sentence without a full stop
  std::string remedy;   ///< what would be right; may be empty
  std::string excerpt;  ///< the faulty line as it stands in the file; may be empty
  bool operator==(const Diagnostic&) const = default;
};

/// Text of one fault: "file:line:column: error: message", the line with a caret, the remedy. Ends with a line break.
/// Control characters are written out: what stands in a faulty file must not steer the terminal.
std::string render(const Diagnostic& fault);

/// Text of many faults, in order of their place, at most `most`, then how many were left out.
std::string render(const std::vector<Diagnostic>& faults, std::size_t most = 20);

/// Which kind of mistake an InputError reports; it decides the exit code.
enum class Fault {
  usage,  ///< the command line asks for something that does not exist or contradicts itself
  file    ///< a file cannot be read or written, or says something that cannot be right
};

/// Thrown for every bad input; never for a mistake of the program. Carries at least one diagnostic.
class InputError : public std::runtime_error {
 public:
  InputError(Fault kind, std::vector<Diagnostic> faults);
  /// One fault without a place in a file, e.g. a mistyped word on the command line.
  InputError(Fault kind, std::string message, std::string remedy = {});

  Fault kind() const noexcept { return kind_; }
  const std::vector<Diagnostic>& faults() const noexcept { return faults_; }

 private:
  Fault kind_;
  std::vector<Diagnostic> faults_;
};

/// How many letters must change, come or go to make one text the other; a swap of neighbours counts once. On bytes.
std::size_t edit_distance(const std::string& a, const std::string& b);

/// The known name nearest to a mistyped one (edit distance with neighbouring swaps, case folded), or empty when none
/// is near: at most a third of the letters may differ.
std::string nearest_name(std::string_view typed, const std::vector<std::string>& known);

}  // namespace gentlest
