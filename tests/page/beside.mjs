// What stands beside the tests: afterwards, other ways, how a number came, the studio's finished paintings. Each shows the
// engine's answer, opens by keyboard, and is looked at dark and light and at 390 px.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { breaches, overflow, tooSmall } from "./measures.mjs";
import { afterwardsShown, button, goTo, ladderShown, nextShown, openDemo, openFile, paper, unfold } from "./person.mjs";
import { askProgram } from "./program.mjs";
import { firstDifference } from "./same_answers.mjs";

const job = (name) => new URL(`jobs/${name}.yaml`, import.meta.url).pathname;
const demo = readFileSync(new URL("../../src/io/demo_job.yaml", import.meta.url), "utf8");
const answer = async (program, command, words, options = {}, files = { "job.yaml": demo }) =>
  JSON.parse((await askProgram(program, { command, words, options: { format: "json", ...options }, files })).text);
const missing = (text, wanted) => wanted.filter((one) => !text.replace(/\s+/g, " ").includes(one.replace(/\s+/g, " "))).slice(0, 4).map((one) => `not shown: ${one}`).join("; ");

/** A folded part within the first place that holds it, opened by Enter alone. */
async function openByKey(tab, name, within) {
  await tab.waitFor(button(name, within));
  await tab.evaluate(() => { document.querySelector("[data-found]").focus(); return true; });
  await tab.press("Enter");
  await tab.until("document.querySelector('[data-found]').closest('details').open", null, `${name} to open`);
}

/** axe dark and light, targets and width at 390 px, of what is open now. */
async function lookAt(tab, what, report) {
  for (const scheme of ["dark", "light"]) {
    await tab.driver.page.emulateMedia({ colorScheme: scheme });
    report(`${what}, ${scheme}: WCAG 2.2 AA`, await breaches(tab));
  }
  await tab.size(390, 844);
  report(`${what} at 390 px: nothing runs over`, await overflow(tab));
  report(`${what} at 390 px: targets`, await tooSmall(tab, 44));
  await tab.size(1280, 900);
}

async function afterwards(browser, page, program, report) {
  const tab = await browser.open(page);
  await openDemo(tab);
  await goTo(tab, "Afterwards");
  await afterwardsShown(tab);
  const told = await answer(program, "afterwards", ["job.yaml"]);
  const candidates = told.stacks.filter((one) => ["retouching", "varnish"].includes(one.group));
  const shown = await tab.evaluate(() => [...document.querySelectorAll(".candidate")].map((one) => one.innerText.replace(/\s+/g, " ")));
  const words = { yes: "yes", test_first: "test first", not_known: "not known", no: "no" };
  const wrong = candidates.filter((one, i) => !shown[i]?.includes(`${one.rank}. ${one.coats.at(-1).name}`) || !shown[i].includes(`Answer ${{ yes: "✓", test_first: "!", not_known: "?", no: "✕" }[one.weakest]} ${words[one.weakest]}`));
  report("afterwards: every candidate in its rank with its verdict", wrong.length > 0 || shown.length !== candidates.length ? `${shown.length} of ${candidates.length}; ${shown[candidates.indexOf(wrong[0])]}` : "");
  report("afterwards: no cell is blank", await tab.evaluate(() => [...document.querySelectorAll("dd, .coat, .candidate h4, .cell summary")].filter((one) => !one.textContent.trim() || /undefined|null|NaN/.test(one.textContent)).map((one) => one.outerHTML.slice(0, 80)).join("; ")));
  await openByKey(tab, "Every answer, and who says so", "/^8\\. egg tempera/");
  const cells = await tab.until(() => { const open = document.querySelector(".candidate details[open]"); return open?.querySelector(".cell") && [...open.querySelectorAll(".cell > summary")].map((one) => one.textContent); }, null, "its answers");
  const acts = Object.values(candidates.find((one) => one.group === "retouching" && one.rank === 8).coats.at(-1)).filter((one) => one?.itself);
  report("afterwards: a candidate's every answer", cells.length === acts.flatMap((one) => [one.itself, ...one.under]).length ? "" : `${cells.length} cells`);
  await openByKey(tab, "/it comes off: no/");
  await tab.until(() => document.querySelector(".cell[open] li"), null, "who says so");
  report("afterwards: who says so, on demand", missing(await tab.evaluate("document.querySelector('.cell[open]').innerText"), ["common practice"]));
  await unfold(tab, "Dangers of the liquids named");
  await tab.until((most) => [...document.querySelectorAll("details[open] > ul")].some((one) => one.children.length === most), told.dangers.length, "the dangers");
  report("afterwards: dangers of every liquid", missing(await tab.text(), told.dangers.map((one) => one.words)));
  await lookAt(tab, "afterwards", report);
  await tab.choose({ role: "combobox", name: "Where the painting will hang" }, "strong light");
  await tab.type({ role: "textbox", name: "Liquids to ask about" }, "isooctane; toluene 60, acetone 40");
  await tab.press("Tab");
  await tab.until(() => /What toluene 60, acetone 40 does/.test(document.body.innerText), null, "the liquids asked about");
  const strong = await answer(program, "afterwards", ["job.yaml"], { light: "strong" });
  const verdicts = await tab.evaluate(() => [...document.querySelectorAll(".candidate .believed .verdict")].map((one) => one.textContent.replace(/^\S+ /, "")).join());
  report("afterwards: the light counts", verdicts === strong.stacks.filter((one) => ["retouching", "varnish"].includes(one.group)).map((one) => words[one.weakest]).join() ? "" : verdicts);
  const { text } = await paper(tab, "afterwards");
  const native = await askProgram(program, { command: "afterwards", words: ["job.yaml"], options: { html: true, light: "strong", liquid: "isooctane; toluene 60, acetone 40" }, files: { "job.yaml": demo } });
  report("afterwards: the paper is the program's own", firstDifference(text, native.text));
  const examination = await paper(tab, "examine");
  report("the examination's paper is the program's own", firstDifference(examination.text, (await askProgram(program, { command: "examine", words: ["job.yaml"], options: { html: true }, files: { "job.yaml": demo } })).text));
  await lookAt(tab, "the examination's paper", report);
  await tab.close();
  const empty = await browser.open(page);
  await empty.click(button("Begin a new painting"));
  const blank = await paper(empty, "examine");
  report("without a bottle the examination is made to be filled in", firstDifference(blank.text, (await askProgram(program, { command: "examine", words: [], options: { html: true } })).text));
  await empty.click({ role: "radio", name: "Sheet for the easel" });
  report("without a bottle a sheet says what is wanting", /No bottle is ticked/.test(await empty.text()) ? "" : "it does not");
  await empty.close();
}

