#include "report/worked/sum_words.hpp"

#include "report/form/format.hpp"

#include <fmt/format.h>

#include <array>
#include <utility>

namespace gentlest {

namespace {

// How tightly an operation binds, so that brackets stand where they are needed and nowhere else.
int strength(const Term& term) {
  switch (term.operation) {
    case Operation::add:
    case Operation::subtract:
      return 1;
    case Operation::multiply:
    case Operation::divide:
      return 2;
    case Operation::square:
      return 3;
    default:
      return 4;
  }
}

std::string bound(const Term& term, int least) {
  const std::string text = sum_text(term);
  const bool is_negative = term.operation == Operation::number && term.value < 0;
  return strength(term) < least || is_negative ? "(" + text + ")" : text;
}

std::string between(const std::vector<Term>& parts, const char* sign, int least) {
  std::string text;
  for (const Term& part : parts) text += (text.empty() ? "" : sign) + bound(part, least);
  return text;
}

std::string called(const char* name, const std::vector<Term>& parts) {
  return std::string(name) + "(" + between(parts, ", ", 0) + ")";
}

}  // namespace

std::string sum_text(const Term& sum) {
  switch (sum.operation) {
    case Operation::number:
      return fmt::format("{:.{}f}", sum.value, sum.places);
    case Operation::add:
      return between(sum.parts, " + ", 1);
    case Operation::subtract:
      return bound(sum.parts[0], 1) + " - " + bound(sum.parts[1], 2);
    case Operation::multiply:
      return between(sum.parts, " x ", 3);
    case Operation::divide:
      return bound(sum.parts[0], 2) + " / " + bound(sum.parts[1], 3);
    case Operation::square:
      return bound(sum.parts[0], 4) + "^2";
    case Operation::square_root:
      return called("sqrt", sum.parts);
    case Operation::exponential:
      return called("exp", sum.parts);
    case Operation::power_of_ten:
      return called("ten_to", sum.parts);
    case Operation::logarithm:
      return called("ln", sum.parts);
    case Operation::largest:
      return called("max", sum.parts);
  }
  return {};
}

std::string unit_text(SumUnit unit) {
  switch (unit) {
    case SumUnit::none:
      return "";
    case SumUnit::MPa05:
      return "MPa^0.5";
    case SumUnit::per_cent:
      return "%";
    case SumUnit::volume_percent:
      return "% by volume";
    case SumUnit::weight_percent:
      return "% by weight";
    case SumUnit::mL:
      return "mL";
    case SumUnit::C:
      return "C";
    case SumUnit::kPa:
      return "kPa";
    case SumUnit::cm3_per_mol:
      return "cm3/mol";
    case SumUnit::g_per_mol:
      return "g/mol";
    case SumUnit::grams:
      return "g per cm3";
  }
  return {};
}

std::string input_key(InputKind kind) {
  switch (kind) {
    case InputKind::share:
      return "share";
    case InputKind::dD:
      return "dD";
    case InputKind::dP:
      return "dP";
    case InputKind::dH:
      return "dH";
    case InputKind::centre_dD:
      return "centre_dD";
    case InputKind::centre_dP:
      return "centre_dP";
    case InputKind::centre_dH:
      return "centre_dH";
    case InputKind::radius:
      return "radius";
    case InputKind::sd_dD:
      return "sd_dD";
    case InputKind::sd_dP:
      return "sd_dP";
    case InputKind::sd_dH:
      return "sd_dH";
    case InputKind::sd_radius:
      return "sd_radius";
    case InputKind::reach_weight:
      return "reach_weight";
    case InputKind::reach_length:
      return "reach_length";
    case InputKind::intercept:
      return "intercept";
    case InputKind::slope:
      return "slope";
    case InputKind::grade_that_counts:
      return "grade_that_counts";
    case InputKind::table_weight:
      return "table_weight";
    case InputKind::RED_of_slice:
      return "RED_of_slice";
    case InputKind::vial:
      return "vial";
    case InputKind::measure:
      return "measure";
    case InputKind::steps_measured:
      return "steps_measured";
    case InputKind::molar_volume:
      return "molar_volume";
    case InputKind::molar_mass:
      return "molar_mass";
    case InputKind::mole_fraction:
      return "mole_fraction";
    case InputKind::antoine_A:
      return "antoine_A";
    case InputKind::antoine_B:
      return "antoine_B";
    case InputKind::antoine_C:
      return "antoine_C";
    case InputKind::activity:
      return "activity_coefficient";
    case InputKind::pressure:
      return "pressure";
    case InputKind::pressure_at_own_flash:
      return "pressure_at_own_flash";
    case InputKind::own_flash_point:
      return "own_flash_point";
    case InputKind::flash_temperature:
      return "flash_temperature_K";
  }
  return {};
}

namespace {

std::string title_without_name(const SumInput& input) {
  constexpr std::array<const char*, 3> axes = {"2 dD", "dP", "dH"};
  const int count = input.number_of;
  switch (input.kind) {
    case InputKind::share:
      return "share of the volume";
    case InputKind::dD:
    case InputKind::dP:
    case InputKind::dH:
    case InputKind::vial:
    case InputKind::measure:
      return input_key(input.kind);
    case InputKind::centre_dD:
      return "dD of the middle of the range";
    case InputKind::centre_dP:
      return "dP of the middle of the range";
    case InputKind::centre_dH:
      return "dH of the middle of the range";
    case InputKind::radius:
      return "R0, radius of the range";
    case InputKind::sd_dD:
      return "how well dD of the middle is known (standard deviation)";
    case InputKind::sd_dP:
      return "how well dP of the middle is known (standard deviation)";
    case InputKind::sd_dH:
      return "how well dH of the middle is known (standard deviation)";
    case InputKind::sd_radius:
      return "how well R0 is known (standard deviation)";
    case InputKind::reach_weight:
      return fmt::format("weight of place {} where observations bend the range", count);
    case InputKind::reach_length:
      return "distance over which such a place fades";
    case InputKind::intercept:
      return fmt::format("response curve, stage {}: a", count);
    case InputKind::slope:
      return fmt::format("response curve, stage {}: b", count);
    case InputKind::grade_that_counts:
      return "weakest grade that counts (1 dissolves, 6 nothing seen)";
    case InputKind::table_weight:
      return std::string("weight of a node of the table along ") + axes[static_cast<std::size_t>(count - 1)];
    case InputKind::RED_of_slice:
      return fmt::format("RED in the middle of slice {} of 9 equally likely ones", count);
    case InputKind::steps_measured:
      return "whole steps of the measure, largest remainders first";
    case InputKind::molar_volume:
      return "molar volume";
    case InputKind::molar_mass:
      return "molar mass";
    case InputKind::mole_fraction:
      return "share of the molecules";
    case InputKind::antoine_A:
      return "Antoine's A";
    case InputKind::antoine_B:
      return "Antoine's B";
    case InputKind::antoine_C:
      return "Antoine's C";
    case InputKind::activity:
      return "activity coefficient by groups (UNIFAC)";
    case InputKind::pressure:
      return "vapour pressure at the mixture's flash point";
    case InputKind::pressure_at_own_flash:
      return "vapour pressure at its own flash point";
    case InputKind::own_flash_point:
      return "flash point of its own";
    case InputKind::flash_temperature:
      return "temperature in kelvin at which the terms come to 1, found by halving";
  }
  return {};
}

std::string standing_text(const SumInput& input) {
  return input.standing ? ", " + std::string(to_word(*input.standing)) : std::string();
}

std::string with_name(std::string title, const std::string& name) {
  return name.empty() ? title : std::move(title) + ", " + name;
}

}  // namespace

std::string input_title(const SumInput& input) {
  return with_name(title_without_name(input), input.of);
}

std::string input_kind_title(const SumInput& input) {
  return title_without_name(input);
}

std::string from_key(InputFrom from) {
  switch (from) {
    case InputFrom::record:
      return "record";
    case InputFrom::material:
      return "material";
    case InputFrom::studio:
      return "studio";
    case InputFrom::job:
      return "job";
    case InputFrom::setting:
      return "setting";
    case InputFrom::program:
      return "program";
  }
  return {};
}

std::string input_from(const SumInput& input) {
  const std::string source = input.source.empty() ? std::string() : ", " + input.source;
  switch (input.from) {
    case InputFrom::record:
      return "catalogue" + source + standing_text(input);
    case InputFrom::material:
      return "range of the material" + source + standing_text(input);
    case InputFrom::studio:
      return "finished paintings of the studio";
    case InputFrom::job:
      return "the job" + source;
    case InputFrom::setting:
      return "fitted" + source + standing_text(input);
    case InputFrom::program:
      return "reckoned by the program, not to be redone by hand" + source;
  }
  return {};
}

std::string step_key(StepKind kind) {
  switch (kind) {
    case StepKind::dD:
      return "dD";
    case StepKind::dP:
      return "dP";
    case StepKind::dH:
      return "dH";
    case StepKind::fd:
      return "fd";
    case StepKind::fp:
      return "fp";
    case StepKind::fh:
      return "fh";
    case StepKind::Ra:
      return "Ra";
    case StepKind::reach_at:
      return "reach_at";
    case StepKind::reach:
      return "reach";
    case StepKind::RED:
      return "RED";
    case StepKind::stage:
      return "stage";
    case StepKind::chance_at_middle:
      return "chance_at_middle";
    case StepKind::slice:
      return "slice";
    case StepKind::slice_mean:
      return "slice_mean";
    case StepKind::table_row:
      return "table_row";
    case StepKind::table_plane:
      return "table_plane";
    case StepKind::chance:
      return "chance";
    case StepKind::effect:
      return "effect";
    case StepKind::risk:
      return "risk";
    case StepKind::volume:
      return "volume";
    case StepKind::shares_measured:
      return "share_measured";
    case StepKind::weight:
      return "weight";
    case StepKind::weight_percent:
      return "weight_percent";
    case StepKind::parts_together:
      return "parts_together";
    case StepKind::vapour_pressure:
      return "vapour_pressure";
    case StepKind::vapour_pressure_own_flash:
      return "vapour_pressure_at_own_flash";
    case StepKind::flash_term:
      return "flash_term";
    case StepKind::flash_sum:
      return "flash_sum";
    case StepKind::flash_point:
      return "flash_point";
  }
  return {};
}

std::string step_title(const SumStep& step) {
  const int count = step.number_of;
  switch (step.kind) {
    case StepKind::dD:
    case StepKind::dP:
    case StepKind::dH:
      return step_key(step.kind) + " of the mixture";
    case StepKind::fd:
    case StepKind::fp:
    case StepKind::fh:
      return step_key(step.kind) + " in the triangle";
    case StepKind::Ra:
      return with_name("Ra", step.of);
    case StepKind::reach_at:
      return with_name(fmt::format("what place {} adds to the reach", count), step.of);
    case StepKind::reach:
      return with_name("the radius acts longer by", step.of);
    case StepKind::RED:
      return with_name("RED", step.of);
    case StepKind::stage:
      return with_name(fmt::format("chance to stop at grade {} when it comes so far", count), step.of);
    case StepKind::chance_at_middle:
      return with_name("chance if the range were known exactly", step.of);
    case StepKind::slice:
      return with_name(fmt::format("chance in slice {} of 9", count), step.of);
    case StepKind::slice_mean:
      return with_name("mean of the 9 slices, a check by hand", step.of);
    case StepKind::table_row:
      return with_name(fmt::format("table of the averaged chance, row {} of 16", count), step.of);
    case StepKind::table_plane:
      return with_name(fmt::format("rows together, plane {} of 4", count), step.of);
    case StepKind::chance:
      return with_name("chance by the table", step.of);
    case StepKind::effect:
      return "EFFECT, chance that the layer to remove is moved";
    case StepKind::risk:
      return with_name("RISK, largest chance over the layers to keep", step.of);
    case StepKind::volume:
      return with_name("to measure", step.of);
    case StepKind::shares_measured:
      return with_name("share as measured", step.of);
    case StepKind::weight:
      return with_name("weight", step.of);
    case StepKind::weight_percent:
      return with_name("share by weight", step.of);
    case StepKind::parts_together:
      return with_name("parts that carry it", step.of);
    case StepKind::vapour_pressure:
      return with_name("its vapour pressure at the flash point of the mixture", step.of);
    case StepKind::vapour_pressure_own_flash:
      return with_name("its vapour pressure at the flash point of its own", step.of);
    case StepKind::flash_term:
      return with_name("share of the way to a flame", step.of);
    case StepKind::flash_sum:
      return "all shares together, 1 at the flash point";
    case StepKind::flash_point:
      return "FLASH POINT";
  }
  return {};
}

std::string printed_text(const SumStep& step) {
  switch (step.printed_as) {
    case PrintedAs::nowhere:
      return "";
    case PrintedAs::no_decimals:
      return fixed(step.printed, 0);
    case PrintedAs::one_decimal:
      return fixed(step.printed, 1);
    case PrintedAs::two_decimals:
      return fixed(step.printed, 2);
    case PrintedAs::chance:
      return per_cent(step.printed);
    case PrintedAs::plain:
      return as_recorded(step.printed);
  }
  return {};
}

namespace {

// The numbers of a table or of many places are left to the whole answer.
std::string short_sum(const SumStep& step) {
  constexpr std::size_t most = 6;
  if (step.kind == StepKind::chance) return "(see --full)";
  const std::vector<Term>& inner = step.sum.parts;
  const bool is_long = step.kind == StepKind::reach && inner.front().parts.size() > most;
  return is_long ? fmt::format("exp({} numbers in --full)", inner.front().parts.size()) : sum_text(step.sum);
}

}  // namespace

std::string step_line(const SumStep& step, bool in_short) {
  const std::string unit = unit_text(step.unit);
  const std::string printed = printed_text(step);
  std::string line = fmt::format("{}: {} = {}{}{}", step_title(step), in_short ? short_sum(step) : sum_text(step.sum),
                                 sum_text(step.result), unit.empty() ? "" : " ", unit);
  if (step.limit) line += fmt::format("; the limit is {} %", as_recorded(*step.limit));
  return printed.empty() ? line : line + ", printed as " + printed;
}

}  // namespace gentlest
