// What a studio's finished paintings changed in a plan, in words.
#pragma once

#include "report/form/json.hpp"

#include "gentlest/plan/plan.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// What came from the studio, and how the strongest rung would look without: at most two sentences. Empty where the
/// studio teaches no layer of the plan.
std::vector<std::string> studio_sentences(const Plan& plan);

/// The same in full: each layer's range with the studio and without, and each rung.
std::vector<std::string> studio_details(const Plan& plan);

/// One object a layer that the studio teaches.
Json studio_json(const Plan& plan);

/// "1.4 in Hansen distance".
std::string in_hansen_distance(double distance);

/// "dD 17.1, dP 9.5, dH 14.1, R0 11.5".
std::string sphere_figures(const UncertainSphere& sphere);

}  // namespace gentlest
