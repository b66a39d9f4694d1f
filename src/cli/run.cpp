#include "cli/run.hpp"

#include "cli/commands.hpp"
#include "gentlest/diagnostic.hpp"
#include "io/files.hpp"

#include <exception>
#include <filesystem>
#include <istream>
#include <ostream>

namespace gentlest {

namespace {

// A result must not replace a file it was made from.
void refuse_to_overwrite_input(const Request& request) {
  if (!request.output) return;
  for (const std::string& word : request.words) {
    std::error_code fault;
    if (std::filesystem::equivalent(word, *request.output, fault) && !fault)
      throw InputError(Fault::usage, "--output names the file that is read: " + word, "choose another name");
  }
}

void deliver(const Answer& answer, const Request& request, std::ostream& out) {
  if (request.output && *request.output != "-") return write_text_file(*request.output, answer.text);
  out << answer.text << std::flush;
  if (!out)
    throw InputError(Fault::file, "standard output could not be written to the end",
                     "is the disk full, or was the reader closed?");
}

Answer answer_request(const Request& request, Session& session) {
  refuse_to_overwrite_input(request);
  if (!request.help) return find_command(request.command)->run(request, session);
  Request help = request;
  if (request.command != "help") help.words = {request.command};
  return command_help(help, session);
}

bool was_interrupted(const Surroundings& surroundings) {
  return surroundings.interrupted && surroundings.interrupted();
}

}  // namespace

int run(const std::vector<std::string>& args, std::istream& in, std::ostream& out, std::ostream& err,
        const Surroundings& surroundings) {
  try {
    Session session{in, err, surroundings};
    const Request request = read_request(args);
    const Answer answer = answer_request(request, session);
    if (was_interrupted(surroundings)) throw Interrupted{};
    deliver(answer, request, out);
    return answer.exit_code;
  } catch (const InputError& fault) {
    err << render(fault.faults()) << std::flush;
    return fault.kind() == Fault::usage ? exit_usage : exit_file;
  } catch (const Interrupted&) {
    err << "interrupted; nothing was written\n" << std::flush;
    return exit_interrupted;
  } catch (const std::exception& fault) {
    err << "gentlest stopped: " << fault.what() << "\n" << std::flush;
    return exit_file;
  }
}

}  // namespace gentlest
