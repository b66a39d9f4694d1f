// Colours, dashes and marks of all charts. Told apart by colour-blind eyes and in grey: no two kinds of thing differ in
// colour alone. Colours after Okabe and Ito 2008 (from memory), darkened where text or lines need contrast.
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
};

inline constexpr const char* ink = "#000000";
inline constexpr const char* pale_ink = "#595959";  ///< 7:1 on white
inline constexpr const char* grid_ink = "#d9d9d9";
inline constexpr const char* limit_ink = "#8c0000";

inline constexpr LayerLook target_look = {"#005a8c", "", Mark::square};
inline constexpr std::array<LayerLook, 6> kept_looks = {{{"#b34700", "7 3", Mark::triangle},
                                                         {"#00664b", "2 3", Mark::diamond},
                                                         {"#8a3a6c", "9 3 2 3", Mark::disc},
                                                         {"#6b5a00", "4 2", Mark::ring},
                                                         {"#3d3d3d", "1 2", Mark::cross},
                                                         {"#1b4f9c", "12 4", Mark::triangle}}};

/// How the published series are drawn beside a ladder: thin, hollow or small, never as strong as the ladder.
inline constexpr std::array<LayerLook, 3> series_looks = {
    {{"#8a3a6c", "1 2", Mark::ring}, {"#6b5a00", "4 2", Mark::cross}, {"#00664b", "9 3 2 3", Mark::triangle}}};

/// Look of the n-th layer that is not the target; starts anew after the last.
inline const LayerLook& kept_look(std::size_t n) {
  return kept_looks[n % kept_looks.size()];
}

}  // namespace gentlest
