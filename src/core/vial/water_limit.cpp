#include "core/vial/water_limit.hpp"

#include "core/vial/substances.hpp"

#include "gentlest/liquids/grade.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace gentlest {

namespace {

constexpr Celsius limits_hold_at{25};

// A corrected limit may be off by about 1 % of water. To the side of two liquids less is allowed: ethanol 96 % parts
// from cyclohexane up to 27 parts in 100 and mixes from 28 on (measured), and chain hydrocarbons bear less than
// cyclohexane.
constexpr double corrected_spread_below = 1;
constexpr double corrected_spread_above = 0.3;

// An alcohol, its water, and nothing but hydrocarbons.
struct WetAlcohol {
  const Substance* alcohol = nullptr;
  std::vector<const Substance*> hydrocarbons;
  double wet_percent = 0;    // alcohol and water in the mixture
  double water_percent = 0;  // water in alcohol and water
};

bool is_hydrocarbon(const Substance& substance) {
  constexpr std::array families = {"aliphatic hydrocarbon", "petroleum fraction", "aromatic hydrocarbon"};
  return substance.solvent && std::find(families.begin(), families.end(), substance.solvent->family) != families.end();
}

bool has_limits(const Chemistry& chemistry, const std::string& alcohol) {
  return std::any_of(chemistry.water_limits.begin(), chemistry.water_limits.end(),
                     [&](const WaterLimit& limit) { return limit.alcohol == alcohol; });
}

std::optional<WetAlcohol> wet_alcohol_of(const std::vector<Substance>& list, const Catalogue& catalogue) {
  WetAlcohol wet;
  double water = 0;
  for (const Substance& one : list) {
    if (one.id == "water")
      water = one.fraction;
    else if (is_hydrocarbon(one))
      wet.hydrocarbons.push_back(&one);
    else if (!wet.alcohol && has_limits(catalogue.chemistry(), one.id))
      wet.alcohol = &one;
    else
      return std::nullopt;
  }
  if (!wet.alcohol || wet.hydrocarbons.empty()) return std::nullopt;
  wet.wet_percent = 100 * (wet.alcohol->fraction + water);
  wet.water_percent = 100 * water / (wet.alcohol->fraction + water);
  return wet;
}

// Between the points by straight lines, beyond them as at the nearest.
template <class Figure>
double along(const WaterLimit& limit, double wet_percent, Figure&& figure) {
  const auto above = std::find_if(limit.points.begin(), limit.points.end(),
                                  [&](const WaterLimit::Point& point) { return point.wet_percent >= wet_percent; });
  if (above == limit.points.begin()) return figure(*above);
  if (above == limit.points.end()) return figure(limit.points.back());
  const WaterLimit::Point& low = *(above - 1);
  const double way = (wet_percent - low.wet_percent) / (above->wet_percent - low.wet_percent);
  return figure(low) + way * (figure(*above) - figure(low));
}

double measured_at(const WaterLimit& limit, double wet_percent) {
  return along(limit, wet_percent, [](const WaterLimit::Point& point) { return point.water_percent; });
}

double computed_at(const WaterLimit& limit, double wet_percent) {
  return along(limit, wet_percent, [](const WaterLimit::Point& point) { return point.computed_percent.value_or(0); });
}

bool speaks_of(const WaterLimit& limit, const std::string& alcohol, const std::string& other, double wet_percent) {
  return limit.alcohol == alcohol && limit.other == other && wet_percent >= limit.from_wet_percent - 1e-9 &&
         wet_percent <= limit.to_wet_percent + 1e-9;
}

// A limit at this temperature, between the two nearest records of the pair; colder and warmer than all: as the nearest.
struct Measured {
  double percent = 0;
  const WaterLimit* record = nullptr;  // the one nearer in temperature
  const WaterLimit* second = nullptr;
};

std::optional<Measured> measured_limit(const Chemistry& chemistry, const std::string& alcohol, const std::string& other,
                                       double wet_percent, Celsius temperature) {
  const WaterLimit* below = nullptr;
  const WaterLimit* above = nullptr;
  for (const WaterLimit& limit : chemistry.water_limits) {
    if (!speaks_of(limit, alcohol, other, wet_percent)) continue;
    if (limit.temperature_C <= temperature.value && (!below || limit.temperature_C > below->temperature_C))
      below = &limit;
    if (limit.temperature_C > temperature.value && (!above || limit.temperature_C < above->temperature_C))
      above = &limit;
  }
  if (!below && !above) return std::nullopt;
  if (!below || !above) {
    const WaterLimit* only = below ? below : above;
    return Measured{measured_at(*only, wet_percent), only, nullptr};
  }
  const double way = (temperature.value - below->temperature_C) / (above->temperature_C - below->temperature_C);
  const double cold = measured_at(*below, wet_percent);
  const double percent = cold + way * (measured_at(*above, wet_percent) - cold);
  return way < 0.5 ? Measured{percent, below, above} : Measured{percent, above, below};
}

Phases phases_by(double water_percent, double limit, double below, double above) {
  if (water_percent >= limit + above) return Phases::two_liquids;
  return water_percent >= limit - below ? Phases::near_border : Phases::one_liquid;
}

// The group method for two liquids on one mixture, with any other share of water in its alcohol.
class LiquidMethod {
 public:
  static std::optional<LiquidMethod> of(const Mixture& mixture, const Catalogue& catalogue) {
    auto breakdown = break_down(mixture, catalogue);
    if (!breakdown) return std::nullopt;
    LiquidMethod method;
    const Solvent* water = catalogue.find_solvent("water");
    if (!water || !molar_volume_cm3(*water)) return std::nullopt;
    method.groups_.push_back(water->unifac_groups);
    method.moles_.push_back(0);
    method.water_volume_cm3_ = *molar_volume_cm3(*water);
    for (const Molecule& molecule : breakdown->molecules)
      if (molecule.solvent != water) method.add(molecule);
    const GroupTable& table = catalogue.chemistry().unifac_liquids;
    if (!missing_for_activity(method.groups_, table).empty()) return std::nullopt;
    method.activity_ = activity_of(method.groups_, table, kelvin(limits_hold_at));
    if (!method.activity_ || method.alcohol_ == 0) return std::nullopt;
    return method;
  }

