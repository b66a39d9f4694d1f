#include "report/draw/pictogram.hpp"

#include "report/draw/svg.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

struct Symbol {
  const char* code;
  const char* words;
  const char* shapes;  ///< within a square of 100 units
};

constexpr const char* frame = R"~(<path d="M50 4L96 50L50 96L4 50Z" fill="#fff" stroke="#c00000" stroke-width="6"/>)~";

const std::vector<Symbol>& symbols() {
  static const std::vector<Symbol> all = {
      {"GHS01", "exploding bomb",
       R"~(<circle cx="47" cy="60" r="13"/><path d="M52 46L47 28L56 38L62 24L65 38L77 32L69 44L82 48L69 51L74 62L62 54Z"/>
<path d="M27 45l7 3-3 5zM26 62l7 0-2 6zM36 77l5-4 1 7zM60 76l2-6 5 4z"/>)~"},
      {"GHS02", "flame",
       R"~(<path d="M50 18C54 30 68 36 68 52C68 63 61 70 50 70C39 70 32 63 32 52C32 44 38 40 39 32C44 35 45 40 45 44C50 38 52 28 50 18Z"/>
<path d="M50 66C44 66 41 61 43 55C45 58 48 58 49 51C54 55 58 58 56 62C55 65 53 66 50 66Z" fill="#fff"/><path d="M30 74h40v5h-40z"/>)~"},
      {"GHS03", "flame over circle",
       R"~(<path d="M50 15C53 25 63 29 62 41C62 45 60 48 57 50C55 48 53 47 50 47C47 47 45 48 43 50C40 48 38 45 38 41C38 35 43 32 44 26C47 28 48 31 48 34C50 30 51 22 50 15Z"/>
<circle cx="50" cy="60" r="10" fill="none" stroke="#000" stroke-width="5"/><path d="M32 76h36v5h-36z"/>)~"},
      {"GHS04", "gas cylinder",
       R"~(<g transform="rotate(-35 50 50)"><path d="M24 43h46c6 0 8 3 10 4h6v6h-6c-2 1-4 4-10 4h-46c-4-3-4-11 0-14z"/></g>)~"},
      {"GHS05", "corrosion",
       R"~(<g transform="rotate(-28 34 36)"><path d="M20 31h26v8h-26z"/></g><g transform="rotate(28 66 36)"><path d="M54 31h26v8h-26z"/></g>
<path d="M43 44l3 6h-6zM42 54l3 6h-6zM57 44l3 6h-6zM58 54l3 6h-6z"/>
<path d="M22 66h16l4 4 4-4h4v8h-28zM53 72c4-8 10-10 22-8v10h-18zM58 66l6-2-2 6z"/>)~"},
      {"GHS06", "skull and crossbones",
       R"~(<path d="M28 66L74 80M72 66L26 80" stroke="#000" stroke-width="6" stroke-linecap="round"/>
<path d="M50 18C62 18 69 27 69 38C69 46 65 49 62 52V62H38V52C35 49 31 46 31 38C31 27 38 18 50 18Z"/>
<circle cx="42" cy="40" r="5.5" fill="#fff"/><circle cx="58" cy="40" r="5.5" fill="#fff"/><path d="M50 47l3 6h-6z" fill="#fff"/>
<path d="M45 57v5M50 57v5M55 57v5" stroke="#fff" stroke-width="1.6"/>)~"},
      {"GHS07", "exclamation mark", R"~(<path d="M43 20h14l-3 38h-8z"/><circle cx="50" cy="70" r="7"/>)~"},
      {"GHS08", "damage within the body",
       R"~(<circle cx="50" cy="24" r="8"/><path d="M34 36C40 32 60 32 66 36L72 62H63V78H37V62H28Z"/>
<path d="M50 39L53 48L62 45L57 53L64 59L54 59L53 69L49 61L41 66L44 57L36 52L46 50Z" fill="#fff"/>)~"},
      {"GHS09", "dead tree and fish",
       R"~(<path d="M36 72V34M36 50L24 38M36 46L47 32M36 40L30 28" stroke="#000" stroke-width="4" fill="none" stroke-linecap="round"/>
<path d="M18 72h46v4h-46z"/><path d="M50 64C56 56 68 56 74 63L82 57V71L74 65C68 72 56 72 50 64Z"/><circle cx="57" cy="63" r="1.8" fill="#fff"/>)~"},
  };
  return all;
}

const Symbol* find(const std::string& code) {
  const std::vector<Symbol>& all = symbols();
  const auto at = std::find_if(all.begin(), all.end(), [&](const Symbol& symbol) { return code == symbol.code; });
  return at == all.end() ? nullptr : &*at;
}

}  // namespace

std::string pictogram_words(const std::string& code) {
  const Symbol* symbol = find(code);
  return symbol ? symbol->words : "";
}

std::string pictogram_definitions(const std::vector<std::string>& codes) {
  std::string text = "<svg class=\"definitions\" width=\"0\" height=\"0\" aria-hidden=\"true\">\n";
  for (const std::string& code : codes)
    if (const Symbol* symbol = find(code))
      text += fmt::format("<symbol id=\"{}\" viewBox=\"0 0 100 100\">{}{}</symbol>\n", code, frame, symbol->shapes);
  return text + "</svg>\n";
}

std::string pictogram(const std::string& code) {
  const Symbol* symbol = find(code);
  if (!symbol) return xml_escape(code);
  return fmt::format(
      "<svg class=\"pictogram\" viewBox=\"0 0 100 100\" role=\"img\" aria-label=\"{0}, {1}\"><title>{0}, {1}</title>"
      "<desc>hazard pictogram, a red diamond with a black symbol: {1}</desc><use href=\"#{0}\"/></svg>",
      symbol->code, symbol->words);
}

const std::vector<std::string>& pictogram_codes() {
  static const std::vector<std::string> codes = {"GHS01", "GHS02", "GHS03", "GHS04", "GHS05",
                                                 "GHS06", "GHS07", "GHS08", "GHS09"};
  return codes;
}

}  // namespace gentlest
