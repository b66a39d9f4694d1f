#include "property/conduct_sessions.hpp"

#include "gentlest/learning/learning.hpp"
#include "gentlest/liquids/notation.hpp"
#include "gentlest/liquids/recipe.hpp"
#include "gentlest/plan/shelf.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace gentlest::test {

namespace {

constexpr double hair = 1e-7;

bool is_alkane(const Solvent& solvent) {
  return solvent.family == "aliphatic hydrocarbon" || solvent.family == "petroleum fraction";
}

std::map<std::string, double> shares_of(const Mixture& mixture) {
  std::map<std::string, double> shares;
  for (const Part& part : mixture.parts()) shares[part.liquid.label] += part.fraction;
  return shares;
}

bool are_same(const std::map<std::string, double>& a, const std::map<std::string, double>& b) {
  if (a.empty() || a.size() != b.size()) return false;
  for (const auto& [label, share] : a) {
    const auto other = b.find(label);
    if (other == b.end() || std::abs(other->second - share) > 0.01 + hair) return false;
  }
  return true;
}

double RED_of(const PlannedLayer& layer, const Hansen& point) {
  const Sphere& sphere = layer.sphere->mean;
  const double dD = 2 * (point.dD - sphere.centre.dD);
  const double Ra =
      std::sqrt(dD * dD + std::pow(point.dP - sphere.centre.dP, 2) + std::pow(point.dH - sphere.centre.dH, 2));
  double longer = 0;
  for (const LocalReach::Place& place : layer.reach.places) {
    const double d = 2 * (point.dD - place.at.dD);
    const double square = d * d + std::pow(point.dP - place.at.dP, 2) + std::pow(point.dH - place.at.dH, 2);
    longer += place.weight * std::exp(-square / (2 * layer.reach.length * layer.reach.length));
  }
  return Ra / (sphere.R0 * std::exp(longer));
}

// The layers that a named place may touch; every one to keep where the name says nothing.
std::set<std::string> layers_at(const Plan& plan, const std::string& passage, bool harmed) {
  std::set<std::string> kept;
  std::string uppermost;
  for (const PlannedLayer& layer : plan.layers)
    if (layer.role == Role::keep) {
      kept.insert(layer.name);
      if (uppermost.empty()) uppermost = layer.name;
    }
  if (kept.count(passage) == 1) return {passage};
  for (const Passage& one : plan.job.passages)
    if (one.name == passage) return {kept.count(one.of) == 1 ? one.of : std::string()};
  if (passage.empty() && !harmed) return {uppermost};
  return kept;
}

// Heights on a line, by rungs and half steps only.
std::optional<double> height_of(const LadderLine& line, const std::map<std::string, double>& shares) {
  for (std::size_t i = 0; i < line.rungs.size(); ++i) {
    const auto here = shares_of(line.rungs[i].mixture);
    if (are_same(here, shares)) return static_cast<double>(i + 1);
    if (i + 1 == line.rungs.size()) break;
    std::map<std::string, double> half;
    for (const auto& [label, share] : here) half[label] += share / 2;
    for (const auto& [label, share] : shares_of(line.rungs[i + 1].mixture)) half[label] += share / 2;
    if (are_same(half, shares)) return static_cast<double>(i) + 1.5;
  }
  return std::nullopt;
}

// The rung or half step whose measured recipe this is; else the mixture itself.
Mixture as_planned(const Plan& plan, const Mixture& made) {
  const auto shares = shares_of(made);
  std::vector<Mixture> steps;
  for (const LadderLine& line : plan.lines)
    for (std::size_t i = 0; i < line.rungs.size(); ++i) {
      steps.push_back(line.rungs[i].mixture);
      if (i + 1 == line.rungs.size()) continue;
      std::map<std::string, Part> half;
      for (const std::size_t rung : {i, i + 1})
        for (const Part& part : line.rungs[rung].mixture.parts())
          half.try_emplace(part.liquid.label, Part{part.liquid, 0}).first->second.fraction += part.fraction / 2;
      std::vector<Part> parts;
      for (const auto& [label, part] : half) parts.push_back(part);
      steps.emplace_back(std::move(parts));
    }
  for (const Mixture& step : steps)
    if (are_same(shares_of(step), shares)) return made;
  const Limits& limits = plan.job.limits;
  for (const Mixture& step : steps)
    if (are_same(
            shares_of(round_recipe(step, {Millilitres{limits.vial_mL}, Millilitres{limits.measure_mL}}).as_measured),
            shares))
      return step;
  return made;
}

bool nothing_done(const Seen& one) {
  return one.removal == 0 && one.looked && !one.harmed;
}

bool is_known(const Plan& plan, const std::string& passage) {
  bool known = passage.empty();
  for (const PlannedLayer& layer : plan.layers) known = known || (layer.role == Role::keep && layer.name == passage);
  for (const Passage& one : plan.job.passages) known = known || one.name == passage;
  return known;
}

// At the edge, or on the picture under the same layer; what lay under a name that nobody knows licenses nothing.
bool is_same_spot(const Plan& plan, const Seen& one, const OpenTest& open) {
  if (one.edge != (open.place == Place::edge)) return false;
  if (!one.edge && !is_known(plan, one.passage)) return false;
  return one.edge || one.passage == open.passage ||
         layers_at(plan, one.passage, false) == layers_at(plan, open.passage, false);
}

struct Check {
  const Plan& plan;
  const std::vector<Seen>& seen;
  const Conduct& conduct;

