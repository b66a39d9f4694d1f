// What must not break it: hostile text, no network, no storage, a killed tab, two tabs, a lost engine.
import { createServer } from "node:http";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createRequire } from "node:module";
import { button, field, goTo, ladderShown, newPainting, openDemo, openFile, nextShown, recordSwab, save, steps } from "./person.mjs";
import { askProgram } from "./program.mjs";

const { parse } = createRequire(new URL("../../src/page/package.json", import.meta.url))("yaml");

const hostile = {
  script: `<script>window.broken = 1</script><img src=x onerror="window.broken=1">`,
  quotes: `"'\`: # - [x] {y} & * ! | > % @ \\ \\n`,
  emoji: "🙂🎨👩🏽‍🎨 e\u0301",
  rightToLeft: "\u202Eاللون الأزرق\u202C עברית",
  yaml: "yes",
  number: "1e3",
  nothing: "~",
  long: "Quitte".repeat(1667),
};

async function hostileText(browser, page, program, report) {
  const tab = await browser.open(page);
  await newPainting(tab);
  for (const [kind, text] of Object.entries(hostile).slice(0, browser.name === "chromium" ? undefined : 2)) {
    await goTo(tab, "Painting");
    const names = (await tab.names("textbox")).filter((name) => !/cm|years|per cent|number/i.test(name));
    // Each field of a name has its number; names of layers change others' names meanwhile, so the rest may be gone.
    for (const [i, name] of names.entries()) {
      const target = { role: "textbox", name, nth: names.slice(0, i).filter((one) => one === name).length };
      if (await tab.find(target)) await tab.paste(target, text);
    }
    await tab.until("document.querySelector('h1') !== null");
    const shown = await tab.evaluate(() => [...document.querySelectorAll("input, textarea")].map((one) => one.value));
    report(`hostile text (${kind}) stands as it was typed`, shown.includes(text) ? "" : JSON.stringify(shown.map((one) => one.slice(0, 40))).slice(0, 200));
    for (const step of steps) await goTo(tab, step);
    report(`hostile text (${kind}) runs nothing`, (await tab.evaluate("window.broken ?? null")) === null ? "" : "a script of the text ran");
    const job = String(await save(tab, "job"));
    const { title, note } = parse(job).object;
    report(`hostile text (${kind}) is that text in the file`, title === text && note === text ? "" : JSON.stringify([title, note]).slice(0, 200));
    const check = await askProgram(program, { command: "check", words: ["job.yaml", ], options: { format: "json" }, files: { "job.yaml": job } });
    const isRead = check.exit === 0 || !/bracket|quote|indent|never closed|cannot be read/i.test(check.notes + check.text);
    report(`hostile text (${kind}) is written so that the program reads it`, isRead ? "" : (check.notes + check.text).slice(0, 300));
  }
  await tab.close();
}

/** The same at the easel: in the log it is the remark that was typed, and nothing else. */
async function hostileRemarks(browser, page, program, report) {
  const tab = await browser.open(page);
  await openDemo(tab);
  await goTo(tab, "At the easel");
  const kinds = browser.name === "chromium" ? Object.keys(hostile) : ["script", "quotes"];
  for (const kind of kinds) {
    await nextShown(tab);
    await recordSwab(tab, { removal: "no effect", original: "nothing seen", remark: hostile[kind] });
  }
  report("hostile remarks run nothing", (await tab.evaluate("window.broken ?? null")) === null ? "" : "a script of a remark ran");
  const log = await save(tab, "log");
  const { text, notes } = await askProgram(program, { command: "readings", words: ["tests.log"], options: { format: "json" }, files: { "tests.log": log } });
  const remarks = JSON.parse(text).readings.map((one) => one.remark);
  for (const [i, kind] of kinds.entries()) report(`a hostile remark (${kind}) is that text in the log`, remarks[i] === hostile[kind].trim() ? "" : `${JSON.stringify(remarks[i])?.slice(0, 120)} ${notes.slice(0, 120)}`);
  await tab.close();
}

