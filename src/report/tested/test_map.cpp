#include "report/tested/test_map.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/letters.hpp"
#include "gentlest/base/text.hpp"
#include "report/draw/palette.hpp"
#include "report/form/format.hpp"
#include "report/own_series/own_words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

constexpr double map_left = 52;
constexpr double tallest = 440;
constexpr double above_frame = 30;  // where the upright title stands of a painting lower than it
constexpr double picture_frame = 5;

Axis axis_of(const char* title, double length_cm, double length_drawn, double room_of_number) {
  const double step = tick_step(length_cm, std::max(1, static_cast<int>(length_drawn / room_of_number)));
  return {title, 0, length_cm, step, step < 1 ? 1 : 0};
}

Frame frame_of(const PaintingObject& object) {
  const double width = object.width->value;
  const double height = object.height->value;
  const double unit = std::min((chart_width - map_left - 18) / width, tallest / height);
  return {{map_left, above_frame},
          unit * width,
          unit * height,
          axis_of("cm from the left edge", width, unit * width, 34),
          axis_of("cm from the lower edge", height, unit * height, 24)};
}

// A round number of cm, between an eighth and a third of the chart long.
void draw_scale_bar(Drawing& drawing, const Frame& frame, double y) {
  const double per_cm = frame.width / (frame.x.high - frame.x.low);
  const double length_cm = tick_step(chart_width / 4 / per_cm, 2);
  const double end = map_left + length_cm * per_cm;
  add_line(drawing, {map_left, y}, {end, y}, {ink, 2});
  for (const double x : {map_left, end}) add_line(drawing, {x, y - 4}, {x, y + 4}, {ink, 1.4});
  add_text(drawing, {end + 8, y + 4}, as_recorded(length_cm) + " cm", {small_text});
}

bool lies_on(const PaintingObject& object, const MapSite& site) {
  return site.x_cm >= 0 && site.y_cm >= 0 && site.x_cm <= object.width->value && site.y_cm <= object.height->value;
}

void draw_background(Drawing& drawing, const Frame& frame, const MapBackground& background) {
  drawing.body += fmt::format(
      "<image x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" preserveAspectRatio=\"none\" opacity=\"0.6\" "
      "href=\"data:{};base64,{}\"/>\n",
      svg_number(frame.corner.x), svg_number(frame.corner.y), svg_number(frame.width), svg_number(frame.height),
      xml_escape(background.media_type), base64(background.bytes));
}

constexpr double border_radius = 10;
constexpr double band = 7;

bool has_results(const std::vector<MapSite>& sites) {
  return std::any_of(sites.begin(), sites.end(), [](const MapSite& site) { return site.look.has_value(); });
}

void draw_edge_band(Drawing& drawing, const Frame& frame) {
  add_rectangle(drawing, {frame.corner.x + band, frame.corner.y + band}, frame.width - 2 * band,
                frame.height - 2 * band, {pale_ink, 1, "2 3"});
}

std::string result_words(const MapSite& site) {
  if (!site.look) return {};
  return ": " + look_words(*site.look) + (site.is_on_closed ? ", on a passage that is closed" : "");
}

// "test 3 at x 12.5, y 30 cm: on the picture: ..."
std::string site_words(const MapSite& site) {
  return fmt::format("test {} at x {}, y {} cm{}", site.number, as_recorded(site.x_cm), as_recorded(site.y_cm),
                     result_words(site));
}

void draw_site(Drawing& drawing, Xy at, const MapSite& site) {
  if (site.is_on_closed) add_circle(drawing, at, border_radius, {ink, 1.4, "4 2"});
  if (site.look) return draw_test(drawing, at, *site.look);
  add_circle(drawing, at, 4, {ink, 1.6, {}, "#fff"});
  add_circle(drawing, at, 1, {"none", 1, {}, ink});
}

double draw_results_legend(Drawing& drawing, const std::vector<MapSite>& sites) {
  std::vector<TestLook> looks;
  for (const MapSite& site : sites)
    if (site.look) looks.push_back(*site.look);
  const double taken = draw_test_legend(drawing, {map_left, drawing.height}, chart_width - map_left, looks);
  const bool any_closed =
      std::any_of(sites.begin(), sites.end(), [](const MapSite& site) { return site.is_on_closed; });
  if (!any_closed) return taken;
  return taken + draw_legend(drawing, {map_left, drawing.height + taken}, chart_width - map_left,
                             {{"on a passage that is closed: keep a border", {ink, 1.4, "4 2"}}});
}