async function workedAndWays(browser, page, program, report) {
  const tab = await browser.open(page);
  await openDemo(tab);
  await goTo(tab, "Ladder");
  await ladderShown(tab);
  await openByKey(tab, "How these figures came: Rung 2");
  const told = await answer(program, "explain", ["job.yaml", "rung 2"]);
  await tab.until(() => document.querySelectorAll(".worked li").length > 3, null, "the worked lines");
  const worked = () => tab.evaluate("document.querySelector('.worked').innerText");
  report("how a number came: the lines behind what is shown", missing(await worked(), told.steps.filter((one) => one.printed_as !== null).flatMap((one) => [one.title, `${one.sum} = ${one.result}`])));
  await openByKey(tab, `Every line (${told.steps.length})`);
  await openByKey(tab, `What is put in (${told.inputs.length})`);
  await tab.until(({ steps, inputs }) => document.querySelectorAll(".worked details ol li").length === steps && document.querySelectorAll(".worked details ul li").length === inputs, { steps: told.steps.length, inputs: told.inputs.length }, "every line and input");
  report("how a number came: every line and input", missing(await worked(), [...told.steps.map((one) => `${one.sum} = ${one.result}`), ...told.inputs.map((one) => one.title)]));
  await lookAt(tab, "how a number came", report);
  await openByKey(tab, "/^For your safety|^Hazards/", "/^Rung 2/");
  await openByKey(tab, "How the flash point came: Rung 2");
  const flash = await answer(program, "explain", ["job.yaml", `flash point ${told.mixture}`]);
  await tab.until((line) => document.body.innerText.replace(/\s+/g, " ").includes(line), flash.steps.at(-1).sum, "the line of the flash point").then(() => report("how the flash point came", ""), (fault) => report("how the flash point came", String(fault)));

  await openByKey(tab, "/^Other ways: gels/");
  const ways = await answer(program, "ways", ["job.yaml"]);
  await tab.until((count) => document.querySelectorAll(".ways > li").length === count, ways.ways.length, "the other ways");
  report("other ways: each with when and what to watch, and that nothing is promised", missing(await tab.text(), [ways.promise, ...ways.ways.flatMap((one) => [one.name, one.when, one.watch])]));
  await tab.click(button("How, and who says so", "/^leave it/"));
  await lookAt(tab, "other ways", report);

  await goTo(tab, "At the easel");
  await nextShown(tab);
  await openByKey(tab, "How this test was chosen");
  const next = await answer(program, "explain", ["job.yaml", "next"], { log: "tests.log" }, { "job.yaml": demo, "tests.log": '{"gentlest_log":1}\n' });
  await tab.until(() => document.querySelector(".worked"), null, "how the test was chosen");
  report("how the next test was chosen", missing(await worked(), [next.words, next.why, ...next.figures, ...next.open]));
  await lookAt(tab, "how the next test was chosen", report);
  await tab.close();

  const none = await browser.open(page);
  await openFile(none, job("no_window"));
  await none.waitFor(button("At the easel"));
  await goTo(none, "At the easel");
  await nextShown(none);
  await none.click(button("Show other ways"));
  await none.until(() => document.querySelectorAll(".ways > li").length > 3, null, "the other ways");
  report("without a window the easel leads to other ways, and they stand open", (await none.evaluate("/^Other ways/.test(document.activeElement.textContent)")) ? "" : `the attention is on ${await none.evaluate("document.activeElement.outerHTML.slice(0, 120)")}`);
  await lookAt(none, "no window", report);
  await none.close();
}

