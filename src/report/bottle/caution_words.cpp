#include "report/bottle/caution_words.hpp"

#include "report/form/format.hpp"

#include <fmt/format.h>

namespace gentlest {

namespace {

std::string origin_words(const Caution& caution) {
  switch (caution.origin) {
    case CautionOrigin::common_practice:
      return common_practice;
    case CautionOrigin::statements:
      return "GHS statements of the mixture or of a bottle";
    case CautionOrigin::skin_records:
      return "skin notation or statement in the catalogue";
    case CautionOrigin::incompatible_pairs:
      return "incompatible pairs of the catalogue";
    case CautionOrigin::published:
      return caution.source;
  }
  return {};
}

std::string clash_words(const Caution& caution) {
  return fmt::format("{}: {}{}.", joined(caution.liquids, " with "), caution.pair->forbidden ? "do not mix: " : "",
                     caution.pair->why);
}

std::string glove_words(const Caution& caution) {
  return fmt::format("Gloves, {}: {}{}.", joined(caution.liquids), caution.gloves->words,
                     caution.gloves->standing == Standing::memory ? " (from memory)" : "");
}

// What is said of certain liquids, behind their names.
const char* words_for_liquids(CautionKind kind) {
  switch (kind) {
    case CautionKind::hides_flash_point:
      return "may hide a flash point without taking the fire away; waste apart from other liquids.";
    case CautionKind::through_skin:
      return "taken up through the skin as well as by breath.";
    case CautionKind::last_resort:
      return "no reason for a conservator to use it.";
    case CautionKind::denatured:
      return "denatured: its denaturant (often methanol) is not in the label; see the bottle's data sheet.";
    case CautionKind::peroxides:
      return "forms explosive peroxides in air and light. Write the day of opening on the bottle, keep it dark, "
             "test at the latest after 6 months, never dry a bottle out, never open a crusted cap (published limits "
             "range from "
             "3 to 12 months).";
    default:
      return "";
  }
}

std::string text_of(const Caution& caution) {
  switch (caution.kind) {
    case CautionKind::not_a_permission:
      return "This is a plan for tests, not a permission: the licensed conservator decides.";
    case CautionKind::data_sheets_first:
      return "The safety data sheets of the bottles and local rules come before anything printed here; a missing "
             "record is not a record of harmlessness.";
    case CautionKind::no_clash_known:
      return "No two of these liquids are recorded as not to meet, which is no proof that they may.";
    case CautionKind::clash:
      return clash_words(caution);
    case CautionKind::vapour_catches_fire:
      return "Vapour catches fire at room temperature: no flame, hot air, hot spatula or sparking switch near.";
    case CautionKind::catches_fire_warm:
      return "Catches fire when warmed, and from a soaked swab: no flame or hot tool near.";
    case CautionKind::hides_flash_point:
    case CautionKind::through_skin:
    case CautionKind::last_resort:
    case CautionKind::peroxides:
    case CautionKind::denatured:
      return joined(caution.liquids) + ": " + words_for_liquids(caution.kind);
    case CautionKind::never_by_mouth:
      return "Never pipette by mouth; when swallowed do not make the person vomit: a little in the lungs can kill.";
    case CautionKind::unborn_child:
      return "Is or may be harmful to genes, fertility or the unborn child, or may cause cancer: not for pregnant or "
             "breast-feeding people without an assessment; look for another liquid first.";
    case CautionKind::hormones:
      return "Disturbs the hormones, or is suspected to: as careful as with what harms the unborn child; look for "
             "another liquid first.";
    case CautionKind::eyes:
      return "Damages the eyes: goggles, and an eye wash within reach.";
    case CautionKind::extraction:
      return "Extraction at the work, small volumes, vials open only to wet the swab, nobody else downwind. At "
             "the face the level is higher than the mean of the room.";
    case CautionKind::gloves:
      return glove_words(caution);
    case CautionKind::gloves_differ:
      return "Gloves of one name differ tenfold: look up the maker's figure for the very glove and liquid. In "
             "a mixture the fastest part decides. Change at the first splash.";
    case CautionKind::swabs_as_waste:
      return "Used swabs into a closed metal container under extraction, emptied daily; nothing into the drain.";
    case CautionKind::label_every_vial:
      return "Label every vial: what, how much, the day, by whom, pictograms and signal word.";
  }
  return {};
}

}  // namespace

std::vector<Remark> caution_words(const std::vector<Caution>& cautions) {
  std::vector<Remark> remarks;
  for (const Caution& caution : cautions) remarks.push_back({text_of(caution), origin_words(caution)});
  return remarks;
}

}  // namespace gentlest
