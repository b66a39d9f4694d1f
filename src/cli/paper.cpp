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

std::vector<std::string> options_used(const Request& request) {
  std::vector<std::string> used;
  for (const Option& option : all_options()) {
    for (const AskedLimit& asked : request.limits)
      if (option.name == std::string_view(asked.limit->option))
        used.push_back(fmt::format("--{} {}", option.name, as_data(asked.value)));
    for (const TextOption& text : text_options())
      if (option.name == std::string_view(text.name) && request.*text.member && text.member != &Request::output)
        used.push_back(fmt::format("--{} \"{}\"", option.name, *(request.*text.member)));
  }
  return used;
}

}  // namespace gentlest
