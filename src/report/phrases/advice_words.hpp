// What a plan has to say beside its figures: what to watch, what the model does not see, other ways, weak figures.
#pragma once

#include "gentlest/plan/plan.hpp"
#include "report/bottle/caution_words.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// `watch` and `point` are of this very plan.
Remark words_of(const Watch& watch, const Plan& plan);
std::string words_of(const WeakPoint& point, const Plan& plan);

std::vector<Remark> watch_words(const Plan& plan);
std::vector<std::string> weak_point_words(const Plan& plan);

/// What the model does not see, of any plan.
std::vector<Remark> not_seen_words();

/// What people consider where there is no window; nothing where there is one.
std::vector<Remark> other_ways_words(const Plan& plan);

}  // namespace gentlest
