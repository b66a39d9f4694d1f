// What a person should be told before working with a mixture: cautions that fit it, liquids that must not
// meet, a word on gloves. Always second to the safety data sheet and to local rules.
#pragma once

#include "gentlest/safety/mixture_hazard.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// The source of what the trade does without anybody having published it.
inline constexpr const char* common_practice = "common practice, no source";

/// One sentence for the person, with the key of its source in sources.yaml or where it comes from in words.
struct Caution {
  std::string text;
  std::string source;
  bool operator==(const Caution&) const = default;
};

/// Two liquids that must not meet (forbidden) or that change each other.
struct Clash {
  std::string a, b;  ///< labels
  bool forbidden = false;
  std::string why;
  std::string source;
  bool operator==(const Clash&) const = default;
};

/// All recorded clashes among these liquids, forbidden ones first. No clash found is not a proof of compatibility.
std::vector<Clash> clashes_among(const std::vector<Liquid>& liquids, const Catalogue& catalogue);

/// A mixture and the label it has by the rules of the GHS.
struct LabelledMixture {
  Mixture mixture;
  MixtureLabel label;
};

/// Cautions that fit any of these mixtures, each once, naming the liquids it is for; the general ones included; the
/// deferral to the safety data sheet comes first. Liquids of different mixtures count as meeting: their swabs do.
std::vector<Caution> cautions_for(const std::vector<LabelledMixture>& mixtures, const Catalogue& catalogue);
std::vector<Caution> cautions_for(const Mixture& mixture, const MixtureLabel& label, const Catalogue& catalogue);

}  // namespace gentlest
