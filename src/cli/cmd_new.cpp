#include "cli/commands.hpp"
#include "gentlest/diagnostic.hpp"
#include "io/files.hpp"
#include "io/job_file.hpp"
#include "report/sheet.hpp"

#include <fmt/format.h>

#include <filesystem>

namespace gentlest {

Answer command_new(const Request& request, Session&) {
  const std::string& file = request.words.front();
  if (file == "-") return {job_template(), 0};
  std::error_code ignored;
  if (!request.force && std::filesystem::exists(std::filesystem::symlink_status(file, ignored)))
    throw InputError(Fault::usage, fmt::format("{} exists already", file),
                     "choose another name, or give --force to replace it");
  // Whatever may fail comes before the file is written.
  const Edition edition = edition_of(load_catalogue(request));
  const Sheet sheet{"written", {{"file", "file", -1, false}}, {{file}}};
  write_text_file(file, job_template());
  if (request.form == Form::text)
    return {fmt::format("wrote {}\nnow put your painting in, then: gentlest ladder {}\n", file, file), 0};
  return {sheet_report(sheet, request.form, {}, edition), 0};
}

}  // namespace gentlest
