// What each hazard statement brings with it: signal word and pictogram.
#include "gentlest/catalogue/statements.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstring>
#include <set>

namespace gentlest {

namespace {

struct Row {
  const char* code;
  const char* signal_word;
  const char* pictogram;
};

constexpr std::array<Row, 70> rows = {{
    {"H224", "Danger", "GHS02"},
    {"H225", "Danger", "GHS02"},
    {"H226", "Warning", "GHS02"},
    {"H250", "Danger", "GHS02"},
    {"H271", "Danger", "GHS03"},
    {"H272", "Danger", "GHS03"},
    {"H290", "Warning", "GHS05"},
    {"H300", "Danger", "GHS06"},
    {"H301", "Danger", "GHS06"},
    {"H302", "Warning", "GHS07"},
    {"H304", "Danger", "GHS08"},
    {"H310", "Danger", "GHS06"},
    {"H311", "Danger", "GHS06"},
    {"H312", "Warning", "GHS07"},
    {"H314", "Danger", "GHS05"},
    {"H315", "Warning", "GHS07"},
    {"H317", "Warning", "GHS07"},
    {"H318", "Danger", "GHS05"},
    {"H319", "Warning", "GHS07"},
    {"H330", "Danger", "GHS06"},
    {"H331", "Danger", "GHS06"},
    {"H332", "Warning", "GHS07"},
    {"H334", "Danger", "GHS08"},
    {"H335", "Warning", "GHS07"},
    {"H336", "Warning", "GHS07"},
    {"H340", "Danger", "GHS08"},
    {"H341", "Warning", "GHS08"},
    {"H350", "Danger", "GHS08"},
    {"H350i", "Danger", "GHS08"},
    {"H351", "Warning", "GHS08"},
    {"H360", "Danger", "GHS08"},
    {"H360D", "Danger", "GHS08"},
    {"H360FD", "Danger", "GHS08"},
    {"H360Df", "Danger", "GHS08"},
    {"H360F", "Danger", "GHS08"},
    {"H360Fd", "Danger", "GHS08"},
    {"H361", "Warning", "GHS08"},
    {"H361d", "Warning", "GHS08"},
    {"H361f", "Warning", "GHS08"},
    {"H361fd", "Warning", "GHS08"},
    {"H362", "", ""},
    {"H370", "Danger", "GHS08"},
    {"H371", "Warning", "GHS08"},
    {"H372", "Danger", "GHS08"},
    {"H373", "Warning", "GHS08"},
    {"H400", "Warning", "GHS09"},
    {"H410", "Warning", "GHS09"},
    {"H411", "", "GHS09"},
    {"H412", "", ""},
    {"H413", "", ""},
    {"H420", "Warning", "GHS07"},
    {"EUH014", "", ""},
    {"EUH018", "", ""},
    {"EUH019", "", ""},
    {"EUH029", "", ""},
    {"EUH031", "", ""},
    {"EUH032", "", ""},
    {"EUH044", "", ""},
    {"EUH066", "", ""},
    {"EUH070", "", ""},
    {"EUH071", "", ""},
    {"EUH208", "", ""},
    {"EUH380", "Danger", ""},
    {"EUH381", "Warning", ""},
    {"EUH430", "Danger", ""},
    {"EUH431", "Warning", ""},
    {"EUH440", "Danger", ""},
    {"EUH441", "Danger", ""},
    {"EUH450", "Danger", ""},
    {"EUH451", "Danger", ""},
}};

// Worst first; a list is as bad as the first row of which it carries a code.
struct SeverityRow {
  int severity;
  std::vector<const char*> codes;
};
const std::array<SeverityRow, 5>& severity_rows() {
  static const std::array<SeverityRow, 5> by_severity = {
      {{5, {"H340", "H350", "H360", "EUH380", "H300", "H310", "H330"}},
       {4, {"H301", "H311", "H331", "H334", "H370", "H372"}},
       {3, {"H341", "H351", "H361", "H362", "EUH381", "H371", "H373", "H314", "H318", "EUH071"}},
       {2, {"H302", "H312", "H332", "H304", "H317"}},
       {1, {"H315", "H319", "H335", "H336", "EUH066", "EUH208"}}}};
  return by_severity;
}

struct Worst {
  int severity = 0;
  std::string code;
};
Worst worst_of(const std::vector<std::string>& statements) {
  for (const SeverityRow& row : severity_rows())
    for (const char* start : row.codes)
      for (const std::string& code : statements)
        if (code.rfind(start, 0) == 0) return {row.severity, code};
  return {};
}

// The code itself, or the code with the letters that narrow it down taken off.
const Row* row_of(const std::string& code) {
  const Row* best = nullptr;
  for (const Row& row : rows) {
    const std::size_t length = std::strlen(row.code);
    const bool starts = code.compare(0, length, row.code) == 0;
    const bool only_letters = starts && std::all_of(code.begin() + static_cast<std::ptrdiff_t>(length), code.end(),
                                                    [](unsigned char c) { return std::isalpha(c) != 0; });
    if (only_letters && (!best || length > std::strlen(best->code))) best = &row;
  }
  return best;
}

bool is_among(const std::string& code, std::initializer_list<const char*> codes) {
  return std::any_of(codes.begin(), codes.end(), [&](const char* one) { return code == one; });
}

// CLP Article 26(1)(b) to (d): whether this statement's GHS07 gives way to another sign of the label.
bool gives_way(const std::string& code, const std::set<std::string>& signs, bool asthma) {
  const bool irritates = is_among(code, {"H315", "H319"});
  return signs.count("GHS06") == 1 || (irritates && signs.count("GHS05") == 1) ||
         (asthma && (irritates || code == "H317"));
}

}  // namespace

std::vector<std::string> known_statements(const Solvent& solvent) {
  if (!solvent.hazards)
    return solvent.flame_by_figures.empty() ? std::vector<std::string>() : std::vector{solvent.flame_by_figures};
  std::vector<std::string> statements = solvent.hazards->statements;
  statements.insert(statements.end(), solvent.hazards->supplemental.begin(), solvent.hazards->supplemental.end());
  return statements;
}

std::string flammable_statement(Celsius flash_point, Celsius boiling_point, bool estimated) {
  const double flash = flash_point.value - (estimated ? 5 : 0);
  if (flash < 23) return boiling_point.value <= 35 ? "H224" : "H225";
  return flash <= 60 ? "H226" : "";
}

std::string flame_among(const std::vector<std::string>& statements) {
  for (const char* code : {"H224", "H225", "H226"})
    if (std::find(statements.begin(), statements.end(), code) != statements.end()) return code;
  return {};
}

bool any_is(const std::vector<std::string>& codes, std::initializer_list<const char*> starts) {
  return std::any_of(codes.begin(), codes.end(), [&](const std::string& code) {
    return std::any_of(starts.begin(), starts.end(), [&](const char* start) { return code.rfind(start, 0) == 0; });
  });
}

int severity_of_statements(const std::vector<std::string>& statements) {
  return worst_of(statements).severity;
}

std::string worst_statement(const std::vector<std::string>& statements) {
  return worst_of(statements).code;
}

std::string_view row_of_statement(const std::string& code) {
  const Row* row = row_of(code);
  return row ? row->code : "";
}

std::string signal_word_of(const std::vector<std::string>& statements) {
  std::string word;
  for (const std::string& code : statements) {
    const Row* row = row_of(code);
    if (row && (word.empty() || std::strcmp(row->signal_word, "Danger") == 0)) word = row->signal_word;
  }
  return word;
}

std::vector<std::string> pictograms_of(const std::vector<std::string>& statements) {
  std::set<std::string> signs;
  const auto add = [&](const std::string& code, bool exclamation) {
    const Row* row = row_of(code);
    if (row && *row->pictogram && (std::strcmp(row->pictogram, "GHS07") == 0) == exclamation)
      signs.insert(row->pictogram);
  };
  for (const std::string& code : statements) add(code, false);
  const bool asthma = std::find(statements.begin(), statements.end(), "H334") != statements.end();
  for (const std::string& code : statements)
    if (!gives_way(code, signs, asthma)) add(code, true);
  return {signs.begin(), signs.end()};
}

}  // namespace gentlest
