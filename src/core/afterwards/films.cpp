#include "core/afterwards/films.hpp"

#include "core/plan/unjudged.hpp"
#include "gentlest/job/limits.hpp"
#include "gentlest/plan/plan.hpp"
#include "gentlest/search/search.hpp"

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

bool holds(const std::vector<Light>& lights, Light light) {
  return std::find(lights.begin(), lights.end(), light) != lights.end();
}

bool is_mild(const std::optional<Ageing>& ageing) {
  return ageing && *ageing <= Ageing::slight;
}

// The figures of a material's film; nothing where there is no record.
void take_record(Film& film, const Material* material, const Job& job, const Catalogue& catalogue) {
  film.material = material;
  film.response = catalogue.response();
  if (!material) return;
  film.sphere = uncertain_sphere(*material, catalogue);
  film.response = response_of(*material, catalogue);
  film.reach = local_reach(*material);
  const auto harm = material->harm_grade ? std::optional(material->harm_grade->value) : std::nullopt;
  film.harm_grade = risk_grade_of(harm, film.response.strongest, job.limits);
  film.effect_grade = effect_grade_of(film.response.strongest, job.limits);
  film.rows = rows_on(*material, film.harm_grade, catalogue);
  film.is_water_sensitive =
      std::find(material->flags.begin(), material->flags.end(), Flag::water_sensitive) != material->flags.end();
}

}  // namespace

namespace {

bool takes_off(const SeenRow& row, int effect_grade) {
  return row.row->grades && row.row->grades->weakest <= effect_grade;
}

// Facts of this state alone: what was told of it fresh and holds of it aged is told of a mild change.
void note_removers(Film& film) {
  const auto by_row = [&](const std::vector<SeenRow>& rows) {
    return std::any_of(rows.begin(), rows.end(), [&](const SeenRow& row) { return takes_off(row, film.effect_grade); });
  };
  film.has_known_remover = by_row(film.rows) || by_row(film.fresh_rows);
  for (const ComesOffFact& fact : film.finish->comes_off)
    if (fact.result == ComesOff::comes_off && (fact.state == film.state || fact.state == FinishState::either))
      film.has_known_remover = true;
}

}  // namespace

std::optional<Ageing> ageing_in(const Finish& finish, Light light, std::vector<CellVoice>& said) {
  std::optional<Ageing> worst;
  for (const AgeingFact& fact : finish.ageing) {
    const bool speaks = light == Light::not_told ? std::any_of(fact.lights.begin(), fact.lights.end(),
                                                               [](Light one) { return one != Light::strong; })
                                                 : holds(fact.lights, light);
    if (!speaks) continue;
    said.emplace_back(&fact);
    worst = worst ? std::max(*worst, fact.change) : fact.change;
  }
  // What daylight does, strong light does at the least.
  if (light == Light::strong) worst = Ageing::may_not_dissolve;
  return worst;
}

Film fresh_film(const Finish& finish, const Job& job, const Catalogue& catalogue) {
  Film film;
  film.finish = &finish;
  film.state = FinishState::fresh;
  take_record(film, catalogue.find_material(finish.material), job, catalogue);
  note_removers(film);
  return film;
}

Film aged_film(const Finish& finish, Light light, const Job& job, const Catalogue& catalogue) {
  Film film;
  film.finish = &finish;
  film.state = FinishState::aged;
  film.light = light;
  film.ageing = ageing_in(finish, light, film.ageing_said);
  film.like_fresh = is_mild(film.ageing);
  const Material* fresh = catalogue.find_material(finish.material);
  const Material* aged = finish.aged.empty() ? nullptr : catalogue.find_material(finish.aged);
  take_record(film, aged ? aged : (film.like_fresh ? fresh : nullptr), job, catalogue);
  if (film.like_fresh && aged && fresh) film.fresh_rows = rows_on(*fresh, film.harm_grade, catalogue);
  note_removers(film);
  return film;
}

namespace {

// Without what the job suspects of it.
Film film_as_recorded(const PlannedLayer& layer, Light light, std::optional<double> years, const Job& job,
                      const Catalogue& catalogue) {
  const Finish* finish = finish_of(catalogue.finishes(), layer.material);
  const bool has_own_sphere = layer.basis == LayerBasis::own_tests;
  const bool is_old = years.value_or(0) >= years_of_a_fresh_coat || (!years && light != Light::not_told);
  const bool is_aged =
      finish && (layer.material == finish->aged || is_old || (finish->aged.empty() && !finish->propose));
  if (is_aged && !has_own_sphere) return aged_film(*finish, light, job, catalogue);
  if (finish && !has_own_sphere) return fresh_film(*finish, job, catalogue);
  Film film;
  take_record(film, layer.material.empty() ? nullptr : catalogue.find_material(layer.material), job, catalogue);
  film.light = light;
  if (has_own_sphere) {
    film.sphere = layer.sphere;
    film.reach = layer.reach;
    film.response = layer.response;
  }
  film.harm_grade = risk_grade_of(layer.harm_grade, film.response.strongest, job.limits);
  return film;
}

}  // namespace

