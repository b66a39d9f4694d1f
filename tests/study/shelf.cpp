#include "study/shelf.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <stdexcept>
#include <tuple>

namespace gentlest::study {

namespace {

const std::vector<std::string> lasting_harm = {"H300", "H301", "H310", "H311", "H330", "H331", "H340", "H341",
                                               "H350", "H351", "H360", "H361", "H370", "H371", "H372", "H373"};
const std::vector<std::string> shelf = {"isooctane",         "ligroin",           "white_spirit_dearomatised",
                                        "cyclohexane",       "methylcyclohexane", "xylene",
                                        "acetone",           "butanone",          "diethyl_ketone",
                                        "cyclopentanone",    "cyclohexanone",     "acetophenone",
                                        "diacetone_alcohol", "ethyl_acetate",     "butyl_acetate",
                                        "isoamyl_acetate",   "ethyl_lactate",     "methoxypropyl_acetate",
                                        "ethanol",           "isopropanol",       "n_butanol",
                                        "sec_butanol",       "n_pentanol",        "cyclohexanol",
                                        "benzyl_alcohol",    "methoxypropanol",   "dioxolane"};
const std::vector<std::string> aliphatic = {"isooctane", "ligroin", "white_spirit_dearomatised", "cyclohexane",
                                            "methylcyclohexane"};
const std::vector<std::string> shy_of_aliphatic = {"benzyl_alcohol", "ethyl_lactate", "diacetone_alcohol"};

bool contains(const std::vector<std::string>& list, const std::string& id) {
  return std::find(list.begin(), list.end(), id) != list.end();
}

bool may_split(const std::vector<const Solvent*>& liquids, const StudyMixture& mixture) {
  bool has_aliphatic = false, has_shy = false;
  for (const auto& [liquid, fraction] : mixture.parts) {
    has_aliphatic = has_aliphatic || contains(aliphatic, liquids[liquid]->id);
    has_shy = has_shy || contains(shy_of_aliphatic, liquids[liquid]->id);
  }
  return has_aliphatic && has_shy;
}

bool does_lasting_harm(const Solvent& solvent) {
  const std::vector<std::string>& statements = solvent.hazards->statements;
  return std::any_of(statements.begin(), statements.end(), [](const std::string& code) {
    return std::find(lasting_harm.begin(), lasting_harm.end(), code.substr(0, 4)) != lasting_harm.end();
  });
}

Hansen point_of(const std::vector<const Solvent*>& liquids, const StudyMixture& mixture) {
  Hansen point;
  for (const auto& [liquid, fraction] : mixture.parts) {
    const Hansen& h = liquids[liquid]->hansen->chosen.value;
    point.dD += fraction * h.dD;
    point.dP += fraction * h.dP;
    point.dH += fraction * h.dH;
  }
  return point;
}

StudyMixture make(const std::vector<const Solvent*>& liquids, std::vector<std::pair<std::size_t, double>> parts) {
  StudyMixture mixture{std::move(parts), {}};
  std::erase_if(mixture.parts, [](const auto& part) { return part.second <= 0; });
  mixture.point = point_of(liquids, mixture);
  return mixture;
}

std::size_t position_of(const Catalogue& catalogue, const std::string& id, std::vector<const Solvent*>& liquids) {
  const Solvent* solvent = catalogue.find_solvent(id);
  if (!solvent || !solvent->hansen) throw std::runtime_error("the catalogue has no " + id);
  const auto found = std::find(liquids.begin(), liquids.end(), solvent);
  if (found != liquids.end()) return static_cast<std::size_t>(found - liquids.begin());
  liquids.push_back(solvent);
  return liquids.size() - 1;
}

// One mixture for each cell of so many MPa^0.5 in (2 dD, dP, dH): the first in the given order. Returns positions.
std::vector<std::size_t> thin_out(const std::vector<Hansen>& points, double cell) {
  std::set<std::tuple<long, long, long>> taken;
  std::vector<std::size_t> kept;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const std::array<double, 3> place = scaled(points[i]);
    const auto index = [&](std::size_t axis) { return static_cast<long>(std::floor(place[axis] / cell)); };
    if (taken.emplace(index(0), index(1), index(2)).second) kept.push_back(i);
  }
  return kept;
}

}  // namespace

