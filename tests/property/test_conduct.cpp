// The rules of conduct (docs/conduct.md) over sessions drawn at random, sound and unsound ones; one million of them:
// `cmake --build build/release --target conduct_sessions`.
#include "property/conduct_sessions.hpp"
#include "scale.hpp"
#include "shipped.hpp"

#include "gentlest/answers/progress.hpp"
#include "io/job_file.hpp"
#include "report/screen/progress_report.hpp"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <string>
#include <vector>

using namespace gentlest;
using namespace gentlest::test;

namespace {

const char* bottles = "isooctane, {solvent: ethanol, grade: \"96 %\"}, acetone, ethyl_acetate, isopropanol, xylene";

Plan plan_of(const std::string& layers, const std::string& limits) {
  const std::string text =
      "gentlest_job: 1\nlayers:\n" + layers + "shelf: [" + bottles + "]\nlimits: {" + limits + "}\n";
  return make_plan(load_job(text, "job.yaml", shipped_catalogue()), shipped_catalogue());
}

// With and without passages, with a layer that no figure judges, with and without an edge, over the frontier.
const std::vector<Plan>& plans() {
  const std::string varnish = "  - {name: varnish, role: remove, found: dammar_aged}\n";
  const std::string paint = "  - {name: oil paint, role: keep, found: oil_paint_old}\n";
  const std::string passages =
      "passages:\n  - {name: white cloth, of: oil paint}\n  - {name: red glaze, of: oil paint, suspected: [resinous]}\n"
      "  - {name: sky, of: oil paint}\n";
  static const std::vector<Plan> all = {
      plan_of(varnish + paint, "risk_limit: 0.3"),
      plan_of(varnish + paint + passages, "risk_limit: 0.6"),
      plan_of(varnish + "  - {name: tempera, role: keep, found: egg_tempera}\n" + paint, "risk_limit: 0.3"),
      plan_of(varnish + paint, "risk_limit: 0.3, edge_tests: 0"),
      plan_of(varnish + paint + passages, "risk_limit: 0.6, lines: 0, edge_tests: 3"),
  };
  return all;
}

std::size_t sessions_asked() {
  const char* asked = std::getenv("GENTLEST_SESSIONS");
  return asked ? static_cast<std::size_t>(std::atoll(asked)) : static_cast<std::size_t>(cases(2000));
}

}  // namespace

TEST_CASE("law: no session of readings makes the program break a rule of conduct") {
  for (const Plan& plan : plans()) REQUIRE(ladder_rungs(plan).size() > 2);
  const std::size_t count = sessions_asked();
  for (std::size_t number = 0; number < count; ++number) {
    ConductSession session(plans()[number % plans().size()], shipped_catalogue(), 20261126 + number);
    for (int test = 0; test < 20; ++test) {
      session.go_on();
      const std::string broken = session.broken_rule();
      if (broken.empty()) continue;
      std::string log;
      for (const Reading& one : session.readings())
        log += one.mixture + " | " + (one.at_edge ? "edge" : one.passage) + " | " +
               (one.removal ? std::string(to_word(*one.removal)) : "-") + " | " +
               (one.original ? std::string(to_word(*one.original)) : "-") + " | " + std::string(to_word(one.colour)) +
               " | " + one.looked_after + "\n";
      INFO("session " << number << "\n" << log);
      FAIL(broken);
    }
  }
}

TEST_CASE("law: what is proposed, beliefs and all, keeps the rules; a stop is one that they know") {
  for (int number = 0; number < cases(20); ++number) {
    const Plan& plan = plans()[static_cast<std::size_t>(number) % plans().size()];
    ConductSession session(plan, shipped_catalogue(), 779 + static_cast<std::uint64_t>(number));
    for (int test = 0; test < 12; ++test) {
      session.go_on();
      const Progress progress = follow_readings(plan, shipped_catalogue(), session.readings());
      const NextAnswer& next = progress.next;
      INFO("session " << number << ", test " << test);
      CHECK((next.kind == NextKind::ended) == progress.conduct.end.has_value());
      CHECK((next.kind == NextKind::test) == next.test.has_value());
      if (next.test) CHECK(session.broken_rule_of(*next.test) == "");
      if (next.test) CHECK(next.outlook->risk <= progress.task.settings.edge_risk);
      if (next.kind == NextKind::found) {
        REQUIRE(working_now(progress.conduct));
        CHECK(is_same_mixture(working_now(progress.conduct)->mixture, *next.mixture));
        CHECK(next.outlook->good >= progress.task.settings.found_at);
      }
      if (next.kind == NextKind::no_window) CHECK((session.has_tried_the_gentlest() || !next.too_risky.empty()));
      const std::string text = progress_report(plan, progress, std::nullopt, false, Form::text, {}, {});
      CHECK((text.rfind("HARM", 0) == 0) == !progress.conduct.harms.empty());
      if (progress.conduct.end) break;
    }
  }
}
