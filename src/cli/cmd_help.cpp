#include "cli/commands.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "io/catalogue_files.hpp"
#include "report/form/sheet.hpp"
#include "report/form/table.hpp"

#include <fmt/format.h>

namespace gentlest {

namespace {

constexpr std::size_t help_width = 80;

std::string option_lines(const Option& option) {
  std::string name = option.letter ? fmt::format("-{}, ", option.letter) : "    ";
  name += fmt::format("--{} {}", option.name, option.argument);
  std::string text;
  constexpr std::size_t help_column = 28;
  for (const std::string& line : wrap(option.help, help_width - help_column)) {
    text += fmt::format("  {:<{}}{}\n", name, help_column - 2, line);
    name.clear();
  }
  return text;
}

std::string overview() {
  std::string text =
      "gentlest plans solvent tests on paintings: which mixtures move the varnish and\n"
      "are unlikely to touch the paint, from gentle to strong.\n"
      "\n"
      "  gentlest ladder demo             a ladder for an invented painting\n"
      "  gentlest new easel.yaml          a job file to fill in for your own\n"
      "  gentlest ladder easel.yaml       its ladder\n"
      "\n"
      "Commands\n";
  for (const Command& command : all_commands()) text += fmt::format("  {:<12}{}\n", command.name, command.summary);
  return text +
         "\n"
         "`gentlest help COMMAND` explains one. Every command takes --output, --quiet and\n"
         "--help, most take --format and --data too.\n"
         "\n"
         "Exit codes\n"
         "  0    done\n"
         "  1    asked and answered: no window\n"
         "  2    wrong usage\n"
         "  3    a file is faulty or cannot be read or written\n"
         "  130  interrupted\n";
}

std::string help_of(const Command& command) {
  std::string text = fmt::format("gentlest {}{}{}\n{}\n\nExamples\n{}\nOptions\n", command.name,
                                 *command.words ? " " : "", command.words, command.summary, command.help);
  for (const Option& option : all_options())
    if (offers_option(command, option.name)) text += option_lines(option);
  return text;
}

void add_rows(Sheet& sheet, const Command& command) {
  for (const Option& option : all_options())
    if (offers_option(command, option.name))
      sheet.rows.push_back({std::string(command.name), std::string(command.words), std::string(command.summary),
                            std::string("--") + option.name, std::string(option.argument), std::string(option.help)});
}

const Command& asked_command(const std::string& name) {
  if (const Command* command = find_command(name)) return *command;
  std::vector<std::string> names;
  for (const Command& command : all_commands()) names.emplace_back(command.name);
  const std::string near = nearest_name(name, names);
  throw InputError(Fault::usage, fmt::format("unknown command \"{}\"", name),
                   near.empty() ? "`gentlest help` lists the commands" : fmt::format("did you mean \"{}\"?", near));
}

}  // namespace

Answer command_help(const Request& request, Session&) {
  const Command* command = request.words.empty() ? nullptr : &asked_command(request.words.front());
  if (request.form == Form::text) return {command ? help_of(*command) : overview(), 0};
  Sheet sheet{"options", {}, {}};
  for (const char* key : {"command", "words", "summary", "option", "argument", "help"})
    sheet.columns.push_back({key, key, -1, true});
  if (command)
    add_rows(sheet, *command);
  else
    for (const Command& each : all_commands()) add_rows(sheet, each);
  return {sheet_report(sheet, request.form, {}, edition_of(load_catalogue(request))), 0};
}

}  // namespace gentlest
