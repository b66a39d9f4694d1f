// Why bottles are left off, and what a job has against the liquids of a published series.
#pragma once

#include "gentlest/answers/comparison.hpp"
#include "gentlest/plan/shelf.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// "ethanol 96 %: is to be avoided", one for each bottle. Precondition: each has its `left_off`.
std::vector<std::string> left_off_words(const std::vector<JobBottle>& bottles);

/// "toluene: not on the shelf", one for each objection.
std::vector<std::string> objection_words(const std::vector<Objection>& objections);

/// Why the job's limits leave this solvent off, e.g. "carries H361, which is to be avoided".
std::string words_of(const LeftOff& left_off, const Solvent& solvent);

}  // namespace gentlest
