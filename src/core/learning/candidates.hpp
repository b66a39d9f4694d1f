// The mixtures that may come next, as the beliefs and the tests so far show them. Internal to core.
#pragma once

#include "gentlest/learning/next_test.hpp"

#include <functional>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace gentlest {

/// The original was looked at and nothing was seen.
bool left_original(const PastTest& test);

/// It was tried at the edge and did nothing there to this layer; an empty name asks for any layer.
bool has_passed_at_edge(const NextTestTask& task, const Hansen& point, const std::string& layer = {});

/// The candidates under the present beliefs: roughly for all, exactly for those that are looked at. Task and
/// question must outlive it.
class Choice {
 public:
  Choice(const NextTestTask& task, const DriftQuestion& drifts_to);

  /// Works out the chance of truly good, roughly; only the search for the surest mixture needs it.
  void judge_good();

  using Score = std::function<double(const CandidateOutlook&)>;
  enum class Place { picture, picture_after_edge, edge };

  /// The candidate of the highest score among those still open there, within the risk limit and the step.
  std::optional<CandidateOutlook> best(const Score& score, double risk_limit, Place place = Place::picture);

  /// Candidates that were passed over because of what they become while they dry.
  std::size_t drifting() const { return drifting_.size(); }

 private:
  std::vector<std::size_t> ranked(const Score& score, double risk_limit, Place place) const;
  bool is_open(const Hansen& point, Place place) const;
  bool is_within_step(const Hansen& point) const;
  bool drifts_beyond(std::size_t candidate, double risk_limit);

  const NextTestTask& task_;
  const DriftQuestion& drifts_to_;
  std::vector<CandidateOutlook> rough_;
  double boldest_ = 0;
  double good_RED_ = 0;
  std::set<std::size_t> drifting_;
};

}  // namespace gentlest
