// What each hazard statement brings with it: signal word, pictogram, and words of ours.
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
  const char* words;  // short, of ours; the official sentence stands on the safety data sheet
};

constexpr std::array<Row, 70> rows = {{
    {"H224", "Danger", "GHS02", "vapour catches fire at any room temperature"},
    {"H225", "Danger", "GHS02", "catches fire very easily"},
    {"H226", "Warning", "GHS02", "catches fire when warm"},
    {"H250", "Danger", "GHS02", "catches fire by itself in air"},
    {"H271", "Danger", "GHS03", "feeds fire or explosion"},
    {"H272", "Danger", "GHS03", "feeds fire"},
    {"H290", "Warning", "GHS05", "eats metal"},
    {"H300", "Danger", "GHS06", "deadly when swallowed"},
    {"H301", "Danger", "GHS06", "poisonous when swallowed"},
    {"H302", "Warning", "GHS07", "harmful when swallowed"},
    {"H304", "Danger", "GHS08", "deadly if it gets into the lungs: never pipette by mouth"},
    {"H310", "Danger", "GHS06", "deadly through the skin"},
    {"H311", "Danger", "GHS06", "poisonous through the skin"},
    {"H312", "Warning", "GHS07", "harmful through the skin"},
    {"H314", "Danger", "GHS05", "burns skin and eyes"},
    {"H315", "Warning", "GHS07", "irritates the skin"},
    {"H317", "Warning", "GHS07", "may cause skin allergy"},
    {"H318", "Danger", "GHS05", "damages the eyes"},
    {"H319", "Warning", "GHS07", "irritates the eyes strongly"},
    {"H330", "Danger", "GHS06", "deadly when breathed in"},
    {"H331", "Danger", "GHS06", "poisonous when breathed in"},
    {"H332", "Warning", "GHS07", "harmful when breathed in"},
    {"H334", "Danger", "GHS08", "may cause asthma"},
    {"H335", "Warning", "GHS07", "irritates the airways"},
    {"H336", "Warning", "GHS07", "makes drowsy or dizzy"},
    {"H340", "Danger", "GHS08", "damages genes"},
    {"H341", "Warning", "GHS08", "suspected of damaging genes"},
    {"H350", "Danger", "GHS08", "causes cancer"},
    {"H350i", "Danger", "GHS08", "causes cancer when breathed in"},
    {"H351", "Warning", "GHS08", "suspected of causing cancer"},
    {"H360", "Danger", "GHS08", "harms fertility or the unborn child"},
    {"H360D", "Danger", "GHS08", "harms the unborn child"},
    {"H360FD", "Danger", "GHS08", "harms fertility and the unborn child"},
    {"H360Df", "Danger", "GHS08", "harms the unborn child, suspected of harming fertility"},
    {"H360F", "Danger", "GHS08", "harms fertility"},
    {"H360Fd", "Danger", "GHS08", "harms fertility, suspected of harming the unborn child"},
    {"H361", "Warning", "GHS08", "suspected of harming fertility or the unborn child"},
    {"H361d", "Warning", "GHS08", "suspected of harming the unborn child"},
    {"H361f", "Warning", "GHS08", "suspected of harming fertility"},
    {"H361fd", "Warning", "GHS08", "suspected of harming fertility and the unborn child"},
    {"H362", "", "", "harms children through breast milk"},
    {"H370", "Danger", "GHS08", "damages organs"},
    {"H371", "Warning", "GHS08", "may damage organs"},
    {"H372", "Danger", "GHS08", "damages organs with repeated use"},
    {"H373", "Warning", "GHS08", "may damage organs with repeated use"},
    {"H400", "Warning", "GHS09", "very poisonous to water life"},
    {"H410", "Warning", "GHS09", "very poisonous to water life for long"},
    {"H411", "", "GHS09", "poisonous to water life for long"},
    {"H412", "", "", "harmful to water life for long"},
    {"H413", "", "", "may harm water life for long"},
    {"H420", "Warning", "GHS07", "harms the ozone layer"},
    {"EUH014", "", "", "reacts violently with water"},
    {"EUH018", "", "", "its vapour may explode with air"},
    {"EUH019", "", "", "forms explosive peroxides"},
    {"EUH029", "", "", "gives off poisonous gas with water"},
    {"EUH031", "", "", "gives off poisonous gas with acids"},
    {"EUH032", "", "", "gives off very poisonous gas with acids"},
    {"EUH044", "", "", "may explode when heated shut in"},
    {"EUH066", "", "", "dries and cracks the skin"},
    {"EUH070", "", "", "poisonous through the eyes"},
    {"EUH071", "", "", "burns the airways"},
    {"EUH208", "", "", "may set off an allergy in those who have it"},
    {"EUH380", "Danger", "", "disturbs the hormones of people"},
    {"EUH381", "Warning", "", "suspected of disturbing the hormones of people"},
    {"EUH430", "Danger", "", "disturbs the hormones of animals in nature"},
    {"EUH431", "Warning", "", "suspected of disturbing the hormones of animals in nature"},
    {"EUH440", "Danger", "", "stays in nature, gathers in living beings and poisons them"},
    {"EUH441", "Danger", "", "stays very long in nature and gathers strongly in living beings"},
    {"EUH450", "Danger", "", "stays in nature, travels with water and poisons it"},
    {"EUH451", "Danger", "", "stays very long in nature and travels far with water"},
}};

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

std::string statement_words(const std::string& code) {
  const Row* row = row_of(code);
  return row ? row->words : "";
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
