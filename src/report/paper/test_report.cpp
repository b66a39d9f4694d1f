#include "report/paper/test_report.hpp"

#include "report/bottle/danger_words.hpp"
#include "report/draw/pictogram.hpp"
#include "report/form/format.hpp"
#include "report/paper/carried.hpp"
#include "report/paper/conduct_html.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/learning_words.hpp"
#include "report/phrases/sighting_words.hpp"
#include "report/phrases/words.hpp"
#include "report/plans/studio_words.hpp"
#include "report/questions/examination_page.hpp"
#include "report/tested/progress_charts.hpp"

#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace gentlest {

namespace {

constexpr const char* report_title = "Report of solvent tests";

constexpr const char* report_css =
    R"(.report table:not(.pages) { font-size: 8.5pt; line-height: 1.25; table-layout: fixed; }
.report { font-size: 9pt; line-height: 1.3; } .report h1 { font-size: 13pt; }
.tests .c0 { width: 4.5%; } .tests .c1 { width: 12%; } .tests .c2 { width: 21%; } .tests .c3 { width: 16%; }
.tests .c4 { width: 7.5%; } .tests .c5 { width: 13%; } .tests tbody { break-inside: avoid; }
.withdrawn tr:first-child > * { text-decoration: line-through; } .test td:empty { border-right-style: hidden; }
.photos { display: flex; flex-wrap: wrap; gap: 3mm; margin-top: 1mm; } .photo { flex: 1 1 40%; max-width: 49%; margin: 0; }
.photo img { display: block; max-width: 100%; max-height: 75mm; }
.times .c0 { width: 46%; } .layers .c0 { width: 13%; } .layers .c1 { width: 10%; } .layers .c2, .layers .c3 { width: 13.5%; }
.layers .c4 { width: 22%; } .options .c0 { width: 27%; } .options .c1 { width: 12%; }
.lead { border: .5mm solid #000; padding: 1.5mm 2.5mm; margin: 2mm 0; }
.decision { border: .3mm solid #000; min-height: 19mm; padding: 1mm 2mm; margin: 1.5mm 0; break-inside: avoid; }
)";

std::string between(const std::set<std::string>& dates) {
  if (dates.empty()) return "not noted";
  return dates.size() == 1 ? *dates.begin() : *dates.begin() + " to " + *dates.rbegin();
}

std::string counts_words(const TestReview& review) {
  const auto withdrawn = std::count_if(review.tests.begin(), review.tests.end(), is_withdrawn);
  const auto left_out = std::count_if(review.tests.begin(), review.tests.end(),
                                      [](const RecordedTest& test) { return test.not_counted.has_value(); });
  return fmt::format("{} in the log, {} of them withdrawn, {} not counted here",
                     counted(review.tests.size(), "test", "tests"), withdrawn, left_out);
}

std::set<std::string> days_of(const TestReview& review) {
  std::set<std::string> days;
  for (const RecordedTest& test : review.tests)
    for (const Reading& line : test.lines)
      if (!line.date.empty()) days.insert(line.date);
  return days;
}

std::string in_short(const TestReport& report) {
  std::set<std::string> names;
  for (const RecordedTest& test : report.review.tests)
    for (const Reading& line : test.lines)
      if (!line.who.empty()) names.insert(line.who);
  std::vector<std::string> who;
  for (const std::string& name : names) who.push_back(user_text(name));
  std::string lead = "<b>No mixture has been chosen.</b> ";
  if (report.review.chosen)
    lead = "<b>The tests point to " +
           user_text(to_text(report.review.considered[*report.review.chosen].judged.mixture)) + ".</b> ";
  return "<section>\n" + element("h2", "In short") + element("p", lead) + state_html(report.plan, report.progress) +
         html_list({"Layer to remove: <b>" + user_text(report.progress.layers[report.progress.target].name) + "</b>",
                    "Dates of the tests: " + user_text(between(days_of(report.review))),
                    "Tested by: " + joined(who, ", ", "not noted"), html_text(counts_words(report.review))}) +
         "</section>\n";
}

// The rules' view of what was seen where.
std::string where_tests_stand(const TestReport& report) {
  const std::string matrix = matrix_html(report.plan, report.progress);
  return matrix.empty() ? matrix : "<section>\n" + element("h2", where_tests_stand_heading) + matrix + "</section>\n";
}

std::string pictures_of_tests(const TestReport& report) {
  if (report.progress.conduct.tests.empty()) return {};
  std::string text = "<section>\n" + element("h2", "Pictures of the tests");
  text += chart_figure(timeline_chart(report.plan, report.progress));
  if (!report.plan.lines.empty()) text += chart_figure(swabs_chart(report.plan, report.progress));
  return text + "</section>\n";
}

std::string material_words(const Catalogue& catalogue, const std::string& id) {
  if (id.empty()) return "not noted";
  const Material* material = catalogue.find_material(id);
  return user_text(material ? material->name : id);
}

std::string like_its_layer(const Plan& plan, const std::string& name) {
  std::string words = "like its layer";
  for (const Passage& passage : plan.job.passages)
    if (passage.name == name && !passage.suspected.empty())
      words += "; warning: " + html_text(flags_text(passage.suspected));
  return words;
}

std::string taken_words(const Plan& plan, const std::string& name) {
  const auto layer =
      std::find_if(plan.layers.begin(), plan.layers.end(), [&](const PlannedLayer& one) { return one.name == name; });
  if (layer == plan.layers.end()) return like_its_layer(plan, name);
  std::string words = user_text(material_in_words(*layer)) + " (" + user_text(sphere_in_words(*layer)) + ")";
  for (const OtherMaterial& other : layer->possible)
    words += "; may be " + user_text(other.material_name) + " as well (" + html_text(per_cent(other.share)) + ")" +
             (other.sphere ? "" : ", which has no sphere");
  if (!layer->flags.empty()) words += "; warning: " + html_text(flags_text(layer->flags));
  return words;
}

std::string unjudged_section(const Plan& plan) {
  if (!any_unjudged(plan.layers)) return {};
  std::vector<std::string> items;
  for (const std::string& words : unjudged_words(plan.layers)) items.push_back(user_text(words));
  return element("h3", unjudged_heading) + html_list(items);
}

std::string painting_html(const Plan& plan, const Catalogue& catalogue) {
  std::vector<std::vector<std::string>> rows;
  for (const Layer& layer : plan.job.layers)
    rows.push_back({user_text(layer.name), layer.role == Role::remove ? "to be removed" : "stays",
                    material_words(catalogue, layer.recorded), material_words(catalogue, layer.found),
                    taken_words(plan, layer.name), user_text(layer.note)});
  for (const Passage& passage : plan.job.passages)
    rows.push_back({user_text(passage.name), "stays; part of " + user_text(passage.of), "",
                    material_words(catalogue, passage.material), taken_words(plan, passage.name),
                    user_text(passage.note)});
  return "<section>\n" + element("h2", "The layers, from the top down, and the passages") +
         html_table(
             {"name", "role", "material recorded in the files", "found by examination", "taken for the plan", "note"},
             rows, "layers") +
         unjudged_section(plan) + "</section>\n";
}

std::string taught_html(const Progress& progress) {
  std::vector<std::string> items;
  for (const std::string& line : learnt_words(progress)) items.push_back(user_text(line));
  if (progress.next.is_surprised)
    items.emplace_back("The readings fit badly with what was held before the tests: examine what the layers are.");
  return "<section>\n" + element("h2", taught_heading) + html_list(items) + "</section>\n";
}

// What the bottles of the tests can do to whoever goes on with them; the labels in full stand behind --full.
std::string dangers_html(const TestReport& report, const Bench& labels) {
  std::vector<Liquid> liquids;
  for (const BenchMixture& mixture : labels.mixtures) add_liquids(liquids, mixture.judged.mixture);
  if (report.progress.next.mixture) add_liquids(liquids, *report.progress.next.mixture);
  std::vector<Caution> cautions = labels.cautions;
  for (const Caution& caution : report.plan.cautions)
    if (std::find(cautions.begin(), cautions.end(), caution) == cautions.end()) cautions.push_back(caution);
  std::vector<std::string> items;
  for (const std::string& words : danger_words(liquids, cautions)) items.push_back(user_text(words));
  if (items.empty()) return {};
  return "<section>\n" + element("h2", "What the bottles can do to a person") + html_list(items) + "</section>\n";
}

std::string made_again(const Plan& plan, const TestReportInputs& inputs) {
  const SheetInputs& sheet = inputs.sheet;
  std::string text = "<section>\n";
  if (sheet.full) text += element("h2", "To make this report again");
  text += element("p",
                  fmt::format("{}. Command: gentlest report {} {}{}", html_text(edition_words(sheet.edition)),
                              user_text(sheet.job_file), user_text(inputs.log_file),
                              sheet.options.empty() ? "" : " " + user_text(joined(sheet.options, " "))),
                  "quiet");
  for (const std::string& sentence : studio_sentences(plan)) text += element("p", user_text(sentence));
  if (!sheet.full) return text + element("p", user_text(law_words(sheet.edition.law)), "quiet") + "</section>\n";
  text += limits_html(plan) + element("h3", "The job") + element("pre", html_text(sheet.job_text));
  text += element("h3", "The log of the tests, as it stands in its file");
  return text + element("pre", html_text(inputs.log_text)) + "</section>\n";
}

std::vector<std::string> pictograms_used(const Bench& labels) {
  std::vector<std::string> used;
  for (const std::string& code : pictogram_codes())
    if (std::any_of(labels.mixtures.begin(), labels.mixtures.end(), [&](const BenchMixture& mixture) {
          const std::vector<std::string>& codes = mixture.label.pictograms;
          return std::find(codes.begin(), codes.end(), code) != codes.end();
        }))
      used.push_back(code);
  return used;
}

}  // namespace

std::string chance_words(const Estimate& estimate) {
  return fmt::format("{} ({} to {})", per_cent(estimate.mean), per_cent(estimate.low), per_cent(estimate.high));
}

std::string figure_words(const Estimate& estimate) {
  return fmt::format("{} ({} to {})", fixed(estimate.mean, 2), fixed(estimate.low, 2), fixed(estimate.high, 2));
}

std::vector<MapSite> sites_of(const std::vector<RecordedTest>& tests) {
  std::vector<MapSite> sites;
  for (const RecordedTest& test : tests) {
    const Reading& line = shown_line(test);
    if (!line.site) continue;
    const std::string mark = is_withdrawn(test) ? " (withdrawn)" : "";
    const std::string on = line.passage.empty() ? "" : ", on " + line.passage;
    sites.push_back({std::to_string(test.number), line.site->x.value, line.site->y.value, line.mixture + on + mark});
  }
  return sites;
}

void show_results(std::vector<MapSite>& sites, const Conduct& conduct) {
  for (MapSite& site : sites) {
    const auto test = std::find_if(conduct.tests.begin(), conduct.tests.end(),
                                   [&](const SwabTest& one) { return std::to_string(one.number) == site.number; });
    if (test == conduct.tests.end()) {
      site.look = TestLook{Place::picture, false, false, true};
      continue;
    }
    site.look = look_of(*test);
    site.is_on_closed = std::any_of(conduct.passages.begin(), conduct.passages.end(), [&](const PassageState& passage) {
      return passage.closed_by && test->place == Place::picture && passage.name == test->passage;
    });
  }
}

std::string test_report_page(const TestReport& report, const Bench& labels, const TestReportInputs& inputs) {
  const PaintingObject& object = report.plan.job.object;
  std::string text = harms_html(report.progress.conduct);
  text += "<header>\n" + title_block(object, report_title) + "</header>\n" + examination_block(report.plan.examination);
  text += in_short(report) + where_tests_stand(report) + painting_html(report.plan, report.catalogue);
  text += report_tests(report.review, inputs) + report_times(report);
  text += report_choice(report);
  text += map_section(report.plan.job, inputs.sheet.sites, inputs.sheet.background, MapTable::none);
  text += dangers_html(report, labels);
  if (inputs.sheet.full)
    text += pictures_of_tests(report) + taught_html(report.progress) + report_options(report) +
            "<div class=\"columns\">\n" + sheet_notes(report.plan, labels, inputs.sheet) +
            sources_section(report.plan) + "</div>\n";
  text += made_again(report.plan, inputs);
  const std::string head =
      page_head(title_of(object), html_text(report_title), "tests: " + between(days_of(report.review)));
  return html_page(std::string(report_title) + ": " + title_of(object), inputs.sheet.paper,
                   text_page_css(report_title) + report_css + carried_css + conduct_css,
                   pictogram_definitions(pictograms_used(labels)) + "<main class=\"report\">\n" +
                       running_pages(head, text, "", carried_caution(labels)) + "</main>\n");
}

}  // namespace gentlest