  int wanted() const { return 3; }

  bool is_success(const Seen& one) const {
    return !one.edge && !one.blank && one.removal >= wanted() && one.looked && !one.harmed && !one.shares.empty() &&
           is_known(plan, one.passage);
  }

  bool closes(const Seen& harm, const OpenTest& open) const {
    const auto shares = shares_of(open.mixture);
    if (are_same(harm.shares, shares)) return true;
    const std::set<std::string> harmed = layers_at(plan, harm.passage, true);
    const std::set<std::string> touched = open.place == Place::edge ? harmed : layers_at(plan, open.passage, false);
    bool meets = false;
    for (const std::string& name : touched) meets = meets || harmed.count(name) == 1;
    if (harm.shares.empty()) return meets && !harm.blank && !harm.own_solution;
    if (!meets) return false;
    bool any_active = false;
    for (const auto& [label, is_alkane_one] : harm.is_hydrocarbon) any_active = any_active || !is_alkane_one;
    bool as_much = true;
    for (const auto& [label, share] : harm.shares) {
      if (any_active && harm.is_hydrocarbon.at(label)) continue;
      const auto other = shares.find(label);
      as_much = as_much && other != shares.end() && other->second >= share - hair;
    }
    if (as_much) return true;
    for (const PlannedLayer& layer : plan.layers)
      if (layer.sphere && touched.count(layer.name) == 1 && harmed.count(layer.name) == 1 &&
          RED_of(layer, mix(open.mixture)) <= RED_of(layer, harm.point) - hair)
        return true;
    return false;
  }

  std::string of_open(const OpenTest& open) const {
    const auto shares = shares_of(open.mixture);
    const bool repeats = open.purpose == Purpose::second_spot || open.purpose == Purpose::other_passage;
    for (const Seen& one : seen)
      if (one.harmed && closes(one, open)) return "rule 6 or 8: a closed mixture is open";
    if (open.place == Place::picture)
      for (const Seen& one : seen)
        if (one.harmed && !one.edge && !one.passage.empty() && one.passage == open.passage)
          for (const Passage& passage : plan.job.passages)
            if (passage.name == one.passage) return "rule 9: a closed passage is open";
    if (repeats) {
      const bool worked = std::any_of(seen.begin(), seen.end(),
                                      [&](const Seen& one) { return is_success(one) && are_same(one.shares, shares); });
      return worked ? "" : "rule 15: something else than what worked is to be tried on a passage";
    }
    bool is_on_plan = false;
    std::string fault = "rule 3: no line lets it be tried there";
    for (const LadderLine& line : plan.lines) {
      const auto height = height_of(line, shares);
      if (!height) continue;
      is_on_plan = true;
      if (on_line(open, line, *height).empty()) fault.clear();
    }
    if (!is_on_plan) return "rule 1: it is no rung and no half step";
    if (!fault.empty()) return fault;
    for (const Seen& one : seen)
      if (is_same_spot(plan, one, open) && nothing_done(one) && are_same(one.shares, shares))
        return "rule 5: what did nothing is asked again";
    if (open.place == Place::edge)
      return edge_left() > 0 && !is_refuted() ? "" : "rule 10: the edge is spent or refuted";
    if (edge_left() <= 0 || is_refuted()) return "";
    for (const Seen& one : seen) {
      if (!one.edge || !one.looked || one.harmed || one.shares.empty()) continue;
      if (are_same(one.shares, shares)) return "";
      for (const LadderLine& line : plan.lines) {
        const auto a = height_on_line(line, one), b = height_of(line, shares);
        if (a && b && *a > *b && nothing_done(one)) return "";
      }
    }
    return "rule 4: it was not at the edge first";
  }

