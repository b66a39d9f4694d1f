// What the tests taught, and what room is left.
#pragma once

#include "gentlest/answers/progress.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// One sentence an entry: ranges, what was narrowed and what not, materials, surprises.
std::vector<std::string> words_of(const LearntOfLayer& learnt);

/// The same for all layers of a progress.
std::vector<std::string> learnt_words(const Progress& progress);

/// Effect and risk of an outlook that counts the mixture's own tests.
std::string counted_words(const CandidateOutlook& outlook);

/// "2 of the 3 stronger rungs of the ladder stay within ..."; what is said where there is none.
std::string room_words(const RungRoom& room, double risk_limit);

/// Why a test is not counted, e.g. "the job knows no passage \"sky\"".
std::string words_of(const LeftOutTest& test);

/// "test 3: the job knows no passage \"sky\"", one for each test that is not counted.
std::vector<std::string> not_counted_words(const Progress& progress);

}  // namespace gentlest
