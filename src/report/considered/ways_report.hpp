// What people consider where a ladder ends or never begins: on one screen, whole, as a table, for programs, on paper.
#pragma once

#include "gentlest/ways/ways.hpp"
#include "report/draw/html.hpp"
#include "report/form/form.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// An answer with what it is about. Without a plan it is about no painting.
struct WaysCase {
  const Plan* plan = nullptr;
  WaysAnswer answer;
  std::vector<Source> sources;
};

/// The first screen.
std::string ways_short_text(const WaysCase& one, const Style& style, const Edition& edition);

/// All of it. CSV has a row a way.
std::string ways_report(const WaysCase& one, Form form, const Style& style, const Edition& edition);

/// A page to print.
std::string ways_page(const WaysCase& one, Paper paper, const Edition& edition);

}  // namespace gentlest
