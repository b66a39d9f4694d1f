// The page for everyone: by keyboard alone, as a screen reader is told it, dark and light, with large text, for a gloved finger.
import { breaches, largeText, nameless, overflow, tooSmall } from "./measures.mjs";
import { afterwardsShown, goTo, ladderShown, nextShown, openDemo, steps, usualBottles } from "./person.mjs";

const touch_px = (12 * 96) / 25.4;

/** What has the keyboard's attention: its name, and whether one sees that it has. */
const focused = (tab) => tab.evaluate(() => {
  const one = document.activeElement;
  if (!one || one === document.body) return { name: "", isSeen: true };
  const text = (it) => (it?.textContent ?? "").replace(/\s+/g, " ").trim();
  const name = one.getAttribute("aria-label") || text(one.labels?.[0]) || text(document.getElementById(one.getAttribute("aria-labelledby"))) || text(one) || one.title;
  // A tick or tile may show it on what stands around it.
  const isOutlined = (it) => { const look = getComputedStyle(it); return (look.outlineStyle !== "none" && parseFloat(look.outlineWidth) >= 2) || look.boxShadow !== "none"; };
  const around = [one, one.nextElementSibling, one.closest("label")].filter(Boolean);
  return { name, tag: one.tagName, type: one.type ?? "", group: text(one.closest("fieldset")?.querySelector("legend")), isSeen: around.some(isOutlined), checked: one.checked ?? null };
});

/** Walks by Tab until the control of that name has the attention. */
async function tabTo(tab, name, unseen, most = 400) {
  for (let i = 0; i < most; ++i) {
    const now = await focused(tab);
    if (!now.isSeen) unseen.add(`${now.tag} ${now.name.slice(0, 40)}`);
    if (now.name && (name instanceof RegExp ? name.test(`${now.group}: ${now.name}`) || name.test(now.name) : now.name === name)) return now;
    await tab.press("Tab");
  }
  throw new Error(`Tab never reached ${name}`);
}

/** A short job without a pointer: begin, a title, a bottle, the ladder, one swab, the sheet. */
async function byKeyboard(browser, page, report) {
  const tab = await browser.open(page);
  const unseen = new Set();
  const go = async (name, ...keys) => { await tabTo(tab, name, unseen); for (const key of keys) await tab.press(key); };
  const type = (text) => tab.driver.page.keyboard.type(text);
  const step = async (name) => { await tab.driver.page.keyboard.press("Control+Home"); await tab.evaluate("document.activeElement.blur?.()"); await go(name, "Enter"); };
  await go("Begin a new painting", "Enter");
  await tab.waitFor({ role: "button", name: "Painting" });
  await go("Title", "Control+a");
  await type("Invented: by keyboard alone");
  const order = () => tab.evaluate(() => [...document.querySelectorAll("button")].map((one) => one.getAttribute("aria-label") || one.textContent).filter((name) => /^Move .* down$/.test(name)).join("; "));
  const before = await order();
  await go(/^Move varnish down$/, "Enter");
  report("by keyboard: a layer moves", (await tab.until((was) => [...document.querySelectorAll("button")].map((one) => one.getAttribute("aria-label") || one.textContent).filter((name) => /^Move .* down$/.test(name)).join("; ") !== was, before, "another order", 3000).then(() => "", String)));
  const moved = await focused(tab);
  report("by keyboard: a layer that is moved keeps the attention", /varnish/.test(moved.name) ? "" : `the attention is on ${moved.name || "nothing"}`);
  await go(/^Move varnish up$/, "Enter");
  await step("Shelf");
  await go("Find a bottle by any of its names");
  for (const [typed, offered] of [...usualBottles, ["butanon", "/butanone/i"]]) {
    await type(typed);
    await tab.waitFor({ role: "option", name: offered });
    await tab.press("ArrowDown");
    await tab.press("Enter");
  }
  await tab.until(() => /7 bottles on the shelf/.test(document.body.innerText), null, "7 bottles on the shelf");
  report("by keyboard: bottles are put on the shelf", "");
  await step("Ladder");
  await ladderShown(tab);
  await step("At the easel");
  await nextShown(tab);
  await go(/^What it did to the layer to go: left open$/, "ArrowDown");
  await go(/^What it did to the original: left open$/, "ArrowDown");
  await go("Write it down", "Enter");
  report("by keyboard: a swab is written down", await tab.until(() => document.querySelectorAll("ol.tests > li").length === 1, null, "one test", 8000).then(() => "", String));
  await step("Papers");
  report("by keyboard: the sheet is made", await tab.until(() => /Sheet for the easel: ready\./.test(document.body.innerText), null, "the sheet", 8000).then(() => "", String));
  await go("Save as a file", "Enter");
  await tab.saved("-sheet\\.html$");
  report("by keyboard: what has the attention is seen", [...unseen].slice(0, 5).join("; "));
  await tab.close();
}

