// A reading as people write it: "rung 4: partly, nothing seen, sky, 20 s, edge". Short words in any order, each
// understood by itself; what may mean two things is asked, what means nothing is told, nothing is guessed.
#pragma once

#include "gentlest/conduct/typed_step.hpp"
#include "gentlest/job/job.hpp"
#include "gentlest/learning/typed_reading.hpp"
#include "gentlest/liquids/mixture.hpp"

#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// What the words are read against.
struct NotedAgainst {
  const Job& job;
  const Catalogue& catalogue;
  const std::vector<Liquid>& shelf;                          ///< every bottle of the job
  const std::vector<Reading>& lines;                         ///< of the log
  std::function<Mixture(const TypedStep&)> mixture_of_step;  ///< of the job's plan; throws InputError
};

/// What stands in a reading's mixture, in the notation of the log: a step of the plan in full, a mixture as
/// parse_mixture reads it, what is no mixture as no_mixture_text has it. What is in the notation already stays as it
/// was typed. Throws InputError (Fault::usage).
std::string mixture_in_full(const std::string& text, const NotedAgainst& against);

/// Adds what the words say to a reading; what it holds already counts as said. Every fault is added to `faults`.
/// Understood are: a mixture or a step of the plan, "test 4", words of the trade (noted/words.hpp; "varnish" or "paint"
/// in front says of which they speak), "colour: dirt", names of layers and passages and their unique beginnings, "edge"
/// and "picture", "20 s", "first effect 5 s", "8 rolls", "damp", "5x5 mm", "3.2/4.5 cm", dates, "by AB", "unsure",
/// "10x", "raking", names of photographs, "next day", "cleared with ...", "after drying ...", any field behind its
/// label and a colon, a remark in quotes or behind " -- ".
void read_noted(std::string_view text, const NotedAgainst& against, TypedReading& typed,
                std::vector<Diagnostic>& faults);

/// What was understood, one line a field, each as read_noted takes it: "original: nothing seen". Only what was named.
std::vector<std::string> noted_lines(const TypedReading& typed);

}  // namespace gentlest
