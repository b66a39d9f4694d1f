// Sessions of readings drawn at random, and the rules of conduct checked against them by a second reading of the rules:
// plain sums over shares and points, sharing no code with what they check.
#pragma once

#include "gentlest/conduct/conduct.hpp"

#include <cstdint>
#include <map>
#include <random>
#include <string>
#include <vector>

namespace gentlest::test {

/// One swab as the check sees it.
struct Seen {
  std::map<std::string, double> shares;  // by label of the bottle; empty for a blank or what cannot be read
  std::map<std::string, bool> is_hydrocarbon;
  Hansen point;
  bool edge = false, blank = false, own_solution = false;
  std::string words;  // as written
  std::string passage;
  int removal = -1;  // level; -1 not noted
  bool harmed = false, looked = false, lasting = false, weak = false;
};

/// A painting under test: the plan and the readings so far, in both forms.
class ConductSession {
 public:
  ConductSession(const Plan& plan, const Catalogue& catalogue, std::uint64_t seed);

  /// One more reading: mostly one of the tests that are open, else anything at all.
  void go_on();

  const std::vector<Reading>& readings() const { return readings_; }

  /// The first rule that the present answer breaks, in words; empty where it keeps them all.
  std::string broken_rule() const;
  /// The same of one test that is proposed.
  std::string broken_rule_of(const OpenTest& test) const;
  /// The gentlest rung of the first line was tried, or a harm came before it.
  bool has_tried_the_gentlest() const;

 private:
  std::size_t below(std::size_t count) { return random_() % count; }
  Reading drawn_place(const Conduct& conduct);
  void draw_outcome(Reading& reading);
  void note(const Reading& reading);
  void look_again();

  const Plan& plan_;
  const Catalogue& catalogue_;
  std::mt19937_64 random_;
  std::vector<Reading> lines_;     // of the log, later looks among them
  std::vector<Reading> readings_;  // that count
  std::vector<Seen> seen_;
  std::vector<std::string> labels_;
  std::vector<Liquid> bottles_;
  Conduct conduct_;  // of the readings so far
};

}  // namespace gentlest::test
