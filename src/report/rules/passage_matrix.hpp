// What was seen of each mixture at each place: a row a mixture, gentle to strong, a column for the edge and for each
// passage. The same cells on screen, sheet and report.
#pragma once

#include "gentlest/answers/progress.hpp"
#include "gentlest/plan/plan.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace gentlest {

struct MatrixColumn {
  std::string title;  ///< "edge", "picture", or the passage
  std::string note;   ///< e.g. "closed by test 3: keep a border"; may be empty
  Place place = Place::picture;
  std::string passage;                   ///< on the picture, as written
  std::string layer;                     ///< to keep, that the place is judged as; empty: any
  std::optional<std::size_t> closed_by;  ///< index into Conduct::tests: the whole passage
  bool is_elsewhere = false;             ///< all places that the job does not list; the cells name them
};

struct MatrixCell {
  std::vector<std::size_t> tests;        ///< indices into Conduct::tests
  std::vector<std::string> read;         ///< of each, as it was read: "test 2: no effect; nothing seen"
  std::optional<std::size_t> closed_by;  ///< index into Conduct::tests: the mixture may not be used here any more
  bool is_wanted = false;                ///< the mixture that works was not yet tested on this passage
};

struct MatrixRow {
  std::string name;                 ///< "rung 3"; empty of a mixture that is none of the plan
  std::string mixture;              ///< in words
  std::optional<std::size_t> step;  ///< index into Conduct::steps
  std::vector<MatrixCell> cells;    ///< one a column
};

struct PassageMatrix {
  std::vector<MatrixColumn> columns;
  std::vector<MatrixRow> rows;
};

/// The line that the proposed test is on, or that works, else the first: its rungs, and its half steps that were tried
/// or are proposed; then every other mixture that was tested, blanks among them, in the order of the tests. No columns
/// where nothing was tested and nothing can be.
PassageMatrix passage_matrix(const Plan& plan, const Progress& progress);

/// A cell in words, line by line: what was read, "closed (test 3)", "not yet tested"; a dot where it is open.
std::vector<std::string> cell_words(const MatrixCell& cell, const Conduct& conduct);

inline constexpr const char* harm_mark = "HARM";  ///< before a reading that was one
inline constexpr const char* matrix_heading = "What was seen where";
inline constexpr const char* matrix_key =
    "As read, with the number of the test. Closed: a harm forbids the mixture there. A dot: open, not tried.";

}  // namespace gentlest