Film film_of(const PlannedLayer& layer, Light light, std::optional<double> years, const Job& job,
             const Catalogue& catalogue) {
  Film film = film_as_recorded(layer, light, years, job, catalogue);
  film.is_water_sensitive = film.is_water_sensitive || is_sensitive_to_water(layer);
  return film;
}

bool is_of_mixture(const std::vector<ObservedPart>& parts, const Asked& asked) {
  const auto fits = [&](const std::vector<PureShare>& shares) {
    if (shares.size() != parts.size()) return false;
    return std::all_of(parts.begin(), parts.end(), [&](const ObservedPart& part) {
      return std::any_of(shares.begin(), shares.end(), [&](const PureShare& share) {
        return share.solvent->id == part.solvent && std::abs(100 * share.fraction - part.percent) <= 2.5;
      });
    });
  };
  return !parts.empty() && (fits(asked.shares) || fits(asked.dry_shares));
}

namespace {

struct VoiceOf {
  Voice operator()(const Observation* seen) const {
    return {seen->source, seen->witness, seen->cite, seen->note, seen->where};
  }
  Voice operator()(const Voice* voice) const { return *voice; }
  template <class Fact>
  Voice operator()(const Fact* fact) const {
    return fact->voice;
  }
};

}  // namespace

Voice voice_of(const CellVoice& one) {
  return std::visit(VoiceOf(), one);
}

std::optional<Witness> best_witness(const Judgement& judged) {
  std::optional<Witness> best;
  for (const CellVoice& one : judged.voices) {
    const Witness witness = voice_of(one).witness;
    const bool better = !best || witness == Witness::seen || (witness == Witness::practice && *best == Witness::memory);
    if (better) best = witness;
  }
  return best;
}

