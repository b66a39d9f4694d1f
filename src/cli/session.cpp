#include "cli/commands.hpp"

#include "cli/output.hpp"
#include "cli/progress.hpp"
#include "cli/run.hpp"
#include "cli/threads.hpp"
#include "gentlest/answers/vial.hpp"
#include "gentlest/answers/without_studio.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/text.hpp"
#include "gentlest/conduct/typed_step.hpp"
#include "gentlest/liquids/notation.hpp"
#include "gentlest/plan/check_job.hpp"
#include "io/catalogue_files.hpp"
#include "io/files.hpp"
#include "io/job_file.hpp"
#include "io/log_names.hpp"
#include "io/studio_folder.hpp"
#include "report/examined/examination_words.hpp"
#include "report/form/format.hpp"

#include <fmt/format.h>

#include <istream>
#include <optional>
#include <ostream>
#include <utility>

namespace gentlest {

namespace {

std::string read_standard_input(Session& session) {
  std::string text;
  std::string piece(1u << 16, '\0');
  while (session.in) {
    session.in.read(piece.data(), static_cast<std::streamsize>(piece.size()));
    text.append(piece, 0, static_cast<std::size_t>(session.in.gcount()));
    if (session.surroundings.interrupted && session.surroundings.interrupted()) throw Interrupted{};
    if (text.size() > most_bytes_of_a_file)
      throw InputError(Fault::file, "standard input is larger than any job file can be", "give a job file");
  }
  return text;
}

// What the command line says of a sound job: its limits, its layer, its rungs.
std::vector<Diagnostic> faults_of_wishes(const Job& job, const Request& request, const Catalogue& catalogue) {
  std::vector<Diagnostic> faults;
  if (!request.limits.empty() || request.exactly) faults = check_job(job, catalogue);
  for (Diagnostic& fault : faults) fault.where = {"command line", 0, 0};
  if (const auto fault = target_fault(job, request.target.value_or(""))) faults.push_back(*fault);
  if (request.finer && request.finer->to > job.limits.rungs)
    faults.push_back(no_such_stretch(*request.finer, fmt::format("its rungs are 1 to {} at most", job.limits.rungs)));
  return faults;
}

}  // namespace

std::string program_version() {
  return GENTLEST_VERSION;
}

Edition edition_of(const Catalogue& catalogue) {
  return {program_version(), catalogue.version(), catalogue.law()};
}

Style style_of(const Request& request, const Session& session) {
  if (request.output && *request.output != "-") return {};  // a file knows no terminal
  return {session.surroundings.bold && !request.output, session.surroundings.width};
}

Answer answer_request(const Request& request, Session& session) {
  check_output(request);
  if (!request.help) return find_command(request.command)->run(request, session);
  Request help = request;
  if (request.command != "help") help.words = {request.command};
  return command_help(help, session);
}

const Catalogue& load_catalogue(const Request& request) {
  // Kept by the process: the page asks many questions of one.
  static std::optional<Catalogue> of_folder;
  if (request.data) return of_folder.emplace(read_catalogue(collect_catalogue(*request.data), *request.data));
  static const Catalogue built_in = read_kept_catalogue(embedded_catalogue());
  return built_in;
}

JobText read_job_text(const std::string& word, Session& session) {
  if (word == "demo") return {demo_job_text(), "demo"};
  if (word == "-") return {as_text(read_standard_input(session), "standard input"), "standard input"};
  return {read_text_file(word), word};
}

Job load_asked_job(const std::string& word, const Request& request, const Catalogue& catalogue, Session& session) {
  return load_asked_job(read_job_text(word, session), request, catalogue, session);
}

Job load_asked_job(const JobText& source, const Request& request, const Catalogue& catalogue, Session& session) {
  Job job = load_job(source.text, source.file, catalogue);
  for (const AskedLimit& asked : request.limits) put_number(*asked.limit, asked.value, job.limits);
  if (request.exactly) job.limits.exactly = items_of(*request.exactly, ",");
  // The file was sound, so what is wrong now comes from the command line.
  std::vector<Diagnostic> faults = faults_of_wishes(job, request, catalogue);
  if (!faults.empty()) throw InputError(Fault::usage, std::move(faults));
  take_in_findings(job, catalogue);
  if (request.studio) {
    const StudioFolder folder = read_studio_folder(*request.studio, catalogue, source.file);
    session.err << render(folder.left_out, folder.left_out.size());
    job.starts = starts_of(learn_from_paintings(folder.paintings, catalogue));
  }
  return job;
}

Plan plan_asked_job(const Job& job, const Catalogue& catalogue, const Request& request, Session& session,
                    const std::optional<Finer>& finer) {
  // The last plan is kept: the page asks for ladder, next test, pictures and papers of one and the same job. Only of
  // the built-in catalogue, which stays what and where it is.
  struct Kept {
    Job job;
    std::string target;
    std::optional<Finer> finer;
    Plan plan;
  };
  static std::optional<Kept> last;
  const std::string target = request.target.value_or("");
  const bool is_known = last && last->job == job && last->target == target && last->finer == finer;
  if (!request.data && is_known) return last->plan;
  ProgressLine progress(session, request.quiet);
  Plan plan = make_plan(job, catalogue, target, progress.callback(), on_threads(), finer);
  plan.without_studio = judged_without_studio(plan, catalogue);
  if (!request.data) last.emplace(Kept{job, target, finer, plan});
  return plan;
}

bool forbids_tests(const Plan& plan) {
  return plan.examination.verdict == ExaminationVerdict::do_not;
}

void warn_where_forbidden(const Job& job, const Catalogue& catalogue, Session& session) {
  const Examination examination = weigh_examination(job, catalogue);
  if (examination.verdict == ExaminationVerdict::do_not) session.err << verdict_sentence(examination) << "\n";
}

int exit_of(const Plan& plan) {
  return plan.outcome == Outcome::window && !forbids_tests(plan) ? exit_done : exit_no_window;
}

int exit_of(const Progress& progress) {
  const NextKind kind = progress.next.kind;
  return kind == NextKind::test || kind == NextKind::found ? exit_done : exit_no_window;
}

ReadingLog load_log(const std::string& path, const Request& request, Session& session, MissingLog missing) {
  ReadingLog log = read_log(path);
  session.err << render(log.faults);
  if (log.exists || (request.new_log && missing == MissingLog::begins)) return log;
  const std::string meant = log_meant_by(path);
  if (meant.empty() && missing == MissingLog::begins) return log;
  std::string remedy = meant.empty() ? "check the name and the folder" : fmt::format("did you mean \"{}\"?", meant);
  if (missing == MissingLog::begins) remedy += " For a log of its own add --new-log";
  throw InputError(Fault::file, {{{path, 0, 0}, "there is no log of this name", std::move(remedy), {}}});
}

Mixture asked_mixture(const Request& request, const Job& job, const Catalogue& catalogue, Session& session) {
  // Whoever forgets the quotes means the same.
  const std::string text = joined({request.words.begin() + 1, request.words.end()}, " ");
  if (const std::optional<TypedStep> step = typed_step(text))
    return mixture_of_step(plan_asked_job(job, catalogue, request, session), *step);
  if (no_mixture_from(text) == NoMixture::aqueous)
    throw InputError(Fault::usage, fmt::format("\"{}\" is no solvent mixture and has no place in Hansen space", text),
                     "`gentlest record` logs what a swab of it did; nothing can be worked out for it");
  return parse_mixture(text, catalogue, all_liquids(shelf_of(job, catalogue)));
}

}  // namespace gentlest