async function offline(browser, page, report) {
  let reached = 0;
  const server = createServer((_, answer) => { ++reached; answer.end("x"); }).listen(0, "127.0.0.1");
  await new Promise((go) => server.once("listening", go));
  const address = `http://127.0.0.1:${server.address().port}/`;
  const tab = await browser.open(page);
  const refused = await tab.evaluate((one) => fetch(one).then(() => "reached", () => "refused"), address);
  await tab.evaluate(async (one) => {
    const tries = [];
    const put = (tag, key) => tries.push(new Promise((go) => { const it = document.createElement(tag); it.onload = it.onerror = go; it[key] = one; document.body.append(it); setTimeout(() => { it.remove(); go(); }, 300); }));
    put("img", "src"); put("script", "src"); put("iframe", "src"); put("video", "src");
    const link = document.createElement("link"); link.rel = "stylesheet"; link.href = one; document.head.append(link);
    try { new WebSocket(one.replace("http", "ws")); } catch { /* refused */ }
    try { navigator.sendBeacon(one, "x"); } catch { /* refused */ }
    const form = document.createElement("form"); form.action = one; form.method = "post"; document.body.append(form); try { form.submit(); } catch { /* refused */ }
    const work = new Worker(URL.createObjectURL(new Blob([`fetch(${JSON.stringify(one)}).catch(() => 0).finally(() => postMessage(0))`])));
    tries.push(new Promise((go) => { work.onmessage = work.onerror = go; setTimeout(go, 500); }));
    await Promise.all(tries);
    link.remove(); form.remove();
    return true;
  }, address);
  report("the page can load nothing from a network", refused === "refused" && reached === 0 ? "" : `${refused}, the server was reached ${reached} times`);
  if (tab.driver.requests) {
    const own = await browser.open(page);
    await openDemo(own);
    await goTo(own, "Ladder");
    await ladderShown(own);
    const sent = own.driver.requests.filter((one) => !/^(file|data|blob|about):/.test(one));
    report("the page asks for nothing", sent.length ? sent.join(" ") : "");
    report("the browser's console tells of no fault", own.driver.faults.join(" | "));
    await own.close();
  }
  await tab.close();
  server.close();
}

/** Typed, then killed: the draft is offered to who opens the page again, and not while the tab is alive. */
async function killedTab(browser, page, report) {
  const tab = await browser.open(page);
  await newPainting(tab);
  await goTo(tab, "Painting");
  await tab.type(field("Title"), "Invented: the killed tab");
  report("unsaved work is said", await tab.until(() => /not saved|unsaved/i.test(document.body.innerText), null, "a word of unsaved work", 40000).then(() => "", String));
  await new Promise((go) => setTimeout(go, 1500));
  const second = await browser.open(page);
  await new Promise((go) => setTimeout(go, 1500));
  report("a second tab does not take the draft of one that is alive", /the killed tab/.test(await second.text()) ? "the draft of a living tab is offered" : "");
  await newPainting(second);
  await goTo(second, "Painting");
  await second.type(field("Title"), "Invented: the second tab");
  const kept = await tab.evaluate(() => [...document.querySelectorAll("input, textarea")].some((one) => one.value === "Invented: the killed tab"));
  report("two tabs do not write over each other", kept ? "" : "the first tab lost its text");
  await new Promise((go) => setTimeout(go, 1500));
  await tab.close();
  await second.close();
  const again = await browser.open(page);
  const offered = await again.until(() => [...document.querySelectorAll("button")].find((one) => /draft|go on|take .*up|restore/i.test(one.textContent))?.textContent ?? null, null, "the draft to be offered", 20000).catch(String);
  report("a killed tab's draft is offered", /waited/.test(offered) ? offered : "");
  // One whose tab gave no sign of its end is offered once the others had time to answer.
  const both = await again.until(() => /the killed tab/.test(document.body.innerText) && /the second tab/.test(document.body.innerText), null, "both drafts to be offered", 20000).then(() => "", String);
  report("both drafts are offered, by their titles", both);
  if (!/waited/.test(offered)) {
    await again.click(button(offered.trim()));
    await again.until(() => /Invented: the (killed|second) tab/.test([...document.querySelectorAll("input, textarea")].map((one) => one.value).join() + document.body.innerText), null, "the draft's title").then(() => report("the draft comes back whole", ""), (fault) => report("the draft comes back whole", String(fault)));
  }
  await again.close();
}

async function noStorage(browser, page, report) {
  const before = () => {
    for (const name of ["localStorage", "sessionStorage", "indexedDB"]) Object.defineProperty(window, name, { get() { throw new DOMException("not granted", "SecurityError"); } });
    delete window.BroadcastChannel;
  };
  const tab = await browser.open(page, { before });
  await openDemo(tab);
  await goTo(tab, "Ladder");
  await ladderShown(tab);
  await goTo(tab, "Painting");
  await tab.type(field("Title"), "Invented: no storage");
  await new Promise((go) => setTimeout(go, 800));
  report("the page works where no storage is granted", tab.driver.faults.join(" | "));
  await tab.close();
}

