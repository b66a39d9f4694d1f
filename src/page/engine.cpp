// The engine of the page: what WebAssembly shows of the program. Built by the preset "page" only.
#include "cli/question.hpp"
#include "cli/threads.hpp"

#include <emscripten.h>

#include <string>

// Module.onProgress is set by engine/engine_glue.js for the question in work.
EM_JS(void, tell_progress, (double done, double total), {
  if (Module.onProgress) Module.onProgress(done, total);
});

namespace gentlest {

// A page has one thread for the engine: tasks in turn, the first exception goes through.
RunTasks on_threads(unsigned) {
  return [](const std::vector<std::function<void()>>& tasks) {
    for (const auto& task : tasks) task();
  };
}

}  // namespace gentlest

extern "C" EMSCRIPTEN_KEEPALIVE const char* gentlest_ask(const char* question) {
  static std::string answer;
  gentlest::Surroundings surroundings;
  surroundings.hears_progress = [](std::uint64_t done, std::uint64_t total) {
    tell_progress(static_cast<double>(done), static_cast<double>(total));
  };
  answer = gentlest::answer_question(question, surroundings);
  return answer.c_str();
}
