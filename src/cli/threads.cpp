#include "cli/threads.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace gentlest {

RunTasks on_threads(unsigned count) {
  const unsigned threads = count > 0 ? count : std::clamp(std::thread::hardware_concurrency(), 1U, 2U);
  return [threads](const std::vector<std::function<void()>>& tasks) {
    std::atomic<std::size_t> next = 0;
    std::exception_ptr fault;
    std::mutex fault_guard;
    const auto work = [&] {
      for (std::size_t i = next++; i < tasks.size(); i = next++) try {
          tasks[i]();
        } catch (...) {
          const std::lock_guard lock(fault_guard);
          if (!fault) fault = std::current_exception();
          next = tasks.size();
        }
    };
    {
      std::vector<std::jthread> helpers;
      for (unsigned i = 1; i < threads; ++i) helpers.emplace_back(work);
      work();
    }
    if (fault) std::rethrow_exception(fault);
  };
}

}  // namespace gentlest
