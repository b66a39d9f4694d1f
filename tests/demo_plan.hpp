// The plan of the demo painting, made once for all tests.
#pragma once

#include "shipped.hpp"

#include "gentlest/plan/plan.hpp"
#include "io/job_file.hpp"

namespace gentlest::test {

inline const Plan& demo_plan() {
  static const Plan made = make_plan(load_job(demo_job_text(), "demo", shipped_catalogue()), shipped_catalogue());
  return made;
}

}  // namespace gentlest::test
