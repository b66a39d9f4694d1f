#include "report/bottle/person_words.hpp"

#include "report/bottle/statement_words.hpp"
#include "report/form/format.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdint>

namespace gentlest {

namespace {

std::string gravest_sentence(const Bench& bench) {
  if (!bench.gravest.empty())
    return fmt::format(
        "May cause cancer or harm genes, fertility or the unborn (H340, H350, H360): {}. Look for another "
        "bottle first.",
        joined(bench.gravest));
  if (bench.without_record.empty()) return "None of the bottles used carries H340, H350 or H360.";
  return fmt::format("No bottle used with a record carries H340, H350 or H360; of {} there is no record.",
                     joined(bench.without_record));
}

// The strictest of the lists that can be reckoned; where none can, that.
std::string session_sentence(const Bench& bench) {
  const SessionExposure* strictest = nullptr;
  for (const SessionExposure& one : bench.session)
    if (one.index && (!strictest || *one.index > *strictest->index)) strictest = &one;
  const Room room;
  const std::string air =
      fmt::format("One vial of each, all dried away in a room of {} m3 with {} changes of air an hour",
                  as_recorded(room.volume_m3), as_recorded(room.air_changes_per_hour));
  if (strictest)
    return fmt::format("{}: {} of what is allowed as a mean over {} hours ({}); at the face it is more.", air,
                       per_cent(*strictest->index), as_recorded(room.hours), strictest->authority);
  if (bench.session.empty()) return {};
  return fmt::format("{}: how much of what is allowed is not known, since {} has no limit.", air,
                     joined(bench.session.front().without));
}

}  // namespace

std::string worst_words(const PersonHazard& hazard) {
  const std::string words = hazard.worst.empty() ? "no statement for the person" : statement_words(hazard.worst);
  return hazard.is_complete ? words : words + ", perhaps more: a record is missing";
}

std::string skin_words(const PersonHazard& hazard) {
  switch (hazard.skin) {
    case SkinHarm::burns:
      return "burns the skin";
    case SkinHarm::through_skin:
      return goes_through_skin;
    case SkinHarm::allergy:
      return "may bring allergy of the skin";
    case SkinHarm::irritates:
      return statement_words("H315");
    case SkinHarm::dries:
      return "dries the skin";
    case SkinHarm::untold:
      return "skin: not known";
    case SkinHarm::none_recorded:
      return "skin: nothing recorded";
  }
  return {};
}

std::string vapour_words(const PersonHazard& hazard, const std::string& authority) {
  if (const std::optional<double> ratio = vapour_ratio(hazard, authority))
    return fmt::format("vapour {} times its limit ({})", with_commas(static_cast<std::uint64_t>(std::llround(*ratio))),
                       authority);
  for (const VapourHazard& one : hazard.vapour)
    if (one.authority == authority) return "vapour: no limit for " + joined(one.without);
  return "vapour: no limit known";
}

std::vector<std::string> person_sentences(const Bench& bench) {
  std::vector<std::string> sentences = {gravest_sentence(bench)};
  if (!bench.not_needed.empty())
    sentences.push_back("No rung of any line needs " + joined(bench.not_needed) + ": put away.");
  const std::string session = session_sentence(bench);
  if (!session.empty()) sentences.push_back(session);
  return sentences;
}

}  // namespace gentlest
