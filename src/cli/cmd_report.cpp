// `gentlest report`: the tests of one painting for its treatment file.
#include "cli/commands.hpp"
#include "cli/progress.hpp"
#include "gentlest/diagnostic.hpp"
#include "gentlest/review.hpp"
#include "io/files.hpp"
#include "io/reading_log.hpp"
#include "report/test_report.hpp"

#include <fmt/format.h>

#include <ostream>

namespace gentlest {

namespace {

TestReportInputs inputs_of(const Request& request, const JobText& source, const ReadingLog& log) {
  TestReportInputs inputs;
  inputs.sheet.paper = asked_paper(request);
  inputs.sheet.background = background_of(request);
  inputs.sheet.options = options_used(request);
  inputs.sheet.job_file = request.words[0];
  inputs.sheet.job_text = source.text;
  inputs.log_file = request.words[1];
  inputs.log_text = read_text_file(inputs.log_file);
  for (const Diagnostic& fault : log.faults)
    inputs.log_faults.push_back(fmt::format("line {}: {}", fault.where.line, fault.message));
  return inputs;
}

}  // namespace

Answer command_report(const Request& request, Session& session) {
  read_text_file(request.words[1]);  // a missing log is a mistake here, not an empty one
  const ReadingLog log = read_log(request.words[1]);
  session.err << render(log.faults);
  const Catalogue catalogue = load_catalogue(request);
  const JobText source = read_job_text(request.words[0], session);
  TestReportInputs inputs = inputs_of(request, source, log);
  inputs.sheet.edition = {program_version(), catalogue.version()};
  const Job job = load_asked_job(source, request, catalogue);
  const std::string target = request.target.value_or("");
  ProgressLine progress_line(session, request.quiet);
  const Plan plan = make_plan(job, catalogue, target, progress_line.callback());
  const Progress progress = follow_readings(job, catalogue, log.lines, target);
  const TestReview review = review_tests(plan, progress, log.lines, catalogue);
  if (request.form != Form::text)
    return {sheet_report(test_report_sheet(review), request.form, {}, inputs.sheet.edition), 0};
  inputs.sheet.sites = sites_of(review.tests);
  return {test_report_page({plan, progress, review, catalogue}, labels_of_tests(review, catalogue), inputs), 0};
}

}  // namespace gentlest