  std::string on_line(const OpenTest& open, const LadderLine& line, double height) const {
    std::map<double, bool> tried;  // height there without harm -> did nothing, each time
    for (const Seen& one : seen) {
      if (one.shares.empty() || one.harmed || !one.looked || !is_same_spot(plan, one, open)) continue;
      const auto at = height_on_line(line, one);
      if (!at) continue;
      const auto [entry, is_new] = tried.try_emplace(*at, nothing_done(one));
      if (!is_new) entry->second = entry->second && nothing_done(one);
    }
    if (tried.empty()) return height <= 1 + hair ? "" : "rule 3: not from the gentlest on";
    const double highest = tried.rbegin()->first;
    double reach = 1;
    if (tried.size() > 1 && tried.rbegin()->second && std::next(tried.rbegin())->second) reach = 2;
    if (height > std::floor(highest + hair) + reach + hair) return "rule 3: too high";
    if (height < highest - hair && open.purpose != Purpose::step_back) {
      // Weaker of the same bottles: only a new mixture on its way to the picture, never below what did nothing.
      if (open.place != Place::edge || tried.rbegin()->second) return "rule 5: weaker than what was borne";
    }
    return "";
  }

  std::optional<double> height_on_line(const LadderLine& line, const Seen& one) const {
    if (const auto exact = height_of(line, one.shares)) return exact;
    if (!line.active || line.rungs.size() < 2) return std::nullopt;
    // In between: by the share of what is added.
    const auto added = shares_of(*line.active);
    double share = 0;
    for (const auto& [label, part] : one.shares) {
      if (std::find(line.bottles.begin(), line.bottles.end(), label) == line.bottles.end()) return std::nullopt;
      if (added.count(label) == 1) share += part;
    }
    for (const auto& [label, part] : added) {
      const auto found = one.shares.find(label);
      if (std::abs((found == one.shares.end() ? 0 : found->second) - share * part) > 0.006) return std::nullopt;
    }
    const auto share_of_rung = [&](std::size_t rung) {
      double sum = 0;
      for (const auto& [label, part] : shares_of(line.rungs[rung].mixture))
        if (added.count(label) == 1) sum += part;
      return sum;
    };
    const double height = 1 + (share - share_of_rung(0)) / (share_of_rung(1) - share_of_rung(0));
    const double near = std::round(2 * height) / 2;
    return std::abs(height - near) * (share_of_rung(1) - share_of_rung(0)) <= 0.006 ? near : height;
  }

  int edge_left() const {
    int made = 0;
    for (const Seen& one : seen) made += one.edge ? 1 : 0;
    return plan.job.limits.edge_tests - made;
  }

  bool is_refuted() const {
    for (std::size_t later = 0; later < seen.size(); ++later)
      for (std::size_t first = 0; first < later; ++first)
        if (seen[later].harmed && !seen[later].edge && seen[first].edge && seen[first].looked && !seen[first].harmed &&
            (are_same(seen[first].shares, seen[later].shares) ||
             (seen[first].own_solution && seen[first].words == seen[later].words)))
          return true;
    return false;
  }

  std::string of_end() const {
    bool must_end = false;
    for (const Seen& one : seen) must_end = must_end || (one.blank && one.harmed);
    for (const Seen& a : seen)
      for (const Seen& b : seen)
        if (&a < &b && a.harmed && b.harmed && !a.shares.empty() && !b.shares.empty() && !are_same(a.shares, b.shares))
          must_end = true;
    for (const Seen& a : seen)
      for (const Seen& b : seen)
        if (a.own_solution && a.harmed && b.harmed && a.words != b.words) must_end = true;
    if (must_end && !conduct.end) return "rule 2 or 11: the series does not end";
    if (conduct.end && !conduct.open.empty()) return "rule 11: a test is open after the end";
    for (const Seen& one : seen) {
      if (!one.harmed || one.edge || !one.lasting || one.blank || one.own_solution) continue;
      const bool other_acted =
          std::any_of(seen.begin(), seen.end(), [](const Seen& other) { return other.removal > 0 && !other.harmed; });
      if (!other_acted && !conduct.end) return "rule 11: lasting harm by the gentlest that acted does not end it";
    }
    return "";
  }

  std::string of_harms() const {
    std::vector<std::size_t> harms;
    for (std::size_t i = 0; i < seen.size(); ++i)
      if (seen[i].harmed) harms.push_back(i);
    return harms == conduct.harms ? "" : "rule 12: a harm is missing, or one is told that is none";
  }

