// A second, plain writing of the rules for the label of a mixture, to check the program's against: it reads the
// catalogue's files by itself and shares no code with the program. Rule by rule after CLP Annex I as set down in
//   3.1 acute toxicity            UN ST/SG/AC.10/C.4/2008/23 (seen), reachonline.eu 3.1.3 (seen), Table 3.1.2 (memory)
//   3.2, 3.3 skin and eyes        Tables 3.2.3, 3.3.3 (Tunnela 2012, ECHA exercises, seen; else memory)
//   3.4 to 3.10                   generic limits (memory; 3.4.3 and 3.10.2 seen at reachlex.eu)
//   4.1.3.5 water life            summation (reachlex.eu and ADR 2.2.9.1.10.4.6, seen)
//   Article 26                    pictograms (lexparency.de, seen)
//   2023/707                      0.1 and 1 % (seen), signal words (memory)
// Parts below the cut-offs of Table 1.1 are counted too, but for acute toxicity: the cautious side.
#pragma once

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <optional>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace plain {

struct Record {
  bool known = false;  // has a hazard record
  std::set<std::string> says;
  std::string classes;
  std::string limits;
  std::set<std::string> signs;  // as printed
  std::string word;
  double grams_per_cm3 = 0;  // molar mass over molar volume, as the mixtures are reckoned; 0: not known
};

inline std::string file_text(const std::filesystem::path& path) {
  std::ifstream in(path);
  std::stringstream all;
  all << in.rdbuf();
  return all.str();
}

inline double figure(const std::string& block, const std::string& key) {
  std::smatch match;
  const std::regex form("\n    " + key + ":\\s*(?:\\{value: |\n\\s+value: )([-0-9.]+)");
  return std::regex_search(block, match, form) ? std::strtod(match[1].str().c_str(), nullptr) : 0;
}

// The lines under "hazards:", continued lines joined, as key and words.
inline std::map<std::string, std::string> hazard_lines(const std::string& block) {
  std::map<std::string, std::string> lines;
  const std::size_t at = block.find("\n    hazards:\n");
  if (at == std::string::npos) return lines;
  std::istringstream in(block.substr(at + 14));
  std::string key;
  for (std::string line; std::getline(in, line);) {
    const std::size_t indent = line.find_first_not_of(' ');
    if (indent == std::string::npos || indent < 6) break;
    if (indent > 6) {
      lines[key] += " " + line.substr(indent);
      continue;
    }
    const std::size_t colon = line.find(':');
    key = line.substr(6, colon - 6);
    lines[key] = line.substr(colon + 1);
  }
  return lines;
}

inline std::set<std::string> words_of(const std::string& list) {
  std::set<std::string> words;
  static const std::regex form("[A-Za-z0-9]+");
  for (std::sregex_iterator it(list.begin(), list.end(), form), end; it != end; ++it) words.insert(it->str());
  return words;
}

inline std::map<std::string, Record> read_records(const std::filesystem::path& folder) {
  std::map<std::string, Record> records;
  for (const auto& file : std::filesystem::directory_iterator(folder / "liquids")) {
    const std::string text = file_text(file.path());
    for (std::size_t at = text.find("\n  - id: "); at != std::string::npos;) {
      const std::size_t next = text.find("\n  - id: ", at + 1);
      const std::string block = text.substr(at, next == std::string::npos ? next : next - at);
      std::istringstream first(block.substr(9));
      std::string id;
      first >> id;
      Record record;
      auto lines = hazard_lines(block);
      record.known = !lines.empty();
      record.says = words_of(lines["statements"]);
      for (const std::string& code : words_of(lines["supplemental"])) record.says.insert(code);
      record.classes = lines["classes"];
      record.limits = lines["specific_limits"];
      record.signs = words_of(lines["pictograms"]);
      const auto word = words_of(lines["signal_word"]);
      record.word = word.empty() ? "" : *word.begin();
      const double mass = figure(block, "molar_mass_g_per_mol");
      const double volume = figure(block, "molar_volume_cm3_per_mol");
      record.grams_per_cm3 = volume > 0 ? mass / volume : figure(block, "density_g_per_cm3");
      records[id] = record;
      at = next;
    }
  }
  // Cuts weigh what stands for them.
  const std::string stand_ins = file_text(folder / "stand_ins.yaml");
  static const std::regex line(R"(\{solvent: (\w+), shares: \{([^}]*)\})");
  static const std::regex share(R"((\w+): ([0-9.]+))");
  for (std::sregex_iterator it(stand_ins.begin(), stand_ins.end(), line), end; it != end; ++it) {
    const std::string shares = (*it)[2];
    double weight = 0;
    for (std::sregex_iterator one(shares.begin(), shares.end(), share); one != end; ++one)
      weight += std::strtod((*one)[2].str().c_str(), nullptr) * records[(*one)[1]].grams_per_cm3;
    records[(*it)[1]].grams_per_cm3 = weight;
  }
  return records;
}

// ---- The rules

struct Part {
  Record record;
  double percent = 0;  // by weight
  bool water = false;  // needs no record
};
using Parts = std::vector<Part>;

// The statement with these first letters, as the record has it; empty when it has none.
inline std::string statement(const Record& record, const std::string& start) {
  for (const std::string& code : record.says)
    if (code.rfind(start, 0) == 0) return code;
  return {};
}

struct Band {
  std::string code;
  double from = 0, below = 0;  // below 0: open
};

inline std::vector<Band> own_bands(const Part& part, const std::string& code) {
  std::vector<Band> bands;
  static const std::regex form(R"((E?U?H\d{3}[A-Za-z]*): *(?:([0-9.]+) *% *<= *)?C *(>=|<) *([0-9.]+))");
  for (std::sregex_iterator it(part.record.limits.begin(), part.record.limits.end(), form), end; it != end; ++it) {
    if ((*it)[1].str().rfind(code, 0) != 0) continue;
    const double number = std::strtod((*it)[4].str().c_str(), nullptr);
    if ((*it)[3] == ">=")
      bands.push_back({(*it)[1], number, 0});
    else
      bands.push_back({(*it)[1], std::strtod((*it)[2].str().c_str(), nullptr), number});
  }
  return bands;
}

// The statement as the part has it, also where only an open limit of its own names it; empty when it has none.
inline std::string said(const Part& part, const std::string& start) {
  const std::string own = statement(part.record, start);
  if (!own.empty()) return own;
  for (const Band& band : own_bands(part, start))
    if (!(band.below > 0)) return band.code;
  return {};
}

inline bool says(const Part& part, const std::string& start) {
  return !said(part, start).empty();
}

inline double lowest(const Part& part, const std::string& code, double otherwise) {
  const auto bands = own_bands(part, code);
  if (bands.empty()) return otherwise;
  double low = 100;
  for (const Band& band : bands) low = std::min(low, band.from);
  return low;
}

inline bool full(double value, double limit = 1) {
  return value > limit - 1e-7 * limit;
}

inline void skin_and_eyes(const Parts& parts, std::set<std::string>& label) {
  double corrosive = 0, skin = 0, damage = 0, eye = 0;
  for (const Part& part : parts) {
    const bool burns = says(part, "H314");
    const bool damages = burns || says(part, "H318");
    if (burns) corrosive += part.percent / lowest(part, "H314", 5);
    if (burns || says(part, "H315")) skin += part.percent / lowest(part, "H315", burns ? 1 : 10);
    if (damages) {
      double from = std::min(3.0, lowest(part, "H314", 3));
      if (!own_bands(part, "H319").empty()) {
        double end = 0;
        for (const Band& band : own_bands(part, "H319")) end = std::max(end, band.below);
        if (end > 0)
          from = end;
        else if (!own_bands(part, "H314").empty())
          from = lowest(part, "H314", 5);
      }
      damage += part.percent / lowest(part, "H318", from);
    }
    if (damages || says(part, "H319")) eye += part.percent / lowest(part, "H319", damages ? 1 : 10);
  }
  if (full(corrosive)) {
    label.insert("H314");  // says all the others
    return;
  }
  if (full(skin)) label.insert("H315");
  if (full(damage))
    label.insert("H318");
  else if (full(eye))
    label.insert("H319");
}

inline void single_ones(const Parts& parts, std::set<std::string>& label) {
  const std::map<std::string, double> limits = {
      {"H340", 0.1},   {"H341", 1},   {"H350", 0.1},   {"H351", 1},     {"H360", 0.3},   {"H361", 3},
      {"H362", 0.3},   {"H371", 10},  {"H373", 10},    {"H420", 0.1},   {"EUH380", 0.1}, {"EUH381", 1},
      {"EUH430", 0.1}, {"EUH431", 1}, {"EUH440", 0.1}, {"EUH441", 0.1}, {"EUH450", 0.1}, {"EUH451", 0.1}};
  for (const Part& part : parts) {
    for (const auto& [code, limit] : limits)
      if (says(part, code) && full(part.percent, lowest(part, code, limit))) label.insert(said(part, code));
    for (const auto& [strong, weak] : {std::pair("H370", "H371"), std::pair("H372", "H373")}) {
      if (!says(part, strong)) continue;
      if (full(part.percent, lowest(part, strong, 10)))
        label.insert(strong);
      else if (full(part.percent, lowest(part, weak, 1)))
        label.insert(weak);
    }
    for (const auto& [code, name] : {std::pair("H317", "Skin Sens. 1A"), std::pair("H334", "Resp. Sens. 1A")}) {
      if (!says(part, code)) continue;
      const double limit = lowest(part, code, part.record.classes.find(name) == std::string::npos ? 1 : 0.1);
      if (full(part.percent, limit))
        label.insert(code);
      else if (full(part.percent, limit / 10))
        label.insert("EUH208");
    }
  }
}

inline void sums(const Parts& parts, std::set<std::string>& label) {
  for (const auto& [code, limit] : {std::pair("H304", 10.0), std::pair("H335", 20.0), std::pair("H336", 20.0)}) {
    double sum = 0;
    for (const Part& part : parts)
      if (says(part, code)) sum += part.percent / lowest(part, code, limit);
    if (full(sum)) label.insert(code);
  }
}

inline double factor(const Part& part, const std::string& which) {
  std::smatch match;
  const std::regex form("M *(?:\\(" + which + "\\))? *= *([0-9.]+)");
  return std::regex_search(part.record.limits, match, form) ? std::strtod(match[1].str().c_str(), nullptr) : 1;
}

inline void water_life(const Parts& parts, std::set<std::string>& label) {
  double acute = 0, one = 0, two = 0, three = 0, four = 0;
  for (const Part& part : parts) {
    if (says(part, "H400") || says(part, "H410")) acute += factor(part, "acute") * part.percent;
    if (says(part, "H410")) one += factor(part, "chronic") * part.percent;
    if (says(part, "H411")) two += part.percent;
    if (says(part, "H412")) three += part.percent;
    if (says(part, "H413")) four += part.percent;
  }
  if (full(one, 25)) {
    label.insert("H410");
    return;
  }
  if (full(acute, 25)) label.insert("H400");
  if (full(10 * one + two, 25))
    label.insert("H411");
  else if (full(100 * one + 10 * two + three, 25))
    label.insert("H412");
  else if (full(one + two + three + four, 25))
    label.insert("H413");
}

inline std::optional<double> own_estimate(const Part& part, const std::string& route, const std::string& tail) {
  std::smatch match;
  const std::regex form(route + ": *ATE *= *([0-9.]+) *mg/k?[gL]" + tail, std::regex::icase);
  if (!std::regex_search(part.record.limits, match, form)) return std::nullopt;
  return std::strtod(match[1].str().c_str(), nullptr);
}

inline void poison(const Parts& parts, std::set<std::string>& label) {
  struct Way {
    const char* name;
    const char* tail;
    const char *worst, *second, *third;  // statements of categories 1 and 2, 3, 4
    double as1, as2, as3, as4;           // estimate when only the category is known
    double to2, to3, to4;                // largest estimate of the category
  };
  for (const Way& way : {Way{"oral", "", "H300", "H301", "H302", 0.5, 5, 100, 500, 50, 300, 2000},
                         Way{"dermal", "", "H310", "H311", "H312", 5, 50, 300, 1100, 200, 1000, 2000},
                         Way{"inhalation", " *\\(vapours?\\)", "H330", "H331", "H332", 0.05, 0.5, 3, 11, 2, 10, 20}}) {
    double sum = 0, unknown = 0;
    for (const Part& part : parts) {
      if (!part.record.known && !part.water) unknown += part.percent;
      double estimate = 0;
      double cut_off = 0.1;
      const bool only_two = part.record.classes.find("Acute Tox. 2") != std::string::npos &&
                            part.record.classes.find("Acute Tox. 1") == std::string::npos;
      if (says(part, way.worst)) {
        estimate = only_two ? way.as2 : way.as1;
      } else if (says(part, way.second)) {
        estimate = way.as3;
      } else if (says(part, way.third)) {
        estimate = way.as4;
        cut_off = 1;
      } else {
        continue;
      }
      if (!full(part.percent, cut_off)) continue;
      sum += part.percent / own_estimate(part, way.name, way.tail).value_or(estimate);
    }
    if (!(sum > 0)) continue;
    const double mixture = (unknown > 10 ? 100 - unknown : 100) / sum;
    if (mixture <= way.to2 * (1 + 1e-9))
      label.insert(way.worst);
    else if (mixture <= way.to3 * (1 + 1e-9))
      label.insert(way.second);
    else if (mixture <= way.to4 * (1 + 1e-9))
      label.insert(way.third);
  }
}

// What no rule thins out stays.
inline void the_rest(const Parts& parts, std::set<std::string>& label) {
  static const std::regex ruled("H22[456].*|H3[0-9][0-9].*|H4[0-9][0-9].*|EUH3.*|EUH4[345].*");
  for (const Part& part : parts)
    for (const std::string& code : part.record.says)
      if (!std::regex_match(code, ruled)) label.insert(code);
}

/// Every statement but that of the flammable class.
inline std::set<std::string> statements_of(const Parts& parts) {
  std::set<std::string> label;
  skin_and_eyes(parts, label);
  single_ones(parts, label);
  sums(parts, label);
  water_life(parts, label);
  poison(parts, label);
  the_rest(parts, label);
  return label;
}

/// Table 2.6.1, with 5 C on the cautious side for a figure that was reckoned.
inline std::string flame(double flash_C, std::optional<double> boils_C, bool reckoned) {
  if (reckoned) flash_C -= 5;
  if (flash_C > 60) return {};
  if (flash_C >= 23) return "H226";
  return !boils_C || *boils_C <= 35 ? "H224" : "H225";
}

inline bool any(const std::set<std::string>& label, const char* form) {
  const std::regex wanted(form);
  return std::any_of(label.begin(), label.end(),
                     [&](const std::string& code) { return std::regex_match(code, wanted); });
}

inline std::string signal_word(const std::set<std::string>& label) {
  if (any(label, "H22[45]|H3[013][01]|H340|H350.*|H304|H314|H318|H334|H360.*|H37[02]|EUH[34][38]0|EUH44.|EUH45."))
    return "Danger";
  if (any(label, "H226|H290|H3[013]2|H31[579]|H33[56]|H3[457]1|H351|H361.*|H373|H4[012]0|EUH[34][38]1"))
    return "Warning";
  return "";
}

inline std::set<std::string> pictograms(const std::set<std::string>& label) {
  std::set<std::string> signs;
  if (any(label, "H22[456]")) signs.insert("GHS02");
  if (any(label, "H290|H314|H318")) signs.insert("GHS05");
  if (any(label, "H3[013][01]")) signs.insert("GHS06");
  if (any(label, "H304|H334|H3[45][01].*|H36[01].*|H37[0123]")) signs.insert("GHS08");
  if (any(label, "H400|H41[01]")) signs.insert("GHS09");
  const bool asthma = label.count("H334") == 1;
  bool exclamation = any(label, "H3[013]2|H33[56]|H420");
  if (label.count("H317") == 1 && !asthma) exclamation = true;
  if (any(label, "H315|H319") && !asthma && signs.count("GHS05") == 0) exclamation = true;
  if (exclamation && signs.count("GHS06") == 0) signs.insert("GHS07");
  return signs;
}

}  // namespace plain
