// A figure never travels without its source: who published it, and how sure we are of it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// How a figure came into the catalogue. Shown beside the figure wherever a person reads it.
enum class Standing {
  measured,   ///< published as a measurement or as a reviewed table value, and seen by us in print or data file
  estimated,  ///< published as an estimate (group contribution, correlation, copied range)
  derived,    ///< worked out by us from other figures of the catalogue; the note says how
  memory,     ///< recalled, not seen in print; waits for somebody with the book
  assumed     ///< a stand-in or a convention of ours: no publication supports it for this very substance
};

/// The word that files and reports use for a standing, e.g. "from memory".
std::string_view to_word(Standing standing);

/// A value with the key of its source in sources.yaml, its standing, and a remark where one is needed.
template <class T>
struct Cited {
  T value{};
  std::string source;
  Standing standing = Standing::measured;
  std::string note;
  bool operator==(const Cited&) const = default;
};

/// A value on which publications may disagree: the chosen one, the others, and why this one was chosen.
template <class T>
struct Known {
  Cited<T> chosen;
  std::vector<Cited<T>> others;
  std::string why;
  bool operator==(const Known&) const = default;
};

/// Up to which day the law behind hazard records and limits for the air was seen; all empty when nobody wrote it down.
struct Law {
  std::string seen_until;  ///< YYYY-MM-DD
  std::string seen;        ///< which law, in plain words
  std::string older;       ///< what stands at an older date
  bool operator==(const Law&) const = default;
};

/// One publication or data set of sources.yaml.
struct Source {
  std::string key;
  std::string citation;  ///< author, year, title, table or page
  std::string seen;      ///< where and how we read it, or that we did not
  bool operator==(const Source&) const = default;
};

}  // namespace gentlest
