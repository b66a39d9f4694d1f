// `gentlest afterwards`: what may be put on the painting when the cleaning is done.
#include "cli/commands.hpp"
#include "cli/faults.hpp"
#include "cli/paper.hpp"
#include "cli/run.hpp"
#include "gentlest/afterwards/afterwards.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/text.hpp"
#include "gentlest/liquids/notation.hpp"
#include "report/after/after_report.hpp"

#include <fmt/format.h>

#include <string_view>
#include <utility>

namespace gentlest {

namespace {

Light asked_light(const Request& request) {
  if (!request.light) return Light::not_told;
  if (const std::optional<Light> light = light_from_word(*request.light)) return *light;
  const std::vector<std::string> known = {"dark", "uv_filtered", "daylight", "strong"};
  const std::string near = nearest_name(*request.light, known);
  throw InputError(Fault::usage, fmt::format("unknown light \"{}\"", *request.light),
                   near.empty() ? enumerated(known, "or") : fmt::format("did you mean \"{}\"?", near));
}

// "isooctane; toluene 60, acetone 40": each mixture by itself, all faults together.
std::vector<Mixture> asked_mixtures(const Request& request, const Job& job, const Catalogue& catalogue) {
  std::vector<Mixture> mixtures;
  if (!request.liquid) return mixtures;
  const std::vector<Liquid> shelf = all_liquids(shelf_of(job, catalogue));
  UsageFaults faults;
  for (const std::string& one : items_of(*request.liquid, ";"))
    faults.hear([&] { mixtures.push_back(parse_mixture(one, catalogue, shelf)); });
  faults.tell();
  return mixtures;
}

}  // namespace

Answer command_afterwards(const Request& request, Session& session) {
  AfterwardsQuestion question;
  UsageFaults faults;
  faults.hear([&] { question.light = asked_light(request); });
  Paper paper = Paper::A4;
  faults.hear([&] { paper = asked_paper(request); });
  faults.hear([&] {
    if (request.html && request.form != Form::text)
      throw InputError(Fault::usage, "--html and --format ask for two kinds of file", "give one of them");
    if (request.paper && !request.html)
      throw InputError(Fault::usage, "--paper is for the page of --html", "add --html, or leave --paper out");
  });
  faults.tell();
  const Catalogue& catalogue = load_catalogue(request);
  const Job job = load_asked_job(request.words.front(), request, catalogue, session);
  question.mixtures = asked_mixtures(request, job, catalogue);
  const Afterwards answer = judge_afterwards(job, catalogue, question);
  const Edition edition = edition_of(catalogue);
  const int code = answer.asked && answer.asked->link.weakest == CellVerdict::fails ? exit_no_window : exit_done;
  if (request.html) return {afterwards_html(answer, job, catalogue, paper, edition), code};
  if (request.form == Form::csv) return {afterwards_csv(answer, catalogue, edition), code};
  if (request.form == Form::json) return {afterwards_json(answer, job, catalogue, edition), code};
  return {afterwards_text(answer, job, catalogue, request.full, style_of(request, session), edition), code};
}

}  // namespace gentlest
