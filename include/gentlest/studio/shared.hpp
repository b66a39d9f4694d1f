// A painting's tests without anything that names it: what a studio hands on to others, and what it takes in from them.
// Format of the table: docs/studio.md.
#pragma once

#include "gentlest/studio/studio.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

inline constexpr int shared_format = 1;

/// One test. Of the reading only the fields of `shared_reading_keys` are filled in: none of them is free text.
struct SharedTest {
  int painting = 0;               ///< from 1, in the order of the table; says nothing else
  std::string removed_material;   ///< id of the layer that was to go; empty: not known
  std::string original_material;  ///< id of what lay under the swab; empty: not known
  std::optional<double> paint_age_years;
  std::string mixture;  ///< in the notation with names of the catalogue, or "dry swab", "saliva",
                        ///< "water", "aqueous: not named"
  Reading reading;
};

/// Columns in front of those of the reading, and keys of the reading that are handed on.
inline constexpr std::array<std::string_view, 6> shared_head = {
    "shared_format", "painting", "removed_material", "original_material", "paint_age_years", "mixture"};
inline constexpr std::array<std::string_view, 10> shared_reading_keys = {
    "at_edge", "wetness",  "rolls",  "seconds",    "first_effect_s",
    "removal", "original", "colour", "confidence", "looked_after"};

/// The tests that count of one painting, in their order, without names, places, days and remarks. A mixture that cannot
/// be read is left out and counted in `left_out`: its words are the person's own.
std::vector<SharedTest> shared_tests(const StudioPainting& painting, int number, const Catalogue& catalogue,
                                     int& left_out);

/// The paintings of shared tests, each with a job that names materials only. What lies under the swab may be unknown:
/// then the original teaches nothing. Precondition: the materials are known or empty, the mixtures can be read.
std::vector<StudioPainting> paintings_from(const std::vector<SharedTest>& tests, const std::string& source);

}  // namespace gentlest
