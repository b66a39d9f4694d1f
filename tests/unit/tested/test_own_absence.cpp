// Pictures of what was tested, and the map: the job's own series have no place there, and each says so.
#include "own_series_plan.hpp"

#include "report/tested/progress_charts.hpp"
#include "report/tested/test_map.hpp"

#include <catch2/catch.hpp>

namespace gentlest::test {

TEST_CASE("pictures of the tests and the map say why the own series are not on them") {
  const Plan& plan = own_series_plan().plan;
  const Progress progress = follow_readings(plan, shipped_catalogue(), {});
  for (const std::string& kind : progress_chart_kinds()) {
    const Chart chart = progress_chart_of(kind, plan, progress);
    INFO(kind);
    for (const std::string& text : {chart.caption, chart.description})
      CHECK(holds(text,
                  "The job's own series have no place here, since this picture is of what was tested: our "
                  "spirits, old & wet."));
  }
  const Chart map = test_map(plan.job.object, {}, {}, plan.job.series);
  for (const std::string& text : {map.caption, map.description})
    CHECK(holds(text, "The job's own series have no place on a map of the painting: our spirits, old & wet."));
  CHECK(!holds(test_map(plan.job.object, {}).caption, "series"));
}

}  // namespace gentlest::test
