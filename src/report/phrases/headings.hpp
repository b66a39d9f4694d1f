// Headings and short words that stand on more than one page or screen. What one page alone says stays with that page.
#pragma once

namespace gentlest {

inline constexpr const char* seen_of_mixtures_heading = "What was seen of these mixtures and their liquids";
inline constexpr const char* to_measure_heading = "What to measure";
inline constexpr const char* in_the_vial_heading = "In the vial and on the swab";
inline constexpr const char* to_watch_heading = "What to watch";
inline constexpr const char* where_tests_stand_heading = "Where the tests stand";
inline constexpr const char* taught_heading = "What the tests taught";
inline constexpr const char* how_close_heading = "How close the shelf comes";
inline constexpr const char* to_try_heading = "Liquids to try alone";
inline constexpr const char* other_ways_heading = "What people then consider";
inline constexpr const char* ways_pointer = "Gels, water, dry ways, leaving it, with sources: gentlest ways JOB.";
inline constexpr const char* weak_figures_heading = "Weak figures this plan rests on";

inline constexpr const char* recipe_column = "recipe, % by volume";
inline constexpr const char* mixture_column = "mixture, % by volume";
inline constexpr const char* fate_column = "in the vial; while drying";
inline constexpr const char* at_the_edge = "at the edge";
inline constexpr const char* removal_column = "the layer to go";

inline constexpr const char* nothing_to_keep = "nothing to keep";
inline constexpr const char* flash_point_not_known = "flash point not known";
inline constexpr const char* drying_not_known = "drying not known";
inline constexpr const char* spread_of_these = "standard deviations of these";
inline constexpr const char* bottle_left_off = "bottle left off: ";
inline constexpr const char* own_tests_of = "own tests of ";
inline constexpr const char* painting_size_unit = " cm (width x height)";

inline constexpr const char* bottle_in_use = "bottle in use here";
inline constexpr const char* other_bottle = "other bottle of the shelf";
inline constexpr const char* ladder_by_number = "ladder, rungs by number";
inline constexpr const char* covered_ranges_words =
    " Of ranges that cover each other one is drawn a little smaller, so that both are seen.";
inline constexpr const char* polar_axis = "dP, polar, MPa^0.5";
inline constexpr const char* hydrogen_axis = "dH, hydrogen bonding, MPa^0.5";

inline constexpr const char* read_by_ticks_words =
    " Each number belongs to the grid line that leaves the side as its tick does.";

}  // namespace gentlest
