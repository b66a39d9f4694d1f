#include "cli/commands.hpp"

#include "cli/progress.hpp"
#include "cli/run.hpp"
#include "cli/threads.hpp"
#include "gentlest/answers/vial.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "gentlest/liquids/notation.hpp"
#include "io/catalogue_files.hpp"
#include "io/files.hpp"
#include "io/job_file.hpp"
#include "io/log_names.hpp"
#include "report/form/format.hpp"

#include <fmt/format.h>

#include <istream>
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

bool put_limits(Limits& limits, const Request& request) {
  const Limits before = limits;
  limits.risk_limit = request.risk_limit.value_or(limits.risk_limit);
  limits.parts = request.parts.value_or(limits.parts);
  limits.step_percent = request.step.value_or(limits.step_percent);
  limits.bottles = request.bottles.value_or(limits.bottles);
  limits.vial_mL = request.vial_mL.value_or(limits.vial_mL);
  limits.measure_mL = request.measure_mL.value_or(limits.measure_mL);
  limits.rungs = request.rungs.value_or(limits.rungs);
  return !(limits == before);
}

}  // namespace

std::string program_version() {
  return GENTLEST_VERSION;
}

Edition edition_of(const Catalogue& catalogue) {
  return {program_version(), catalogue.version(), catalogue.law()};
}

Style style_of(const Request& request, const Session& session) {
  return {session.surroundings.bold && !request.output};
}

Catalogue load_catalogue(const Request& request) {
  if (!request.data) return read_catalogue(embedded_catalogue());
  return read_catalogue(collect_catalogue(*request.data), *request.data);
}

JobText read_job_text(const std::string& word, Session& session) {
  if (word == "demo") return {demo_job_text(), "demo"};
  if (word == "-") return {as_text(read_standard_input(session), "standard input"), "standard input"};
  return {read_text_file(word), word};
}

Job load_asked_job(const std::string& word, const Request& request, const Catalogue& catalogue, Session& session) {
  return load_asked_job(read_job_text(word, session), request, catalogue);
}

Job load_asked_job(const JobText& source, const Request& request, const Catalogue& catalogue) {
  Job job = load_job(source.text, source.file, catalogue);
  if (!put_limits(job.limits, request)) return job;
  // The file was sound, so what is wrong now comes from the command line.
  std::vector<Diagnostic> faults = check_job(job, catalogue);
  for (Diagnostic& fault : faults) fault.where = {"command line", 0, 0};
  if (!faults.empty()) throw InputError(Fault::usage, std::move(faults));
  return job;
}

Plan plan_asked_job(const Job& job, const Catalogue& catalogue, const Request& request, Session& session,
                    const PlanWishes& wishes) {
  ProgressLine progress(session, request.quiet);
  return make_plan(job, catalogue, request.target.value_or(""), progress.callback(), on_threads(), wishes);
}

int exit_of(const Plan& plan) {
  return plan.outcome == Outcome::window ? exit_done : exit_no_window;
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

AskedMixture load_asked_mixture(const Request& request, const Catalogue& catalogue, Session& session) {
  Job job = load_asked_job(request.words.front(), request, catalogue, session);
  // Whoever forgets the quotes means the same.
  const std::string text = joined({request.words.begin() + 1, request.words.end()}, " ");
  Mixture mixture = parse_mixture(text, catalogue, all_liquids(shelf_of(job, catalogue)));
  std::vector<PlannedLayer> layers = planned_layers(job, catalogue, request.target.value_or(""));
  return {std::move(job), std::move(mixture), std::move(layers)};
}

}  // namespace gentlest
