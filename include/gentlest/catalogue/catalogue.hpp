// The records that everything rests on: solvents and materials, each figure with its source.
// Immutable once built; found by id, name, other name or CAS number. Reading the files is the business of io/.
#pragma once

#include "gentlest/base/quantity.hpp"
#include "gentlest/base/source.hpp"
#include "gentlest/catalogue/chemistry.hpp"
#include "gentlest/catalogue/observation.hpp"
#include "gentlest/finishes/finish.hpp"
#include "gentlest/names/names.hpp"
#include "gentlest/practice/examination.hpp"
#include "gentlest/practice/other_way.hpp"
#include "gentlest/space/hansen.hpp"
#include "gentlest/space/reach.hpp"
#include "gentlest/space/response.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// Vapour pressure of a pure liquid: log10(p / kPa) = A - B / (T / K + C), valid from from_K to to_K.
struct Antoine {
  double A = 0, B = 0, C = 0;
  double from_K = 0, to_K = 0;
  bool operator==(const Antoine&) const = default;
};

/// Lower and upper explosive limit in air, per cent by volume; the upper one is not always published.
struct ExplosiveLimits {
  double lower_percent = 0;
  std::optional<double> upper_percent;
  bool operator==(const ExplosiveLimits&) const = default;
};

/// What is printed as a range because the liquid is a blend that varies; low and high may be one.
struct PrintedRange {
  double low = 0;
  double high = 0;  ///< at least low
  bool operator==(const PrintedRange&) const = default;
};

/// A share from which a record's own limit puts a statement on a mixture: "STOT SE 3; H335: C >= 25 %".
struct SpecificLimit {
  std::string code;                     ///< e.g. H335
  double from_percent = 0;              ///< by weight, above 0
  std::optional<double> below_percent;  ///< where a band ends: "10 % <= C < 25 %"
  bool operator==(const SpecificLimit&) const = default;
};

/// What Hazards::specific_limits says, read once (io/specific_limits.hpp).
struct OwnLimits {
  std::vector<SpecificLimit> limits;         ///< in the order of the record; one statement may have several bands
  std::optional<double> ATE_oral_mg_per_kg;  ///< acute toxicity estimates, above 0
  std::optional<double> ATE_dermal_mg_per_kg;
  std::optional<double> ATE_vapour_mg_per_L;
  std::optional<double> ATE_mist_mg_per_L;
  double M_acute = 1;  ///< factors of the classes for water life, at least 1
  double M_chronic = 1;
  std::vector<std::string> remarks;  ///< "note P: ..."
  bool operator==(const OwnLimits&) const = default;
};

/// A flammable class that the liquid's flash point asks for and its record does not name, or names milder.
struct AddedFlame {
  std::string code;      ///< H224, H225 or H226; stands among the statements
  std::string recorded;  ///< the milder one of the record; empty when the record names none
  bool operator==(const AddedFlame&) const = default;
};

/// Classification of a solvent. A missing record means "not known", never "harmless".
struct Hazards {
  std::vector<std::string> statements;    ///< GHS hazard statement codes, e.g. H225
  std::vector<std::string> supplemental;  ///< EUH codes, e.g. EUH066
  std::vector<std::string> classes;       ///< class and category, e.g. "Flam. Liq. 2"
  std::vector<std::string> pictograms;    ///< GHS01 ... GHS09
  std::string signal_word;                ///< "Danger", "Warning" or empty
  std::string specific_limits;            ///< specific concentration limits, M factors, ATE as printed
  bool minimum_only = false;              ///< the entry is a minimum classification; suppliers may classify further
  std::string source;
  Standing standing = Standing::measured;
  std::string note;
  OwnLimits own;                          ///< specific_limits, as figures
  std::optional<AddedFlame> added_flame;  ///< set by Catalogue: the record is completed by CLP Annex I 2.6.1
  bool operator==(const Hazards&) const = default;
};

