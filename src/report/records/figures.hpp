// Makes figures of the catalogue's typed records. Shared by the cards of solvents and materials.
#pragma once

#include "gentlest/catalogue/figures.hpp"
#include "report/records/card.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

std::vector<double> values_of(double value);
std::vector<double> values_of(int value);
std::vector<double> values_of(const Hansen& value);
std::vector<double> values_of(const Teas& value);
std::vector<double> values_of(const Sphere& value);
std::vector<double> values_of(const UncertainSphere& value);  ///< the standard deviations only
std::vector<double> values_of(const ExplosiveLimits& value);
std::vector<double> values_of(const PrintedRange& value);
std::vector<double> values_of(const Antoine& value);

template <class T>
Statement statement_of(const Cited<T>& cited) {
  return {values_of(cited.value), {}, cited.source, std::string(to_word(cited.standing)), cited.note};
}

inline Statement words_statement(std::string words, std::string source, Standing standing, std::string note) {
  return {{}, std::move(words), std::move(source), std::string(to_word(standing)), std::move(note)};
}

// Words and truths are words.
inline Statement statement_of(const Cited<std::string>& cited) {
  return words_statement(cited.value, cited.source, cited.standing, cited.note);
}
inline Statement statement_of(const Cited<bool>& cited) {
  return words_statement(cited.value ? "yes" : "no", cited.source, cited.standing, cited.note);
}

template <class T>
Figure figure_of(const char* key, const char* title, const char* unit, const std::optional<Known<T>>& known) {
  Figure figure{key, title, unit, {}, {}, {}};
  if (!known) return figure;
  figure.statements.push_back(statement_of(known->chosen));
  for (const Cited<T>& other : known->others) figure.statements.push_back(statement_of(other));
  figure.why = known->why;
  return figure;
}

template <class T>
Figure figure_of(const char* key, const char* title, const char* unit, const std::optional<Cited<T>>& cited) {
  Figure figure{key, title, unit, {}, {}, {}};
  if (cited) figure.statements.push_back(statement_of(*cited));
  return figure;
}

/// A figure of the table of solvents; the card gives it the title. Precondition: there is one of that key.
Figure figure_of(const Solvent& solvent, const char* key, const char* title);

/// The other names as facts of the card, by language; trade names and denatured ones marked as such.
void add_other_names(Card& card, const std::vector<OtherName>& names);

/// The publications that the card's figures and observations name, in order of first use.
std::vector<Source> sources_of(const Card& card, const Catalogue& catalogue);

}  // namespace gentlest
