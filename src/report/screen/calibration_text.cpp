#include "report/phrases/fit_words.hpp"
#include "report/screen/calibration_report.hpp"

#include <fmt/format.h>

#include <array>
#include <sstream>

namespace gentlest {

namespace {

std::string edge(double to) {
  return to < 100 ? fmt::format("{:.1f}", to) : "";
}

void write_bands(const Calibration& all, std::ostream& out) {
  out << "Share dissolved (grade 1), swollen (2 to 5), untouched (6) by RED\n\n"
      << "                 published sphere            sphere fitted without the solvent\n"
      << "RED              cases  diss.  swol.  unt.   cases  diss.  swol.  unt.\n";
  for (std::size_t i = 0; i < all.in_sample.size(); ++i) {
    const BandShares& in = all.in_sample[i];
    const BandShares& held = all.cross_validated[i];
    const auto cells = [](const BandShares& band) {
      return fmt::format("{:5}  {:5.3f}  {:5.3f}  {:5.3f}", band.count, band.dissolved, band.swollen, band.untouched);
    };
    out << fmt::format("{:.1f} to {:<9}  {}  {}\n", in.from, edge(in.to), cells(in), cells(held));
  }
}

void write_curve(const Calibration& all, std::ostream& out) {
  out << "\nResponse curve, fitted to the REDs of solvents held out\n\n"
      << "stage  stops at              intercept      slope\n";
  for (std::size_t i = 0; i < all.response.stages.size(); ++i)
    out << fmt::format("{:5}  {:<19}  {:10.4f} {:10.4f}\n", i + 1, grade_words(static_cast<int>(i) + 1),
                       all.response.stages[i].intercept, all.response.stages[i].slope);
  out << "\nRED     chance of grade <= 1      <= 2      <= 3      <= 4      <= 5\n";
  for (const double red : {0.5, 0.7, 0.8, 0.9, 1.0, 1.1, 1.2, 1.4, 1.7, 2.0, 3.0}) {
    out << fmt::format("{:.1f}                 ", red);
    for (int grade = 1; grade < grade_count; ++grade)
      out << fmt::format("{:10.3f}", chance_at_most(all.response, grade, red));
    out << '\n';
  }
}

void write_scores(const CurveScore& score, std::ostream& out) {
  out << "\nTest: each film former by a curve fitted to the others, solvents held out\n\n"
      << "                                                     curve   without RED\n";
  const auto row = [&](const char* what, double curve, double plain) {
    out << fmt::format("{:<50}  {:6.3f}  {:12.3f}\n", what, curve, plain);
  };
  row("mean of -ln P(grade seen)", score.log_score, score.log_score_of_shares);
  row("Brier score, grade 1 or 2", score.brier_2, score.brier_2_of_shares);
  row("Brier score, grade 1 to 4", score.brier_4, score.brier_4_of_shares);
  row("share of grades guessed right", score.right_grade, score.right_grade_guess);
  row("share right on \"dissolves\", chance of one half", score.right_dissolves, score.right_guess);
  row("share right on \"dissolves\", RED below 1", score.right_inside, score.right_guess);
  out << "\"Without RED\": the shares of all grades in the other sets; for \"dissolves\", the majority answer of\n"
         "the film former's own set, which nobody knows before testing.\n";
}

std::string sphere_text(const Sphere& sphere) {
  return fmt::format("{:5.1f} {:5.1f} {:5.1f} {:5.1f}", sphere.centre.dD, sphere.centre.dP, sphere.centre.dH,
                     sphere.R0);
}

void write_sets(const Calibration& all, std::ostream& out) {
  out << "\nSets. miss: solvents misplaced; fit: data fit; rank of the published sphere among all of them;\n"
      << "R0 range: radii whose data fit is within 0.01 of the best; bad: solvents that do not dissolve it\n\n"
      << "    published sphere         miss fit   rank  refit                    miss fit   R0 range     bad\n";
  for (const SetFigures& set : all.sets) {
    out << fmt::format("{:<3} {}  {:3} {:.3f} {:4}  {}  {:3} {:.3f}  {:4.1f} to {:4.1f} {:4}\n", set.code,
                       sphere_text(set.published), set.quality.misplaced, set.quality.data_fit, set.rank,
                       sphere_text(set.refit.sphere), set.refit.quality.misplaced, set.refit.quality.data_fit,
                       set.refit.R0_low, set.refit.R0_high, set.refit.bad_solvents);
  }
  out << "\nNot held in place by their solvents:\n";
  for (const SetFigures& set : all.sets)
    for (const std::string& doubt : doubt_words(set.refit.doubts)) out << fmt::format("{:<3} {}\n", set.code, doubt);
}

void write_spreads(const Calibration& all, std::ostream& out) {
  out << "\nTwo determinations of a sphere: root mean square differences, and the spread made of them (MPa^0.5)\n\n"
      << "                                 pairs    dD    dP    dH    R0  Ra-R0    sd dD    dP    dH    R0\n";
  for (const SpreadRow& row : all.spreads) {
    const SphereScatter& seen = row.seen;
    const SphereScatter& sd = row.spread;
    out << fmt::format(
        "{:<33}{:5}  {:4.2f}  {:4.2f}  {:4.2f}  {:4.2f}   {:4.2f}     {:4.2f}  {:4.2f}  {:4.2f}  {:4.2f}\n",
        group_words(row.group), seen.pairs, seen.centre.dD, seen.centre.dP, seen.centre.dH, seen.R0, seen.boundary,
        sd.centre.dD, sd.centre.dP, sd.centre.dH, sd.R0);
  }
  out << "Single differences above 6 count as 6. The spread has the proportions of \"all sets\" and, taken as\n"
         "independent standard deviations, moves Ra - R0 by the figure in that column (last row: by that\n"
         "figure over sqrt 2, the standard deviation of a family whose members differ so much).\n";
}

void write_block(const Response& response, std::ostream& out) {
  out << "\nFor solvents/response.yaml:\n\nresponse:\n  stages:\n";
  for (const Response::Stage& stage : response.stages)
    out << fmt::format("    - [{:.4f}, {:.4f}]\n", stage.intercept, stage.slope);
  out << fmt::format("  source: {}\n", response.source);
}

// Which row of the spreads serves which grade of sphere. A published sphere without a score set may turn out to be of
// any kind, so it gets the figure of all sets.
struct GradeRow {
  const char* grade;
  std::size_t row;
};
constexpr std::array<GradeRow, 6> grade_rows = {
    {{"fitted", 0}, {"recalled", 0}, {"unbracketed", 2}, {"weak", 1}, {"unsupported", 3}, {"assumed", 4}}};

void write_spread_block(const Calibration& all, std::ostream& out) {
  out << "\nFor solvents/materials/spreads.yaml:\n\nspreads:\n";
  for (const GradeRow& grade : grade_rows) {
    const SphereScatter& sd = all.spreads.at(grade.row).spread;
    out << fmt::format("  - {{grade: {}, sd: [{:.1f}, {:.1f}, {:.1f}], R0_sd: {:.1f}, source: {}}}\n", grade.grade,
                       sd.centre.dD, sd.centre.dP, sd.centre.dH, sd.R0, all.response.source);
  }
}

}  // namespace

std::string calibration_text(const Calibration& calibration) {
  std::ostringstream out;
  out << fmt::format("Calibration on {} published score sets\n\n", calibration.sets.size());
  write_bands(calibration, out);
  write_curve(calibration, out);
  write_scores(calibration.left_out_score, out);
  write_sets(calibration, out);
  write_spreads(calibration, out);
  write_block(calibration.response, out);
  write_spread_block(calibration, out);
  return out.str();
}

}  // namespace gentlest
