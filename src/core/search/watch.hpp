// How a search at work lets itself be watched and stopped. Internal to core.
#pragma once

#include "gentlest/search/search.hpp"

#include <exception>
#include <mutex>

namespace gentlest {

/// Lets tasks that may run at once call a SearchProgress that need not bear that. What it throws once, every later call
/// throws again, so that no task works on after a stop.
class Pulse {
 public:
  Pulse(const SearchProgress& progress, std::uint64_t all) : progress_(progress), all_(all) {}
  Pulse(const Pulse&) = delete;
  Pulse& operator=(const Pulse&) = delete;

  /// From any task, every few thousand mixtures.
  void beat();

  /// So many mixtures are settled by now.
  void settle(std::uint64_t done);

 private:
  const SearchProgress& progress_;
  const std::uint64_t all_;
  std::mutex mutex_;
  std::uint64_t done_ = 0;
  std::exception_ptr fault_;
};

/// The task's ways of asking and running, with a beat before each answer and each piece of work. `run` refers to the
/// task. With an empty beat they are the task's own.
struct SearchWatch {
  std::function<void()> beat;
  Allowed allowed;
  RunTasks run;
};
SearchWatch watch(const SearchTask& task, const std::function<void()>& beat);

}  // namespace gentlest
