// One line on a watched standard error while work takes longer than a second; also where Ctrl-C is noticed.
#pragma once

#include "cli/commands.hpp"
#include "gentlest/search/search.hpp"

#include <chrono>

namespace gentlest {

/// Shows the line when it is time and wipes it at the end.
class ProgressLine {
 public:
  ProgressLine(Session& session, bool quiet);
  ~ProgressLine();
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;

  /// For the search. Throws Interrupted once Ctrl-C was pressed. Valid as long as this object lives.
  SearchProgress callback();

 private:
  void step(std::uint64_t done, std::uint64_t total);

  Session& session_;
  bool shown_allowed_;
  bool shown_ = false;
  std::chrono::steady_clock::time_point next_;
};

}  // namespace gentlest
