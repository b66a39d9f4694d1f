// The commands of the program, one file each (cmd_<name>.cpp), and what they share.
#pragma once

#include "cli/options.hpp"
#include "cli/surroundings.hpp"
#include "gentlest/catalogue.hpp"
#include "gentlest/job.hpp"
#include "report/html.hpp"
#include "report/test_map.hpp"

#include <cstddef>
#include <iosfwd>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// What a command works with besides its request.
struct Session {
  std::istream& in;
  std::ostream& err;
  const Surroundings& surroundings;
};

/// A command's result: the text for standard output or --output, and the exit code.
struct Answer {
  std::string text;
  int exit_code = 0;
};

struct Command {
  const char* name;
  const char* words;                 ///< what stands behind it, e.g. "JOB"
  const char* summary;               ///< one line
  const char* help;                  ///< examples and what to know; lines of at most 80 columns
  std::vector<std::string> options;  ///< besides the common ones
  std::size_t least_words = 0;
  std::size_t most_words = 0;
  Answer (*run)(const Request&, Session&) = nullptr;
};

const std::vector<Command>& all_commands();
const Command* find_command(std::string_view name);
bool takes_option(std::string_view command, std::string_view option);

Answer command_ladder(const Request& request, Session& session);
Answer command_compare(const Request& request, Session& session);
Answer command_mixture(const Request& request, Session& session);
Answer command_vial(const Request& request, Session& session);
Answer command_sheet(const Request& request, Session& session);
Answer command_labels(const Request& request, Session& session);
Answer command_chart(const Request& request, Session& session);
Answer command_list(const Request& request, Session& session);
Answer command_show(const Request& request, Session& session);
Answer command_check(const Request& request, Session& session);
Answer command_new(const Request& request, Session& session);
Answer command_calibrate(const Request& request, Session& session);
Answer command_record(const Request& request, Session& session);
Answer command_import(const Request& request, Session& session);
Answer command_readings(const Request& request, Session& session);
Answer command_next(const Request& request, Session& session);
Answer command_report(const Request& request, Session& session);
Answer command_fit(const Request& request, Session& session);
Answer command_help(const Request& request, Session& session);
Answer command_version(const Request& request, Session& session);

/// Thrown when the person has pressed Ctrl-C.
struct Interrupted {};

/// Commands that make pictures or pages refuse --format csv and json. Throws InputError (Fault::usage).
void expect_picture(const Request& request, const std::string& made);

/// The paper of the command line, or A4. Throws InputError (Fault::usage).
Paper asked_paper(const Request& request);

/// The options that changed the result, as they would be typed again; the picture of --background.
std::vector<std::string> options_used(const Request& request);
std::optional<MapBackground> background_of(const Request& request);

/// Version of the program.
std::string program_version();

/// The catalogue of --data, or the built-in one. Throws InputError (Fault::file).
Catalogue load_catalogue(const Request& request);

/// A job's text and the name for its messages: "demo", "-" for standard input, or a path. Throws InputError
/// (Fault::file), Interrupted.
struct JobText {
  std::string text;
  std::string file;
};
JobText read_job_text(const std::string& word, Session& session);

/// The job of `word` with the limits of the command line in place of its own. Throws InputError: Fault::file for what
/// the file says, Fault::usage for what the command line says.
Job load_asked_job(const std::string& word, const Request& request, const Catalogue& catalogue, Session& session);

/// The same from a text that was read before.
Job load_asked_job(const JobText& source, const Request& request, const Catalogue& catalogue);

}  // namespace gentlest
