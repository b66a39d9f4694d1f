#include "cli/commands.hpp"
#include "cli/faults.hpp"
#include "cli/paper.hpp"
#include "gentlest/answers/ahead.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/text.hpp"
#include "report/paper/label_sheet.hpp"

#include <fmt/format.h>

#include <optional>

namespace gentlest {

namespace {

void read_label_size(const std::string& text, LabelGrid& grid) {
  const std::size_t by = text.find('x');
  const auto width = amount_from(text.substr(0, by));
  const auto height = by == std::string::npos ? std::nullopt : amount_from(text.substr(by + 1));
  if (width && height) {
    grid.width_mm = *width;
    grid.height_mm = *height;
    return;
  }
  throw InputError(Fault::usage, fmt::format("--label \"{}\" is no size", text),
                   "write width x height in mm, e.g. 63x38");
}

}  // namespace

Answer command_labels(const Request& request, Session& session) {
  LabelInputs inputs;
  UsageFaults faults;
  faults.hear([&] { expect_picture(request, "HTML"); });
  faults.hear([&] { inputs.paper = asked_paper(request); });
  if (request.label) faults.hear([&] { read_label_size(*request.label, inputs.grid); });
  faults.tell();
  inputs.grid.margin_mm = request.margin_mm.value_or(inputs.grid.margin_mm);
  inputs.grid.gap_mm = request.gap_mm.value_or(inputs.grid.gap_mm);
  inputs.copies = request.copies.value_or(1);
  inputs.date = request.date.value_or("");
  inputs.maker = request.maker.value_or("");
  std::optional<ReadingLog> log;
  if (request.log) log = load_log(*request.log, request, session, MissingLog::is_fault);
  const Catalogue& catalogue = load_catalogue(request);
  inputs.edition = edition_of(catalogue);
  const Job job = load_asked_job(request.words.front(), request, catalogue, session);
  const Plan plan = plan_asked_job(job, catalogue, request, session);
  // What forbids any test forbids it on paper as well, as after a stop by the swabs.
  if (forbids_tests(plan) && !log) log.emplace();
  Bench bench = prepare_bench(plan, catalogue);
  if (log) {
    inputs.progress = follow_readings(plan, catalogue, log->lines);
    bench.mixtures = vials_ahead(plan, *inputs.progress, bench, catalogue);
    return {label_sheet(plan, bench, inputs), exit_of(*inputs.progress)};
  }
  return {label_sheet(plan, bench, inputs), exit_of(plan)};
}

}  // namespace gentlest
