#include "study/truth.hpp"

#include "core/base/random_numbers.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gentlest::study {

namespace {

constexpr double share_of_mixture = 0.8;  // of the luck
constexpr double luck_reach = 3;          // MPa^0.5
constexpr double misread = 0.02;          // removal one level off, harm overlooked or imagined
constexpr double good_effect = 0.6, good_risk = 0.27;

LevelChances logistic(const std::array<double, 4>& places, double RED) {
  LevelChances at_least{1, 0, 0, 0, 0};
  for (std::size_t i = 0; i < places.size(); ++i) at_least[i + 1] = 1 / (1 + std::exp((RED - places[i]) / 0.05));
  return at_least;
}

double normal_share(double z) {
  return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}

// RED at which the curve gives this chance; beyond 6 it is flat.
double RED_where(const ReadingCurve& curve, int level, double chance) {
  double low = 0, high = ReadingCurve::largest_RED;
  for (int step = 0; step < 30; ++step) {
    const double middle = (low + high) / 2;
    (curve.at_least(level, middle) >= chance ? low : high) = middle;
  }
  return low;
}

// The median stays, the width is that of the curve between 16 and 84 %.
double probit_chance(const ReadingCurve& curve, int level, double RED) {
  const double median = RED_where(curve, level, 0.5);
  const double width = (RED_where(curve, level, 0.16) - RED_where(curve, level, 0.84)) / 2;
  return normal_share((median - RED) / std::max(width, 0.01));
}

double chance_at(const Truth& truth, const ReadingCurve& curve, int level, double RED) {
  return truth.by_probit ? probit_chance(curve, level, RED) : curve.at_least(level, RED);
}

// Around one painting's layer; `factor` is how much larger R0 acts.
double RED_of(const Painting& painting, const TrueLayer& layer, const Hansen& point, bool at_edge, double factor) {
  const std::array<double, 3> place = scaled(point);
  double sum = 0;
  for (std::size_t i = 0; i < 3; ++i) sum += std::pow((place[i] - layer.centre[i]) * painting.stretch[i], 2);
  return std::sqrt(sum) / ((at_edge ? layer.R0_edge : layer.R0) * factor);
}

int level_drawn(const Truth& truth, const ReadingCurve& curve, double RED, double luck) {
  int level = 0;
  while (level < 4 && luck < chance_at(truth, curve, level + 1, RED)) ++level;
  return level;
}

std::uint64_t mixed(std::uint64_t seed, std::uint64_t with) {
  return RandomNumbers(seed ^ (with * 0x9E3779B97F4A7C15u)).bits();
}

std::uint64_t number_of(const std::string& text) {
  std::uint64_t number = 0xCBF29CE484222325u;
  for (const char c : text) number = (number ^ static_cast<unsigned char>(c)) * 0x100000001B3u;
  return number;
}

// A smooth Gaussian of variance 1 over the scaled space: many waves of random direction and phase.
double smooth(std::uint64_t seed, const Hansen& point) {
  constexpr int waves = 48;
  RandomNumbers random(seed);
  const std::array<double, 3> place = scaled(point);
  double sum = 0;
  for (int i = 0; i < waves; ++i) {
    double phase = 2 * std::numbers::pi * random.uniform();
    for (const double at : place) phase += at / luck_reach * random.normal();
    sum += std::cos(phase);
  }
  return sum * std::sqrt(2.0 / waves);
}

std::uint64_t removal_seed(const Painting& painting) {
  return mixed(painting.seed, 11);
}
std::uint64_t harm_seed(const Painting& painting) {
  return mixed(painting.seed, 12);
}

// The spot's own luck in so much of the cases, else the mixture's.
double luck_of(const Truth& truth, std::uint64_t seed, const SwabMixture& mixture, RandomNumbers& spot) {
  const bool is_own = spot.uniform() >= share_of_mixture || truth.has_fresh_luck;
  const double fresh = spot.uniform();
  return is_own ? fresh : LuckField(seed, truth.has_own_luck).of(mixture);
}

double known_chance(const Truth& truth, std::uint64_t seed, const SwabMixture& mixture, double chance) {
  if (truth.has_fresh_luck) return chance;
  const bool happens = LuckField(seed, truth.has_own_luck).of(mixture) < chance;
  return (1 - share_of_mixture) * chance + (happens ? share_of_mixture : 0);
}

TrueLayer layer_at(const ParticleCloud& cloud, std::size_t i) {
  return {{static_cast<double>(cloud.x[i]), static_cast<double>(cloud.y[i]), static_cast<double>(cloud.z[i])},
          1 / static_cast<double>(cloud.inverse_R0[i]),
          1 / static_cast<double>(cloud.inverse_R0_edge[i])};
}

// Spheres drawn from a prior, in no order.
std::vector<TrueLayer> draw_layers(LayerPrior prior, const Truth& truth, std::size_t count, std::uint64_t seed) {
  if (truth.as_recorded) prior.stray_share = 0;
  LearningSettings settings;
  settings.particles = count;
  settings.seed = seed;
  const LayerBelief belief(prior, sharp_removal(), settings);
  std::vector<TrueLayer> layers;
  for (std::size_t i = 0; i < count; ++i) layers.push_back(layer_at(belief.particles(), i));
  RandomNumbers random(seed + 99);
  for (std::size_t i = count; i > 1; --i) std::swap(layers[i - 1], layers[random.bits() % i]);
  return layers;
}

void break_painting(const Truth& truth, Painting& painting) {
  RandomNumbers random(mixed(painting.seed, 3));
  if (truth.is_ellipsoid) {
    double sum = 0;
    for (double& axis : painting.stretch) sum += axis = 0.25 * random.normal();
    for (double& axis : painting.stretch) axis = std::exp(axis - sum / 3);
  }
  painting.second_paint = painting.paint;
  if (!truth.has_two_regions) return;
  for (double& one : painting.second_paint.centre) one += 1.5 * random.normal();
  painting.second_paint.R0 *= std::exp(0.15 * random.normal());
}

}  // namespace

