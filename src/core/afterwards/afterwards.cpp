#include "gentlest/afterwards/afterwards.hpp"

#include "core/afterwards/stacks.hpp"
#include "core/plan/planned_layers.hpp"
#include "core/plan/proposal.hpp"

#include "gentlest/liquids/notation.hpp"
#include "gentlest/plan/shelf.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace gentlest {

namespace {

// A shelf so large that steps of ten would make thousands of pairs gets coarser ones.
constexpr std::size_t bottles_for_fine_steps = 12;

bool serves(FinishUse use, FinishUse wanted) {
  return use == wanted || use == FinishUse::both;
}

// Gathers films and mixtures, each once, then judges.
class Table {
 public:
  Table(const Job& job, const Catalogue& catalogue, const AfterwardsQuestion& question)
      : job_(job), catalogue_(catalogue), question_(question) {
    for (const JobBottle& bottle : shelf_of(job, catalogue))
      if (bottle.liquid && !bottle.left_off) shelf_.push_back(bottle);
    lay_painting();
    ask_shelf();
    if (question.rank_candidates)
      for (const Finish& finish : catalogue.finishes().all) lay_finish(finish);
    for (const ProposedCoat& coat : job.afterwards) lay_proposed(coat);
    for (const Mixture& mixture : question.mixtures) shown_.push_back(ask(mixture));
  }

  Afterwards run() {
    FilmJudge judge(std::move(films_), std::move(asked_), job_.limits);
    judge_ = &judge;
    Afterwards answer;
    for (const Laid& one : painting_) answer.painting.push_back(one.coat);
    answer.mixtures_tried = judge.asked().size();
    answer.light = question_.light;
    answer.risk_limit = job_.limits.risk_limit;
    answer.wanted_effect = job_.limits.wanted_effect;
    answer.retouchings = ranked(retouchings_);
    answer.varnishes = ranked(varnishes_);
    answer.places = places();
    if (!proposed_.empty()) answer.asked = stack_of(proposed_);
    answer.mixtures = mixtures_on_stack();
    return answer;
  }

 private:
  std::size_t ask(const Mixture& mixture) {
    const auto [known, is_new] = index_.emplace(to_text(mixture), asked_.size());
    if (!is_new) return known->second;
    Asked one{mixture, pure_shares(mixture, catalogue_), {}, 0, true, false};
    for (const Part& part : mixture.parts()) {
      const Solvent* solvent = part.liquid.solvent;
      one.dry_shares.push_back({solvent, part.fraction});
      one.on_shelf = one.on_shelf && std::any_of(shelf_.begin(), shelf_.end(),
                                                 [&](const JobBottle& bottle) { return bottle.solvent == solvent; });
      one.on_shelf = one.on_shelf || (mixture.parts().size() == 1 && solvent->family == "water");  // from the tap
      const std::optional<LeftOff> reason = reason_to_leave_off(*solvent, job_.limits, catalogue_);
      one.avoided =
          one.avoided || (reason && reason->why != LeftOffWhy::water) || is_left_off_by_examination(part.liquid, job_);
    }
    for (const PureShare& share : one.shares)
      if (share.solvent->family == "water") one.water += share.fraction;
    asked_.push_back(std::move(one));
    return known->second;
  }

  // Nothing where a liquid of it has no place in Hansen space.
  std::optional<std::size_t> ask(const std::vector<ObservedPart>& parts) {
    std::vector<Part> made;
    for (const ObservedPart& part : parts) {
      const Solvent* solvent = catalogue_.find_solvent(part.solvent);
      if (!solvent || !solvent->hansen) return std::nullopt;
      made.push_back({make_liquid(*solvent, {}, catalogue_), part.percent / 100});
    }
    return made.empty() ? std::nullopt : std::optional(ask(Mixture(std::move(made))));
  }

  std::size_t add(Film film) {
    films_.push_back(std::move(film));
    return films_.size() - 1;
  }

  static CoatKind kind_of(Role role, const Finish* finish) {
    if (role == Role::remove) return CoatKind::remnant;
    if (!finish) return CoatKind::original;
    return finish->use == FinishUse::varnish ? CoatKind::varnish : CoatKind::retouching;
  }

