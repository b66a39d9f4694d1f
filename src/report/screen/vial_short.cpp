// One vial on one screen: what to measure, what it does to the layers, how it dries, what hurts.
#include "report/bottle/danger_words.hpp"
#include "report/bottle/label_words.hpp"
#include "report/bottle/liquid_words.hpp"
#include "report/bottle/statement_words.hpp"
#include "report/form/format.hpp"
#include "report/form/short_screen.hpp"
#include "report/form/table.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/judged.hpp"
#include "report/phrases/likelihood.hpp"
#include "report/phrases/no_window.hpp"
#include "report/phrases/words.hpp"
#include "report/plans/short_words.hpp"
#include "report/screen/vial_report.hpp"

#include "gentlest/liquids/notation.hpp"
#include "gentlest/space/chance.hpp"

#include <fmt/format.h>

#include <utility>

namespace gentlest {

namespace {

std::string where_it_lies(const Outlook& outlook) {
  if (holds_the_border(outlook.RED_band)) return "about the edge of its range, inside or out is open";
  return outlook.RED_band.high < 1 ? "inside its range" : "outside its range";
}

std::string on_layer(const PlannedLayer& layer, const std::optional<Outlook>& outlook) {
  if (!outlook) return layer_line(layer);
  return fmt::format("{} \"{}\": {} to {} it; {}", role_word(layer.role), layer.name, likelihood_cell(outlook->chance),
                     layer.role == Role::remove ? "move" : "harm", where_it_lies(*outlook));
}

std::string measure_line(const VialCase& one) {
  const Recipe& recipe = one.study.recipe;
  return fmt::format("Measure {} = {} mL{}", recipe_words(recipe), as_recorded(recipe.total.value),
                     one.study.as_measured ? "; rounded, so what follows is of what the vial holds." : ".");
}

std::vector<std::string> drying_lines(const JudgedMixture& judged, const Limits& limits) {
  std::vector<std::string> lines = short_marks(judged, limits.risk_limit);
  if (judged.fate.drift && judged.mixture.parts().size() > 1)
    lines.push_back("what stays longest is mostly " + judged.fate.drift->last);
  return lines;
}

std::string label_line(const MixtureLabel& label) {
  std::vector<std::string> words;
  for (const LabelStatement& statement : label.statements) words.push_back(statement_text(statement.code));
  const std::string signal = label.signal_word.empty() ? no_signal_word : label.signal_word;
  return fmt::format("Label: {}{}: {}.", label.complete() ? "" : "at least ", signal,
                     joined(words, "; ", "no statement"));
}

std::string fire_line(const FlashPoint& flash) {
  if (flash.nothing_burns()) return "Fire: no flash point, " + flash_because(flash) + ".";
  if (!flash.estimate) return fmt::format("Fire: {}; keep flames away.", flash_point_not_known);
  return fmt::format("Fire: flash point {}{} C{}.", flash.measured() ? "" : "about ", fixed(flash.estimate->value, 0),
                     flash.estimate->value < 23 ? ", so its vapour catches fire at room temperature" : "");
}

std::string gentler_line(const VialStudy& study) {
  if (study.gentler.found.empty()) return "Gentler for you and as near: nothing on this shelf.";
  const JudgedMixture& judged = study.gentler_judged.front();
  const auto word = [](const std::optional<double>& chance) { return chance ? likelihood_word(*chance) : not_known; };
  return fmt::format(
      "Gentler for you: {}; to move {}, to harm {}{}.", to_text(judged.mixture), word(judged.effect), word(judged.risk),
      study.gentler.found.size() > 1 ? " (" + more_in_full(study.gentler.found.size() - 1) + ")" : std::string());
}

std::vector<std::string> sorted_layer_lines(const VialCase& one, const JudgedMixture& judged) {
  std::vector<std::string> lines;
  for (const bool target : {true, false})
    for (std::size_t i = 0; i < one.layers.size(); ++i)
      if (one.layers[i].is_target == target) lines.push_back(on_layer(one.layers[i], judged.outlooks[i]));
  return lines;
}

}  // namespace

std::string vial_short_text(const VialCase& one, const Style& style, const Edition& edition) {
  const VialStudy& study = one.study;
  const JudgedMixture& judged = study.as_measured ? *study.as_measured : study.judged;
  std::string top = heading("Vial: " + to_text(study.judged.mixture) + " (% by volume)", style).substr(1);
  top += paragraph(measure_line(one), style);
  const std::string beyond = beyond_limit_words(judged, one.job.limits);
  if (!beyond.empty()) top += paragraph(beyond, style);
  std::vector<ScreenPart> parts = {must_stand(top),
                                   screen_list("On the painting", sorted_layer_lines(one, judged), 4, style)};
  const std::vector<std::string> drying = drying_lines(judged, one.job.limits);
  parts.push_back(screen_list(in_the_vial_heading, drying, 3, style));
  parts.push_back(screen_list("", short_weak_words(one.layers), 1, style));
  std::string person = heading(dangers_heading, style).substr(1) + bullet(label_line(study.label), style);
  for (const std::string& gap : not_known_words(study.label)) person += bullet("NOT KNOWN: " + gap, style);
  person += bullet(fire_line(study.flash), style);
  parts.push_back(must_stand(person));
  const std::vector<std::string> dangers = danger_words(liquids_of({&judged}), study.cautions);
  parts.push_back(screen_list("", dangers, dangers.size(), style));
  parts.push_back(must_stand(bullet(gentler_line(study), style)));
  parts.push_back(
      must_stand("\n" + screen_ending("More: how it dries, breath, gloves, sources with --full.", style, edition)));
  return screen_of(std::move(parts), style);
}

}  // namespace gentlest
