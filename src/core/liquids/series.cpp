#include "gentlest/liquids/series.hpp"

#include "core/base/enum_words.hpp"

#include "gentlest/liquids/notation.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <initializer_list>
#include <utility>

namespace gentlest {

namespace {

constexpr std::array<std::pair<SeriesKind, std::string_view>, 4> words = {
    {{SeriesKind::feller, "feller"},
     {SeriesKind::hydrocarbon_ketone, "hydrocarbon_ketone"},
     {SeriesKind::hydrocarbon_alcohol, "hydrocarbon_alcohol"},
     {SeriesKind::own, "own"}}};

bool all_known(const Catalogue& catalogue, std::initializer_list<const char*> ids) {
  return std::all_of(ids.begin(), ids.end(), [&](const char* id) {
    const Solvent* solvent = catalogue.find_solvent(id);
    return solvent && solvent->hansen;
  });
}

Liquid plain(const Catalogue& catalogue, const char* id) {
  return make_liquid(*catalogue.find_solvent(id), "", catalogue);
}

Mixture two_part(const Liquid& first, const Liquid& second, double share_of_second) {
  if (share_of_second <= 0) return Mixture({{first, 1}});
  if (share_of_second >= 1) return Mixture({{second, 1}});
  return Mixture({{first, 1 - share_of_second}, {second, share_of_second}});
}

Series feller_series(const Catalogue& catalogue) {
  const Liquid cyclohexane = plain(catalogue, "cyclohexane");
  const Liquid toluene = plain(catalogue, "toluene");
  const Liquid acetone = plain(catalogue, "acetone");
  Series series{SeriesKind::feller, {}};
  for (int i = 0; i <= 4; ++i) series.mixtures.push_back(two_part(cyclohexane, toluene, i / 4.0));
  for (int i = 1; i <= 8; ++i) series.mixtures.push_back(two_part(toluene, acetone, i / 8.0));
  return series;
}

}  // namespace

std::string_view to_word(SeriesKind kind) {
  return word_of(words, kind);
}

std::vector<Mixture> even_series(const Liquid& first, const Liquid& second, int steps) {
  assert(steps >= 1);
  std::vector<Mixture> mixtures;
  for (int i = 0; i <= steps; ++i)
    mixtures.push_back(two_part(first, second, static_cast<double>(i) / static_cast<double>(steps)));
  return mixtures;
}

std::vector<Diagnostic> faults_of_series(const std::vector<std::string>& mixtures, const std::vector<Location>& places,
                                         const Catalogue& catalogue, const std::vector<Liquid>& shelf) {
  if (mixtures.empty())
    return {
        Diagnostic{{}, "it has no mixture", "write mixtures: [\"isooctane 100\", \"isooctane 80, ethanol 20\"]", {}}};
  std::vector<Diagnostic> faults;
  for (std::size_t i = 0; i < mixtures.size(); ++i) try {
      parse_mixture(mixtures[i], catalogue, shelf);
    } catch (const InputError& error) {
      for (Diagnostic fault : error.faults()) {
        fault.where = i < places.size() ? places[i] : Location{};
        faults.push_back(std::move(fault));
      }
    }
  return faults;
}

std::vector<Series> published_series(const Catalogue& catalogue) {
  std::vector<Series> found;
  if (all_known(catalogue, {"cyclohexane", "toluene", "acetone"})) found.push_back(feller_series(catalogue));
  if (all_known(catalogue, {"ligroin", "acetone"}))
    found.push_back(
        {SeriesKind::hydrocarbon_ketone, even_series(plain(catalogue, "ligroin"), plain(catalogue, "acetone"), 10)});
  if (all_known(catalogue, {"ligroin", "ethanol"}))
    found.push_back(
        {SeriesKind::hydrocarbon_alcohol, even_series(plain(catalogue, "ligroin"), plain(catalogue, "ethanol"), 10)});
  return found;
}

}  // namespace gentlest
