// Edits of a job's text: over generated jobs every edit gives what it says and nothing else changes by a byte, hostile text
// comes back as it was, and the native program (GENTLEST_PROGRAM) takes the result.
//   node --test tests/page/job_document.test.mjs
import assert from "node:assert/strict";
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { test } from "node:test";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "../..");
const need = createRequire(join(root, "src/page/package.json"));
const { buildSync } = need("esbuild");
const YAML = need("yaml");

const folder = mkdtempSync(join(tmpdir(), "job-document-"));
process.on("exit", () => rmSync(folder, { recursive: true }));

function loaded(file) {
  const out = join(folder, `${file.replace(/\W/g, "_")}.mjs`);
  buildSync({ entryPoints: [join(root, "src/page", file)], bundle: true, format: "esm", outfile: out, logLevel: "error" });
  return import(out);
}
const job = await loaded("job/document.ts");
const places = await loaded("job/fault_places.ts");

// A small generator of its own: the same numbers on every machine.
function seeded(seed) {
  let state = seed;
  const next = () => (state = (Math.imul(state, 1664525) + 1013904223) >>> 0) / 2 ** 32;
  return { next, below: (n) => Math.floor(next() * n), chance: (p) => next() < p, of: (list) => list[Math.floor(next() * list.length)] };
}

const words = ["varnish", "oil paint", "\"red: glaze\"", "'it''s'", "Öl", "\"two\\nlines\"", "retouching # 2", "\"#5\""];

function generated(seed) {
  const some = seeded(seed);
  const eol = some.chance(0.3) ? "\r\n" : "\n";
  const remark = () => (some.chance(0.3) ? `   # remark ${some.below(100)}` : "");
  const own = () => (some.chance(0.3) ? [`  # a line of its own: ${some.below(100)}`] : []);
  const pad = some.chance(0.2) ? "" : "  ";
  const layers = ["varnish", "oil paint", "ground"].slice(0, 1 + some.below(3)).flatMap((name, i) => [
    ...own(), `${pad}- name: ${some.chance(0.3) ? JSON.stringify(name) : name}${remark()}`, `${pad}  role: ${i === 0 ? "remove" : "keep"}${remark()}`,
    ...(some.chance(0.5) ? [`${pad}  recorded: mastic_aged${remark()}`] : []), `${pad}  found: ${i === 0 ? "dammar_aged" : "oil_paint_old"}${remark()}`,
    ...(some.chance(0.3) ? [`${pad}  suspected: [resinous, waxy]${remark()}`] : some.chance(0.3) ? [`${pad}  suspected:`, `${pad}    - resinous`] : []),
    ...(some.chance(0.4) ? [`${pad}  note: |`, `${pad}    first`, `${pad}    second`] : [`${pad}  note: ""`]),
    ...(some.chance(0.3) ? [""] : []),
  ]);
  const bottles = ["isooctane", "{solvent: ethanol, grade: \"96 %\"}", "acetone", "{solvent: butanone, at_most_percent: 30}", "ethyl_acetate"]
    .filter(() => some.chance(0.8));
  const shelf = bottles.length === 0 ? [some.chance(0.5) ? "shelf: []" : "shelf:"]
    : some.chance(0.2) ? [`shelf: [${bottles.join(", ")}]${remark()}`]
    : ["shelf:", ...bottles.flatMap((bottle) => [...own(), `${pad}- ${bottle}${remark()}`])];
  const passages = some.chance(0.3) ? [] : some.chance(0.3) ? ["passages: []"]
    : ["passages:", `  - {name: white, of: varnish}${remark()}`, "  - name: sky", "    of: varnish", ...own()];
  const limits = some.chance(0.3) ? [] : ["limits:", `  parts: 3${remark()}`, "  risk_limit: 0.25", "  avoid_statements: [H340, H350]"];
  const lines = ["# A job", "gentlest_job: 1", "", "object:", `  title: ${some.of(words)}`, `  width_cm: 62${remark()}`, "  owner_number:", "  height_cm: 48.50",
    "", "layers:", ...layers, ...(some.chance(0.5) ? ["", "# of the colours"] : []), ...passages, "", ...shelf, ...limits];
  return (some.chance(0.2) ? "\uFEFF" : "") + lines.join(eol) + (some.chance(0.8) ? eol : "");
}

