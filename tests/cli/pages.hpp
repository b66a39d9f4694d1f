// Reads what the program wrote as HTML or SVG, as far as the tests need it.
#pragma once

#include "program.hpp"

#include <algorithm>
#include <regex>

namespace gentlest::test {

inline std::string unescaped(std::string text) {
  for (const auto& [entity, sign] : {std::pair<const char*, const char*>{"&lt;", "<"},
                                     {"&gt;", ">"},
                                     {"&quot;", "\""},
                                     {"&#39;", "'"},
                                     {"&amp;", "&"}})
    for (std::size_t at = text.find(entity); at != std::string::npos; at = text.find(entity, at + 1))
      text.replace(at, std::string(entity).size(), sign);
  return text;
}

/// The page without what stands between two marks, marks included.
inline std::string without(std::string page, const std::string& from, const std::string& to) {
  for (std::size_t at = page.find(from); at != std::string::npos; at = page.find(from, at)) {
    const std::size_t end = page.find(to, at);
    if (end == std::string::npos) throw std::runtime_error("no end: " + to);
    page.erase(at, end + to.size() - at);
  }
  return page;
}

/// What a person reads on a page, one line a paragraph, cell rows as "a | b". What is drawn in charts is left to their
/// title and description; what a pointer reads on a mark is left out.
inline std::string page_words(const std::string& html) {
  std::string page = without(without(html, "<style>", "</style>"), "<svg class=\"definitions\"", "</svg>");
  for (std::size_t at = page.find("<figure"); at != std::string::npos; at = page.find("<figure", at + 1)) {
    const std::size_t end = page.find("</figure>", at);
    const std::string figure = without(without(page.substr(at, end - at), "<text", "</text>"), "<title>", "</title>");
    page.replace(at, end - at, figure);
  }
  static const std::regex cell("</t[dh]><t[dh][^>]*>");
  page = std::regex_replace(page, cell, " | ");
  static const std::regex line(
      "<(/?)(p|li|tr|h[1-6]|div|title|desc|text|figcaption|pre|g|svg|head|body|section)[^>]*>");
  page = std::regex_replace(page, line, "\n");
  static const std::regex tag("<[^>]*>");
  page = unescaped(std::regex_replace(page, tag, ""));
  std::string words;
  for (const std::string& one : lines_of(page))
    if (const std::string flat = unwrapped(one); !flat.empty()) words += flat + "\n";
  return words;
}

/// One picture or group of a page and what is read aloud for it.
struct Spoken {
  std::string id;
  std::string title;
  std::string description;
};

/// Every element that names a title and a description of its own.
inline std::vector<Spoken> spoken_on(const std::string& page) {
  static const std::regex pattern(
      "aria-labelledby=\"([^\"]+)-title\" aria-describedby=\"\\1-desc\"[^>]*>\\s*<title "
      "id=\"\\1-title\">([^<]*)</title>\\s*<desc id=\"\\1-desc\">([^<]*)</desc>");
  std::vector<Spoken> all;
  for (std::sregex_iterator at(page.begin(), page.end(), pattern), end; at != end; ++at)
    all.push_back({(*at)[1], unescaped((*at)[2]), unescaped((*at)[3])});
  return all;
}

inline std::size_t count_of(const std::string& text, const std::string& piece) {
  std::size_t count = 0;
  for (std::size_t at = text.find(piece); at != std::string::npos; at = text.find(piece, at + 1)) ++count;
  return count;
}

}  // namespace gentlest::test