std::vector<const Solvent*> allowed_liquids(const Catalogue& catalogue) {
  std::vector<const Solvent*> allowed;
  for (const std::string& id : shelf) {
    const Solvent* solvent = catalogue.find_solvent(id);
    if (!solvent || !solvent->hansen) throw std::runtime_error("the catalogue has no " + id);
    if (solvent->hazards && !does_lasting_harm(*solvent)) allowed.push_back(solvent);
  }
  return allowed;
}

std::vector<StudyMixture> candidate_mixtures(const std::vector<const Solvent*>& liquids) {
  std::vector<StudyMixture> all;
  const std::size_t count = liquids.size();
  for (std::size_t a = 0; a < count; ++a) all.push_back(make(liquids, {{a, 1}}));
  for (std::size_t a = 0; a < count; ++a)
    for (std::size_t b = a + 1; b < count; ++b)
      for (int step = 1; step < 20; ++step) all.push_back(make(liquids, {{a, step / 20.0}, {b, 1 - step / 20.0}}));
  for (std::size_t a = 0; a < count; ++a)
    for (std::size_t b = a + 1; b < count; ++b)
      for (std::size_t c = b + 1; c < count; ++c)
        for (int i = 1; i < 9; ++i)
          for (int j = 1; i + j < 10; ++j)
            all.push_back(make(liquids, {{a, i / 10.0}, {b, j / 10.0}, {c, (10 - i - j) / 10.0}}));
  std::erase_if(all, [&](const StudyMixture& mixture) { return may_split(liquids, mixture); });
  std::vector<Hansen> points;
  for (const StudyMixture& mixture : all) points.push_back(mixture.point);
  std::vector<StudyMixture> kept;
  for (const std::size_t position : thin_out(points, 1.5)) kept.push_back(all[position]);
  return kept;
}

std::vector<StudyMixture> thirteen_mixtures(const Catalogue& catalogue, std::vector<const Solvent*>& liquids) {
  const std::size_t cyclohexane = position_of(catalogue, "cyclohexane", liquids);
  const std::size_t toluene = position_of(catalogue, "toluene", liquids);
  const std::size_t acetone = position_of(catalogue, "acetone", liquids);
  std::vector<StudyMixture> series;
  for (int step = 0; step < 4; ++step)
    series.push_back(make(liquids, {{cyclohexane, 1 - step / 4.0}, {toluene, step / 4.0}}));
  for (int step = 0; step <= 8; ++step)
    series.push_back(make(liquids, {{toluene, 1 - step / 8.0}, {acetone, step / 8.0}}));
  return series;
}

std::vector<std::vector<StudyMixture>> ten_percent_ladders(const Catalogue& catalogue,
                                                           std::vector<const Solvent*>& liquids) {
  const std::size_t spirit = position_of(catalogue, "white_spirit_dearomatised", liquids);
  const std::size_t acetone = position_of(catalogue, "acetone", liquids);
  const std::size_t ethanol = position_of(catalogue, "ethanol", liquids);
  std::vector<std::vector<StudyMixture>> ladders(3);
  for (int step = 1; step <= 10; ++step) {
    ladders[0].push_back(make(liquids, {{spirit, 1 - step / 10.0}, {acetone, step / 10.0}}));
    ladders[1].push_back(make(liquids, {{spirit, 1 - step / 10.0}, {ethanol, step / 10.0}}));
    if (step < 10) ladders[2].push_back(make(liquids, {{acetone, 1 - step / 10.0}, {ethanol, step / 10.0}}));
  }
  return ladders;
}

}  // namespace gentlest::study
