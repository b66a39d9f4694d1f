#include "gentlest/catalogue/figures.hpp"
#include "report/after/after_report.hpp"
#include "report/after/after_stacks.hpp"
#include "report/after/after_words.hpp"

#include "report/form/format.hpp"
#include "report/form/json.hpp"
#include "report/phrases/words.hpp"

#include "gentlest/liquids/notation.hpp"

#include <set>
#include <utility>

namespace gentlest {

namespace {

const ActInMixture& act_of(const JudgedStack& stack, const StackCell& cell) {
  const JudgedCoat& upper = stack.coats[cell.upper];
  if (cell.act == FinishAct::put_on) return *upper.put_on;
  return cell.state == FinishState::aged ? *upper.off_aged : *upper.off_fresh;
}

Cell chance_cell(const std::optional<double>& chance) {
  return chance ? Cell(computed_value(*chance)) : Cell();
}

Json judgement_json(const Judgement& judged) {
  Json voices = Json::array();
  for (const CellVoice& one : judged.voices) {
    const Voice voice = voice_of(one);
    voices.push_back({{"source", voice.source},
                      {"standing", std::string(to_word(voice.witness))},
                      {"cite", json_text(voice.cite)},
                      {"note", json_text(voice.note)}});
  }
  const std::optional<Witness> witness = best_witness(judged);
  return {{"verdict", verdict_key(judged.verdict)},
          {"basis", basis_key(judged.basis)},
          {"witness", witness ? Json(std::string(to_word(*witness))) : Json()},
          {"why", why_key(judged.why)},
          {"chance", json_computed(judged.chance)},
          {"by_sphere", json_computed(judged.by_sphere)},
          {"voices", std::move(voices)}};
}

Json act_json(const std::optional<ActInMixture>& act, const Json& counts) {
  if (!act) return {};
  Json under = Json::array();
  for (const Judgement& judged : act->under) under.push_back(judgement_json(judged));
  return {{"mixture", act->mixture ? Json(to_text(*act->mixture)) : Json()},
          {"on_shelf", act->on_shelf},
          {"avoided", act->avoided},
          {"itself", judgement_json(act->itself)},
          {"under", std::move(under)},
          {"under_counts", counts},
          {"margin", json_computed(act->margin)}};
}

const char* kind_key(CoatKind kind) {
  switch (kind) {
    case CoatKind::original:
      return "original";
    case CoatKind::remnant:
      return "remnant";
    case CoatKind::retouching:
      return "retouching";
    case CoatKind::varnish:
      break;
  }
  return "varnish";
}

Json coat_json(const Coat& coat) {
  return {{"name", coat.name},
          {"kind", kind_key(coat.kind)},
          {"material", json_text(coat.material)},
          {"light", json_text(std::string(to_word(coat.light)))},
          {"years", json_number(coat.years)},
          {"proposed", coat.is_proposed},
          {"ageing", coat.ageing ? Json(std::string(to_word(*coat.ageing))) : Json()}};
}

const char* act_key(const StackCell& cell) {
  if (cell.act == FinishAct::put_on) return "put_on";
  return cell.state == FinishState::aged ? "off_aged" : "off_fresh";
}

// Of each coat below this one whether it is a loss if it is touched; the same for every act.
Json counts_below(const std::vector<StackCell>& cells, std::size_t upper) {
  Json counts = Json::array();
  for (const StackCell& cell : cells)
    if (cell.upper == upper && cell.act == FinishAct::put_on && cell.lower) counts.push_back(cell.counts);
  return counts;
}

Json weakest_json(const JudgedStack& stack) {
  const StackCell cell = weakest_cell(stack);
  return {{"coat", cell.upper}, {"act", act_key(cell)}, {"below", cell.lower ? Json(*cell.lower) : Json()}};
}

Json stack_json(const ListedStack& one) {
  Json coats = Json::array();
  const std::vector<StackCell> cells = cells_of(*one.stack);
  for (std::size_t i = 0; i < one.stack->coats.size(); ++i) {
    const JudgedCoat& coat = one.stack->coats[i];
    const Json counts = counts_below(cells, i);
    Json json = coat_json(coat.coat);
    json["put_on"] = act_json(coat.put_on, counts);
    json["off_fresh"] = act_json(coat.off_fresh, counts);
    json["off_aged"] = act_json(coat.off_aged, counts);
    coats.push_back(std::move(json));
  }
  const Link& link = one.stack->link;
  return {{"group", one.group},
          {"rank", one.rank},
          {"weakest", verdict_key(link.weakest)},
          {"support", link.weakest == CellVerdict::holds ? Json(support_key(*one.stack)) : Json()},
          {"weakest_cell", weakest_json(*one.stack)},
          {"weakest_words", link_words(*one.stack)},
          {"no", link.count[0]},
          {"not_known", link.count[1]},
          {"test_first", link.count[2]},
          {"yes", link.count[3]},
          {"coats", std::move(coats)}};
}

// Each source that speaks in the answer, once, by its key.
std::vector<Source> sources_of(const Afterwards& answer, const Catalogue& catalogue) {
  std::set<std::string> keys;
  for (const ListedStack& one : listed_stacks(answer))
    for (const StackCell& cell : cells_of(*one.stack))
      for (const CellVoice& voice : cell.judged->voices) keys.insert(voice_of(voice).source);
  for (const MixtureOnStack& one : answer.mixtures)
    for (const MixtureOnCoat& coat : one.coats)
      for (const Judgement* judged : {&coat.comes_off, &coat.touched})
        for (const CellVoice& voice : judged->voices) keys.insert(voice_of(voice).source);
  for (const GeneralFact& fact : catalogue.finishes().general) keys.insert(fact.voice.source);
  return named_sources(keys, catalogue);
}

Json dangers_json(const Afterwards& answer) {
  Json dangers = Json::array();
  for (const ActInMixture* act : named_liquids(answer))
    dangers.push_back({{"mixture", to_text(*act->mixture)}, {"words", hazard_line(*act->mixture)}});
  return dangers;
}

}  // namespace

std::string afterwards_csv(const Afterwards& answer, const Catalogue& catalogue, const Edition& edition) {
  Sheet sheet{"afterwards",
              {{"group", ""},
               {"rank", ""},
               {"stack", ""},
               {"upper", ""},
               {"act", ""},
               {"state", ""},
               {"mixture", ""},
               {"on_shelf", ""},
               {"avoided", ""},
               {"lower", ""},
               {"counts", ""},
               {"verdict", ""},
               {"basis", ""},
               {"why", ""},
               {"chance", ""},
               {"margin", ""},
               {"by_sphere", ""},
               {"sources", ""}},
              {}};
  for (const ListedStack& one : listed_stacks(answer))
    for (const StackCell& cell : cells_of(*one.stack)) {
      const ActInMixture& act = act_of(*one.stack, cell);
      sheet.rows.push_back({std::string(one.group), static_cast<double>(one.rank), stack_words(*one.stack),
                            one.stack->coats[cell.upper].coat.name, std::string(to_word(cell.act)),
                            cell.act == FinishAct::put_on ? Cell() : Cell(std::string(to_word(cell.state))),
                            act.mixture ? Cell(to_text(*act.mixture)) : Cell(), act.on_shelf, act.avoided,
                            cell.lower ? one.stack->coats[*cell.lower].coat.name : std::string("the coat itself"),
                            cell.counts, verdict_key(cell.judged->verdict), basis_key(cell.judged->basis),
                            why_key(cell.judged->why), chance_cell(cell.judged->chance),
                            cell.lower ? Cell() : chance_cell(act.margin), chance_cell(cell.judged->by_sphere),
                            joined(voices_words(*cell.judged, catalogue), " | ", "none")});
    }
  return sheet_csv(sheet, edition);
}

std::string afterwards_json(const Afterwards& answer, const Job& job, const Catalogue& catalogue,
                            const Edition& edition) {
  Json document = json_document("afterwards", edition);
  document["title"] = json_text(job.object.title);
  document["light"] = json_text(std::string(to_word(answer.light)));
  document["risk_limit"] = data_value(answer.risk_limit);
  document["wanted_effect"] = data_value(answer.wanted_effect);
  document["mixtures_tried"] = answer.mixtures_tried;
  document["painting"] = Json::array();
  for (const Coat& coat : answer.painting) document["painting"].push_back(coat_json(coat));
  document["stacks"] = Json::array();
  for (const ListedStack& one : listed_stacks(answer)) document["stacks"].push_back(stack_json(one));
  document["places"] = Json::array();
  for (const RetouchingPlace& place : answer.places)
    document["places"].push_back(
        {{"retouching", place.retouching->material}, {"best", place.is_better_under ? "under" : "over"}});
  document["mixtures"] = Json::array();
  for (const MixtureOnStack& one : answer.mixtures) {
    Json coats = Json::array();
    for (const MixtureOnCoat& coat : one.coats)
      coats.push_back({{"comes_off", judgement_json(coat.comes_off)}, {"touched", judgement_json(coat.touched)}});
    document["mixtures"].push_back({{"mixture", to_text(one.mixture)}, {"coats", std::move(coats)}});
  }
  document["general"] = Json::array();
  for (const GeneralFact& fact : catalogue.finishes().general)
    document["general"].push_back(
        {{"what", std::string(to_word(fact.what))}, {"words", rule_words(fact.what)}, {"source", fact.voice.source}});
  document["dangers"] = dangers_json(answer);
  document["legend"] = after_legend_words;
  document["not_told"] = after_not_told_words;
  document["safety"] = after_safety_words;
  document["sources"] = json_sources(sources_of(answer, catalogue));
  return json_dump(document);
}

}  // namespace gentlest
