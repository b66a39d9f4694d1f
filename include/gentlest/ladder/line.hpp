// Ladders as people work them: a gentle stock, an active one, and even steps of share from the one towards the other.
#pragma once

#include "gentlest/search/search.hpp"

#include <optional>
#include <vector>

namespace gentlest {

struct LadderGoal;

/// Why a line is offered, and why there.
enum class LineReason {
  frontier,           ///< no line: the walk over what nothing beats, on as few bottles as do
  gives_up_least,     ///< the first: of all lines it comes nearest to the frontier
  other_family,       ///< of another family of active liquids: the next that comes nearest
  only_bottle_known,  ///< by effect alone: the line of which least is unknown
  third_bottle        ///< as gives_up_least, with a second stock of two liquids, since no single one comes so near
};

/// A second stock of two liquids must gain more than this over the best line of two bottles, as a mean of effect over
/// the risks up to the limit. Our choice.
inline constexpr double worth_a_third_bottle = 0.05;

/// Two bottles that are mixed step by step. The active one may itself be a stock of two liquids, mixed by quarters.
struct Stocks {
  std::uint16_t gentle = 0;           ///< position on the shelf
  std::vector<std::uint16_t> active;  ///< one, or two by falling quarters and then by position
  std::vector<int> quarters;          ///< of each in the active stock; they add up to 4
  bool operator==(const Stocks&) const = default;
};

/// The mixture that holds so much of the active stock, % by volume, with the task that its shares are steps of.
/// Precondition: a multiple of the task's step_percent, 0 to 100.
struct StockMixture {
  Composition composition;
  int cuts = 1;  ///< SearchTask::cuts
};
StockMixture stock_mixture(const SearchTask& task, const Stocks& stocks, int percent);

struct LineRung {
  int percent = 0;  ///< of the active stock, by volume
  Mixture mixture;
  Hansen point;
  Verdict verdict;
};

/// A line on a shelf. From rung to rung effect rises, risk does not fall, and RED rises neither to the layer to remove
/// nor to one to keep: a liquid that acts little because it lies beyond a layer is not gentle.
struct StockLine {
  Stocks stocks;
  int step_percent = 0;  ///< more of the active stock from rung to rung; a multiple of the task's. The first step
                         ///< may be smaller
  std::vector<LineRung> rungs;  ///< at least two, gentle to strong, none beyond the risk limit or not allowed
  LineReason reason = LineReason::gives_up_least;
  bool works = false;                        ///< the last rung reaches the wanted effect
  double effect_given_up = 0;                ///< mean over the risks up to the limit of (best effect of the shelf - of
                                             ///< the line's mixtures on the task's grid), 0..1
  std::optional<double> risk_given_up = {};  ///< at the first rung that works: its risk less the least on the frontier
                                             ///< at no less effect
};

/// Keeps the lines of at least so many bottles, where there is one; else all of them.
void prefer_lines_of(std::vector<StockLine>& lines, std::size_t bottles);

/// At most goal.lines lines, each with an active stock of another family. The gentle stock is a saturated hydrocarbon,
/// without one the liquid that is least polar. The first line is the one that gives up least of those that work, the
/// others follow by the same measure as far as they work, with the first one's gentle stock where that does; where none
/// works, those that reach half of the wanted effect. Within 0.01 of effect the line whose bottles carry fewer hazards
/// comes first (a liquid without a record counts as worse than any), then labels decide. With goal.prefer_healthier
/// within 0.02, and the worst statement for the person decides before the number of them. `frontier` is that of the
/// task. Lines end before the first mixture of the task's grid that is not allowed, too risky or on the far side of a
/// layer, so there are no holes.
std::vector<StockLine> design_lines(const SearchTask& task, const std::vector<Candidate>& frontier,
                                    const LadderGoal& goal);

/// At most `count` mixtures evenly between two rungs of a line, at 1 % of the active stock: strictly between them in
/// effect and with no more risk than the stronger one.
std::vector<LineRung> finer_steps(const SearchTask& task, const StockLine& line, const LineRung& weaker,
                                  const LineRung& stronger, int count);

}  // namespace gentlest
