#include "cli/commands.hpp"
#include "report/screen/mixture_report.hpp"

#include <utility>

namespace gentlest {

Answer command_mixture(const Request& request, Session& session) {
  const Catalogue catalogue = load_catalogue(request);
  AskedMixture asked = load_asked_mixture(request, catalogue, session);
  JudgedMixture judged = judge_mixture(asked.mixture, asked.layers, asked.job.limits, catalogue);
  const MixtureCase one{std::move(asked.job), std::move(asked.layers), std::move(judged)};
  return {mixture_report(one, request.form, style_of(request, session), edition_of(catalogue)), 0};
}

}  // namespace gentlest
