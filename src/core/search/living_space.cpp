#include "core/search/living_space.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <utility>

namespace gentlest {

namespace {

constexpr double edge_room = 1e-7;  // of a cell; far above rounding of positions
constexpr std::uint64_t all_bits = ~std::uint64_t{0};

// Coefficients of the layer to remove, and of the one or two riskiest layers to keep, over one cell or part of it.
struct Pieces {
  Bernstein effect;
  std::array<Bernstein, 2> risk;
  std::size_t risks = 0;
};

struct Span {
  double low;
  double high;
};

Span span_of(const Bernstein& c) {
  return {smallest(c) - bernstein_slack, largest(c) + bernstein_slack};
}

// Is every point of the piece beaten? Along the frontier effect and risk rise together, so bounds on each alone are
// weak; effect - slope * risk hardly changes over a small piece, and the staircase lies above such a line or not.
bool is_beaten(const Bernstein& effect, const Span& effects, const Bernstein& risk, const Staircase& staircase) {
  const Span risks = span_of(risk);
  const double low = staircase.coarse_effect_within(std::max(risks.low, 0.0));
  if (low > effects.high) return true;
  // Chances are clamped to 0..1 after interpolation: where that could happen the line says nothing.
  if (low < 0 || risks.low < 0 || risks.high > 1 || effects.low < 0) return false;
  const double slope = (staircase.coarse_effect_within(risks.high) - low) / (risks.high - risks.low);
  const double peak = largest_difference(effect, slope, risk);
  // Rounding of the coefficients weighs as much as the slope does.
  const double room = bernstein_slack * (1 + slope);
  return staircase.lowest_above_line(risks.low, risks.high, slope) > peak + room;
}

// Corners that the staircase does not reach: with one of them no bound can rule the piece out.
int count_living_corners(const Pieces& pieces, const Staircase& staircase) {
  int count = 0;
  for (const std::size_t corner : {0U, 3U, 12U, 15U, 48U, 51U, 60U, 63U}) {
    double risk = pieces.risks == 0 ? 0 : pieces.risk[0][corner];
    if (pieces.risks == 2) risk = std::max(risk, pieces.risk[1][corner]);
    const double effect = pieces.effect[corner];
    count += staircase.coarse_effect_within(risk) <= effect ? 1 : 0;
  }
  return count;
}

// Rise of a piece along each axis, from corner to corner.
std::array<double, 3> rise_of(const Bernstein& c) {
  return {c[48] + c[51] + c[60] + c[63] - c[0] - c[3] - c[12] - c[15],
          c[12] + c[15] + c[60] + c[63] - c[0] - c[3] - c[48] - c[51],
          c[3] + c[15] + c[51] + c[63] - c[0] - c[12] - c[48] - c[60]};
}

// Weight of the second layer's risk with which effect - slope * risk is flattest over the piece.
double flattest_weight(const Pieces& pieces, double slope) {
  const std::array<double, 3> effect = rise_of(pieces.effect);
  const std::array<double, 3> first = rise_of(pieces.risk[0]);
  const std::array<double, 3> second = rise_of(pieces.risk[1]);
  double top = 0;
  double bottom = 0;
  for (std::size_t i = 0; i < 3; ++i) {
    const double turn = slope * (second[i] - first[i]);
    top += (effect[i] - slope * first[i]) * turn;
    bottom += turn * turn;
  }
  return bottom > 0 ? std::clamp(top / bottom, 0.0, 1.0) : 0.0;
}

// The risk is at least any weighted mean of the layers' chances, and where the frontier balances two layers only a mean
// of them makes the line hug the staircase.
bool is_beaten(const Pieces& pieces, const Staircase& staircase) {
  const Span effects = span_of(pieces.effect);
  if (pieces.risks == 0) return staircase.effect_within(0) > std::min(effects.high, 1.0) + bernstein_slack;
  if (is_beaten(pieces.effect, effects, pieces.risk[0], staircase)) return true;
  if (pieces.risks == 1 || smallest(pieces.risk[0]) > largest(pieces.risk[1])) return false;
  if (is_beaten(pieces.effect, effects, pieces.risk[1], staircase)) return true;
  const Span risks = span_of(pieces.risk[0]);
  const double climb = staircase.coarse_effect_within(risks.high) - staircase.coarse_effect_within(risks.low);
  const double weight = flattest_weight(pieces, (climb / (risks.high - risks.low)));
  Bernstein mean;
  for (std::size_t i = 0; i < mean.size(); ++i) mean[i] = (1 - weight) * pieces.risk[0][i] + weight * pieces.risk[1][i];
  return is_beaten(pieces.effect, effects, mean, staircase);
}

std::array<Pieces, 2> cut(const Pieces& whole, std::size_t axis) {
  std::array<Pieces, 2> half;
  const auto effects = halves(whole.effect, axis);
  for (std::size_t side = 0; side < 2; ++side) {
    half[side].effect = effects[side];
    half[side].risks = whole.risks;
  }
  for (std::size_t i = 0; i < whole.risks; ++i) {
    const auto parts = halves(whole.risk[i], axis);
    half[0].risk[i] = parts[0];
    half[1].risk[i] = parts[1];
  }
  return half;
}

double mean_of(const Bernstein& c) {
  return std::accumulate(c.begin(), c.end(), 0.0) / static_cast<double>(c.size());
}

// Adds a layer to keep; of more than two the riskiest two stay.
void add_risk(Pieces& pieces, const Bernstein& risk) {
  if (pieces.risks < 2)
    pieces.risk[pieces.risks++] = risk;
  else if (mean_of(risk) > mean_of(pieces.risk[1]))
    pieces.risk[1] = risk;
  if (pieces.risks == 2 && mean_of(pieces.risk[1]) > mean_of(pieces.risk[0])) std::swap(pieces.risk[0], pieces.risk[1]);
}

// Bits of the subcells from `first` to `first + size` along each axis.
std::uint64_t cube_bits(const std::array<std::size_t, 3>& first, std::size_t size) {
  std::uint64_t bits = 0;
  for (std::size_t d = first[0]; d < first[0] + size; ++d)
    for (std::size_t p = first[1]; p < first[1] + size; ++p)
      for (std::size_t h = first[2]; h < first[2] + size; ++h) bits |= std::uint64_t{1} << (d * 16 + p * 4 + h);
  return bits;
}

std::uint64_t living_in(const Pieces& pieces, const std::array<std::size_t, 3>& first, std::size_t size,
                        std::uint64_t so_far, const Staircase& staircase, int depth) {
  const std::uint64_t here = cube_bits(first, size);
  if ((here & so_far) == 0) return 0;
  const int corners = count_living_corners(pieces, staircase);
  if (corners == 0 && is_beaten(pieces, staircase)) return 0;
  if (corners == 8 || depth == 0 || size == 1) return here;
  const std::size_t half = size / 2;
  std::uint64_t bits = 0;
  const auto by_D = cut(pieces, 0);
  for (std::size_t d = 0; d < 2; ++d) {
    const auto by_P = cut(by_D[d], 1);
    for (std::size_t p = 0; p < 2; ++p) {
      const auto by_H = cut(by_P[p], 2);
      for (std::size_t h = 0; h < 2; ++h)
        bits |= living_in(by_H[h], {first[0] + d * half, first[1] + p * half, first[2] + h * half}, half, so_far,
                          staircase, depth - 1);
    }
  }
  return bits;
}

// Bits of the subcells whose index along an axis lies between two (0..3).
std::uint64_t range_bits(std::size_t axis, std::size_t from, std::size_t to) {
  static const auto table = [] {
    std::array<std::uint64_t, 48> bits{};
    for (std::size_t a = 0; a < 3; ++a)
      for (std::size_t low = 0; low < 4; ++low)
        for (std::size_t high = low; high < 4; ++high)
          for (std::size_t bit = 0; bit < 64; ++bit) {
            const std::size_t at = (bit >> (4 - 2 * a)) & 3;
            if (at >= low && at <= high) bits[a * 16 + low * 4 + high] |= std::uint64_t{1} << bit;
          }
    return bits;
  }();
  return table[axis * 16 + from * 4 + to];
}

void run_all(const RunTasks& run, const std::vector<std::function<void()>>& tasks) {
  if (run) return run(tasks);
  for (const auto& task : tasks) task();
}

}  // namespace

LivingSpace::LivingSpace(const SearchTask& task) : task_(task) {
  const FieldLattice& lattice = task.target.front().lattice();
  for (std::size_t i = 0; i < 3; ++i) cells_[i] = lattice.nodes[i] - 3;
  const std::size_t count = cells_[0] * cells_[1] * cells_[2];
  bounds_.resize(count);
  bits_.assign(count, all_bits);
  kill_out_of_reach();
  count_living();
}

// A cell that lies beyond all liquids in one of 13 directions holds no mixture.
void LivingSpace::kill_out_of_reach() {
  std::vector<CellPoint> liquids;
  for (const Liquid& liquid : task_.shelf) liquids.push_back(place(liquid.hansen));
  for (int direction = 14; direction < 27; ++direction) {
    const int nines = direction / 9;
    const int threes = direction / 3 % 3;
    const CellPoint along = {nines - 1.0, threes - 1.0, direction % 3 - 1.0};
    const auto length = [&](const CellPoint& p) { return along[0] * p[0] + along[1] * p[1] + along[2] * p[2]; };
    double low = std::numeric_limits<double>::infinity();
    double high = -low;
    for (const CellPoint& liquid : liquids) {
      low = std::min(low, length(liquid) - edge_room);
      high = std::max(high, length(liquid) + edge_room);
    }
    const double half = (std::abs(along[0]) + std::abs(along[1]) + std::abs(along[2])) / 2;
    for (std::size_t d = 0; d < cells_[0]; ++d)
      for (std::size_t p = 0; p < cells_[1]; ++p)
        for (std::size_t h = 0; h < cells_[2]; ++h) {
          const double middle =
              length({static_cast<double>(d) + 0.5, static_cast<double>(p) + 0.5, static_cast<double>(h) + 0.5});
          if (middle + half < low || middle - half > high) bits_[index(d, p, h)] = 0;
        }
  }
}

// No bound can rule out a cell all of whose corners live; looking into it is hardly ever worth the time.
bool LivingSpace::all_corners_live(std::size_t first, const Staircase& staircase) const {
  const FieldLattice& lattice = task_.target.front().lattice();
  const std::size_t row = lattice.nodes[2];
  const std::size_t slab = lattice.nodes[1] * row;
  for (std::size_t corner = 0; corner < 8; ++corner) {
    const std::size_t at = first + (1 + (corner >> 2)) * slab + (1 + (corner >> 1 & 1)) * row + 1 + (corner & 1);
    double risk = 0;
    for (const ChanceField& kept : task_.kept) risk = std::max(risk, kept.values()[at]);
    if (staircase.coarse_effect_within(risk) > task_.target.front().values()[at]) return false;
  }
  return true;
}

void LivingSpace::bound_slab(std::size_t d) {
  const FieldLattice& lattice = task_.target.front().lattice();
  const std::size_t row = lattice.nodes[2];
  const std::size_t slab = lattice.nodes[1] * row;
  for (std::size_t p = 0; p < cells_[1]; ++p)
    for (std::size_t h = 0; h < cells_[2]; ++h) {
      if (bits_[index(d, p, h)] == 0) continue;
      const std::size_t first = d * slab + p * row + h;
      Bounds& bounds = bounds_[index(d, p, h)];
      const Bernstein effect = bernstein_of_cell(&task_.target.front().values()[first], slab, row);
      bounds.most_effect = (span_of(effect).high + bernstein_slack);
      bounds.least_risk = 0;
      for (const ChanceField& kept : task_.kept)
        bounds.least_risk = std::max(
            bounds.least_risk, (span_of(bernstein_of_cell(&kept.values()[first], slab, row)).low - bernstein_slack));
    }
}

std::uint64_t LivingSpace::living_bits(std::size_t d, std::size_t p, std::size_t h, const Staircase& staircase,
                                       int depth) const {
  const FieldLattice& lattice = task_.target.front().lattice();
  const std::size_t row = lattice.nodes[2];
  const std::size_t slab = lattice.nodes[1] * row;
  const std::size_t first = d * slab + p * row + h;
  if (all_corners_live(first, staircase)) return bits_[index(d, p, h)];
  Pieces pieces;
  pieces.effect = bernstein_of_cell(&task_.target.front().values()[first], slab, row);
  for (const ChanceField& kept : task_.kept) add_risk(pieces, bernstein_of_cell(&kept.values()[first], slab, row));
  const std::uint64_t so_far = bits_[index(d, p, h)];
  return so_far & living_in(pieces, {0, 0, 0}, 4, so_far, staircase, depth);
}

void LivingSpace::shrink_slab(std::size_t d, const Staircase& staircase, int depth) {
  if (!bounded_) bound_slab(d);
  for (std::size_t p = 0; p < cells_[1]; ++p)
    for (std::size_t h = 0; h < cells_[2]; ++h) {
      const std::size_t at = index(d, p, h);
      if (bits_[at] == 0) continue;
      if (staircase.coarse_effect_within(bounds_[at].least_risk) > bounds_[at].most_effect)
        bits_[at] = 0;
      else
        bits_[at] = living_bits(d, p, h, staircase, depth);
    }
}

void LivingSpace::shrink(const Staircase& staircase, int depth, const RunTasks& run) {
  std::vector<std::function<void()>> tasks;
  for (std::size_t d = 0; d < cells_[0]; ++d)
    tasks.push_back([this, d, &staircase, depth] { shrink_slab(d, staircase, depth); });
  run_all(run, tasks);
  bounded_ = true;
  count_living();
}

void LivingSpace::count_living() {
  const std::size_t row = cells_[2] + 1;
  const std::size_t slab = (cells_[1] + 1) * row;
  living_.assign((cells_[0] + 1) * slab, 0);
  for (std::size_t d = 0; d < cells_[0]; ++d)
    for (std::size_t p = 0; p < cells_[1]; ++p) {
      std::uint32_t in_row = 0;
      const std::size_t at = (d + 1) * slab + (p + 1) * row + 1;
      for (std::size_t h = 0; h < cells_[2]; ++h) {
        in_row += bits_[index(d, p, h)] != 0 ? 1U : 0U;
        living_[at + h] = in_row + living_[at + h - slab] + living_[at + h - row] - living_[at + h - slab - row];
      }
    }
}

CellPoint LivingSpace::place(const Hansen& point) const {
  const FieldLattice& lattice = task_.target.front().lattice();
  const std::array<double, 3> at = scaled(point);
  CellPoint place{};
  for (std::size_t i = 0; i < 3; ++i) place[i] = (at[i] - lattice.origin[i]) * lattice.inverse_step[i] - 1;
  return place;
}

bool LivingSpace::lives(const CellPoint& point) const {
  std::array<std::size_t, 3> at{};
  for (std::size_t i = 0; i < 3; ++i) {
    const double quarters = std::max(point[i] * 4, 0.0);
    at[i] = std::min(static_cast<std::size_t>(quarters), cells_[i] * 4 - 1);
  }
  const std::size_t bit = (at[0] & 3) * 16 + (at[1] & 3) * 4 + (at[2] & 3);
  return ((bits_[index(at[0] >> 2, at[1] >> 2, at[2] >> 2)] >> bit) & 1) != 0;
}

bool LivingSpace::any_cell_lives(const std::array<std::size_t, 3>& low, const std::array<std::size_t, 3>& high) const {
  const std::size_t row = cells_[2] + 1;
  const std::size_t slab = (cells_[1] + 1) * row;
  const auto below = [&](std::size_t d, std::size_t p) {
    const std::uint32_t* line = &living_[d * slab + p * row];
    return line[high[2] + 1] - line[low[2]];
  };
  return below(high[0] + 1, high[1] + 1) - below(low[0], high[1] + 1) - below(high[0] + 1, low[1]) +
             below(low[0], low[1]) !=
         0;
}

bool LivingSpace::any_lives(const CellPoint& low, const CellPoint& high) const {
  std::array<std::size_t, 3> from{}, to{}, from_cell{}, to_cell{};
  bool few = true;
  for (std::size_t i = 0; i < 3; ++i) {
    from[i] = std::min(static_cast<std::size_t>(std::max((low[i] - edge_room) * 4, 0.0)), cells_[i] * 4 - 1);
    to[i] = std::min(static_cast<std::size_t>(std::max((high[i] + edge_room) * 4, 0.0)), cells_[i] * 4 - 1);
    from_cell[i] = from[i] >> 2;
    to_cell[i] = to[i] >> 2;
    few = few && to_cell[i] - from_cell[i] <= 2;
  }
  if (!any_cell_lives(from_cell, to_cell)) return false;
  if (!few) return true;
  const auto bits_along = [&](std::size_t axis, std::size_t cell) {
    return range_bits(axis, cell == from_cell[axis] ? from[axis] & 3 : 0, cell == to_cell[axis] ? to[axis] & 3 : 3);
  };
  for (std::size_t d = from_cell[0]; d <= to_cell[0]; ++d)
    for (std::size_t p = from_cell[1]; p <= to_cell[1]; ++p) {
      const std::uint64_t plane = bits_along(0, d) & bits_along(1, p);
      for (std::size_t h = from_cell[2]; h <= to_cell[2]; ++h)
        if ((bits_[index(d, p, h)] & plane & bits_along(2, h)) != 0) return true;
    }
  return false;
}

}  // namespace gentlest
