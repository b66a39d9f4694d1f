// Runs the page in real browsers: node run.mjs PAGE PROGRAM [BROWSER...] [--only WORD] [--shots]
// One line a check; exit code 1 when one fails. README.md beside this says what is needed.
import { existsSync } from "node:fs";
import { resolve } from "node:path";
import { start } from "./browsers.mjs";
import { beside } from "./beside.mjs";
import { easelUse } from "./easel_use.mjs";
import { everyone } from "./everyone.mjs";
import { hardTimes } from "./hard_times.mjs";
import { sameAnswers } from "./same_answers.mjs";
import { shelfAndNames } from "./shelf_and_names.mjs";
import { shots } from "./shots.mjs";
import { wholeJob } from "./whole_job.mjs";

const given = process.argv.slice(2);
const at = given.indexOf("--only");
const only = at < 0 ? "" : given.splice(at, 2)[1];
const isShooting = given.includes("--shots");
if (isShooting) given.splice(given.indexOf("--shots"), 1);
const [page, program, ...chosen] = given.map((word, place) => (place < 2 ? resolve(word) : word));
if (!page || !program || !existsSync(page) || !existsSync(program)) {
  console.error("usage: node run.mjs PAGE PROGRAM [chromium|firefox|webkit ...] [--only same|whole|shelf|easel|beside|hard|everyone|shots] [--shots]");
  process.exit(2);
}

const parts = { same: sameAnswers, whole: wholeJob, shelf: shelfAndNames, easel: easelUse, beside, hard: hardTimes, everyone, ...(isShooting || only === "shots" ? { shots } : {}) };
// Three browsers and their engines share two cores: what hardly depends on the browser runs in one.
const inOne = new Set(["shelf", "easel", "beside"]);
let failed = 0, passed = 0;
const seen = new Map();

async function runIn(name) {
  const said = (check, fault) => {
    if (fault) ++failed;
    else ++passed;
    seen.set(name, (seen.get(name) ?? 0) + 1);
    console.log(`${fault ? "FAIL" : "ok  "} ${name}: ${check}${fault ? `: ${fault}` : ""}`);
  };
  let browser;
  try {
    browser = await start(name);
  } catch (fault) {
    return said("starts", String(fault));
  }
  const results = async (word, part) => {
    const found = [];
    try {
      await part(browser, page, program, (check, fault) => found.push([check, fault]));
    } catch (fault) {
      found.push([`${word} went to its end`, fault.stack?.split("\n").slice(0, 4).join(" ") ?? String(fault)]);
    }
    return found;
  };
  for (const [word, part] of Object.entries(parts)) {
    if (only ? only !== word : name !== "chromium" && inOne.has(word)) continue;
    let found = await results(word, part);
    const faults = found.filter(([, fault]) => fault);
    // Three browsers and their engines on two cores: what waited in vain is tried once more, and told.
    if (faults.length > 0) {
      for (const [check, fault] of faults) console.log(`again ${name}: ${check}: ${fault}`);
      found = await results(word, part);
    }
    for (const [check, fault] of found) said(check, fault);
  }
  await browser.close();
}

const begun = Date.now();
const names = chosen.length > 0 ? chosen : ["chromium", "firefox", "webkit"];
// Side by side: each waits for its own engine most of the time.
await Promise.all(names.map(runIn));
for (const name of names) if (!seen.get(name)) ++failed;
console.log(`${passed} checks passed, ${failed} failed, ${((Date.now() - begun) / 1000).toFixed(0)} s`);
process.exit(failed > 0 ? 1 : 0);