  std::string of_working() const {
    for (const WorkingMixture& working : conduct.working) {
      const auto shares = shares_of(working.mixture);
      bool strong = false;
      std::size_t successes = 0;
      for (const Seen& one : seen) {
        if (!are_same(one.shares, shares)) continue;
        if (one.harmed) return "rule 7: a mixture that harmed is said to work";
        if (!is_success(one)) continue;
        ++successes;
        strong = strong || !one.weak;
      }
      if (successes == 0) return "rule 13: what never worked is said to work";
      if (working.needs_second_spot != (!strong && successes < 2)) return "rule 14: the second spot";
      for (const std::string& passage : working.passed) {
        const bool is_so = std::any_of(seen.begin(), seen.end(), [&](const Seen& one) {
          return !one.edge && one.passage == passage && one.looked && !one.harmed && are_same(one.shares, shares);
        });
        if (!is_so) return "rule 13: a passage is said to have passed";
      }
      if (working.passed.size() + working.untested.size() + working.closed.size() != plan.job.passages.size())
        return "rule 13: a passage is left out";
    }
    const WorkingMixture* now = working_now(conduct);
    if (!now) return "";
    const auto shares = shares_of(now->mixture);
    for (const Seen& success : seen)
      if (is_success(success) && are_same(success.shares, shares))
        for (const Seen& one : seen)
          if (one.harmed && closes(one, {{}, now->mixture, Place::picture, success.passage}))
            return "rule 6: what is closed is said to work";
    bool worked = false;
    for (const Seen& one : seen) {
      if (one.edge || !are_same(one.shares, shares)) continue;
      if (is_success(one)) worked = true;
      if (worked && one.removal >= 0 && one.removal < wanted()) return "rule 13: a later reading says otherwise";
    }
    for (const OpenTest& open : conduct.open)
      if (open.purpose != Purpose::second_spot && open.purpose != Purpose::other_passage &&
          open.purpose != Purpose::step_back)
        return "rule 15: the climb goes on after a success";
    return "";
  }
};

// What was read of the original, by itself.
void judge(const Reading& reading, Seen& one) {
  one.removal = reading.removal ? static_cast<int>(*reading.removal) : -1;
  one.looked = reading.original.has_value();
  const bool bad_colour = reading.colour == SwabColour::original || reading.colour == SwabColour::not_known;
  const bool only_colour = reading.original == OriginalReading::colour_on_swab;
  if (!reading.original)
    one.harmed = bad_colour || reading.colour == SwabColour::retouching;
  else if (*reading.original == OriginalReading::nothing_seen)
    one.harmed = bad_colour;
  else
    one.harmed = !(only_colour && (reading.colour == SwabColour::varnish || reading.colour == SwabColour::dirt));
  one.lasting =
      one.harmed && reading.original != OriginalReading::recovers && reading.original != OriginalReading::nothing_seen;
}

}  // namespace

ConductSession::ConductSession(const Plan& plan, const Catalogue& catalogue, std::uint64_t seed)
    : plan_(plan), catalogue_(catalogue), random_(seed) {
  for (const Liquid& liquid : plan.shelf) labels_.push_back(liquid.label);
  bottles_ = all_liquids(shelf_of(plan.job, catalogue));
  conduct_ = conduct_of(plan, {}, catalogue);
}

Reading ConductSession::drawn_place(const Conduct& conduct) {
  Reading reading;
  const std::size_t kind = below(20);
  if (kind < 14 && !conduct.open.empty()) {
    const OpenTest& open = conduct.open[below(2) == 0 ? 0 : below(conduct.open.size())];
    reading.mixture = to_text(open.mixture);
    reading.at_edge = open.place == Place::edge;
    reading.passage = open.passage;
    return reading;
  }
  reading.at_edge = below(3) == 0;
  if (!plan_.job.passages.empty() && below(2) == 0)
    reading.passage = plan_.job.passages[below(plan_.job.passages.size())].name;
  if (below(15) == 0) reading.passage = "no such passage";
  if (kind < 17 && !conduct.steps.empty()) {
    reading.mixture = to_text(conduct.steps[below(conduct.steps.size())].mixture);
  } else if (kind == 17) {
    reading.mixture = "acetone 37, cyclohexane 63";  // not on the shelf
  } else if (kind == 18) {
    const std::size_t a = below(labels_.size()), b = below(labels_.size());
    const int share = 5 * static_cast<int>(1 + below(19));
    reading.mixture =
        a == b ? labels_[a] + " 100" : fmt::format("{} {}, {} {}", labels_[a], share, labels_[b], 100 - share);
  } else {
    const char* others[] = {"something in a bottle", "dry swab", "saliva", "aqueous: citrate 2 % pH 7",
                            "aqueous: gum of my own"};
    reading.mixture = others[below(5)];
  }
  return reading;
}

