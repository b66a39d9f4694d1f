#include "report/form/short_screen.hpp"

#include "report/form/table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace gentlest {

std::string more_in_full(std::size_t count) {
  return fmt::format("{} more in --full", count);
}

namespace {

std::size_t lines_in(const std::string& text) {
  return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
}

std::string text_of(const ScreenPart& part, std::size_t shown, const Style& style) {
  std::string text = part.head;
  for (std::size_t i = 0; i < shown; ++i) text += part.items[i];
  if (shown < part.items.size()) text += bullet(more_in_full(part.items.size() - shown), style);
  return text;
}

std::string text_of(const std::vector<ScreenPart>& parts, const std::vector<std::size_t>& shown, const Style& style) {
  std::string text;
  for (std::size_t i = 0; i < parts.size(); ++i) text += text_of(parts[i], shown[i], style);
  return text;
}

// Leaving out a single item of one line saves nothing: the line that says so stands in its place. So the next one goes
// too, in the next round.
bool leave_one_out(const std::vector<ScreenPart>& parts, std::vector<std::size_t>& shown) {
  for (std::size_t i = parts.size(); i-- > 0;)
    if (shown[i] > std::min(parts[i].least, parts[i].items.size())) {
      --shown[i];
      return true;
    }
  return false;
}

}  // namespace

bool fits_screen(const std::string& text) {
  return lines_in(text) <= screen_lines;
}

ScreenPart must_stand(std::string text) {
  return {std::move(text), {}, 0};
}

ScreenPart screen_list(const std::string& title, const std::vector<std::string>& items, std::size_t least,
                       const Style& style) {
  ScreenPart part;
  part.least = least;
  for (const std::string& item : items) part.items.push_back(bullet(item, style));
  if (!items.empty() && !title.empty()) part.head = heading(title, style).substr(1);
  return part;
}

std::string screen_of(std::vector<ScreenPart> parts, const Style& style) {
  std::vector<std::size_t> shown;
  for (const ScreenPart& part : parts) shown.push_back(part.items.size());
  std::string text = text_of(parts, shown, style);
  while (!fits_screen(text) && leave_one_out(parts, shown)) text = text_of(parts, shown, style);
  return text;
}

std::string whole_of(const std::vector<ScreenPart>& parts) {
  std::string text;
  for (const ScreenPart& part : parts) {
    text += part.head;
    for (const std::string& item : part.items) text += item;
  }
  return text;
}

}  // namespace gentlest
