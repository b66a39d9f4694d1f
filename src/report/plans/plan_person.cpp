// What the ladder's mixtures do to the person, and how each is held against the painting and cleared.
#include "report/bottle/caution_words.hpp"
#include "report/bottle/contact_words.hpp"
#include "report/bottle/person_words.hpp"
#include "report/form/format.hpp"
#include "report/form/said.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/plans/plan_report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace gentlest {

std::vector<std::string> contact_sentences(const Bench& bench) {
  Said said;
  for (const auto words : {contact_words, clearing_words, look_again_words})
    for (const BenchMixture& mixture : bench.mixtures) say(said, words(mixture.contact), short_name(mixture.judged));
  for (const BenchMixture& mixture : bench.mixtures)
    for (const std::string& words : slow_words(mixture.contact)) say(said, words, short_name(mixture.judged));
  std::vector<std::string> sentences;
  for (const auto& [sentence, names] : said)
    sentences.push_back((names.size() == bench.mixtures.size() ? "each" : joined(names)) + ": " + sentence);
  return sentences;
}

std::string person_text(const Bench& bench, const Style& style) {
  if (bench.mixtures.empty()) return {};
  std::string text = heading(person_heading, style) + "\n";
  Table table;
  table.columns = {{"mixture", Align::left, true},
                   {"its label at worst", Align::left, true},
                   {"breath", Align::left, true},
                   {"skin", Align::left, true}};
  for (const BenchMixture& mixture : bench.mixtures)
    table.rows.push_back({short_name(mixture.judged), worst_words(mixture.person),
                          vapour_words(mixture.person, bench.vapour_list), skin_words(mixture.person)});
  text += to_text(table, style) + "\n";
  for (const std::string& sentence : person_sentences(bench)) text += bullet(sentence, style);
  text += heading(contact_heading, style);
  for (const std::string& sentence : contact_sentences(bench)) text += bullet(sentence, style);
  return text +
         bullet(std::string("[") + common_practice + "; drying by the vapour pressures of the catalogue]", style);
}

Json person_json(const Bench& bench) {
  Json list = Json::array();
  for (const BenchMixture& mixture : bench.mixtures) {
    const PersonHazard& person = mixture.person;
    Json one = {{"name", short_name(mixture.judged)},
                {"severity", person.severity},
                {"worst_statement", json_text(person.worst)},
                {"label_complete", person.is_complete},
                {"skin", skin_words(person)}};
    one["vapour_hazard"] = Json::array();
    for (const VapourHazard& vapour : person.vapour)
      one["vapour_hazard"].push_back({{"list", vapour.authority},
                                      {"ratio", vapour.ratio ? Json(computed_value(*vapour.ratio)) : Json()},
                                      {"no_limit_for", vapour.without}});
    one["most_seconds"] = data_value(mixture.contact.most_seconds);
    one["clear_with"] = json_text(mixture.contact.clear_with);
    one["look_again"] = look_again_words(mixture.contact);
    one["slow_liquids"] = Json::array();
    for (const SlowLiquid& slow : mixture.contact.slow)
      one["slow_liquids"].push_back(
          {{"liquid", slow.label},
           {"drying_time", slow.drying_time ? Json(computed_value(*slow.drying_time)) : Json()},
           {"stays", slow.stays}});
    list.push_back(std::move(one));
  }
  return {{"mixtures", std::move(list)}, {"sentences", person_sentences(bench)}};
}

}  // namespace gentlest