const line = (test, mixture, removal) => JSON.stringify({ test, who: "Zanzibar", mixture, seconds: 20, removal, original: "nothing seen", remark: "near the Quetzal" });

async function studio(browser, page, program, report) {
  const folder = mkdtempSync(join(tmpdir(), "gentlest_page_"));
  const log = ['{"gentlest_log":1}', line(1, "isooctane 90, acetone 10", "fully removed"), line(2, "isooctane 80, acetone 20", "fully removed"), ""].join("\n");
  const files = { "apples.yaml": demo.replace("Pears", "Apples"), "apples.log": log, "nuts.yaml": demo.replace("Pears", "Nuts"), "nuts.log": log, "stray.log": log };
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  const tab = await browser.open(page);
  await openDemo(tab);
  const choose = (names) => tab.give({ role: "file", name: "/^Finished paintings/" }, names.map((name) => join(folder, name)));
  await choose(["stray.log"]);
  await tab.until(() => /Nothing of these files can be used/.test(document.body.innerText), null, "a refusal");
  report("finished paintings: what cannot be used is not taken", /None are in use/.test(await tab.text()) ? "" : "it is in use");
  await choose(Object.keys(files));
  await tab.until(() => /In use: apples/.test(document.body.innerText), null, "the finished paintings");
  report("finished paintings: what is not used is told", missing(await tab.text(), ["stray.log", "no job beside it"]));
  await openByKey(tab, "What they taught");
  await tab.until(() => /The studio: 2 finished paintings/.test(document.body.innerText), null, "what they taught");
  report("finished paintings: nobody is named", /Zanzibar|Quetzal/.test(await tab.text()) ? "a person or a remark is shown" : "");
  await lookAt(tab, "finished paintings", report);
  const given = Object.fromEntries(Object.entries(files).map(([name, text]) => [`studio/1/${name}`, text]));
  const plan = await answer(program, "ladder", ["job.yaml"], { studio: "studio" }, { "job.yaml": demo, ...given });
  await goTo(tab, "Ladder");
  await ladderShown(tab);
  await tab.until(() => /From the studio/.test(document.body.innerText), null, "what came from the studio");
  const moved = plan.studio.map((one) => `${one.layer} begins ${Number(one.moved.toFixed(1))} in Hansen distance`);
  report("finished paintings: the ladder begins where they leave off, and says so", moved.length !== 2 ? "the program has none" : missing(await tab.text(), [...moved, ...plan.rungs.at(-1).parts.map((one) => one.liquid)]));
  await lookAt(tab, "the ladder from the studio", report);
  await openByKey(tab, "How these figures came: Rung 1");
  const came = await answer(program, "explain", ["job.yaml", "rung 1"], { studio: "studio" }, { "job.yaml": demo, ...given });
  await tab.until(() => document.querySelectorAll(".worked li").length > 3, null, "the worked lines of the plan with them");
  await openByKey(tab, `What is put in (${came.inputs.length})`);
  const lines = came.steps.filter((one) => one.printed_as !== null).map((one) => `${one.sum} = ${one.result}`);
  report("finished paintings: how a figure came, with them as its source", came.inputs.every((one) => one.from !== "studio") ? "the program names no such source" : missing(await tab.text(), [...lines, "finished paintings of the studio"]));
  const { text } = await paper(tab, "sheet");
  const native = await askProgram(program, { command: "sheet", words: ["job.yaml"], options: { studio: "studio" }, files: { "job.yaml": demo, ...given } });
  report("finished paintings: the sheet is of the same plan", firstDifference(text, native.text));
  await goTo(tab, "Painting");
  await tab.click(button("Leave all of them out"));
  await goTo(tab, "Ladder");
  await ladderShown(tab);
  report("finished paintings: left out, the ladder is the catalogue's again", await tab.until(() => !/From the studio/.test(document.body.innerText), null, "the ladder without them", 8000).then(() => "", String));
  await tab.close();
  // The painting that is open does not teach itself.
  writeFileSync(join(folder, "pears.yaml"), demo);
  writeFileSync(join(folder, "pears.log"), log);
  const own = await browser.open(page);
  await openFile(own, join(folder, "pears.yaml"));
  await own.waitFor(button("Painting"));
  await own.give({ role: "file", name: "/^Finished paintings/" }, ["pears.yaml", "pears.log"].map((name) => join(folder, name)));
  await own.until(() => /is the painting that is open and does not count/.test(document.body.innerText), null, "that it does not count");
  await goTo(own, "Ladder");
  await ladderShown(own);
  report("finished paintings: the open one does not teach itself", /From the studio/.test(await own.text()) ? "it does" : "");
  await own.close();
  rmSync(folder, { recursive: true, force: true });
}

export async function beside(browser, page, program, report) {
  for (const [name, part] of [["afterwards", afterwards], ["worked and ways", workedAndWays], ["studio", studio]])
    await part(browser, page, program, report).catch((fault) => report(`${name} went to its end`, fault.stack?.split("\n").slice(0, 3).join(" ") ?? String(fault)));
}