/// One jurisdiction's limit for the air at the workplace. Each number is given only where published.
struct ExposureLimit {
  std::string authority;  ///< e.g. "EU binding", "EU indicative", "NIOSH REL", "OSHA PEL", "Ontario"
  std::optional<double> long_term_ppm, long_term_mg_per_m3;
  std::optional<double> short_term_ppm, short_term_mg_per_m3;
  std::optional<double> ceiling_ppm, ceiling_mg_per_m3;
  bool skin = false;  ///< the authority warns of uptake through the skin
  std::string source;
  Standing standing = Standing::measured;
  std::string note;
  bool operator==(const ExposureLimit&) const = default;
};

/// One liquid. Every optional that is empty means "not known to this catalogue".
struct Solvent {
  std::string id;
  std::string name;
  std::string family;
  std::vector<OtherName> other_names;
  std::string cas;              ///< empty where none applies
  bool is_blend = false;        ///< a petroleum cut, an isomer mixture or the like: figures are typical, not exact
  bool reference_only = false;  ///< kept for comparison; never proposed unless the job names it on its shelf
  std::optional<Known<Hansen>> hansen;
  std::string no_hansen;                   ///< why there is none
  std::optional<Cited<Hansen>> hansen_sd;  ///< standard deviations, where published
  std::optional<Known<Teas>> teas;         ///< as published; teas_fractions() computes its own
  std::optional<Known<double>> molar_mass_g_per_mol;
  std::optional<Known<double>> molar_volume_cm3_per_mol;
  std::optional<Known<double>> density_g_per_cm3;  ///< at 25 C unless the note says otherwise
  std::optional<Known<double>> boiling_point_C;
  std::optional<Known<PrintedRange>> boiling_range_C;    ///< of a blend, first drop to last
  std::optional<Known<PrintedRange>> aromatics_percent;  ///< of a petroleum cut, % by volume, 0 to 100
  std::optional<Known<double>> vapour_pressure_kPa;      ///< at 25 C unless the note says otherwise
  std::optional<Known<double>> evaporation_rate;         ///< n-butyl acetate = 1
  std::optional<Known<double>> flash_point_C;            ///< closed cup unless the note says otherwise
  std::optional<Known<double>> autoignition_C;
  std::optional<Known<ExplosiveLimits>> explosive_limits;
  std::optional<Known<Antoine>> antoine;
  Groups unifac_groups;  ///< original UNIFAC numbering; empty where not known
  std::optional<Hazards> hazards;
  std::string
      flame_by_figures;  ///< set by Catalogue: H224, H225 or H226 by flash and boiling point; empty: not known to burn
  std::vector<ExposureLimit> exposure_limits;
  std::optional<Cited<std::string>> carcinogen_group;  ///< IARC group as printed
  std::optional<Cited<bool>> peroxide_former;
  std::vector<Cited<std::string>> restrictions;  ///< legal limits of use, as published
  std::string remark;
  bool operator==(const Solvent&) const = default;
};

/// What a material's warnings are about; each switches off a claim the program would otherwise make.
enum class Flag { resinous, waxy, bituminous, cross_linked, water_sensitive };
std::string_view to_word(Flag flag);
std::optional<Flag> flag_from_word(std::string_view word);

/// How far a material's sphere can be trusted; decides the standard deviations where none are published.
enum class SphereGrade {
  fitted,       ///< published, read by us, and its own score set bears it out
  recalled,     ///< from memory, but its own score set bears it out
  unbracketed,  ///< its good solvents reach the edge of the solvent cloud: centre and radius slide together
  weak,         ///< misplaces 14 or more of 88 solvents of its own score set
  unsupported,  ///< published, without a score set to check it against
  assumed       ///< a stand-in: no sphere of this very material is published
};
std::string_view to_word(SphereGrade grade);
std::optional<SphereGrade> sphere_grade_from_word(std::string_view word);

/// Default standard deviations of one grade, MPa^0.5, and how they were chosen.
struct GradeSpread {
  SphereGrade grade = SphereGrade::assumed;
  Hansen sd;
  double R0_sd = 0;
  std::string source;
  bool operator==(const GradeSpread&) const = default;
};

