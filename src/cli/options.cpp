#include "cli/options.hpp"

#include "cli/commands.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/text.hpp"
#include "gentlest/base/typed_number.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <utility>

namespace gentlest {

namespace {

// Reads the values; what is wrong with one does not hide what is wrong with the next.
class ValueReader {
 public:
  ValueReader(const TypedLine& typed, std::vector<Diagnostic>& faults) : typed_(typed), faults_(faults) {}

  std::optional<std::string> text(const char* name) {
    const auto seen = typed_.options.find(name);
    if (seen == typed_.options.end()) return std::nullopt;
    if (!seen->second.empty()) return seen->second;
    complain(fmt::format("the option --{} has an empty value", name), "leave it out or fill it");
    return std::nullopt;
  }

  std::optional<int> whole(const char* name, int low, int high, const std::string& unit = {}) {
    const std::optional<std::string> typed = text(name);
    if (!typed) return std::nullopt;
    int value = 0;
    const char* end = typed->data() + typed->size();
    const auto [stop, fault] = std::from_chars(typed->data(), end, value);
    if (fault == std::errc() && stop == end && value >= low && value <= high) return value;
    complain(fmt::format("--{} \"{}\" is not a whole number from {} to {}", name, *typed, low, high),
             cure_of(*typed, {unit, static_cast<double>(low), static_cast<double>(high), true},
                     fmt::format("write for example --{} {}", name, low)));
    return std::nullopt;
  }

  std::optional<double> amount(const char* name, double low, double high, const std::string& unit = {}) {
    const std::optional<std::string> typed = text(name);
    if (!typed) return std::nullopt;
    const std::optional<double> value = amount_from(*typed);
    if (value && *value >= low && *value <= high) return value;
    complain(fmt::format("--{} \"{}\" is not a number from {} to {}", name, *typed, low, high),
             cure_of(*typed, {unit, low, high}, "write it with a point, without a unit"));
    return std::nullopt;
  }

  std::optional<double> limit(const Limit& limit) {
    if (limit.ends == Ends::excluded) return chance(limit);
    const std::string unit = wanted_of(limit).unit;
    if (!is_whole(limit)) return amount(limit.option, limit.smallest, limit.largest, unit);
    const auto value = whole(limit.option, static_cast<int>(limit.smallest), static_cast<int>(limit.largest), unit);
    if (!value || is_within(limit, *value)) return value;
    complain(fmt::format("--{} is {}, {}", limit.option, *value, outside_words(limit)), range_remedy(limit, *value));
    return std::nullopt;
  }

  // "3:4": two rungs, the second above the first.
  std::optional<Finer> stretch(const char* name) {
    const std::optional<std::string> typed = text(name);
    if (!typed) return std::nullopt;
    Finer finer;
    const char* end = typed->data() + typed->size();
    const auto first = std::from_chars(typed->data(), end, finer.from);
    const bool colon = first.ec == std::errc() && first.ptr != end && *first.ptr == ':';
    const auto second = std::from_chars(colon ? first.ptr + 1 : end, end, finer.to);
    if (colon && second.ec == std::errc() && second.ptr == end && finer.from >= 1 && finer.to > finer.from)
      return finer;
    complain(fmt::format("--{} \"{}\" is not a stretch from one rung to a later one", name, *typed),
             fmt::format("write for example --{} 3:4", name));
    return std::nullopt;
  }

  Form form() {
    const std::string word = text("format").value_or("text");
    if (word == "text") return Form::text;
    if (word == "csv") return Form::csv;
    if (word == "json") return Form::json;
    const std::string near = nearest_name(word, {"text", "csv", "json"});
    complain(fmt::format("unknown format \"{}\"", word),
             near.empty() ? "text, csv or json" : fmt::format("did you mean \"{}\"?", near));
    return Form::text;
  }

 private:
  void complain(std::string message, std::string remedy) {
    faults_.push_back({{}, std::move(message), std::move(remedy), {}});
  }

  // The same as in a file: what was most likely meant, else an example.
  static std::string cure_of(const std::string& typed, const WantedNumber& wanted, std::string otherwise) {
    const std::optional<double> value = number_from(typed);
    std::string cure = value ? cure_of_range(*value, wanted) : cure_of_text(typed, wanted);
    return cure.empty() ? std::move(otherwise) : std::move(cure);
  }

