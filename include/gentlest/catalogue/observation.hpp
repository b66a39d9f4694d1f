// What a liquid was seen to do to a material: published, recalled or common practice, in words and in grades.
#pragma once

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/finishes/witness.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// How the liquid met the material. A vial of hours and a swab of seconds may differ by two grades on the same film.
enum class Contact { swab, sponge, brush, poultice, immersion, not_told };
std::string_view to_word(Contact contact);
std::optional<Contact> contact_from_word(std::string_view word);

/// A swab, a sponge, a brush: seconds, against minutes or hours.
bool is_short(Contact contact);

/// What happened: one of the six grades of solubility tests (space/response.hpp), or what became of a layer under a
/// swab, sponge, brush or poultice.
enum class ObservedResult {
  dissolves,
  nearly_dissolves,
  swells_strongly,
  swells,
  swells_a_little,
  nothing_seen,
  removed,
  not_removed
};
std::string_view to_word(ObservedResult result);
std::optional<ObservedResult> observed_result_from_word(std::string_view word);

/// The grades, 1 to 6, that the words allow: strongest <= weakest as numbers, for 1 is the strongest.
struct GradeRange {
  int strongest = 1;
  int weakest = 6;
  bool operator==(const GradeRange&) const = default;
};

/// The range that a result must reach into, or its words and grades contradict each other.
GradeRange range_of(ObservedResult result);

bool overlap(const GradeRange& a, const GradeRange& b);

/// Of how much the observation speaks.
enum class Generality { held_generally, several_samples, one_sample };
std::string_view to_word(Generality generality);
std::optional<Generality> generality_from_word(std::string_view word);

/// One row of solvents/observations/.
struct Observation {
  std::string material;             ///< id
  std::string state;                ///< where it differs from the material's own, e.g. "about 10 years"
  std::vector<ObservedPart> parts;  ///< empty where the source names no liquid
  std::string liquids_in_words;     ///< what it names instead, e.g. "solvents less polar than xylene"
  Contact contact = Contact::not_told;
  std::string duration;                  ///< in words; empty: not told
  std::optional<ObservedResult> result;  ///< with `grades`; neither where it is only told in words
  std::optional<GradeRange> grades;
  std::string said;  ///< told in words instead
  Generality general = Generality::one_sample;
  std::string source;  ///< key of sources.yaml
  std::string cite;    ///< where in it, and what it says there, in our words
  Witness witness = Witness::memory;
  Confidence confidence = Confidence::low;
  std::string note;
  Location where;  ///< in the files of the catalogue, for messages
  bool operator==(const Observation&) const = default;
};

}  // namespace gentlest
