#include "cli/commands.hpp"
#include "cli/progress.hpp"
#include "cli/run.hpp"
#include "gentlest/diagnostic.hpp"
#include "report/label_sheet.hpp"

#include <fmt/format.h>

#include <cstdlib>

namespace gentlest {

namespace {

void read_label_size(const std::string& text, LabelGrid& grid) {
  const std::size_t by = text.find('x');
  const bool plain = text.find_first_not_of("0123456789.x") == std::string::npos && by != std::string::npos;
  char* end = nullptr;
  if (plain) {
    const std::string width = text.substr(0, by);
    const std::string height = text.substr(by + 1);
    grid.width_mm = std::strtod(width.c_str(), &end);
    const bool whole = end == width.c_str() + width.size();
    grid.height_mm = std::strtod(height.c_str(), &end);
    if (whole && end == height.c_str() + height.size() && !width.empty() && !height.empty()) return;
  }
  throw InputError(Fault::usage, fmt::format("--label \"{}\" is no size", text),
                   "write width x height in mm, e.g. 50x25");
}

}  // namespace

Answer command_labels(const Request& request, Session& session) {
  expect_picture(request, "HTML");
  LabelInputs inputs;
  inputs.paper = asked_paper(request);
  if (request.label) read_label_size(*request.label, inputs.grid);
  inputs.grid.margin_mm = request.margin_mm.value_or(inputs.grid.margin_mm);
  inputs.grid.gap_mm = request.gap_mm.value_or(inputs.grid.gap_mm);
  inputs.copies = request.copies.value_or(1);
  inputs.date = request.date.value_or("");
  inputs.maker = request.maker.value_or("");
  const Catalogue catalogue = load_catalogue(request);
  inputs.edition = {program_version(), catalogue.version()};
  const Job job = load_asked_job(request.words.front(), request, catalogue, session);
  ProgressLine progress(session, request.quiet);
  const Plan plan = make_plan(job, catalogue, request.target.value_or(""), progress.callback());
  const Bench bench = prepare_bench(plan, catalogue);
  return {label_sheet(plan, bench, inputs), plan.outcome == Outcome::window ? exit_done : exit_no_window};
}

}  // namespace gentlest
