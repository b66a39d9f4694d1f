#include "cli/commands.hpp"

#include "gentlest/diagnostic.hpp"
#include "io/catalogue_files.hpp"
#include "io/files.hpp"
#include "io/job_file.hpp"

#include <istream>
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

Catalogue load_catalogue(const Request& request) {
  if (!request.data) return read_catalogue(embedded_catalogue());
  return read_catalogue(collect_catalogue(*request.data), *request.data);
}

JobText read_job_text(const std::string& word, Session& session) {
  if (word == "demo") return {demo_job_text(), "demo"};
  if (word == "-") return {read_standard_input(session), "standard input"};
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

}  // namespace gentlest
