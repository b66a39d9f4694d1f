// How fast the page is in real browsers, as ratios to the native program in the same run; prints a table, judges nothing.
//   node speed.mjs PAGE PROGRAM [chromium|firefox|webkit ...]
import { existsSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import { start } from "./browsers.mjs";
import { field, goTo, ladderShown, openDemo, openFile, unfold } from "./person.mjs";
import { askProgram } from "./program.mjs";

const [page, program, ...chosen] = process.argv.slice(2).map((word, place) => (place < 2 ? resolve(word) : word));
if (!page || !program) {
  console.error("usage: node speed.mjs PAGE PROGRAM [chromium|firefox|webkit ...]");
  process.exit(2);
}

const middle = (times) => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)];
const thirty = new URL("jobs/many_bottles.yaml", import.meta.url);

/** The job's text under another limit, so that nothing is answered from memory. */
const limited = (job, risk) => job.replace(/^( *risk_limit:).*$/m, `$1 ${risk}`).replace(/^(limits: \{)parts/m, `$1risk_limit: ${risk}, parts`);
const limits = [0.24, 0.23, 0.22, 0.21, 0.2];

const question = (job) => ({ command: "ladder", words: ["job.yaml"], options: { format: "json" }, files: { "job.yaml": job } });

async function native(job) {
  const times = [];
  for (const risk of limits) times.push((await askProgram(program, question(limited(job, risk)))).ms);
  return middle(times);
}

/** Of one question after another: what the worker takes, from the page and back. */
async function engine(tab, job) {
  const times = [];
  for (const risk of limits)
    times.push(await tab.evaluate(async (asked) => { const begun = performance.now(); await window.gentlest.ask("speed", asked); return performance.now() - begun; }, question(limited(job, risk))));
  return middle(times);
}

/** Nothing is asked any more, so that what is measured next waits behind nothing: charts are drawn one after the other. */
async function atRest(tab) {
  for (let quiet = 0; quiet < 4; ) {
    quiet = (await tab.evaluate(() => /\bReady\b/.test(document.querySelector("header").innerText))) ? quiet + 1 : 0;
    await new Promise((go) => setTimeout(go, 150));
  }
}

/** From a changed limit in its field to the new ladder on the screen, the pause after typing in it. */
async function changedLimit(tab, risks = limits) {
  await goTo(tab, "Ladder");
  await ladderShown(tab);
  await unfold(tab, "Limits");
  await atRest(tab);
  const times = [];
  for (const risk of risks) {
    await tab.waitFor(field("Largest risk to what must stay (0 to 1)"));
    times.push(await tab.evaluate((value) => new Promise((done) => {
      const input = document.querySelector("[data-found]");
      const begun = performance.now();
      let wasStale = false;
      const watch = new MutationObserver(() => {
        const isStale = !!document.querySelector(".stale");
        if (isStale) wasStale = true;
        else if (wasStale) { watch.disconnect(); done(performance.now() - begun); }
      });
      watch.observe(document.body, { subtree: true, attributes: true, childList: true });
      Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value").set.call(input, String(value));
      input.dispatchEvent(new InputEvent("input", { bubbles: true }));
      input.dispatchEvent(new Event("change", { bubbles: true }));
      setTimeout(() => { watch.disconnect(); done(NaN); }, 20000);
    }), risk));
    await atRest(tab);
  }
  return middle(times);
}

/** The longest that a letter waits while somebody types a title: from the key to the next picture. */
async function typing(tab) {
  await goTo(tab, "Painting");
  await tab.waitFor(field("Title"));
  await tab.evaluate(() => {
    window.waits = [];
    document.querySelector("[data-found]").addEventListener("input", () => { const begun = performance.now(); requestAnimationFrame(() => setTimeout(() => window.waits.push(performance.now() - begun))); }, true);
    window.longest = 0;
    try { new PerformanceObserver((list) => { for (const one of list.getEntries()) window.longest = Math.max(window.longest, one.duration); }).observe({ type: "longtask" }); } catch { window.longest = NaN; }
    let last = performance.now();
    const beat = () => { const now = performance.now(); window.gap = Math.max(window.gap ?? 0, now - last); last = now; if (!window.stopBeat) setTimeout(beat, 0); };
    beat();
    // The field is emptied first, which is another work than a letter: it makes a fault. Told apart.
    const field = document.querySelector("[data-found]");
    field.addEventListener("input", () => { if (field.value.length === 2) { window.emptied = Math.max(window.longest || 0, window.gap); window.longest = window.gap = 0; last = performance.now(); } });
    return true;
  });
  await tab.type(field("Title"), "Invented: a still life with pears, a blue jug, and a long, long title to be typed");
  await new Promise((go) => setTimeout(go, 1500));
  return tab.evaluate(() => { window.stopBeat = true; return { emptied: window.emptied, longest: window.longest, gap: window.gap, wait: Math.max(...window.waits) }; });
}

/** Double click to the demo's ladder: the file opens, the example is chosen, its ladder stands there. */
async function opened(browser) {
  const tab = await browser.open(page, { raw: true });
  await tab.until("!!window.gentlest && !!document.querySelector('button')");
  await tab.evaluate(() => { const it = [...document.querySelectorAll("button")].find((one) => /invented example/.test(one.textContent)); it.click(); return true; });
  const shown = await tab.until(() => {
    const step = [...document.querySelectorAll("nav button")].find((one) => /Ladder/.test(one.textContent));
    if (step && !step.hasAttribute("aria-current")) step.click();
    return document.querySelectorAll("ol.rungs > li").length > 1 && !document.querySelector(".stale") ? performance.now() : 0;
  }, null, "the demo's ladder", 60000);
  await tab.close();
  return shown;
}

const ms = (value) => (Number.isFinite(value) ? value.toFixed(0) : "-");
const demo = readFileSync(new URL("../../src/io/demo_job.yaml", import.meta.url), "utf8");
const job30 = readFileSync(thirty, "utf8");
const base = { 8: await native(demo), 30: await native(job30) };

/** All of one browser: what, ms, and what of the native program it stands beside. */
async function measured(name) {
  const browser = await start(name);
  const rows = [["double click to the demo's ladder", await opened(browser), base[8]]];
  const tab = await browser.open(page);
  await openDemo(tab);
  await goTo(tab, "Ladder");
  await ladderShown(tab);
  await atRest(tab);
  rows.push(["8 bottles: a question and its answer", await engine(tab, demo), base[8]]);
  const in30 = await engine(tab, job30);
  rows.push(["8 bottles: changed limit to the new ladder", await changedLimit(tab), base[8]]);
  const typed = await typing(tab);
  await tab.close();
  const large = await browser.open(page);
  await openFile(large, thirty.pathname);
  await large.waitFor({ role: "button", name: "Ladder" });
  rows.push(["30 bottles: a question and its answer", in30, base[30]], ["30 bottles: changed limit to the new ladder", await changedLimit(large, limits.slice(0, 3)), base[30]]);
  rows.push(["while typing: the longest that a letter waits", typed.wait], ["while typing: the longest block", Math.max(typed.longest || 0, typed.gap)], ["the field emptied, and its first letter: the longest block", typed.emptied]);
  await browser.close();
  return rows;
}

const drivers = { chromium: "/usr/bin/chromium", firefox: "/usr/bin/firefox-esr", webkit: "/usr/bin/WebKitWebDriver" };
const table = [["", "ms", "native ms", "ratio"]];
for (const name of chosen.length > 0 ? chosen : Object.keys(drivers)) {
  if (!existsSync(drivers[name])) {
    console.error(`${name}: left out, since ${drivers[name]} is not installed`);
    continue;
  }
  const rows = await measured(name).catch((fault) => (console.error(`${name}: ${fault.stack}`), [["did not come to its end", NaN]]));
  for (const [what, time, to] of rows) table.push([`${name}, ${what}`, ms(time), to ? ms(to) : "", to && Number.isFinite(time) ? (time / to).toFixed(2) : ""]);
}
const width = table[0].map((_, i) => Math.max(...table.map((row) => row[i].length)));
for (const row of table) console.log(row.map((cell, i) => (i === 0 ? cell.padEnd(width[i]) : cell.padStart(width[i]))).join("  "));
console.log("ms: the middle of five (of three for the changed limit with 30 bottles); opening and typing once. A changed limit holds the pause after typing; native: the whole command with its start.");
process.exit(0);
