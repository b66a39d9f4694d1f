#include "report/bottle/statement_words.hpp"

#include "gentlest/catalogue/statements.hpp"
#include "report/form/format.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace gentlest {

namespace {

// By the codes that the catalogue's table has rows for.
constexpr std::array<std::pair<std::string_view, const char*>, 70> words_by_code = {{
    {"H224", "vapour catches fire at any room temperature"},
    {"H225", "catches fire very easily"},
    {"H226", "catches fire when warm"},
    {"H250", "catches fire by itself in air"},
    {"H271", "feeds fire or explosion"},
    {"H272", "feeds fire"},
    {"H290", "eats metal"},
    {"H300", "deadly when swallowed"},
    {"H301", "poisonous when swallowed"},
    {"H302", "harmful when swallowed"},
    {"H304", "deadly if it gets into the lungs: never pipette by mouth"},
    {"H310", "deadly through the skin"},
    {"H311", "poisonous through the skin"},
    {"H312", "harmful through the skin"},
    {"H314", "burns skin and eyes"},
    {"H315", "irritates the skin"},
    {"H317", "may cause skin allergy"},
    {"H318", "damages the eyes"},
    {"H319", "irritates the eyes strongly"},
    {"H330", "deadly when breathed in"},
    {"H331", "poisonous when breathed in"},
    {"H332", "harmful when breathed in"},
    {"H334", "may cause asthma"},
    {"H335", "irritates the airways"},
    {"H336", "makes drowsy or dizzy"},
    {"H340", "damages genes"},
    {"H341", "suspected of damaging genes"},
    {"H350", "causes cancer"},
    {"H350i", "causes cancer when breathed in"},
    {"H351", "suspected of causing cancer"},
    {"H360", "harms fertility or the unborn child"},
    {"H360D", "harms the unborn child"},
    {"H360FD", "harms fertility and the unborn child"},
    {"H360Df", "harms the unborn child, suspected of harming fertility"},
    {"H360F", "harms fertility"},
    {"H360Fd", "harms fertility, suspected of harming the unborn child"},
    {"H361", "suspected of harming fertility or the unborn child"},
    {"H361d", "suspected of harming the unborn child"},
    {"H361f", "suspected of harming fertility"},
    {"H361fd", "suspected of harming fertility and the unborn child"},
    {"H362", "harms children through breast milk"},
    {"H370", "damages organs"},
    {"H371", "may damage organs"},
    {"H372", "damages organs with repeated use"},
    {"H373", "may damage organs with repeated use"},
    {"H400", "very poisonous to water life"},
    {"H410", "very poisonous to water life for long"},
    {"H411", "poisonous to water life for long"},
    {"H412", "harmful to water life for long"},
    {"H413", "may harm water life for long"},
    {"H420", "harms the ozone layer"},
    {"EUH014", "reacts violently with water"},
    {"EUH018", "its vapour may explode with air"},
    {"EUH019", "forms explosive peroxides"},
    {"EUH029", "gives off poisonous gas with water"},
    {"EUH031", "gives off poisonous gas with acids"},
    {"EUH032", "gives off very poisonous gas with acids"},
    {"EUH044", "may explode when heated shut in"},
    {"EUH066", "dries and cracks the skin"},
    {"EUH070", "poisonous through the eyes"},
    {"EUH071", "burns the airways"},
    {"EUH208", "may set off an allergy in those who have it"},
    {"EUH380", "disturbs the hormones of people"},
    {"EUH381", "suspected of disturbing the hormones of people"},
    {"EUH430", "disturbs the hormones of animals in nature"},
    {"EUH431", "suspected of disturbing the hormones of animals in nature"},
    {"EUH440", "stays in nature, gathers in living beings and poisons them"},
    {"EUH441", "stays very long in nature and gathers strongly in living beings"},
    {"EUH450", "stays in nature, travels with water and poisons it"},
    {"EUH451", "stays very long in nature and travels far with water"},
}};

}  // namespace

std::string statement_words(const std::string& code) {
  const std::string_view row = row_of_statement(code);
  const auto found =
      std::find_if(words_by_code.begin(), words_by_code.end(), [&](const auto& one) { return one.first == row; });
  return found == words_by_code.end() ? "" : found->second;
}

std::string signal_text(const std::optional<Hazards>& hazards) {
  if (!hazards) return no_record;
  return hazards->signal_word.empty() ? no_signal_word : hazards->signal_word;
}

std::string statement_text(const std::string& code) {
  const std::string words = statement_words(code);
  return words.empty() ? code : code + " " + words;
}

std::string statements_text(const std::optional<Hazards>& hazards) {
  if (!hazards) return no_record;
  std::vector<std::string> texts;
  for (const std::string& code : hazards->statements) {
    const bool added = hazards->added_flame && hazards->added_flame->code == code;
    texts.push_back(statement_text(code) + (added ? " (by its flash point, not by the record)" : ""));
  }
  for (const std::string& code : hazards->supplemental) texts.push_back(statement_text(code));
  return joined(texts, "; ", "the record names no statement");
}

}  // namespace gentlest
