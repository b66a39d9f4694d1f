// Small jobs with layers that have no sphere.
#pragma once

#include "shipped.hpp"

#include "gentlest/job/job.hpp"
#include "io/job_file.hpp"

#include <string>
#include <vector>

namespace gentlest::test {

/// The text of a job with one layer to remove and some to keep, named "kept 1", "kept 2" ...
inline std::string unjudged_job_text(const std::string& remove, const std::vector<std::string>& keep,
                                     const std::string& shelf =
                                         "isooctane, xylene, {solvent: ethanol, grade: "
                                         "\"96 %\"}, acetone, diacetone_alcohol",
                                     const std::string& limits = "parts: 2, step_percent: 10") {
  std::string text = "gentlest_job: 1\nlayers:\n  - {name: varnish, role: remove, found: " + remove + "}\n";
  int number = 0;
  for (const std::string& material : keep)
    text += "  - {name: kept " + std::to_string(++number) + ", role: keep, found: " + material + "}\n";
  return text + "shelf: [" + shelf + "]\nlimits: {" + limits + "}\n";
}

inline Job unjudged_job(const std::string& remove, const std::vector<std::string>& keep,
                        const std::string& shelf =
                            "isooctane, xylene, {solvent: ethanol, grade: \"96 %\"}, acetone, "
                            "diacetone_alcohol",
                        const std::string& limits = "parts: 2, step_percent: 10") {
  return load_job(unjudged_job_text(remove, keep, shelf, limits), "job.yaml", shipped_catalogue());
}

}  // namespace gentlest::test