namespace {

bool is_told(const CellVoice& one) {
  return std::holds_alternative<const ComesOffFact*>(one);
}

// What the voices on one film and mixture come to: how many say that it acts, that it may, that it does not.
struct Heard {
  std::vector<CellVoice> acts, may, spares;
  bool empty() const { return acts.empty() && may.empty() && spares.empty(); }
  std::vector<CellVoice> all() const {
    std::vector<CellVoice> voices = acts;
    voices.insert(voices.end(), spares.begin(), spares.end());
    voices.insert(voices.end(), may.begin(), may.end());
    return voices;
  }
};

enum class Says { acts, may, spares };

void hear(Heard& heard, Says says, const CellVoice& voice) {
  (says == Says::acts ? heard.acts : says == Says::may ? heard.may : heard.spares).push_back(voice);
}

// A row on the very mixture; a pure liquid with a little water in its bottle counts as itself.
std::vector<SeenRow> rows_of(const std::vector<SeenRow>& rows, const Asked& asked) {
  std::vector<SeenRow> found;
  for (const SeenRow& row : rows)
    if (is_of_mixture(row.row->parts, asked)) found.push_back(row);
  // Seconds under a brush are nearer to a swab than to hours in a vial.
  std::vector<SeenRow> brief;
  for (const SeenRow& row : found)
    if (is_short(row.row->contact)) brief.push_back(row);
  return brief.empty() ? found : brief;
}

bool speaks_of(const ComesOffFact& fact, const Film& film, const Asked& asked) {
  if (!fact.any_liquid && !is_of_mixture(fact.parts, asked)) return false;
  const bool of_state = fact.state == FinishState::either || fact.state == film.state ||
                        (film.state == FinishState::aged && fact.state == FinishState::fresh && film.like_fresh);
  if (!of_state) return false;
  if (fact.lights.empty() || holds(fact.lights, film.light)) return true;
  // Of a coat that hardly changes, what was seen in one light holds in another, strong light left out.
  return film.like_fresh && film.light != Light::strong && !holds(fact.lights, Light::strong);
}

Says says_touched(ComesOff result) {
  if (result == ComesOff::untouched) return Says::spares;
  return result == ComesOff::stays ? Says::may : Says::acts;
}

Says says_off(ComesOff result) {
  if (result == ComesOff::comes_off) return Says::acts;
  return result == ComesOff::swells ? Says::may : Says::spares;
}

Says says_touched(const SeenRow& row) {
  return row.says == Sighting::acts ? Says::acts : row.says == Sighting::spares ? Says::spares : Says::may;
}

Says says_off(const SeenRow& row, int effect_grade) {
  const Observation& seen = *row.row;
  if (!seen.grades) return Says::may;
  if (seen.grades->weakest <= effect_grade) return Says::acts;
  return seen.grades->strongest > effect_grade ? Says::spares : Says::may;
}

// A fact may say in which light a row of the same source was seen: in another light the row says nothing.
bool is_of_another_light(const SeenRow& row, const Film& film, const Asked& asked) {
  return film.finish &&
         std::any_of(film.finish->comes_off.begin(), film.finish->comes_off.end(), [&](const ComesOffFact& fact) {
           return fact.voice.source == row.row->source && !fact.lights.empty() && is_of_mixture(fact.parts, asked) &&
                  !speaks_of(fact, film, asked);
         });
}

// A record may hold rows of old films beside those of fresh ones.
bool is_of_an_old_film(const SeenRow& row) {
  return row.row->state.rfind("aged", 0) == 0;
}

template <class OfRow, class OfResult>
Heard listen(const Film& film, const Asked& asked, OfRow of_row, OfResult of_result) {
  Heard heard;
  if (film.finish)
    for (const ComesOffFact& fact : film.finish->comes_off)
      if (speaks_of(fact, film, asked)) hear(heard, of_result(fact.result), &fact);
  for (const SeenRow& row : rows_of(film.rows, asked))
    if ((film.state != FinishState::fresh || !is_of_an_old_film(row)) && !is_of_another_light(row, film, asked))
      hear(heard, of_row(row), row.row);
  // What the aged record says itself goes before what is taken over from the fresh one.
  if (heard.acts.empty() && heard.spares.empty())
    for (const SeenRow& row : rows_of(film.fresh_rows, asked)) hear(heard, of_row(row), row.row);
  return heard;
}

// Told of liquids of which the mixture is made, each alone.
std::optional<Judgement> by_parts(const Film& film, const Asked& asked) {
  if (asked.dry_shares.size() < 2) return std::nullopt;
  Judgement judged{CellVerdict::holds, CellBasis::estimated, CellWhy::each_part, std::nullopt, {}};
  bool all_spare = true;
  for (const PureShare& share : asked.dry_shares) {
    const auto rows = rows_of_liquid(film.rows, *share.solvent);
    const Sighting worst = worst_of(rows);
    for (const SeenRow& row : rows) judged.voices.emplace_back(row.row);
    if (worst == Sighting::acts)
      return Judgement{CellVerdict::open, CellBasis::not_known, CellWhy::a_part_acts, std::nullopt, {rows.front().row}};
    all_spare = all_spare && worst == Sighting::spares;
  }
  return all_spare ? std::optional(judged) : std::nullopt;
}

CellWhy why_of(const Heard& heard) {
  const std::vector<CellVoice> voices = heard.all();
  return is_told(voices.front()) ? CellWhy::told : CellWhy::seen;
}

}  // namespace

std::optional<double> FilmJudge::chance(std::size_t i, std::size_t which, int grade) {
  const Film& one = films_[i];
  const Asked& asked = asked_[which];
  if (!one.sphere || asked.water > most_water) return std::nullopt;
  auto found = chances_.find({i, grade});
  if (found == chances_.end()) {
    PlannedLayer layer;
    layer.sphere = one.sphere;
    std::vector<Liquid> liquids;
    for (const Asked& any : asked_) add_liquids(liquids, any.mixture);
    found =
        chances_
            .emplace(std::pair(i, grade), PointChance({met_by_liquids(layer, liquids), one.response, grade, one.reach}))
            .first;
  }
  return rounded_chance(found->second(mix(asked.mixture)));
}

