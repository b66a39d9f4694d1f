// The page's engine answers to the byte what the native program answers, in every browser.
import { readFileSync } from "node:fs";
import { askProgram } from "./program.mjs";

const read = (name) => readFileSync(new URL(`jobs/${name}`, import.meta.url), "utf8");
const head = '{"gentlest_log":1}\n';

/** Every question: a name, then the question as the page asks it. */
async function questions(program) {
  const jobs = {
    demo: readFileSync(new URL("../../src/io/demo_job.yaml", import.meta.url), "utf8"),
    template: (await askProgram(program, { command: "new", words: ["-"] })).text,
  };
  for (const name of ["no_window", "unknown_layer", "many_bottles", "own_sphere", "faults", "broken", "umlauts.crlf"]) jobs[name] = read(`${name}.yaml`);
  const logs = { none: head, harm: read("harm.log"), damaged: read("damaged.crlf.log") };
  const all = [];
  const add = (job, log, command, words, options) =>
    all.push({ name: [command, job, log, ...Object.entries(options ?? {}).flat().filter((one) => one !== true && one !== "json"), ...words.slice(2)].filter(Boolean).join(" "),
      question: { command, words, options: options ?? {}, files: { ...(job ? { "job.yaml": jobs[job] } : {}), ...(log ? { "tests.log": logs[log] } : {}) } } });
  const json = { format: "json" };
  const both = ["job.yaml", "tests.log"];
  for (const job of Object.keys(jobs)) add(job, "", "ladder", ["job.yaml"], json);
  for (const job of ["demo", "no_window", "umlauts.crlf"]) add(job, "", "ladder", ["job.yaml"], {});
  add("demo", "", "ladder", ["job.yaml"], { full: true });
  for (const [job, log] of [["demo", "none"], ["demo", "harm"], ["umlauts.crlf", "damaged"], ["no_window", "none"]]) add(job, log, "next", both, json);
  add("demo", "harm", "next", both, { full: true });
  add("", "harm", "readings", ["tests.log"], json);
  add("", "damaged", "readings", ["tests.log"], json);
  for (const [job, log] of [["demo", "harm"], ["umlauts.crlf", "none"], ["no_window", "none"]]) {
    add(job, log, "sheet", ["job.yaml"], { log: "tests.log" });
    add(job, log, "labels", ["job.yaml"], { log: "tests.log", copies: "2", date: "2026-03-14" });
    add(job, log, "report", both, {});
  }
  add("many_bottles", "none", "sheet", ["job.yaml"], { log: "tests.log" });
  add("demo", "", "sheet", ["job.yaml"], { full: true, paper: "letter" });
  for (const kind of ["risk", "chances", "planes", "triangle", "drift"]) add("demo", "", "chart", ["job.yaml"], { kind });
  for (const kind of ["timeline", "swabs"]) add("demo", "harm", "chart", ["job.yaml"], { kind, log: "tests.log" });
  add("demo", "", "examine", ["job.yaml"], { html: true });
  add("", "", "examine", [], { html: true, paper: "letter" });
  for (const options of [json, { html: true, light: "daylight" }]) add("demo", "", "afterwards", ["job.yaml"], options);
  for (const job of ["demo", "no_window"]) add(job, "", "ways", ["job.yaml"], json);
  for (const what of ["rung 2", "flash point isooctane 70, acetone 30"]) add("demo", "", "explain", ["job.yaml", what], json);
  add("demo", "harm", "explain", ["job.yaml", "next"], { ...json, log: "tests.log" });
  // A folder of finished paintings: two by their names, and one that has no log.
  const finished = { "studio/1/quinces.yaml": jobs.demo, "studio/1/quinces.log": logs.harm, "studio/2/painting.yaml": jobs.demo, "studio/2/tests.log": read("harm.log"), "studio/3/none.yaml": jobs.demo };
  for (const [log, command, words, options] of [["", "ladder", ["job.yaml"], { ...json, studio: "studio" }], ["harm", "next", both, { ...json, studio: "studio" }], ["", "studio", ["studio"], {}]]) {
    add("umlauts.crlf", log, command, words, options);
    Object.assign(all.at(-1).question.files, finished);
    all.at(-1).name += " with a studio";
  }
  add("own_sphere", "", "vial", ["job.yaml", "isooctane 70, acetone 30"], json);
  add("unknown_layer", "", "mixture", ["job.yaml", "isooctane 50, ethanol 96 % 50"], json);
  add("faults", "", "check", ["job.yaml"], json);
  add("", "", "show", ["ethanol"], json);
  add("", "", "show", ["dammar_aged"], json);
  add("", "", "show", ["ethanoll"], json);
  add("", "", "list", ["solvents"], json);
  add("", "", "list", ["materials"], json);
  const said = (log, job, ...words) => add(job, log, "record", [...both, ...words], { yes: true });
  said("none", "demo", "date=2026-03-14", "mixture=isooctane 70, ethanol 96 % 30", "removal=partly removed", "original=nothing seen", "seconds=20", "passage=white cloth");
  said("harm", "demo", "date=2026-03-16", "test=2", "looked_after=7 days", "original=nothing seen");
  said("damaged", "umlauts.crlf", "date=2026-03-16", "mixture=rung 2", "removal=no effect", "original=nothing seen", "remark=Öl „gut“");
  said("none", "demo", "rung 4: partly, nothing seen, white cloth, 20 s, edge");
  said("none", "demo", "mixture=isooctan 70, ethanl 30", "removal=hardly");
  return all;
}

