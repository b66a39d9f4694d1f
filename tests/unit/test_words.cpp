// Core hands out numbers, enumerators and references; words are made in the report. Here every file of core is read for
// sentences and for numbers that become text. What core may word is listed below, with the reason.
#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace {

namespace fs = std::filesystem;

const fs::path words_root = GENTLEST_SOURCE_DIR;

// What is said to whoever wrote bad input, or broke a promise: the words are an argument of one of these calls, or made
// by one of these functions.
bool is_diagnostic(std::string_view call) {
  constexpr std::array<std::string_view, 14> names = {
      "InputError",    "Diagnostic",       "fault",         "refuse",      "did_you_mean",  "expect",
      "assert",        "invalid_argument", "static_assert", "range_words", "outside_words", "range_remedy",
      "solvent_fault", "material_fault"};
  return call.rfind("complain", 0) == 0 || std::find(names.begin(), names.end(), call) != names.end();
}

// Files that exist to write text: diagnostics, what is said of names that lead nowhere, the escapes in them, the
// notation that parse_mixture reads back, the fields of a log with what each must hold, and cures of what was typed.
const std::set<std::string> writers = {
    "src/core/base/diagnostic.cpp", "src/core/base/letters.cpp", "src/core/catalogue/name_words.cpp",
    "src/core/liquids/notation.cpp", "src/core/learning/reading_fields.cpp", "src/core/base/typed_number.cpp",
    "src/core/job/job_cures.cpp",
    // What people write of a swab and a recipe, to be read; and what is wrong in it.
    "src/core/liquids/free_mixture.cpp", "src/core/liquids/no_mixture.cpp", "src/core/conduct/typed_step.cpp",
    "src/core/learning/looks.cpp", "src/core/noted/fields.cpp", "src/core/noted/noted.cpp",
    "src/core/noted/outcomes.cpp", "src/core/noted/plain_words.cpp", "src/core/noted/words.cpp"};

// Words of files and of the law, which are read and compared, not told: standings, families, hazard classes of CLP,
// lists of limits, spellings of a strength, what a log holds of a swab.
const std::set<std::string> vocabulary = {"from memory",
                                          "dry swab",
                                          "common practice",
                                          "Acute Tox. 1",
                                          "Acute Tox. 2",
                                          "Flam. Liq.",
                                          "Flam. Liq. ",
                                          "Skin Sens. 1A",
                                          "Resp. Sens. 1A",
                                          "aliphatic hydrocarbon",
                                          "aromatic hydrocarbon",
                                          "petroleum fraction",
                                          "natural resin",
                                          "natural resin derivative",
                                          "acrylic resin",
                                          "acrylic paint",
                                          "vinyl resin",
                                          "hydrocarbon resin",
                                          "ketone resin",
                                          "aldehyde resin",
                                          "EU binding",
                                          "EU indicative",
                                          "NIOSH REL",
                                          "OSHA PEL",
                                          "% by volume",
                                          "% by weight",
                                          "% by mass",
                                          "no effect",
                                          "softened or gelled",
                                          "partly removed",
                                          "mostly removed",
                                          "fully removed",
                                          "nothing seen",
                                          "change that recovers",
                                          "change that stays",
                                          "colour on the swab",
                                          "not known"};

bool is_letter(char c) {
  return std::isalpha(static_cast<unsigned char>(c)) != 0;
}

bool is_a_word(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_';
}

// Words with a blank between them; a word has at least two letters.
int words_in(const std::string& text) {
  int words = 0;
  std::size_t letters = 0;
  bool blank_before = true;
  for (const char c : text) {
    if (is_letter(c)) {
      if (++letters == 2 && blank_before) ++words;
      continue;
    }
    if (letters > 0) blank_before = false;
    if (c == ' ' || c == '\n') blank_before = true;
    letters = 0;
  }
  return words;
}

bool is_sentence(const std::string& text) {
  return words_in(text) >= 2;
}

bool formats_numbers(std::string_view name) {
  constexpr std::array<std::string_view, 9> names = {"format",   "format_to", "to_string",     "snprintf",    "sprintf",
                                                     "to_chars", "join",      "ostringstream", "stringstream"};
  return std::find(names.begin(), names.end(), name) != names.end();
}

struct Finding {
  int line = 0;
  std::string what;
};

// Reads code once, letter by letter, and keeps the names of the calls and braces that are open.
class Reader {
 public:
  explicit Reader(std::string code) : code_(std::move(code)) {}

  std::vector<Finding> read() {
    while (at_ < code_.size()) step();
    return findings_;
  }

  std::size_t strings() const { return texts_.size(); }
  const std::vector<std::string>& texts() const { return texts_; }

 private:
  bool starts(std::string_view text) const { return code_.compare(at_, text.size(), text) == 0; }

  void step() {
    const char c = code_[at_];
    if (starts("//") || (c == '#' && at_line_start_)) return skip_to("\n");
    if (starts("/*")) return skip_to("*/");
    if (c == '"') return take_string();
    if (c == '\'' && !is_a_word(before_)) return skip_character();
    if (is_a_word(c)) return take_name();
    if (c == '(') open_.push_back(name_);
    if (c == '{')
      open_.push_back(name_.empty() || name_ == "const" ? closed_ : name_);  // a body bears its function's name
    if ((c == ')' || c == '}') && !open_.empty()) {
      closed_ = c == ')' ? open_.back() : std::string();
      open_.pop_back();
    } else if (c != ' ' && c != '\n') {
      closed_.clear();
    }
    if (c != ' ' && c != '\n') name_.clear();
    advance();
  }

