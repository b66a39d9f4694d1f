// What the conservator writes down about one painting: layers, passages, shelf and limits.
// A plain record; src/io/job_file.cpp reads it from YAML, check_job() finds what contradicts itself.
#pragma once

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/quantity.hpp"
#include "gentlest/catalogue/catalogue.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace gentlest {

enum class Role { remove, keep };

/// Where keys of the job's file stand, for messages; "limits.parts", "limits.avoid_families.0", "layers", "shelf".
/// Where a thing stands is no part of what the job says, so all Places are equal.
struct Places {
  std::map<std::string, Location> at;
  bool operator==(const Places&) const { return true; }
};

/// A sphere the user measured on a sample of the very material.
struct OwnSphere {
  UncertainSphere sphere;
  std::string source;  ///< in the user's words: who tested what, when
  bool operator==(const OwnSphere&) const = default;
};

/// Another material that a layer may be, with how far that is believed.
struct PossibleMaterial {
  std::string material;  ///< material id
  int percent = 0;       ///< 1 to 99; what all of them leave of 100 is for the layer's own material
  Location where;
  bool operator==(const PossibleMaterial& other) const;
};

/// Written for a material that nobody knows: the layer is planned as not judged. No record is called so.
inline constexpr const char* unknown_material = "unknown";

/// One layer of the painting, from the top down.
struct Layer {
  std::string name;
  Role role = Role::keep;
  std::string recorded;  ///< material id: what the files say; may be empty or `unknown_material`
  std::string found;     ///< the same: what examination showed. It wins over `recorded`
  std::optional<OwnSphere> own_sphere;
  std::vector<PossibleMaterial> possible;  ///< weighed by the readings; the ladder follows the layer's own material
  std::vector<Flag> suspected;
  std::string note;
  Location where;
  Location recorded_where = {};   ///< of `recorded` where `where` speaks of something else
  Light light = Light::not_told;  ///< in which it grew old
  std::optional<double> years;    ///< since it was put on, 0 to 5000
  bool operator==(const Layer& other) const;
};

/// What is to be put on afterwards, on what stays of the painting.
struct ProposedCoat {
  std::string material;                ///< material id, as it is when it is put on
  FinishUse use = FinishUse::varnish;  ///< retouching or varnish
  std::string in;                      ///< mixture as people type it; empty: as the sources say
  Light light = Light::not_told;       ///< in which it will grow old
  std::optional<double> years;         ///< for which it is to stay, 0 to 5000
  Location where;
  bool operator==(const ProposedCoat& other) const;
};

/// Id of the material that the layer is taken for: what was found, else what was recorded; may be empty.
const std::string& own_material(const Layer& layer);

/// A colour passage that must stay unaffected as well. Without a material of its own it behaves like its layer.
struct Passage {
  std::string name;
  std::string of;        ///< name of the layer it belongs to
  std::string material;  ///< material id or `unknown_material`, or empty
  std::vector<Flag> suspected;
  std::string note;
  Location where;
  bool is_left_out = false;  ///< of every test, by what the examination showed
  bool operator==(const Passage& other) const;
};

/// What the examination showed, as an answer to one question of the catalogue.
struct Finding {
  std::string question;            ///< id
  std::string answer;              ///< one of the question's, or "not known"
  std::vector<std::string> where;  ///< names of passages, or places in words; may be empty
  std::string note;
  Location place;
  bool operator==(const Finding& other) const;
};

/// A bottle the studio owns.
struct ShelfBottle {
  std::string solvent;  ///< id, name, other name or CAS number
  std::string grade;    ///< e.g. "96 %", "absolute"; may be empty
  Location where;
  int at_most_percent = 100;  ///< largest share of a mixture, % by volume, 1 to 100
  Location grade_where = {};  ///< of the grade itself
  bool operator==(const ShelfBottle& other) const;
};

