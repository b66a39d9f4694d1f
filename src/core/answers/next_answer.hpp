// Which of the tests that the rules leave open comes next. Internal to core.
#pragma once

#include "gentlest/answers/progress.hpp"

namespace gentlest {

NextAnswer choose_next(const Plan& plan, const Conduct& conduct, const NextTestTask& task);

}  // namespace gentlest
