#include "io/log_names.hpp"

#include "gentlest/base/diagnostic.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <string_view>

namespace gentlest {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view log_start = "{\"gentlest_log\":";
constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
constexpr std::size_t most_files = 2000;

std::string without_digits(std::string text) {
  text.erase(std::remove_if(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; }), text.end());
  return text;
}

}  // namespace

bool is_log(const std::string& path) {
  std::error_code error;
  if (!fs::is_regular_file(path, error)) return false;  // reading a pipe would wait
  std::ifstream in(path, std::ios::binary);
  std::string start(byte_order_mark.size() + log_start.size(), '\0');
  in.read(start.data(), static_cast<std::streamsize>(start.size()));
  std::string_view seen(start);
  if (seen.substr(0, byte_order_mark.size()) == byte_order_mark) seen.remove_prefix(byte_order_mark.size());
  return seen.substr(0, log_start.size()) == log_start;
}

std::vector<std::string> files_beside(const std::string& path) {
  const fs::path folder = fs::path(path).parent_path();
  std::vector<std::string> names;
  std::error_code error;
  fs::directory_iterator entry(folder.empty() ? fs::path(".") : folder, error);
  for (; !error && entry != fs::directory_iterator() && names.size() < most_files; entry.increment(error)) {
    std::error_code unknown;
    if (entry->is_regular_file(unknown)) names.push_back((folder / entry->path().filename()).string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

std::string nearest_file(const std::string& path, const std::vector<std::string>& files) {
  const fs::path typed(path);
  const auto nearest = [&](bool of_this_ending, const std::string& wanted, auto part_of) {
    std::vector<std::string> parts;
    std::vector<std::string> names;
    for (const std::string& file : files) {
      if ((fs::path(file).extension() == typed.extension()) != of_this_ending) continue;
      parts.push_back(part_of(fs::path(file)));
      names.push_back(file);
    }
    const std::string near = nearest_name(wanted, parts);
    const auto found = std::find(parts.begin(), parts.end(), near);
    return near.empty() ? std::string() : names[static_cast<std::size_t>(found - parts.begin())];
  };
  // An ending that both share would make any two short names alike.
  const std::string near =
      nearest(true, typed.stem().string(), [](const fs::path& file) { return file.stem().string(); });
  if (!near.empty()) return near;
  return nearest(false, typed.filename().string(), [](const fs::path& file) { return file.filename().string(); });
}

std::string log_meant_by(const std::string& path) {
  std::vector<std::string> logs;
  for (const std::string& file : files_beside(path))
    if (is_log(file) && without_digits(file) != without_digits(path)) logs.push_back(file);
  return nearest_file(path, logs);
}

}  // namespace gentlest