const count = 150;
const jobs = Array.from({ length: count }, (_, i) => generated(i + 1));
const valueOf = (text) => {
  const document = YAML.parseDocument(text.replace(/^\uFEFF/, ""));
  assert.deepEqual(document.errors, [], text);
  return document.toJS();
};
// Nothing but the edit: what differs is one piece, the lines in front of and behind it stand as they were.
function changedLines(before, after) {
  const [a, b] = [before.split("\n"), after.split("\n")];
  let front = 0;
  while (front < a.length && front < b.length && a[front] === b[front]) ++front;
  let back = 0;
  while (back < a.length - front && back < b.length - front && a[a.length - 1 - back] === b[b.length - 1 - back]) ++back;
  return { gone: a.slice(front, a.length - back), come: b.slice(front, b.length - back) };
}

test("reading changes nothing, and every job is readable", () => {
  for (const text of jobs) assert.ok(job.readJob(text).isReadable, text);
});

test("a field set and set back gives the same bytes", () => {
  for (const text of jobs) {
    const { object, layers } = job.readJob(text);
    for (const [path, was, now] of [[["object", "title"], object.title, "Another: title"], [["layers", 0, "found"], layers[0].found, "mastic_aged"],
      [["layers", 0, "role"], layers[0].role, "keep"]]) {
      const edited = job.setText(text, path, now);
      assert.equal(YAML.parseDocument(edited.replace(/^\uFEFF/, "")).getIn(path), now);
      const { gone, come } = changedLines(text, edited);
      assert.ok(gone.length === 1 && come.length === 1, `${gone} -> ${come}`);
      assert.deepEqual(valueOf(job.setText(edited, path, was)), valueOf(text));
    }
    const moved = job.setNumber(job.setNumber(text, ["object", "width_cm"], "62,5"), ["object", "width_cm"], "62");
    assert.equal(moved, text);
  }
});

test("a limit taken in and taken out gives the same text or value", () => {
  for (const text of jobs) {
    const edited = job.setLimit(text, "rungs", "9");
    assert.equal(valueOf(edited).limits.rungs, 9);
    assert.deepEqual(valueOf(job.setLimit(edited, "rungs", undefined)), valueOf(text));
    assert.deepEqual(valueOf(job.setLimit(text, "avoid_families", ["chlorinated", "aromatic hydrocarbon"])).limits.avoid_families, ["chlorinated", "aromatic hydrocarbon"]);
    assert.equal(valueOf(job.setLimit(text, "prefer_healthier", true)).limits.prefer_healthier, true);
  }
});

test("layers moved there and back give the same bytes", () => {
  for (const text of jobs) {
    const { layers } = job.readJob(text);
    for (let i = 1; i < layers.length; ++i) {
      const moved = job.moveLayer(text, i, 0);
      assert.deepEqual(job.readJob(moved).layers.map((one) => one.name), [layers[i].name, ...layers.filter((_, j) => j !== i).map((one) => one.name)]);
      assert.equal(job.moveLayer(moved, 0, i), text);
    }
  }
});

test("a layer, a passage and a bottle added and removed give the same value, and touch no other line", () => {
  for (const text of jobs) {
    const { layers, passages, shelf } = job.readJob(text);
    for (const [add, remove] of [[(t) => job.addLayer(t, "glaze", "keep"), (t) => job.removeLayer(t, layers.length)],
      [(t) => job.addPassage(t, "red: cloth", "varnish"), (t) => job.removePassage(t, passages.length)],
      [(t) => job.addBottle(t, "toluene"), (t) => job.removeBottle(t, shelf.length)]]) {
      const added = add(text);
      assert.ok(changedLines(text, added).gone.length <= 1, changedLines(text, added).gone.join("\n"));
      const before = valueOf(text);
      for (const key of ["passages", "shelf"]) before[key] ??= [];
      const after = valueOf(remove(added));
      for (const key of ["passages", "shelf"]) after[key] ??= [];
      assert.deepEqual(after, before);
    }
  }
});

