// The mistakes that people make in a job file, each with the message that it must get, word for word and alone:
// tests/bad/mistakes.tsv, changes to tests/bad/sound_job.yaml. The wanted words were written for a person who knows
// paintings and no YAML; the conversions in them are checked by hand: 24 in are 60.96 cm, 77 F are 25 C.
#include "cli/program.hpp"
#include "shipped.hpp"

#include "io/files.hpp"
#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <set>

using namespace gentlest;
using namespace gentlest::test;

namespace {

const std::string folder = std::string(GENTLEST_SOURCE_DIR) + "/tests/bad/";

struct Wanted {
  std::string place, message, remedy;
};

struct Mistake {
  int line = 0;  ///< of the table
  std::string what, piece, instead;
  std::vector<Wanted> wanted;  ///< empty: taken
};

std::string unescaped(const std::string& cell) {
  std::string text;
  for (std::size_t i = 0; i < cell.size(); ++i) {
    if (cell[i] != '\\') {
      text += cell[i];
      continue;
    }
    const char sign = cell.at(++i);
    if (sign == 'x') {
      text += static_cast<char>(std::stoi(cell.substr(i + 1, 2), nullptr, 16));
      i += 2;
    } else {
      text += sign == 'n' ? '\n' : sign == 't' ? '\t' : sign == 'r' ? '\r' : sign;
    }
  }
  return text;
}

std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> cells(1);
  for (const char c : line)
    if (c == '\t')
      cells.emplace_back();
    else
      cells.back() += c;
  for (std::string& cell : cells) cell = unescaped(cell);
  return cells;
}

std::vector<Mistake> all_mistakes() {
  std::vector<Mistake> mistakes;
  int number = 0;
  for (const std::string& line : lines_of(read_file(folder + "mistakes.tsv"))) {
    ++number;
    if (line.empty() || line.front() == '#') continue;
    const std::vector<std::string> cells = cells_of(line);
    if (cells.size() != 6) throw std::runtime_error("mistakes.tsv: six cells a line, not " + line);
    if (!cells[0].empty()) mistakes.push_back({number, cells[0], cells[1], cells[2], {}});
    if (cells[3] != "taken") mistakes.back().wanted.push_back({cells[3], cells[4], cells[5]});
  }
  return mistakes;
}

std::string text_of(const Mistake& mistake) {
  if (mistake.piece == "*") return mistake.instead;
  return replaced(read_file(folder + "sound_job.yaml"), mistake.piece, mistake.instead);
}

std::vector<Diagnostic> faults_told(const std::string& text) {
  try {
    load_job(as_text(text, "job.yaml"), "job.yaml", shipped_catalogue());
  } catch (const InputError& error) {
    CHECK(error.kind() == Fault::file);
    std::vector<Diagnostic> faults = error.faults();
    std::stable_sort(faults.begin(), faults.end(),
                     [](const Diagnostic& a, const Diagnostic& b) { return a.where < b.where; });
    return faults;
  }
  return {};
}

std::string place_of(const Diagnostic& fault) {
  return std::to_string(fault.where.line) + ":" + std::to_string(fault.where.column);
}

std::string said(const std::string& path, const std::vector<std::string>& more = {}) {
  std::vector<std::string> args = {"ladder", path};
  args.insert(args.end(), more.begin(), more.end());
  const Result result = call(args);
  CHECK(result.code == (more.empty() ? exit_file : exit_usage));
  CHECK(result.out.empty());
  return result.err;
}

}  // namespace

TEST_CASE("the job that the mistakes are made in is sound") {
  CHECK(faults_told(read_file(folder + "sound_job.yaml")).empty());
}

TEST_CASE("every mistake of the table gets its message, at its place, and no other", "[mistakes]") {
  const std::vector<Mistake> mistakes = all_mistakes();
  std::size_t faulty = 0;
  for (const Mistake& mistake : mistakes) {
    INFO("mistakes.tsv:" << mistake.line << ": " << mistake.what);
    const std::vector<Diagnostic> faults = faults_told(text_of(mistake));
    INFO(render(faults));
    faulty += mistake.wanted.empty() ? 0u : 1u;
    CHECK(faults.size() == mistake.wanted.size());
    for (std::size_t i = 0; i < std::min(faults.size(), mistake.wanted.size()); ++i) {
      CHECK(place_of(faults[i]) == mistake.wanted[i].place);
      CHECK(faults[i].message == mistake.wanted[i].message);
      CHECK(faults[i].remedy == mistake.wanted[i].remedy);
    }
  }
  CHECK(faulty >= 80);
}

