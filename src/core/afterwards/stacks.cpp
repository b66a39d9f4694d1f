#include "core/afterwards/stacks.hpp"

#include "gentlest/liquids/notation.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <tuple>
#include <utility>

namespace gentlest {

namespace {

bool holds(const std::vector<std::string>& ids, const std::string& id) {
  return !id.empty() && std::find(ids.begin(), ids.end(), id) != ids.end();
}

bool speaks_of_lower(const Neighbour& neighbour, const Film& film) {
  if (holds(neighbour.lower, any_material)) return true;
  if (film.material && holds(neighbour.lower, film.material->id)) return true;
  // What is told of the fresh coat holds of the aged one where it hardly changes.
  return film.finish && (film.state == FinishState::fresh || film.like_fresh) &&
         holds(neighbour.lower, film.finish->material);
}

std::vector<const Neighbour*> told_of_pair(const std::vector<Neighbour>& neighbours, const Coat& upper,
                                           const Film& lower, FinishAct act, FinishState state) {
  std::vector<const Neighbour*> told;
  for (const Neighbour& one : neighbours) {
    const bool of_upper = holds(one.upper, any_material) ||
                          (upper.finish ? holds(one.upper, upper.finish->material) : holds(one.upper, upper.material));
    const bool of_state = act == FinishAct::put_on || one.state == FinishState::either || one.state == state;
    if (of_upper && of_state && (one.act == FinishAct::both || one.act == act) && speaks_of_lower(one, lower))
      told.push_back(&one);
  }
  return told;
}

CellVerdict verdict_of(NeighbourSays says) {
  if (says == NeighbourSays::spares) return CellVerdict::holds;
  return says == NeighbourSays::touches ? CellVerdict::fails : CellVerdict::test_first;
}

// In which the coat is put on, or known to come off: what a source tells of that act without a liquid is told of these.
bool is_usual(const Coat& coat, const Asked& asked, FinishAct act) {
  if (!coat.finish) return true;
  if (act == FinishAct::put_on)
    return std::any_of(coat.finish->applied_in.begin(), coat.finish->applied_in.end(),
                       [&](const AppliedIn& one) { return is_of_mixture(one.parts, asked); });
  return std::any_of(coat.finish->comes_off.begin(), coat.finish->comes_off.end(), [&](const ComesOffFact& one) {
    return one.result == ComesOff::comes_off && is_of_mixture(one.parts, asked);
  });
}

// What sources tell of the very pair; nothing where none does. Voices that differ stand side by side.
std::optional<Judgement> by_pair(const std::vector<const Neighbour*>& told, const Coat& upper, const Asked& asked,
                                 FinishAct act) {
  Judgement judged{CellVerdict::holds, CellBasis::known, CellWhy::told, std::nullopt, {}};
  bool differ = false;
  bool spared = false;
  const Neighbour* first = nullptr;
  for (const Neighbour* one : told) {
    if (!one->parts.empty() && !is_of_mixture(one->parts, asked)) continue;
    // A warning holds in other liquids too, an all-clear does not.
    if (one->parts.empty() && one->says != NeighbourSays::touches && !is_usual(upper, asked, act)) continue;
    differ = differ || (first && first->says != one->says);
    if (!first) first = one;
    spared = spared || one->says == NeighbourSays::spares;
    judged.verdict = std::min(judged.verdict, verdict_of(one->says));
    judged.voices.emplace_back(one);
  }
  if (judged.voices.empty()) return std::nullopt;
  if (differ) judged.basis = CellBasis::sources_disagree;
  // Two warnings are no milder than one: only an all-clear beside a warning makes a test of it.
  if (differ && spared) judged.verdict = CellVerdict::test_first;
  return judged;
}

bool rests_on_pair(const Judgement& judged) {
  return !judged.voices.empty() && std::holds_alternative<const Neighbour*>(judged.voices.front());
}

// A coat bedded in varnish: between two coats of one varnish it goes with them.
void bed(Judgement& judged, const std::vector<Laid>& laid, std::size_t upper, std::size_t lower) {
  const Coat& below = laid[lower].coat;
  if (laid[upper].coat.kind != CoatKind::varnish || !below.finish || !below.finish->bedded) return;
  const bool same = lower > 0 && laid[upper].coat.finish && laid[lower - 1].coat.finish == laid[upper].coat.finish;
  if (!same && judged.verdict != CellVerdict::holds) return;
  if (!same && rests_on_pair(judged)) return;
  judged.verdict = same ? CellVerdict::fails : std::min(judged.verdict, CellVerdict::test_first);
  judged.basis = same ? CellBasis::known : CellBasis::binder_alone;
  judged.why = CellWhy::goes_with_varnish;
  judged.chance.reset();
  judged.voices.insert(judged.voices.begin(), &*below.finish->bedded);
}

bool lies_under_varnish(const std::vector<Laid>& laid, std::size_t coat) {
  return std::any_of(laid.begin() + static_cast<std::ptrdiff_t>(coat) + 1, laid.end(),
                     [](const Laid& one) { return one.coat.kind == CoatKind::varnish; });
}

// Varnished and aged, a retouching and its varnish act as one: what is known of the bare binder is no promise.
void mark_binder(Judgement& judged) {
  if (judged.verdict == CellVerdict::fails || judged.basis == CellBasis::not_known) return;
  judged.verdict = std::min(judged.verdict, CellVerdict::test_first);
  if (judged.basis != CellBasis::sources_disagree) judged.basis = CellBasis::binder_alone;
}

// How well one mixture serves; the less the better. Of equals the one that the sources name first.
using Merit = std::tuple<bool, int, int, int, int, bool, double, std::size_t>;

class StackJudge {
 public:
  StackJudge(const std::vector<Laid>& laid, FilmJudge& judge, const std::vector<Neighbour>& neighbours)
      : laid_(laid), judge_(judge), neighbours_(neighbours) {}