  void lay_painting() {
    for (const PlannedLayer& layer : layers_as_known(job_, catalogue_)) {
      const auto written = std::find_if(job_.layers.begin(), job_.layers.end(), [&](const Layer& one) {
        return layer.passage_of.empty() && one.name == layer.name;
      });
      const bool is_layer = written != job_.layers.end();
      const Light light = is_layer ? written->light : Light::not_told;
      const std::optional<double> years = is_layer ? written->years : std::nullopt;
      Laid laid;
      laid.coat.name = layer.name;
      laid.coat.material = layer.material;
      laid.coat.material_name = layer.material_name;
      laid.coat.finish = finish_of(catalogue_.finishes(), layer.material);
      laid.coat.kind = kind_of(layer.role, laid.coat.finish);
      laid.coat.light = light;
      laid.coat.years = years;
      Film now = film_of(layer, light, years, job_, catalogue_);
      laid.coat.ageing = now.ageing;
      laid.coat.ageing_said = now.ageing_said;
      const bool grows_old = now.finish && now.state == FinishState::fresh;
      const Finish* finish = now.finish;
      laid.now = add(std::move(now));
      laid.later = grows_old ? add(aged_film(*finish, question_.light, job_, catalogue_)) : laid.now;
      painting_.insert(painting_.begin(), std::move(laid));  // a job lists from the top down
    }
  }

  // Single liquids of the shelf and their pairs: low-molecular resins want mixtures when they are old.
  void ask_shelf() {
    const int step = shelf_.size() <= bottles_for_fine_steps ? 10 : 25;
    for (std::size_t i = 0; i < shelf_.size(); ++i) {
      of_shelf_.push_back(ask(Mixture({{*shelf_[i].liquid, 1}})));
      for (std::size_t k = i + 1; k < shelf_.size(); ++k)
        for (int share = step; share < 100; share += step) {
          if (share > shelf_[i].at_most_percent || 100 - share > shelf_[k].at_most_percent) continue;
          const Mixture pair({{*shelf_[i].liquid, share / 100.0}, {*shelf_[k].liquid, (100 - share) / 100.0}});
          if (may_be_made(pair, job_.limits, catalogue_)) of_shelf_.push_back(ask(pair));
        }
    }
  }

  void add_once(std::vector<std::size_t>& list, std::optional<std::size_t> index) const {
    if (index && std::find(list.begin(), list.end(), *index) == list.end()) list.push_back(*index);
  }

  Laid laid_finish(const Finish& finish, CoatKind kind, Light light, std::optional<double> years) {
    Laid laid;
    laid.coat.name = finish.word;
    laid.coat.material = finish.material;
    laid.coat.material_name = catalogue_.find_material(finish.material)->name;
    laid.coat.finish = &finish;
    laid.coat.kind = kind;
    laid.coat.light = light;
    laid.coat.years = years;
    laid.coat.is_proposed = true;
    laid.now = add(fresh_film(finish, job_, catalogue_));
    Film aged = aged_film(finish, light, job_, catalogue_);
    laid.coat.ageing = aged.ageing;
    laid.coat.ageing_said = aged.ageing_said;
    laid.later = years && *years < years_of_a_fresh_coat ? laid.now : add(std::move(aged));
    for (const AppliedIn& one : finish.applied_in) {
      if (serves(one.as, kind == CoatKind::retouching ? FinishUse::retouching : FinishUse::varnish))
        add_once(laid.put_on_in, ask(one.parts));
      add_once(laid.take_off_in, ask(one.parts));
    }
    for (const ComesOffFact& one : finish.comes_off) add_once(laid.take_off_in, ask(one.parts));
    for (const std::size_t index : of_shelf_) add_once(laid.take_off_in, index);
    return laid;
  }

  void lay_finish(const Finish& finish) {
    if (!finish.propose) return;
    if (serves(finish.use, FinishUse::retouching))
      retouchings_.push_back(laid_finish(finish, CoatKind::retouching, question_.light, std::nullopt));
    if (serves(finish.use, FinishUse::varnish))
      varnishes_.push_back(laid_finish(finish, CoatKind::varnish, question_.light, std::nullopt));
  }

  void lay_proposed(const ProposedCoat& coat) {
    const Material& material = *catalogue_.find_material(coat.material);
    const Finish* finish = finish_of(catalogue_.finishes(), material.id);
    const Light light = coat.light == Light::not_told ? question_.light : coat.light;
    const CoatKind kind = coat.use == FinishUse::retouching ? CoatKind::retouching : CoatKind::varnish;
    Laid laid;
    if (finish) {
      laid = laid_finish(*finish, kind, light, coat.years);
    } else {  // nothing is told of it as a coat: its record speaks of it as it is put on, of later nothing does
      laid.coat = {
          material.name, CoatKind::varnish, material.id, material.name, nullptr, light, coat.years, true, {}, {}};
      PlannedLayer layer;
      layer.material = material.id;
      layer.material_name = material.name;
      laid.now = add(film_of(layer, light, std::nullopt, job_, catalogue_));
      laid.later = add({});
      laid.take_off_in = of_shelf_;
    }
    laid.coat.kind = kind;
    if (!coat.in.empty()) laid.put_on_in = {ask(parse_mixture(coat.in, catalogue_))};
    proposed_.push_back(std::move(laid));
  }

