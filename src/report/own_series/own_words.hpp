// What a picture says of the job's own series, and where they have no place in it.
#pragma once

#include "gentlest/job/job.hpp"
#include "report/own_series/own_lines.hpp"

#include <fmt/format.h>

#include <string>
#include <vector>

namespace gentlest {

/// Why a picture shows no own series.
enum class OwnAbsence {
  nothing_drawn,  ///< there is no picture at all
  shows_tests,    ///< it shows what was tested
  shows_places    ///< it shows the painting
};

/// For a caption: which series of the job are not drawn, and why. Empty where the job has none.
std::string own_absence_words(const std::vector<OwnSeries>& series, OwnAbsence why);

/// For a caption: how they are drawn. Empty without lines.
std::string own_lines_words(const std::vector<OwnLine>& lines);

/// The same where each has a panel of its own.
std::string own_panels_words(const std::vector<OwnLine>& lines);

/// Title of the axis along which a series' mixtures stand.
inline constexpr const char* own_order_axis = "mixture, in its order";

/// Which mixtures of a series: the name in quotation marks, before it their numbers: 2, 3 of "our spirits".
std::string own_numbered(const OwnLine& line, const std::vector<std::string>& numbers);

/// The same by their places in the series, from 0; the name alone where it is all of them, empty where it is none.
std::string own_numbers(const OwnLine& line, const std::vector<std::size_t>& which);

/// "our spirits 2: isooctane 80, ethanol 20; effect 12 %, risk 2.1 %".
std::string pointed_own_words(const OwnLine& line, std::size_t mixture);

/// For a description, with what `say` tells of each judged mixture.
template <class Say>
std::string own_described(const std::vector<OwnLine>& lines, Say say) {
  std::string text;
  for (const OwnLine& line : lines) {
    std::string mixtures;
    for (std::size_t i = 0; i < line.compared->judged.mixtures.size(); ++i)
      mixtures += fmt::format("{}{}: {}", mixtures.empty() ? "" : "; ", i + 1, say(line.compared->judged.mixtures[i]));
    text += fmt::format(" Own series {}, in its order: {}.", line.name, mixtures);
  }
  return text;
}

}  // namespace gentlest
