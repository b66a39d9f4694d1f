// Where results go: whole files or none, never over the input, broken streams noticed, Ctrl-C obeyed.
#include "program.hpp"

#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <streambuf>

namespace gentlest::test {

namespace {

// Takes a few bytes and then fails, as a full disk does.
class FullDisk : public std::streambuf {
 protected:
  int_type overflow(int_type c) override { return room_-- > 0 ? c : traits_type::eof(); }

 private:
  int room_ = 100;
};

}  // namespace

TEST_CASE("the option --output replaces the file in one step and leaves nothing beside it") {
  const Folder folder;
  const std::string file = folder.file("plan.txt");
  write_file(file, "an older plan");
  const Result result = call({"ladder", "demo", "--full", "--output", file});
  CHECK(result.code == 0);
  CHECK(result.out.empty());
  CHECK(read_file(file) == call({"ladder", "demo", "--full"}, {}, page_of(usual_width)).out);
  CHECK(folder.count() == 1);
}

TEST_CASE("a command that fails leaves the old file as it was") {
  const Folder folder;
  const std::string file = folder.file("plan.txt");
  write_file(file, "an older plan");
  for (const std::vector<std::string>& args : {std::vector<std::string>{"ladder", "/nowhere.yaml", "--full"},
                                               {"show", "ethnol"},
                                               {"mixture", "demo", "ethanol 130"},
                                               {"ladder", "demo", "--full", "--target", "nothing"}}) {
    std::vector<std::string> with_output = args;
    with_output.insert(with_output.end(), {"--output", file});
    CHECK(call(with_output).code >= 2);
    CHECK(read_file(file) == "an older plan");
  }
  CHECK(folder.count() == 1);
}

TEST_CASE("no window is an answer and is written") {
  const Folder folder;
  const std::string file = folder.file("plan.txt");
  CHECK(call({"ladder", "demo", "--full", "--risk-limit", "0.01", "-o", file}).code == 1);
  CHECK(holds(read_file(file), "No window."));
}

TEST_CASE("a result never replaces the job it was made from") {
  const Folder folder;
  const std::string job = folder.file("easel.yaml");
  write_file(job, demo_job_text());
  const Result result = call({"ladder", job, "--full", "--output", folder.file("./easel.yaml")});
  CHECK(result.code == 2);
  CHECK(holds(result.err, "easel.yaml is a file that this command works with"));
  CHECK(read_file(job) == demo_job_text());
}

TEST_CASE("bold never goes into a file") {
  const Folder folder;
  Surroundings terminal;
  terminal.bold = true;
  REQUIRE(call({"ladder", "demo", "--full", "-o", folder.file("plan.txt")}, {}, terminal).code == 0);
  CHECK_FALSE(holds(read_file(folder.file("plan.txt")), "\033"));
}

TEST_CASE("standard output that cannot be written is reported") {
  FullDisk disk;
  std::ostream out(&disk);
  std::istringstream in;
  std::ostringstream err;
  CHECK(run({"ladder", "demo", "--full"}, in, out, err) == 3);
  CHECK(holds(err.str(), "standard output could not be written to the end"));
}

TEST_CASE("new writes a job that plans, and does not replace a file unasked") {
  const Folder folder;
  const std::string file = folder.file("easel.yaml");
  CHECK(call({"new", file}).code == 0);
  CHECK(read_file(file) == job_template());
  CHECK(call({"ladder", file, "--full"}).code <= 1);
  write_file(file, "hours of work");
  const Result refused = call({"new", file});
  CHECK(refused.code == 2);
  CHECK(holds(refused.err, "exists already"));
  CHECK(holds(refused.err, "--force"));
  CHECK(read_file(file) == "hours of work");
  CHECK(call({"new", file, "--data", "/nowhere", "--force"}).code == 3);
  CHECK(read_file(file) == "hours of work");
  CHECK(call({"new", file, "--force"}).code == 0);
  CHECK(read_file(file) == job_template());
}

TEST_CASE("Ctrl-C ends the work with 130 and writes nothing") {
  const Folder folder;
  const std::string file = folder.file("plan.txt");
  write_file(file, "an older plan");
  Surroundings surroundings;
  surroundings.interrupted = [] { return true; };
  const Result result = call({"ladder", "demo", "--full", "--output", file}, {}, surroundings);
  CHECK(result.code == 130);
  CHECK(holds(result.err, "interrupted"));
  CHECK(read_file(file) == "an older plan");
}

TEST_CASE("the job may come from standard input") {
  CHECK(call({"ladder", "-", "--full"}, demo_job_text()).out == call({"ladder", "demo", "--full"}).out);
  const Result bad = call({"ladder", "-", "--full"}, "gentlest_job: 1\nlayers: [\n");
  CHECK(bad.code == 3);
  CHECK(holds(bad.err, "standard input:"));
  CHECK(call({"ladder", "-", "--full"}, std::string(9u << 20, '#')).code == 3);
}

TEST_CASE("the same call gives the same bytes") {
  for (const char* form : {"text", "csv", "json"})
    CHECK(call({"ladder", "demo", "--full", "--format", form}).out ==
          call({"ladder", "demo", "--full", "--format", form}).out);
}

}  // namespace gentlest::test
