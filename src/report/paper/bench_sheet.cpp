#include "report/paper/bench_sheet.hpp"
#include "report/bottle/statement_words.hpp"

#include "report/charts/charts.hpp"
#include "report/draw/pictogram.hpp"
#include "report/form/format.hpp"
#include "report/paper/conduct_html.hpp"
#include "report/phrases/headings.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

constexpr const char* sheet_css =
    R"(.ladder { table-layout: fixed; } .ladder th, .ladder td { overflow-wrap: anywhere; }
.ladder thead th { overflow-wrap: normal; } .ladder tbody .number { overflow-wrap: normal; }
.ladder .c0 { width: 7%; } .ladder .c1 { width: 22%; }
.ladder .c2 { width: 12.5%; } .ladder .c3 { width: 13%; } .ladder .c4 { width: 20.5%; } .ladder .c5 { width: 12%; }
.ladder .c6 { width: 13%; } .no-ladder .c0 { width: 12%; } .no-ladder .c1 { width: 17.5%; } .no-ladder .c4 { width: 20%; }
.ladder .quiet { font-size: 7.5pt; }
.ladder td, .ladder th { padding: .6mm 1mm; } .ladder { font-size: 8.5pt; line-height: 1.3; }
.ladder .pictogram { width: 6.5mm; height: 6.5mm; } .number { font-size: 12pt; }
.marks { padding-left: 3.5mm; margin: 0; } .marks li { margin: 0; }
.lead { border: .5mm solid #000; padding: 1.5mm 2.5mm; margin: 2mm 0; }
.card { border: .4mm solid #000; break-inside: avoid; margin: 0 0 3mm; font-size: 8.5pt; line-height: 1.25; }
.card-head { display: flex; gap: 3mm; padding: 1mm 2mm; border-bottom: .2mm solid #767676; align-items: baseline; }
.card-head b { font-size: 11pt; white-space: nowrap; } .card-head span { min-width: 0; }
.boxes { display: flex; flex-wrap: wrap; } .boxes > div { border-right: .2mm solid #767676;
  border-bottom: .2mm solid #767676; padding: .6mm 1.2mm; min-height: 9mm; box-sizing: border-box; flex: 1 1 auto; }
.tick { white-space: nowrap; margin-right: 2.2mm; } .tick::before { content: ""; display: inline-block; width: 2.6mm;
  height: 2.6mm; border: .25mm solid #000; margin-right: 1mm; vertical-align: -.3mm; }
.key { color: #404040; display: block; } .when { display: block; font-weight: bold; }
.w15 { width: 15%; } .w20 { width: 20%; } .w25 { width: 25%; } .w40 { width: 40%; } .w60 { width: 60%; } .w100 { width: 100%; }
)";

std::vector<std::string> codes_used(const Bench& bench) {
  std::vector<std::string> used;
  for (const std::string& code : pictogram_codes())
    for (const BenchMixture& mixture : bench.mixtures) {
      const std::vector<std::string>& codes = mixture.label.pictograms;
      if (std::find(codes.begin(), codes.end(), code) == codes.end()) continue;
      used.push_back(code);
      break;
    }
  return used;
}

// With what is on the cards and no rung of the ladder: half a step, a rung of another line.
Bench with_vials_ahead(Bench bench, const SheetInputs& inputs) {
  if (!inputs.followed) return bench;
  for (const TestAhead& test : inputs.followed->ahead) {
    const bool is_there = std::any_of(bench.mixtures.begin(), bench.mixtures.end(), [&](const BenchMixture& one) {
      return is_same_mixture(one.judged.mixture, test.mixture.judged.mixture);
    });
    if (!is_there) bench.mixtures.push_back(test.mixture);
  }
  return bench;
}

}  // namespace

std::string title_block(const PaintingObject& object, const std::string& kind) {
  const std::string title = object.title.empty() ? "Untitled painting" : object.title;
  std::string text = element("h1", html_text(kind) + ": " + user_text(title));
  std::vector<std::string> facts;
  if (!object.owner_number.empty()) facts.push_back("no. " + user_text(object.owner_number));
  if (object.width && object.height)
    facts.push_back(as_recorded(object.width->value) + " x " + as_recorded(object.height->value) + painting_size_unit);
  if (object.paint_age_years) facts.push_back("paint about " + as_recorded(*object.paint_age_years) + " years old");
  if (!facts.empty()) text += element("p", joined(facts), "quiet");
  if (!object.note.empty()) text += element("p", user_text(object.note));
  return text;
}

std::string label_signs(const MixtureLabel& label) {
  std::string text;
  for (const std::string& code : label.pictograms) text += pictogram(code);
  if (!label.signal_word.empty())
    text += " " + html_text(label.signal_word);
  else if (label.complete())
    text += std::string(" ") + no_signal_word;
  if (!label.complete()) text += label.statements.empty() ? " record missing" : " (a minimum: records missing)";
  return text;
}

std::string bench_sheet(const Plan& plan, const Bench& bench, const SheetInputs& inputs) {
  const std::string title = plan.job.object.title.empty() ? "Untitled painting" : plan.job.object.title;
  const Bench all = with_vials_ahead(bench, inputs);
  std::string body = pictogram_definitions(codes_used(all));
  if (inputs.followed) body += harms_html(inputs.followed->progress.conduct);
  body += "<header>\n" + title_block(plan.job.object, "Solvent tests") + "</header>\n<main>\n";
  body += sheet_summary(plan, bench, inputs);
  body += sheet_tests(plan, bench, inputs);
  body += sheet_pictures(plan, bench);
  body += sheet_notes(plan, all, inputs.edition.law);
  body += sheet_origins(plan, inputs);
  return html_page("Solvent tests: " + title, inputs.paper,
                   text_page_css("Plan for solvent tests. The swab decides.") + sheet_css + conduct_css,
                   body + "</main>\n");
}

std::string sheet_pictures(const Plan& plan, const Bench& bench) {
  std::string text = "<section>\n" + element("h2", "Pictures");
  for (const std::string& kind : chart_kinds()) text += chart_figure(chart_of(kind, plan, bench));
  return text + "</section>\n";
}

}  // namespace gentlest
