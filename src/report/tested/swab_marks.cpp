#include "report/tested/swab_marks.hpp"

#include "report/draw/palette.hpp"
#include "report/draw/plot.hpp"

#include <algorithm>

namespace gentlest {

namespace {

constexpr double radius = 4.5;
constexpr double cross_arm = 7;
constexpr double legend_row = 18;

}  // namespace

TestLook look_of(const SwabTest& test) {
  return {test.place, test.moved, test.harmed, false};
}

void draw_test(Drawing& drawing, Xy at, const TestLook& look) {
  const std::string fill = look.moved && !look.is_withdrawn ? ink : "#fff";
  const Pen pen = look.is_withdrawn ? Pen{pale_ink, 1, "1 2", fill} : Pen{ink, 1.6, {}, fill};
  if (look.place == Place::edge)
    add_rectangle(drawing, {at.x - radius, at.y - radius}, 2 * radius, 2 * radius, pen);
  else
    add_circle(drawing, at, radius, pen);
  if (!look.harmed || look.is_withdrawn) return;
  for (const double side : {-1.0, 1.0}) {
    const Xy from{at.x - cross_arm, at.y - side * cross_arm};
    const Xy to{at.x + cross_arm, at.y + side * cross_arm};
    add_line(drawing, from, to, {"#fff", 4});
    add_line(drawing, from, to, {limit_ink, 2});
  }
}

std::string outcome_word(const TestLook& look) {
  if (look.is_withdrawn) return "withdrawn";
  return look.harmed ? "harm" : look.moved ? "moved" : "not moved";
}

std::string look_words(const TestLook& look) {
  const std::string where = look.place == Place::edge ? "at the edge: " : "on the picture: ";
  if (look.is_withdrawn) return where + "withdrawn";
  return where + (look.moved ? "the layer moved as wanted" : "the layer did not move as wanted") +
         (look.harmed ? ", the original reacted" : "");
}

double draw_test_legend(Drawing& drawing, Xy corner, double width, const std::vector<TestLook>& looks) {
  std::vector<TestLook> shown;
  for (const TestLook& look : looks)
    if (std::find(shown.begin(), shown.end(), look) == shown.end()) shown.push_back(look);
  double y = corner.y + 10;
  double x = corner.x + cross_arm + 1;
  for (const TestLook& look : shown) {
    const std::string words = look_words(look);
    const double wide = text_width(words, small_text) + 34;
    if (x > corner.x + cross_arm + 1 && x + wide > corner.x + width) {
      x = corner.x + cross_arm + 1;
      y += legend_row;
    }
    draw_test(drawing, {x, y - 4}, look);
    add_text(drawing, {x + 13, y}, words, {small_text});
    x += wide;
  }
  return shown.empty() ? 0 : y - corner.y + 8;
}

}  // namespace gentlest
