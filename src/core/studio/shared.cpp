#include "gentlest/studio/shared.hpp"

#include "gentlest/base/text.hpp"
#include "gentlest/learning/reading_fields.hpp"
#include "gentlest/liquids/notation.hpp"
#include "gentlest/plan/shelf.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace gentlest {

namespace {

constexpr const char* removed_layer = "removed";

// Of a blank only which it was; of an own solution that it was one.
std::string plain_mixture(const std::string& text, const Catalogue& catalogue, const std::vector<Liquid>& shelf) {
  const std::optional<NoMixture> none = no_mixture_from(text);
  if (none == NoMixture::aqueous) return unnamed_solution();
  if (none == NoMixture::blank) {
    if (folded(text).find("saliva") != std::string::npos) return "saliva";
    return folded(text).find("water") != std::string::npos ? "water" : "dry swab";
  }
  try {
    return to_text(parse_mixture(text, catalogue, shelf));
  } catch (const InputError&) {
    return {};
  }
}

const Layer* layer_of(const Job& job, const std::string& name, Role role) {
  const auto found = std::find_if(job.layers.begin(), job.layers.end(), [&](const Layer& layer) {
    return layer.role == role && (name.empty() || layer.name == name);
  });
  return found == job.layers.end() ? nullptr : &*found;
}

std::string material_or_nothing(const std::string& id, const Catalogue& catalogue) {
  const Material* material = id.empty() || id == unknown_material ? nullptr : catalogue.find_material(id);
  return material ? material->id : std::string();
}

// A layer's own sphere is the person's own: no material can be named for it.
std::string material_of(const Layer* layer, const Catalogue& catalogue) {
  if (!layer || layer->own_sphere) return {};
  return material_or_nothing(own_material(*layer), catalogue);
}

std::string original_of(const Job& job, const std::string& passage, const Catalogue& catalogue) {
  for (const Passage& one : job.passages) {
    if (one.name != passage) continue;
    if (!one.material.empty()) return material_or_nothing(one.material, catalogue);
    // What may hold resin is judged as something else than its layer, and nobody looked.
    const bool may_be_else =
        std::find(one.suspected.begin(), one.suspected.end(), Flag::resinous) != one.suspected.end();
    return may_be_else ? std::string() : material_of(layer_of(job, one.of, Role::keep), catalogue);
  }
  return material_of(layer_of(job, passage, Role::keep), catalogue);
}

Layer layer_with(std::string name, Role role, const std::string& material) {
  Layer layer;
  layer.name = std::move(name);
  layer.role = role;
  layer.found = material.empty() ? unknown_material : material;
  return layer;
}

void add_original(Job& job, const std::string& material) {
  const auto is_it = [&](const Layer& layer) { return layer.name == material; };
  if (!material.empty() && std::none_of(job.layers.begin(), job.layers.end(), is_it))
    job.layers.push_back(layer_with(material, Role::keep, material));
}

}  // namespace

std::vector<SharedTest> shared_tests(const StudioPainting& painting, int number, const Catalogue& catalogue,
                                     int& left_out) {
  const std::vector<Liquid> shelf = all_liquids(shelf_of(painting.job, catalogue));
  std::vector<SharedTest> tests;
  for (const Reading& reading : current_readings(painting.readings)) {
    SharedTest test;
    test.painting = number;
    test.mixture = plain_mixture(reading.mixture, catalogue, shelf);
    if (test.mixture.empty()) {
      ++left_out;
      continue;
    }
    test.removed_material = material_of(layer_of(painting.job, reading.layer, Role::remove), catalogue);
    test.original_material = original_of(painting.job, reading.passage, catalogue);
    test.paint_age_years = painting.job.object.paint_age_years;
    for (const std::string_view key : shared_reading_keys) set_field(test.reading, key, get_field(reading, key));
    tests.push_back(std::move(test));
  }
  return tests;
}

std::vector<StudioPainting> paintings_from(const std::vector<SharedTest>& tests, const std::string& source) {
  std::map<int, StudioPainting> paintings;
  for (const SharedTest& test : tests) {
    StudioPainting& painting = paintings[test.painting];
    Job& job = painting.job;
    painting.name = source;
    painting.source = source;
    job.object.paint_age_years = test.paint_age_years;
    // One layer to remove for each material that was to go, named by it.
    const std::string removed = test.removed_material.empty() ? removed_layer : "removed " + test.removed_material;
    if (!layer_of(job, removed, Role::remove))
      job.layers.insert(job.layers.begin(), layer_with(removed, Role::remove, test.removed_material));
    add_original(job, test.original_material);
    Reading reading = test.reading;
    reading.test = static_cast<int>(painting.readings.size()) + 1;
    reading.looked_after.clear();  // a later look was joined already, and would ask for its first one
    reading.mixture = test.mixture;
    reading.layer = removed;
    reading.passage = test.original_material;
    if (test.original_material.empty()) reading.original.reset();
    if (reading.removal || reading.original) painting.readings.push_back(std::move(reading));
  }
  std::vector<StudioPainting> list;
  for (auto& [number, painting] : paintings) list.push_back(std::move(painting));
  return list;
}

}  // namespace gentlest
