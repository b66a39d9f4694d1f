#include "gentlest/catalogue/figures.hpp"

namespace gentlest {

namespace {

template <class T>
std::vector<std::string> sources_in(const Cited<T>& figure) {
  return {figure.source};
}

template <class T>
std::vector<std::string> sources_in(const Known<T>& figure) {
  std::vector<std::string> sources = {figure.chosen.source};
  for (const Cited<T>& other : figure.others) sources.push_back(other.source);
  return sources;
}

}  // namespace

const std::vector<SolventFigure>& solvent_figures() {
  static const std::vector<SolventFigure> figures = {
      {"hansen", "hansen", "hansen_dD_dP_dH_MPa05", "MPa^0.5", &Solvent::hansen},
      {"hansen_sd", "hansen_sd", "hansen_sd_MPa05", "MPa^0.5", &Solvent::hansen_sd},
      {"teas", "teas", "teas_percent", "%", &Solvent::teas},
      {"molar_mass_g_per_mol", "molar_mass", "molar_mass_g_per_mol", "g/mol", &Solvent::molar_mass_g_per_mol},
      {"molar_volume_cm3_per_mol", "molar_volume", "molar_volume_cm3_per_mol", "cm3/mol",
       &Solvent::molar_volume_cm3_per_mol},
      {"density_g_per_cm3", "density", "density_g_per_cm3", "g/cm3", &Solvent::density_g_per_cm3},
      {"boiling_point_C", "boiling_point", "boiling_point_C", "C", &Solvent::boiling_point_C},
      {"boiling_range_C", "boiling_range", "boiling_range_C", "C", &Solvent::boiling_range_C},
      {"aromatics_percent", "aromatics", "aromatics_percent", "% by volume", &Solvent::aromatics_percent},
      {"vapour_pressure_kPa", "vapour_pressure", "vapour_pressure_kPa", "kPa", &Solvent::vapour_pressure_kPa},
      {"evaporation_rate", "evaporation_rate", "evaporation_rate", "", &Solvent::evaporation_rate},
      {"flash_point_C", "flash_point", "flash_point_C", "C", &Solvent::flash_point_C},
      {"autoignition_C", "autoignition", "autoignition_C", "C", &Solvent::autoignition_C},
      {"explosive_limits", "explosive_limits", "explosive_limits_percent", "% by volume", &Solvent::explosive_limits},
      {"antoine", "antoine", "antoine_A_B_C_from_K_to_K", "", &Solvent::antoine},
      {"carcinogen_group", "carcinogen_group", "carcinogen_group", "", &Solvent::carcinogen_group},
      {"peroxide_former", "peroxide_former", "peroxide_former", "", &Solvent::peroxide_former},
  };
  return figures;
}

const SolventFigure* find_solvent_figure(std::string_view key) {
  for (const SolventFigure& figure : solvent_figures())
    if (key == figure.key) return &figure;
  return nullptr;
}

bool is_known(const SolventFigure& figure, const Solvent& solvent) {
  return std::visit([&](auto member) { return (solvent.*member).has_value(); }, figure.member);
}

std::vector<std::string> sources_of(const SolventFigure& figure, const Solvent& solvent) {
  return std::visit(
      [&](auto member) { return solvent.*member ? sources_in(*(solvent.*member)) : std::vector<std::string>(); },
      figure.member);
}

std::vector<Source> named_sources(const std::set<std::string>& keys, const Catalogue& catalogue) {
  std::vector<Source> sources;
  for (const std::string& key : keys)
    if (const Source* source = catalogue.find_source(key)) sources.push_back(*source);
  return sources;
}

}  // namespace gentlest
