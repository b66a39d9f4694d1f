// `gentlest condition`: the figures behind solvents/conditioned.yaml, and docs/observations.md.
#include "cli/commands.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "report/screen/conditioning_report.hpp"

#include <fmt/format.h>

namespace gentlest {

namespace {

// One choice at a time is another than ours.
std::vector<TriedChoice> other_choices(const Catalogue& catalogue) {
  struct Choice {
    std::string what;
    ConditioningSettings settings;
    double swab_ln_further = usual_swab_ln_further;
  };
  const ConditioningSettings ours;
  std::vector<Choice> choices;
  const auto add = [&](std::string what) -> Choice& { return choices.emplace_back(Choice{std::move(what), ours}); };
  add("the sphere stays round").settings.reach_sd = 0;
  add("the sphere bends less (0.2)").settings.reach_sd = 0.2;
  add("the sphere bends more (0.5)").settings.reach_sd = 0.5;
  add("bends fade over 2 MPa^0.5").settings.reach_length = 2;
  add("bends fade over 4 MPa^0.5").settings.reach_length = 4;
  add("deviations of the stand-in as they are").settings.prior_widening = 1;
  add("deviations twice as wide").settings.prior_widening = 2;
  add("deviations three times as wide").settings.prior_widening = 3;
  add("a swab acts like a bath on films that only swell").swab_ln_further = 0;
  add("a swab acts weaker still on them (0.6)").swab_ln_further = 0.6;
  std::vector<TriedChoice> tried;
  for (Choice& choice : choices) {
    choice.settings.draws = ours.draws / 4;
    tried.push_back({choice.what, fit_observations(catalogue, choice.settings, choice.swab_ln_further, true)});
  }
  return tried;
}

}  // namespace

Answer command_condition(const Request& request, Session& session) {
  const std::string& what = request.words.front();
  if (what != "records" && what != "page" && what != "rows")
    throw InputError(Fault::usage, fmt::format("unknown \"{}\"", what), "write records, page or rows");
  if (what != "rows" && request.form != Form::text)
    throw InputError(Fault::usage, fmt::format("\"condition {}\" takes no --format", what),
                     "`gentlest condition rows` does");
  const Catalogue& catalogue = load_catalogue(request);
  const ObservationFit fit = fit_observations(catalogue, {}, usual_swab_ln_further, true);
  if (what == "records") return {conditioning_records(fit), 0};
  if (what == "page") return {conditioning_page(fit, other_choices(catalogue), catalogue), 0};
  return {conditioning_rows(fit, request.form, style_of(request, session), edition_of(catalogue), catalogue), 0};
}

}  // namespace gentlest
