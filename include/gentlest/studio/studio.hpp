// What a studio's finished paintings teach: where each material of the next painting begins.
#pragma once

#include "gentlest/answers/progress.hpp"
#include "gentlest/job/job.hpp"
#include "gentlest/studio/pooling.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// One finished painting: its job, sound by check_job, and every line of its log.
struct StudioPainting {
  std::string name;    ///< for lists, e.g. the name of its file
  std::string source;  ///< of a shared table: where it came from; empty of the studio's own
  Job job;
  std::vector<Reading> readings;
};

/// What the tests of one painting taught of one material on it.
struct PaintingTaught {
  std::size_t painting = 0;  ///< index into the paintings
  int tests = 0;             ///< readings that spoke of the material
  PaintingSays says;
  double weight = 1;  ///< how far it counts among the others (Pool::weights)
  double off = 0;     ///< its own centre's Hansen distance from the middle of all, as far as is known, MPa^0.5
  std::vector<std::vector<Evidence>> evidence;  ///< of each layer of the material, for the check
};

/// One material that some painting taught.
struct StudioMaterial {
  std::string material;  ///< id
  std::string name;
  PlannedLayer layer;        ///< as a plan sees it without the studio; its role is that on the first painting
  UncertainSphere stand_in;  ///< without the studio
  StudioStart start;
  Pool pool;
  std::vector<PaintingTaught> paintings;
};

struct Studio {
  std::vector<StudioMaterial> materials;  ///< by id
  std::vector<int> tests;                 ///< of each painting: readings that taught something
};

/// Spheres that nobody published (of own tests, of layers whose material nobody knows) are left out. Pure; takes some
/// hundredths of a second a painting.
Studio learn_from_paintings(const std::vector<StudioPainting>& paintings, const Catalogue& catalogue);

/// Where a plan's materials begin.
std::vector<StudioStart> starts_of(const Studio& studio);

/// How likely the readings of one painting were beforehand, each with those before it known: the geometric mean a
/// reading, 0..1. With what the other paintings teach, and without.
struct LeftOutPainting {
  std::string material;      ///< id
  std::size_t painting = 0;  ///< index into the paintings
  int readings = 0;
  double with_studio = 0;
  double without = 0;
  double start_off = 0;     ///< Hansen distance of its own centre from where the others let it begin, MPa^0.5
  double stand_in_off = 0;  ///< and from the stand-in's
};

/// Each painting judged by the others, for every material that two paintings or more taught.
std::vector<LeftOutPainting> leave_one_out(const Studio& studio);

}  // namespace gentlest
