// Reads the command line. The only part of the program that sees Boost.Program_options.
#pragma once

#include "gentlest/job/limits.hpp"
#include "gentlest/plan/plan.hpp"
#include "report/form/form.hpp"

#include <optional>
#include <string>
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
  std::optional<std::string> paper, label, sites, background, date, maker, log;
  std::optional<double> margin_mm, gap_mm;
  std::optional<Finer> finer;
  std::optional<int> good_up_to, copies;
  std::vector<AskedLimit> limits;  ///< in the order of the table
  bool quiet = false;
  bool force = false;
  bool again = false;
  bool full = false;
  bool new_log = false;
  bool yes = false;
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

/// Options whose value is taken as it was typed, and where it goes.
struct TextOption {
  const char* name;
  std::optional<std::string> Request::*member;
};
const std::vector<TextOption>& text_options();

/// Options of every command.
const std::vector<std::string>& common_options();

/// Throws InputError (Fault::usage), with one fault per mistake where possible.
Request read_request(const std::vector<std::string>& args);

}  // namespace gentlest
