// `gentlest report`: the tests of one painting for its treatment file.
#include "cli/commands.hpp"
#include "cli/paper.hpp"
#include "gentlest/answers/review.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/letters.hpp"
#include "io/photographs.hpp"
#include "report/paper/test_report.hpp"
#include "report/screen/progress_report.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <map>
#include <optional>
#include <ostream>
#include <utility>

namespace gentlest {

namespace {

TestReportInputs inputs_of(const Request& request, const JobText& source, const ReadingLog& log) {
  TestReportInputs inputs;
  inputs.sheet.paper = asked_paper(request);
  inputs.sheet.background = background_of(request);
  inputs.sheet.options = options_used(request);
  inputs.sheet.job_file = request.words[0];
  inputs.sheet.job_text = source.text;
  inputs.sheet.full = request.full;
  inputs.log_file = request.words[1];
  inputs.log_text = without_pictures(read_log_text(inputs.log_file));
  for (const Diagnostic& fault : log.faults)
    inputs.log_faults.push_back(fmt::format("line {}: {}", fault.where.line, fault.message));
  return inputs;
}

const std::string jpeg_uri = "data:image/jpeg;base64,";

// One photograph that a reading names, from the log itself or beside it; what cannot be shown is told in its place and
// on standard error.
ReportPhoto photo_of(const std::string& name, const ReadingLog& log, const std::filesystem::path& folder, int test,
                     std::ostream& err) {
  ReportPhoto photo{name, {}, {}};
  if (is_photograph_number(name)) return photo;
  if (const auto kept = log.photographs.find(name); kept != log.photographs.end()) {
    photo.data_uri = jpeg_uri + kept->second;
    return photo;
  }
  try {
    photo.data_uri = jpeg_uri + base64(read_photograph((folder / name).string()));
  } catch (const InputError& error) {
    const Diagnostic& fault = error.faults().front();
    photo.fault = fault.message + (fault.remedy.empty() ? "" : "; " + fault.remedy);
    err << with_controls_shown(
               fmt::format("{}: warning: photograph of test {} not shown: {}", fault.where.file, test, photo.fault))
        << "\n";
  }
  return photo;
}

std::map<int, TestPhotos> photos_of(const TestReview& review, const ReadingLog& log, const std::string& log_file,
                                    std::ostream& err) {
  const std::filesystem::path folder = std::filesystem::path(log_file).parent_path();
  std::map<int, TestPhotos> photos;
  const auto add = [&](std::vector<ReportPhoto>& to, const std::string& names, int test) {
    for (const std::string& name : photograph_names(names)) to.push_back(photo_of(name, log, folder, test, err));
  };
  for (const RecordedTest& test : review.tests) {
    const Reading& line = shown_line(test);
    TestPhotos of_test;
    add(of_test.before, line.photo_before, test.number);
    add(of_test.after, line.photo, test.number);
    for (const Reading* look : later_looks(test)) add(of_test.after, look->photo, test.number);
    if (!of_test.before.empty() || !of_test.after.empty()) photos.emplace(test.number, std::move(of_test));
  }
  return photos;
}

std::optional<RungRoom> room_of(const Plan& plan, const Progress& progress) {
  if (!progress.next.working) return std::nullopt;
  return room_above(progress.next.working->mixture, plan, progress);
}

}  // namespace

Answer command_report(const Request& request, Session& session) {
  const ReadingLog log = load_log(request.words[1], request, session, MissingLog::is_fault);
  const Catalogue& catalogue = load_catalogue(request);
  const JobText source = read_job_text(request.words[0], session);
  TestReportInputs inputs = inputs_of(request, source, log);
  inputs.sheet.edition = edition_of(catalogue);
  const Job job = load_asked_job(source, request, catalogue, session);
  const Plan plan = plan_asked_job(job, catalogue, request, session);
  const Progress progress = follow_readings(plan, catalogue, log.lines);
  const TestReview review = review_tests(plan, progress, log.lines, catalogue);
  if (request.form != Form::text)
    return {sheet_report(test_report_sheet(review), request.form, {}, inputs.sheet.edition), 0};
  // Nobody reads HTML on a terminal.
  if (session.surroundings.to_terminal && !request.output && !request.full)
    return {report_screen(plan, progress, room_of(plan, progress), style_of(request, session)), 0};
  inputs.sheet.sites = sites_of(review.tests);
  show_results(inputs.sheet.sites, progress.conduct);
  inputs.photos = photos_of(review, log, inputs.log_file, session.err);
  return {test_report_page({plan, progress, review, catalogue}, labels_of_tests(review, catalogue), inputs), 0};
}

}  // namespace gentlest
