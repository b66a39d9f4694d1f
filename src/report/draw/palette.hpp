// Colours, dashes, marks and patterns of all charts. A colour says what a layer is there for (to remove, to keep);
// which one it is its dash, mark and pattern say, so nothing rests on colour. Colours after Okabe and Ito 2008 (from
// memory), darkened where lines need contrast; tests/unit/draw/test_palette.cpp checks them under colour blindness and
// in grey.
#pragma once

#include "report/draw/svg.hpp"

#include <array>
#include <cstddef>

namespace gentlest {

/// How one layer is drawn in every chart.
struct LayerLook {
  const char* colour;
  const char* dash;
  Mark mark;
  Hatch hatch = Hatch::none;
};

inline constexpr const char* ink = "#000000";
inline constexpr const char* pale_ink = "#595959";  ///< 7:1 on white
inline constexpr const char* axis_ink = "#808080";
inline constexpr const char* grid_ink = "#d9d9d9";
inline constexpr const char* limit_ink = "#8c0000";
inline constexpr const char* remove_ink = "#003a5c";
inline constexpr const char* keep_ink = "#b95300";
inline constexpr const char* keep_text_ink = "#8a3e00";  ///< darker, for words

/// Layers to remove and to keep, each in the order of the job; the first to remove is the one that the plan is for.
inline constexpr std::array<LayerLook, 3> removed_looks = {{{remove_ink, "", Mark::square, Hatch::rising},
                                                            {remove_ink, "14 3", Mark::ring, Hatch::crossed},
                                                            {remove_ink, "1 3", Mark::cross, Hatch::none}}};
inline constexpr std::array<LayerLook, 6> kept_looks = {{{keep_ink, "7 3", Mark::triangle, Hatch::falling},
                                                         {keep_ink, "2 3", Mark::diamond, Hatch::dots},
                                                         {keep_ink, "9 3 2 3", Mark::disc, Hatch::upright},
                                                         {keep_ink, "4 2", Mark::ring, Hatch::level},
                                                         {keep_ink, "1 2", Mark::cross, Hatch::crossed},
                                                         {keep_ink, "12 4", Mark::square, Hatch::none}}};
inline constexpr LayerLook target_look = removed_looks[0];

/// How the published series are drawn beside a ladder: thin, hollow or small, never as strong as the ladder.
inline constexpr std::array<LayerLook, 4> series_looks = {{{"#8a3a6c", "1 2", Mark::ring},
                                                           {"#6b5a00", "4 2", Mark::cross},
                                                           {"#00664b", "9 3 2 3", Mark::triangle},
                                                           {"#333333", "6 2 1 2", Mark::diamond}}};

/// The job's own series: one colour says that they are, dash and mark say which. No layer, liquid or rung has these
/// marks. Sixteen differ.
inline constexpr const char* own_series_ink = "#4b2e83";
inline constexpr std::array<Mark, 4> own_series_marks = {Mark::box, Mark::funnel, Mark::plus, Mark::bow};
inline constexpr std::array<const char*, 4> own_series_dashes = {"5 2", "2 2", "8 2 2 2", "3 4"};
inline LayerLook own_series_look(std::size_t n) {
  return {own_series_ink, own_series_dashes[(n + n / own_series_marks.size()) % own_series_dashes.size()],
          own_series_marks[n % own_series_marks.size()]};
}

/// Looks of the n-th layer to keep and of the n-th to remove; they start anew after the last.
inline const LayerLook& kept_look(std::size_t n) {
  return kept_looks[n % kept_looks.size()];
}
inline const LayerLook& removed_look(std::size_t n) {
  return removed_looks[n % removed_looks.size()];
}

}  // namespace gentlest
