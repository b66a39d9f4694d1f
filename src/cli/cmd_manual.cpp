// The manual page and the completion of the shell, both made from the table of commands, so that neither can drift.
#include "cli/commands.hpp"

#include <fmt/format.h>

#include <string>
#include <vector>

namespace gentlest {

namespace {

// What troff would take for its own is escaped; lines that begin with a dot or a quote get an empty escape in front.
std::string troff(std::string_view text) {
  std::string escaped;
  bool line_begins = true;
  for (const char letter : text) {
    if (line_begins && (letter == '.' || letter == '\'')) escaped += "\\&";
    line_begins = letter == '\n';
    if (letter == '\\')
      escaped += "\\e";
    else if (letter == '-')
      escaped += "\\-";
    else
      escaped += letter;
  }
  return escaped;
}

std::string option_entry(const Option& option) {
  const std::string letter = option.letter ? fmt::format("-{}, ", option.letter) : "";
  const std::string argument = *option.argument ? fmt::format(" \\fI{}\\fR", troff(option.argument)) : "";
  return fmt::format(".TP\n\\fB{}\\-\\-{}\\fR{}\n{}\n", troff(letter), troff(option.name), argument,
                     troff(option.help));
}

std::string names_of(const std::vector<std::string>& options) {
  std::string names;
  for (const std::string& option : options) names += (names.empty() ? "--" : ", --") + option;
  return names;
}

std::string command_entry(const Command& command) {
  std::string text =
      fmt::format(".SS \"{}{}{}\"\n{}.\n.PP\n.nf\n{}.fi\n", troff(command.name), *command.words ? " " : "",
                  troff(command.words), troff(command.summary), troff(command.help));
  if (!command.options.empty()) text += fmt::format(".PP\nOptions: {}\n", troff(names_of(command.options)));
  return text;
}

std::string manual_page() {
  std::string text = fmt::format(
      ".TH GENTLEST 1 \"\" \"gentlest {}\" \"User commands\"\n"
      ".SH NAME\n"
      "gentlest \\- plan solvent tests on paintings, from gentle to strong\n"
      ".SH SYNOPSIS\n"
      ".B gentlest\n"
      "\\fICOMMAND\\fR [\\fIWORDS\\fR] [\\fIOPTIONS\\fR]\n"
      ".SH DESCRIPTION\n"
      "Plans the tests by which a paintings conservator finds the first mixture of solvents that moves a varnish "
      "while\n"
      "paint, glazes and old retouching stay as they are. It is a plan for tests, not a permission: the safety data\n"
      "sheets, the local rules and the licensed conservator decide.\n"
      ".SH COMMANDS\n",
      troff(program_version()));
  for (const Command& command : all_commands()) text += command_entry(command);
  text +=
      ".SH OPTIONS\n" + troff("Every command takes --output, --quiet and --help, most take --format and --data too.\n");
  for (const Option& option : all_options()) text += option_entry(option);
  return text +
         ".SH EXIT STATUS\n"
         ".TP\n0\ndone\n"
         ".TP\n1\nasked and answered: no window, or the tests must stop\n"
         ".TP\n2\nwrong usage\n"
         ".TP\n3\na file is faulty or cannot be read or written\n"
         ".TP\n130\ninterrupted\n"
         ".SH FILES\n"
         "A job file describes the painting, a log holds the tests; `gentlest new FILE` writes a job to start from. A "
         "log\n"
         "is only ever added to.\n";
}

std::string words_for_shell(const std::vector<std::string>& names, const char* before = "") {
  std::string words;
  for (const std::string& name : names) words += (words.empty() ? "" : " ") + (before + name);
  return words;
}

std::vector<std::string> options_of(const Command& command) {
  std::vector<std::string> names = command.options;
  for (const std::string& name : common_options())
    if (offers_option(command, name)) names.push_back(name);
  return names;
}

std::string completion() {
  std::vector<std::string> names;
  std::string cases;
  for (const Command& command : all_commands()) {
    names.emplace_back(command.name);
    cases += fmt::format("    {}) options=\"{}\" ;;\n", command.name, words_for_shell(options_of(command), "--"));
  }
  return fmt::format(
      "# Completion of gentlest for bash; written by `gentlest completion`.\n"
      "_gentlest() {{\n"
      "  local word=${{COMP_WORDS[COMP_CWORD]}} options=\"\"\n"
      "  if [ \"$COMP_CWORD\" -eq 1 ]; then\n"
      "    COMPREPLY=($(compgen -W \"{}\" -- \"$word\"))\n"
      "    return\n"
      "  fi\n"
      "  case \"${{COMP_WORDS[1]}}\" in\n"
      "{}"
      "  esac\n"
      "  case \"$word\" in\n"
      "    -*) COMPREPLY=($(compgen -W \"$options\" -- \"$word\")) ;;\n"
      "    *) COMPREPLY=($(compgen -f -- \"$word\")) ;;\n"
      "  esac\n"
      "}}\n"
      "complete -o filenames -F _gentlest gentlest\n",
      words_for_shell(names), cases);
}

}  // namespace

Answer command_manual(const Request&, Session&) {
  return {manual_page(), 0};
}

Answer command_completion(const Request&, Session&) {
  return {completion(), 0};
}

}  // namespace gentlest
