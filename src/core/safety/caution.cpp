#include "gentlest/safety/caution.hpp"

#include "gentlest/catalogue/statements.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>

namespace gentlest {

namespace {

constexpr const char* from_label = "GHS statements of the mixture or of a bottle";

bool names(const std::string& side, const Solvent& solvent) {
  return side == solvent.id || side == solvent.family;
}

using Mixtures = std::vector<LabelledMixture>;

// Every liquid of the mixtures once, in the order in which they come.
std::vector<Liquid> liquids_in(const Mixtures& mixtures) {
  std::vector<Liquid> liquids;
  for (const LabelledMixture& one : mixtures) add_liquids(liquids, one.mixture);
  return liquids;
}

std::string labels_where(const Mixtures& mixtures, const std::function<bool(const Solvent&)>& fits) {
  std::string labels;
  for (const Liquid& liquid : liquids_in(mixtures))
    if (fits(*liquid.solvent)) labels += (labels.empty() ? "" : ", ") + liquid.label;
  return labels;
}

// On the label of a mixture or of one of its bottles: who measures handles the bottle, and where the mixture's label
// cannot be decided the bottles' records still can warn.
bool on_label(const Mixtures& mixtures, std::initializer_list<const char*> starts) {
  const auto is_meant = [&](const std::string& code) {
    return std::any_of(starts.begin(), starts.end(), [&](const char* start) { return code.rfind(start, 0) == 0; });
  };
  const bool on_mixture = std::any_of(mixtures.begin(), mixtures.end(), [&](const LabelledMixture& one) {
    return std::any_of(one.label.statements.begin(), one.label.statements.end(),
                       [&](const LabelStatement& statement) { return is_meant(statement.code); });
  });
  return on_mixture || !labels_where(mixtures, [&](const Solvent& solvent) {
                          const std::vector<std::string> known = known_statements(solvent);
                          return std::any_of(known.begin(), known.end(), is_meant);
                        }).empty();
}

bool warns_of_skin(const Solvent& solvent) {
  const auto& limits = solvent.exposure_limits;
  if (std::any_of(limits.begin(), limits.end(), [](const ExposureLimit& limit) { return limit.skin; })) return true;
  if (!solvent.hazards) return false;
  const auto& codes = solvent.hazards->statements;
  return std::any_of(codes.begin(), codes.end(),
                     [](const std::string& code) { return code == "H310" || code == "H311" || code == "H312"; });
}

void add_fire(std::vector<Caution>& list, const Mixtures& mixtures) {
  if (on_label(mixtures, {"H224", "H225"}))
    list.push_back({"Vapour catches fire at room temperature: no flame, hot air, hot spatula or sparking switch near.",
                    from_label});
  else if (on_label(mixtures, {"H226"}))
    list.push_back({"Catches fire when warmed, and from a soaked swab: no flame or hot tool near.", from_label});
  const std::string halogenated =
      labels_where(mixtures, [](const Solvent& solvent) { return solvent.family == "chlorinated"; });
  if (!halogenated.empty())
    list.push_back({fmt::format("{}: may hide a flash point without taking the fire away; waste apart from other "
                                "liquids.",
                                halogenated),
                    common_practice});
}

void add_body(std::vector<Caution>& list, const Mixtures& mixtures) {
  if (on_label(mixtures, {"H304"}))
    list.push_back(
        {"Never pipette by mouth; when swallowed do not make the person vomit: a little in the lungs can "
         "kill.",
         from_label});
  const std::string skin = labels_where(mixtures, warns_of_skin);
  if (!skin.empty())
    list.push_back({fmt::format("{}: taken up through the skin as well as by breath.", skin),
                    "skin notation or statement in the catalogue"});
  if (on_label(mixtures, {"H340", "H341", "H350", "H351", "H360", "H361", "H362"}))
    list.push_back(
        {"Is or may be harmful to genes, fertility or the unborn child, or may cause cancer: not for "
         "pregnant or breast-feeding people without an assessment; look for another liquid first.",
         from_label});
  if (on_label(mixtures, {"EUH380", "EUH381"}))
    list.push_back(
        {"Disturbs the hormones, or is suspected to: as careful as with what harms the unborn child; look for "
         "another liquid first.",
         from_label});
  if (on_label(mixtures, {"H314", "H318"}))
    list.push_back({"Damages the eyes: goggles, and an eye wash within reach.", from_label});
  const std::string last_resort = labels_where(mixtures, [](const Solvent& solvent) {
    return solvent.id == "benzene" || solvent.id == "carbon_tetrachloride" || solvent.id == "carbon_disulfide" ||
           solvent.id == "chloroform";
  });
  if (!last_resort.empty())
    list.push_back({fmt::format("{}: no reason for a conservator to use it.", last_resort), "waac_health_1999"});
}

void add_peroxides(std::vector<Caution>& list, const Mixtures& mixtures) {
  const std::string formers = labels_where(
      mixtures, [](const Solvent& solvent) { return solvent.peroxide_former && solvent.peroxide_former->value; });
  if (formers.empty()) return;
  list.push_back({fmt::format("{}: forms explosive peroxides in air and light. Write the day of opening on the bottle, "
                              "keep it dark, test at the latest after 6 months, never dry a bottle out, never open a "
                              "crusted cap (published limits range from 3 to 12 months).",
                              formers),
                  "peroxide_lists"});
}

void add_gloves(std::vector<Caution>& list, const Mixtures& mixtures, const Catalogue& catalogue) {
  std::vector<const GloveNote*> told;
  for (const GloveNote& note : catalogue.chemistry().glove_notes) {
    const auto says_the_same = [&](const GloveNote& other) {
      return other.words == note.words && other.source == note.source && other.standing == note.standing;
    };
    if (std::any_of(told.begin(), told.end(), [&](const GloveNote* other) { return says_the_same(*other); })) continue;
    told.push_back(&note);
    // Families of which the same is said share one sentence.
    const std::string labels = labels_where(mixtures, [&](const Solvent& solvent) {
      return std::any_of(
          catalogue.chemistry().glove_notes.begin(), catalogue.chemistry().glove_notes.end(),
          [&](const GloveNote& other) { return says_the_same(other) && other.family == solvent.family; });
    });
    if (labels.empty()) continue;
    const char* doubt = note.standing == Standing::memory ? " (from memory)" : "";
    list.push_back({fmt::format("Gloves, {}: {}{}.", labels, note.words, doubt), note.source});
  }
  list.push_back(
      {"Gloves of one name differ tenfold: look up the maker's figure for the very glove and liquid. In a "
       "mixture the fastest part decides. Change at the first splash.",
       "mickelsen_hall_1987"});
}

}  // namespace

std::vector<Clash> clashes_among(const std::vector<Liquid>& liquids, const Catalogue& catalogue) {
  std::vector<Clash> clashes;
  for (std::size_t i = 0; i < liquids.size(); ++i)
    for (std::size_t k = i + 1; k < liquids.size(); ++k)
      for (const IncompatiblePair& pair : catalogue.chemistry().incompatible_pairs) {
        const Solvent& a = *liquids[i].solvent;
        const Solvent& b = *liquids[k].solvent;
        if ((names(pair.a, a) && names(pair.b, b)) || (names(pair.a, b) && names(pair.b, a)))
          clashes.push_back({liquids[i].label, liquids[k].label, pair.forbidden, pair.why, pair.source});
      }
  std::stable_sort(clashes.begin(), clashes.end(),
                   [](const Clash& a, const Clash& b) { return a.forbidden && !b.forbidden; });
  return clashes;
}

std::vector<Caution> cautions_for(const std::vector<LabelledMixture>& mixtures, const Catalogue& catalogue) {
  std::vector<Caution> list = {
      {"The safety data sheets of the bottles and local rules come before anything printed "
       "here; a missing record is not a record of harmlessness.",
       common_practice}};
  const std::vector<Clash> clashes = clashes_among(liquids_in(mixtures), catalogue);
  if (clashes.empty() && liquids_in(mixtures).size() > 1)
    list.push_back({"No two of these liquids are recorded as not to meet, which is no proof that they may.",
                    "incompatible pairs of the catalogue"});
  for (const Clash& clash : clashes)
    list.push_back(
        {fmt::format("{} with {}: {}{}.", clash.a, clash.b, clash.forbidden ? "do not mix: " : "", clash.why),
         clash.source});
  add_fire(list, mixtures);
  add_body(list, mixtures);
  add_peroxides(list, mixtures);
  list.push_back(
      {"Extraction at the work, small volumes, vials open only to wet the swab, nobody else downwind. At the face the "
       "level is higher than the mean of the room.",
       common_practice});
  add_gloves(list, mixtures, catalogue);
  list.push_back({"Used swabs into a closed metal container under extraction, emptied daily; nothing into the drain.",
                  common_practice});
  list.push_back({"Label every vial: what, how much, the day, by whom, pictograms and signal word.", common_practice});
  return list;
}

std::vector<Caution> cautions_for(const Mixture& mixture, const MixtureLabel& label, const Catalogue& catalogue) {
  return cautions_for({{mixture, label}}, catalogue);
}

}  // namespace gentlest