TEST_CASE("what the parser says in its own words reaches nobody", "[mistakes]") {
  for (const Mistake& mistake : all_mistakes())
    for (const Diagnostic& fault : faults_told(text_of(mistake)))
      for (const char* word : {"YAML", "illegal", "not found", "unknown token", "flow", "scalar", "map value"}) {
        INFO("mistakes.tsv:" << mistake.line << ": " << fault.message);
        CHECK(fault.message.find(word) == std::string::npos);
      }
}

TEST_CASE("all mistakes of a file are told together", "[mistakes]") {
  std::string text = read_file(folder + "sound_job.yaml");
  text = replaced(text, "risk_limit: 0.25", "risk_limit: 25 %");
  text = replaced(text, "suspected: [resinous]", "suspected: resinous");
  text = replaced(text, "width_cm: 62", "width_cm: 62 cm");
  std::set<std::string> cures;
  for (const Diagnostic& fault : faults_told(text)) cures.insert(fault.remedy);
  CHECK(cures == std::set<std::string>{"write 0.25 for 25 %", "write [resinous]", "write 62, the unit is cm already"});
  text = replaced(read_file(folder + "sound_job.yaml"), "- acetone", "- acetonn");
  text = replaced(text, "risk_limit: 0.25", "risk_limit: 25");
  CHECK(faults_told(text).size() == 2);
}

TEST_CASE("a mistake reaches the screen with its line, its place and its cure", "[mistakes]") {
  const Folder job_folder;
  const std::string path = job_folder.file("job.yaml");
  const std::string sound = read_file(folder + "sound_job.yaml");
  write_file(path, replaced(sound, "    role: remove", "\trole: remove"));
  CHECK(said(path) ==
        path + ":11:1: error: a tab at the start of line 11\n    \trole: remove\n    ^\n    use spaces\n");
  write_file(path, replaced(sound, "    role: remove\n    found", "\trole: remove\n\tfound"));
  CHECK(holds(said(path), "a tab at the start of line 11, and at the start of 1 more below"));
  write_file(path, replaced(sound, "risk_limit: 0.25", "risk_limit: 25"));
  CHECK(holds(said(path), "27:15: error: risk_limit is 25, not between 0 and 1"));
  CHECK(holds(said(path), "did you mean 0.25?"));
}

TEST_CASE("another thing given in place of a job or a log is told as what it is", "[mistakes]") {
  const Folder other;
  const std::string log = other.file("easel.log");
  write_file(log, "{\"gentlest_log\":1}\n");
  CHECK(holds(said(log), "this is a log of tests, not a job"));
  CHECK(holds(said(other.file(".")), "this is a folder, not a file"));
  CHECK(holds(said(other.file(".")), "name the file inside it"));
  const std::string job = other.file("job.yaml");
  write_file(job, read_file(folder + "sound_job.yaml"));
  const Result result = call({"readings", job});
  CHECK(result.code == exit_file);
  CHECK(holds(result.err, "this is a job, not a log of tests"));
  CHECK(read_file(job) == read_file(folder + "sound_job.yaml"));
}

TEST_CASE("the command line gets the same cures as the file", "[mistakes]") {
  const auto cure = [](const char* option, const char* value) { return said("demo", {option, value}); };
  CHECK(holds(cure("--risk-limit", "25"), "did you mean 0.25?"));
  CHECK(holds(cure("--risk-limit", "25%"), "write 0.25 for 25 %"));
  CHECK(holds(cure("--risk-limit", "0,25"), "write 0.25, with a point instead of the comma"));
  CHECK(holds(cure("--vial", "10ml"), "write 10, the unit is mL already"));
  CHECK(holds(cure("--step", "0.05"), "did you mean 5?"));
  CHECK(holds(cure("--parts", "three"), "write 3"));
}
