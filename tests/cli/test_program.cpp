// The built program as a process: streams, terminal, signals.
#include "program.hpp"

#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <fcntl.h>
#include <signal.h>
#include <unistd.h>

namespace gentlest::test {

namespace {

// What the program writes when its standard output is a terminal.
std::string on_a_terminal(const std::string& environment) {
  const int master = posix_openpt(O_RDWR | O_NOCTTY);
  if (master < 0 || grantpt(master) != 0 || unlockpt(master) != 0) throw std::runtime_error("no pseudo terminal");
  const std::string name = ptsname(master);
  const int keep_open = open(name.c_str(), O_RDWR | O_NOCTTY);
  FILE* process = popen((environment + " " + GENTLEST_PROGRAM + " version > /dev/null; " + environment + " " +
                         GENTLEST_PROGRAM + " list families > " + name)
                            .c_str(),
                        "r");
  std::string text;
  char piece[4096];
  while (!holds(text, "catalogue")) {
    const ssize_t got = read(master, piece, sizeof piece);
    if (got <= 0) break;
    text.append(piece, static_cast<std::size_t>(got));
  }
  pclose(process);
  close(keep_open);
  close(master);
  return text;
}

}  // namespace

TEST_CASE("the process leaves with the exit code of its answer") {
  CHECK(shell("PROGRAM ladder demo").code == 0);
  CHECK(shell("PROGRAM ladder demo --risk-limit 0.01").code == 1);
  CHECK(shell("PROGRAM laddr demo 2>/dev/null").code == 2);
  CHECK(shell("PROGRAM ladder /nowhere.yaml 2>/dev/null").code == 3);
  CHECK(shell("PROGRAM").code == 0);
}

TEST_CASE("results and messages keep to their streams") {
  CHECK(shell("PROGRAM ladder demo 2>/dev/null").out == call({"ladder", "demo"}, {}, page_of(usual_width)).out);
  CHECK(shell("PROGRAM ladder demo 2>&1 >/dev/null").out.empty());
  CHECK(shell("PROGRAM laddr 2>/dev/null").out.empty());
  CHECK(holds(shell("PROGRAM laddr 2>&1 >/dev/null").out, "did you mean"));
}

TEST_CASE("headings are bold on a terminal only, and not with NO_COLOR or a dumb one") {
  CHECK(holds(on_a_terminal("NO_COLOR= TERM=xterm"), "\033[1m"));
  CHECK_FALSE(holds(on_a_terminal("NO_COLOR=1 TERM=xterm"), "\033"));
  CHECK_FALSE(holds(on_a_terminal("NO_COLOR= TERM=dumb"), "\033"));
  CHECK_FALSE(holds(shell("NO_COLOR= TERM=xterm PROGRAM list families").out, "\033"));
}

TEST_CASE("a full disk is noticed, a closed pipe passes in silence") {
  if (access("/dev/full", W_OK) == 0) {
    const Result full = shell("PROGRAM list solvents 2>&1 >/dev/full");
    CHECK(full.code == 3);
    CHECK(holds(full.out, "standard output could not be written"));
  }
  const Folder folder;
  shell("{ sleep 0.3; PROGRAM list solvents 2>" + folder.file("said") + "; echo $? > " + folder.file("code") +
        "; } | true");
  CHECK(read_file(folder.file("code")) == "0\n");
  CHECK(read_file(folder.file("said")).empty());
}

TEST_CASE("with a closed standard output a reading goes into the log, and that is said") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  const Result result = shell("PROGRAM record demo " + log + " 'mixture=acetone 100' 'removal=no effect' 2>&1 >&-");
  CHECK(result.code == 3);
  CHECK(holds(result.out, "test 1 is in the log"));
  CHECK(lines_of(read_file(log)).size() == 2);
}

TEST_CASE("Ctrl-C while the job is read leaves with 130") {
  int ends[2];
  REQUIRE(pipe(ends) == 0);
  const pid_t child = fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    dup2(ends[0], STDIN_FILENO);
    const int nowhere = open("/dev/null", O_WRONLY);
    dup2(nowhere, STDOUT_FILENO);
    dup2(nowhere, STDERR_FILENO);
    close(ends[1]);
    execl(GENTLEST_PROGRAM, GENTLEST_PROGRAM, "ladder", "-", static_cast<char*>(nullptr));
    _exit(99);
  }
  close(ends[0]);
  // More than a pipe holds: when this returns, the program is reading and its handler stands.
  const std::string comment(1u << 18, '#');
  REQUIRE(write(ends[1], comment.data(), comment.size()) == static_cast<ssize_t>(comment.size()));
  REQUIRE(kill(child, SIGINT) == 0);
  close(ends[1]);
  int status = 0;
  REQUIRE(waitpid(child, &status, 0) == child);
  REQUIRE(WIFEXITED(status));
  CHECK(WEXITSTATUS(status) == 130);
}

}  // namespace gentlest::test
