#include "cli/paper.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "io/files.hpp"
#include "report/form/format.hpp"

#include <fmt/format.h>

namespace gentlest {

void expect_picture(const Request& request, const std::string& made) {
  if (request.form == Form::text) return;
  throw InputError(Fault::usage, fmt::format("\"{}\" makes {}, no CSV or JSON", request.command, made),
                   "leave --format out; `gentlest ladder JOB --format csv` or json holds the figures");
}

Paper asked_paper(const Request& request) {
  const std::string word = request.paper.value_or("a4");
  if (const std::optional<Paper> paper = paper_from_word(word)) return *paper;
  throw InputError(Fault::usage, fmt::format("unknown paper \"{}\"", word), "a4 or letter");
}

std::optional<MapBackground> background_of(const Request& request) {
  if (!request.background) return std::nullopt;
  ImageFile image = read_image_file(*request.background);
  return MapBackground{std::move(image.media_type), std::move(image.bytes)};
}

// The options that changed the result, as they would be typed again.
std::vector<std::string> options_used(const Request& request) {
  std::vector<std::string> used;
  const auto add = [&](const char* name, const auto& value, const auto& words) {
    if (value) used.push_back(fmt::format("--{} {}", name, words(*value)));
  };
  const auto quoted = [](const std::string& text) { return "\"" + text + "\""; };
  const auto number = [](double value) { return as_data(value); };
  const auto whole = [](int value) { return std::to_string(value); };
  add("data", request.data, quoted);
  add("target", request.target, quoted);
  add("risk-limit", request.risk_limit, number);
  add("parts", request.parts, whole);
  add("step", request.step, whole);
  add("bottles", request.bottles, whole);
  add("rungs", request.rungs, whole);
  add("paper", request.paper, quoted);
  add("vial", request.vial_mL, number);
  add("measure", request.measure_mL, number);
  add("sites", request.sites, quoted);
  add("background", request.background, quoted);
  add("log", request.log, quoted);
  return used;
}

}  // namespace gentlest
