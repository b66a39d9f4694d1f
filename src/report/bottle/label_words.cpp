#include "report/bottle/label_words.hpp"

#include "report/form/format.hpp"

#include <fmt/format.h>

namespace gentlest {

namespace {

constexpr const char* as_recorded_words = "as recorded for the pure liquid";

// "acetone 25 % + isooctane 75 %"
std::string parts_words(const LabelReason& reason) {
  std::vector<std::string> parts;
  for (const LabelReason::Share& part : reason.parts)
    parts.push_back(fmt::format("{} {:.3g} %", part.name, part.weight_percent));
  return joined(parts, " + ");
}

std::string name_of_part(const LabelReason& reason) {
  return reason.parts.empty() ? std::string() : reason.parts.front().name;
}

// The figure at this place, as the sentences print it.
std::string figure(const LabelReason& reason, std::size_t place = 0) {
  return fmt::format("{:.3g}", reason.figures.at(place));
}

std::string flash_figure(const std::optional<Celsius>& flash_point) {
  return flash_point ? fmt::format("{:.3g} C", flash_point->value) : std::string(not_known);
}

std::string own_flash_words(const LabelReason& reason) {
  std::optional<Celsius> flash;
  if (!reason.figures.empty()) flash = Celsius{reason.figures.front()};
  return fmt::format("flash point {} of {}", flash_figure(flash), name_of_part(reason));
}

std::string gap_words(const LabelGap& gap) {
  switch (gap.what) {
    case LabelGap::What::record:
      return fmt::format("{} ({:.3g} %) has no hazard record: what it adds to the label is not known", joined(gap.of),
                         gap.weight_percent);
    case LabelGap::What::flame:
      return "how easily it catches fire: " + (gap.flash ? flash_because(*gap.flash) : std::string(not_known));
    case LabelGap::What::denaturant:
      return joined(gap.of) + ": what its denaturant adds to the label is not known";
    case LabelGap::What::shares:
      return fmt::format(
          "shares by weight, because molar mass or volume of {} is not known: no rule of the label can be decided",
          joined(gap.of));
  }
  return {};
}

std::string words_of(const LabelRemark& remark) {
  switch (remark.what) {
    case LabelRemark::What::minimum_only:
      return remark.of + ": the record is a minimum, suppliers may classify further";
    case LabelRemark::What::of_record:
      return remark.of + ": " + remark.words;
    case LabelRemark::What::severer_flame:
      return fmt::format("{}: its record says {}, its flash point of {} asks for {}; the more severe counts", remark.of,
                         remark.recorded, flash_figure(remark.flash_point), remark.due);
  }
  return {};
}

}  // namespace

std::string because_words(const LabelReason& reason) {
  switch (reason.rule) {
    case LabelRule::parts_reach:
      return fmt::format("{} reach{} the limit ({} % unless a record sets its own)", parts_words(reason),
                         reason.parts.size() == 1 ? "es" : "", figure(reason));
    case LabelRule::part_reaches:
      return fmt::format("{} reaches {} %", parts_words(reason), figure(reason));
    case LabelRule::allergy:
      return parts_words(reason);
    case LabelRule::ozone:
      return name_of_part(reason);
    case LabelRule::carried:
      return "carried by " + name_of_part(reason);
    case LabelRule::acute_water_life:
      return fmt::format("{} % reach 25 %", figure(reason));
    case LabelRule::water_life_1:
      return fmt::format("{} % very poisonous to water life", figure(reason));
    case LabelRule::water_life_2:
      return fmt::format("10 x {} % + {} % reach 25 %", figure(reason), figure(reason, 1));
    case LabelRule::water_life_3:
      return fmt::format("100 x {} % + 10 x {} % + {} % reach 25 %", figure(reason), figure(reason, 1),
                         figure(reason, 2));
    case LabelRule::water_life_4:
      return "parts that harm water life for long reach 25 %";
    case LabelRule::acute_toxicity:
      return fmt::format("acute toxicity estimate {:.4g}", reason.figures.at(0));
    case LabelRule::recorded:
      return as_recorded_words;
    case LabelRule::own_flash_point:
      return own_flash_words(reason);
    case LabelRule::flame_of_part:
      return fmt::format("carried by {}; the mixture's own flash point is not known", name_of_part(reason));
    case LabelRule::flash_point:
      return reason.flash && reason.flash->estimate
                 ? fmt::format("flash point {:.0f} C, {}", reason.flash->estimate->value, flash_because(*reason.flash))
                 : std::string();
  }
  return {};
}

std::vector<std::string> not_known_words(const MixtureLabel& label) {
  std::vector<std::string> words;
  for (const LabelGap& gap : label.not_known) words.push_back(gap_words(gap));
  return words;
}

std::vector<std::string> remark_words(const MixtureLabel& label) {
  std::vector<std::string> words;
  for (const LabelRemark& remark : label.remarks) words.push_back(words_of(remark));
  return words;
}

std::string flash_because(const FlashPoint& flash) {
  switch (flash.basis) {
    case FlashBasis::recorded:
      return as_recorded_words;
    case FlashBasis::activity:
      return "by the rule of Liaw with activity coefficients";
    case FlashBasis::ideal:
      return "activity coefficients are not known: the lower of the ideal estimate and the lowest part; it may lie "
             "several degrees lower";
    case FlashBasis::nothing_burns:
      return "no part is flammable by its record";
    case FlashBasis::no_amount:
      return fmt::format("molar volume or molar mass of {} is not known", joined(flash.missing));
    case FlashBasis::no_flash_point:
      return fmt::format("the flash point of {} is not known", joined(flash.missing));
    case FlashBasis::no_pressure_at_flash:
      return fmt::format("the vapour pressure of {} at its flash point is not known", joined(flash.missing));
    case FlashBasis::no_solution:
      return "vapour pressures are missing, or the mixture hardly burns";
  }
  return {};
}

std::string lowest_limit_words(const HazardSummary& hazards) {
  return hazards.lowest_limit_ppm ? hazards.lowest_limit_of + ", " + hazards.lowest_limit_by : std::string();
}

}  // namespace gentlest