std::vector<Truth> all_truths() {
  std::vector<Truth> all;
  const auto add = [&](const char* name, bool Truth::*mark) {
    all.emplace_back();
    all.back().name = name;
    if (mark) all.back().*mark = true;
  };
  add("the model's own", nullptr);
  add("all as recorded, no strays", &Truth::as_recorded);
  add("a probit in RED", &Truth::by_probit);
  add("ellipsoids", &Truth::is_ellipsoid);
  add("two regions of the paint", &Truth::has_two_regions);
  add("patchy varnish", &Truth::is_patchy);
  add("three in ten slight changes overlooked", &Truth::overlooks);
  add("contact 5 to 60 s", &Truth::varies_contact);
  add("luck fresh for each swab", &Truth::has_fresh_luck);
  add("no luck shared by neighbours", &Truth::has_own_luck);
  add("young paint taken for old", &Truth::is_young_paint);
  add("no window at all", &Truth::has_no_window);
  return all;
}

ReadingCurve sharp_removal() {
  return ReadingCurve([](double RED) { return logistic({1.12, 1.045, 0.97, 0.90}, RED); });
}
ReadingCurve sharp_harm() {
  return ReadingCurve([](double RED) { return logistic({1.00, 0.93, 0.86, 0.80}, RED); });
}

LuckField::LuckField(std::uint64_t seed, bool is_rough) : seed_(seed), is_rough_(is_rough) {}

double LuckField::of(const SwabMixture& mixture) const {
  std::vector<std::string> labels;
  for (const auto& [label, share] : mixture.shares) labels.push_back(label);
  std::sort(labels.begin(), labels.end());
  std::uint64_t bottles = seed_;
  for (const std::string& label : labels) bottles = mixed(bottles, number_of(label));
  if (!is_rough_) return normal_share((smooth(seed_, mixture.point) + smooth(bottles, mixture.point)) * std::sqrt(0.5));
  for (const double at : scaled(mixture.point))
    bottles = mixed(bottles, static_cast<std::uint64_t>(std::llround((at + 100) * 1e4)));
  return RandomNumbers(bottles).uniform();
}

std::vector<Painting> make_paintings(const Truth& truth, const Ground& ground, std::uint64_t seed) {
  LayerPrior paint = ground.start.kept.front().belief.prior();
  if (truth.is_young_paint) paint.hypotheses.front().sphere = ground.young;
  const std::vector<TrueLayer> varnishes =
      draw_layers(ground.start.target->prior(), truth, ground.paintings, mixed(seed, 1));
  const std::vector<TrueLayer> paints = draw_layers(paint, truth, ground.paintings, mixed(seed, 2));
  std::vector<Painting> paintings;
  for (std::size_t i = 0; i < ground.paintings; ++i) {
    Painting painting{varnishes[i], paints[i], {}, {1, 1, 1}, mixed(seed, 1000 + i)};
    break_painting(truth, painting);
    paintings.push_back(painting);
  }
  return paintings;
}

