#include "report/screen/studio_report.hpp"

#include "gentlest/learning/reading_fields.hpp"
#include "report/form/format.hpp"
#include "report/form/sheet.hpp"
#include "report/phrases/words.hpp"
#include "report/plans/studio_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

constexpr double odd_below = 0.5;  // weight from which on a painting is told as odd
constexpr std::size_t most_rows = 10;

const LeftOutPainting* check_of(const StudioShown& shown, const std::string& material, std::size_t painting) {
  for (const LeftOutPainting& one : shown.check)
    if (one.material == material && one.painting == painting) return &one;
  return nullptr;
}

Sheet studio_sheet(const StudioShown& shown, std::size_t most) {
  Sheet sheet{"studio",
              {{"painting", "painting", -1, true},
               {"source", "", -1, true},
               {"material", "material", -1, true},
               {"tests", "tests", 0, false},
               {"distance_from_middle", "from the middle", 1, false},
               {"weight", "counts", 2, false},
               {"distance_from_start", "", 1, false},
               {"distance_from_stand_in", "", 1, false},
               {"chance_of_readings", "foretold by the others", 2, false},
               {"chance_without_studio", "by the stand-in", 2, false}},
              {}};
  for (const StudioMaterial& material : shown.studio.materials)
    for (const PaintingTaught& one : material.paintings) {
      if (sheet.rows.size() == most) return sheet;
      const StudioPainting& painting = shown.paintings[one.painting];
      const LeftOutPainting* check = check_of(shown, material.material, one.painting);
      const auto checked = [&](double LeftOutPainting::*figure) {
        return check ? Cell(computed_value(check->*figure)) : Cell();
      };
      sheet.rows.push_back({Cell(painting.name), painting.source.empty() ? Cell() : Cell(painting.source),
                            Cell(material.material), Cell(static_cast<double>(one.tests)),
                            Cell(computed_value(one.off)), Cell(computed_value(one.weight)),
                            checked(&LeftOutPainting::start_off), checked(&LeftOutPainting::stand_in_off),
                            checked(&LeftOutPainting::with_studio), checked(&LeftOutPainting::without)});
    }
  return sheet;
}

std::size_t rows_of(const Studio& studio) {
  std::size_t rows = 0;
  for (const StudioMaterial& material : studio.materials) rows += material.paintings.size();
  return rows;
}

// Of the logarithm of the chance, over paintings; what is printed is the factor a reading.
struct Gain {
  double factor = 1, low = 1, high = 1;
  std::size_t paintings = 0, better = 0;
};

Gain gain_of(const StudioShown& shown, const std::string& material) {
  std::vector<double> logs;
  for (const LeftOutPainting& one : shown.check)
    if (one.material == material) logs.push_back(std::log(one.with_studio / one.without));
  Gain gain;
  gain.paintings = logs.size();
  if (logs.size() < 2) return gain;
  double sum = 0, square = 0;
  for (const double value : logs) {
    sum += value;
    gain.better += value > 0 ? 1 : 0;
  }
  const double count = static_cast<double>(logs.size());
  for (const double value : logs) square += (value - sum / count) * (value - sum / count);
  const double error = std::sqrt(square / (count - 1) / count);
  gain.factor = std::exp(sum / count);
  gain.low = std::exp(sum / count - error);
  gain.high = std::exp(sum / count + error);
  return gain;
}

std::string material_line(const StudioShown& shown, const StudioMaterial& material) {
  std::vector<std::string> odd;
  for (const PaintingTaught& one : material.paintings)
    if (one.weight < odd_below) odd.push_back(shown.paintings[one.painting].name);
  std::string text = fmt::format("{} ({}): {} from {}, {} from the stand-in; paintings lie {} from it.", material.name,
                                 finished_paintings(material.start), sphere_figures(material.start.sphere),
                                 sphere_figures(material.stand_in), in_hansen_distance(material.start.moved),
                                 fixed(material.start.between, 1));
  if (!odd.empty()) text += " Odd, and counted less: " + joined(odd) + ".";
  const Gain gain = gain_of(shown, material.material);
  if (gain.paintings >= 2)
    text += fmt::format(
        " Each painting foretold by the others: a reading is {} times as likely as by the stand-in ({} to {}, one "
        "standard error), better on {} of {}.",
        fixed(gain.factor, 2), fixed(gain.low, 2), fixed(gain.high, 2), gain.better, gain.paintings);
  return text;
}

std::string untaught_line(const StudioShown& shown) {
  std::vector<std::string> names;
  for (std::size_t i = 0; i < shown.paintings.size(); ++i)
    if (shown.studio.tests[i] == 0) names.push_back(shown.paintings[i].name);
  return names.empty() ? std::string() : "No test spoke of a material with a range: " + joined(names) + ".";
}

}  // namespace

std::string studio_report(const StudioShown& shown, bool full, Form form, const Style& style, const Edition& edition) {
  const std::size_t all = rows_of(shown.studio);
  if (form != Form::text) return sheet_report(studio_sheet(shown, all), form, style, edition);
  std::string text =
      heading("The studio: " + counted(shown.paintings.size(), "finished painting", "finished paintings"), style);
  for (const StudioMaterial& material : shown.studio.materials) text += bullet(material_line(shown, material), style);
  if (const std::string line = untaught_line(shown); !line.empty()) text += bullet(line, style);
  if (all == 0) return text + paragraph("Nothing was learned.", style);
  const std::size_t most = full ? all : most_rows;
  text += "\n" + sheet_text(studio_sheet(shown, most), style);
  if (all > most) text += bullet(fmt::format("{} rows more with --full", all - most), style);
  text += paragraph(
      "Foretold: chance of what was read, a reading, each painting left out in turn. Distances are Hansen distances of "
      "centres. A plan begins there with --studio; the swab decides.",
      style);
  return text;
}

std::string shared_csv(const std::vector<SharedTest>& tests, const Edition& edition) {
  Sheet sheet{"shared", {}, {}};
  for (const std::string_view key : shared_head) sheet.columns.push_back({std::string(key), "", -1, true});
  for (const std::string_view key : shared_reading_keys) sheet.columns.push_back({std::string(key), "", -1, true});
  const auto words = [](const std::string& text) { return text.empty() ? Cell() : Cell(text); };
  for (const SharedTest& test : tests) {
    std::vector<Cell> row = {static_cast<double>(shared_format),
                             static_cast<double>(test.painting),
                             words(test.removed_material),
                             words(test.original_material),
                             test.paint_age_years ? Cell(*test.paint_age_years) : Cell(),
                             words(test.mixture)};
    for (const std::string_view key : shared_reading_keys) row.push_back(words(get_field(test.reading, key)));
    sheet.rows.push_back(std::move(row));
  }
  return sheet_csv(sheet, edition);
}

}  // namespace gentlest
