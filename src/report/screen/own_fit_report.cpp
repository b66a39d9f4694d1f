#include "report/screen/own_fit_report.hpp"

#include "report/form/format.hpp"
#include "report/form/sheet.hpp"
#include "report/form/table.hpp"
#include "report/phrases/fit_words.hpp"

#include <fmt/format.h>

namespace gentlest {

std::string own_fit_report(const OwnFit& fit, Form form, const Style& style, const Edition& edition) {
  Sheet figures{"sphere",
                {{"figure", "figure", -1, false},
                 {"value", "value", 2, false},
                 {"low", "5 %", 2, false},
                 {"high", "95 %", 2, false},
                 {"sd", "standard deviation", 2, false}},
                {}};
  const auto add = [&](const char* name, const Estimate& estimate, double sd) {
    figures.rows.push_back({Cell(name), Cell(computed_value(estimate.mean)), Cell(computed_value(estimate.low)),
                            Cell(computed_value(estimate.high)), Cell(computed_value(sd))});
  };
  add("dD", fit.dD, fit.uncertain.sd.dD);
  add("dP", fit.dP, fit.uncertain.sd.dP);
  add("dH", fit.dH, fit.uncertain.sd.dH);
  add("R0", fit.R0, fit.uncertain.R0_sd);
  if (form != Form::text) return sheet_report(figures, form, style, edition);
  std::string text = heading("Sphere from own tests, MPa^0.5", style) + sheet_text(figures, style);
  text += bullet(fmt::format("{} of {} liquids dissolve it; {} misplaced; data fit {}", fit.good, fit.tests,
                             fit.quality.misplaced, fixed(fit.quality.data_fit, 3)),
                 style);
  for (const Misfit& misfit : fit.misfits)
    text += bullet(fmt::format("misplaced: {}, grade {}, RED {}", misfit.solvent, misfit.grade, fixed(misfit.RED, 2)),
                   style);
  for (const std::string& doubt : doubt_words(fit.doubts))
    text += bullet("not the only sphere that fits: " + doubt, style);
  const Sphere& s = fit.sphere;
  text += heading("For a layer of the job", style);
  text += fmt::format(
      "  own_sphere: {{dD: {}, dP: {}, dH: {}, R0: {},\n    sd_dD: {}, sd_dP: {}, sd_dH: {}, sd_R0: {},\n    source: "
      "\"own tests\"}}\n",
      fixed(s.centre.dD, 2), fixed(s.centre.dP, 2), fixed(s.centre.dH, 2), fixed(s.R0, 2),
      fixed(fit.uncertain.sd.dD, 2), fixed(fit.uncertain.sd.dP, 2), fixed(fit.uncertain.sd.dH, 2),
      fixed(fit.uncertain.R0_sd, 2));
  return text;
}

}  // namespace gentlest
