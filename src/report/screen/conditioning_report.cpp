#include "report/screen/conditioning_report.hpp"

#include "report/form/format.hpp"
#include "report/form/sheet.hpp"
#include "report/phrases/observation_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <map>
#include <optional>
#include <set>
#include <sstream>

namespace gentlest {

namespace {

using Judged = std::vector<JudgedAction>;
using Judgement = Judged MaterialFit::*;

std::string numbers(const std::vector<double>& values, int places) {
  std::string text;
  for (const double value : values) text += (text.empty() ? "" : ", ") + fixed(value, places);
  return "[" + text + "]";
}

std::vector<double> four_figures(const UncertainSphere& sphere) {
  return {sphere.mean.centre.dD, sphere.mean.centre.dP, sphere.mean.centre.dH, sphere.mean.R0};
}

std::vector<double> deviations(const UncertainSphere& sphere) {
  return {sphere.sd.dD, sphere.sd.dP, sphere.sd.dH, sphere.R0_sd};
}

// By ids, as the observation writes them.
std::string seen_liquids(const Observation& seen) {
  if (seen.parts.size() == 1) return seen.parts.front().solvent;
  std::string text;
  for (const ObservedPart& part : seen.parts)
    text += (text.empty() ? "" : ", ") + fmt::format("{} {}", part.solvent, part.percent);
  return text;
}

// Liquids that the fit puts on the wrong side of one half though it has seen them.
std::vector<std::string> misfits_of(const MaterialFit& one) {
  std::set<std::string> liquids;
  for (const JudgedAction& judged : one.fitted)
    if (const std::optional<bool> did = what_happened(judged, *one.material))
      if (*did ? judged.chance < 0.5 : judged.chance > 0.5) liquids.insert(seen_liquids(*judged.seen));
  return {liquids.begin(), liquids.end()};
}

std::vector<const MaterialFit*> those(const ObservationFit& fit,
                                      const std::function<bool(const MaterialFit&)>& wanted) {
  std::vector<const MaterialFit*> found;
  for (const MaterialFit& one : fit.materials)
    if (wanted(one)) found.push_back(&one);
  return found;
}

std::string percent_of(double share) {
  return fixed(100 * share, 0) + " %";
}

// "12 of 14", "-" where nothing is clear-cut.
std::string right_of(const AgreementScore& score) {
  return score.clear_cut == 0 ? "-" : fmt::format("{} of {}", score.right, score.clear_cut);
}
std::string brier_of(const AgreementScore& score) {
  return score.clear_cut == 0 ? "-" : fixed(score.brier, 3);
}
std::string order_of(const AgreementScore& score) {
  return score.pairs == 0 ? "-" : percent_of(score.in_order);
}

struct Judging {
  const char* title;
  Judgement which;
};
constexpr Judging judgings[] = {{"sphere as recorded", &MaterialFit::recorded},
                                {"fitted, seen", &MaterialFit::fitted},
                                {"fitted, source not seen", &MaterialFit::held_out}};

void write_group(std::ostream& out, const char* name, const std::vector<const MaterialFit*>& fits) {
  for (const Judging& judging : judgings) {
    const AgreementScore score = score_of(fits, judging.which);
    out << fmt::format("| {} | {} | {} | {} ({}) | {} | {} of {} pairs | {} |\n", name, judging.title,
                       score.observations, right_of(score),
                       score.clear_cut ? percent_of(static_cast<double>(score.right) / score.clear_cut) : "-",
                       brier_of(score), order_of(score), score.pairs, fixed(score.log_score, 3));
    name = "";
  }
}

void write_overall(std::ostream& out, const ObservationFit& fit) {
  out << "## How well the chances agree\n\n"
         "| materials | by | observations | clear-cut right | Brier | in order | -ln chance |\n"
         "| --- | --- | --- | --- | --- | --- | --- |\n";
  write_group(out, "all", those(fit, [](const MaterialFit&) { return true; }));
  write_group(out, "sphere published", those(fit, [](const MaterialFit& one) { return one.stands; }));
  write_group(out, "sphere a stand-in", those(fit, [](const MaterialFit& one) { return !one.stands; }));
  write_group(out, "films that only swell",
              those(fit, [](const MaterialFit& one) { return one.material->strongest_grade.has_value(); }));
  out << "\n";
}

void write_choices(std::ostream& out, const ObservationFit& fit, const std::vector<TriedChoice>& tried) {
  out << "## Other choices\n\n"
         "Scores of observations whose source was held out.\n\n"
         "| choice | clear-cut right | Brier | in order | -ln chance | stand-ins alone | films that only swell |\n"
         "| --- | --- | --- | --- | --- | --- | --- |\n";
  const auto row = [&](const std::string& what, const ObservationFit& one) {
    const auto score = [&](const std::function<bool(const MaterialFit&)>& wanted) {
      return score_of(those(one, wanted), &MaterialFit::held_out);
    };
    const AgreementScore all = score([](const MaterialFit&) { return true; });
    out << fmt::format(
        "| {} | {} | {} | {} | {} | {} | {} |\n", what, right_of(all), brier_of(all), order_of(all),
        fixed(all.log_score, 3), fixed(score([](const MaterialFit& each) { return !each.stands; }).log_score, 3),
        fixed(score([](const MaterialFit& each) { return each.material->strongest_grade.has_value(); }).log_score, 3));
  };
  row("**as shipped**", fit);
  for (const TriedChoice& one : tried) row(one.what, one.fit);
  out << "\n";
}

void write_materials(std::ostream& out, const ObservationFit& fit) {
  out << "## Material by material\n\n"
         "| material | observations (sources) | dD dP dH R0 | deviations | right: recorded / seen / not seen | Brier "
         "not "
         "seen | in order not seen | misfits |\n"
         "| --- | --- | --- | --- | --- | --- | --- | --- |\n";
  for (const MaterialFit& one : fit.materials) {
    const AgreementScore recorded = score_of({&one}, &MaterialFit::recorded);
    const AgreementScore seen = score_of({&one}, &MaterialFit::fitted);
    const AgreementScore unseen = score_of({&one}, &MaterialFit::held_out);
    const UncertainSphere& sphere = one.fit.sphere;
    out << fmt::format("| {}{} | {} ({}) | {} | {} | {} / {} / {} | {} | {} | {} |\n", one.material->id,
                       one.stands ? " (published)" : "", one.fitted.size(), one.sources,
                       numbers(four_figures(sphere), 1), numbers(deviations(sphere), 1), right_of(recorded),
                       right_of(seen), right_of(unseen), brier_of(unseen), order_of(unseen),
                       joined(misfits_of(one), "; ", ""));
  }
  out << "\n";
}

void write_misses(std::ostream& out, const ObservationFit& fit, const Catalogue& catalogue) {
  out << "## Clear-cut observations missed where their source was held out\n\n"
         "| material | liquid | seen | chance as recorded | seen | not seen | source |\n"
         "| --- | --- | --- | --- | --- | --- | --- |\n";
  for (const MaterialFit& one : fit.materials)
    for (std::size_t i = 0; i < one.held_out.size(); ++i) {
      const JudgedAction& judged = one.held_out[i];
      const std::optional<bool> did = what_happened(judged, *one.material);
      if (!did || is_right(judged.chance, *did)) continue;
      out << fmt::format("| {} | {} | {}, {} | {} | {} | {} | {} |\n", one.material->id,
                         liquid_in_words(*judged.seen, catalogue), result_in_words(*judged.seen),
                         grades_in_words(*judged.seen), percent_of(one.recorded[i].chance),
                         percent_of(one.fitted[i].chance), percent_of(judged.chance), judged.seen->source);
    }
  out << "\n";
}

void write_not_asked(std::ostream& out, const ObservationFit& fit) {
  std::map<std::string, int> others;
  int in_words = 0;
  for (const Observation* seen : fit.not_asked) {
    if (!seen->grades || seen->parts.empty())
      ++in_words;
    else
      ++others[seen->material];
  }
  std::string list;
  for (const auto& [material, count] : others)
    list += fmt::format("{}{} {}", list.empty() ? "" : ", ", material, count);
  out << fmt::format(
      "## Not asked\n\n"
      "{} of {} observations have no chance beside them: {} are told in words only or name no liquid; the others are "
      "of "
      "materials\nwithout a sphere, which the plan judges by these observations themselves, or of a liquid without a "
      "point: {}.\n\n",
      fit.not_asked.size(),
      fit.not_asked.size() +
          static_cast<std::size_t>(
              score_of(those(fit, [](const MaterialFit&) { return true; }), &MaterialFit::fitted).observations),
      in_words, list);
}

const char* const opening =
    "# Observations: what they make of the spheres, and how well the chances agree with them\n"
    "\n"
    "`gentlest condition page` writes this page, `gentlest condition records` writes `solvents/conditioned.yaml`; both "
    "are\n"
    "deterministic. `tests/published/test_conditioning.cpp` holds the file against the fit.\n"
    "\n"
    "**Material**: the rows of `solvents/observations/` that name a liquid and a range of grades, on materials that "
    "have a\n"
    "sphere. **Fit** (`fitting/conditioning.hpp`): centre and radius start from the recorded stand-in, its deviations\n"
    "widened; besides, ln R0 may bend near the liquids seen (a Gaussian field over Hansen space). A row says that the\n"
    "grade lies in its range, except for a slip in twenty; a row of high, medium or low confidence weighs 1, 0.7 or "
    "0.4, a\n"
    "row of a material that this one is like (`observed_like`) half of that. A published sphere keeps its centre, "
    "radius\n"
    "and deviations; only its reach is fitted. Films that swell but never dissolve (`strongest_grade`) have the curve "
    "of\n"
    "fresh resins with everything stronger than that grade counted as it, and a swab of seconds acts on them as if ln "
    "RED\n"
    "were larger by {swab}.\n"
    "\n"
    "**Scores.** A film that dissolves is asked how likely a liquid moves it (grade 2 or stronger), one that only "
    "swells how\n"
    "likely it is affected (grade 4 or stronger). An observation is clear-cut when its range lies wholly there, right "
    "at a\n"
    "chance of 50 % or more, or wholly at grades 5 and 6, right at 25 % or less. Brier is the mean squared difference "
    "of\n"
    "chance and what happened over the clear-cut; \"in order\" the share of pairs on one material, of ranges that do "
    "not\n"
    "overlap, whose chances stand in the same order. *Source not seen*: by a fit without any row of the same source "
    "(all\n"
    "that we recall counts as one source, all common practice as another).\n"
    "\n"
    "**What flatters.** Most stand-ins were chosen with these observations in view (each record says so), so \"not "
    "seen\" is\n"
    "not quite unseen. Seven published spheres (PMMA, PVAc, PVB, polystyrene, PVC, cellulose nitrate and acetate) had "
    "rows\n"
    "checked against their own score sets. The ranges of paints are broad, so few of their rows are clear-cut. Rows of "
    "low\n"
    "confidence are scored like the others.\n\n";

std::string replaced(std::string text, const std::string& mark, const std::string& by) {
  const std::size_t at = text.find(mark);
  return at == std::string::npos ? text : text.replace(at, mark.size(), by);
}

}  // namespace

std::string conditioning_records(const ObservationFit& fit) {
  std::ostringstream out;
  out << "# What observations made of the spheres: made by `gentlest condition records`, never by hand; how:\n"
         "# docs/observations.md. sphere: dD, dP, dH, R0; sd: theirs (MPa^0.5); covariances: dD-dP, dD-dH, dP-dH, "
         "dD-R0,\n"
         "# dP-R0, dH-R0 (MPa); no sphere: the published one stands. reach: dD, dP, dH and weight of each place.\n";
  out << fmt::format("swab_ln_further: {}\nreach_length: {}\nconditioned:\n", fit.swab_ln_further,
                     fit.settings.reach_length);
  for (const MaterialFit& one : fit.materials) {
    const AgreementScore score = score_of({&one}, &MaterialFit::held_out);
    out << fmt::format("  - material: {}\n", one.material->id);
    if (!one.stands) {
      const SphereCovariance& with = one.fit.sphere.shared;
      out << "    sphere: " << numbers(four_figures(one.fit.sphere), 2)
          << "\n    sd: " << numbers(deviations(one.fit.sphere), 3) << "\n    covariances: "
          << numbers({with.dD_dP, with.dD_dH, with.dP_dH, with.dD_R0, with.dP_R0, with.dH_R0}, 3) << "\n";
    }
    if (!one.fit.reach.places.empty()) out << "    reach:\n";
    for (const LocalReach::Place& place : one.fit.reach.places)
      out << fmt::format("      - [{}, {}, {}, {}]\n", fixed(place.at.dD, 2), fixed(place.at.dP, 2),
                         fixed(place.at.dH, 2), fixed(place.weight, 4));
    out << fmt::format("    observations: {}\n    sources: {}\n    clear_cut: {}\n    right: {}\n    brier: {}\n",
                       one.fitted.size(), one.sources, score.clear_cut, score.right, fixed(score.brier, 3));
    const std::vector<std::string> misfits = misfits_of(one);
    if (!misfits.empty()) out << "    misfits: [\"" << joined(misfits, "\", \"", "") << "\"]\n";
  }
  return out.str();
}

std::string conditioning_page(const ObservationFit& fit, const std::vector<TriedChoice>& tried,
                              const Catalogue& catalogue) {
  std::ostringstream out;
  out << replaced(opening, "{swab}", fmt::format("{}", fit.swab_ln_further));
  write_overall(out, fit);
  write_choices(out, fit, tried);
  write_materials(out, fit);
  write_misses(out, fit, catalogue);
  write_not_asked(out, fit);
  return out.str();
}

std::string conditioning_rows(const ObservationFit& fit, Form form, const Style& style, const Edition& edition,
                              const Catalogue& catalogue) {
  Sheet sheet{"observations",
              {{"material", "material"},
               {"liquid", "liquid", -1, true},
               {"strongest_grade_seen", "from grade", 0},
               {"weakest_grade_seen", "to grade", 0},
               {"chance_recorded", "recorded", 2},
               {"chance_fitted", "fitted", 2},
               {"chance_source_not_seen", "not seen", 2},
               {"source", "source"}},
              {}};
  for (const MaterialFit& one : fit.materials)
    for (std::size_t i = 0; i < one.fitted.size(); ++i) {
      const Observation& seen = *one.fitted[i].seen;
      sheet.rows.push_back({one.material->id, liquid_in_words(seen, catalogue),
                            static_cast<double>(seen.grades->strongest), static_cast<double>(seen.grades->weakest),
                            one.recorded[i].chance, one.fitted[i].chance, one.held_out[i].chance, seen.source});
    }
  return sheet_report(sheet, form, style, edition);
}

}  // namespace gentlest