const Judgement& FilmJudge::touched(std::size_t i, std::size_t which) {
  const auto known = touched_.find({i, which});
  if (known != touched_.end()) return known->second;
  const Film& one = films_[i];
  const Asked& asked = asked_[which];
  const Heard heard = listen(
      one, asked, [](const SeenRow& row) { return says_touched(row); },
      [](ComesOff result) { return says_touched(result); });
  Judgement judged;
  judged.voices = heard.all();
  if (!heard.acts.empty() && !heard.spares.empty())
    judged = {CellVerdict::test_first, CellBasis::sources_disagree, why_of(heard), std::nullopt, heard.all()};
  else if (!heard.acts.empty())
    judged = {CellVerdict::fails, CellBasis::known, why_of(heard), std::nullopt, heard.all()};
  else if (!heard.spares.empty() && heard.may.empty())
    judged = {CellVerdict::holds, CellBasis::known, why_of(heard), std::nullopt, heard.all()};
  else if (!heard.spares.empty())
    judged = {CellVerdict::test_first, CellBasis::known, CellWhy::seen_open, std::nullopt, heard.all()};
  else if (const auto risk = chance(i, which, one.harm_grade)) {
    const CellVerdict by_chance = *risk <= limits_.risk_limit ? CellVerdict::holds
                                  : *risk < 0.5               ? CellVerdict::test_first
                                                              : CellVerdict::fails;
    judged = {heard.empty() ? by_chance : std::min(by_chance, CellVerdict::test_first), CellBasis::estimated,
              heard.empty() ? CellWhy::chance : CellWhy::seen_open, risk, heard.all()};
  } else if (!heard.may.empty())
    judged = {CellVerdict::test_first, CellBasis::known, CellWhy::seen_open, std::nullopt, heard.all()};
  else if (const auto parts = by_parts(one, asked))
    judged = *parts;
  else
    judged.why = asked.water > most_water      ? CellWhy::water
                 : one.finish && !one.material ? CellWhy::no_aged_record
                                               : CellWhy::nothing_known;
  judged.by_sphere = chance(i, which, one.harm_grade);
  if (one.is_water_sensitive && asked.water > 0 && judged.verdict == CellVerdict::holds) {
    judged.verdict = CellVerdict::test_first;
    judged.why = CellWhy::sensitive_to_water;
  }
  return touched_.emplace(std::pair(i, which), std::move(judged)).first->second;
}

const Judgement& FilmJudge::comes_off(std::size_t i, std::size_t which) {
  const auto known = comes_off_.find({i, which});
  if (known != comes_off_.end()) return known->second;
  const Film& one = films_[i];
  const Asked& asked = asked_[which];
  const Heard heard = listen(
      one, asked, [&](const SeenRow& row) { return says_off(row, one.effect_grade); },
      [](ComesOff result) { return says_off(result); });
  Judgement judged;
  if (!heard.acts.empty() && !heard.spares.empty())
    judged = {CellVerdict::test_first, CellBasis::sources_disagree, why_of(heard), std::nullopt, heard.all()};
  else if (!heard.acts.empty())
    // Swelling told beside coming off: two voices that differ, as on a resin that one sheet lists as soluble.
    judged = {heard.may.empty() || !is_told(heard.may.front()) ? CellVerdict::holds : CellVerdict::test_first,
              heard.may.empty() || !is_told(heard.may.front()) ? CellBasis::known : CellBasis::sources_disagree,
              why_of(heard), std::nullopt, heard.all()};
  else if (!heard.spares.empty())
    judged = {CellVerdict::fails, CellBasis::known, why_of(heard), std::nullopt, heard.all()};
  else if (!heard.may.empty())
    judged = {CellVerdict::test_first, CellBasis::known, CellWhy::seen_open, std::nullopt, heard.all()};
  else if (const auto effect = chance(i, which, one.effect_grade)) {
    const CellVerdict by_chance = *effect >= limits_.wanted_effect       ? CellVerdict::holds
                                  : *effect >= limits_.wanted_effect / 2 ? CellVerdict::test_first
                                                                         : CellVerdict::fails;
    // Where it is known what takes it off, an estimate of another liquid is no more than worth a test.
    const CellVerdict beside_known = by_chance == CellVerdict::holds ? CellVerdict::test_first : CellVerdict::fails;
    judged = {one.has_known_remover ? beside_known : by_chance, CellBasis::estimated, CellWhy::chance, effect, {}};
  } else
    judged.why = asked.water > most_water      ? CellWhy::water
                 : one.finish && !one.material ? CellWhy::no_aged_record
                                               : CellWhy::nothing_known;
  // In strong light nothing is promised. Where no light is told, what was seen on old films of it stands.
  const bool seen_old = one.light == Light::not_told && judged.basis == CellBasis::known;
  const bool may_not = one.state == FinishState::aged && one.ageing == Ageing::may_not_dissolve && !seen_old;
  if (may_not && judged.verdict > CellVerdict::open) {
    judged.verdict = CellVerdict::open;
    judged.why = CellWhy::may_not_dissolve;
    if (judged.chance) judged.chance = std::min(*judged.chance, most_chance_in_strong_light);
    judged.voices.insert(judged.voices.end(), one.ageing_said.begin(), one.ageing_said.end());
  }
  // Nothing tells how it ages: what was told of it fresh is no promise.
  return comes_off_.emplace(std::pair(i, which), std::move(judged)).first->second;
}

}  // namespace gentlest
