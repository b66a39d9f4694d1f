#include "report/records/figures.hpp"

#include <algorithm>
#include <cassert>

namespace gentlest {

std::vector<double> values_of(double value) {
  return {value};
}

std::vector<double> values_of(int value) {
  return {static_cast<double>(value)};
}

std::vector<double> values_of(const Hansen& value) {
  return {value.dD, value.dP, value.dH};
}

std::vector<double> values_of(const Teas& value) {
  return {value.fd, value.fp, value.fh};
}

std::vector<double> values_of(const Sphere& value) {
  return {value.centre.dD, value.centre.dP, value.centre.dH, value.R0};
}

std::vector<double> values_of(const UncertainSphere& value) {
  return {value.sd.dD, value.sd.dP, value.sd.dH, value.R0_sd};
}

std::vector<double> values_of(const ExplosiveLimits& value) {
  if (value.upper_percent) return {value.lower_percent, *value.upper_percent};
  return {value.lower_percent};
}

std::vector<double> values_of(const PrintedRange& value) {
  return {value.low, value.high};
}

std::vector<double> values_of(const Antoine& value) {
  return {value.A, value.B, value.C, value.from_K, value.to_K};
}

Figure figure_of(const Solvent& solvent, const char* key, const char* title) {
  const SolventFigure* figure = find_solvent_figure(key);
  assert(figure);
  return std::visit([&](auto member) { return figure_of(figure->data_key, title, figure->unit, solvent.*member); },
                    figure->member);
}

std::vector<Source> sources_of(const Card& card, const Catalogue& catalogue) {
  std::vector<Source> sources;
  const auto cite = [&](const std::string& key) {
    const bool cited =
        std::any_of(sources.begin(), sources.end(), [&](const Source& source) { return source.key == key; });
    const Source* source = cited ? nullptr : catalogue.find_source(key);
    if (source) sources.push_back(*source);
  };
  for (const FigureGroup& group : card.groups)
    for (const Figure& figure : group.figures)
      for (const Statement& statement : figure.statements) cite(statement.source);
  for (const ObservedRow& row : card.observations) cite(row.judged.seen->source);
  return sources;
}

}  // namespace gentlest
