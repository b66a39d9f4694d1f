// Pictures of the page with the demo, for docs and for looking at: build/page/shots/ (--shots of run.mjs). Judges nothing but
// that each picture was made.
import { mkdirSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { afterwardsShown, goTo, ladderShown, nextShown, openDemo, steps } from "./person.mjs";

const names = { Painting: "painting", Shelf: "shelf", Ladder: "ladder", "At the easel": "easel", Afterwards: "afterwards", Papers: "papers" };

const isDrawn = (tab) => tab.until(() => [...document.querySelectorAll("figure.chart")].every((one) => one.querySelector("svg")) && !document.querySelector("figure.chart .warn"), null, "the charts to be drawn");

async function ready(tab, step) {
  await goTo(tab, step);
  if (step === "Ladder") await ladderShown(tab).then(() => isDrawn(tab));
  if (step === "At the easel") await nextShown(tab);
  if (step === "Afterwards") await afterwardsShown(tab);
  if (step === "Papers") await tab.until(() => /ready\./.test(document.body.innerText), null, "the sheet");
  await tab.until(() => /\bReady\b/.test(document.querySelector("header").innerText), null, "the engine at rest");
}

export async function shots(browser, page, _program, report) {
  const folder = join(dirname(page), "shots");
  mkdirSync(folder, { recursive: true });
  for (const width of [1280, 390]) {
    const tab = await browser.open(page, { width, height: width === 1280 ? 1600 : 844 });
    const shot = async (name, isWhole) => {
      const file = join(folder, `page_${name}${width === 1280 ? "" : `_${width}`}.png`);
      await (isWhole || !tab.driver.page ? tab.screenshot(file) : tab.driver.page.screenshot({ path: file }));
      report(`a picture: ${file}`, statSync(file).size > 5000 ? "" : "it is empty");
    };
    await shot("first", true);
    await openDemo(tab);
    for (const step of steps) {
      await ready(tab, step);
      await tab.evaluate("window.scrollTo(0, 0)");
      await shot(step === "Ladder" ? "ladder_whole" : names[step], true);
      // The picture of README and docs/page.md: one screen of the ladder, with its vials.
      if (step === "Ladder" && width === 1280) {
        await tab.size(1000, 760);
        await tab.evaluate("(window.scrollTo(0, document.querySelector('ol.rungs').getBoundingClientRect().top + window.scrollY - 90), true)");
        await shot("ladder", false);
        await tab.size(width, 1600);
      }
    }
    await tab.close();
  }
}
