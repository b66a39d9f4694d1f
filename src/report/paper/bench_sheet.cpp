#include "report/paper/bench_sheet.hpp"
#include "report/bottle/statement_words.hpp"

#include "report/charts/charts.hpp"
#include "report/draw/pictogram.hpp"
#include "report/examined/examination_words.hpp"
#include "report/form/format.hpp"
#include "report/paper/carried.hpp"
#include "report/paper/conduct_html.hpp"
#include "report/paper/swab_card.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/phrases/words.hpp"
#include "report/questions/examination_page.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

constexpr const char* sheet_css =
    R"(.ladder { table-layout: fixed; } .ladder th, .ladder td { overflow-wrap: anywhere; }
.ladder thead th { overflow-wrap: normal; } .ladder tbody .number { overflow-wrap: normal; }
.ladder .c0 { width: 5.5%; } .ladder .c1 { width: 28%; }
.ladder .c2, .ladder .c3 { width: 12%; } .ladder .c5 { width: 13%; } .marked .c1 { width: 25%; } .marked .c4 { width: 19%; }
.no-ladder .c0 { width: 12%; } .no-ladder .c1 { width: 17.5%; }
.ladder .quiet { font-size: 8pt; }
.ladder td, .ladder th { padding: .5mm 1mm; } .ladder { font-size: 8.5pt; line-height: 1.25; }
.ladder .pictogram { width: 6mm; height: 6mm; } .number { font-size: 12pt; }
.lead { border: .5mm solid #000; padding: 1.5mm 2.5mm; margin: 2mm 0; }
.glance { font-size: 8.5pt; line-height: 1.25; } .glance, .cards { font-family: Arial, Helvetica, 'Liberation Sans', 'DejaVu Sans Condensed', 'DejaVu Sans', sans-serif; } .glance h3 { margin-top: 2mm; }
.sides { display: flex; gap: 6mm; } .sides > div { flex: 1 1 0; min-width: 0; }
.map h2 { margin-top: 0; } .map figure { margin-bottom: 2mm; } .map svg { max-height: 150mm; }
.first h1 { font-size: 13pt; } .first h2 { margin-top: 2.5mm; } .first p { margin-bottom: 1mm; }
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

std::string sheet_head(const Plan& plan, const std::string& part) {
  return page_head(title_of(plan.job.object), part, {});
}

std::string carried_caution(const Bench& bench, const std::string& before) {
  std::vector<std::string> open;
  for (const BenchMixture& mixture : bench.mixtures)
    if (!mixture.label.complete()) open.push_back(html_text(mixture_name(mixture.judged)));
  std::string text = before + carried_words;
  if (!open.empty()) text += " <b>Hazard records are missing</b> for " + joined(open) + ": more may apply.";
  return element("p", text, "carried");
}

std::string title_block(const PaintingObject& object, const std::string& kind) {
  std::string text = element("h1", html_text(kind) + ": " + user_text(title_of(object)));
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
  const Bench all = with_vials_ahead(bench, inputs);
  std::string ladder;
  if (inputs.followed) ladder += harms_html(inputs.followed->progress.conduct);
  ladder += "<header>\n" + title_block(plan.job.object, "Solvent tests") + "</header>\n";
  const bool is_go = plan.examination.verdict == ExaminationVerdict::go;
  if (!is_go) ladder += element("p", user_text(verdict_sentence(plan.examination)));
  ladder += sheet_summary(plan, bench, inputs) + no_card_html(inputs) + carried_caution(all);
  std::string notes = map_section(plan.job, inputs.sites, inputs.background, MapTable::below);
  if (inputs.full) notes += sheet_pictures(plan, bench);
  notes += "<div class=\"columns\">\n" + examination_block(plan.examination) + sheet_beside(plan, bench, inputs) +
           sheet_notes(plan, all, inputs) + sheet_origins(plan, inputs) + "</div>\n";
  const std::string body = pictogram_definitions(codes_used(all)) + "<main>\n" +
                           running_pages(sheet_head(plan, "the ladder"), ladder, "first") +
                           sheet_cards(plan, all, inputs) + running_pages(sheet_head(plan, "map and notes"), notes) +
                           "</main>\n";
  return html_page(
      "Solvent tests: " + title_of(plan.job.object), inputs.paper,
      text_page_css("Plan for solvent tests. The swab decides.") + sheet_css + card_css + carried_css + conduct_css,
      body);
}

std::string sheet_pictures(const Plan& plan, const Bench& bench) {
  std::string text = "<section>\n" + element("h2", "Pictures");
  for (const std::string& kind : chart_kinds()) text += chart_figure(chart_of(kind, plan, bench));
  return text + "</section>\n";
}

}  // namespace gentlest
