// `gentlest record`: what one swab did, in words as they come or as KEY=VALUE.
#include "cli/recording.hpp"
#include "cli/run.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/letters.hpp"
#include "gentlest/base/text.hpp"
#include "gentlest/learning/reading_fields.hpp"
#include "gentlest/liquids/notation.hpp"
#include "gentlest/noted/fields.hpp"
#include "report/form/format.hpp"
#include "report/phrases/mixture_name.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <istream>
#include <ostream>

namespace gentlest {

namespace {

std::vector<std::string> known_keys() {
  std::vector<std::string> keys;
  for (const ReadingField& field : reading_fields()) keys.emplace_back(field.key);
  return keys;
}

// "seconds=20" into the reading; every fault is kept.
void take_word(const std::string& word, TypedReading& typed, std::vector<Diagnostic>& faults) {
  const std::size_t at = word.find('=');
  const std::string key = word.substr(0, at);
  const ReadingField* field = find_field(key);
  const auto complain = [&](std::string message, std::string remedy) {
    faults.push_back({{}, std::move(message), std::move(remedy), {}});
  };
  if (!field) {
    const std::string near = nearest_name(key, known_keys());
    return complain(
        fmt::format("\"{}\" is no entry of a reading", word),
        near.empty() ? "`gentlest help record` lists the keys" : fmt::format("did you mean \"{}=...\"?", near));
  }
  const std::string value = word.substr(at + 1);
  if (first_stray_byte(value))
    complain(fmt::format("\"{}\" holds bytes that are not UTF-8 text", value), "retype the odd characters");
  else if (is_named(typed, key))
    complain(fmt::format("\"{}\" stands there twice", key), "give it once");
  else if (!set_field(typed.reading, key, value) && !set_noted_field(typed.reading, key, value))
    complain(fmt::format("\"{}\" is not understood for {}", value, key), fmt::format("expected is {}", field->help));
  typed.named.push_back(key);
}

// What was typed without KEY=; those that stand together belong together, as whoever forgets the quotes means it.
std::string free_words(const Request& request) {
  std::string text;
  bool is_apart = false;
  for (std::size_t i = 2; i < request.words.size(); ++i) {
    const std::string& word = request.words[i];
    if (word.find('=') != std::string::npos) {
      is_apart = !text.empty();
      continue;
    }
    text += (is_apart ? ", " : text.empty() ? "" : " ") + word;
    is_apart = false;
  }
  return text;
}

// "rung 4", where the mixture is one of the plan's.
std::string step_words(const Reading& reading, Recording& recording) {
  try {
    const Mixture mixture = parse_mixture(reading.mixture, recording.against().catalogue, recording.against().shelf);
    const Conduct conduct = conduct_of(recording.plan(), {}, recording.against().catalogue);
    const auto step = step_of(conduct, mixture);
    return step ? origin_name(conduct.steps[*step].origin) : "no rung of the plan";
  } catch (const InputError&) {
    return {};
  }
}

std::string echo_of(const TypedReading& typed, Recording& recording) {
  if (typed.named.empty()) return {};
  std::string text = is_later_look(typed.reading) ? "a later look, read as:\n" : "read as:\n";
  for (const std::string& line : noted_lines(typed)) {
    text += "  " + with_controls_shown(line) + "\n";
    if (line.rfind("mixture: ", 0) != 0) continue;
    if (const std::string step = step_words(typed.reading, recording); !step.empty()) text += "    " + step + "\n";
  }
  if (is_harm(typed.reading)) text += "  This counts as HARM to the original.\n";
  return text;
}

bool is_confirmed(Session& session) {
  session.err << "write this? [y/N] " << std::flush;
  std::string answer;
  std::getline(session.in, answer);
  answer = folded(answer);
  return answer == "y" || answer == "yes";
}

}  // namespace

Answer command_record(const Request& request, Session& session) {
  TypedReading typed;
  std::vector<Diagnostic> faults;
  for (std::size_t i = 2; i < request.words.size(); ++i)
    if (request.words[i].find('=') != std::string::npos) take_word(request.words[i], typed, faults);
  const std::string words = free_words(request);
  Recording recording(request, session);
  if (first_stray_byte(words))
    faults.push_back(
        {{}, fmt::format("\"{}\" holds bytes that are not UTF-8 text", words), "retype the odd characters", {}});
  else if (!words.empty())
    read_noted(words, recording.against(), typed, faults);
  const std::string mixture = typed.reading.mixture;
  recording.complete(typed, faults);
  recording.expect_sound(typed, faults);
  if (words.empty()) {
    const bool is_turned = faults.empty() && typed.reading.mixture != mixture;
    return recording.append({typed}, Fault::usage, std::move(faults),
                            is_turned ? "mixture: " + typed.reading.mixture + "\n" : std::string());
  }
  const std::string echo = echo_of(typed, recording);
  if (!faults.empty() || !request.yes) session.err << echo;
  if (faults.empty() && !request.yes) {
    if (!session.surroundings.can_be_asked)
      throw InputError(Fault::usage, "nothing was written, since nobody can be asked whether this is meant",
                       "add --yes, or write it as KEY=VALUE");
    if (!is_confirmed(session)) return {"nothing was written\n", exit_done};
  }
  return recording.append({typed}, Fault::usage, std::move(faults), request.yes ? echo : std::string());
}

}  // namespace gentlest
