#include "gentlest/afterwards/afterwards.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

#include <utility>

namespace gentlest {

std::vector<Diagnostic> check_coats(const Job& job, const Catalogue& catalogue) {
  std::vector<Diagnostic> faults;
  const auto complain = [&](const ProposedCoat& coat, std::string message, std::string remedy) {
    Location where = coat.where;
    if (where.file.empty()) where.file = job.file;
    faults.push_back({std::move(where), std::move(message), std::move(remedy), {}});
  };
  for (const ProposedCoat& coat : job.afterwards) {
    if (!catalogue.find_material(coat.material)) {
      const NameFault fault =
          material_fault(coat.material, catalogue, fmt::format("no material \"{}\" is known", coat.material),
                         "`gentlest list materials` shows them all");
      complain(coat, fmt::format("{} (afterwards)", fault.message), fault.remedy);
    }
    if (coat.in.empty()) continue;
    try {
      parse_mixture(coat.in, catalogue);
    } catch (const InputError& error) {
      for (const Diagnostic& fault : error.faults()) complain(coat, fault.message, fault.remedy);
    }
  }
  return faults;
}

}  // namespace gentlest