  std::optional<double> chance(const Limit& limit) {
    const std::optional<std::string> typed = text(limit.option);
    if (!typed) return std::nullopt;
    const std::optional<double> value = amount_from(*typed);
    if (value && is_within(limit, *value)) return value;
    complain(fmt::format("--{} \"{}\" is not a chance {}", limit.option, *typed, range_words(limit)),
             cure_of(*typed, wanted_of(limit), fmt::format("write for example --{} 0.1 for 10 %", limit.option)));
    return std::nullopt;
  }

  const TypedLine& typed_;
  std::vector<Diagnostic>& faults_;
};

// Every option given must belong to the command; says which commands take it otherwise.
void check_options_of(const TypedLine& typed, const std::string& command, std::vector<Diagnostic>& faults) {
  for (const Option& option : all_options()) {
    if (!typed.options.count(option.name) || takes_option(*find_command(command), option.name)) continue;
    std::string takers;
    for (const Command& other : all_commands())
      if (offers_option(other, option.name)) takers += (takers.empty() ? "" : ", ") + std::string(other.name);
    faults.push_back(
        {{}, fmt::format("\"{}\" takes no option --{}", command, option.name), "it belongs to: " + takers, {}});
  }
}

void check_command(const Request& request) {
  if (find_command(request.command)) return;
  std::vector<std::string> names;
  for (const Command& command : all_commands()) names.emplace_back(command.name);
  const std::string near = nearest_name(request.command, names);
  throw InputError(Fault::usage, fmt::format("unknown command \"{}\"", request.command),
                   near.empty() ? "`gentlest help` lists the commands" : fmt::format("did you mean \"{}\"?", near));
}

void check_word_count(const Request& request, std::vector<Diagnostic>& faults) {
  const Command& command = *find_command(request.command);
  const std::size_t count = request.words.size();
  if (request.help || (count >= command.least_words && count <= command.most_words)) return;
  const std::string synopsis =
      fmt::format("write: gentlest {}{}{}", command.name, *command.words ? " " : "", command.words);
  const std::string message =
      count < command.least_words
          ? fmt::format("\"{}\" needs more words", command.name)
          : fmt::format("\"{}\" does not know what to do with \"{}\"", command.name, request.words[command.most_words]);
  faults.push_back({{}, message, synopsis, {}});
}

void read_values(Request& request, const TypedLine& typed, std::vector<Diagnostic>& faults) {
  ValueReader values(typed, faults);
  request.form = values.form();
  for (const TextOption& option : text_options()) request.*option.member = values.text(option.name);
  for (const Limit& limit : all_limits())
    if (*limit.option)
      if (const std::optional<double> value = values.limit(limit)) request.limits.push_back({&limit, *value});
  request.margin_mm = values.amount("margin", 0, 100);
  request.gap_mm = values.amount("gap", 0, 50);
  request.copies = values.whole("copies", 1, 100);
  request.finer = values.stretch("finer");
  request.good_up_to = values.whole("good-up-to", 1, 5);
  request.quiet = typed.options.count("quiet") > 0;
  request.force = typed.options.count("force") > 0;
  request.again = typed.options.count("again") > 0;
  request.full = typed.options.count("full") > 0;
  request.new_log = typed.options.count("new-log") > 0;
  request.keep_photographs = typed.options.count("keep-photographs") > 0;
  request.html = typed.options.count("html") > 0;
  request.ask = typed.options.count("ask") > 0;
  request.dry_run = typed.options.count("dry-run") > 0;
  request.yes = typed.options.count("yes") > 0;
}

// The words are the option's, the range is the table's.
Option limit_option(const char* key, const char* argument, const char* words) {
  const Limit& limit = *find_limit(key);
  return {limit.option, 0, argument, fmt::format("{}, {}; default: the job's", words, range_words(limit))};
}

}  // namespace

const std::vector<Option>& all_options() {
  static const std::vector<Option> options = {
      {"format", 0, "FORM", "text (default), csv or json"},
      {"output", 'o', "FILE", "write the result there, in one step; - is standard output"},
      {"data", 0, "FOLDER", "use this catalogue folder instead of the built-in one"},
      {"quiet", 'q', "", "no progress; results and warnings stay"},
      {"help", 'h', "", "show the help of the command"},
      {"target", 0, "LAYER", "the layer to remove; default: the uppermost with role remove"},
      limit_option("risk_limit", "CHANCE", "largest risk of any layer to keep"),
      limit_option("parts", "N", "largest number of liquids in one mixture"),
      limit_option("step_percent", "PERCENT", "step of the shares, per cent by volume"),
      limit_option("bottles", "N", "largest number of bottles of the ladder"),
      limit_option("rungs", "N", "largest number of rungs"),
      limit_option("lines", "N", "lines of two bottles at most (0: one walk over the best of the shelf)"),
      {"exactly", 0, "LIQUIDS", "plan with these of the shelf and no others, e.g. \"isooctane, ethanol\""},
      {"finer", 0, "A:B", "put smaller steps, of 1 % by volume, between rung A and rung B"},
      {"good-up-to", 0, "GRADE", "weakest grade, 1 to 5, that still counts as dissolving; default: 1"},
      {"family", 0, "NAME", "only this family of solvents, or kind of materials"},
      {"having", 0, "FIGURE", "only records that hold this figure, e.g. hazards or sphere"},
      {"kind", 0, "CHART", "risk (default), chances, planes, triangle, drift or mixing; timeline or swabs"},
      {"of", 0, "BOTTLES", "the three bottles of the picture \"mixing\", e.g. \"isooctane, ethanol, acetone\""},
      {"paper", 0, "SIZE", "a4 (default) or letter"},
      limit_option("vial_mL", "ML", "what one vial holds, mL"),
      limit_option("measure_mL", "ML", "smallest volume that is measured, mL"),
      {"sites", 0, "PLACES", "where the tests are, cm from the lower left corner, e.g. \"12.5,30; 40,10\""},
      {"background", 0, "FILE", "PNG or JPEG of the whole painting, put into the map"},
      {"log", 0, "FILE", "the log of the tests: show where they stand, as `gentlest next` does"},
      {"studio", 0, "FOLDER", "begin where the finished paintings of this folder let their materials begin"},
      {"label", 0, "SIZE", "width x height of one label, mm; default: 63x38"},
      {"margin", 0, "MM", "least white at the edges of the page, mm; default: 10"},
      {"gap", 0, "MM", "between two labels, mm; default: 0"},
      {"copies", 0, "N", "labels of each mixture; default: 1"},
      {"date", 0, "TEXT", "date on the labels; default: a line to write on"},
      {"maker", 0, "TEXT", "initials on the labels; default: a line to write on"},
      {"force", 0, "", "replace the file if it exists"},
      {"full", 0, "", "everything behind the answer: ranges, all readings, what was passed over"},
      {"html", 0, "", "the answer as a page to print (HTML)"},
      {"liquid", 0, "MIXTURES", "what these do to each coat, e.g. \"isooctane; toluene 60, acetone 40\""},
      {"light", 0, "LIGHT", "where it will hang: dark, uv_filtered, daylight or strong"},
      {"again", 0, "", "add rows that the log holds already, as tests of their own"},
      {"dry-run", 0, "", "say row by row what would be written, and write nothing"},
      {"new-log", 0, "", "the log is a new one, though another is named almost like it"},
      {"ask", 0, "", "ask what the examination showed, question by question"},
      {"keep-photographs", 0, "", "put the photographs that are named into the log itself, made small"},
      {"yes", 'y', "", "write without asking back"},
  };
  return options;
}

const Option* find_option(std::string_view name) {
  for (const Option& option : all_options())
    if (name == option.name) return &option;
  return nullptr;
}

const std::vector<TextOption>& text_options() {
  static const std::vector<TextOption> options = {
      {"output", &Request::output}, {"data", &Request::data},     {"target", &Request::target},
      {"family", &Request::family}, {"having", &Request::having}, {"exactly", &Request::exactly},
      {"kind", &Request::kind},     {"of", &Request::of},         {"paper", &Request::paper},
      {"label", &Request::label},   {"sites", &Request::sites},   {"log", &Request::log},
      {"studio", &Request::studio}, {"date", &Request::date},     {"background", &Request::background},
      {"maker", &Request::maker},   {"liquid", &Request::liquid}, {"light", &Request::light}};
  return options;
}

const std::vector<std::string>& common_options() {
  static const std::vector<std::string> names = {"format", "output", "data", "quiet", "help"};
  return names;
}

Request read_request(const TypedLine& typed) {
  Request request;
  request.words = typed.words;
  request.help = typed.options.count("help") > 0;
  if (request.words.empty()) {
    request.command = "help";
  } else {
    request.command = request.words.front();
    request.words.erase(request.words.begin());
  }
  check_command(request);
  std::vector<Diagnostic> faults;
  check_options_of(typed, request.command, faults);
  read_values(request, typed, faults);
  check_word_count(request, faults);
  if (!faults.empty()) throw InputError(Fault::usage, std::move(faults));
  return request;
}

}  // namespace gentlest
