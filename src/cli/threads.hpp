// The only place that starts threads.
#pragma once

#include "gentlest/search/search.hpp"

namespace gentlest {

/// Carries tasks out on `count` threads, this one among them; a thread takes the next task when it is free. The first
/// exception of a task is thrown once all have stopped. 0 means two threads, or one where the machine has one core.
RunTasks on_threads(unsigned count = 0);

}  // namespace gentlest
