// What a plan rests on: the weak figures and the sources. Internal to core.
#pragma once

#include "gentlest/plan/plan.hpp"

#include <vector>

namespace gentlest {

std::vector<WeakPoint> list_weak_points(const Plan& plan, const Catalogue& catalogue);

/// Of every figure behind the plan's layers, mixtures and cautions, by key.
std::vector<Source> list_sources(const Plan& plan, const Catalogue& catalogue);

}  // namespace gentlest
