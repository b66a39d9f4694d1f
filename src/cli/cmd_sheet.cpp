#include "report/test_report.hpp"

#include "cli/commands.hpp"
#include "cli/progress.hpp"
#include "cli/run.hpp"
#include "gentlest/diagnostic.hpp"
#include "io/files.hpp"
#include "io/reading_log.hpp"
#include "report/bench_sheet.hpp"
#include "report/format.hpp"

#include <fmt/format.h>

#include <ostream>

namespace gentlest {

std::optional<MapBackground> background_of(const Request& request) {
  if (!request.background) return std::nullopt;
  ImageFile image = read_image_file(*request.background);
  return MapBackground{std::move(image.media_type), std::move(image.bytes)};
}

// The options that changed the result, as they would be typed again.
std::vector<std::string> options_used(const Request& request) {
  std::vector<std::string> used;
  const auto add = [&](const char* name, const auto& value, const auto& words) {
    if (value) used.push_back(fmt::format("--{} {}", name, words(*value)));
  };
  const auto quoted = [](const std::string& text) { return "\"" + text + "\""; };
  const auto number = [](double value) { return as_data(value); };
  const auto whole = [](int value) { return std::to_string(value); };
  add("data", request.data, quoted);
  add("target", request.target, quoted);
  add("risk-limit", request.risk_limit, number);
  add("parts", request.parts, whole);
  add("step", request.step, whole);
  add("bottles", request.bottles, whole);
  add("rungs", request.rungs, whole);
  add("paper", request.paper, quoted);
  add("vial", request.vial_mL, number);
  add("measure", request.measure_mL, number);
  add("sites", request.sites, quoted);
  add("background", request.background, quoted);
  add("log", request.log, quoted);
  return used;
}

namespace {

// Places and numbers of the tests made so far; the cards go on from there.
void take_log(const std::string& path, SheetInputs& inputs, Session& session) {
  read_text_file(path);  // a missing log is a mistake here, not an empty one
  const ReadingLog log = read_log(path);
  session.err << render(log.faults);
  inputs.sites = sites_of(tests_in(log.lines));
  inputs.tests_so_far = log.highest_test;
}

}  // namespace

Paper asked_paper(const Request& request) {
  const std::string word = request.paper.value_or("a4");
  if (const std::optional<Paper> paper = paper_from_word(word)) return *paper;
  throw InputError(Fault::usage, fmt::format("unknown paper \"{}\"", word), "a4 or letter");
}

Answer command_sheet(const Request& request, Session& session) {
  expect_picture(request, "HTML");
  SheetInputs inputs;
  inputs.paper = asked_paper(request);
  if (request.sites && request.log)
    throw InputError(Fault::usage, "both --sites and --log say where the tests are", "give one of them");
  if (request.sites) inputs.sites = parse_sites(*request.sites);
  if (request.log) take_log(*request.log, inputs, session);
  inputs.background = background_of(request);
  inputs.options = options_used(request);
  const Catalogue catalogue = load_catalogue(request);
  inputs.edition = {program_version(), catalogue.version()};
  const JobText source = read_job_text(request.words.front(), session);
  inputs.job_file = request.words.front();
  inputs.job_text = source.text;
  const Job job = load_asked_job(source, request, catalogue);
  ProgressLine progress(session, request.quiet);
  const Plan plan = make_plan(job, catalogue, request.target.value_or(""), progress.callback());
  const Bench bench = prepare_bench(plan, catalogue);
  return {bench_sheet(plan, bench, inputs), plan.outcome == Outcome::window ? exit_done : exit_no_window};
}

}  // namespace gentlest
