// Coats one above the other: the liquid that serves each best, and what decides. Internal to core.
#pragma once

#include "core/afterwards/films.hpp"

#include <cstddef>
#include <vector>

namespace gentlest {

/// A coat with its films, as indices of the judge: as it is when the next one goes on, and as it will be.
struct Laid {
  Coat coat;
  std::size_t now = 0;
  std::size_t later = 0;
  std::vector<std::size_t> put_on_in;    // mixtures in which it is put on, as indices of what is asked
  std::vector<std::size_t> take_off_in;  // mixtures that may take it off
};

/// Judges every pair of neighbours in both directions, and all that lies further below.
JudgedStack judge_stack(const std::vector<Laid>& laid, FilmJudge& judge, const std::vector<Neighbour>& neighbours);

/// What one mixture does to every coat, when the coat uppermost of those that it meets is taken off with it, old.
std::vector<MixtureOnCoat> on_each_coat(const std::vector<Laid>& laid, std::size_t asked, FilmJudge& judge,
                                        const std::vector<Neighbour>& neighbours);

}  // namespace gentlest
