// What a command is asked: read from the command line (command_line.cpp, the only part that sees
// Boost.Program_options), or from a question of the page.
#pragma once

#include "gentlest/job/limits.hpp"
#include "gentlest/plan/plan.hpp"
#include "report/form/form.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// A limit of the job that the command line gives anew.
struct AskedLimit {
  const Limit* limit;
  double value;
};

/// What was asked for. Which options a command takes is checked; whether the words make sense is the command's
/// business.
struct Request {
  std::string command;             ///< empty for a bare call
  std::vector<std::string> words;  ///< behind the command
  Form form = Form::text;
  std::optional<std::string> output, data, target, family, having, kind, of;
  std::optional<std::string> exactly;  ///< liquids with commas between them
  std::optional<std::string> paper, label, sites, background, date, maker, log, studio;
  std::optional<std::string> liquid, light;
  std::optional<double> margin_mm, gap_mm;
  std::optional<Finer> finer;
  std::optional<int> good_up_to, copies;
  std::vector<AskedLimit> limits;  ///< in the order of the table
  bool quiet = false;
  bool force = false;
  bool again = false;
  bool full = false;
  bool html = false;
  bool new_log = false;
  bool keep_photographs = false;
  bool dry_run = false;
  bool yes = false;
  bool ask = false;
  bool help = false;
};

/// One option as help shows it.
struct Option {
  const char* name;
  char letter;           ///< short form, 0 where there is none
  const char* argument;  ///< e.g. "FILE"; empty for a switch
  std::string help;
};

/// Every option of the program.
const std::vector<Option>& all_options();

/// The option of that name, without dashes; null where there is none.
const Option* find_option(std::string_view name);

/// Options whose value is taken as it was typed, and where it goes.
struct TextOption {
  const char* name;
  std::optional<std::string> Request::*member;
};
const std::vector<TextOption>& text_options();

/// Options of every command.
const std::vector<std::string>& common_options();

/// What was typed: the command and its words, and the options by name without dashes; that of a switch is empty.
struct TypedLine {
  std::vector<std::string> words;
  std::map<std::string, std::string> options;
};

/// Without the program's own name. Throws InputError (Fault::usage) for an option that nobody knows, has no value or
/// stands twice.
TypedLine read_command_line(std::vector<std::string> args);

/// Throws InputError (Fault::usage), with one fault per mistake where possible.
Request read_request(const TypedLine& typed);

}  // namespace gentlest
