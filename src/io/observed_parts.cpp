#include "io/observed_parts.hpp"

#include "gentlest/base/text.hpp"

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

// "isooctane 70, ethanol 30", all in per cent, or one id alone.
class PartsReader {
 public:
  PartsReader(YamlFile& file, const YamlNode& node) : file_(file), node_(node) {}

  std::vector<ObservedPart> read() {
    const std::size_t before = file_.faults().size();
    const std::string text = file_.text(node_, "liquid");
    const bool alone = text.find(',') == std::string::npos && text.find(' ') == std::string::npos;
    if (alone)
      parts_.push_back({text, 100});
    else
      for (std::size_t from = 0; from <= text.size();) {
        const std::size_t end = std::min(text.find(',', from), text.size());
        read_part(trimmed(std::string_view(text).substr(from, end - from)));
        from = end + 1;
      }
    if (file_.faults().size() == before) check_sum();
    return std::move(parts_);
  }

 private:
  void read_part(std::string_view piece) {
    const std::size_t blank = std::min(piece.find_last_of(' '), piece.size());
    const std::string id(trimmed(piece.substr(0, blank)));
    const std::optional<double> percent = amount_from(trimmed(piece.substr(blank)));
    if (id.empty() || id.find(' ') != std::string::npos || !percent || *percent <= 0)
      return file_.complain(node_, fmt::format("\"{}\" is no liquid with its share", piece), notation);
    if (std::any_of(parts_.begin(), parts_.end(), [&](const ObservedPart& part) { return part.solvent == id; }))
      return file_.complain(node_, fmt::format("\"{}\" stands twice in the mixture", id), "add the shares up");
    parts_.push_back({id, *percent});
  }

  void check_sum() {
    double sum = 0;
    for (const ObservedPart& part : parts_) sum += part.percent;
    if (std::abs(sum - 100) > 1e-9)
      file_.complain(node_, fmt::format("the shares add up to {} per cent, not 100", sum), notation);
  }

  static constexpr const char* notation =
      "write ids of solvents and per cent by volume, \"isooctane 70, ethanol 30\", or one id alone";
  YamlFile& file_;
  const YamlNode& node_;
  std::vector<ObservedPart> parts_;
};

}  // namespace

std::vector<ObservedPart> read_parts(YamlFile& file, const YamlNode& node) {
  return PartsReader(file, node).read();
}

}  // namespace gentlest