  JudgedStack stack_of(const std::vector<Laid>& above) {
    std::vector<Laid> laid = painting_;
    laid.insert(laid.end(), above.begin(), above.end());
    return judge_stack(laid, *judge_, catalogue_.finishes().neighbours);
  }

  static bool stands_before(const JudgedStack& a, const JudgedStack& b) {
    if (is_better(a.link, b.link)) return true;
    return !is_better(b.link, a.link) && a.coats.back().coat.name < b.coats.back().coat.name;
  }

  std::vector<JudgedStack> ranked(const std::vector<Laid>& candidates) {
    std::vector<JudgedStack> stacks;
    for (const Laid& one : candidates) stacks.push_back(stack_of({one}));
    std::sort(stacks.begin(), stacks.end(), stands_before);
    return stacks;
  }

  // The best of what one varnish after the other makes; `lay` gives the coats with it.
  template <class Lay>
  std::pair<std::optional<JudgedStack>, const Laid*> best_with_varnish(const Laid& retouching, Lay lay) {
    std::pair<std::optional<JudgedStack>, const Laid*> best{std::nullopt, nullptr};
    for (const Laid& varnish : varnishes_) {
      if (varnish.coat.finish == retouching.coat.finish) continue;
      JudgedStack stack = stack_of(lay(varnish));
      const bool better = !best.first || is_better(stack.link, best.first->link) ||
                          (!is_better(best.first->link, stack.link) && varnish.coat.name < best.second->coat.name);
      if (better) best = {std::move(stack), &varnish};
    }
    return best;
  }

  using Coats = std::vector<Laid>;

  std::vector<RetouchingPlace> places() {
    std::vector<RetouchingPlace> all;
    for (const Laid& retouching : retouchings_) {
      RetouchingPlace place;
      place.retouching = retouching.coat.finish;
      place.under = best_with_varnish(retouching, [&](const Laid& varnish) {
                      return Coats{retouching, varnish};
                    }).first;
      auto [over, isolating] = best_with_varnish(retouching, [&](const Laid& varnish) {
        return Coats{varnish, retouching};
      });
      place.over = std::move(over);
      if (const Laid* below = isolating)
        place.between = best_with_varnish(retouching, [&](const Laid& varnish) {
                          return Coats{*below, retouching, varnish};
                        }).first;
      place.is_better_under = !place.over || (place.under && !is_better(place.over->link, place.under->link));
      all.push_back(std::move(place));
    }
    const auto link_of = [](const RetouchingPlace& place) {
      const auto& stack = place.is_better_under ? place.under : place.over;
      return stack ? stack->link : Link{CellVerdict::fails, {}, 0, Ageing::may_not_dissolve, 0, 1};
    };
    std::sort(all.begin(), all.end(), [&](const RetouchingPlace& a, const RetouchingPlace& b) {
      if (is_better(link_of(a), link_of(b))) return true;
      return !is_better(link_of(b), link_of(a)) && a.retouching->word < b.retouching->word;
    });
    return all;
  }

  std::vector<MixtureOnStack> mixtures_on_stack() {
    std::vector<MixtureOnStack> all;
    std::vector<Laid> laid = painting_;
    laid.insert(laid.end(), proposed_.begin(), proposed_.end());
    for (const std::size_t asked : shown_) {
      MixtureOnStack one{judge_->asked()[asked].mixture, {}};
      for (const MixtureOnCoat& coat : on_each_coat(laid, asked, *judge_, catalogue_.finishes().neighbours))
        one.coats.push_back(coat);
      all.push_back(std::move(one));
    }
    return all;
  }

  const Job& job_;
  const Catalogue& catalogue_;
  const AfterwardsQuestion& question_;
  std::vector<JobBottle> shelf_;
  std::vector<Film> films_;
  std::vector<Asked> asked_;
  std::map<std::string, std::size_t> index_;
  std::vector<std::size_t> of_shelf_, shown_;
  std::vector<Laid> painting_, retouchings_, varnishes_, proposed_;
  FilmJudge* judge_ = nullptr;
};

}  // namespace

Afterwards judge_afterwards(const Job& job, const Catalogue& catalogue, const AfterwardsQuestion& question) {
  return Table(job, catalogue, question).run();
}

}  // namespace gentlest