  // Share of the hydrocarbons by volume that hold an aromatic ring.
  double aromatic_share(const GroupTable& table) const {
    double aromatic = 0;
    double all = 0;
    for (std::size_t i = 1; i < groups_.size(); ++i) {
      if (i == alcohol_) continue;
      all += volumes_[i - 1];
      if (std::any_of(groups_[i].begin(), groups_[i].end(), [&](const GroupCount& group) {
            const Subgroup* one = find_subgroup(table, group.subgroup);
            return one && one->name.rfind("AC", 0) == 0;
          }))
        aromatic += volumes_[i - 1];
    }
    return all > 0 ? aromatic / all : 0;
  }

  bool parts_at(double wet_percent, double water_percent) const {
    std::vector<double> x = moles_;
    const double wet = wet_percent / 100;
    const double water = std::max(water_percent, 1e-5) / 100;
    x[0] = wet * water / water_volume_cm3_;
    x[alcohol_] = wet * (1 - water) * alcohol_moles_per_volume_;
    double sum = 0;
    for (const double one : x) sum += one;
    for (double& one : x) one /= sum;
    return is_unstable(*activity_, x);
  }

  // Where the method itself parts this much wet alcohol, per cent of water; 0: even dry.
  double limit_at(double wet_percent) const {
    if (parts_at(wet_percent, 0)) return 0;
    double low = 0;
    double high = 100;
    for (int round = 0; round < 16; ++round) {
      const double middle = (low + high) / 2;
      (parts_at(wet_percent, middle) ? high : low) = middle;
    }
    return (low + high) / 2;
  }

 private:
  void add(const Molecule& molecule) {
    const bool is_alcohol = molecule.solvent->family == "alcohol";
    if (is_alcohol && alcohol_ != 0) return;  // the same alcohol out of a second bottle
    if (is_alcohol) {
      alcohol_ = groups_.size();
      alcohol_moles_per_volume_ = 1 / molecule.molar_volume_cm3;
    }
    groups_.push_back(molecule.solvent->unifac_groups);
    volumes_.push_back(molecule.volume_fraction);
    moles_.push_back(molecule.volume_fraction / molecule.molar_volume_cm3);
  }