/// What the plan may use and how far it may go. Ranges and units of all: gentlest/job/limits.hpp.
struct Limits {
  int parts = 3;                  ///< largest number of liquids in one mixture
  int bottles = 3;                ///< largest number of bottles of the whole ladder, at least `parts`
  int step_percent = 5;           ///< grid of volume shares; divides 100
  int rungs = 7;                  ///< largest number of rungs
  int lines = 3;                  ///< at most so many lines of two bottles; 0: one walk over the whole frontier instead
  double risk_limit = 0.25;       ///< no rung may exceed this chance for any layer to keep; docs/science.md, "Defaults"
  double wanted_effect = 0.5;     ///< below this chance a mixture does not count as moving the layer
  int effect_grade = 2;           ///< grades up to this one count as "moved": 2 is "dissolves or nearly"
  std::optional<int> risk_grade;  ///< grades up to this one count as "affected"; nothing: risk_grade_of says which
  std::vector<std::string> avoid_families;
  std::vector<std::string> avoid_statements;  ///< GHS codes, e.g. H360
  std::vector<std::string> avoid_solvents;
  std::vector<std::string> exactly;  ///< solvents of the shelf to plan with: these and no others; empty: any
  std::vector<std::string>
      allow_acting;  ///< solvents to propose though seen to act on a layer to keep without a sphere
  std::optional<double> lowest_flash_point_C;  ///< no mixture whose estimated flash point lies below
  std::vector<std::string> avoid_label;        ///< GHS codes that the label of no mixture may carry
  bool allow_unknown_hazards = true;  ///< propose what hazards or flash point are not known of (marked as such)
  bool allow_splitting = false;       ///< propose mixtures that part into two liquids (marked as such)
  bool allow_drift = false;           ///< propose mixtures whose risk passes the limit while they dry (marked as such)
  bool prefer_healthier = false;      ///< of lines that give up much the same, the one healthier for the person
  int edge_tests = 8;                 ///< swabs that may be made where harm matters least; 0: no such place
  double vial_mL = 10;                ///< what one vial holds
  double measure_mL = 0.5;            ///< the smallest amount that is measured into it
  double room_C = 20;                 ///< for drift and the question of one liquid
  bool operator==(const Limits&) const = default;
};

/// A test series of the studio's own, to stand beside the ladder.
struct OwnSeries {
  std::string name;
  std::vector<std::string> mixtures;  ///< as typed, in the order in which they are tried; parse_mixture reads them
  Location where;
  std::vector<Location> mixtures_where = {};
  bool operator==(const OwnSeries& other) const;
};

struct PaintingObject {
  std::string title;
  std::string owner_number;
  std::optional<Centimetres> width, height;
  std::optional<double> paint_age_years;
  std::string note;
  bool operator==(const PaintingObject&) const = default;
};

/// What a person's own signs for grades stand for in tables that are taken in, e.g. "++" for "fully removed". The sign
/// in lower case, the word as a cell of a table may say it.
struct GradeSigns {
  std::map<std::string, std::string> removal;   ///< of the layer that was to go
  std::map<std::string, std::string> original;  ///< of the original
  bool operator==(const GradeSigns&) const = default;
};

/// Where the finished paintings of a studio let a material of the next one begin. No file of a job says so.
struct StudioStart {
  std::string material;    ///< id
  UncertainSphere sphere;  ///< in place of the stand-in's
  int paintings = 0;       ///< that it was learnt from
  double moved = 0;        ///< of the centre, Hansen distance from the stand-in's, MPa^0.5
  double between = 0;      ///< how far paintings lie from their mean, Hansen distance, MPa^0.5
  bool operator==(const StudioStart&) const = default;
};

struct Job {
  std::string file;  ///< where it was read from, for messages
  PaintingObject object;
  std::vector<Layer> layers;
  std::vector<Passage> passages;
  std::vector<ShelfBottle> shelf;
  std::vector<OwnSeries> series = {};
  std::vector<ProposedCoat> afterwards;  ///< from below up
  Limits limits;
  std::vector<Finding> examination;        ///< at most one a question; what is left out is not known
  std::vector<std::string> left_off = {};  ///< families of liquids, by the examination; "water": what holds any
  GradeSigns grades = {};
  std::vector<StudioStart> starts = {};  ///< one a material at most
  Places places;
  bool operator==(const Job&) const = default;
};

}  // namespace gentlest