  JudgedStack run() {
    JudgedStack stack;
    for (std::size_t i = 0; i < laid_.size(); ++i) {
      JudgedCoat coat{laid_[i].coat, std::nullopt, std::nullopt, std::nullopt};
      if (coat.coat.is_proposed) {
        coat.put_on = best(i, FinishAct::put_on, FinishState::fresh);
        coat.off_fresh = best(i, FinishAct::take_off, FinishState::fresh);
        coat.off_aged = best(i, FinishAct::take_off, FinishState::aged);
      }
      stack.coats.push_back(std::move(coat));
    }
    return stack;
  }

 private:
  // Of the coat below, in the state that it is in when the upper one is worked on.
  std::size_t film_below(std::size_t lower, FinishAct act, FinishState state) const {
    const bool old = act == FinishAct::take_off && state == FinishState::aged;
    return old ? laid_[lower].later : laid_[lower].now;
  }

  Judgement on_lower(std::size_t upper, std::size_t lower, std::size_t asked, FinishAct act, FinishState state,
                     const std::vector<const Neighbour*>& told) {
    const std::size_t film = film_below(lower, act, state);
    Judgement judged = judge_.touched(film, asked);
    if (std::optional<Judgement> pair = by_pair(told, laid_[upper].coat, judge_.asked()[asked], act)) {
      pair->by_sphere = judged.by_sphere;
      judged = std::move(*pair);
      if (judge_.film(film).is_water_sensitive && judge_.asked()[asked].water > 0 &&
          judged.verdict == CellVerdict::holds) {
        judged.verdict = CellVerdict::test_first;
        judged.why = CellWhy::sensitive_to_water;
      }
    }
    if (act != FinishAct::take_off) return judged;
    bed(judged, laid_, upper, lower);
    return judged;
  }

  Judgement itself(std::size_t i, std::size_t asked, FinishAct act, FinishState state) {
    const Coat& coat = laid_[i].coat;
    if (act == FinishAct::put_on) {
      Judgement made{CellVerdict::holds, CellBasis::known, CellWhy::told, std::nullopt, {}};
      if (coat.finish)
        for (const AppliedIn& one : coat.finish->applied_in)
          if (is_of_mixture(one.parts, judge_.asked()[asked])) made.voices.emplace_back(&one);
      return made.voices.empty() ? judge_.comes_off(laid_[i].now, asked) : made;
    }
    return judge_.comes_off(state == FinishState::aged ? laid_[i].later : laid_[i].now, asked);
  }

  bool is_varnished(std::size_t i) const {
    return laid_[i].coat.kind == CoatKind::retouching && lies_under_varnish(laid_, i);
  }

  // What is known of a varnished retouching is marked once the liquid is chosen: the mark is no reason to choose.
  void mark_varnished(ActInMixture& act, std::size_t i) const {
    if (is_varnished(i)) mark_binder(act.itself);
    for (std::size_t lower = 0; lower < act.under.size(); ++lower) {
      Judgement& judged = act.under[lower];
      if (is_varnished(lower) && judged.why != CellWhy::goes_with_varnish && !rests_on_pair(judged))
        mark_binder(judged);
    }
  }

