// Plain words of the reports for what the records hold as codes.
#pragma once

#include "gentlest/answers/bench.hpp"
#include "gentlest/catalogue/catalogue.hpp"
#include "gentlest/job/job.hpp"
#include "gentlest/liquids/mixture.hpp"
#include "gentlest/plan/plan.hpp"

#include <string>

namespace gentlest {

/// How far a sphere can be trusted, e.g. "stand-in: no sphere of this very material is published".
std::string grade_in_words(SphereGrade grade);

/// How far the layer's range is known: by its grade, or by whose tests where they are the user's own.
std::string range_in_words(const PlannedLayer& layer);

/// "5 finished paintings".
std::string finished_paintings(const StudioStart& start);

/// Why the layer's sphere was taken and how far it can be trusted: "found; published, and ...". Of the user's own tests
/// nothing is published, so only their source is told.
std::string sphere_in_words(const PlannedLayer& layer);

/// Why the layer's sphere was taken: "found", "recorded, not examined", "own tests", "passage of oil paint".
std::string basis_words(const PlannedLayer& layer);

/// Name of the layer's material, or "own tests" where they speak of none by name.
std::string material_in_words(const PlannedLayer& layer);
std::string material_in_words(const std::string& material_name);

/// Behind "the response curve": nothing where it is borrowed for all layers with a sphere, else " of varnish and
/// glaze", for which it is. Precondition: it is for one of them.
std::string of_borrowed_curve(const std::vector<PlannedLayer>& layers);

/// "remove" or "keep".
std::string role_word(Role role);

/// For people: "resinous, sensitive to water"; empty when there are none.
std::string flags_text(const std::vector<Flag>& flags);

/// "Law on hazards as seen until 2026-10-07: ... Older: ...", or that nobody wrote the day down.
std::string law_words(const Law& law);

/// " [from memory]" and the like behind a figure; empty for a measured one.
std::string standing_mark(Standing standing);

/// "50 ppm (192 mg/m3) long term, 100 ppm short term, skin" of one authority.
std::string limit_text(const ExposureLimit& limit);

/// "Danger; flash point 4 C (toluene); no record: ..." of the parts of a mixture.
std::string hazard_line(const Mixture& mixture);

/// "ethanol 96 % in isooctane: two liquids from 5 to 30 parts in 100 (...); ethanol 98 % stays one liquid there".
std::string parting_words(const PartingPair& pair, bool kept_out);

/// "62 x 48 cm, paint about 150 years old"; empty when nothing is known.
std::string object_facts(const PaintingObject& object);

/// The title, "Untitled painting" where there is none.
std::string title_of(const PaintingObject& object);

}  // namespace gentlest
