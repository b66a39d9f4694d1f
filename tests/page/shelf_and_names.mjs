// My shelf from one painting to the next, and finding bottles by any of their names.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { button, field, goTo, newPainting, openFile, putOnShelf, save } from "./person.mjs";
import { askProgram } from "./program.mjs";

const { parse } = createRequire(new URL("../../src/page/package.json", import.meta.url))("yaml");
const count = (tab, wanted, what) => tab.until((one) => document.querySelectorAll(".bottles > li").length === one, wanted, what, 8000);

async function ownShelf(browser, page, program, report) {
  const folder = mkdtempSync(join(tmpdir(), "gentlest_page_"));
  const first = await browser.open(page);
  await newPainting(first);
  await putOnShelf(first, [["isooctane", "/^isooctane/"], ["ethanol", "/^ethanol/"], ["acetone", "/^acetone/"]]);
  await first.type(field("Grade on the label", "/^ethanol/"), "96 %");
  await first.type(field("Opened on", "/^acetone/"), "2026-03-14");
  await first.click(button("Keep these bottles in my shelf"));
  await first.until(() => /3 bottles in my shelf/.test(document.body.innerText), null, "3 bottles in my shelf");
  await first.click(button("Save my shelf"));
  const { name, bytes } = await first.saved("shelf.*\\.ya?ml$");
  const kept = parse(String(bytes));
  const told = JSON.stringify(kept.bottles);
  report("my shelf holds the bottles with grade and day", kept.gentlest_shelf === 1 && /"ethanol","grade":"96 %"/.test(told) && /"acetone","opened":"2026-03-14"/.test(told) && kept.bottles.length === 3 ? "" : told);
  report("an opened bottle's day is no key of the job", /opened/.test(String(await save(first, "job"))) ? "the job says opened" : "");
  await first.close();

  writeFileSync(join(folder, name), bytes);
  const next = await browser.open(page);
  await newPainting(next);
  await putOnShelf(next, [["acetone", "/^acetone/"]]);
  await openFile(next, join(folder, name));
  await next.until(() => /3 bottles in my shelf/.test(document.body.innerText), null, "my shelf to be opened");
  await next.click(button("Put my shelf's bottles into this painting"));
  await count(next, 3, "3 bottles, the acetone only once");
  const job = parse(String(await save(next, "job")));
  report("my shelf comes into the next painting, what is there only once", JSON.stringify(job.shelf) === '["acetone","isooctane",{"solvent":"ethanol","grade":"96 %"}]' ? "" : JSON.stringify(job.shelf));
  await goTo(next, "Shelf");
  const opened = await next.evaluate(() => [...document.querySelectorAll(".bottles input[type=text]")].map((one) => one.value).includes("2026-03-14"));
  report("the day on which a bottle was opened comes along", opened ? "" : "it is not shown");
  const check = await askProgram(program, { command: "check", words: ["job.yaml"], files: { "job.yaml": String(await save(next, "job")) } });
  report("the program takes a job with the bottles of my shelf", check.exit === 0 ? "" : check.notes + check.text);
  await next.close();
  rmSync(folder, { recursive: true, force: true });
}

/** The program knows the names; of each language one is typed, and what the page writes must be that very record to the program. */
async function names(browser, page, program, report) {
  const { names: all } = JSON.parse((await askProgram(program, { command: "list", words: ["names"], options: { format: "json" } })).text);
  const own = all.filter((one) => one.of === "solvent" && one.id !== null);
  // One a record, so that no bottle is ticked twice.
  const chosen = [];
  for (const language of [...new Set(own.map((one) => one.language))].sort()) {
    const of = own.filter((one) => one.language === language && !chosen.some((other) => other.id === one.id) && one.name.length > 2);
    chosen.push(...[of[Math.floor(of.length / 3)], of[Math.floor((2 * of.length) / 3)]].filter(Boolean).filter((one, i, some) => some.findIndex((other) => other.id === one.id) === i));
  }
  const tab = await browser.open(page);
  await newPainting(tab);
  await goTo(tab, "Shelf");
  const find = { role: "combobox", name: "Find a bottle by any of its names" };
  // The names are there once one is offered.
  await tab.type(find, "acetone");
  await tab.waitFor({ role: "option", name: "/^acetone/" });
  await tab.press("Escape");
  for (const [i, one] of chosen.entries()) {
    await tab.type(find, one.name.toUpperCase());
    await tab.press("Tab"); // left with a name in full: that record
    await count(tab, i + 1, `a bottle for ${one.name}`);
  }
  const { shelf } = parse(String(await save(tab, "job")));
  const asked = await Promise.all(shelf.map((written) => askProgram(program, { command: "show", words: [written.solvent ?? written], options: { format: "json" } })));
  const wrong = chosen.filter((one, i) => asked[i]?.exit !== 0 || JSON.parse(asked[i].text).cards[0].id !== one.id).map((one, i) => `${one.name} (${one.language}): ${JSON.stringify(shelf[i])}`);
  report(`bottles are found by ${chosen.length} names of ${new Set(chosen.map((one) => one.language)).size} kinds, and are those of the program`, wrong.join("; "));

  await goTo(tab, "Shelf");
  const offered = async (typed) => { await tab.type(find, typed); await tab.waitFor({ role: "option" }); return tab.evaluate(() => [...document.querySelectorAll("[role=option]")].filter((it) => it.offsetParent).map((it) => it.textContent.trim())); };
  report("a whole name stands before those that hold it", /^acetone$/.test((await offered("acetone"))[0].split(" ")[0]) ? "" : (await offered("acetone")).join("; "));
  report("accents and case do not matter", (await offered("ACÉTONE")).some((one) => /acetone/i.test(one)) ? "" : "acetone is not offered");
  report("no such name is said", /No such name/.test((await offered("moonshine"))[0]) ? "" : (await offered("moonshine")).join("; "));
  const several = all.find((one) => one.of === "solvent" && one.id === null && one.asks);
  if (several) report(`a name that means several (${several.name}) is asked back`, (await offered(several.name)).length > 1 ? "" : (await offered(several.name)).join("; "));
  await tab.close();
}

export async function shelfAndNames(browser, page, program, report) {
  await ownShelf(browser, page, program, report);
  await names(browser, page, program, report);
}
