#include "gentlest/safety/caution.hpp"

#include "core/safety/label_codes.hpp"

#include "gentlest/catalogue/statements.hpp"
#include "gentlest/safety/person.hpp"

#include <algorithm>
#include <functional>
#include <utility>

namespace gentlest {

namespace {

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

std::vector<std::string> labels_where(const Mixtures& mixtures, const std::function<bool(const Solvent&)>& fits) {
  std::vector<std::string> labels;
  for (const Liquid& liquid : liquids_in(mixtures))
    if (fits(*liquid.solvent)) labels.push_back(liquid.label);
  return labels;
}

// On the label of a mixture or of one of its bottles: who measures handles the bottle, and where the mixture's label
// cannot be decided the bottles' records still can warn.
bool on_label(const Mixtures& mixtures, std::initializer_list<const char*> starts) {
  const bool on_mixture = std::any_of(mixtures.begin(), mixtures.end(),
                                      [&](const LabelledMixture& one) { return any_is(codes_of(one.label), starts); });
  return on_mixture || !labels_where(mixtures, [&](const Solvent& solvent) {
                          return any_is(known_statements(solvent), starts);
                        }).empty();
}

void add(std::vector<Caution>& list, CautionKind kind, CautionOrigin origin, std::string source = {},
         std::vector<std::string> liquids = {}) {
  list.push_back({kind, origin, std::move(source), std::move(liquids)});
}

void add_for(std::vector<Caution>& list, std::vector<std::string> liquids, CautionKind kind, CautionOrigin origin,
             std::string source = {}) {
  if (!liquids.empty()) add(list, kind, origin, std::move(source), std::move(liquids));
}

void add_fire(std::vector<Caution>& list, const Mixtures& mixtures) {
  if (on_label(mixtures, {"H224", "H225"}))
    add(list, CautionKind::vapour_catches_fire, CautionOrigin::statements);
  else if (on_label(mixtures, {"H226"}))
    add(list, CautionKind::catches_fire_warm, CautionOrigin::statements);
  add_for(list, labels_where(mixtures, [](const Solvent& solvent) { return solvent.family == "chlorinated"; }),
          CautionKind::hides_flash_point, CautionOrigin::common_practice);
}

bool is_last_resort(const Solvent& solvent) {
  return solvent.id == "benzene" || solvent.id == "carbon_tetrachloride" || solvent.id == "carbon_disulfide" ||
         solvent.id == "chloroform";
}

void add_body(std::vector<Caution>& list, const Mixtures& mixtures) {
  if (on_label(mixtures, {"H304"})) add(list, CautionKind::never_by_mouth, CautionOrigin::statements);
  add_for(list, labels_where(mixtures, warns_of_skin), CautionKind::through_skin, CautionOrigin::skin_records);
  if (on_label(mixtures, {"H340", "H341", "H350", "H351", "H360", "H361", "H362"}))
    add(list, CautionKind::unborn_child, CautionOrigin::statements);
  if (on_label(mixtures, {"EUH380", "EUH381"})) add(list, CautionKind::hormones, CautionOrigin::statements);
  if (on_label(mixtures, {"H314", "H318"})) add(list, CautionKind::eyes, CautionOrigin::statements);
  add_for(list, labels_where(mixtures, is_last_resort), CautionKind::last_resort, CautionOrigin::published,
          "waac_health_1999");
}

void add_peroxides(std::vector<Caution>& list, const Mixtures& mixtures) {
  const auto forms_them = [](const Solvent& solvent) {
    return solvent.peroxide_former && solvent.peroxide_former->value;
  };
  add_for(list, labels_where(mixtures, forms_them), CautionKind::peroxides, CautionOrigin::published, "peroxide_lists");
}

void add_denatured(std::vector<Caution>& list, const Mixtures& mixtures) {
  std::vector<std::string> labels;
  for (const Liquid& liquid : liquids_in(mixtures))
    if (liquid.denatured) labels.push_back(liquid.label);
  add_for(list, std::move(labels), CautionKind::denatured, CautionOrigin::common_practice);
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
    std::vector<std::string> labels = labels_where(mixtures, [&](const Solvent& solvent) {
      return std::any_of(
          catalogue.chemistry().glove_notes.begin(), catalogue.chemistry().glove_notes.end(),
          [&](const GloveNote& other) { return says_the_same(other) && other.family == solvent.family; });
    });
    if (labels.empty()) continue;
    list.push_back({CautionKind::gloves, CautionOrigin::published, note.source, std::move(labels), &note});
  }
  add(list, CautionKind::gloves_differ, CautionOrigin::published, "mickelsen_hall_1987");
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
          clashes.push_back({liquids[i].label, liquids[k].label, &pair});
      }
  std::stable_sort(clashes.begin(), clashes.end(),
                   [](const Clash& a, const Clash& b) { return a.pair->forbidden && !b.pair->forbidden; });
  return clashes;
}

std::vector<Caution> cautions_for(const std::vector<LabelledMixture>& mixtures, const Catalogue& catalogue) {
  std::vector<Caution> list;
  add(list, CautionKind::data_sheets_first, CautionOrigin::common_practice);
  const std::vector<Clash> clashes = clashes_among(liquids_in(mixtures), catalogue);
  if (clashes.empty() && liquids_in(mixtures).size() > 1)
    add(list, CautionKind::no_clash_known, CautionOrigin::incompatible_pairs);
  for (const Clash& clash : clashes)
    list.push_back(
        {CautionKind::clash, CautionOrigin::published, clash.pair->source, {clash.a, clash.b}, nullptr, clash.pair});
  add_fire(list, mixtures);
  add_body(list, mixtures);
  add_peroxides(list, mixtures);
  add_denatured(list, mixtures);
  add(list, CautionKind::extraction, CautionOrigin::common_practice);
  add_gloves(list, mixtures, catalogue);
  add(list, CautionKind::swabs_as_waste, CautionOrigin::common_practice);
  add(list, CautionKind::label_every_vial, CautionOrigin::common_practice);
  return list;
}

std::vector<Caution> cautions_for(const Mixture& mixture, const MixtureLabel& label, const Catalogue& catalogue) {
  return cautions_for({{mixture, label}}, catalogue);
}

}  // namespace gentlest
