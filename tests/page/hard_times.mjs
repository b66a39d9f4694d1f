// What must not break it: hostile text, no network, no storage, a killed tab, two tabs, a lost engine.
import { createServer } from "node:http";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createRequire } from "node:module";
import { button, field, goTo, ladderShown, newPainting, openDemo, openFile, nextShown, recordSwab, save, steps, unfold } from "./person.mjs";
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

/** A killed tab gives no sign of its end, a closed one does; what a killed tab held comes back with the card that was begun. */
export async function killedAndClosed(browser, page, report) {
  const begin = async (title) => {
    const tab = await browser.open(page);
    await openDemo(tab);
    await tab.type(field("Title"), title);
    return tab;
  };
  const isOffered = (tab, title) => tab.evaluate((one) => [...document.querySelectorAll("section[aria-labelledby=drafts] p")].some((it) => it.textContent.includes(one)), title);
  const closed = await begin("Invented: closed in good order");
  await new Promise((go) => setTimeout(go, 800));
  await closed.driver.page.goto("about:blank");
  await closed.close();
  const killed = await begin("Invented: the renderer died");
  await goTo(killed, "At the easel");
  await nextShown(killed);
  await recordSwab(killed, { removal: "no effect", original: "nothing seen", remark: "the first" });
  const log = String(await save(killed, "log"));
  await goTo(killed, "At the easel");
  await nextShown(killed);
  await killed.click({ role: "radio", name: "softened or gelled", within: { name: "What it did to the layer to go" } });
  await killed.paste(field("Remark", "This test"), "half filled in");
  await new Promise((go) => setTimeout(go, 1500));
  const session = await browser.context.newCDPSession(killed.driver.page);
  void session.send("Page.crash").catch(() => 0);
  await killed.driver.page.waitForEvent("crash", { timeout: 10000 }).catch(() => 0);
  await killed.close();

  const again = await browser.open(page);
  const soon = [await isOffered(again, "closed in good order"), await isOffered(again, "the renderer died")];
  report("a closed tab's draft is offered at once", soon[0] ? "" : "it is not offered");
  report("a killed tab's draft waits for the tabs that may hold it", soon[1] ? "it is offered before a living tab could answer" : "");
  await again.until((title) => [...document.querySelectorAll("section[aria-labelledby=drafts] p")].some((it) => it.textContent.includes(title)), "the renderer died", "the killed tab's draft", 10000);
  await again.evaluate(() => { [...document.querySelectorAll("section[aria-labelledby=drafts] > div")].find((it) => /renderer died/.test(it.textContent)).querySelector("button").setAttribute("data-take", ""); return true; });
  await again.driver.click("[data-take]");
  await again.until(() => /The draft is open again/.test(document.body.innerText), null, "the draft to be open");
  report("a draft that is taken up has its title", (await again.evaluate(() => document.querySelector("h1").textContent)) === "Invented: the renderer died" ? "" : "another title");
  report("of what is taken up only what was not saved counts so", /Not saved yet: painting\./.test(await again.text()) ? "" : (await again.text()).match(/Not saved yet[^.]*/)?.[0] ?? "nothing is said");
  await goTo(again, "At the easel");
  await nextShown(again);
  await again.until(() => document.querySelectorAll("ol.tests > li").length > 0, null, "the test of the draft", 8000).catch(() => 0);
  const card = await again.evaluate(() => [document.querySelectorAll("ol.tests > li").length, document.querySelector("input[name=tile-removal]:checked")?.value, document.getElementById("test-remark").value].join("; "));
  report("a draft that is taken up has the tests and the card that was begun", card === "1; softened or gelled; half filled in" ? "" : card);
  const kept = String(await save(again, "log"));
  report("the log of a draft is the one that was kept", kept === log ? "" : kept.slice(0, 200));
  const third = await browser.open(page);
  await new Promise((go) => setTimeout(go, 3500));
  report("a draft that was taken up is offered to nobody else", (await isOffered(third, "the renderer died")) ? "it is offered again" : "");
  await third.close();
  await again.close();
}

/** Who begins a painting does not wait behind the lists of names: here they never come. */
export async function beginsAtOnce(browser, page, report) {
  const before = () => {
    const Plain = window.Worker;
    window.Worker = class extends Plain {
      get onmessage() { return this.given; }
      set onmessage(take) {
        this.given = take && ((event) => (/"kind": *"(names|solvents)"/.test(event.data.answer?.text ?? "") ? undefined : take(event)));
        super.onmessage = this.given;
      }
    };
  };
  const tab = await browser.open(page, { before });
  await new Promise((go) => setTimeout(go, 1000));
  await tab.click(button("Begin a new painting"));
  report("a new painting begins while the lists of names are awaited", await tab.waitFor(button("Painting"), 3000).then(() => "", String));
  await tab.close();
}

/** An answer to an older file that arrives late, with marks in it so that it would be seen. */
export async function lateAnswer(browser, page, report) {
  const before = () => {
    const Plain = window.Worker;
    window.held = [];
    window.Worker = class extends Plain {
      get onmessage() { return this.given; }
      set onmessage(take) {
        this.given = take && ((event) => (window.isHolding && /"kind": *"ladder"/.test(event.data.answer?.text ?? "") ? window.held.push([take, event.data]) : take(event)));
        super.onmessage = this.given;
      }
    };
  };
  const tab = await browser.open(page, { before });
  await openDemo(tab);
  await goTo(tab, "Ladder");
  await ladderShown(tab);
  await unfold(tab, "Limits");
  const limit = field("Largest risk to what must stay (0 to 1)");
  await tab.evaluate(() => { window.isHolding = true; window.late = 0; new MutationObserver(() => { if (document.body.innerText.includes("LATE ANSWER")) ++window.late; }).observe(document.body, { subtree: true, childList: true, characterData: true }); return true; });
  await tab.paste(limit, "0.2");
  await tab.until(() => window.held.length > 0, null, "an answer to hold back");
  await tab.paste(limit, "0.15");
  await new Promise((go) => setTimeout(go, 400));
  const isMarked = await tab.evaluate(() => {
    window.isHolding = false;
    let count = 0;
    for (const [take, data] of window.held) {
      const text = data.answer.text.replace(/"target": *"/g, () => { ++count; return `"target": "LATE ANSWER `; });
      take({ data: { ...data, answer: { ...data.answer, text } } });
    }
    return count > 0;
  });
  report("an answer to an older file was held back", isMarked ? "" : "there was no ladder among the answers");
  await ladderShown(tab);
  report("an answer to an older file that comes late is not shown", (await tab.evaluate("window.late")) === 0 ? "" : "it was shown");
  const shown = await tab.evaluate(() => document.querySelector(".stale") === null && document.querySelectorAll("ol.rungs > li").length);
  report("the answer to the file as it is now is shown", shown > 1 ? "" : "no ladder");
  await tab.close();
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
  await run("killed and closed tabs", killedAndClosed);
  await run("late answer", lateAnswer);
  await run("begins at once", beginsAtOnce);
  await run("no storage", noStorage);
  await run("lost engine", lostEngine);
}
