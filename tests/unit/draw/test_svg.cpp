// The drawing layer: nothing typed breaks a picture, texts keep their room, names do not cover each other.
#include "report/draw/label_placement.hpp"
#include "report/draw/palette.hpp"
#include "report/draw/plot.hpp"
#include "report/draw/svg.hpp"

#include <rapidcheck.h>
#include <catch2/catch.hpp>
#include "near.hpp"

#include <cmath>
#include <set>

using namespace gentlest;

namespace {

std::string random_text() {
  const auto pieces = *rc::gen::container<std::vector<std::string>>(
      rc::gen::element<std::string>("a", "W", " ", "isooctane", "<", "&", "長", "ж", "é", "ن", "\xFF", "%"));
  std::string text;
  for (const std::string& piece : pieces) text += piece;
  return text;
}

double coordinate() {
  return *rc::gen::inRange(0, 4000) / 10.0;
}

double relative_luminance(const std::string& colour) {
  const auto channel = [&](std::size_t at) {
    const double value = std::stoi(colour.substr(at, 2), nullptr, 16) / 255.0;
    return value <= 0.03928 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
}

double contrast_on_white(const std::string& colour) {
  return 1.05 / (relative_luminance(colour) + 0.05);
}

}  // namespace

TEST_CASE("typed text is escaped for content and attributes") {
  CHECK(xml_escape("<script>alert('x') & \"y\"</script>") ==
        "&lt;script&gt;alert(&#39;x&#39;) &amp; &quot;y&quot;&lt;/script&gt;");
  CHECK(xml_escape(std::string("a\x01\x1B\x7F", 4) + "b") == "a   b");
  CHECK(xml_escape("長い名前") == "長い名前");
}

TEST_CASE("coordinates are short and never minus zero") {
  CHECK(svg_number(12) == "12");
  CHECK(svg_number(12.5) == "12.5");
  CHECK(svg_number(-0.001) == "0");
  CHECK(svg_number(0.126) == "0.13");
  CHECK(svg_number(100) == "100");
}

TEST_CASE("the width of a text is the sum of its signs") {
  // Advance widths of DejaVu Sans: i 278, W 989, thousandths of the size.
  CHECK(text_width("iW", 10) == Approx(12.67));
  CHECK(text_width("iW", 20) == Approx(2 * text_width("iW", 10)));
  CHECK(text_width("W", 10, true) > text_width("W", 10));
  CHECK(text_width("", 10) == 0);
  CHECK(text_width("長", 10) >= 10);
  CHECK(text_width("e\u0301", 10) == text_width("e", 10));
}

TEST_CASE("a name in another script is kept apart from what follows, without taking room") {
  CHECK(isolated("isooctane") == "isooctane");
  CHECK(isolated("مذيب") == "\u2068مذيب\u2069");
  CHECK(text_width(isolated("مذيب"), 10) == text_width("مذيب", 10));
}

TEST_CASE("shortened and broken texts keep to their width") {
  rc::check("shortened", [] {
    const std::string text = random_text();
    const double width = 20 + coordinate();
    const std::string cut = shortened(text, 11, width);
    RC_ASSERT(text_width(cut, 11) <= width + 1e-9);
    RC_ASSERT(text_width(text, 11) > width || cut == text);
  });
  rc::check("lines", [] {
    const std::string text = random_text();
    const double width = 20 + coordinate();
    std::string back;
    for (const std::string& line : text_lines(text, 11, width)) {
      RC_ASSERT(text_width(line, 11) <= width + 1e-9);
      back += line;
    }
    std::string expected = text;
    for (std::string* words : {&back, &expected})
      words->erase(std::remove(words->begin(), words->end(), ' '), words->end());
    RC_ASSERT(back == expected);
  });
}

TEST_CASE("a picture holds typed text only escaped") {
  Drawing drawing{100, 100};
  add_text(drawing, {1, 2}, "</text><script>", {});
  const std::string svg = inline_svg(drawing, {"\"><script>", "\"><script>", "\"><script>"});
  CHECK(svg.find("<script") == std::string::npos);
  CHECK(svg.find("&lt;script&gt;") != std::string::npos);
}

TEST_CASE("a line crosses a box only where it enters it") {
  const Box box{10, 10, 20, 20};
  CHECK(crosses({0, 0}, {30, 30}, box));
  CHECK(crosses({15, 0}, {15, 30}, box));
  CHECK(crosses({12, 12}, {14, 14}, box));
  CHECK_FALSE(crosses({0, 0}, {9, 9}, box));
  CHECK_FALSE(crosses({0, 10}, {30, 10}, box));
  CHECK_FALSE(crosses({0, 25}, {30, 25}, box));
}

TEST_CASE("names never cover each other, an obstacle, a line or the edge") {
  rc::check([] {
    const Box bounds{0, 0, 400, 400};
    const auto count = *rc::gen::inRange<std::size_t>(0, 40);
    std::vector<LabelWish> wishes;
    std::vector<Box> obstacles;
    for (std::size_t i = 0; i < count; ++i) {
      wishes.push_back({{coordinate(), coordinate()}, 10 + coordinate() / 5, 12, 5});
      obstacles.push_back(box_around(wishes.back().point, 4));
    }
    const auto places = place_labels(wishes, obstacles, bounds);
    RC_ASSERT(places.size() == count);
    for (std::size_t i = 0; i < count; ++i) {
      if (!places[i]) continue;
      const Box& box = places[i]->box;
      RC_ASSERT(box.left >= 0 && box.top >= 0 && box.right <= 400 && box.bottom <= 400);
      for (const Box& obstacle : obstacles) RC_ASSERT_FALSE(overlap(box, obstacle));
      for (std::size_t k = 0; k < count; ++k) {
        if (k == i || !places[k]) continue;
        RC_ASSERT_FALSE(overlap(box, places[k]->box));
        if (places[k]->leader_end) RC_ASSERT_FALSE(crosses(wishes[k].point, *places[k]->leader_end, box));
      }
    }
  });
}

TEST_CASE("a name finds its place beside its point, and moves one that blocks the only other") {
  const auto alone = place_labels({{{100, 100}, 40, 12, 5}}, {}, {0, 0, 400, 400});
  REQUIRE(alone[0]);
  CHECK(alone[0]->box.left == Approx(105));
  CHECK_FALSE(alone[0]->leader_end);
  // The bounds leave room to the right or left of the first point, to the left of the second only.
  const std::vector<LabelWish> two = {{{100, 50}, 40, 12, 5}, {{150, 50}, 40, 12, 5}};
  const auto places = place_labels(two, {}, {50, 43, 152, 57});
  REQUIRE(places[0]);
  REQUIRE(places[1]);
  CHECK(places[0]->box.right < 100);
  CHECK(places[1]->box.right < 150);
  CHECK_FALSE(place_labels({{{5, 5}, 40, 12, 5}}, {}, {0, 0, 10, 10})[0]);
}

TEST_CASE("layers are told apart without colour, and every colour can be read on white") {
  std::set<std::pair<std::string, int>> looks = {{target_look.dash, static_cast<int>(target_look.mark)}};
  CHECK(contrast_on_white(target_look.colour) >= 4.5);
  for (const LayerLook& look : kept_looks) {
    CHECK(contrast_on_white(look.colour) >= 4.5);
    CHECK(looks.insert({look.dash, static_cast<int>(look.mark)}).second);
  }
  for (const char* colour : {ink, pale_ink, limit_ink}) CHECK(contrast_on_white(colour) >= 4.5);
  CHECK(contrast_on_white("#767676") == test::near(4.54, 0.01));  // the published border case of WCAG 2
}

TEST_CASE("ticks are round") {
  CHECK(tick_step(100, 5) == Approx(20));
  CHECK(tick_step(7, 6) == Approx(2));
  CHECK(tick_step(0.3, 6) == Approx(0.05));
}

TEST_CASE("values stand where the axes say") {
  const Frame frame{{50, 10}, 200, 100, {"x", 0, 10, 2, 0}, {"y", -5, 5, 5, 0}};
  CHECK(place_in(frame, 0, 5) == Xy{50, 10});
  CHECK(place_in(frame, 10, -5) == Xy{250, 110});
  CHECK(place_in(frame, 5, 0) == Xy{150, 60});
}
