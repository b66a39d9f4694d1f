#include "cli/options.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/text.hpp"

#include <fmt/format.h>
#include <boost/program_options.hpp>

#include <algorithm>
#include <utility>

namespace gentlest {

namespace {

namespace po = boost::program_options;

po::options_description describe() {
  po::options_description description;
  for (const Option& option : all_options()) {
    std::string name = option.name;
    if (option.letter) name += std::string(",") + option.letter;
    if (*option.argument)
      description.add_options()(name.c_str(), po::value<std::string>(), option.help.c_str());
    else
      description.add_options()(name.c_str(), po::bool_switch(), option.help.c_str());
  }
  description.add_options()("words", po::value<std::vector<std::string>>(), "");
  return description;
}

std::string without_dashes(const std::string& name) {
  const std::size_t from = name.find_first_not_of('-');
  return from == std::string::npos ? name : name.substr(from, name.find('=') - from);
}

[[noreturn]] void unknown_option(const std::string& typed) {
  std::vector<std::string> names;
  for (const Option& option : all_options()) names.emplace_back(option.name);
  const std::string near = nearest_name(without_dashes(typed), names);
  throw InputError(Fault::usage, fmt::format("unknown option \"{}\"", typed),
                   near.empty() ? "`gentlest help` lists the commands, `gentlest help COMMAND` their options"
                                : fmt::format("did you mean \"--{}\"?", near));
}

[[noreturn]] void wrong_value(const std::string& name) {
  const Option* option = find_option(name);
  if (!option)
    throw InputError(Fault::usage, fmt::format("the option --{} cannot be read", name), "see `gentlest help`");
  if (!*option->argument)
    throw InputError(Fault::usage, fmt::format("the option --{} takes no value", name), "write it alone");
  throw InputError(Fault::usage, fmt::format("the option --{} has no value", name),
                   fmt::format("write --{} {}", name, option->argument));
}

po::variables_map parsed(const std::vector<std::string>& args) {
  const po::options_description description = describe();
  po::positional_options_description words;
  words.add("words", -1);
  po::variables_map seen;
  const int style = po::command_line_style::unix_style & ~po::command_line_style::allow_guessing;
  try {
    po::store(po::command_line_parser(args).options(description).positional(words).style(style).run(), seen);
  } catch (const po::unknown_option& fault) {
    unknown_option(fault.get_option_name());
  } catch (const po::multiple_occurrences& fault) {
    throw InputError(Fault::usage, fmt::format("the option {} stands twice", fault.get_option_name()), "give it once");
  } catch (const po::error_with_option_name& fault) {
    wrong_value(without_dashes(fault.get_option_name()));
  } catch (const po::error& fault) {
    throw InputError(Fault::usage, fmt::format("the command line cannot be read: {}", fault.what()),
                     "see `gentlest help`");
  }
  return seen;
}

// `record JOB LOG WORDS... -- REMARK`: behind the dashes everything is the remark.
void keep_remark(std::vector<std::string>& args) {
  const auto dashes = std::find(args.begin(), args.end(), "--");
  constexpr std::ptrdiff_t words_before = 3;
  if (args.empty() || args.front() != "record" || dashes == args.end() || dashes - args.begin() <= words_before) return;
  std::string remark;
  for (auto word = dashes + 1; word != args.end(); ++word) remark += (remark.empty() ? "" : " ") + *word;
  args.erase(dashes, args.end());
  if (!remark.empty()) args.push_back("remark=" + remark);
}

}  // namespace

TypedLine read_command_line(std::vector<std::string> args) {
  if (!args.empty() && args.front() == "--version") args.front() = "version";  // as every program answers it
  keep_remark(args);
  const po::variables_map seen = parsed(args);
  TypedLine typed;
  if (seen.count("words")) typed.words = seen["words"].as<std::vector<std::string>>();
  for (const Option& option : all_options()) {
    if (!seen.count(option.name) || seen[option.name].defaulted()) continue;
    typed.options[option.name] = *option.argument ? seen[option.name].as<std::string>() : std::string();
  }
  return typed;
}

}  // namespace gentlest