  // Where nothing takes it off there is no liquid to name, and of what lies below only sources that tell of the pair
  // say anything.
  ActInMixture finished(ActInMixture act, std::size_t i, FinishAct what, FinishState state,
                        const std::vector<std::vector<const Neighbour*>>& told) const {
    if (what == FinishAct::take_off && act.itself.verdict == CellVerdict::fails) {
      act.mixture.reset();
      act.margin.reset();
      act.on_shelf = act.avoided = false;
      for (std::size_t lower = 0; lower < i; ++lower)
        if (told[lower].empty())
          act.under[lower] = {CellVerdict::open, CellBasis::not_known, CellWhy::no_liquid, std::nullopt, {}};
    }
    if (what == FinishAct::take_off && state == FinishState::aged) mark_varnished(act, i);
    return act;
  }

  Merit merit_of(const ActInMixture& act, std::size_t upper, std::size_t place, bool takes_off) const {
    Link link;
    count(link, act, upper, laid_, takes_off);
    return {act.avoided,
            link.count[0],
            link.count[1],
            link.count[2],
            link.no_facts,
            !act.on_shelf,
            std::round(1000 * link.largest_chance) / 1000,
            place};
  }

  ActInMixture best(std::size_t i, FinishAct act, FinishState state) {
    std::vector<std::vector<const Neighbour*>> told;
    for (std::size_t lower = 0; lower < i; ++lower)
      told.push_back(told_of_pair(neighbours_, laid_[i].coat, judge_.film(film_below(lower, act, state)), act, state));
    std::optional<ActInMixture> found;
    Merit best_merit;
    const auto& mixtures = act == FinishAct::put_on ? laid_[i].put_on_in : laid_[i].take_off_in;
    for (std::size_t place = 0; place < mixtures.size(); ++place) {
      const std::size_t asked = mixtures[place];
      ActInMixture tried;
      tried.itself = itself(i, asked, act, state);
      // What does not take it off is looked at only where nothing does.
      if (found && act == FinishAct::take_off && tried.itself.verdict == CellVerdict::fails &&
          found->itself.verdict != CellVerdict::fails)
        continue;
      tried.mixture = judge_.asked()[asked].mixture;
      tried.on_shelf = judge_.asked()[asked].on_shelf;
      tried.avoided = judge_.asked()[asked].avoided;
      for (std::size_t lower = 0; lower < i; ++lower)
        tried.under.push_back(on_lower(i, lower, asked, act, state, told[lower]));
      tried.margin = margin_of(tried, i, act);
      Merit merit = merit_of(tried, i, place, act == FinishAct::take_off);
      const bool takes = act == FinishAct::take_off && found && found->itself.verdict == CellVerdict::fails &&
                         tried.itself.verdict != CellVerdict::fails;
      if (found && !takes && !(merit < best_merit)) continue;
      found = std::move(tried);
      best_merit = std::move(merit);
    }
    if (found) return finished(std::move(*found), i, act, state, told);
    ActInMixture none;
    none.itself = {CellVerdict::open, CellBasis::not_known, CellWhy::no_liquid, std::nullopt, {}};
    none.under.assign(i, none.itself);
    return none;
  }

  std::optional<double> margin_of(const ActInMixture& act, std::size_t upper, FinishAct what) const {
    if (what == FinishAct::put_on || !act.itself.chance) return std::nullopt;
    double worst = 0;
    for (std::size_t lower = 0; lower < act.under.size(); ++lower) {
      if (!is_loss_below(laid_[upper].coat, laid_[lower].coat, lower + 1 == upper)) continue;
      if (!act.under[lower].chance) return std::nullopt;
      worst = std::max(worst, *act.under[lower].chance);
    }
    return *act.itself.chance - worst;
  }

  static void add(Link& link, const Judgement& judged, bool is_removal) {
    ++link.count[static_cast<std::size_t>(judged.verdict)];
    link.weakest = std::min(link.weakest, judged.verdict);
    const bool is_clear =
        judged.basis == CellBasis::known && judged.why != CellWhy::seen_open && best_witness(judged) != Witness::memory;
    if (!is_clear) ++link.no_facts;
    if (!is_clear || judged.verdict == CellVerdict::test_first) ++link.in_doubt;
    const std::optional<double> harm = is_removal ? judged.chance : judged.by_sphere;
    if (harm) link.largest_chance = std::max(link.largest_chance, is_removal ? 1 - *harm : *harm);
  }

