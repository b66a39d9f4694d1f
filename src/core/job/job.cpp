#include "gentlest/job/job.hpp"

namespace gentlest {

const std::string& own_material(const Layer& layer) {
  return layer.found.empty() ? layer.recorded : layer.found;
}

// Where a record stands in its file is no part of what it says.
bool PossibleMaterial::operator==(const PossibleMaterial& other) const {
  return material == other.material && percent == other.percent;
}

bool Layer::operator==(const Layer& other) const {
  return name == other.name && role == other.role && recorded == other.recorded && found == other.found &&
         own_sphere == other.own_sphere && possible == other.possible && suspected == other.suspected &&
         note == other.note && light == other.light && years == other.years;
}

bool ProposedCoat::operator==(const ProposedCoat& other) const {
  return material == other.material && use == other.use && in == other.in && light == other.light &&
         years == other.years;
}

bool Passage::operator==(const Passage& other) const {
  return name == other.name && of == other.of && material == other.material && suspected == other.suspected &&
         note == other.note && is_left_out == other.is_left_out;
}

bool Finding::operator==(const Finding& other) const {
  return question == other.question && answer == other.answer && where == other.where && note == other.note;
}

bool ShelfBottle::operator==(const ShelfBottle& other) const {
  return solvent == other.solvent && grade == other.grade && at_most_percent == other.at_most_percent;
}

bool OwnSeries::operator==(const OwnSeries& other) const {
  return name == other.name && mixtures == other.mixtures;
}

}  // namespace gentlest
