#include "cli/question.hpp"

#include "cli/commands.hpp"
#include "cli/run.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "io/job_file.hpp"

#include <nlohmann/json.hpp>

#include <exception>
#include <sstream>

namespace gentlest {

namespace {

using Json = nlohmann::ordered_json;

TypedLine typed_line(const Json& question) {
  TypedLine typed;
  typed.words.push_back(question.at("command").get<std::string>());
  for (const Json& word : question.at("words")) typed.words.push_back(word.get<std::string>());
  if (!question.contains("options")) return typed;
  for (const auto& [name, value] : question.at("options").items()) {
    const Option* known = find_option(name);
    if (!known || value.is_boolean() != (*known->argument == '\0'))
      throw InputError(Fault::usage, "the page asks with an option \"" + name + "\" that cannot be read");
    typed.options[name] = value.is_boolean() ? std::string() : value.get<std::string>();
  }
  return typed;
}

Answer answer_to(const Json& question, Session& session) {
  if (question.at("command") == "demo") return {demo_job_text(), exit_done};
  return answer_request(read_request(typed_line(question)), session);
}

Json fault_json(const Diagnostic& fault) {
  return {{"file", fault.where.file},
          {"line", fault.where.line},
          {"column", fault.where.column},
          {"message", fault.message},
          {"remedy", fault.remedy}};
}

}  // namespace

std::string answer_question(std::string_view question, const Surroundings& surroundings) {
  Json answer = {{"exit", exit_done}, {"text", ""}, {"notes", ""}, {"faults", Json::array()}};
  std::istringstream in;
  std::ostringstream err;
  Session session{in, err, surroundings};
  try {
    Answer given = answer_to(Json::parse(question), session);
    answer["exit"] = given.exit_code;
    answer["text"] = std::move(given.text);
  } catch (const InputError& fault) {
    answer["exit"] = fault.kind() == Fault::usage ? exit_usage : exit_file;
    for (const Diagnostic& one : fault.faults()) answer["faults"].push_back(fault_json(one));
  } catch (const Interrupted&) {
    answer["exit"] = exit_interrupted;
  } catch (const Json::exception& fault) {
    answer["exit"] = exit_usage;
    answer["faults"].push_back(
        fault_json({{}, std::string("the page's question cannot be read: ") + fault.what(), {}, {}}));
  } catch (const std::exception& fault) {
    answer["exit"] = exit_engine;
    err << fault.what() << "\n";
  }
  answer["notes"] = err.str();
  return answer.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace gentlest
