// Fire and breath: flash point, explosive limit, what the air of the room takes up. Estimates from published
// rules; a part whose figures are missing makes the answer "not known", never harmless. Limits for the air differ by
// country and change: every answer names the list it rests on, and lists are never mixed. The binding and the
// indicative values of the EU make one list, "EU": a substance has the one or the other.
#pragma once

#include "gentlest/vial/equilibrium.hpp"
#include "gentlest/vial/miscibility.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

// ---- The rules as published, on plain numbers. Preconditions: equal lengths, limits above 0.

/// Additive exposure index: sum of concentration over limit; above 1 is too much. Source: 29 CFR 1910.1000(d)(2).
double additive_index(const std::vector<double>& concentrations, const std::vector<double>& limits);

/// Lower explosive limit of a vapour, per cent by volume: 1 / sum(y / limit), y being shares of the vapour that burns
/// (rescaled here to add up to 1). Source: Le Chatelier, as in Crowl and Louvar 2002.
double le_chatelier(const std::vector<double>& vapour_shares, const std::vector<double>& limits_percent);

/// Concentration when a volume evaporates at once into a room, mg/m3.
double release_mg_per_m3(Millilitres volume, double density_g_per_cm3, double room_m3);

/// Mean over `hours` after one release that fresh air thins, as a share of the start: (1 - exp(-n t)) / (n t), n air
/// changes an hour, well mixed. 1 without any change of air.
double mean_after_release(double air_changes_per_hour, double hours);

/// ppm of a concentration in mg/m3 at 25 C (24.45 L/mol, footnote of OSHA Table Z-1).
double ppm_from_mg_per_m3(double mg_per_m3, double molar_mass_g);

// ---- The same on mixtures.

/// How a flash point was had, or why there is none.
enum class FlashBasis {
  recorded,              ///< one recorded liquid without water: the figure is its own
  activity,              ///< by the rule of Liaw with activity coefficients
  ideal,                 ///< coefficients are not known: the lower of the ideal estimate and the lowest part's
  nothing_burns,         ///< none: no part is flammable by its record
  no_amount,             ///< none: molar volume or molar mass of `missing` is not known
  no_flash_point,        ///< none: that of `missing`
  no_pressure_at_flash,  ///< none: the vapour pressure of `missing` at its flash point is not known
  no_solution            ///< none: vapour pressures are missing, or the mixture hardly burns
};

struct FlashPoint {
  std::optional<Celsius> estimate;
  FlashBasis basis = FlashBasis::no_solution;
  std::vector<std::string> missing;  ///< labels of the parts that `basis` speaks of
  std::string lowest_of;             ///< label of the part with the lowest recorded flash point
  std::optional<Celsius> lowest_part;
  bool measured() const noexcept { return basis == FlashBasis::recorded; }
  bool nothing_burns() const noexcept { return basis == FlashBasis::nothing_burns; }
  bool operator==(const FlashPoint&) const = default;
};

/// Closed-cup flash point. For one liquid as recorded; for a mixture where sum x_i gamma_i p_i(T) / p_i(T_flash,i) = 1
/// over the flammable parts (Liaw, Lee, Tang, Hsu 2002, J. Loss Prev. Process Ind. 15, 429). Where activity
/// coefficients are not known, the lower of the ideal estimate and the lowest part's: alcohol with hydrocarbon, or
/// ketone with alkane, can flash below both. Accuracy: about 3 C against an independent model
/// (tests/published/test_exposure.cpp).
FlashPoint flash_point(const Mixture& mixture, const Catalogue& catalogue);

/// Lower explosive limit of the vapour above the mixture, per cent by volume of air; nothing when a part that burns has
/// no recorded limit or pressures are missing.
std::optional<double> lower_explosive_limit(const Mixture& mixture, const Catalogue& catalogue,
                                            Celsius temperature = room_temperature);

/// Start of boiling at one atmosphere: as recorded for a single bottle without water, else computed; nothing when
/// pressures are missing.
std::optional<Celsius> start_of_boiling(const Mixture& mixture, const Catalogue& catalogue);

/// Vapour hazard ratio by one list of limits: sum of saturated vapour over limit, no unit. To rank mixtures, not to
/// predict the air. Sources: Pitt 2006, IChemE Symp. Ser. 151; Kob and Altnau, "Vapor hazard ratio".
struct VapourHazard {
  std::string authority;
  std::optional<double> ratio;       ///< nothing when a part has no limit on this list
  std::vector<std::string> without;  ///< labels of those parts
};

/// For every list that any part of the mixture is on, in a fixed order. Water has no limit and needs none.
std::vector<VapourHazard> vapour_hazards(const Mixture& mixture, const Catalogue& catalogue,
                                         Celsius temperature = room_temperature);

/// The room and the day.
struct Room {
  double volume_m3 = 50;
  double air_changes_per_hour = 2;
  double hours = 8;
  bool operator==(const Room&) const = default;
};

/// What a session does to the air when everything it uses dries away in the room.
struct SessionExposure {
  std::string authority;
  std::optional<double> index;          ///< additive index of the mean over the day; nothing when a limit is missing
  std::optional<double> index_at_once;  ///< the same for all of it evaporating at one moment, before any air change
  std::vector<std::string> without;     ///< labels without a limit, density or molar mass
};

/// Liquids and how much of each is used. The room is taken as well mixed; at the face, 20 to 40 cm from the swab, the
/// level is higher.
struct UsedLiquid {
  Liquid liquid;
  Millilitres volume;
};
std::vector<SessionExposure> session_exposure(const std::vector<UsedLiquid>& used, const Room& room,
                                              const Catalogue& catalogue);

/// A liquid's long-term limit on one list ("EU", "NIOSH REL" ...) or of one authority ("EU binding"), ppm: as printed,
/// else from mg/m3; where the list prints only a short-term or ceiling limit, that one. Nothing when the list has none.
std::optional<double> limit_ppm(const Solvent& solvent, std::string_view authority, double molar_mass_g);

}  // namespace gentlest
