#include "study/studios.hpp"

#include "core/base/random_numbers.hpp"
#include "gentlest/studio/studio.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

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

std::string cell(const Mean& mean, bool is_signed) {
  return is_signed ? fmt::format("{:+.1f} ± {:.1f}", mean.value, mean.error)
                   : fmt::format("{:.1f} ± {:.1f}", mean.value, mean.error);
}

// Tests for each good mixture: all tests over all good mixtures, so that a series that ends early by harm is no saving.
// Nothing where no studio found one, or only one did.
std::optional<double> tests_for_good(const std::vector<Session>& sessions, std::size_t left_out) {
  double tests = 0, good = 0;
  for (std::size_t i = 0; i < sessions.size(); ++i) {
    if (i == left_out) continue;
    tests += static_cast<double>(sessions[i].tests);
    good += sessions[i].truly_good ? 1 : 0;
  }
  return good > 0 ? std::optional(tests / good) : std::nullopt;
}

// Its value and standard error by leaving each studio out in turn (jackknife), of the first less the second where there
// is a second.
std::string tests_for_good_cell(const std::vector<Session>& first, const std::vector<Session>* second = nullptr) {
  const auto value_without = [&](std::size_t left_out) -> std::optional<double> {
    const auto of_first = tests_for_good(first, left_out);
    const auto of_second = second ? tests_for_good(*second, left_out) : std::optional(0.0);
    return of_first && of_second ? std::optional(*of_first - *of_second) : std::nullopt;
  };
  const std::size_t count = first.size();
  const auto whole = value_without(count);
  std::vector<double> left;
  for (std::size_t i = 0; i < count; ++i)
    if (const auto value = value_without(i)) left.push_back(*value);
  if (!whole || left.size() < count || count < 2) return "not known";
  const double mean = std::accumulate(left.begin(), left.end(), 0.0) / static_cast<double>(count);
  double square = 0;
  for (const double value : left) square += std::pow(value - mean, 2);
  const double error = std::sqrt(square * static_cast<double>(count - 1) / static_cast<double>(count));
  return cell({*whole, error}, second != nullptr);
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
  std::vector<Session> first, without, with_studio;
  for (const StudioRun& run : runs) {
    first.push_back(run.first);
    without.push_back(run.last_without);
    with_studio.push_back(run.last_with);
  }
  text += fmt::format("| tests for each good mixture found | {} | {} | {} | {} | {} |\n", tests_for_good_cell(first),
                      tests_for_good_cell(without), tests_for_good_cell(with_studio),
                      tests_for_good_cell(with_studio, &without), tests_for_good_cell(with_studio, &first));
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
