#include "study/studios.hpp"

#include "core/base/random_numbers.hpp"
#include "gentlest/studio/studio.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gentlest::study {

namespace {

constexpr std::size_t particles = 1000;
constexpr std::uint64_t held_out_seed = 5026;

using Point = std::array<double, 3>;

Point direction(RandomNumbers& random) {
  Point point{random.normal(), random.normal(), random.normal()};
  const double length = std::sqrt(point[0] * point[0] + point[1] * point[1] + point[2] * point[2]);
  for (double& one : point) one /= length;
  return point;
}

// The unknown middle of one material in one studio.
struct Middle {
  Point centre{};
  double R0 = 0;
};

Middle middle_of(const UncertainSphere& stand_in, const StudioTruth& truth, RandomNumbers& random) {
  Middle middle{scaled(stand_in.mean.centre), stand_in.mean.R0};
  const Point way = direction(random);
  for (std::size_t i = 0; i < 3; ++i) middle.centre[i] += truth.off * way[i];
  return middle;
}

TrueLayer layer_about(const Middle& middle, const StudioTruth& truth, RandomNumbers& random) {
  constexpr double least_R0 = 3, edge_spread = 0.1;
  TrueLayer layer;
  for (std::size_t i = 0; i < 3; ++i)
    layer.centre[i] = middle.centre[i] + truth.scatter / std::sqrt(3.0) * random.normal();
  layer.R0 = std::max(middle.R0 + truth.R0_scatter * random.normal(), least_R0);
  layer.R0_edge = layer.R0 * std::exp(edge_spread * random.normal());
  return layer;
}

const PlannedLayer& kept_layer(const Plan& plan) {
  return *std::find_if(plan.layers.begin(), plan.layers.end(),
                       [](const PlannedLayer& layer) { return layer.role == Role::keep; });
}

double distance(const Point& a, const Point& b) {
  return std::sqrt(std::pow(a[0] - b[0], 2) + std::pow(a[1] - b[1], 2) + std::pow(a[2] - b[2], 2));
}

// Mean and its standard error.
struct Mean {
  double value = 0, error = 0;
};
Mean mean_of(const std::vector<double>& values) {
  const double count = static_cast<double>(values.size());
  double sum = 0, square = 0;
  for (const double value : values) sum += value;
  for (const double value : values) square += std::pow(value - sum / count, 2);
  return {sum / count, values.size() < 2 ? 0 : std::sqrt(square / (count - 1) / count)};
}

using Figure = double (*)(const Session&);
struct NamedFigure {
  const char* name;
  Figure of;
};
constexpr NamedFigure figures[] = {
    {"tests a painting", [](const Session& one) { return static_cast<double>(one.tests); }},
    {"harmed on the picture, %", [](const Session& one) { return one.harmed ? 100.0 : 0.0; }},
    {"harmed at the edge, %", [](const Session& one) { return one.harmed_edge ? 100.0 : 0.0; }},
    {"a mixture found, %", [](const Session& one) { return one.ending == Ending::found ? 100.0 : 0.0; }},
    {"found and truly good, %", [](const Session& one) { return one.truly_good ? 100.0 : 0.0; }},
};

std::string cell(const Mean& mean, bool is_signed) {
  return is_signed ? fmt::format("{:+.1f} ± {:.1f}", mean.value, mean.error)
                   : fmt::format("{:.1f} ± {:.1f}", mean.value, mean.error);
}

std::string table_of(const std::vector<StudioRun>& runs) {
  std::string text =
      "| figure | first painting | last, without the studio | last, with it | with less without | last with it less "
      "first "
      "|\n| --- | --- | --- | --- | --- | --- |\n";
  for (const NamedFigure& figure : figures) {
    std::vector<double> first, without, with_studio, paired, against_first;
    for (const StudioRun& run : runs) {
      first.push_back(figure.of(run.first));
      without.push_back(figure.of(run.last_without));
      with_studio.push_back(figure.of(run.last_with));
      paired.push_back(with_studio.back() - without.back());
      against_first.push_back(with_studio.back() - first.back());
    }
    text += fmt::format("| {} | {} | {} | {} | {} | {} |\n", figure.name, cell(mean_of(first), false),
                        cell(mean_of(without), false), cell(mean_of(with_studio), false), cell(mean_of(paired), true),
                        cell(mean_of(against_first), true));
  }
  return text;
}

}  // namespace

StudioRun run_studio(const Bench& bench, const StudioTruth& truth, std::uint64_t seed) {
  RandomNumbers random(seed);
  const UncertainSphere& varnish = *bench.plan.layers[bench.plan.target].sphere;
  const Middle varnishes = middle_of(varnish, truth, random);
  const Middle paints = middle_of(*kept_layer(bench.plan).sphere, truth, random);
  const Truth plain = all_truths().front();
  const Ground ground = borrowed_ground(bench, 1, particles);
  std::vector<StudioPainting> finished;
  StudioRun run;
  for (std::size_t i = 0; i < truth.paintings; ++i) {
    Painting painting;
    painting.varnish = layer_about(varnishes, truth, random);
    painting.paint = painting.second_paint = layer_about(paints, truth, random);
    painting.seed = random.bits();
    StudioPainting one;
    one.job = bench.plan.job;
    const Session session = follow(bench, plain, ground, painting, nullptr, &one.readings);
    if (i == 0) run.first = session;
    if (i + 1 < truth.paintings) {
      finished.push_back(std::move(one));
      continue;
    }
    run.last_without = session;
    const Studio studio = learn_from_paintings(finished, bench.catalogue);
    Job job = bench.plan.job;
    job.starts = starts_of(studio);
    const Bench with_studio = bench_of(job, bench.catalogue);
    run.last_with = follow(with_studio, plain, borrowed_ground(with_studio, 1, particles), painting);
    run.middle_off_without = distance(varnishes.centre, scaled(varnish.mean.centre));
    for (const StudioMaterial& material : studio.materials) {
      if (material.layer.role != Role::remove) continue;
      run.middle_off_with = distance(varnishes.centre, scaled(material.start.sphere.mean.centre));
      run.between = material.start.between;
    }
  }
  return run;
}

std::string studio_section(const Bench& bench, int studios) {
  std::string text;
  for (const double scatter : {2.0, 5.0}) {
    StudioTruth truth;
    truth.scatter = scatter;
    std::vector<StudioRun> runs;
    for (int i = 0; i < studios; ++i)
      runs.push_back(run_studio(bench, truth, held_out_seed + static_cast<std::uint64_t>(i)));
    std::vector<double> off_without, off_with, between;
    for (const StudioRun& run : runs) {
      off_without.push_back(run.middle_off_without);
      off_with.push_back(run.middle_off_with);
      between.push_back(run.between);
    }
    text +=
        fmt::format("### Paintings {:.0f} apart from their middle, {} studios\n{}\n", scatter, studios, table_of(runs));
    text += fmt::format(
        "The varnish's start lay {} from the true middle without the studio and {} with it; the scatter between "
        "paintings was found as {}.\n\n",
        cell(mean_of(off_without), false), cell(mean_of(off_with), false), cell(mean_of(between), false));
  }
  return text;
}

}  // namespace gentlest::study
