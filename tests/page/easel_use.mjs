// What the card and the list of tests let a person do: closed rungs are marked, signs are put right, short words are understood.
import { fileURLToPath } from "node:url";
import { readFileSync } from "node:fs";
import { button, goTo, nextShown, openDemo, openFile, save, unfold } from "./person.mjs";
import { askProgram } from "./program.mjs";

const harm = new URL("jobs/harm.log", import.meta.url);

/** The recipes that the program says a harm closed. */
async function struckOut(program, job, log) {
  const { text } = await askProgram(program, { command: "next", words: ["job.yaml", "tests.log"], options: { format: "json" }, files: { "job.yaml": job, "tests.log": log } });
  return (JSON.parse(text).next[0].closed_mixtures ?? "").split(" | ").filter((one) => one !== "");
}

export async function easelUse(browser, page, program, report) {
  const tab = await browser.open(page);
  await openDemo(tab);
  await goTo(tab, "At the easel");
  await nextShown(tab);
  const options = () => tab.evaluate(() => [...document.querySelectorAll("#test-mixture optgroup option")].map((one) => one.textContent));
  report("before a harm no rung is marked as closed", (await options()).some((one) => /^CLOSED/.test(one)) ? "one is marked" : "");
  await openFile(tab, fileURLToPath(harm));
  await tab.until(() => document.querySelectorAll("ol.tests > li.harmed").length > 0, null, "the harms of the log");
  await tab.until(() => [...document.querySelectorAll("#test-mixture option")].some((one) => /^CLOSED/.test(one.textContent)), null, "closed rungs to be marked");
  const job = String(await save(tab, "job"));
  const closed = await struckOut(program, job, readFileSync(harm, "utf8"));
  const wrong = (await options()).map((one) => [one, /: (.*)$/.exec(one.replace(/^CLOSED: /, ""))?.[1]]).filter(([, recipe]) => recipe)
    .filter(([shown, recipe]) => /^CLOSED/.test(shown) !== closed.includes(recipe)).map(([shown]) => shown);
  report("the rungs marked as closed are those that the program strikes out", closed.length === 0 ? "the program strikes out nothing" : wrong.join("; "));

  await unfold(tab, "/^Looked at again, or wrong\\? Test 3$/");
  const test3 = () => [...document.querySelectorAll("ol.tests > li")].find((one) => /^Test 3/.test(one.querySelector("h3").textContent));
  await tab.until(`(${test3})().querySelectorAll("form").length === 3`, null, "the forms of test 3");
  const isOffered = await tab.evaluate(`[...(${test3})().querySelectorAll("form option")].some((one) => one.value === "signs")`);
  report("signs can be put right", isOffered ? "" : "they are no field of the correction");
  await tab.evaluate(`(() => { const it = [...(${test3})().querySelectorAll("form select")].find((one) => [...one.options].some((two) => two.value === "signs")); it.value = "signs"; it.dispatchEvent(new Event("change", { bubbles: true })); return true; })()`);
  await tab.until(`!!(${test3})().querySelector("form .tile")`, null, "the signs to tick");
  await tab.evaluate(`(() => { const it = [...(${test3})().querySelectorAll("form .tile")].find((one) => one.textContent === "blanched").querySelector("input"); it.click(); return true; })()`);
  await tab.until(`[...(${test3})().querySelectorAll("form .tile input")].some((one) => one.checked)`, null, "a sign ticked");
  await tab.evaluate(`(() => { const form = [...(${test3})().querySelectorAll("form")].find((one) => one.querySelector(".tile")); const it = [...form.querySelectorAll("input")].at(-1); it.setAttribute("data-why", ""); return true; })()`);
  await tab.driver.type("[data-why]", "overlooked");
  await tab.click(button("Write the correction down"));
  const log = await tab.until(`(${test3})().innerText.includes("Corrected: overlooked")`, null, "the correction").then(() => save(tab, "log"));
  const { readings } = JSON.parse((await askProgram(program, { command: "readings", words: ["tests.log"], options: { format: "json" }, files: { "tests.log": log } })).text);
  report("a sign put right is read by the program", readings.find((one) => one.test === 3 && !one.looked_after)?.signs === "blanched" ? "" : JSON.stringify(readings.map((one) => [one.test, one.signs])));

  await goTo(tab, "At the easel");
  await unfold(tab, "Type it in short words");
  const words = { role: "textbox", name: "The test in your words" };
  const before = String(log);
  await tab.type(words, "rung 1: partly, nothing seen, 20 s, edge");
  await tab.click(button("How is this understood?"));
  await tab.waitFor(button("Yes, write it down"));
  report("short words are shown as they are understood", /partly removed; nothing seen[^]*20 s/.test(await tab.text()) ? "" : "other words");
  report("what is only understood is not written", String(await save(tab, "log")) === before ? "" : "the log changed");
  await goTo(tab, "At the easel");
  await tab.type(words, "moonshine: hardly at all");
  await tab.click(button("How is this understood?"));
  await tab.until(() => [...document.querySelectorAll("details.panel .faults")].some((one) => one.offsetParent), null, "a fault");
  report("short words that nobody understands are not offered for writing", (await tab.find(button("Yes, write it down"))) ? "they are" : "");
  await tab.close();
}
