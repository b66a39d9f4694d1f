// The ladder beside the published series, for people, spreadsheets and programs.
#pragma once

#include "gentlest/answers/comparison.hpp"
#include "report/form/form.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// `best_of_shelf`: the walk over the frontier, where the ladder is a line; else null.
std::string comparison_report(const Plan& plan, const Plan* best_of_shelf, const std::vector<ComparedSeries>& published,
                              Form form, const Style& style, const Edition& edition);

/// A series as reports list it: the ladder, the best of the whole shelf, a published one. Pointers are into plans and
/// series.
struct ListedSeries {
  std::string id;      ///< "ladder", "best_of_shelf", or that of the published series
  std::string name;    ///< for headings
  std::string source;  ///< in words, with its standing
  std::vector<const JudgedMixture*> mixtures;
  std::optional<SeriesQuality> quality;  ///< nothing where effect or risk is not known
  std::vector<std::string> liquids;
  std::vector<std::string> objections;
};

/// The ladder first, unless there is no window, then the best of the whole shelf.
std::vector<ListedSeries> listed_series(const Plan& plan, const Plan* best_of_shelf,
                                        const std::vector<ComparedSeries>& published);

/// Whether its risk passes the limit; nothing where no risk is known.
std::optional<bool> beyond_limit(const JudgedMixture& judged, const Limits& limits);

/// Rise of the effect from the mixture before; nothing for the first.
std::optional<double> rise_at(const ListedSeries& series, std::size_t i);

/// On one screen, a line for each series. `cautions`: for the bottles of all of them.
std::string comparison_short_text(const Plan& plan, const std::vector<ListedSeries>& all,
                                  const std::vector<Caution>& cautions, const Style& style, const Edition& edition);

std::string comparison_text(const Plan& plan, const std::vector<ListedSeries>& all, const Style& style,
                            const Edition& edition);

}  // namespace gentlest
