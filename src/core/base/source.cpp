#include "gentlest/base/source.hpp"

namespace gentlest {

std::string_view to_word(Standing standing) {
  switch (standing) {
    case Standing::measured:
      return "measured";
    case Standing::estimated:
      return "estimated";
    case Standing::derived:
      return "derived";
    case Standing::memory:
      return "from memory";
    case Standing::assumed:
      return "assumed";
  }
  return "";
}

}  // namespace gentlest
