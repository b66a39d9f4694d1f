#include "report/draw/svg.hpp"

#include "report/form/format.hpp"

#include <fmt/format.h>

namespace gentlest {

namespace {

std::string pen_attributes(const Pen& pen) {
  std::string text = fmt::format(" fill=\"{}\"", pen.fill);
  if (pen.fill != "none" && pen.fill_opacity < 1) text += " fill-opacity=\"" + svg_number(pen.fill_opacity) + "\"";
  if (pen.stroke == "none") return text;
  text += fmt::format(" stroke=\"{}\" stroke-width=\"{}\"", pen.stroke, svg_number(pen.width));
  if (!pen.dash.empty()) text += fmt::format(" stroke-dasharray=\"{}\"", pen.dash);
  return text;
}

std::string path_data(const std::vector<Xy>& points, bool closed) {
  std::string data;
  for (const Xy& point : points)
    data += fmt::format("{}{} {}", data.empty() ? "M" : "L", svg_number(point.x), svg_number(point.y));
  return closed ? data + "Z" : data;
}

// Title and description under ids of their own, for readers that do not look inside an element for them.
std::string spoken_by(const std::string& id) {
  return fmt::format(" aria-labelledby=\"{0}-title\" aria-describedby=\"{0}-desc\"", xml_escape(id));
}

std::string spoken_words(const std::string& id, std::string_view title, std::string_view description) {
  return fmt::format("<title id=\"{0}-title\">{1}</title>\n<desc id=\"{0}-desc\">{2}</desc>\n", xml_escape(id),
                     xml_escape(title), xml_escape(description));
}

const char* anchor_word(Anchor anchor) {
  return anchor == Anchor::start ? "start" : anchor == Anchor::middle ? "middle" : "end";
}

}  // namespace

std::string svg_number(double value) {
  std::string text = fixed(value, 2);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string xml_escape(std::string_view text) {
  std::string escaped;
  for (const char c : text) {
    switch (c) {
      case '&':
        escaped += "&amp;";
        break;
      case '<':
        escaped += "&lt;";
        break;
      case '>':
        escaped += "&gt;";
        break;
      case '"':
        escaped += "&quot;";
        break;
      case '\'':
        escaped += "&#39;";
        break;
      case '\n':
        escaped += c;
        break;
      default:
        escaped += static_cast<unsigned char>(c) < 0x20 || c == 0x7F ? ' ' : c;
    }
  }
  return escaped;
}

void add_line(Drawing& drawing, Xy from, Xy to, const Pen& pen) {
  drawing.body += fmt::format("<path d=\"{}\"{}/>\n", path_data({from, to}, false), pen_attributes(pen));
}

void add_path(Drawing& drawing, const std::vector<Xy>& points, const Pen& pen, bool closed) {
  if (points.size() < 2) return;
  drawing.body +=
      fmt::format("<path d=\"{}\" stroke-linejoin=\"round\"{}/>\n", path_data(points, closed), pen_attributes(pen));
}

void add_circle(Drawing& drawing, Xy centre, double radius, const Pen& pen) {
  drawing.body += fmt::format("<circle cx=\"{}\" cy=\"{}\" r=\"{}\"{}/>\n", svg_number(centre.x), svg_number(centre.y),
                              svg_number(radius), pen_attributes(pen));
}

void add_rectangle(Drawing& drawing, Xy corner, double width, double height, const Pen& pen) {
  drawing.body += fmt::format("<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"{}/>\n", svg_number(corner.x),
                              svg_number(corner.y), svg_number(width), svg_number(height), pen_attributes(pen));
}

void add_mark(Drawing& drawing, Mark mark, Xy at, double size, const std::string& colour) {
  const double r = size / 2;
  const Pen solid{"#fff", 0.8, {}, colour, 1};
  const Pen hollow{colour, 1.4, {}, "#fff", 1};
  switch (mark) {
    case Mark::disc:
      return add_circle(drawing, at, r, solid);
    case Mark::ring:
      return add_circle(drawing, at, r, hollow);
    case Mark::square:
      return add_rectangle(drawing, {at.x - r, at.y - r}, size, size, solid);
    case Mark::diamond:
      return add_path(drawing,
                      {{at.x, at.y - r * 1.3}, {at.x + r * 1.3, at.y}, {at.x, at.y + r * 1.3}, {at.x - r * 1.3, at.y}},
                      solid, true);
    case Mark::triangle:
      return add_path(drawing, {{at.x, at.y - r * 1.2}, {at.x + r * 1.2, at.y + r}, {at.x - r * 1.2, at.y + r}}, solid,
                      true);
    case Mark::cross:
      add_line(drawing, {at.x - r, at.y - r}, {at.x + r, at.y + r}, {colour, 1.6});
      return add_line(drawing, {at.x - r, at.y + r}, {at.x + r, at.y - r}, {colour, 1.6});
    case Mark::box:
      return add_rectangle(drawing, {at.x - r, at.y - r}, size, size, hollow);
    case Mark::funnel:
      return add_path(drawing, {{at.x, at.y + r * 1.2}, {at.x + r * 1.2, at.y - r}, {at.x - r * 1.2, at.y - r}}, hollow,
                      true);
    case Mark::plus:
      add_line(drawing, {at.x - r * 1.3, at.y}, {at.x + r * 1.3, at.y}, {colour, 2});
      return add_line(drawing, {at.x, at.y - r * 1.3}, {at.x, at.y + r * 1.3}, {colour, 2});
    case Mark::bow:
      return add_path(drawing,
                      {{at.x - r * 1.2, at.y - r},
                       {at.x + r * 1.2, at.y + r},
                       {at.x + r * 1.2, at.y - r},
                       {at.x - r * 1.2, at.y + r}},
                      hollow, true);
  }
}

void add_text(Drawing& drawing, Xy at, std::string_view text, const TextStyle& style) {
  drawing.body +=
      fmt::format("<text x=\"{}\" y=\"{}\" font-size=\"{}\" text-anchor=\"{}\" fill=\"{}\"", svg_number(at.x),
                  svg_number(at.y), svg_number(style.size), anchor_word(style.anchor), style.fill);
  if (style.halo)
    drawing.body += " stroke=\"#fff\" stroke-width=\"3\" stroke-linejoin=\"round\" paint-order=\"stroke\"";
  if (style.bold) drawing.body += " font-weight=\"bold\"";
  if (style.turn_degrees != 0)
    drawing.body += fmt::format(" transform=\"rotate({} {} {})\"", svg_number(style.turn_degrees), svg_number(at.x),
                                svg_number(at.y));
  drawing.body += ">" + xml_escape(text) + "</text>\n";
}

std::string pattern_fill(const std::string& id) {
  return "url(#" + id + ")";
}

std::string add_hatch(Drawing& drawing, const std::string& id, Hatch hatch, const std::string& colour) {
  if (hatch == Hatch::none) return "none";
  constexpr double cell = 9;
  const std::string across = fmt::format("M0 {0}H{1}", svg_number(cell / 2), svg_number(cell));
  const std::string down = fmt::format("M{0} 0V{1}", svg_number(cell / 2), svg_number(cell));
  std::string shapes =
      fmt::format("<path d=\"{}\" stroke=\"{}\" stroke-width=\"0.9\" stroke-opacity=\"0.4\" fill=\"none\"/>",
                  hatch == Hatch::crossed ? across + down : across, colour);
  if (hatch == Hatch::dots)
    shapes = fmt::format("<circle cx=\"{0}\" cy=\"{0}\" r=\"1\" fill=\"{1}\" fill-opacity=\"0.6\"/>",
                         svg_number(cell / 2), colour);
  const int turn = hatch == Hatch::rising ? -45 : hatch == Hatch::falling ? 45 : hatch == Hatch::upright ? 90 : 0;
  drawing.body += fmt::format(
      "<defs><pattern id=\"{0}\" width=\"{1}\" height=\"{1}\" patternUnits=\"userSpaceOnUse\""
      " patternTransform=\"rotate({2})\">{3}</pattern></defs>\n",
      xml_escape(id), svg_number(cell), turn, shapes);
  return pattern_fill(id);
}

void begin_mark(Drawing& drawing, const std::vector<MarkKey>& keys, std::string_view words) {
  drawing.body += "<g";
  for (const MarkKey& key : keys) drawing.body += fmt::format(" data-{}=\"{}\"", key.key, xml_escape(key.value));
  drawing.body += ">\n<title>" + xml_escape(words) + "</title>\n";
}

void end_mark(Drawing& drawing) {
  drawing.body += "</g>\n";
}

void begin_clip(Drawing& drawing, const std::string& id, const std::vector<Xy>& polygon) {
  drawing.body += fmt::format("<clipPath id=\"{0}\"><path d=\"{1}\"/></clipPath><g clip-path=\"url(#{0})\">\n",
                              xml_escape(id), path_data(polygon, true));
}

void end_clip(Drawing& drawing) {
  drawing.body += "</g>\n";
}

std::string inline_svg(const Drawing& drawing, const PictureWords& words) {
  return fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {} {}\" role=\"{}\"{} "
      "font-family=\"{}\"{}>\n{}{}</svg>\n",
      svg_number(drawing.width), svg_number(drawing.height), words.parts_speak ? "group" : "img", spoken_by(words.id),
      svg_fonts, words.is_file ? " style=\"height:auto\"" : "", spoken_words(words.id, words.title, words.description),
      drawing.body);
}

void begin_group(Drawing& drawing, const std::string& id, std::string_view title, std::string_view description) {
  drawing.body += "<g role=\"group\"" + spoken_by(id) + ">\n" + spoken_words(id, title, description);
}

void end_group(Drawing& drawing) {
  drawing.body += "</g>\n";
}

}  // namespace gentlest
