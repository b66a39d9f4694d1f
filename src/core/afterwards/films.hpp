// A coat in one state, and what a mixture does to it. Internal to core.
#pragma once

#include "core/plan/planned_layers.hpp"

#include "gentlest/afterwards/afterwards.hpp"
#include "gentlest/liquids/pure_shares.hpp"
#include "gentlest/plan/plan.hpp"
#include "gentlest/space/point_chance.hpp"

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace gentlest {

/// Largest share of water that still counts as a grade of an alcohol, by volume; above it water acts by other ways than
/// a sphere speaks of.
inline constexpr double most_water = 0.10;

/// Chance that an estimate may not exceed where light may have joined the chains of a resin: as open as a coin.
inline constexpr double most_chance_in_strong_light = 0.5;

/// A coat that has lain for less than this, in no light that is told, is judged as fresh; our own choice.
inline constexpr double years_of_a_fresh_coat = 1;

/// A mixture that is asked about.
struct Asked {
  Mixture mixture;
  std::vector<PureShare> shares;      // water of a grade by itself
  std::vector<PureShare> dry_shares;  // as if the bottles held none
  double water = 0;                   // share of all
  bool on_shelf = false;
  bool avoided = false;
};

/// One coat in one state.
struct Film {
  const Material* material = nullptr;  // null: nobody knows it, or the catalogue has no record of it in this state
  const Finish* finish = nullptr;
  FinishState state = FinishState::either;  // fresh or aged, of a finish
  Light light = Light::not_told;
  std::optional<Ageing> ageing;  // of an aged finish; nothing: not told
  std::vector<CellVoice> ageing_said;
  bool like_fresh = false;  // what is known of it fresh holds of it aged
  bool is_water_sensitive = false;
  bool has_known_remover = false;  // of a finish: some liquid is known to take it off in this state
  std::optional<UncertainSphere> sphere;
  Response response;
  LocalReach reach;
  int harm_grade = 4;
  int effect_grade = 2;
  std::vector<SeenRow> rows;        // on the very record
  std::vector<SeenRow> fresh_rows;  // on the fresh one, where `like_fresh`
};

/// A finish as it is put on, or as it will be in this light.
Film fresh_film(const Finish& finish, const Job& job, const Catalogue& catalogue);
Film aged_film(const Finish& finish, Light light, const Job& job, const Catalogue& catalogue);
/// A layer or passage as it is; in `light` and for `years`, where it is a finish.
Film film_of(const PlannedLayer& layer, Light light, std::optional<double> years, const Job& job,
             const Catalogue& catalogue);

/// What is told of ageing in this light: the worst of all voices; where no light is told, of all but strong light.
std::optional<Ageing> ageing_in(const Finish& finish, Light light, std::vector<CellVoice>& said);

/// True where the fact's shares are those of the mixture, each within 2.5 points.
bool is_of_mixture(const std::vector<ObservedPart>& parts, const Asked& asked);

/// Judges films; remembers what it has judged.
class FilmJudge {
 public:
  FilmJudge(std::vector<Film> films, std::vector<Asked> asked, const Limits& limits)
      : films_(std::move(films)), asked_(std::move(asked)), limits_(limits) {}

  const Film& film(std::size_t i) const { return films_[i]; }
  const std::vector<Asked>& asked() const { return asked_; }
  const Limits& limits() const { return limits_; }

  const Judgement& touched(std::size_t film, std::size_t asked);
  const Judgement& comes_off(std::size_t film, std::size_t asked);

 private:
  using Key = std::pair<std::size_t, std::size_t>;
  std::optional<double> chance(std::size_t film, std::size_t asked, int grade);

  std::vector<Film> films_;
  std::vector<Asked> asked_;
  Limits limits_;
  std::map<Key, Judgement> touched_, comes_off_;
  std::map<std::pair<std::size_t, int>, PointChance> chances_;
};

}  // namespace gentlest
