#include "report/phrases/caution_words.hpp"

namespace gentlest {

std::vector<Remark> caution_words(const std::vector<Caution>& cautions) {
  std::vector<Remark> remarks;
  for (const Caution& caution : cautions) remarks.push_back({caution.text, caution.source});
  return remarks;
}

}  // namespace gentlest