  std::vector<Groups> groups_;   // water first
  std::vector<double> moles_;    // per volume of the mixture; those of water and alcohol are set for each question
  std::vector<double> volumes_;  // of all but water, fractions of the mixture
  std::optional<Activity> activity_;
  std::size_t alcohol_ = 0;
  double alcohol_moles_per_volume_ = 0;
  double water_volume_cm3_ = 0;
};

// By how much measured limits lie above computed ones, per cent of water; mixed by the kinds of hydrocarbon.
struct Correction {
  double percent = 0;
  std::vector<const WaterLimit*> records;
};

std::optional<Correction> correction_at(const WetAlcohol& wet, double aromatic_share, const Catalogue& catalogue,
                                        Celsius temperature) {
  const Chemistry& chemistry = catalogue.chemistry();
  Correction correction;
  for (const auto& [kind, share] : {std::pair(HydrocarbonKind::aliphatic, 1 - aromatic_share),
                                    std::pair(HydrocarbonKind::aromatic, aromatic_share)}) {
    if (!(share > 0)) continue;
    const auto record = std::find_if(chemistry.water_limits.begin(), chemistry.water_limits.end(),
                                     [&, wanted = kind](const WaterLimit& limit) {
                                       return limit.alcohol == wet.alcohol->id && limit.corrects == wanted;
                                     });
    if (record == chemistry.water_limits.end()) return std::nullopt;
    // Beyond the measured range the difference stays as at its end.
    const double at = std::clamp(wet.wet_percent, record->from_wet_percent, record->to_wet_percent);
    const auto measured = measured_limit(chemistry, record->alcohol, record->other, at, temperature);
    correction.percent +=
        share * ((measured ? measured->percent : measured_at(*record, at)) - computed_at(*record, at));
    correction.records.push_back(&*record);
  }
  return correction;
}

std::string name_of(const std::string& id, const Catalogue& catalogue) {
  const Solvent* solvent = catalogue.find_solvent(id);
  return solvent ? solvent->name : id;
}

DecidingWater reason_of(const WetAlcohol& wet, double limit, double one_liquid_up_to, const Catalogue& catalogue,
                        Phases phases) {
  DecidingWater reason{wet.wet_percent, wet.alcohol->name, {}, std::max(limit, 0.0), wet.water_percent, {}, {}};
  for (const Substance* one : wet.hydrocarbons) reason.hydrocarbons.push_back(one->name);
  if (phases != Phases::one_liquid)
    reason.grade_that_mixes = grade_within(*wet.alcohol->solvent, std::max(one_liquid_up_to, 0.0) / 100, catalogue);
  return reason;
}

PhaseAnswer answer_by_measure(const WetAlcohol& wet, const Measured& measured, const Catalogue& catalogue,
                              bool in_full) {
  const double spread = measured.record->spread_percent;
  PhaseAnswer answer;
  answer.phases = phases_by(wet.water_percent, measured.percent, spread, spread);
  answer.basis = PhasesBasis::measured;
  if (!in_full) return answer;
  answer.water = reason_of(wet, measured.percent, measured.percent - spread, catalogue, answer.phases);
  for (const WaterLimit* record : {measured.record, measured.second})
    if (record) answer.sources.push_back(record->source);
  return answer;
}

Phases corrected_phases(const LiquidMethod& method, const WetAlcohol& wet, double correction) {
  // A limit raised by so much is passed where the method parts with so much less water.
  const double reduced = wet.water_percent - correction;
  if (reduced + corrected_spread_below <= 0) return Phases::one_liquid;
  if (reduced - corrected_spread_above > 0 && method.parts_at(wet.wet_percent, reduced - corrected_spread_above))
    return Phases::two_liquids;
  return method.parts_at(wet.wet_percent, reduced + corrected_spread_below) ? Phases::near_border : Phases::one_liquid;
}

std::optional<PhaseAnswer> answer_corrected(const WetAlcohol& wet, const Mixture& mixture, const Catalogue& catalogue,
                                            Celsius temperature, bool in_full) {
  const auto method = LiquidMethod::of(mixture, catalogue);
  if (!method) return std::nullopt;
  const GroupTable& table = catalogue.chemistry().unifac_liquids;
  const auto correction = correction_at(wet, method->aromatic_share(table), catalogue, temperature);
  if (!correction) return std::nullopt;
  PhaseAnswer answer;
  answer.phases = corrected_phases(*method, wet, correction->percent);
  answer.basis = PhasesBasis::corrected;
  if (!in_full) return answer;
  const double limit = method->limit_at(wet.wet_percent) + correction->percent;
  answer.water = reason_of(wet, limit, limit - corrected_spread_below, catalogue, answer.phases);
  for (const WaterLimit* record : correction->records)
    answer.water->corrected_by.push_back(name_of(record->other, catalogue));
  answer.sources.push_back(table.source);
  for (const WaterLimit* record : correction->records) answer.sources.push_back(record->source);
  return answer;
}

}  // namespace

std::optional<PhaseAnswer> from_water_limits(const Mixture& mixture, const Catalogue& catalogue, Celsius temperature,
                                             bool in_full) {
  const std::vector<Substance> list = substances_of(mixture);
  const std::optional<WetAlcohol> wet = wet_alcohol_of(list, catalogue);
  if (!wet) return std::nullopt;
  if (wet->hydrocarbons.size() == 1)
    if (const auto measured = measured_limit(catalogue.chemistry(), wet->alcohol->id, wet->hydrocarbons.front()->id,
                                             wet->wet_percent, temperature))
      return answer_by_measure(*wet, *measured, catalogue, in_full);
  return answer_corrected(*wet, mixture, catalogue, temperature, in_full);
}

std::optional<double> computed_water_limit(const Solvent& alcohol, const Solvent& hydrocarbon, double wet_percent,
                                           const Catalogue& catalogue) {
  const Mixture mixture({{make_liquid(alcohol, "", catalogue), wet_percent / 100},
                         {make_liquid(hydrocarbon, "", catalogue), 1 - wet_percent / 100}});
  const auto method = LiquidMethod::of(mixture, catalogue);
  if (!method) return std::nullopt;
  return method->limit_at(wet_percent);
}

}  // namespace gentlest