void ConductSession::draw_outcome(Reading& reading) {
  if (below(10) > 0) reading.removal = static_cast<RemovalReading>(below(gentlest::reading_levels));
  if (below(3) == 0) reading.removal = RemovalReading::no_effect;
  if (below(12) > 0)
    reading.original =
        below(8) == 0 ? static_cast<OriginalReading>(below(gentlest::reading_levels)) : OriginalReading::nothing_seen;
  if (reading.original == OriginalReading::colour_on_swab || below(20) == 0)
    reading.colour = static_cast<SwabColour>(below(swab_colour_count));
  if (!reading.removal && !reading.original) reading.original = OriginalReading::nothing_seen;
  reading.confidence = static_cast<ReadingConfidence>(below(3));
  if (below(2) == 0) reading.seconds = static_cast<double>(5 * (1 + below(12)));
}

void ConductSession::note(const Reading& reading) {
  Seen one;
  one.edge = reading.at_edge;
  one.passage = reading.passage;
  one.blank = reading.mixture == "dry swab" || reading.mixture == "saliva";
  try {
    if (!one.blank && reading.mixture.rfind("aqueous:", 0) != 0) {
      const Mixture mixture = parse_mixture(reading.mixture, catalogue_, bottles_);
      const Mixture meant = as_planned(plan_, mixture);
      one.shares = shares_of(meant);
      one.point = mix(meant);
      for (const Part& part : mixture.parts()) one.is_hydrocarbon[part.liquid.label] = is_alkane(*part.liquid.solvent);
    }
  } catch (const InputError&) {
    one.shares.clear();
  }
  one.own_solution = reading.mixture.rfind("aqueous:", 0) == 0;
  one.words = reading.mixture;
  judge(reading, one);
  one.weak = reading.confidence == ReadingConfidence::low || reading.seconds.value_or(0) > 40;
  seen_.push_back(one);
}

// A later look: harm seen then is harm, and nothing that was seen before is taken back.
void ConductSession::look_again() {
  Reading look;
  draw_outcome(look);
  look.test = static_cast<int>(1 + below(seen_.size()));
  look.looked_after = below(2) == 0 ? "1 day" : "20 min";
  if (!look.original) look.original = OriginalReading::nothing_seen;
  if (below(2) == 0) look.removal.reset();
  for (const Reading& line : lines_)
    if (line.test == look.test && line.looked_after == look.looked_after) return;
  lines_.push_back(look);
  Seen later;
  judge(look, later);
  Seen& one = seen_[static_cast<std::size_t>(look.test) - 1];
  if (look.removal) one.removal = later.removal;
  one.harmed = one.harmed || later.harmed;
  one.looked = one.looked || later.looked;
  one.lasting = one.lasting || later.lasting;
}

void ConductSession::go_on() {
  if (!seen_.empty() && below(12) == 0) {
    look_again();
  } else {
    Reading reading = drawn_place(conduct_);
    draw_outcome(reading);
    reading.test = static_cast<int>(seen_.size()) + 1;
    lines_.push_back(reading);
    note(reading);
  }
  readings_ = current_readings(lines_);
  conduct_ = conduct_of(plan_, readings_, catalogue_);
}

std::string ConductSession::broken_rule() const {
  const Check check{plan_, seen_, conduct_};
  for (const std::string& fault : {check.of_harms(), check.of_end(), check.of_working()})
    if (!fault.empty()) return fault;
  for (const OpenTest& open : conduct_.open)
    if (std::string fault = check.of_open(open); !fault.empty())
      return fmt::format("{} ({}, {} {}, purpose {})", fault, to_text(open.mixture),
                         open.place == Place::edge ? "edge" : "picture", open.passage, static_cast<int>(open.purpose));
  return {};
}

std::string ConductSession::broken_rule_of(const OpenTest& test) const {
  return Check{plan_, seen_, conduct_}.of_open(test);
}

bool ConductSession::has_tried_the_gentlest() const {
  const auto gentlest = shares_of(ladder_rungs(plan_).front().mixture);
  return std::any_of(seen_.begin(), seen_.end(),
                     [&](const Seen& one) { return one.harmed || are_same(one.shares, gentlest); });
}

}  // namespace gentlest::test
