#include "cli/asking.hpp"
#include "cli/commands.hpp"
#include "cli/output.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/letters.hpp"
#include "io/files.hpp"
#include "io/job_file.hpp"
#include "report/form/sheet.hpp"

#include <fmt/format.h>

#include <filesystem>

namespace gentlest {

Answer command_new(const Request& request, Session& session) {
  const std::string& file = request.words.front();
  if (file == "-" && request.form != Form::text)
    throw InputError(Fault::usage, "what \"new -\" writes is YAML, no CSV or JSON", "leave --format out");
  const auto text = [&] {
    return request.ask ? with_examination(job_template(), asked_findings(load_catalogue(request), session))
                       : job_template();
  };
  if (file == "-") return {text(), 0};
  std::error_code ignored;
  if (!request.force && std::filesystem::exists(std::filesystem::symlink_status(file, ignored)))
    throw InputError(Fault::usage, fmt::format("{} exists already", file),
                     "choose another name, or give --force to replace it");
  Request catalogue_only;
  catalogue_only.data = request.data;
  refuse_to_replace_input(file, catalogue_only);
  // Whatever may fail comes before the file is written.
  const Edition edition = edition_of(load_catalogue(request));
  const Sheet sheet{"written", {{"file", "file", -1, false}}, {{file}}};
  write_text_file(file, text());
  const std::string done = fmt::format("{} is written", file);
  if (request.form == Form::text)
    return {fmt::format("wrote {0}\nnow put your painting in, then: gentlest ladder {0}\n", with_controls_shown(file)),
            0, done};
  return {sheet_report(sheet, request.form, {}, edition), 0, done};
}

}  // namespace gentlest
