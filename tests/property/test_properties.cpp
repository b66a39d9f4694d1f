// Laws that must hold whatever the numbers: RapidCheck invents the cases, with a fixed seed.
#include "gentlest/ladder/ladder.hpp"
#include "gentlest/liquids/mixture.hpp"
#include "gentlest/search/search.hpp"

#include "invented_shelf.hpp"

#include <catch2/catch.hpp>

#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <set>

using namespace gentlest;
using namespace gentlest::test;

namespace {

// RapidCheck reads its seed from the environment; the tests must not depend on it.
template <class Property>
void require_property(const std::string& law, Property&& property) {
  rc::detail::TestMetadata metadata;
  metadata.id = law;
  metadata.description = law;
  rc::detail::TestParams params;
  params.seed = 20261125;
  params.maxSuccess = 150;
  const rc::detail::TestResult result = rc::detail::checkTestable(std::forward<Property>(property), metadata, params);
  std::ostringstream message;
  rc::detail::printResultMessage(result, message);
  INFO(law << ": " << message.str());
  CHECK(result.is<rc::detail::SuccessResult>());
}

Hansen any_point() {
  const auto tenth = [](int low, int high) { return *rc::gen::inRange(low, high) / 10.0; };
  const double dD = tenth(100, 250);
  const double dP = tenth(-20, 200);
  return {dD, dP, tenth(-10, 430)};
}

Verdict any_verdict() {
  return {*rc::gen::inRange(0, 6) / 5.0, *rc::gen::inRange(0, 6) / 5.0, 0};
}

std::uint64_t any_seed() {
  return *rc::gen::inRange<std::uint64_t>(1, 1000000);
}

Mixture any_mixture(const InventedShelf& shelf) {
  std::vector<int> shares;
  int sum = 0;
  for (std::size_t i = 0; i < shelf.liquids.size(); ++i) {
    shares.push_back(*rc::gen::inRange(0, 50));
    sum += shares.back();
  }
  if (sum == 0) sum = shares[0] = 1;
  std::vector<Part> parts;
  for (std::size_t i = 0; i < shares.size(); ++i)
    if (shares[i] > 0) parts.push_back({shelf.liquids[i], static_cast<double>(shares[i]) / sum});
  return Mixture(std::move(parts));
}

}  // namespace

TEST_CASE("law: Ra is a metric") {
  require_property("Ra is a metric", [] {
    const Hansen a = any_point();
    const Hansen b = any_point();
    const Hansen c = any_point();
    RC_ASSERT(distance_Ra(a, a) == 0);
    RC_ASSERT(distance_Ra(a, b) == distance_Ra(b, a));
    RC_ASSERT((distance_Ra(a, b) > 0) == !(a == b));
    RC_ASSERT(distance_Ra(a, c) <= distance_Ra(a, b) + distance_Ra(b, c) + 1e-12);
  });
}

TEST_CASE("law: Teas fractions add up to 100 and are not negative") {
  require_property("Teas", [] {
    const Teas teas = teas_fractions(any_point());
    RC_ASSERT(std::abs(teas.fd + teas.fp + teas.fh - 100) < 1e-9);
    RC_ASSERT(teas.fd >= 0 && teas.fp >= 0 && teas.fh >= 0);
  });
}

TEST_CASE("law: fractions of a mixture add up to 1 and its point lies in the hull of its parts") {
  require_property("mixture", [] {
    const InventedShelf shelf(4, any_seed());
    const Mixture mixture = any_mixture(shelf);
    double sum = 0;
    for (const Part& part : mixture.parts()) sum += part.fraction;
    RC_ASSERT(std::abs(sum - 1) < 1e-9);
    // In the hull: in every direction no part lies beyond all others' farthest.
    const Hansen point = mix(mixture);
    for (int round = 0; round < 5; ++round) {
      const Hansen direction = any_point();
      const auto along = [&](const Hansen& p) {
        return (p.dD - 17) * (direction.dD - 17) + p.dP * (direction.dP - 9) + p.dH * (direction.dH - 20);
      };
      double farthest = -1e300;
      for (const Part& part : mixture.parts()) farthest = std::max(farthest, along(part.liquid.hansen));
      RC_ASSERT(along(point) <= farthest + 1e-9);
    }
  });
}

TEST_CASE("law: beating is a strict partial order") {
  require_property("beats", [] {
    const Verdict a = any_verdict();
    const Verdict b = any_verdict();
    const Verdict c = any_verdict();
    RC_ASSERT(!beats(a, a));
    RC_ASSERT(!(beats(a, b) && beats(b, a)));
    RC_ASSERT(!(beats(a, b) && beats(b, c)) || beats(a, c));
  });
}

TEST_CASE("law: no enumerated mixture beats a member of the frontier, and the order of the shelf does not matter") {
  require_property("frontier", [] {
    InventedShelf shelf(5, any_seed());
    const SearchTask task = shelf.task(3, 20);
    const std::vector<Candidate> frontier = find_frontier(task);
    for_each_composition({0, 1, 2, 3, 4}, 3, 5, [&](const Composition& composition) {
      const Verdict verdict = judge(task, point_of(task, composition));
      for (const Candidate& member : frontier) RC_ASSERT(!beats(verdict, member.verdict));
    });
    SearchTask turned = task;
    std::reverse(turned.shelf.begin(), turned.shelf.end());
    const std::vector<Candidate> again = find_frontier(turned);
    RC_ASSERT(again.size() == frontier.size());
    for (std::size_t i = 0; i < again.size(); ++i) {
      RC_ASSERT(std::abs(again[i].verdict.effect - frontier[i].verdict.effect) < 2e-9);
      RC_ASSERT(std::abs(again[i].verdict.risk - frontier[i].verdict.risk) < 2e-9);
    }
  });
}

TEST_CASE("law: a ladder rises in both numbers and stays within its limit") {
  require_property("ladder", [] {
    const InventedShelf shelf(5, any_seed());
    const SearchTask task = shelf.task(3, 10);
    const LadderGoal goal{*rc::gen::inRange(1, 5), *rc::gen::inRange(2, 9), *rc::gen::inRange(1, 60) / 100.0, 0.5};
    const Ladder ladder = design_ladder(task, goal);
    RC_ASSERT(ladder.rungs.size() <= static_cast<std::size_t>(goal.rungs));
    RC_ASSERT(ladder.bottles.size() <= static_cast<std::size_t>(goal.bottles));
    for (std::size_t i = 0; i < ladder.rungs.size(); ++i) {
      RC_ASSERT(ladder.rungs[i].verdict.risk <= goal.risk_limit);
      if (i == 0) continue;
      RC_ASSERT(ladder.rungs[i].verdict.effect > ladder.rungs[i - 1].verdict.effect);
      RC_ASSERT(ladder.rungs[i].verdict.risk > ladder.rungs[i - 1].verdict.risk);
    }
  });
}
