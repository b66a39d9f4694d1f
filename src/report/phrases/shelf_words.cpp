#include "report/phrases/shelf_words.hpp"

#include "report/phrases/sighting_words.hpp"

#include <fmt/format.h>

namespace gentlest {

namespace {

std::string objection_to(const Objection& objection) {
  if (objection.left_off) return words_of(*objection.left_off, *objection.liquid.solvent);
  if (objection.other_held) return "taken free of water; the shelf holds " + *objection.other_held;
  return "not on the shelf";
}

}  // namespace

std::string words_of(const LeftOff& left_off, const Solvent& solvent) {
  switch (left_off.why) {
    case LeftOffWhy::no_hansen:
      return "no Hansen parameters: " + solvent.no_hansen;
    case LeftOffWhy::water:
      return "water acts by other ways than solubility; outside the model";
    case LeftOffWhy::family:
      return fmt::format("family \"{}\" is to be avoided", solvent.family);
    case LeftOffWhy::solvent:
      return "is to be avoided";
    case LeftOffWhy::not_demanded:
      return "is none of those that the job demands (exactly)";
    case LeftOffWhy::no_hazard_record:
      return "no hazard record, and unknown hazards are not allowed";
    case LeftOffWhy::statement:
      return fmt::format("carries {}, which is to be avoided", left_off.statement);
    case LeftOffWhy::examination:
      return "left off by what the examination showed";
    case LeftOffWhy::acts_on_layer:
      return acting_words(*left_off.seen, left_off.layer);
  }
  return {};
}

std::vector<std::string> left_off_words(const std::vector<JobBottle>& bottles) {
  std::vector<std::string> words;
  for (const JobBottle& bottle : bottles)
    words.push_back((bottle.liquid ? bottle.liquid->label : bottle.solvent->name) + ": " +
                    words_of(*bottle.left_off, *bottle.solvent));
  return words;
}

std::vector<std::string> objection_words(const std::vector<Objection>& objections) {
  std::vector<std::string> words;
  for (const Objection& one : objections) words.push_back(one.liquid.label + ": " + objection_to(one));
  return words;
}

}  // namespace gentlest
