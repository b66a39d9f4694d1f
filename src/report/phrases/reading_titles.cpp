#include "report/phrases/reading_titles.hpp"

#include "report/phrases/headings.hpp"

#include <array>
#include <cassert>
#include <utility>

namespace gentlest {

namespace {

constexpr std::array<std::pair<std::string_view, const char*>, 32> titles = {{{"test", "test"},
                                                                              {"date", "date"},
                                                                              {"who", "by whom"},
                                                                              {"mixture", mixture_column},
                                                                              {"layer", "layer that was to go"},
                                                                              {"passage", "passage or layer below"},
                                                                              {"at_edge", at_the_edge},
                                                                              {"x_cm", "x, cm from the left"},
                                                                              {"y_cm", "y, cm from below"},
                                                                              {"window_mm", "window, mm"},
                                                                              {"light", "light"},
                                                                              {"magnification", "magnification"},
                                                                              {"uv_before", "UV before"},
                                                                              {"uv_after", "UV after"},
                                                                              {"swab", "swab"},
                                                                              {"wetness", "swab was"},
                                                                              {"rolls", "rolls"},
                                                                              {"seconds", "contact, seconds"},
                                                                              {"first_effect_s", "until it acted, s"},
                                                                              {"removal", removal_column},
                                                                              {"original", "the original"},
                                                                              {"colour", "colour on the swab"},
                                                                              {"signs", "seen besides"},
                                                                              {"clearing", "cleared with"},
                                                                              {"after_drying", "after drying"},
                                                                              {"photo_before", "photo before"},
                                                                              {"photo", "photo after"},
                                                                              {"looked_after", "looked again after"},
                                                                              {"confidence", "how sure"},
                                                                              {"remark", "remark"},
                                                                              {"correction", "why corrected"},
                                                                              {"withdrawn", "withdrawn"}}};

}  // namespace

const char* title_of_field(std::string_view key) {
  for (const auto& [of, title] : titles)
    if (of == key) return title;
  assert(false);
  return "";
}

const std::vector<const char*>& removal_signs() {
  static const std::vector<const char*> signs = {"patchy", "smeared"};
  return signs;
}

const std::vector<const char*>& original_signs() {
  static const std::vector<const char*> signs = {"blanched", "lost gloss", "tacky", "swollen", "lifted"};
  return signs;
}

const std::vector<const char*>& drying_signs() {
  static const std::vector<const char*> signs = {"matt", "blanched", "halo", "tacky"};
  return signs;
}

const std::vector<const char*>& lights() {
  static const std::vector<const char*> all = {"normal", "raking", "UV"};
  return all;
}

const std::vector<const char*>& later_looks() {
  static const std::vector<const char*> all = {"20 min", "1 day", "7 days"};
  return all;
}

}  // namespace gentlest