/** Every step with the demo: dark and light, letters twice as large, and the tree of a screen reader. */
async function everyStep(browser, page, report) {
  const tab = await browser.open(page);
  const media = (scheme) => tab.driver.page.emulateMedia({ colorScheme: scheme });
  await media("dark");
  report("the first screen, dark: WCAG 2.2 AA", await breaches(tab));
  await media("light");
  report("the first screen, light: WCAG 2.2 AA", await breaches(tab));
  await openDemo(tab);
  for (const step of steps) {
    await goTo(tab, step);
    if (step === "Ladder") await ladderShown(tab);
    if (step === "At the easel") await nextShown(tab);
    if (step === "Afterwards") await afterwardsShown(tab);
    if (step === "Papers") await tab.until(() => /ready\./.test(document.body.innerText), null, "a paper");
    // Folded parts count too.
    await tab.evaluate(() => { for (const one of document.querySelectorAll("main details")) if (one.querySelectorAll("*").length < 400) one.open = true; return true; });
    await new Promise((go) => setTimeout(go, 300));
    for (const scheme of ["dark", "light"]) {
      await media(scheme);
      report(`${step}, ${scheme}: WCAG 2.2 AA`, await breaches(tab));
    }
    const { count, fault } = await nameless(tab);
    report(`${step}: every control has a name in the tree of a screen reader`, fault || (count < 8 ? `only ${count} controls seen` : ""));
    await largeText(tab, true);
    report(`${step}: text of 200 % needs no sideways scroll`, await overflow(tab));
    await tab.size(390, 844);
    await largeText(tab, false);
    report(`${step}: nothing runs over at 390 px, all unfolded`, await overflow(tab));
    report(`${step}: targets of ${step === "At the easel" ? "12 mm on the card" : "44 px"}`, step === "At the easel" ? await tooSmall(tab, touch_px, ".card") : await tooSmall(tab, 44));
    await tab.size(1280, 900);
  }
  await tab.close();
}

/** Reads the words of one language: none of the other may be left where a person reads. */
async function german(browser, page, report) {
  const tab = await browser.open(page);
  await tab.choose({ role: "combobox", name: "Language" }, "Deutsch");
  await tab.until("document.documentElement.lang === 'de'", null, "the page in German");
  await tab.evaluate(() => [...document.querySelectorAll("button")].find((one) => /Beispiel/.test(one.textContent))?.click() ?? true);
  await tab.until(() => document.querySelectorAll("nav button").length >= 6, null, "the steps");
  const left = [];
  for (let i = 0; i < 6; ++i) {
    await tab.evaluate((at) => { document.querySelectorAll("nav button")[at].click(); return true; }, i);
    await new Promise((go) => setTimeout(go, 700));
    left.push(...(await tab.evaluate(() => {
      const common = /\b(which|what|left open|choose|write|remove|save|open)\b/i;
      return [...document.querySelectorAll("main button, main label, main legend, main h2, main summary")].map((one) => one.textContent.replace(/\s+/g, " ").trim()).filter((text) => common.test(text) && !/[äöüß]|\b(der|die|das|und|nicht|mit|von)\b/i.test(text));
    })));
    report(`German, step ${i + 1}: WCAG 2.2 AA`, await breaches(tab));
    await tab.size(390, 844);
    report(`German, step ${i + 1}: nothing runs over at 390 px`, await overflow(tab));
    await tab.size(1280, 900);
  }
  report("German: no label is left in English", [...new Set(left)].slice(0, 6).join(" | "));
  await tab.close();
}

export async function everyone(browser, page, _program, report) {
  if (browser.name !== "chromium") return;
  for (const [name, part] of [["keyboard", byKeyboard], ["every step", everyStep], ["German", german]])
    await part(browser, page, report).catch((fault) => report(`${name} went to its end`, fault.stack?.split("\n").slice(0, 3).join(" ") ?? String(fault)));
}