/// The sphere of a material as recorded.
struct SphereRecord {
  Known<Sphere> sphere;
  SphereGrade grade = SphereGrade::assumed;
  std::optional<Cited<UncertainSphere>> own_spread;  ///< where standard deviations are given for this very material
  std::string stand_in_for;  ///< id of the material whose sphere is borrowed; empty when the sphere is its own
  std::string assumption;    ///< in plain words, what was assumed (shift of the centre, change of the radius)
  bool operator==(const SphereRecord&) const = default;
};

/// Published range of solvents in the triangle view, per cent.
struct TeasRegion {
  Teas mean;
  Teas low;   ///< 5th percentile of each fraction
  Teas high;  ///< 95th percentile of each fraction
  std::string source;
  Standing standing = Standing::derived;
  std::string note;
  bool operator==(const TeasRegion&) const = default;
};

/// What observations made of a material's sphere (solvents/conditioned.yaml, made by `gentlest condition`).
struct Conditioning {
  std::string material;                   ///< id
  std::optional<UncertainSphere> sphere;  ///< moved and narrowed; nothing where the published sphere stands
  LocalReach reach;                       ///< where the observations bend it
  int observations = 0;                   ///< that it rests on
  int sources = 0;                        ///< publications and kinds of hearsay behind them
  int clear_cut = 0;                      ///< of them clear-cut, each judged by a fit without its source
  int right = 0;                          ///< of these right
  double brier = 0;                       ///< their mean squared difference of chance and what happened
  std::vector<std::string> misfits;       ///< liquids that the fit itself puts on the wrong side of one half
  bool operator==(const Conditioning&) const = default;
};

/// A resin, wax, polymer or paint film.
struct Material {
  std::string id;
  std::string name;
  std::string kind;   ///< e.g. "natural resin", "oil paint", "wax"
  std::string state;  ///< e.g. "fresh", "aged", "young film"
  std::vector<OtherName> other_names;
  std::optional<SphereRecord> sphere;
  std::string no_sphere;             ///< why there is none
  std::optional<Response> response;  ///< its own response curve, where one is published
  /// A film that swells but never dissolves: the strongest grade that happens to it. Nothing: it may dissolve.
  std::optional<Cited<int>> strongest_grade;
  /// Grades up to this one are harm to it under a swab, where that is not what a job's limits usually count.
  std::optional<Cited<int>> harm_grade;
  /// Ids of materials that it behaves like: what was seen on them counts half for its sphere, too.
  std::vector<std::string> observed_like;
  std::optional<TeasRegion> teas_region;
  std::string score_set;  ///< file stem of its published score set, where there is one
  std::vector<Flag> flags;
  std::string remark;
  std::optional<Conditioning> conditioning;  ///< set by Catalogue
  bool operator==(const Material&) const = default;
};

/// All records of one edition of the catalogue. Build it once, then only look things up.
struct CatalogueRecords {
  std::string version;
  Law law;
  std::vector<Source> sources;
  std::vector<Solvent> solvents;
  std::vector<Material> materials;
  std::vector<AmbiguousName> ambiguous_solvents;   ///< names that mean more than one solvent
  std::vector<AmbiguousName> ambiguous_materials;  ///< the same of materials
  std::vector<Observation> observations;
  std::vector<ExaminationQuestion> examination;  ///< in the order in which they are asked
  Finishes finishes;                             ///< what goes on a cleaned painting; may be empty
  std::vector<GradeSpread> spreads;
  std::vector<Conditioning> conditionings;  ///< at most one a material
  Response response;                        ///< the response curve used where a material has none of its own
  /// On a film that swells but never dissolves a swab of seconds acts as if ln RED were larger by this.
  double swab_ln_further = 0;
  Chemistry chemistry;               ///< what is published about liquids together
  std::vector<OtherWay> other_ways;  ///< in the order of the file; none where the catalogue has no such file
};

/// Whose names are meant.
enum class NamesOf { solvents, materials, both };

/// Looks records up. Throws InputError (Fault::file) when two records claim the same id, name or CAS number, when an
/// ambiguous name is a record's or offers none, when a figure names a source that does not exist, when a stand-in names
/// no material, or when an observation fits nothing.
class Catalogue {
 public:
  /// Complains about names, sources and ids that do not fit together. Then gives every liquid the flammable class that
  /// its own flash point asks for (Solvent::flame_by_figures) and completes records that name a milder one or none.
  explicit Catalogue(CatalogueRecords records);

