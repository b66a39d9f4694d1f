// A small drawing layer of our own: shapes and text as SVG. Lengths are in units of the drawing; x to the right, y
// down. Everything a user typed passes through xml_escape here, so a chart or a sheet cannot be broken by a name.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// Text fit for the content and the quoted attributes of HTML and SVG: the five special characters as entities, control
/// characters and bytes that XML forbids as spaces.
std::string xml_escape(std::string_view text);

struct Xy {
  double x = 0;
  double y = 0;
  bool operator==(const Xy&) const = default;
};

/// How a shape is drawn. Colours come from palette.hpp, so that they stay apart in grey and for colour-blind eyes.
struct Pen {
  std::string stroke = "none";
  double width = 1;
  std::string dash = {};  ///< e.g. "6 3"; empty: solid
  std::string fill = "none";
  double fill_opacity = 1;
};

enum class Anchor { start, middle, end };

struct TextStyle {
  double size = 12;
  Anchor anchor = Anchor::start;
  bool bold = false;
  std::string fill = "#000";
  double turn_degrees = 0;  ///< clockwise, about the anchor
  bool halo = false;        ///< a white rim, for a text that stands on lines
};

/// Marks for points; each can be told from the others without colour.
enum class Mark { disc, ring, square, diamond, triangle, cross, box, funnel, plus, bow };

/// A picture under construction: SVG elements in the order of drawing.
struct Drawing {
  double width = 0;
  double height = 0;
  std::string body = {};
};

void add_line(Drawing& drawing, Xy from, Xy to, const Pen& pen);
/// Open, or closed and filled. Fewer than two points draw nothing.
void add_path(Drawing& drawing, const std::vector<Xy>& points, const Pen& pen, bool closed = false);
void add_circle(Drawing& drawing, Xy centre, double radius, const Pen& pen);
void add_rectangle(Drawing& drawing, Xy corner, double width, double height, const Pen& pen);
void add_mark(Drawing& drawing, Mark mark, Xy at, double size, const std::string& colour);
void add_text(Drawing& drawing, Xy at, std::string_view text, const TextStyle& style);

/// Patterns by which areas are told apart without colour, also where they lie on each other.
enum class Hatch { none, rising, falling, dots, level, upright, crossed };

/// Defines a pattern and gives what a pen fills with it. `id` must be unique on the page.
std::string add_hatch(Drawing& drawing, const std::string& id, Hatch hatch, const std::string& colour);

/// What a pen fills with to use the pattern of that id.
std::string pattern_fill(const std::string& id);

/// What a mark stands for, for whoever points at it: data-KEY="value" for each key.
struct MarkKey {
  const char* key;  ///< "rung", "layer", "bottle", "test"
  std::string value;
};

/// What is drawn between the two calls is one mark; `words` appear where a pointer rests on it.
void begin_mark(Drawing& drawing, const std::vector<MarkKey>& keys, std::string_view words);
void end_mark(Drawing& drawing);

/// Everything drawn between the two calls is cut off at the polygon. `id` must be unique on the page.
void begin_clip(Drawing& drawing, const std::string& id, const std::vector<Xy>& polygon);
void end_clip(Drawing& drawing);

/// Width of a text in the widest of the fonts we ask for (DejaVu Sans; Arial and its kin are narrower). Signs outside
/// ASCII are taken at the width of the widest letters of their script. An upper bound for common scripts.
double text_width(std::string_view text, double size, bool bold = false);

/// The text, or its beginning and an ellipsis where it is wider than `width`.
std::string shortened(std::string_view text, double size, double width, bool bold = false);

/// The text between marks that keep its writing direction from what follows: a share behind a name in a right-to-left
/// script would else jump to its other side. Unchanged when it is plain ASCII.
std::string isolated(std::string_view text);

/// Lines of at most `width`, broken at spaces; inside a word only where the word alone is wider.
std::vector<std::string> text_lines(std::string_view text, double size, double width, bool bold = false);

/// What is read aloud in a picture's place. `id` must be unique on the page.
struct PictureWords {
  std::string id;
  std::string title;
  std::string description;   ///< what the picture shows, with its numbers
  bool parts_speak = false;  ///< its groups and texts are read one by one, as on a page of labels; else it is one image
  bool is_file = false;  ///< a file of its own: as wide as its window and as high as it then is, never shrunk to fit
};

/// The drawing as an element for a page, with title and description.
std::string inline_svg(const Drawing& drawing, const PictureWords& words);

/// What is drawn between the two calls is one thing with a name and a description of its own, e.g. a label on a page.
void begin_group(Drawing& drawing, const std::string& id, std::string_view title, std::string_view description);
void end_group(Drawing& drawing);

/// One coordinate or length, two decimals at most.
std::string svg_number(double value);

/// Fonts asked for, widest last. Quoted for use inside a double-quoted attribute.
inline constexpr const char* svg_fonts = "Arial, Helvetica, 'Liberation Sans', 'DejaVu Sans', sans-serif";

}  // namespace gentlest