SwabOutcome swab(const Truth& truth, const Ground& ground, const Painting& painting, const SwabMixture& mixture,
                 bool at_edge, std::size_t spot_number) {
  RandomNumbers spot(mixed(painting.seed, 7000 + spot_number));
  SwabOutcome outcome;
  const double hurry = spot.uniform();
  if (truth.varies_contact) outcome.seconds = std::round(5 * std::pow(12.0, hurry));
  double acts = truth.varies_contact ? std::pow(outcome.seconds / 20, 0.1) : 1;
  const double patch = spot.normal();
  const bool is_second = spot.uniform() < 0.5 && truth.has_two_regions && !at_edge;
  const double on_varnish = acts * (truth.is_patchy ? std::exp(0.12 * patch) : 1);
  const double bent_varnish = ground.start.target->radius_factor_at(mixture.point);
  const double bent_paint = ground.start.kept.front().belief.radius_factor_at(mixture.point);
  const TrueLayer& paint = is_second ? painting.second_paint : painting.paint;
  const double RED_varnish = RED_of(painting, painting.varnish, mixture.point, at_edge, on_varnish * bent_varnish);
  const double RED_paint = RED_of(painting, paint, mixture.point, at_edge, acts * bent_paint);
  outcome.removal =
      level_drawn(truth, ground.removal, RED_varnish, luck_of(truth, removal_seed(painting), mixture, spot));
  outcome.harm = level_drawn(truth, ground.harm, RED_paint, luck_of(truth, harm_seed(painting), mixture, spot));
  if (truth.has_no_window && outcome.removal >= ground.start.settings.effect_level)
    outcome.harm = std::max(outcome.harm, 1);
  outcome.removal_read = outcome.removal;
  outcome.harm_read = outcome.harm;
  const bool slips = spot.uniform() < misread;
  const bool goes_up = spot.uniform() < 0.5;
  if (slips) outcome.removal_read += outcome.removal == 0 || (outcome.removal < 4 && goes_up) ? 1 : -1;
  if (spot.uniform() < misread) outcome.harm_read = outcome.harm == 0 ? 1 : 0;
  if (spot.uniform() < 0.3 && truth.overlooks && outcome.harm == 1) outcome.harm_read = 0;
  return outcome;
}

double true_effect(const Truth& truth, const Ground& ground, const Painting& painting, const SwabMixture& mixture) {
  const double bent = ground.start.target->radius_factor_at(mixture.point);
  const int level = ground.start.settings.effect_level;
  const auto chance = [&](double patch) {
    const double RED = RED_of(painting, painting.varnish, mixture.point, false, bent * std::exp(patch));
    return known_chance(truth, removal_seed(painting), mixture, chance_at(truth, ground.removal, level, RED));
  };
  if (!truth.is_patchy) return chance(0);
  double sum = 0;
  const std::array<double, 5> fifths = {-1.282, -0.524, 0, 0.524, 1.282};  // middle of each fifth of a normal
  for (const double z : fifths) sum += chance(0.12 * z) / 5;
  return sum;
}

double true_risk(const Truth& truth, const Ground& ground, const Painting& painting, const SwabMixture& mixture) {
  const double bent = ground.start.kept.front().belief.radius_factor_at(mixture.point);
  const int level = ground.start.kept.front().risk_level;
  const auto chance = [&](const TrueLayer& paint) {
    const double RED = RED_of(painting, paint, mixture.point, false, bent);
    return known_chance(truth, harm_seed(painting), mixture, chance_at(truth, ground.harm, level, RED));
  };
  const double risk = std::max(chance(painting.paint), chance(painting.second_paint));
  return truth.has_no_window ? std::max(risk, true_effect(truth, ground, painting, mixture)) : risk;
}

bool is_truly_good(const Truth& truth, const Ground& ground, const Painting& painting, const SwabMixture& mixture) {
  return true_effect(truth, ground, painting, mixture) >= good_effect &&
         true_risk(truth, ground, painting, mixture) <= good_risk;
}

}  // namespace gentlest::study
