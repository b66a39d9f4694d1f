// The commands of the program, one file each (cmd_<name>.cpp), and what they share.
#pragma once

#include "cli/options.hpp"
#include "cli/surroundings.hpp"
#include "gentlest/answers/progress.hpp"
#include "gentlest/catalogue/catalogue.hpp"
#include "gentlest/job/job.hpp"
#include "gentlest/plan/plan.hpp"
#include "io/reading_log.hpp"
#include "report/form/form.hpp"

#include <cstddef>
#include <iosfwd>
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
  std::string done = {};  ///< what stands though the answer be lost, e.g. "test 4 is in the log easel.log"
};

/// What a command's text is, where --format says nothing else.
enum class Makes { text, HTML, SVG, CSV };

struct Command {
  const char* name;
  const char* words;                 ///< what stands behind it, e.g. "JOB"
  const char* summary;               ///< one line
  std::string help;                  ///< examples and what to know; lines of at most 80 columns
  std::vector<std::string> options;  ///< besides the common ones
  std::size_t least_words = 0;
  std::size_t most_words = 0;
  Answer (*run)(const Request&, Session&) = nullptr;
  std::size_t files = 0;  ///< so many of the words, from the first on, name files or folders
  Makes makes = Makes::text;
  std::vector<std::string> without = {};  ///< common options that would change nothing
};

const std::vector<Command>& all_commands();
const Command* find_command(std::string_view name);

/// Whether help, manual and completion name the option for the command.
bool offers_option(const Command& command, std::string_view option);

/// Whether the command hears of the option: those that make pictures and pages refuse --format in words of their own.
bool takes_option(const Command& command, std::string_view option);

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
Answer command_examine(const Request& request, Session& session);
Answer command_new(const Request& request, Session& session);
Answer command_calibrate(const Request& request, Session& session);
Answer command_condition(const Request& request, Session& session);
Answer command_record(const Request& request, Session& session);
Answer command_import(const Request& request, Session& session);
Answer command_readings(const Request& request, Session& session);
Answer command_next(const Request& request, Session& session);
Answer command_report(const Request& request, Session& session);
Answer command_afterwards(const Request& request, Session& session);
Answer command_fit(const Request& request, Session& session);
Answer command_studio(const Request& request, Session& session);
Answer command_share(const Request& request, Session& session);
Answer command_ways(const Request& request, Session& session);
Answer command_explain(const Request& request, Session& session);
Answer command_page(const Request& request, Session& session);
Answer command_help(const Request& request, Session& session);
Answer command_version(const Request& request, Session& session);
Answer command_manual(const Request& request, Session& session);
Answer command_completion(const Request& request, Session& session);

/// Carries a request out, its help where that is asked for. Throws InputError, Interrupted.
Answer answer_request(const Request& request, Session& session);

/// Thrown when the person has pressed Ctrl-C.
struct Interrupted {};

/// Version of the program.
std::string program_version();

/// Of the program and of this catalogue.
Edition edition_of(const Catalogue& catalogue);

/// Bold headings where the answer goes to a terminal that shows them.
Style style_of(const Request& request, const Session& session);

/// The catalogue of --data, read anew, or the built-in one, read once; valid until the next call. Throws InputError
/// (Fault::file).
const Catalogue& load_catalogue(const Request& request);

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

/// The same from a text that was read before. With --studio the job begins where the finished paintings leave off; what
/// of the folder is not used is told on standard error.
Job load_asked_job(const JobText& source, const Request& request, const Catalogue& catalogue, Session& session);

/// The plan of a job, on several threads, with a line of progress where it takes long. Throws InputError, Interrupted.
Plan plan_asked_job(const Job& job, const Catalogue& catalogue, const Request& request, Session& session,
                    const std::optional<Finer>& finer = {});

/// True where the examination forbids any solvent test.
bool forbids_tests(const Plan& plan);

/// The same told on standard error, for an answer that judges mixtures and does not speak of the examination itself.
void warn_where_forbidden(const Job& job, const Catalogue& catalogue, Session& session);

/// Exit code of a command that plans: 1 where there is no window or the examination forbids any test.
int exit_of(const Plan& plan);

/// Exit code of a command that follows the readings: 0 where a test is proposed or a mixture works, 1 after any other
/// stop.
int exit_of(const Progress& progress);

/// What a log that is not there means: a fault, or that no test was made yet. Where another log is named almost like
/// it, it is a fault in any case, unless the request says that the log is a new one.
enum class MissingLog { is_fault, begins };

/// A log; what could not be read of it is told on standard error. Throws InputError (Fault::file).
ReadingLog load_log(const std::string& path, const Request& request, Session& session, MissingLog missing);

/// The mixture typed behind the job's name, or that of the step of its plan that was named.
Mixture asked_mixture(const Request& request, const Job& job, const Catalogue& catalogue, Session& session);

}  // namespace gentlest