 public:
  // As if the next coat above were taken off with it, decades later.
  MixtureOnCoat on_coat(std::size_t i, std::size_t asked) {
    MixtureOnCoat coat{itself(i, asked, FinishAct::take_off, FinishState::aged), judge_.touched(laid_[i].later, asked)};
    if (i + 1 == laid_.size()) return coat;
    const auto told = told_of_pair(neighbours_, laid_[i + 1].coat, judge_.film(laid_[i].later), FinishAct::take_off,
                                   FinishState::aged);
    coat.touched = on_lower(i + 1, i, asked, FinishAct::take_off, FinishState::aged, told);
    if (!is_varnished(i)) return coat;
    mark_binder(coat.comes_off);
    if (coat.touched.why != CellWhy::goes_with_varnish && !rests_on_pair(coat.touched)) mark_binder(coat.touched);
    return coat;
  }

  static void count(Link& link, const ActInMixture& act, std::size_t upper, const std::vector<Laid>& laid,
                    bool takes_off) {
    add(link, act.itself, takes_off);
    for (std::size_t lower = 0; lower < act.under.size(); ++lower)
      if (is_loss_below(laid[upper].coat, laid[lower].coat, lower + 1 == upper)) add(link, act.under[lower], false);
  }

 private:
  const std::vector<Laid>& laid_;
  FilmJudge& judge_;
  const std::vector<Neighbour>& neighbours_;
};

}  // namespace

JudgedStack judge_stack(const std::vector<Laid>& laid, FilmJudge& judge, const std::vector<Neighbour>& neighbours) {
  JudgedStack stack = StackJudge(laid, judge, neighbours).run();
  for (std::size_t i = 0; i < stack.coats.size(); ++i) {
    const JudgedCoat& coat = stack.coats[i];
    if (coat.coat.is_proposed) {
      const Ageing ageing = coat.coat.ageing.value_or(Ageing::may_not_dissolve);
      stack.link.ageing = std::max(stack.link.ageing, std::max(Ageing::slight, ageing));
      if (ageing > Ageing::slight) ++stack.link.in_doubt;  // what takes it off then is a matter of years
    }
    for (const auto* act : {&coat.put_on, &coat.off_fresh, &coat.off_aged})
      if (*act) StackJudge::count(stack.link, **act, i, laid, act != &coat.put_on);
  }
  return stack;
}

std::vector<MixtureOnCoat> on_each_coat(const std::vector<Laid>& laid, std::size_t asked, FilmJudge& judge,
                                        const std::vector<Neighbour>& neighbours) {
  StackJudge stack(laid, judge, neighbours);
  std::vector<MixtureOnCoat> coats;
  for (std::size_t i = 0; i < laid.size(); ++i) coats.push_back(stack.on_coat(i, asked));
  return coats;
}

bool is_better(const Link& a, const Link& b) {
  const auto key = [](const Link& link) {
    return std::tuple(-static_cast<int>(link.weakest), link.count[0], link.count[1], link.in_doubt, link.ageing,
                      link.no_facts, std::lround(1e6 * link.largest_chance));
  };
  return key(a) < key(b);
}

bool is_loss_below(const Coat& upper, const Coat& lower, bool next) {
  if (lower.kind == CoatKind::remnant) return false;
  return next || upper.kind != CoatKind::varnish || lower.kind != CoatKind::varnish || !lower.is_proposed;
}

std::vector<StackCell> cells_of(const JudgedStack& stack) {
  std::vector<StackCell> cells;
  const auto add = [&](const std::optional<ActInMixture>& act, FinishAct what, FinishState state, std::size_t upper) {
    if (!act) return;
    cells.push_back({what, state, upper, std::nullopt, &act->itself, true});
    for (std::size_t lower = 0; lower < act->under.size(); ++lower)
      cells.push_back({what, state, upper, lower, &act->under[lower],
                       is_loss_below(stack.coats[upper].coat, stack.coats[lower].coat, lower + 1 == upper)});
  };
  for (std::size_t i = 0; i < stack.coats.size(); ++i) {
    add(stack.coats[i].put_on, FinishAct::put_on, FinishState::fresh, i);
    add(stack.coats[i].off_fresh, FinishAct::take_off, FinishState::fresh, i);
    add(stack.coats[i].off_aged, FinishAct::take_off, FinishState::aged, i);
  }
  return cells;
}

StackCell weakest_cell(const JudgedStack& stack) {
  const std::vector<StackCell> cells = cells_of(stack);
  return *std::find_if(cells.begin(), cells.end(), [&](const StackCell& cell) {
    return cell.counts && cell.judged->verdict == stack.link.weakest;
  });
}

}  // namespace gentlest
