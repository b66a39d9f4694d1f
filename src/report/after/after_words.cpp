#include "report/after/after_words.hpp"

#include "report/form/format.hpp"
#include "report/form/table.hpp"

#include "gentlest/base/text.hpp"
#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

#include <set>

namespace gentlest {

const char* const after_safety_words =
    "Each liquid has its dangers: read its safety data sheet and your house rules before a bottle is opened. Swabs on "
    "the painting itself, and whoever is trained and answerable for it, decide; this table only says where to begin.";
const char* const after_legend_words =
    "yes: nothing speaks against it (practice, estimated: its weakest support). test first: it may be touched, or the "
    "sources differ. not known: nothing says, "
    "and that counts against it. no: it is touched, or does not come off. Ranked by the worst of its answers, never "
    "by a sum. What was seen goes before what is estimated; an estimate is of the liquid alone, of seconds under a "
    "swab, not of the resin in it.";
const char* const after_not_told_words =
    "Not judged: gloss, colour, how it handles, how far pigments change it, what dirt adds, how long each film holds "
    "its liquid.";

// As JSON has it, with blanks.
std::string answer_word(CellVerdict verdict) {
  return with_blanks(verdict_key(verdict));
}

std::string basis_word(CellBasis basis) {
  switch (basis) {
    case CellBasis::known:
      return "known";
    case CellBasis::estimated:
      return "estimated";
    case CellBasis::binder_alone:
      return "estimated from the binder alone";
    case CellBasis::sources_disagree:
      return "sources disagree";
    case CellBasis::not_known:
      break;
  }
  return not_known;
}

namespace {

std::string known_word(const std::optional<Witness>& witness) {
  if (witness == Witness::memory) return "from memory";
  return witness == Witness::practice ? "by common practice" : "known";
}

std::string rests_on(const Judgement& judged) {
  return judged.basis == CellBasis::known ? known_word(best_witness(judged)) : basis_word(judged.basis);
}

}  // namespace

std::string verdict_key(CellVerdict verdict) {
  switch (verdict) {
    case CellVerdict::fails:
      return "no";
    case CellVerdict::open:
      return "not_known";
    case CellVerdict::test_first:
      return "test_first";
    case CellVerdict::holds:
      break;
  }
  return "yes";
}

std::string basis_key(CellBasis basis) {
  switch (basis) {
    case CellBasis::known:
      return "known";
    case CellBasis::estimated:
      return "estimated";
    case CellBasis::binder_alone:
      return "binder_alone";
    case CellBasis::sources_disagree:
      return "sources_disagree";
    case CellBasis::not_known:
      break;
  }
  return "not_known";
}

std::string why_key(CellWhy why) {
  switch (why) {
    case CellWhy::told:
      return "told";
    case CellWhy::seen:
      return "seen";
    case CellWhy::seen_open:
      return "seen_open";
    case CellWhy::chance:
      return "chance";
    case CellWhy::each_part:
      return "each_part";
    case CellWhy::a_part_acts:
      return "a_part_acts";
    case CellWhy::nothing_known:
      return "nothing_known";
    case CellWhy::water:
      return "water";
    case CellWhy::sensitive_to_water:
      return "sensitive_to_water";
    case CellWhy::may_not_dissolve:
      return "may_not_dissolve";
    case CellWhy::goes_with_varnish:
      return "goes_with_varnish";
    case CellWhy::no_aged_record:
      return "no_aged_record";
    case CellWhy::no_liquid:
      break;
  }
  return "no_liquid";
}

std::string why_words(CellWhy why) {
  switch (why) {
    case CellWhy::told:
      return "told of this very case";
    case CellWhy::seen:
      return "seen on this material";
    case CellWhy::seen_open:
      return "what was seen leaves it open";
    case CellWhy::chance:
      return "by its range in Hansen space";
    case CellWhy::each_part:
      return "each of the liquids alone was seen to spare it";
    case CellWhy::a_part_acts:
      return "one of the liquids alone was seen to act on it";
    case CellWhy::nothing_known:
      return "neither seen nor to be estimated";
    case CellWhy::water:
      return "water acts in other ways than the estimate knows";
    case CellWhy::sensitive_to_water:
      return "the surface is sensitive to water: try water on it first";
    case CellWhy::may_not_dissolve:
      return "may not dissolve when old";
    case CellWhy::goes_with_varnish:
      return "bedded in varnish it goes where the varnish goes";
    case CellWhy::no_aged_record:
      return "nothing tells what becomes of it with age";
    case CellWhy::no_liquid:
      break;
  }
  return "no liquid is known";
}

std::string cell_words(const Judgement& judged) {
  if (judged.verdict == CellVerdict::open && judged.basis == CellBasis::not_known) return not_known;
  std::string words = answer_word(judged.verdict) + ", " + rests_on(judged);
  if (judged.why == CellWhy::may_not_dissolve) words += ", may not dissolve";
  if (judged.chance) words += ", " + per_cent(*judged.chance);
  return words;
}

std::string in_words(const ActInMixture& act) {
  if (!act.mixture) return "no liquid known";
  const std::vector<Part>& parts = act.mixture->parts();
  const std::string name = parts.size() == 1 ? parts.front().liquid.label : to_text(*act.mixture);
  return name + (act.avoided ? " (to be avoided here)" : act.on_shelf ? "" : " (not on the shelf)");
}

std::string coat_words(const Coat& coat) {
  if (coat.kind == CoatKind::remnant) return "what is left of \"" + coat.name + "\"";
  return coat.name;
}

std::string light_words(Light light) {
  switch (light) {
    case Light::not_told:
      return "light not told";
    case Light::dark:
      return "dark";
    case Light::uv_filtered:
      return "light without ultraviolet";
    case Light::daylight:
      return "daylight through glass";
    case Light::strong:
      break;
  }
  return "strong light";
}

std::string coat_line(const Coat& coat) {
  std::string words = coat.name;
  if (!coat.material_name.empty() && coat.material_name != coat.name) words += ": " + coat.material_name;
  if (coat.material_name.empty()) words += ": material not known";
  if (coat.light != Light::not_told) words += "; " + light_words(coat.light);
  if (coat.years) words += "; " + counted(static_cast<std::size_t>(*coat.years), "year", "years");
  if (coat.kind == CoatKind::remnant) words += "; to go, so what is left of it is no loss";
  return words;
}

std::string ageing_words(const Coat& coat) {
  if (!coat.ageing) return "how it ages is not told";
  switch (*coat.ageing) {
    case Ageing::none:
      return "the same liquids take it off when old";
    case Ageing::slight:
      return "old it wants hardly another liquid";
    case Ageing::somewhat_more_polar:
      return "old it wants a somewhat more polar liquid";
    case Ageing::much_more_polar:
      return "old it wants a much more polar liquid";
    case Ageing::may_not_dissolve:
      break;
  }
  return "old it may no longer dissolve";
}

std::string act_words(const JudgedStack& stack, const StackCell& cell) {
  const JudgedCoat& upper = stack.coats[cell.upper];
  const bool on = cell.act == FinishAct::put_on;
  const ActInMixture& act = on ? *upper.put_on : cell.state == FinishState::aged ? *upper.off_aged : *upper.off_fresh;
  std::string words = upper.coat.name + (on                                ? " put on"
                                         : cell.state == FinishState::aged ? " taken off old"
                                                                           : " taken off fresh");
  words += " in " + in_words(act);
  return cell.lower ? words + ", " + coat_words(stack.coats[*cell.lower].coat) + " spared" : words;
}

std::string support_key(const JudgedStack& stack) {
  bool practice = false;
  for (const StackCell& one : cells_of(stack))
    practice = practice || (one.counts && best_witness(*one.judged) == Witness::practice);
  return stack.link.no_facts > 0 ? "estimated" : practice ? "practice" : "known";
}

std::string link_words(const JudgedStack& stack) {
  const StackCell cell = weakest_cell(stack);
  if (stack.link.weakest == CellVerdict::holds) return answer_word(stack.link.weakest) + ", " + support_key(stack);
  const std::string what = cell.lower ? coat_words(stack.coats[*cell.lower].coat)
                                      : (cell.act == FinishAct::put_on ? "making it up" : "coming off");
  const std::string when = cell.act == FinishAct::put_on     ? "put on"
                           : cell.state == FinishState::aged ? "off old"
                                                             : "off fresh";
  return fmt::format(
      "{} ({}, {}: {})", answer_word(stack.link.weakest), when, what,
      cell.judged->why == CellWhy::may_not_dissolve ? std::string("may not dissolve") : rests_on(*cell.judged));
}

std::string stack_words(const JudgedStack& stack) {
  std::vector<std::string> names;
  for (const JudgedCoat& one : stack.coats)
    if (one.coat.is_proposed) names.push_back(one.coat.name);
  return joined(names, " / ");
}

std::vector<std::string> voices_words(const Judgement& judged, const Catalogue& catalogue) {
  std::vector<std::string> said;
  std::set<std::string> known;
  for (const CellVoice& one : judged.voices) {
    const Voice voice = voice_of(one);
    const Source* source = catalogue.find_source(voice.source);
    std::string words = voice.witness == Witness::practice ? "common practice"
                        : voice.witness == Witness::memory ? "from memory"
                        : source                           ? source->citation
                                                           : voice.source;
    if (!voice.cite.empty()) words += ": " + voice.cite;
    if (!voice.note.empty()) words += "; " + voice.note;
    if (known.insert(words).second) said.push_back(words);
  }
  return said;
}

std::string rule_words(FinishRule rule) {
  switch (rule) {
    case FinishRule::leaches_like_a_cleaning:
      return "A varnish leaches paint like a cleaning with its liquid: choose that liquid with the same care.";
    case FinishRule::one_system_with_its_varnish:
      return "Retouching that aged under varnish is one system with it: what the bare binder did is only a hint.";
    case FinishRule::differ_in_solubility:
      return "An isolating varnish and the retouching on it must differ in what dissolves them.";
    case FinishRule::ask_mixtures:
      return "Ask mixtures, not only single liquids: old low-molecular resins may want some aromatics.";
    case FinishRule::wait_after_cleaning:
      return "After the cleaning wait a week or longer before the first coat.";
    case FinishRule::wait_between_coats:
      return "Fresh resin holds its liquid for weeks: wait before the next coat.";
    case FinishRule::swollen_coats_heal_slowly:
      break;
  }
  return "A coat that was swollen takes up to half a year to become firm.";
}

std::string rule_line(const GeneralFact& fact, const Catalogue& catalogue) {
  const Source* source = catalogue.find_source(fact.voice.source);
  return rule_words(fact.what) + (source ? " [" + source->citation + "]" : "");
}

std::vector<std::string> unsure_lines(const Job& job, const Catalogue& catalogue) {
  std::vector<std::string> lines;
  for (const Layer& layer : job.layers) {
    if (layer.role == Role::remove || layer.possible.empty()) continue;
    std::vector<std::string> others;
    for (const PossibleMaterial& other : layer.possible) {
      const Material* material = catalogue.find_material(other.material);
      others.push_back(fmt::format("{} ({} %)", material ? material->name : other.material, other.percent));
    }
    lines.push_back(fmt::format("\"{}\" may be {} instead: only what it is taken for is asked here.",
                                without_controls(layer.name), joined(others, " or ")));
  }
  return lines;
}

}  // namespace gentlest
