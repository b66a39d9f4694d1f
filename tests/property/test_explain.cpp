// A figure explained can be done again from the page alone: a reader of its own takes the printed lines, reckons each
// and must come to the printed digits. It knows nothing of the program's own sums.
#include "gentlest/learning/reading.hpp"  // before the words of the report, whose names it shares

#include "demo_plan.hpp"
#include "near.hpp"
#include "scale.hpp"
#include "shipped.hpp"
#include "small_shelf.hpp"

#include "gentlest/liquids/recipe.hpp"
#include "gentlest/plan/check_job.hpp"
#include "report/form/format.hpp"
#include "report/worked/worked_report.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <stdexcept>

namespace gentlest::test {

namespace {

// Sums as a person reads them: brackets, powers, times and divided by, plus and minus.
class Reader {
 public:
  explicit Reader(std::string text) : text_(std::move(text)) {}

  double read() {
    const double value = sum();
    blanks();
    if (at_ != text_.size()) throw std::runtime_error("what is " + text_.substr(at_));
    return value;
  }

 private:
  void blanks() {
    while (at_ < text_.size() && text_[at_] == ' ') ++at_;
  }
  bool take(const std::string& sign) {
    blanks();
    if (text_.compare(at_, sign.size(), sign) != 0) return false;
    at_ += sign.size();
    return true;
  }
  double sum() {
    double value = product();
    for (;;) {
      if (take("+ "))
        value += product();
      else if (take("- "))
        value -= product();
      else
        return value;
    }
  }
  double product() {
    double value = power();
    for (;;) {
      if (take("x "))
        value *= power();
      else if (take("/ "))
        value /= power();
      else
        return value;
    }
  }
  double power() {
    const double value = one();
    return take("^2") ? value * value : value;
  }
  double called(double (*function)(double)) {
    const double value = sum();
    if (!take(")")) throw std::runtime_error("no bracket");
    return function(value);
  }
  double one() {
    blanks();
    if (take("sqrt(")) return called([](double x) { return std::sqrt(x); });
    if (take("exp(")) return called([](double x) { return std::exp(x); });
    if (take("ten_to(")) return called([](double x) { return std::pow(10.0, x); });
    if (take("ln(")) return called([](double x) { return std::log(x); });
    if (take("max(")) {
      double most = sum();
      while (take(",")) most = std::max(most, sum());
      if (!take(")")) throw std::runtime_error("no bracket");
      return most;
    }
    if (take("(")) return called([](double x) { return x; });
    std::size_t used = 0;
    const double value = std::stod(text_.substr(at_), &used);
    at_ += used;
    return value;
  }

