#include "core/search/watch.hpp"

#include <vector>

namespace gentlest {

void Pulse::beat() {
  if (!progress_) return;
  const std::lock_guard<std::mutex> lock(mutex_);
  if (fault_) std::rethrow_exception(fault_);
  try {
    progress_(done_, all_);
  } catch (...) {
    fault_ = std::current_exception();
    throw;
  }
}

void Pulse::settle(std::uint64_t done) {
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    done_ = done;
  }
  beat();
}

SearchWatch watch(const SearchTask& task, const std::function<void()>& beat) {
  if (!beat) return {{}, task.allowed, task.run};
  SearchWatch watched;
  watched.beat = beat;
  if (task.allowed)
    watched.allowed = [asked = task.allowed, beat](const SearchTask& of, const Composition& composition) {
      beat();
      return asked(of, composition);
    };
  watched.run = [&task, beat](const std::vector<std::function<void()>>& pieces) {
    std::vector<std::function<void()>> beating;
    for (const auto& piece : pieces)
      beating.emplace_back([&piece, &beat] {
        beat();
        piece();
      });
    if (task.run) return task.run(beating);
    for (const auto& piece : beating) piece();
  };
  return watched;
}

}  // namespace gentlest
