// The report of the tests for the treatment file: a page that is read long after this program is gone, and its table.
#pragma once

#include "gentlest/answers/review.hpp"
#include "report/form/form.hpp"
#include "report/form/sheet.hpp"
#include "report/paper/bench_sheet.hpp"

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace gentlest {

/// A photograph that a reading names, ready for the page.
struct ReportPhoto {
  std::string name;      ///< as in the log: a file or a number
  std::string data_uri;  ///< "data:image/jpeg;base64,..."; empty of a mere number and of what could not be read
  std::string fault;     ///< why it is not shown, in the words of the message; else empty
};

/// Those of one test.
struct TestPhotos {
  std::vector<ReportPhoto> before, after;
};

/// What stands in the report besides plan, progress and review.
struct TestReportInputs {
  SheetInputs sheet;                      ///< paper, editions, job, options, sites and background of the map
  std::string log_file;                   ///< as named on the command line
  std::string log_text;                   ///< the whole file, so that nothing is lost
  std::vector<std::string> log_faults;    ///< what could not be read of it, one sentence a line
  std::map<int, TestPhotos> photos = {};  ///< by number of the test
};

/// Everything the report is made of.
struct TestReport {
  const Plan& plan;
  const Progress& progress;
  const TestReview& review;
  const Catalogue& catalogue;
};

/// One field of a reading: key of the log (with the unit), title for people, value.
struct ReadingFact {
  std::string_view key;
  const char* title;
  Cell value;
};
std::vector<ReadingFact> reading_facts(const Reading& reading);

/// "counts", "withdrawn: wrong bottle", "not counted: ...".
std::string status_words(const RecordedTest& test);

/// What each later line changed, and why: "removal: no effect became partly removed (seen dry)". Plain text.
std::vector<std::string> corrections_of(const RecordedTest& test);

/// "12.3 % (5.1 % to 22 %)", the middle 90 % in brackets; the same for figures.
std::string chance_words(const Estimate& estimate);
std::string figure_words(const Estimate& estimate);

/// The places of all tests that have one, withdrawn ones marked.
std::vector<MapSite> sites_of(const std::vector<RecordedTest>& tests);

/// Gives each place what came of its test, and marks those on passages that are closed.
void show_results(std::vector<MapSite>& sites, const Conduct& conduct);

/// The page. Same input, same bytes; the only dates are those of the log.
std::string test_report_page(const TestReport& report, const Bench& labels, const TestReportInputs& inputs);

/// Parts of it, as HTML.
std::string report_tests(const TestReview& review, const TestReportInputs& inputs);
std::string report_times(const TestReport& report);
std::string report_choice(const TestReport& report);
std::string report_options(const TestReport& report);

/// One row a test, for spreadsheets and programs.
Sheet test_report_sheet(const TestReview& review);

}  // namespace gentlest
