#include "io/yaml_reader.hpp"

#include <catch2/catch.hpp>

using namespace gentlest;

namespace {

std::string faults_of(YamlFile& file) {
  return render(file.faults());
}

}  // namespace

TEST_CASE("a tree keeps the place of everything") {
  YamlFile file("f", "a: 1\nlist:\n  - x\n  - {k: \"2\"}\n");
  REQUIRE(file.faults().empty());
  const auto& entries = file.root().entries;
  REQUIRE(entries.size() == 2);
  CHECK(entries[0].key == "a");
  CHECK(entries[0].value.text == "1");
  CHECK(entries[1].line == 2);
  REQUIRE(entries[1].value.items.size() == 2);
  CHECK(entries[1].value.items[0].line == 3);
  CHECK(entries[1].value.items[0].column == 5);
  const YamlNode& quoted = entries[1].value.items[1].entries[0].value;
  CHECK(quoted.quoted);
  CHECK(quoted.text == "2");
}

TEST_CASE("numbers are strict") {
  struct Case {
    const char* text;
    const char* complaint;  // empty: a number
  };
  const Case cases[] = {{"12.5", ""},
                        {"-3", ""},
                        {"1e-3", ""},
                        {"+4", ""},
                        {"0,5", "point instead of the comma"},
                        {".nan", "must be a number"},
                        {".inf", "must be a number"},
                        {"nan", "must be a number"},
                        {"0x10", "must be a number"},
                        {"1e999", "must be a number"},
                        {"1 2", "must be a number"},
                        {"\"5\"", "leave the quotes out"},
                        {"[1]", "not a list"},
                        {"", "nothing stands behind"},
                        {"~", "nothing stands behind"}};
  for (const Case& c : cases) {
    INFO(c.text);
    YamlFile file("f", std::string("n: ") + c.text + "\n");
    YamlMap map(file, file.root(), "record");
    map.number("n");
    if (std::string(c.complaint).empty())
      CHECK(file.faults().empty());
    else
      CHECK(faults_of(file).find(c.complaint) != std::string::npos);
  }
}

TEST_CASE("whole numbers, truths and ranges are strict") {
  YamlFile file("f", "a: 1.5\nb: yes\nc: 7\nd: true\n");
  YamlMap map(file, file.root(), "record");
  map.whole("a");
  map.truth("b", false);
  map.whole_within("c", 1, 4);
  CHECK(map.truth("d", false));
  CHECK(map.truth("absent", true));
  CHECK(faults_of(file) ==
        "f:1:4: error: a must be a whole number, not 1.5\n    a: 1.5\n       ^\n"
        "f:2:4: error: b must be true or false, not \"yes\"\n    b: yes\n       ^\n    write true\n"
        "f:3:4: error: c is 7, outside 1 to 4\n    c: 7\n       ^\n");
}

TEST_CASE("unknown, missing and doubled keys are faults") {
  YamlFile file("f", "nme: x\nrole: keep\n");
  YamlMap map(file, file.root(), "layer");
  map.need_text("name");
  map.text("role");
  map.done();
  const std::string text = faults_of(file);
  CHECK(text.find("lacks") == std::string::npos);  // misspelt, which is told once
  CHECK(text.find("f:1:1: error: layer has no key \"nme\"") != std::string::npos);
  CHECK(text.find("did you mean \"name\"?") != std::string::npos);
  YamlFile doubled("f", "a: 1\nb: 2\na: 3\n");
  CHECK(faults_of(doubled).find("f:3:1: error: \"a\" stands here twice") != std::string::npos);
}

TEST_CASE("what YAML allows and we do not is a fault with its place") {
  struct Case {
    const char* text;
    const char* complaint;
  };
  const Case cases[] = {{"a: &x 1\nb: *x\n", "anchors"},
                        {"a: !!str 1\n", "tags"},
                        {"<<: {a: 1}\n", "merge keys"},
                        {"a: 1\n---\nb: 2\n", "second document"},
                        {"", "empty"},
                        {"# only a remark\n", "empty"},
                        {"a: [1, 2\n", "this bracket is never closed"},
                        {"a: \"open\n", "this quote is never closed"},
                        {"a: 1\n\tb: 2\n", "a tab at the start of line 2"},
                        {"? [1, 2]\n: 3\n", "plain word"},
                        {"a: b: c\n", "write a: \"b: c\""}};
  for (const Case& c : cases) {
    INFO(c.text);
    YamlFile file("f", c.text);
    REQUIRE_FALSE(file.faults().empty());
    CHECK(faults_of(file).find(c.complaint) != std::string::npos);
    CHECK(file.faults()[0].where.line >= 1);
  }
}

TEST_CASE("brackets without end do not overflow the stack") {
  YamlFile file("f", std::string(200000, '['));
  CHECK_FALSE(file.faults().empty());
}

TEST_CASE("control characters do not reach the screen") {
  YamlFile file("f", "title: \"a\\e[31m\"\n");
  YamlMap map(file, file.root(), "object");
  CHECK(map.text("title").empty());
  CHECK(faults_of(file).find("control characters") != std::string::npos);
}
