#include "cli/run.hpp"

#include "cli/commands.hpp"
#include "cli/output.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/letters.hpp"

#include <exception>
#include <istream>
#include <ostream>

namespace gentlest {

namespace {

bool was_interrupted(const Surroundings& surroundings) {
  return surroundings.interrupted && surroundings.interrupted();
}

}  // namespace

int run(const std::vector<std::string>& args, std::istream& in, std::ostream& out, std::ostream& err,
        const Surroundings& surroundings) {
  Answer answer;
  // What was done stays done, whatever becomes of the answer.
  const auto say_done = [&](const char* end) { return with_controls_shown(answer.done) + end + "\n"; };
  try {
    Session session{in, err, surroundings};
    const Request request = read_request(read_command_line(args));
    answer = answer_request(request, session);
    if (was_interrupted(surroundings)) throw Interrupted{};
    deliver(answer, request, out);
    return answer.exit_code;
  } catch (const InputError& fault) {
    err << render(fault.faults());
    if (!answer.done.empty()) err << say_done("; only the answer could not be shown");
    err << std::flush;
    return fault.kind() == Fault::usage ? exit_usage : exit_file;
  } catch (const Interrupted&) {
    err << "interrupted; " << (answer.done.empty() ? "nothing was written\n" : say_done("")) << std::flush;
    return exit_interrupted;
  } catch (const std::exception& fault) {
    err << "gentlest stopped: " << fault.what() << "\n" << std::flush;
    return exit_file;
  }
}

}  // namespace gentlest
