// How one test looks in every picture: its shape says where, its filling and a cross what came of it. Nothing by
// colour alone.
#pragma once

#include "gentlest/conduct/conduct.hpp"
#include "report/draw/svg.hpp"

#include <string>
#include <vector>

namespace gentlest {

struct TestLook {
  Place place = Place::picture;
  bool moved = false;         ///< the layer to remove moved as much as wanted
  bool harmed = false;        ///< the original reacted
  bool is_withdrawn = false;  ///< then the two above are not told
  bool operator==(const TestLook&) const = default;
};
TestLook look_of(const SwabTest& test);

/// A circle on the picture, a square at the edge; filled where the layer moved; crossed out where the original reacted;
/// thin and dotted where the test was withdrawn.
void draw_test(Drawing& drawing, Xy at, const TestLook& look);

/// The same in a word: "moved", "not moved", "harm", "withdrawn".
std::string outcome_word(const TestLook& look);

/// "on the picture: the layer moved, the original reacted".
std::string look_words(const TestLook& look);

/// One entry for each look among these; returns the height taken.
double draw_test_legend(Drawing& drawing, Xy corner, double width, const std::vector<TestLook>& looks);

}  // namespace gentlest
