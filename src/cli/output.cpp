#include "cli/output.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/text.hpp"
#include "io/files.hpp"
#include "io/job_file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <filesystem>
#include <ostream>

namespace gentlest {

namespace {

namespace fs = std::filesystem;

// Two names of one file: by what the system says of those that are there, else by where the names lead.
bool is_same_file(const fs::path& a, const fs::path& b) {
  std::error_code error;
  if (fs::equivalent(a, b, error) && !error) return true;
  const fs::path first = fs::weakly_canonical(a, error);
  if (error) return false;
  const fs::path second = fs::weakly_canonical(b, error);
  return !error && first == second;
}

// Names under which the request reads; a folder stands for all that lies below it.
std::vector<std::string> names_read(const Request& request) {
  std::vector<std::string> names;
  const Command* command = find_command(request.command);
  for (std::size_t i = 0; command && i < std::min(command->files, request.words.size()); ++i)
    if (i > 0 || (request.words[i] != "demo" && request.words[i] != "-")) names.push_back(request.words[i]);
  for (const auto& option : {request.log, request.background, request.data, request.studio})
    if (option) names.push_back(*option);
  return names;
}

bool holds_file(const std::string& name, const fs::path& file) {
  if (is_same_file(name, file)) return true;
  std::error_code error;
  if (!fs::is_directory(name, error) || !fs::exists(file, error)) return false;
  fs::recursive_directory_iterator entry(name, fs::directory_options::skip_permission_denied, error);
  for (; !error && entry != fs::recursive_directory_iterator(); entry.increment(error)) {
    std::error_code unknown;
    if (fs::equivalent(entry->path(), file, unknown) && !unknown) return true;
  }
  return false;
}

// Hours of work that no result may replace; `new --force` may.
void refuse_to_replace_job(const std::string& file) {
  if (is_job(file))
    throw InputError(Fault::usage,
                     {{{file, 0, 0}, "this is a job, which no result replaces", "choose another name", {}}});
}

struct Ending {
  const char* ending;
  const char* kind;
};

// Endings that promise a kind of file; what has none of these may hold anything.
constexpr std::array<Ending, 15> endings = {{{".csv", "CSV"},
                                             {".json", "JSON"},
                                             {".html", "HTML"},
                                             {".htm", "HTML"},
                                             {".svg", "SVG"},
                                             {".pdf", "PDF"},
                                             {".png", "a picture"},
                                             {".jpg", "a picture"},
                                             {".jpeg", "a picture"},
                                             {".doc", "a document of a word processor"},
                                             {".docx", "a document of a word processor"},
                                             {".odt", "a document of a word processor"},
                                             {".xls", "a spreadsheet"},
                                             {".xlsx", "a spreadsheet"},
                                             {".ods", "a spreadsheet"}}};

std::string kind_made(const Request& request) {
  if (request.help) return "text";
  if (request.html) return "HTML";
  if (request.form == Form::csv) return "CSV";
  if (request.form == Form::json) return "JSON";
  if (request.html) return "HTML";
  switch (find_command(request.command)->makes) {
    case Makes::HTML:
      return "HTML";
    case Makes::SVG:
      return "SVG";
    case Makes::CSV:
      return "CSV";
    case Makes::text:
      break;
  }
  return "text";
}

std::string remedy_for(const std::string& kind, const std::string& made, const std::string& file) {
  const std::string stem = fs::path(file).replace_extension().string();
  if (made == "HTML")
    return fmt::format("write {}.html, open it in a browser and print it from there, as PDF too", stem);
  if (made == "SVG") return fmt::format("write {}.svg; a browser or a drawing program opens it", stem);
  if (kind == "CSV" || kind == "JSON") return fmt::format("add --format {}, or write {}.txt", folded(kind), stem);
  if (kind == "a spreadsheet") return fmt::format("write {}.csv with --format csv; a spreadsheet opens it", stem);
  const std::string own = made == "text" ? "txt" : folded(made);
  return fmt::format("write {}.{}", stem, own);
}

void check_ending(const std::string& file, const Request& request) {
  const std::string ending = folded(fs::path(file).extension().string());
  const std::string made = kind_made(request);
  for (const Ending& one : endings)
    if (ending == one.ending && made != one.kind)
      throw InputError(Fault::usage, fmt::format("--output {}: this is {}, not {}", file, made, one.kind),
                       remedy_for(one.kind, made, file));
}

}  // namespace

void refuse_to_replace_input(const std::string& file, const Request& request) {
  for (const std::string& name : names_read(request))
    if (holds_file(name, file))
      throw InputError(Fault::usage, fmt::format("{} is a file that this command works with ({})", file, name),
                       "choose another name; nothing was written to it");
}

void check_output(const Request& request) {
  if (!request.output || *request.output == "-") return;
  refuse_to_replace_input(*request.output, request);
  if (!request.force) refuse_to_replace_job(*request.output);
  check_ending(*request.output, request);
  expect_writable(*request.output);
}

void deliver(const Answer& answer, const Request& request, std::ostream& out) {
  if (request.output && *request.output != "-") {
    // Once more: the command may have made the very file, a log that was not there before.
    refuse_to_replace_input(*request.output, request);
    return write_text_file(*request.output, answer.text);
  }
  errno = 0;
  out << answer.text << std::flush;
  if (out || errno == EPIPE) return;
  throw InputError(Fault::file, "standard output could not be written to the end", "is the disk full?");
}

}  // namespace gentlest
