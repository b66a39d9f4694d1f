// A sphere fitted to one's own solubility tests: for people, spreadsheets and programs.
#pragma once

#include "gentlest/fitting/own_fit.hpp"
#include "report/form/form.hpp"

#include <string>

namespace gentlest {

std::string own_fit_report(const OwnFit& fit, Form form, const Style& style, const Edition& edition);

}  // namespace gentlest