  std::string text_;
  std::size_t at_ = 0;
};

struct Line {
  std::string title, sum, result, printed;
};

// Bullets of the page, each on one line again; those with a sum in them.
std::vector<Line> lines_in(const std::string& page) {
  std::vector<std::string> bullets;
  std::istringstream in(page);
  for (std::string line; std::getline(in, line);) {
    if (line.rfind("  - ", 0) == 0)
      bullets.push_back(line.substr(4));
    else if (line.rfind("    ", 0) == 0 && !bullets.empty())
      bullets.back() += " " + line.substr(4);
    else
      bullets.emplace_back();
  }
  static const std::regex shape("^(.*): ([^:=]*) = (-?[0-9]+\\.?[0-9]*)([^,;]*)(;[^,]*)?(, printed as (.*))?$");
  std::vector<Line> lines;
  for (const std::string& bullet : bullets) {
    std::smatch found;
    if (std::regex_match(bullet, found, shape)) lines.push_back({found[1], found[2], found[3], found[7]});
  }
  return lines;
}

std::size_t decimals(const std::string& number) {
  const std::size_t point = number.find('.');
  return point == std::string::npos ? 0 : number.size() - point - 1;
}

std::set<std::string> numbers_in(const std::string& text) {
  static const std::regex number("-?[0-9]+\\.?[0-9]*");
  std::set<std::string> found;
  for (auto it = std::sregex_iterator(text.begin(), text.end(), number); it != std::sregex_iterator(); ++it)
    found.insert(it->str());
  return found;
}

// Every line comes out as printed, and what is printed elsewhere is its rounding.
void check_lines(const std::vector<Line>& lines) {
  for (const Line& line : lines) {
    INFO(line.title << ": " << line.sum);
    CHECK(fixed(Reader(line.sum).read(), static_cast<int>(decimals(line.result))) == line.result);
  }
}

// The numbers of a sum stand above it: as results, or as what was put in.
void check_origin(const std::string& page, const std::vector<Line>& lines) {
  const std::set<std::string> constants = {"0", "1", "2", "4", "9", "100", "273.15"};
  const std::size_t from = page.find("Put in");
  REQUIRE(from != std::string::npos);
  std::set<std::string> known = numbers_in(page.substr(from, page.find("\n\n", from) - from));
  for (const Line& line : lines) {
    INFO(line.title << ": " << line.sum);
    const bool is_table = line.title.find("table of the averaged") == 0 || line.title.find("what place") == 0;
    for (const std::string& number : numbers_in(line.sum))
      if (!is_table && constants.count(number) == 0 && line.sum.find("^2") == std::string::npos)
        CHECK(known.count(number) == 1);
    known.insert(line.result);
  }
}

const Line* line_of(const std::vector<Line>& lines, const std::string& title) {
  for (const Line& line : lines)
    if (line.title.rfind(title, 0) == 0) return &line;
  return nullptr;
}

std::string full_page(WorkedSums sums) {
  const WorkedCase one{Explained::mixture, {}, std::move(sums), {}, {}};
  return worked_report(one, true, Form::text, {}, {"test", "test", {}});
}

// The last figures of the page are what the other commands print.
void check_verdict(const std::vector<Line>& lines, const JudgedMixture& judged,
                   const std::vector<PlannedLayer>& layers) {
  REQUIRE(!lines.empty());
  if (judged.effect) CHECK(line_of(lines, "EFFECT")->printed == per_cent(*judged.effect));
  if (judged.risk) {
    CHECK(line_of(lines, "RISK")->printed == per_cent(*judged.risk));
    CHECK(lines.back().title.rfind("RISK", 0) == 0);
    CHECK(std::stod(lines.back().result) == near(100 * *judged.risk, 100 * slack_of_sums));
  }
  for (std::size_t i = 0; i < layers.size(); ++i) {
    if (!judged.outlooks[i]) continue;
    const Line* RED = line_of(lines, "RED, " + layers[i].name);
    REQUIRE(RED);
    CHECK(RED->printed == fixed(judged.outlooks[i]->RED, 2));
    CHECK(std::stod(RED->result) == near(judged.outlooks[i]->RED, slack_of_sums));
    const Line* chance = line_of(lines, "chance by the table, " + layers[i].name);
    REQUIRE(chance);
    CHECK(std::stod(chance->result) == near(judged.outlooks[i]->chance, slack_of_sums));
    const Line* by_hand = line_of(lines, "mean of the 9 slices, a check by hand, " + layers[i].name);
    REQUIRE(by_hand);
    CHECK(std::stod(by_hand->result) == near(judged.outlooks[i]->chance, 0.02));
  }
}

template <class Record, class Wanted>
const Record& any_of_records(Dice& dice, const std::vector<Record>& records, Wanted wanted) {
  for (;;) {
    const Record& record = records[static_cast<std::size_t>(dice.pick(0, static_cast<int>(records.size()) - 1))];
    if (wanted(record)) return record;
  }
}

Job random_job(Dice& dice) {
  const Catalogue& catalogue = shipped_catalogue();
  const auto with_sphere = [](const Material& material) { return material.sphere.has_value(); };
  Job job;
  job.file = "test";
  const char* names[] = {"varnish", "paint", "retouching"};
  const int layers = dice.pick(2, 3);
  for (int i = 0; i < layers; ++i) {
    Layer layer;
    layer.name = names[i];
    layer.role = i == 0 ? Role::remove : Role::keep;
    layer.found = any_of_records(dice, catalogue.materials(), with_sphere).id;
    job.layers.push_back(layer);
  }
  const auto usable = [](const Solvent& solvent) { return solvent.hansen && solvent.family != "water"; };
  for (int i = 0; i < 3; ++i) {
    const std::string id = any_of_records(dice, catalogue.solvents(), usable).id;
    if (std::none_of(job.shelf.begin(), job.shelf.end(), [&](const ShelfBottle& one) { return one.solvent == id; }))
      job.shelf.push_back({id, {}, {}});
  }
  job.shelf.push_back({"ethanol", "96 %", {}});
  job.limits.vial_mL = dice.pick(3, 20);
  job.limits.measure_mL = dice.pick(0, 1) == 0 ? 0.1 : 0.5;
  return job;
}

Mixture random_mixture(Dice& dice, const Job& job) {
  const std::vector<Liquid> bottles = all_liquids(shelf_of(job, shipped_catalogue()));
  std::map<std::size_t, int> shares;
  const auto last = static_cast<int>(bottles.size()) - 1;
  for (int left = 100; left > 0;) {
    const int share = std::min(left, dice.pick(1, 100));
    shares[static_cast<std::size_t>(dice.pick(0, last))] += share;
    left -= share;
  }
  std::vector<Part> parts;
  for (const auto& [bottle, share] : shares) parts.push_back({bottles[bottle], share / 100.0});
  return Mixture(std::move(parts));
}

}  // namespace

TEST_CASE("the reader of sums reads as a person does") {
  CHECK(Reader("1 + 2 x 3^2 - 8 / 4 / 2").read() == near(18, 1e-12));
  CHECK(Reader("2 - (-3) x (1 + 1)").read() == near(8, 1e-12));
  CHECK(Reader("max(1, sqrt(16), ln(exp(2))) - ten_to(0)").read() == near(3, 1e-12));
  CHECK(Reader("0 - 3^2").read() == near(-9, 1e-12));
  CHECK_THROWS(Reader("1 + 2 )").read());
}

TEST_CASE("any mixture explained can be reckoned again from the page, and ends with what the program prints") {
  Dice dice(1616);
  const Catalogue& catalogue = shipped_catalogue();
  std::size_t seen = 0;
  for (int round = 0; round < cases(8); ++round) {
    const Job job = random_job(dice);
    if (!check_job(job, catalogue).empty()) continue;
    const Mixture mixture = random_mixture(dice, job);
    const std::vector<PlannedLayer> layers = planned_layers(job, catalogue);
    const JudgedMixture judged = judge_mixture(mixture, layers, job.limits, catalogue);
    const WorkedSums sums = work_mixture(mixture, layers, job, catalogue);
    for (const SumStep& step : sums.steps) {
      const double unit = step.kind == StepKind::effect || step.kind == StepKind::risk ? 100 : 1;
      if (step.printed_as != PrintedAs::nowhere)
        CHECK(step.result.value == near(unit * step.printed, 10 * unit * slack_of_sums));
    }
    const std::string page = full_page(sums);
    const std::vector<Line> lines = lines_in(page);
    INFO(page);
    CHECK(lines.size() >= 8 + layers.size() * 25);
    check_lines(lines);
    check_origin(page, lines);
    check_verdict(lines, judged, layers);
    const Recipe recipe = round_recipe(mixture, {{job.limits.vial_mL}, {job.limits.measure_mL}});
    for (const RecipeLine& one : recipe.lines)
      CHECK(line_of(lines, "to measure, " + one.liquid.label)->printed == as_recorded(one.volume.value));
    ++seen;
  }
  CHECK(seen > static_cast<std::size_t>(cases(8)) / 2);
}

TEST_CASE("every rung of the demo explained ends with the figures of the ladder") {
  const Plan& plan = demo_plan();
  REQUIRE(!ladder_rungs(plan).empty());
  for (const std::size_t at : {std::size_t{0}, ladder_rungs(plan).size() - 1}) {
    const JudgedMixture& rung = ladder_rungs(plan)[at];
    const std::vector<Line> lines = lines_in(full_page(work_rung(rung, plan, shipped_catalogue())));
    check_lines(lines);
    check_verdict(lines, rung, plan.layers);
    // The rung's own table, not that of the mixture alone: what the ladder prints, to the last bits.
    CHECK(std::stod(line_of(lines, "EFFECT")->result) == near(100 * *rung.effect, 2e-6));
    CHECK(std::stod(line_of(lines, "RISK")->result) == near(100 * *rung.risk, 2e-6));
  }
}

TEST_CASE("a flash point and a label explained can be reckoned again from the page") {
  Dice dice(99);
  const Catalogue& catalogue = shipped_catalogue();
  std::size_t flames = 0, statements = 0;
  for (int round = 0; round < cases(60); ++round) {
    const Job job = random_job(dice);
    if (!check_job(job, catalogue).empty()) continue;
    const Mixture mixture = random_mixture(dice, job);
    const Mixture made = round_recipe(mixture, {{job.limits.vial_mL}, {job.limits.measure_mL}}).as_measured;
    const FlashPoint flash = flash_point(made, catalogue);
    const WorkedCase fire{Explained::flash_point, {}, work_flash_point(mixture, job, catalogue), {}, flash};
    const std::vector<Line> lines = lines_in(worked_report(fire, true, Form::text, {}, {"test", "test", {}}));
    check_lines(lines);
    if (flash.basis == FlashBasis::activity) {
      ++flames;
      REQUIRE(line_of(lines, "FLASH POINT"));
      CHECK(line_of(lines, "FLASH POINT")->printed == fixed(flash.estimate->value, 0));
      CHECK(std::stod(line_of(lines, "FLASH POINT")->result) == near(flash.estimate->value, 1e-5));
      CHECK(std::stod(line_of(lines, "all shares together")->result) == near(1, 2e-5));
    } else {
      CHECK(!line_of(lines, "FLASH POINT"));
    }
    const MixtureLabel label = label_of(made, catalogue);
    const WorkedCase paper{Explained::label, {}, work_label(mixture, job, catalogue), label, {}};
    const std::string page = worked_report(paper, true, Form::text, {}, {"test", "test", {}});
    const std::vector<Line> weights = lines_in(page);
    check_lines(weights);
    double all = 0;
    for (const Line& line : weights)
      if (line.title.rfind("share by weight", 0) == 0) all += std::stod(line.result);
    if (all > 0) CHECK(all == near(100, 1e-4));
    for (const LabelStatement& statement : label.statements) {
      CHECK(page.find(statement.code + ": ") != std::string::npos);
      if (line_of(weights, "parts that carry it, " + statement.code)) ++statements;
    }
  }
  CHECK(flames > static_cast<std::size_t>(cases(60)) / 12);
  CHECK(statements > static_cast<std::size_t>(cases(60)) / 4);
}

}  // namespace gentlest::test
