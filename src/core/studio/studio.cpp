#include "gentlest/studio/studio.hpp"

#include "core/plan/planned_layers.hpp"
#include "core/space/sphere_matrix.hpp"
#include "core/studio/table_as_matrix.hpp"

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace gentlest {

namespace {

using Vector4 = Eigen::Vector4d;
using Matrix4 = Eigen::Matrix4d;

constexpr double smallest_R0 = 0.5;  // MPa^0.5; no material's sphere is that small
// What the tests of one painting say is no Gaussian; near the middle of all paintings it is told as one. So the
// paintings are gone through twice: from far off, then from where that led.
constexpr int passes = 2;
constexpr std::uint64_t seed_of_studio = 41;

Vector4 middle_of(const UncertainSphere& sphere) {
  return {2 * sphere.mean.centre.dD, sphere.mean.centre.dP, sphere.mean.centre.dH, sphere.mean.R0};
}

UncertainSphere sphere_of(const Vector4& middle, const SphereMatrix& table) {
  UncertainSphere sphere;
  sphere.mean = {{middle[0] / 2, middle[1], middle[2]}, std::max(middle[3], smallest_R0)};
  const auto sd = [&](std::size_t i) { return std::sqrt(std::max(table[i][i], 0.0)); };
  sphere.sd = {sd(0) / 2, sd(1), sd(2)};
  sphere.R0_sd = sd(3);
  sphere.shared = {table[0][1] / 2, table[0][2] / 2, table[1][2], table[0][3] / 2, table[1][3], table[2][3]};
  return sphere;
}

// So wide that the tests decide, not what was held: the stand-in's spread and the scatter between paintings.
UncertainSphere wide_sphere(const PlannedLayer& layer) {
  const PoolSettings settings;
  const UncertainSphere before = prior_of(layer).hypotheses.front().sphere;
  SphereMatrix table = covariance_of(before);
  for (std::size_t i = 0; i < 3; ++i) table[i][i] += settings.between_centre * settings.between_centre / 3;
  table[3][3] += layer.sphere->R0_sd * layer.sphere->R0_sd;
  return sphere_of(middle_of(before), table);
}

// Where the paintings of each material are looked at from; wide where none of it is known yet.
using Views = std::map<std::string, UncertainSphere>;

LayerBelief belief_from(const Views& views, const PlannedLayer& layer, std::uint64_t seed) {
  LearningSettings settings;
  settings.seed = seed;
  const auto view = views.find(layer.material);
  const UncertainSphere sphere = view == views.end() ? wide_sphere(layer) : view->second;
  LayerPrior prior{{{sphere, 1, layer.material_name, layer.reach}}};
  prior.stray_share = 0;
  return LayerBelief(std::move(prior), curve_of(layer), settings);
}

// Mean and covariance of the particles, and from them what the tests alone said: the Gaussian that was held before is
// divided out, each direction by itself. A direction that the tests did not narrow may have moved all the same.
PaintingSays said_by(const LayerBelief& belief, const UncertainSphere& stand_in) {
  const ParticleCloud& cloud = belief.particles();
  const UncertainSphere& view = belief.prior().hypotheses.front().sphere;
  const Vector4 from = middle_of(view);
  Vector4 mean = Vector4::Zero();
  Matrix4 square = Matrix4::Zero();
  for (std::size_t i = 0; i < cloud.size(); ++i) {
    const Vector4 deviation = Vector4(static_cast<double>(cloud.x[i]), static_cast<double>(cloud.y[i]),
                                      static_cast<double>(cloud.z[i]), 1 / static_cast<double>(cloud.inverse_R0[i])) -
                              from;
    mean += static_cast<double>(cloud.weight[i]) * deviation;
    square += static_cast<double>(cloud.weight[i]) * deviation * deviation.transpose();
  }
  const Matrix4 root = matrix_of(covariance_of(view)).llt().matrixL();
  const auto whitened = [&](const auto& value) { return root.triangularView<Eigen::Lower>().solve(value).eval(); };
  const Matrix4 half = whitened((square - mean * mean.transpose()).eval());
  const Eigen::SelfAdjointEigenSolver<Matrix4> parts(whitened(half.transpose().eval()));
  const Vector4 along = parts.eigenvectors().transpose() * whitened(mean);
  Vector4 information = Vector4::Zero(), pull = Vector4::Zero();
  for (Eigen::Index k = 0; k < 4; ++k) {
    information[k] = std::max(1 / std::max(parts.eigenvalues()[k], 1e-4) - 1, 0.0);
    pull[k] = along[k] * (1 + information[k]);
  }
  const Matrix4 turn = root.transpose().triangularView<Eigen::Upper>().solve(parts.eigenvectors().eval());
  const Matrix4 table = turn * information.asDiagonal() * turn.transpose();
  const Vector4 pulled = turn * pull + table * (from - middle_of(stand_in));
  PaintingSays says;
  for (std::size_t i = 0; i < 4; ++i) {
    says.pull[i] = pulled[static_cast<Eigen::Index>(i)];
    for (std::size_t j = 0; j < 4; ++j)
      says.information[i][j] = table(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j));
  }
  return says;
}

// One layer of a painting that some test spoke of.
struct LayerTaught {
  PlannedLayer layer;
  LayerBelief belief;
  int tests = 0;
};

// A plan as far as readings need one: no ladder is looked for.
Plan plan_without_ladder(const Job& job, const Catalogue& catalogue, const std::string& target) {
  Plan plan;
  plan.job = job;
  plan.layers = planned_layers(job, catalogue, target);
  for (std::size_t i = 0; i < plan.layers.size(); ++i)
    if (plan.layers[i].is_target) plan.target = i;
  const Shelf bottles = shelf_of(job, catalogue);
  plan.left_off = bottles_left_off(bottles);
  plan.shelf = usable_liquids(bottles);
  plan.outcome = Outcome::no_ladder;
  return plan;
}

bool is_of_material(const PlannedLayer& layer) {
  return layer.sphere && !layer.material.empty() && layer.basis != LayerBasis::own_tests;
}

void add_taught(const Progress& progress, const std::string& name, const LayerBelief& belief,
                std::vector<LayerTaught>& taught) {
  const auto heard = progress.heard.find(name);
  const auto layer = std::find_if(progress.layers.begin(), progress.layers.end(),
                                  [&](const PlannedLayer& one) { return one.name == name; });
  if (heard == progress.heard.end() || heard->second.empty() || !is_of_material(*layer)) return;
  taught.push_back({*layer, belief, static_cast<int>(heard->second.size())});
}

// Each layer to remove by itself; what the swabs said of the layers to keep is the same each time.
std::vector<LayerTaught> taught_by(const StudioPainting& painting, const Views& views, const Catalogue& catalogue) {
  std::vector<LayerTaught> taught;
  Job job = painting.job;
  job.starts.clear();
  bool kept_are_told = false;
  for (const Layer& layer : job.layers) {
    if (layer.role != Role::remove) continue;
    const Plan plan = plan_without_ladder(job, catalogue, layer.name);
    NextTestTask task = task_before_tests(plan);
    if (task.target) task.target = belief_from(views, plan.layers[plan.target], seed_of_studio);
    for (KeptBelief& kept : task.kept)
      for (const PlannedLayer& one : plan.layers)
        if (one.name == kept.name && one.role == Role::keep) kept.belief = belief_from(views, one, seed_of_studio + 1);
    const Progress progress = take_readings(plan, catalogue, painting.readings, std::move(task));
    if (progress.task.target) add_taught(progress, layer.name, *progress.task.target, taught);
    for (const KeptBelief& kept : progress.task.kept)
      if (!kept_are_told) add_taught(progress, kept.name, kept.belief, taught);
    kept_are_told = true;
  }
  return taught;
}

void add(PaintingSays& sum, const PaintingSays& more) {
  for (std::size_t i = 0; i < 4; ++i) {
    sum.pull[i] += more.pull[i];
    for (std::size_t j = 0; j < 4; ++j) sum.information[i][j] += more.information[i][j];
  }
}

StudioMaterial& material_of(const PlannedLayer& layer, std::map<std::string, StudioMaterial>& materials) {
  StudioMaterial& material = materials[layer.material];
  if (!material.material.empty()) return material;
  material.material = layer.material;
  material.name = layer.material_name;
  material.layer = layer;
  material.layer.possible.clear();
  material.stand_in = *layer.sphere;
  return material;
}

void take(const LayerTaught& taught, std::size_t painting, StudioMaterial& material) {
  if (material.paintings.empty() || material.paintings.back().painting != painting) {
    material.paintings.emplace_back();
    material.paintings.back().painting = painting;
  }
  PaintingTaught& one = material.paintings.back();
  one.tests += taught.tests;
  one.evidence.push_back(taught.belief.seen());
  add(one.says, said_by(taught.belief, material.stand_in));
}

double distance_of(const Vector4& deviation) {
  return deviation.head<3>().norm();
}

Vector4 vector_of(const SphereFigures& values) {
  return {values[0], values[1], values[2], values[3]};
}

// Where a painting's own sphere most likely lies, from the stand-in, when it begins as the pool says.
Vector4 own_place(const PaintingSays& says, const Pool& pool) {
  const Matrix4 tie = matrix_of(pool.spread).ldlt().solve(Matrix4::Identity());
  const Matrix4 information = matrix_of(says.information) + tie;
  return information.ldlt().solve(vector_of(says.pull) + tie * vector_of(pool.moved));
}

UncertainSphere start_sphere(const UncertainSphere& stand_in, const Pool& pool) {
  return sphere_of(middle_of(stand_in) + vector_of(pool.moved), pool.spread);
}

std::vector<PaintingSays> all_said(const StudioMaterial& material, std::optional<std::size_t> without = {}) {
  std::vector<PaintingSays> said;
  for (std::size_t i = 0; i < material.paintings.size(); ++i)
    if (i != without) said.push_back(material.paintings[i].says);
  return said;
}

void settle(StudioMaterial& material) {
  material.pool = pool_paintings(covariance_of(material.stand_in), all_said(material));
  material.start = {material.material, start_sphere(material.stand_in, material.pool),
                    static_cast<int>(material.paintings.size()), distance_of(vector_of(material.pool.moved)),
                    material.pool.between_centre};
  for (std::size_t i = 0; i < material.paintings.size(); ++i) {
    PaintingTaught& one = material.paintings[i];
    one.weight = material.pool.weights[i];
    one.off = distance_of(own_place(one.says, material.pool) - vector_of(material.pool.moved));
  }
}

// ln of the chance of all readings, as a belief that begins at this sphere holds them one after the other.
double log_chance(const StudioMaterial& material, const UncertainSphere& start, const std::vector<Evidence>& evidence) {
  PlannedLayer layer = material.layer;
  layer.sphere = start;
  layer.reach = {};  // the evidence holds it already
  LayerBelief belief(prior_of(layer), curve_of(layer));
  for (const Evidence& one : evidence) belief.learn(one);
  double sum = 0;
  for (const double chance : belief.predicted()) sum += std::log(std::max(chance, 1e-12));
  return sum;
}

LeftOutPainting left_out(const StudioMaterial& material, std::size_t index) {
  const PaintingTaught& one = material.paintings[index];
  const Pool others = pool_paintings(covariance_of(material.stand_in), all_said(material, index));
  const UncertainSphere start = start_sphere(material.stand_in, others);
  LeftOutPainting result{material.material, one.painting, 0, 0, 0, 0, 0};
  double with_studio = 0, without = 0;
  for (const std::vector<Evidence>& evidence : one.evidence) {
    result.readings += static_cast<int>(evidence.size());
    with_studio += log_chance(material, start, evidence);
    without += log_chance(material, material.stand_in, evidence);
  }
  const double count = std::max(result.readings, 1);
  result.with_studio = std::exp(with_studio / count);
  result.without = std::exp(without / count);
  const Vector4 own = own_place(one.says, material.pool);
  result.start_off = distance_of(own - vector_of(others.moved));
  result.stand_in_off = distance_of(own);
  return result;
}

Studio look_at(const std::vector<StudioPainting>& paintings, const Views& views, const Catalogue& catalogue) {
  std::map<std::string, StudioMaterial> materials;
  Studio studio;
  for (std::size_t i = 0; i < paintings.size(); ++i) {
    int tests = 0;
    for (const LayerTaught& taught : taught_by(paintings[i], views, catalogue)) {
      take(taught, i, material_of(taught.layer, materials));
      tests += taught.tests;
    }
    studio.tests.push_back(tests);
  }
  for (auto& [id, material] : materials) {
    settle(material);
    studio.materials.push_back(std::move(material));
  }
  return studio;
}

}  // namespace

Studio learn_from_paintings(const std::vector<StudioPainting>& paintings, const Catalogue& catalogue) {
  Studio studio;
  Views views;
  for (int pass = 0; pass < passes; ++pass) {
    studio = look_at(paintings, views, catalogue);
    for (const StudioMaterial& material : studio.materials) views[material.material] = material.start.sphere;
  }
  return studio;
}

std::vector<StudioStart> starts_of(const Studio& studio) {
  std::vector<StudioStart> starts;
  for (const StudioMaterial& material : studio.materials) starts.push_back(material.start);
  return starts;
}

std::vector<LeftOutPainting> leave_one_out(const Studio& studio) {
  std::vector<LeftOutPainting> results;
  for (const StudioMaterial& material : studio.materials)
    for (std::size_t i = 0; i < material.paintings.size() && material.paintings.size() > 1; ++i)
      results.push_back(left_out(material, i));
  return results;
}

}  // namespace gentlest
