#include "report/form/format.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/words.hpp"
#include "report/records/figures.hpp"
#include "report/records/observed_rows.hpp"

#include <fmt/format.h>

namespace gentlest {

namespace {

const GradeSpread* default_spread(SphereGrade grade, const Catalogue& catalogue) {
  for (const GradeSpread& spread : catalogue.spreads())
    if (spread.grade == grade) return &spread;
  return nullptr;
}

Figure spread_figure(const SphereRecord& record, const Catalogue& catalogue) {
  Figure figure = figure_of("sphere_sd_dD_dP_dH_R0_MPa05", spread_of_these, "MPa^0.5", record.own_spread);
  const GradeSpread* spread = default_spread(record.grade, catalogue);
  if (figure.statements.empty() && spread)
    figure.statements.push_back({values_of(UncertainSphere{{}, spread->sd, spread->R0_sd}),
                                 {},
                                 spread->source,
                                 std::string(to_word(Standing::derived)),
                                 "default for spheres of this grade"});
  return figure;
}

FigureGroup sphere_group(const Material& material, const Catalogue& catalogue) {
  FigureGroup group{"Sphere", {}};
  if (!material.sphere) {
    group.figures.push_back({"sphere_dD_dP_dH_R0_MPa05",
                             "dD, dP, dH, R0",
                             "MPa^0.5",
                             {},
                             {},
                             material.no_sphere.empty() ? not_known : "not known: " + material.no_sphere});
    return group;
  }
  Figure sphere = figure_of("sphere_dD_dP_dH_R0_MPa05", "dD, dP, dH, R0", "MPa^0.5",
                            std::optional<Known<Sphere>>(material.sphere->sphere));
  group.figures = {sphere, spread_figure(*material.sphere, catalogue)};
  return group;
}

// The sphere that is judged by, where observations moved or bent the recorded one.
std::string used_sphere_words(const UncertainSphere& used, const Conditioning& by) {
  const auto with_sd = [](const char* name, double value, double sd) {
    return fmt::format("{} {} +- {}", name, fixed(value, 1), fixed(sd, 1));
  };
  const Hansen& centre = used.mean.centre;
  std::string text = joined({with_sd("dD", centre.dD, used.sd.dD), with_sd("dP", centre.dP, used.sd.dP),
                             with_sd("dH", centre.dH, used.sd.dH), with_sd("R0", used.mean.R0, used.R0_sd)});
  if (!(used.shared == SphereCovariance{})) text += ", not independently of each other";
  if (!by.reach.places.empty())
    text += fmt::format("; bent at {} within {} MPa^0.5", counted(by.reach.places.size(), "liquid", "liquids"),
                        fixed(by.reach.length, 1));
  return text + fmt::format("; by {} of {}",
                            counted(static_cast<std::size_t>(by.observations), "observation", "observations"),
                            counted(static_cast<std::size_t>(by.sources), "source", "sources"));
}

FigureGroup behaviour_group(const Material& material) {
  FigureGroup group{"Behaviour", {}};
  Figure region{"teas_region_percent", "liquids that act: fd, fp, fh (mean; 5th; 95th percentile)", "%", {}, {}, {}};
  if (const auto& teas = material.teas_region) {
    std::vector<double> values = values_of(teas->mean);
    for (const Teas& edge : {teas->low, teas->high})
      for (const double value : values_of(edge)) values.push_back(value);
    region.statements.push_back({values, {}, teas->source, std::string(to_word(teas->standing)), teas->note});
  }
  Figure response{
      "response",
      "response curve of its own",
      "",
      {},
      {},
      material.strongest_grade
          ? "none published: the curve of fresh resins is borrowed, without the grades that never happen to it"
          : "none published: the curve of fresh resins is borrowed"};
  if (material.response)
    response.statements.push_back({{}, "yes", material.response->source, std::string(to_word(Standing::measured)), {}});
  group.figures = {region, response};
  if (material.strongest_grade)
    group.figures.push_back(
        figure_of("strongest_grade", "strongest grade that happens to it", "", material.strongest_grade));
  if (material.harm_grade)
    group.figures.push_back(figure_of("harm_grade", "a swab harms it up to grade", "", material.harm_grade));
  return group;
}

}  // namespace

Card material_card(const Material& material, const Catalogue& catalogue) {
  Card card{"material", material.id, material.name, {}, {}, {}, {}};
  card.facts = {{"kind", material.kind.empty() ? not_known : material.kind},
                {"state", material.state.empty() ? not_known : material.state}};
  add_other_names(card, material.other_names);
  if (material.sphere) {
    card.facts.emplace_back("sphere", grade_in_words(material.sphere->grade));
    if (const Material* lent = catalogue.find_material(material.sphere->stand_in_for))
      card.facts.emplace_back("borrowed from", lent->name);
    if (!material.sphere->assumption.empty()) card.facts.emplace_back("assumption", material.sphere->assumption);
  }
  const std::optional<UncertainSphere> used = uncertain_sphere(material, catalogue);
  if (used && material.conditioning)
    card.facts.emplace_back("sphere used", used_sphere_words(*used, *material.conditioning));
  if (!material.flags.empty()) card.facts.emplace_back("warnings", flags_text(material.flags));
  if (!material.score_set.empty()) card.facts.emplace_back("published tests", material.score_set);
  if (!material.remark.empty()) card.facts.emplace_back("remark", material.remark);
  card.groups = {sphere_group(material, catalogue), behaviour_group(material)};
  card.observations = observed_rows(catalogue.observations_on(material), catalogue);
  card.sources = sources_of(card, catalogue);
  return card;
}

}  // namespace gentlest
