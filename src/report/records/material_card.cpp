#include "report/form/format.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/words.hpp"
#include "report/records/figures.hpp"
#include "report/records/observed_rows.hpp"

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
      "response", "response curve of its own", "", {}, {}, "none published: the curve of fresh resins is borrowed"};
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
  if (!material.flags.empty()) card.facts.emplace_back("warnings", flags_text(material.flags));
  if (!material.score_set.empty()) card.facts.emplace_back("published tests", material.score_set);
  if (!material.remark.empty()) card.facts.emplace_back("remark", material.remark);
  card.groups = {sphere_group(material, catalogue), behaviour_group(material)};
  card.observations = observed_rows(catalogue.observations_on(material), catalogue);
  card.sources = sources_of(card, catalogue);
  return card;
}

}  // namespace gentlest
