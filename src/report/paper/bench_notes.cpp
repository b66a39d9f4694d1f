// What is not predicted, hazards, and where every figure comes from.
#include "report/paper/bench_sheet.hpp"

#include "report/bottle/label_words.hpp"
#include "report/bottle/statement_words.hpp"
#include "report/charts/charts.hpp"
#include "report/form/format.hpp"
#include "report/form/said.hpp"
#include "report/phrases/advice_words.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/phrases/shelf_words.hpp"
#include "report/phrases/words.hpp"
#include "report/plans/plan_report.hpp"
#include "report/plans/studio_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <utility>

namespace gentlest {

namespace {

// "no sphere of it is published."; the whole where there is but one sentence.
std::string first_sentence(const std::string& text) {
  const std::size_t end = text.find(". ");
  return end == std::string::npos ? text : text.substr(0, end + 1) + " (more with --full)";
}

std::string weak_html(const Plan& plan, bool full) {
  std::vector<std::string> items;
  for (const std::string& point : weak_point_words(plan))
    items.push_back(user_text(full ? point : first_sentence(point)));
  for (const std::string& reason : left_off_words(plan.left_off)) items.push_back(bottle_left_off + user_text(reason));
  for (const PartingPair& pair : plan.parting)
    items.push_back(user_text(parting_words(pair, !plan.job.limits.allow_splitting)));
  return html_list(items);
}

std::string label_words(const MixtureLabel& label) {
  std::vector<std::string> codes;
  for (const LabelStatement& statement : label.statements) codes.push_back(statement.code);
  std::string text = joined(codes, ", ", label.complete() ? "no statement" : no_record);
  return html_text(text);
}

std::string not_known_html(const MixtureLabel& label) {
  std::vector<std::string> words;
  for (const std::string& one : not_known_words(label)) words.push_back(user_text(one));
  return joined(words, "; ", "nothing that the rules ask for");
}

// Mixtures of one label stand together, in the order in which each label comes first.
std::string labels_html(const Bench& bench) {
  Said labels;
  std::set<std::string> codes;
  for (const BenchMixture& mixture : bench.mixtures) {
    const std::string label = label_signs(mixture.label) + ": " + label_words(mixture.label) +
                              "; not known: " + not_known_html(mixture.label);
    say(labels, label, html_text(mixture_name(mixture.judged)));
    for (const LabelStatement& statement : mixture.label.statements) codes.insert(statement.code);
  }
  std::vector<std::string> items;
  for (const auto& [label, names] : labels) items.push_back("<b>" + joined(names) + "</b> " + label);
  std::vector<std::string> words;
  for (const std::string& code : codes) words.push_back(html_text(statement_text(code)));
  return html_list(items) + element("p", "The codes in words of ours; the safety data sheet has the official ones: " +
                                             joined(words, "; ") + ".");
}

std::string bottle_words(const Liquid& liquid) {
  const Solvent& solvent = *liquid.solvent;
  std::string text =
      "<b>" + user_text(liquid.label) + "</b>: " + html_text(signal_text(solvent.hazards)) + "; flash point ";
  text += solvent.flash_point_C ? as_recorded(solvent.flash_point_C->chosen.value) + " C" : std::string(not_known);
  text += "; air at the workplace: ";
  std::vector<std::string> limits;
  for (const ExposureLimit& limit : solvent.exposure_limits)
    limits.push_back(html_text(limit.authority) + " " + html_text(limit_text(limit)));
  return text + joined(limits, "; ", no_record);
}

std::string bottles_html(const Plan& plan, const Bench& bench) {
  std::vector<std::string> items;
  for (const Liquid& liquid : plan.shelf)
    if (is_on_ladder(bench, liquid.label)) items.push_back(bottle_words(liquid));
  return html_list(items);
}

}  // namespace

std::string advice_html(const std::vector<Remark>& remarks) {
  std::vector<std::string> items;
  for (const Remark& one : remarks)
    items.push_back(user_text(one.text) + " <span class=\"quiet\">[" + user_text(one.source) + "]</span>");
  return html_list(items);
}

// "4", or "4 and 5" where what is harm differs with the layer's material.
std::string grades_counted(const Plan& plan, Role role) {
  std::set<int> grades;
  for (std::size_t i = 0; i < plan.layers.size(); ++i)
    if (plan.layers[i].role == role && (role == Role::keep || i == plan.target))
      grades.insert(grade_that_counts(plan.layers[i], plan.job.limits));
  std::vector<std::string> words;
  for (const int grade : grades) words.push_back(std::to_string(grade));
  return joined(words);
}

std::string limits_html(const Plan& plan) {
  const Job& job = plan.job;
  const Limits& limits = job.limits;
  return element(
      "p", fmt::format("Limits: {} liquids in one mixture, {} bottles, steps of {} %, {} rungs, risk limit {}, "
                       "effect wanted {}, grades that count: effect {}, risk {}. Avoided statements: {}. "
                       "Avoided families: {}. Avoided solvents: {}. {} Vial {} mL, smallest volume {} mL, room {} C.",
                       limits.parts, limits.bottles, limits.step_percent, limits.rungs, as_recorded(limits.risk_limit),
                       as_recorded(limits.wanted_effect), grades_counted(plan, Role::remove),
                       grades_counted(plan, Role::keep), user_text(joined(limits.avoid_statements, ", ", "none")),
                       user_text(joined(limits.avoid_families, ", ", "none")),
                       user_text(joined(limits.avoid_solvents, ", ", "none")), user_text(search_limits_words(job)),
                       as_recorded(limits.vial_mL), as_recorded(limits.measure_mL), as_recorded(limits.room_C)));
}

std::string sheet_notes(const Plan& plan, const Bench& bench, const SheetInputs& inputs) {
  std::string text = "<section>\n" + element("h2", "What is not predicted") + advice_html(not_seen_words());
  text += element("h3", weak_figures_heading) + weak_html(plan, inputs.full) + "</section>\n";
  text += "<section>\n" + element("h2", "Cautions") + advice_html(caution_words(bench.cautions));
  text += element("p", html_text(law_words(inputs.edition.law)));
  if (!bench.mixtures.empty()) {
    text += element("h3", "Labels of the mixtures, by the additivity rules of the GHS") + labels_html(bench);
    text += element("h3", "The bottles") + bottles_html(plan, bench);
  }
  return text + "</section>\n";
}

std::string sources_section(const Plan& plan) {
  std::vector<std::string> items;
  for (const Source& source : plan.sources)
    items.push_back("<b>" + html_text(source.key) + "</b>: " + user_text(source.citation) +
                    (source.seen.empty() ? "" : " (" + user_text(source.seen) + ")"));
  for (const PlannedLayer& layer : plan.layers)
    if (layer.basis == LayerBasis::own_tests)
      items.push_back(own_tests_of + user_text(layer.name) + ": " + user_text(layer.sphere_source));
  return "<section>\n" + element("h2", "Sources") + html_list(items) + "</section>\n";
}

std::string sheet_origins(const Plan& plan, const SheetInputs& inputs) {
  std::string text = inputs.full ? sources_section(plan) : std::string();
  text += "<section>\n";
  text += element("h2", "To make this sheet again");
  text += element(
      "p", fmt::format("{}; {} mixtures judged. Command: gentlest sheet {}{}", html_text(edition_words(inputs.edition)),
                       with_commas(plan.mixtures_judged), user_text(inputs.job_file),
                       inputs.options.empty() ? "" : " " + user_text(joined(inputs.options, " "))));
  for (const std::string& sentence : studio_sentences(plan)) text += element("p", user_text(sentence));
  text += limits_html(plan);
  if (!inputs.full)
    text += element(
        "p", "The sources of all figures, the weak ones in full, the pictures and the job: the same with --full.");
  if (inputs.full) text += element("h3", "The job") + element("pre", html_text(inputs.job_text));
  return text + "</section>\n";
}

}  // namespace gentlest