// "The painting, 62 x 48 cm, with 2 tests. Test 1: x 12.5, y 30 cm, isooctane 100. ..."
std::string described(const PaintingObject& object, const std::vector<MapSite>& sites) {
  std::string text = fmt::format("The outline of the painting, {} x {} cm, with {}.", as_recorded(object.width->value),
                                 as_recorded(object.height->value),
                                 sites.empty() ? "no test yet" : counted(sites.size(), "test", "tests"));
  for (const MapSite& site : sites)
    text += fmt::format(" Test {}: x {}, y {} cm{}{}.", site.number, as_recorded(site.x_cm), as_recorded(site.y_cm),
                        site.what.empty() ? "" : ", ", site.what + result_words(site));
  return text;
}

OpenNames draw_sites(Drawing& drawing, const Frame& frame, const PaintingObject& object,
                     const std::vector<MapSite>& sites) {
  std::vector<PointName> names;
  std::vector<Box> obstacles;
  for (const MapSite& site : sites) {
    if (!lies_on(object, site)) continue;
    const Xy at = place_in(frame, site.x_cm, site.y_cm);
    begin_mark(drawing, {{"test", site.number}}, site_words(site));
    draw_site(drawing, at, site);
    end_mark(drawing);
    const double half = site.is_on_closed ? border_radius : 5;
    obstacles.push_back(box_around(at, half));
    names.push_back({site.look ? site.number + " " + outcome_word(*site.look) : site.number, at, small_text, true,
                     half + 2, site.number});
  }
  // The numbers of the scale stand left of the outline.
  return draw_names(drawing, names, obstacles, {frame.corner.x, 2, chart_width - 2, frame.corner.y + frame.height - 1});
}

// Places that an earlier log holds and the painting does not: named below it; returns the height taken.
double draw_sites_outside(Drawing& drawing, const PaintingObject& object, const std::vector<MapSite>& sites) {
  std::vector<std::string> outside;
  for (const MapSite& site : sites)
    if (!lies_on(object, site)) outside.push_back(site_words(site));
  if (outside.empty()) return 0;
  const std::vector<std::string> lines =
      text_lines("Outside the painting: " + joined(outside, "; "), small_text, chart_width - map_left - 4);
  for (std::size_t i = 0; i < lines.size(); ++i)
    add_text(drawing, {map_left, drawing.height + 12 + 15 * static_cast<double>(i)}, lines[i], {small_text});
  return 8 + 15 * static_cast<double>(lines.size());
}

}  // namespace

Chart test_map(const PaintingObject& object, const std::vector<MapSite>& sites,
               const std::optional<MapBackground>& background, const std::vector<OwnSeries>& own) {
  const Frame frame = frame_of(object);
  Chart chart{"map", "Where the tests are", {}, {chart_width, frame.corner.y + frame.height + 44}};
  if (background) draw_background(chart.drawing, frame, *background);
  draw_frame(chart.drawing, frame);
  add_rectangle(chart.drawing, {frame.corner.x - picture_frame, frame.corner.y - picture_frame},
                frame.width + 2 * picture_frame, frame.height + 2 * picture_frame, {axis_ink, 1});
  add_rectangle(chart.drawing, frame.corner, frame.width, frame.height, {ink, 1.6});
  if (has_results(sites)) draw_edge_band(chart.drawing, frame);
  const OpenNames open = draw_sites(chart.drawing, frame, object, sites);
  draw_scale_bar(chart.drawing, frame, chart.drawing.height + 2);
  chart.drawing.height += 18;
  chart.drawing.height += draw_sites_outside(chart.drawing, object, sites);
  if (has_results(sites)) chart.drawing.height += draw_results_legend(chart.drawing, sites);
  chart.caption = fmt::format(
      "The painting to scale, {} x {} cm (width x height); x and y are counted in cm from the "
      "lower left corner.",
      as_recorded(object.width->value), as_recorded(object.height->value));
  chart.description = described(object, sites);
  if (has_results(sites))
    chart.caption +=
        " The dotted band along the outline stands for the edge, where harm matters least; its width is "
        "not to scale.";
  if (sites.empty()) chart.caption += " Mark each test with its number.";
  const std::string not_here = own_absence_words(own, OwnAbsence::shows_places);
  chart.caption += not_here + open_names_words(open);
  chart.description += not_here;
  return chart;
}

std::vector<MapSite> parse_sites(const std::string& text) {
  std::vector<MapSite> sites;
  std::vector<Diagnostic> faults;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find(';', at), text.size());
    const std::string one = text.substr(at, end - at);
    at = end + 1;
    const std::size_t comma = one.find(',');
    const std::optional<double> x = amount_from(trimmed(one.substr(0, comma)));
    const std::optional<double> y =
        comma == std::string::npos ? std::nullopt : amount_from(trimmed(one.substr(comma + 1)));
    if (x && y)
      sites.push_back({std::to_string(sites.size() + 1), *x, *y});
    else
      faults.push_back(
          {{}, fmt::format("\"{}\" is no place on the painting", one), "write x,y in cm, e.g. 12.5,30", {}});
  }
  if (!faults.empty()) throw InputError(Fault::usage, std::move(faults));
  return sites;
}

}  // namespace gentlest
