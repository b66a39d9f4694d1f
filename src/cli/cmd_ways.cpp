// `gentlest ways`: what people consider where a ladder ends or never begins.
#include "cli/commands.hpp"
#include "cli/paper.hpp"
#include "report/considered/ways_report.hpp"

#include <optional>
#include <utility>

namespace gentlest {

Answer command_ways(const Request& request, Session& session) {
  if (request.html) expect_picture(request, "HTML");
  const Paper paper = asked_paper(request);
  const Catalogue& catalogue = load_catalogue(request);
  std::optional<Plan> plan;
  if (!request.words.empty()) {
    const Job job = load_asked_job(request.words.front(), request, catalogue, session);
    plan = plan_asked_job(job, catalogue, request, session);
  }
  WaysAnswer answer = plan ? ways_for(*plan, catalogue) : all_ways(catalogue);
  std::vector<Source> sources = sources_of(answer, catalogue);
  const WaysCase one{plan ? &*plan : nullptr, std::move(answer), std::move(sources)};
  const Edition edition = edition_of(catalogue);
  if (request.html) return {ways_page(one, paper, edition), 0};
  if (request.form == Form::text && !request.full)
    return {ways_short_text(one, style_of(request, session), edition), 0};
  return {ways_report(one, request.form, style_of(request, session), edition), 0};
}

}  // namespace gentlest
