// Every type of the project has a name of its own: two types of one name in namespace gentlest link without a word, and
// the program then destroys one as if it were the other (it happened).
#include <catch2/catch.hpp>

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

bool is_name(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_';
}

// Code as names and signs, without comments, directives and what stands in quotes.
std::vector<std::string> tokens_of(const std::string& code) {
  std::vector<std::string> tokens;
  for (std::size_t at = 0; at < code.size(); ++at) {
    const char c = code[at];
    if (code.compare(at, 2, "//") == 0 || (c == '#' && (at == 0 || code[at - 1] == '\n'))) {
      at = std::min(code.find('\n', at), code.size());
    } else if (c == '"' || (c == '\'' && (at == 0 || !is_name(code[at - 1])))) {
      for (++at; at < code.size() && code[at] != c; ++at)
        if (code[at] == '\\') ++at;
    } else if (is_name(c)) {
      const std::size_t from = at;
      while (at + 1 < code.size() && is_name(code[at + 1])) ++at;
      tokens.push_back(code.substr(from, at + 1 - from));
    } else if (c != ' ' && c != '\n') {
      tokens.emplace_back(1, c);
    }
  }
  return tokens;
}

// Types defined in `namespace gentlest` itself: not within another type, a function or a namespace without a name.
std::vector<std::string> types_in(const std::string& code) {
  std::vector<std::string> types;
  std::vector<bool> is_ours;  // for each open brace
  std::string type;           // named, its brace not yet seen
  bool opens_ours = false;
  const std::vector<std::string> tokens = tokens_of(code);
  for (std::size_t i = 0; i + 1 < tokens.size(); ++i) {
    const std::string& token = tokens[i];
    const bool outside = is_ours.size() == 1 && is_ours.front();
    if (token == "namespace") {
      opens_ours = tokens[i + 1] == "gentlest" && is_ours.empty();
    } else if (token == "struct" || token == "class" || token == "enum") {
      const std::size_t name = i + (tokens[i + 1] == "class" ? 2 : 1);
      // "struct Outer::Inner {" is a type within another.
      const bool is_within = name + 2 < tokens.size() && tokens[name + 1] == ":" && tokens[name + 2] == ":";
      if (outside && name < tokens.size() && !is_within) type = tokens[name];
      i = name;
    } else if (token == ";" || token == "(" || token == ">") {
      type.clear();
    } else if (token == "{") {
      if (!type.empty()) types.push_back(type);
      type.clear();
      is_ours.push_back(opens_ours);
      opens_ours = false;
    } else if (token == "}" && !is_ours.empty()) {
      is_ours.pop_back();
    }
  }
  return types;
}

}  // namespace

TEST_CASE("every type has a name of its own") {
  std::map<std::string, std::set<std::string>> homes;
  for (const char* wing : {"include/gentlest", "src"})
    for (const auto& entry : fs::recursive_directory_iterator(fs::path(GENTLEST_SOURCE_DIR) / wing)) {
      const fs::path& file = entry.path();
      if (file.extension() != ".cpp" && file.extension() != ".hpp") continue;
      std::ifstream in(file);
      for (const std::string& type :
           types_in(std::string((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>())))
        homes[type].insert(file.string());
    }
  CHECK(homes.size() > 200);
  for (const auto& [type, files] : homes) {
    INFO(type);
    CHECK(files.size() == 1);
  }
}

TEST_CASE("what counts as a type of the project") {
  using Names = std::vector<std::string>;
  CHECK(types_in(
            "namespace gentlest {\nstruct A { int x; struct In {}; };\nenum class B : int { one };\nclass C;\n}\n") ==
        Names{"A", "B"});
  CHECK(types_in("namespace gentlest {\nnamespace {\nstruct A {};\n}\nstruct B final : A {};\n}\n") == Names{"B"});
  CHECK(types_in("namespace gentlest {\ntemplate <class T>\nvoid f() { struct A {}; }\n// struct B {\n}\n").empty());
}
