#include "io/examination_records.hpp"

#include "io/word_of_list.hpp"

#include "gentlest/base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <string_view>
#include <utility>

namespace gentlest {

namespace {

constexpr const char* known_effects =
    "write stop, wait, close, suspect FLAG, lower_limit, leave_off FAMILY, first_test or no_edge";

// "leave_off ketone": the effect, and what it is of.
std::optional<ExaminationStep> step_from(const std::string& text) {
  const std::size_t blank = std::min(text.find(' '), text.size());
  const std::optional<ExaminationEffect> effect = examination_effect_from_word(text.substr(0, blank));
  const std::string of(trimmed(std::string_view(text).substr(blank)));
  if (!effect) return std::nullopt;
  ExaminationStep step{*effect};
  if (*effect == ExaminationEffect::suspect) {
    step.flag = flag_from_word(of);
    if (!step.flag) return std::nullopt;
  } else if (*effect == ExaminationEffect::leave_off) {
    if (of.empty()) return std::nullopt;
    step.family = of;
  } else if (!of.empty()) {
    return std::nullopt;
  }
  return step;
}

void read_steps(YamlMap& map, ExaminationAnswer& answer) {
  const YamlNode* node = map.find("does");
  if (!node) return;
  for (const YamlNode& item : map.file().list(*node, "does", "write a list: [close]")) {
    const std::string text = map.file().text(item, "does");
    if (const std::optional<ExaminationStep> step = step_from(text))
      answer.does.push_back(*step);
    else
      map.file().complain(item, fmt::format("\"{}\" is nothing that an answer does", text), known_effects);
  }
}

ExaminationAnswer read_answer(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "answer");
  ExaminationAnswer answer;
  answer.word = map.need_text("answer");
  if (answer.word == not_known_answer)
    file.complain(node, fmt::format("\"{}\" is open to every question", not_known_answer),
                  "say what holds then under not_known");
  answer.asks_where = map.truth("where", false);
  read_steps(map, answer);
  answer.says = map.text("says");
  map.done();
  return answer;
}

ExaminationAnswer read_not_known(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "not_known");
  ExaminationAnswer answer;
  answer.word = not_known_answer;
  read_steps(map, answer);
  answer.says = map.text("says");
  map.done();
  return answer;
}

ExaminationQuestion read_question(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "question");
  ExaminationQuestion question;
  question.id = map.need_text("id");
  question.topic = map.need_text("topic");
  question.question = map.need_text("question");
  question.why = map.need_text("why");
  question.source = map.need_text("source");
  question.cite = map.text("cite");
  question.witness =
      read_word(map, "standing", witness_from_word, Witness::memory, "seen, from memory or common practice");
  std::set<std::string> words;
  if (const YamlNode* answers = map.need("answers"))
    for (const YamlNode& item : file.list(*answers, "answers")) {
      question.answers.push_back(read_answer(file, item));
      if (!words.insert(question.answers.back().word).second)
        file.complain(item, fmt::format("\"{}\" stands twice among the answers", question.answers.back().word),
                      "name each once");
    }
  if (const YamlNode* unknown = map.need("not_known")) question.answers.push_back(read_not_known(file, *unknown));
  map.done();
  return question;
}

}  // namespace

void read_examination(YamlFile& file, CatalogueRecords& records) {
  YamlMap map(file, file.root(), "examination.yaml");
  std::set<std::string> ids;
  if (const YamlNode* node = map.need("examination"))
    for (const YamlNode& item : file.list(*node, "examination")) {
      records.examination.push_back(read_question(file, item));
      if (!ids.insert(records.examination.back().id).second)
        file.complain(item, fmt::format("two questions are called \"{}\"", records.examination.back().id),
                      "give each its own id");
    }
  map.done();
}

}  // namespace gentlest
