// From the empty page to the printed report, by the page's own controls.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { breaches, overflow, tooSmall } from "./measures.mjs";
import { button, field, goTo, ladderShown, newPainting, nextShown, openFile, paper, printed, putOnShelf, recordSwab, save, steps, unfold, usualBottles } from "./person.mjs";
import { askProgram } from "./program.mjs";
import { firstDifference } from "./same_answers.mjs";

const jobs = (name) => new URL(`jobs/${name}`, import.meta.url);

async function describePainting(tab) {
  await newPainting(tab);
  await goTo(tab, "Painting");
  await tab.type(field("Title"), "Invented: a bowl of quinces");
  await tab.type(field("Width in cm"), "62,5");
  await tab.type(field("Height in cm"), "48");
  await tab.press("Tab");
  await unfold(tab, "Hold of the paint");
  await tab.choose({ role: "combobox", name: "/flaking, cupped/" }, "no");
}

async function tickBottles(tab, report) {
  await goTo(tab, "Shelf");
  const ticked = await tab.evaluate(() => document.querySelectorAll("main input[type=checkbox]:checked").length);
  report("a new painting begins with no bottle ticked", ticked === 0 && /No bottle is ticked yet/.test(await tab.text()) ? "" : `${ticked} are ticked`);
  await putOnShelf(tab, [...usualBottles, ["MEK", "/butanone/i"]]);
  await tab.type(field("Grade on the label", "/^ethanol/"), "96 %");
  await tab.waitFor({ role: "checkbox", name: "butanone" });
  await unfold(tab, "/^ketone/");
  await tab.click({ role: "checkbox", name: "/^diacetone alcohol/" });
  await tab.until(() => /8 bottles on the shelf/.test(document.body.innerText), null, "8 bottles on the shelf");
}

const swabs = [
  { removal: "no effect", original: "nothing seen", seconds: 20, place: "At the edge or under the frame" },
  { removal: "no effect", original: "nothing seen", seconds: 20 },
  { removal: "softened or gelled", original: "nothing seen", seconds: 20 },
  { removal: "partly removed", original: "nothing seen", seconds: 15, remark: "cotton a little yellow" },
  { removal: "partly removed", original: "nothing seen", seconds: 20 },
  { removal: "mostly removed", original: "colour on the swab", colour: "original", seconds: 20 },
];

/** Job and log as the page saves them. */
const savedFiles = async (tab) => ({ job: String(await save(tab, "job")), log: String(await save(tab, "log")) });

async function lookAt(tab, what, width, report, browser) {
  report(`${what} at ${width} px: nothing runs over`, await overflow(tab));
  if (browser.name !== "chromium") return;
  report(`${what} at ${width} px: WCAG 2.2 AA`, await breaches(tab));
  report(`${what} at ${width} px: targets`, await tooSmall(tab, 44));
}