  void advance() {
    before_ = code_[at_];
    if (before_ == '\n') {
      ++line_;
      at_line_start_ = true;
    } else if (before_ != ' ') {
      at_line_start_ = false;
    }
    ++at_;
  }

  void skip_to(std::string_view end) {
    while (at_ < code_.size() && !starts(end)) advance();
    for (std::size_t i = 0; i < end.size() && at_ < code_.size(); ++i) advance();
  }

  void skip_character() {
    advance();
    while (at_ < code_.size() && code_[at_] != '\'') {
      if (code_[at_] == '\\') advance();
      advance();
    }
    advance();
  }

  void take_name() {
    name_.clear();
    while (at_ < code_.size() && is_a_word(code_[at_])) {
      name_ += code_[at_];
      advance();
    }
    if (formats_numbers(name_)) find("makes text of numbers: " + name_);
  }

  // Strings that follow one another are one.
  void take_string() {
    std::string text;
    while (at_ < code_.size() && code_[at_] == '"') {
      take_piece(text);
      while (at_ < code_.size() && (code_[at_] == ' ' || code_[at_] == '\n')) advance();
    }
    name_.clear();
    texts_.push_back(text);
    if (is_sentence(text) && vocabulary.count(text) == 0) find("says \"" + text + "\"");
  }

  void take_piece(std::string& text) {
    advance();
    while (at_ < code_.size() && code_[at_] != '"') {
      if (code_[at_] == '\\') {
        advance();
        text += code_[at_] == 'n' ? '\n' : '?';
      } else {
        text += code_[at_];
      }
      advance();
    }
    advance();
  }

  void find(std::string what) {
    if (std::none_of(open_.begin(), open_.end(), is_diagnostic)) findings_.push_back({line_, std::move(what)});
  }

  std::string code_;
  std::size_t at_ = 0;
  int line_ = 1;
  bool at_line_start_ = true;
  char before_ = '\n';
  std::string name_;
  std::vector<std::string> open_;
  std::string closed_;  // the call that ended just now
  std::vector<Finding> findings_;
  std::vector<std::string> texts_;
};

Reader read_file(const fs::path& file) {
  std::ifstream in(file);
  Reader reader(std::string((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>()));
  return reader;
}

std::size_t found_in(const std::string& code) {
  return Reader(code).read().size();
}

}  // namespace

TEST_CASE("words are made in the report: core says nothing but diagnostics") {
  std::size_t files = 0;
  std::size_t strings = 0;
  for (const char* wing : {"src/core", "include/gentlest"})
    for (const auto& entry : fs::recursive_directory_iterator(words_root / wing)) {
      const fs::path& file = entry.path();
      if (file.extension() != ".cpp" && file.extension() != ".hpp") continue;
      if (writers.count(fs::relative(file, words_root).generic_string()) == 1) continue;
      Reader reader = read_file(file);
      for (const Finding& finding : reader.read())
        FAIL_CHECK(file.string() << ":" << finding.line << ": " << finding.what);
      ++files;
      strings += reader.strings();
    }
  CHECK(files > 80);
  CHECK(strings > 300);
}

TEST_CASE("nothing is worded in two files of the report") {
  std::map<std::string, std::set<std::string>> files_of;
  for (const auto& entry : fs::recursive_directory_iterator(words_root / "src/report")) {
    if (entry.path().extension() != ".cpp" && entry.path().extension() != ".hpp") continue;
    Reader reader = read_file(entry.path());
    reader.read();
    for (const std::string& text : reader.texts())
      if (words_in(text) >= 3) files_of[text].insert(fs::relative(entry.path(), words_root).generic_string());
  }
  CHECK(files_of.size() > 300);
  for (const auto& [text, files] : files_of) {
    INFO(text);
    CHECK(files == std::set<std::string>{*files.begin()});
  }
}

TEST_CASE("what counts as words of core") {
  CHECK(found_in("return \"may part\";") == 1);
  CHECK(found_in("list.push_back({code, \"carried by \" + name});") == 1);
  CHECK(found_in("const char* words = \"half \"\n  \"a sentence\";") == 1);
  CHECK(found_in("return fmt::format(\"{:.1f}\", share);") == 1);
  CHECK(found_in("text += std::to_string(count);") == 1);
  CHECK(found_in("std::ostringstream out;") == 1);
  CHECK(found_in("throw InputError(Fault::usage, fmt::format(\"{} is too much\", x), \"take less of it\");") == 0);
  CHECK(found_in("complain(where, near.empty() ? \"write the id\" : \"did you \" + near);") == 0);
  CHECK(found_in("return fault(column, fmt::format(\"{} stands twice\", name)); return \"may part\";") == 1);
  CHECK(found_in("std::string did_you_mean(int x) const {\n  return \"may part\";\n}\nreturn \"may part\";") == 1);
  CHECK(found_in("for (int x : list) {\n  if (fault(x)) {\n    say(\"may part\");\n  }\n}") == 1);
  CHECK(found_in("const auto f = [&](int x) { return \"may part\"; };") == 1);
  CHECK(found_in("// may part\n/* may part */ if (c == '\"') return \"word\"; const char* id = \"a_b c\";") == 0);
  CHECK(found_in("#include \"may part\"\nint x = 1'000;") == 0);
}
