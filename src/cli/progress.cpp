#include "cli/progress.hpp"

#include "report/form/format.hpp"

#include <ostream>

namespace gentlest {

namespace {

using Clock = std::chrono::steady_clock;
constexpr std::chrono::milliseconds quiet_time{1000};
constexpr std::chrono::milliseconds between_lines{200};

}  // namespace

ProgressLine::ProgressLine(Session& session, bool quiet)
    : session_(session),
      shown_allowed_(!quiet && session.surroundings.errors_to_terminal),
      next_(Clock::now() + quiet_time) {}

ProgressLine::~ProgressLine() {
  if (shown_) session_.err << "\r\033[K" << std::flush;
}

SearchProgress ProgressLine::callback() {
  return [this](std::uint64_t done, std::uint64_t total) { step(done, total); };
}

void ProgressLine::step(std::uint64_t done, std::uint64_t total) {
  if (session_.surroundings.interrupted && session_.surroundings.interrupted()) throw Interrupted{};
  const Clock::time_point now = Clock::now();
  if (total == 0 || now < next_) return;
  next_ = now + between_lines;
  if (session_.surroundings.hears_progress) session_.surroundings.hears_progress(done, total);
  if (!shown_allowed_) return;
  shown_ = true;
  session_.err << "\r\033[K" << with_commas(done) << " of " << with_commas(total) << " mixtures judged" << std::flush;
}

}  // namespace gentlest