/** The engine is lost in the middle of the work. */
async function lostEngine(browser, page, report) {
  const before = () => {
    const Plain = window.Worker;
    window.workers = [];
    window.Worker = class extends Plain { constructor(...given) { super(...given); window.workers.push(this); } };
  };
  const tab = await browser.open(page, { before });
  await openDemo(tab);
  await goTo(tab, "Ladder");
  await ladderShown(tab);
  const wrong = await tab.evaluate(() => window.gentlest.ask("test", { command: "no such command", words: [] }));
  report("a broken question is answered, not lost", wrong.exit >= 2 ? "" : JSON.stringify(wrong).slice(0, 120));
  await goTo(tab, "Painting");
  await tab.type(field("Title"), "Invented: kept through it all");
  // With a question still to come the engine would be started anew before anybody reads that it was lost.
  await new Promise((go) => setTimeout(go, 1000));
  await tab.until(() => /\bReady\b/.test(document.body.innerText), null, "the engine at rest", 40000);
  await tab.evaluate(() => { const last = window.workers.at(-1); last.onerror(new ErrorEvent("error", { message: "out of memory" })); last.terminate(); return true; });
  const told = await tab.until(() => /has failed/.test(document.body.innerText) && /save your files/.test(document.body.innerText), null, "a word on the lost engine", 40000).then(() => "", String);
  report("a lost engine is told, with what to save", told);
  const kept = await tab.evaluate(() => [...document.querySelectorAll("input, textarea")].some((one) => one.value === "Invented: kept through it all"));
  report("a lost engine loses nothing typed", kept ? "" : "the title is gone");
  await tab.type(field("Title"), "Invented: and on it goes");
  await goTo(tab, "Ladder");
  report("the page goes on after a lost engine", await ladderShown(tab, 40000).then(() => "", String));
  await tab.close();
}

/** A file that is none is named and replaces nothing. */
async function wrongFiles(browser, page, report) {
  const folder = mkdtempSync(join(tmpdir(), "gentlest_page_"));
  const write = (name, content) => { writeFileSync(join(folder, name), content); return join(folder, name); };
  const tab = await browser.open(page);
  await openDemo(tab);
  await goTo(tab, "Painting");
  const title = await tab.until(() => [...document.querySelectorAll("input")].map((one) => one.value).find((one) => /Pears/.test(one)), null, "the demo's title");
  const unchanged = async (what) => {
    await goTo(tab, "Painting");
    report(`${what} replaces nothing`, (await tab.evaluate((one) => [...document.querySelectorAll("input")].some((it) => it.value === one), title)) ? "" : "the painting is gone");
  };
  await openFile(tab, write("picture.yaml", Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 16, 0x4a, 0x46])));
  report("a file that is no text is named", await tab.until(() => document.body.innerText.includes("picture.yaml"), null, "picture.yaml named", 40000).then(() => "", String));
  await unchanged("a file that is no text");
  await openFile(tab, write("latin.yaml", Buffer.from("gentlest_job: 1\nobject: {title: \"M\xe4dchen\"}\n", "latin1")));
  report("a file that is not UTF-8 is named", await tab.until(() => document.body.innerText.includes("latin.yaml"), null, "latin.yaml named", 40000).then(() => "", String));
  await unchanged("a file that is not UTF-8");
  await openFile(tab, write("broken.yaml", readFileSync(new URL("jobs/broken.yaml", import.meta.url))));
  report("a job that cannot be read is named with its line", await tab.until(() => /broken\.yaml/.test(document.body.innerText) && /(line 2|:2)\b/.test(document.body.innerText), null, "broken.yaml and line 2", 40000).then(() => "", String));
  await unchanged("a job that cannot be read");
  await tab.close();
  rmSync(folder, { recursive: true, force: true });
}

export async function hardTimes(browser, page, program, report) {
  const run = async (name, part) => part(browser, page, ...(part.length === 4 ? [program, report] : [report])).catch((fault) => report(`${name} went to its end`, fault.stack?.split("\n").slice(0, 3).join(" ") ?? String(fault)));
  await run("offline", offline);
  await run("killed tab", killedTab);
  await run("wrong files", wrongFiles);
  await run("hostile remarks", hostileRemarks);
  if (browser.name !== "webkit") await run("hostile text", hostileText);
  if (browser.name !== "chromium") return;
  await run("no storage", noStorage);
  await run("lost engine", lostEngine);
}
