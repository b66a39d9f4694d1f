// `gentlest explain`: how a figure is reckoned, line by line.
#include "cli/commands.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/text.hpp"
#include "gentlest/conduct/typed_step.hpp"
#include "gentlest/liquids/recipe.hpp"
#include "report/worked/worked_report.hpp"

#include <fmt/format.h>

#include <cmath>
#include <optional>
#include <utility>

namespace gentlest {

namespace {

// What is to be explained, and behind it of which mixture; empty: of the last rung.
struct AskedFigure {
  std::optional<Explained> what;  ///< nothing: the next test
  std::string of;
};

// The text behind a first word or two, where it begins with these.
std::optional<std::string> behind(const std::string& text, std::string_view start) {
  const std::string plain = folded(text);
  if (plain.compare(0, start.size(), start) != 0) return std::nullopt;
  if (plain.size() > start.size() && plain[start.size()] != ' ') return std::nullopt;
  std::string rest(trimmed(std::string_view(text).substr(text.find_first_not_of(' ') + start.size())));
  if (rest.compare(0, 3, "of ") == 0) rest.erase(0, 3);
  return rest;
}

AskedFigure asked_of(const std::string& text) {
  if (folded(text) == "next" || folded(text) == "next test") return {std::nullopt, {}};
  if (const auto rest = behind(text, "label")) return {Explained::label, *rest};
  if (const auto rest = behind(text, "flash point")) return {Explained::flash_point, *rest};
  return {Explained::mixture, text};
}

// A rung as the plan judged it; null for a step between two rungs, which no plan holds.
const JudgedMixture* rung_of(const Plan& plan, const TypedStep& step) {
  const double whole = std::floor(step.height);
  if (step.line < 1 || static_cast<std::size_t>(step.line) > plan.lines.size() || whole != step.height || whole < 1)
    return nullptr;
  const std::vector<JudgedMixture>& rungs = plan.lines[static_cast<std::size_t>(step.line) - 1].rungs;
  const auto at = static_cast<std::size_t>(whole) - 1;
  return at < rungs.size() ? &rungs[at] : nullptr;
}

std::string behind_job(const Request& request, std::size_t from) {
  std::string text;
  for (std::size_t i = from; i < request.words.size(); ++i) text += (text.empty() ? "" : " ") + request.words[i];
  return text;
}

Answer explain_next(const Job& job, const Catalogue& catalogue, const Request& request, Session& session) {
  ReadingLog log;
  if (request.log) log = load_log(*request.log, request, session, MissingLog::is_fault);
  const Plan plan = plan_asked_job(job, catalogue, request, session);
  const Progress progress = follow_readings(plan, catalogue, log.lines);
  return {next_explained(plan, progress, request.full, request.form, style_of(request, session), edition_of(catalogue)),
          0};
}

// The ladder's last rung, where nothing else was named.
Mixture last_rung(const Plan& plan) {
  if (!ladder_rungs(plan).empty()) return ladder_rungs(plan).back().mixture;
  throw InputError(Fault::usage, "the job has no ladder, so no rung can be explained",
                   "name the mixture, e.g. gentlest explain JOB label \"isooctane 70, ethanol 30\"");
}

}  // namespace

Answer command_explain(const Request& request, Session& session) {
  if (request.form == Form::csv)
    throw InputError(Fault::usage, "\"explain\" makes no CSV", "leave --format out, or write --format json");
  const Catalogue& catalogue = load_catalogue(request);
  Job job = load_asked_job(request.words.front(), request, catalogue, session);
  warn_where_forbidden(job, catalogue, session);
  const AskedFigure asked = asked_of(behind_job(request, 1));
  if (!asked.what) return explain_next(job, catalogue, request, session);
  if (request.log) throw InputError(Fault::usage, "--log belongs to `gentlest explain JOB next`", "leave it out");
  const auto answer = [&](WorkedCase one) {
    one.painting = job.object.title;
    return Answer{worked_report(one, request.full, request.form, style_of(request, session), edition_of(catalogue)), 0};
  };
  const std::optional<TypedStep> step = typed_step(asked.of);
  if (*asked.what == Explained::mixture && step) {
    const Plan plan = plan_asked_job(job, catalogue, request, session);
    if (const JudgedMixture* rung = rung_of(plan, *step))
      return answer({Explained::mixture, {}, work_rung(*rung, plan, catalogue)});
  }
  Request of_mixture = request;
  of_mixture.words = {request.words.front(), asked.of};
  const Mixture mixture = asked.of.empty() ? last_rung(plan_asked_job(job, catalogue, request, session))
                                           : asked_mixture(of_mixture, job, catalogue, session);
  if (*asked.what == Explained::mixture) {
    const std::vector<PlannedLayer> layers = planned_layers(job, catalogue, request.target.value_or(""));
    return answer({Explained::mixture, {}, work_mixture(mixture, layers, job, catalogue)});
  }
  const Mixture made = round_recipe(mixture, {{job.limits.vial_mL}, {job.limits.measure_mL}}).as_measured;
  if (*asked.what == Explained::label)
    return answer({Explained::label, {}, work_label(mixture, job, catalogue), label_of(made, catalogue)});
  return answer(
      {Explained::flash_point, {}, work_flash_point(mixture, job, catalogue), {}, flash_point(made, catalogue)});
}

}  // namespace gentlest
