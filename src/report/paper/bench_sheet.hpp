// The sheet for the easel: one HTML file that is printed, filled in by hand and filed with the treatment report.
#pragma once

#include "gentlest/answers/ahead.hpp"
#include "gentlest/answers/bench.hpp"
#include "report/draw/html.hpp"
#include "report/form/form.hpp"
#include "report/phrases/advice_words.hpp"
#include "report/tested/test_map.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// Where the tests stand, and those that lie ahead.
struct FollowedTests {
  Progress progress;
  std::vector<TestAhead> ahead;  ///< tests_ahead of `progress`
};

/// What stands on the sheet besides plan and bench.
struct SheetInputs {
  Paper paper = Paper::A4;
  Edition edition;
  std::string job_file;              ///< as named on the command line
  std::string job_text;              ///< the whole file, so that the sheet can be made again
  std::vector<std::string> options;  ///< what the command line changed, e.g. "--risk-limit 0.05"
  std::vector<MapSite> sites;
  std::optional<MapBackground> background;
  int tests_so_far = 0;                        ///< highest number of a test in the log: the cards go on from there
  std::optional<FollowedTests> followed = {};  ///< nothing without a log
  bool full = false;                           ///< with all pictures, sources and the job's text
};

/// The whole file. Same input, same bytes; holds no date but what is written in by hand.
std::string bench_sheet(const Plan& plan, const Bench& bench, const SheetInputs& inputs);

/// Parts of it, as HTML: what goes, what stays and the ladder; pages of cards to fill in; the other lines and what was
/// seen; pictures; what to know; where it comes from.
std::string sheet_summary(const Plan& plan, const Bench& bench, const SheetInputs& inputs);
std::string sheet_cards(const Plan& plan, const Bench& bench, const SheetInputs& inputs);
std::string sheet_beside(const Plan& plan, const Bench& bench, const SheetInputs& inputs);
std::string sheet_pictures(const Plan& plan, const Bench& bench);
std::string sheet_notes(const Plan& plan, const Bench& bench, const SheetInputs& inputs);
std::string sheet_origins(const Plan& plan, const SheetInputs& inputs);

/// Top of a page of the sheet.
std::string sheet_head(const Plan& plan, const std::string& part);
/// What must be read on every page that may be carried off alone: when to stop, what is not predicted, which hazards
/// are not known. `before` is HTML.
std::string carried_caution(const Bench& bench, const std::string& before = {});
/// Why there is no card at all; which mixtures have none.
std::string no_card_html(const SheetInputs& inputs);
std::string without_card_html(const Plan& plan, const Bench& bench);

/// The painting in a heading (what follows `kind`: its title), its facts and note.
std::string title_block(const PaintingObject& object, const std::string& kind);
/// The map, under a heading of its own; with a table of its places where no other table has them.
enum class MapTable { none, below };
std::string map_section(const Job& job, const std::vector<MapSite>& sites,
                        const std::optional<MapBackground>& background, MapTable table);
/// Sources of every figure; the limits that held.
std::string sources_section(const Plan& plan);
std::string limits_html(const Plan& plan);
/// Sentences with their sources, as a list.
std::string advice_html(const std::vector<Remark>& remarks);

/// Pictograms and signal word of a label, with a word where records are missing.
std::string label_signs(const MixtureLabel& label);

/// What a person must mind in this mixture: two liquids, drying, a rung that may flip, rounding. Plain text.
std::vector<std::string> marks_of(const BenchMixture& mixture, const Plan& plan);

}  // namespace gentlest