async function walk(browser, page, program, report, width, isWhole) {
  const tab = await browser.open(page, { width, height: 1000 });
  const at = `at ${width} px`;
  await describePainting(tab);
  if (isWhole) await lookAt(tab, "painting", width, report, browser);
  await tickBottles(tab, report);
  if (isWhole) await lookAt(tab, "shelf", width, report, browser);
  await goTo(tab, "Ladder");
  await ladderShown(tab);
  report(`the ladder appears ${at}`, "");
  report(`the examination's verdict stands before it ${at}`, /Examination: go\. Not known: 40 of 41\./.test(await tab.text()) ? "" : "no verdict");
  if (isWhole) await lookAt(tab, "ladder", width, report, browser);
  await goTo(tab, "At the easel");
  for (const swab of isWhole ? swabs : [swabs[0], swabs[5]]) {
    await nextShown(tab);
    await recordSwab(tab, swab);
  }
  await nextShown(tab);
  const first = await tab.until(() => document.getElementById("next").innerText.trim().split("\n")[0], null, "a first line of what comes next");
  report(`harm stands in the first line ${at}`, /harm|colour|original|affected|change/i.test(first) && !/^What next/i.test(first) ? "" : `first line: ${first}`);
  if (isWhole) await lookAt(tab, "easel", width, report, browser);
  const papers = {};
  for (const kind of ["sheet", "labels", "report"]) papers[kind] = { ...(await paper(tab, kind)), prints: await printed(tab) };
  if (isWhole) await lookAt(tab, "papers", width, report, browser);
  const { job, log } = await savedFiles(tab);
  report(`the number typed with a comma is written with a point ${at}`, /width_cm: 62\.5\b/.test(job) ? "" : job.match(/width_cm.*/)?.[0] ?? "no width");
  report(`what the examination showed is in the saved job ${at}`, /\nexamination:\n {2}flaking: "?no"?\n/.test(job) ? "" : job.slice(0, 900));
  const files = { "job.yaml": job, "tests.log": log };
  const questions = { sheet: [["job.yaml"], { log: "tests.log" }], labels: [["job.yaml"], { log: "tests.log" }], report: [["job.yaml", "tests.log"], {}] };
  for (const [kind, [words, options]] of Object.entries(questions)) {
    const native = await askProgram(program, { command: kind, words, options, files });
    report(`the ${kind} is the program's own, to the byte ${at}`, firstDifference(papers[kind].text, native.text) || firstDifference(papers[kind].shown, native.text));
    const [print, ...more] = papers[kind].prints;
    const read = await tab.evaluate((text) => new DOMParser().parseFromString(text, "text/html").documentElement.outerHTML, native.text);
    report(`"Print" prints the ${kind} and nothing else ${at}`, more.length > 0 ? "it printed more than once" : firstDifference(print.given, native.text) || firstDifference(print.shown, read));
  }
  const check = await askProgram(program, { command: "check", words: ["job.yaml"], files });
  report(`the program takes the saved job ${at}`, check.exit === 0 ? "" : check.notes + check.text);
  const next = await askProgram(program, { command: "next", words: ["job.yaml", "tests.log"], files });
  report(`the program takes the saved log ${at}`, next.exit <= 1 && !/tests\.log:\d/.test(next.notes) ? "" : next.notes);
  report(`all tests are in the log ${at}`, log.trim().split("\n").length === (isWhole ? 7 : 3) ? "" : log);
  await tab.close();
}

/** Job and log that were opened go on byte by byte, whatever is wrong in them: here one letter is not UTF-8. */
async function openedFiles(browser, page, program, report) {
  const folder = mkdtempSync(join(tmpdir(), "gentlest_page_"));
  const job = readFileSync(jobs("umlauts.crlf.yaml"));
  const log = Buffer.concat([readFileSync(jobs("latin_letter.crlf.log")), readFileSync(jobs("damaged.crlf.log")).subarray(20)]);
  writeFileSync(join(folder, "bild.yaml"), job);
  writeFileSync(join(folder, "bild.log"), log);
  const tab = await browser.open(page);
  await openFile(tab, join(folder, "bild.yaml"));
  await tab.waitFor(button("At the easel"));
  await openFile(tab, join(folder, "bild.log"));
  await goTo(tab, "At the easel");
  await nextShown(tab);
  await tab.until(() => document.querySelectorAll("ol.tests > li").length === 2, null, "both tests of the log");
  await recordSwab(tab, swabs[1]);
  const savedJob = await save(tab, "job");
  const savedLog = await save(tab, "log");
  report("an opened job that was not touched is saved to the byte", savedJob.equals(job) ? "" : firstDifference(savedJob.toString("latin1"), job.toString("latin1")));
  const begins = savedLog.subarray(0, log.length).equals(log);
  report("a saved log begins with the bytes that were opened", begins && savedLog.length > log.length ? "" : firstDifference(savedLog.subarray(0, log.length).toString("latin1"), log.toString("latin1")) || "nothing was added");
  report("lines of a log that cannot be read are told", /line 4|:4/.test(await tab.text()) ? "" : "line 4 is not named");
  const files = { "job.yaml": savedJob, "tests.log": savedLog };
  const readings = await askProgram(program, { command: "readings", words: ["tests.log"], options: { format: "json" }, files });
  report("the program reads what was added behind them", JSON.parse(readings.text).readings.length === 3 ? "" : readings.text.slice(0, 200) + readings.notes);
  await tab.close();
  rmSync(folder, { recursive: true, force: true });
}

export async function wholeJob(browser, page, program, report) {
  await walk(browser, page, program, report, 1280, browser.name === "chromium");
  await openedFiles(browser, page, program, report);
  for (const width of browser.name === "chromium" ? [820, 390] : [390]) {
    const tab = await browser.open(page, { width, height: 900 });
    await openFile(tab, new URL("jobs/unknown_layer.yaml", import.meta.url).pathname);
    for (const step of steps) {
      await goTo(tab, step);
      if (step === "Ladder") await ladderShown(tab);
      await lookAt(tab, step, width, report, browser);
    }
    await tab.close();
  }
}