test("a removed bottle takes its line and no other", () => {
  for (const text of jobs) {
    const { shelf } = job.readJob(text);
    for (let i = 0; i < shelf.length; ++i) {
      const left = job.readJob(job.removeBottle(text, i)).shelf;
      assert.deepEqual(left, shelf.filter((_, j) => j !== i));
    }
  }
});

test("the grade of a bottle makes a map of a word and a word of a map", () => {
  for (const text of jobs) {
    const at = job.readJob(text).shelf.findIndex((one) => one.solvent === "acetone");
    if (at < 0) continue;
    const graded = job.setBottle(text, ["shelf", at], "grade", "99 %");
    assert.deepEqual(valueOf(graded).shelf[at], { solvent: "acetone", grade: "99 %" });
    assert.equal(valueOf(job.setBottle(graded, ["shelf", at], "at_most_percent", "30")).shelf[at].at_most_percent, 30);
    assert.equal(job.setBottle(graded, ["shelf", at], "grade", ""), text);
  }
});

const hostile = ["yes", "no", "~", "null", "1e3", "62", "0x1F", "true", ".nan", "- a", "a: b", "a #b", "#b", "[x", "{x}", "'", "\"", "\\", "\\n", "a\nb", "a\r\nb\n", "\t",
  " led", "trailed ", "\u{1F58C}\uFE0F", "שלום", "\u202E", "\u2028", "\u0000\u0007", "\uFEFF", "&a", "*a", "!x", "%", "@", "`", "|", ">", "?", "---", "...", "<script>alert(1)</script>",
  "a, b", "y", "Öl: ä", "x".repeat(10000), "=", "<<", "\uD800x"];

test("hostile text in every field comes back as it was", () => {
  for (const [i, text] of jobs.slice(0, 20).entries()) {
    for (const one of hostile) {
      const wanted = one.replace(/\uD800/, "\uFFFD");
      let now = job.setText(text, ["object", "title"], one);
      now = job.setText(now, ["object", "note"], one);
      now = job.setText(now, ["layers", 0, "note"], one);
      now = job.addPassage(now, one, "varnish");
      now = job.renameLayer(now, 0, one);
      now = job.addBottle(now, one);
      now = job.setBottle(now, ["shelf", 0], "grade", one);
      const value = valueOf(now);
      const found = [value.object.title, value.object.note, value.layers[0].note, value.layers[0].name, value.passages.at(-1).name, value.shelf.at(-1).solvent ?? value.shelf.at(-1), value.shelf[0].grade];
      for (const back of found) assert.equal(back, wanted, `job ${i}`);
      assert.deepEqual(job.readJob(now).object.title, wanted);
    }
  }
});

test("line breaks and a byte order mark stay", () => {
  for (const text of jobs) {
    const now = job.addLayer(job.setLimit(job.setText(text, ["object", "title"], "New"), "rungs", "8"), "x", "keep");
    assert.equal(now.startsWith("\uFEFF"), text.startsWith("\uFEFF"));
    assert.equal(/[^\r]\n/.test(now), /[^\r]\n/.test(text));
  }
});

test("a layer's new name is followed by its passages", () => {
  const text = jobs.find((one) => job.readJob(one).passages.length > 0);
  const now = job.readJob(job.renameLayer(text, 0, "upper varnish"));
  assert.ok(now.passages.every((one) => one.of === "upper varnish"));
});

test("a text that is no YAML is refused, not replaced", () => {
  for (const text of ["gentlest_job: 1\nobject: {title: \"x\n", "a: 1\na: 2\n", "\t- x"]) assert.throws(() => job.setText(text, ["object", "title"], "x"), job.Unreadable);
});