  /// One number for these very records: no other catalogue built in this run has it, its copies do.
  std::uint64_t serial() const noexcept { return serial_; }
  const std::string& version() const noexcept { return records_.version; }
  const Law& law() const noexcept { return records_.law; }
  const std::vector<Solvent>& solvents() const noexcept { return records_.solvents; }
  const std::vector<Material>& materials() const noexcept { return records_.materials; }
  const std::vector<AmbiguousName>& ambiguous_solvents() const noexcept { return records_.ambiguous_solvents; }
  const std::vector<AmbiguousName>& ambiguous_materials() const noexcept { return records_.ambiguous_materials; }
  const std::vector<Observation>& observations() const noexcept { return records_.observations; }
  const std::vector<ExaminationQuestion>& examination() const noexcept { return records_.examination; }
  const Finishes& finishes() const noexcept { return records_.finishes; }
  const std::vector<Source>& sources() const noexcept { return records_.sources; }
  const std::vector<GradeSpread>& spreads() const noexcept { return records_.spreads; }
  const Response& response() const noexcept { return records_.response; }
  double swab_ln_further() const noexcept { return records_.swab_ln_further; }
  const Chemistry& chemistry() const noexcept { return records_.chemistry; }
  const std::vector<OtherWay>& other_ways() const noexcept { return records_.other_ways; }

  /// What a typed name means, by id, name, other name or CAS number (NameIndex says in which order).
  Meaning<Solvent> meaning_of_solvent(std::string_view name) const;
  Meaning<Material> meaning_of_material(std::string_view name) const;
  /// The record alone; null where the name is unknown or must be asked back.
  const Solvent* find_solvent(std::string_view name) const { return meaning_of_solvent(name).record; }
  const Material* find_material(std::string_view name) const { return meaning_of_material(name).record; }
  const Source* find_source(std::string_view key) const;
  const ExaminationQuestion* find_question(std::string_view id) const;  ///< null where there is none

  /// Known names near to an unknown one, ambiguous ones among them, for "did you mean".
  std::vector<OfferedName> names_near(std::string_view typed, NamesOf whose) const;

  /// What was seen on this material; with this solvent, alone or in a mixture. In the order of the files.
  std::vector<const Observation*> observations_on(const Material& material) const;
  std::vector<const Observation*> observations_with(const Solvent& solvent) const;

 private:
  std::uint64_t serial_ = 0;
  CatalogueRecords records_;
  NameIndex solvent_names_;
  NameIndex material_names_;
};

/// What is wrong with a name that leads to no record, and what would be right.
struct NameFault {
  std::string message;
  std::string remedy;
};

/// An ambiguous name is asked back with its choices. One of the other list is told as such. Of an unknown one `unknown`
/// is said, with the nearest names, or `otherwise` where none is near.
NameFault solvent_fault(std::string_view name, const Catalogue& catalogue, std::string unknown,
                        const std::string& otherwise);
NameFault material_fault(std::string_view name, const Catalogue& catalogue, std::string unknown,
                         const std::string& otherwise);

/// The material's sphere with its standard deviations, as it was recorded: its own deviations, else those of its grade.
/// Empty when the material has no sphere.
std::optional<UncertainSphere> recorded_sphere(const Material& material, const Catalogue& catalogue);

/// The sphere to judge by: as observations moved it, else as recorded. Empty when the material has none.
std::optional<UncertainSphere> uncertain_sphere(const Material& material, const Catalogue& catalogue);

/// Where observations bend that sphere; without places where they do not.
LocalReach local_reach(const Material& material);

/// The curve to judge by: the material's own or the borrowed one, capped at the strongest grade that happens to it. On
/// a film that only swells a short contact (is_short) acts as if it were further off.
Response response_of(const Material& material, const Catalogue& catalogue, Contact contact = Contact::swab);

}  // namespace gentlest