/** Where two texts part, in words; "" where they do not. */
export function firstDifference(page, program) {
  if (page === program) return "";
  let at = 0;
  while (at < Math.min(page.length, program.length) && page[at] === program[at]) ++at;
  const around = (text) => JSON.stringify(text.slice(Math.max(0, at - 40), at + 60));
  return `at letter ${at} of ${page.length} and ${program.length}: page ${around(page)}, program ${around(program)}`;
}

function difference(page, program) {
  if (page.exit !== program.exit) return `exit ${page.exit}, of the program ${program.exit}; ${page.notes.slice(0, 120)} ${JSON.stringify(page.faults).slice(0, 160)} | ${program.notes.slice(0, 160)}`;
  const text = firstDifference(page.text, program.text);
  if (text) return text;
  for (const name of new Set([...Object.keys(page.files), ...Object.keys(program.files)])) {
    const file = firstDifference(page.files[name] ?? "", program.files[name] ?? "");
    if (file) return `${name} ${file}`;
  }
  // Each fault that the page shows at its field is one that the program tells, at the same line, and none is lost.
  const told = program.notes.replace(/\s+/g, " ");
  for (const fault of page.faults) {
    if (!told.includes(fault.message.replace(/\s+/g, " "))) return `a fault of the page's own: ${JSON.stringify(fault)}; of the program ${told.slice(0, 200)}`;
    if (fault.line && !told.includes(`${fault.file}:${fault.line}:`)) return `a fault at another line: ${JSON.stringify(fault)}; of the program ${told.slice(0, 200)}`;
  }
  if (page.exit === 3 && page.faults.length === 0 && page.text === "") return "exit 3 without a fault";
  return "";
}

let known;
/** The answers of the program, asked once for all browsers. */
const programAnswers = (program) =>
  (known ??= (async () => {
    const all = await questions(program);
    // Two at a time: the machine may be small.
    const queue = [...all];
    const worker = async () => {
      for (let one = queue.shift(); one; one = queue.shift()) one.program = await askProgram(program, one.question);
    };
    await Promise.all([worker(), worker()]);
    return all;
  })());

export async function sameAnswers(browser, page, program, report) {
  const all = await programAnswers(program);
  // The engine is one and the same: what it says is asked whole in one browser, a third of it in the others.
  const asked = browser.name === "chromium" ? all : all.filter((_, i) => i % 3 === 0);
  const tab = await browser.open(page);
  for (const one of asked) {
    const answer = await tab.evaluate((question) => window.gentlest.ask("test", question), one.question).catch((fault) => ({ exit: 4, text: "", notes: String(fault), faults: [], files: {} }));
    report(`same answer: ${one.name}`, difference(answer, one.program));
  }
  await tab.close();
}