test("numbers as people type them", () => {
  for (const [typed, value] of [["62,5", 62.5], ["62.5", 62.5], [" 62 ", 62], ["-3", -3], ["62,", 62], ["about 60", "about 60"], ["1.234,5", "1.234,5"], ["60 cm", "60 cm"]])
    assert.equal(job.asTyped(typed), value);
});

test("a place in the file leads to its field, in bytes as the program counts", () => {
  const text = "gentlest_job: 1\nlayers:\n  - {name: Öl, role: kep}\n  - name: x\n    suspectd: [resinous]\nlimits: {parts: 9}\n";
  assert.deepEqual(places.pathAt(text, 3, 24), ["layers", 0, "role"]);  // Ö takes two bytes
  assert.deepEqual(places.pathAt(text, 5, 5), ["layers", 1, "suspectd"]);
  assert.deepEqual(places.pathAt(text, 4, 5), ["layers", 1, "name"]);
  assert.deepEqual(places.pathAt(text, 6, 17), ["limits", "parts"]);
  assert.deepEqual(places.pathAt(text, 0, 0), []);
});

const program = process.env.GENTLEST_PROGRAM;
test("the program takes what was edited", { skip: !program }, () => {
  const file = join(folder, "edited.yaml");
  const demo = readFileSync(join(root, "src/io/demo_job.yaml"), "utf8");
  let text = demo;
  for (const one of hostile) {
    if (/[\x00-\x08\r]/.test(one)) continue;  // the program refuses control characters, at their field
    text = job.setText(text, ["object", "title"], one);
    text = job.setText(text, ["object", "note"], one);
    text = job.setText(text, ["layers", 0, "note"], one);
    writeFileSync(file, text);
    const { status, stderr } = spawnSync(program, ["check", file], { encoding: "utf8" });
    assert.equal(status, 0, `${JSON.stringify(one)}: ${stderr}`);
  }
  text = job.addBottle(job.moveLayer(job.addLayer(text, "old retouching", "keep"), 2, 1), "toluene");
  text = job.setNumber(job.setLimit(text, "risk_limit", "0,2"), ["object", "width_cm"], "62,5");
  text = job.setText(text, ["layers", 1, "found"], "oil_paint_old");
  writeFileSync(file, text);
  execFileSync(program, ["check", file]);
});

test("a passage's new name is followed by what the examination says of it", () => {
  for (const text of jobs.filter((one) => job.readJob(one).passages.length > 0)) {
    const placed = job.setFinding(text, "flaking", { answer: "somewhere", where: ["white", "lower edge"], note: "" });
    const renamed = job.renamePassage(placed, 0, "pale cloth");
    assert.equal(job.readJob(renamed).passages[0].name, "pale cloth");
    assert.deepEqual(job.readJob(renamed).examination.flaking.where, ["pale cloth", "lower edge"]);
  }
});

test("an answer of the examination comes, gets its place and goes, and nothing else changes", () => {
  for (const text of jobs) {
    const bare = job.setFinding(text, "flaking", { answer: "no", where: [], note: "" });
    assert.equal(valueOf(bare).examination.flaking, "no");
    const placed = job.setFinding(bare, "glazes", { answer: "somewhere", where: ["white", 'a "red" one'], note: "" });
    assert.deepEqual(job.readJob(placed).examination.glazes, { answer: "somewhere", where: ["white", 'a "red" one'], note: "" });
    assert.deepEqual({ ...valueOf(placed), examination: undefined }, { ...valueOf(text), examination: undefined });
    const gone = ["glazes", "flaking"].reduce((now, question) => job.setFinding(now, question, { answer: "", where: [], note: "" }), placed);
    assert.deepEqual({ ...valueOf(gone), examination: undefined }, { ...valueOf(text), examination: undefined });
    assert.deepEqual(job.readJob(gone).examination, {});
  }
});
