// What a person does in the page, by the English names of its controls. A word of the page that changes is changed here once.
export const button = (name, within) => ({ role: "button", name, ...(within ? { within: { name: within } } : {}) });
export const field = (name, within) => ({ role: "textbox", name, ...(within ? { within: { name: within } } : {}) });
const tile = (name, within) => ({ role: "radio", name, within: { name: within } });

export const steps = ["Painting", "Shelf", "Ladder", "At the easel", "Afterwards", "Papers"];

export async function goTo(tab, step) {
  await tab.click(button(step, "Steps of the work"));
  await tab.until((name) => [...document.querySelectorAll("[aria-current]")].some((one) => one.textContent.includes(name)), step, `the step ${step}`);
}

const openedNow = (tab) => tab.waitFor(button("Painting"));

export async function newPainting(tab) {
  if (!(await tab.find(button("Begin a new painting")))) await unfold(tab, "/^Files:/");
  await tab.click(button("Begin a new painting"));
  await openedNow(tab);
}

export async function openDemo(tab) {
  await tab.click(button("Look at an invented example"));
  await openedNow(tab);
}

/** Opens a job or a log of the program from the disk. */
export const openFile = (tab, path) => tab.give({ role: "file", name: "/^Open files/" }, path);

/** Opens what is folded together under a name. */
export async function unfold(tab, name) {
  await tab.waitFor(button(name));
  if (!(await tab.evaluate("document.querySelector('[data-found]').closest('details').open"))) await tab.click(button(name));
}

/** What the page saves: the bytes of the job or of the log. */
export async function save(tab, kind) {
  await unfold(tab, "/^Files:/");
  await tab.click(button(kind === "job" ? "Save painting" : "Save tests"));
  return (await tab.saved(kind === "job" ? "\\.ya?ml$" : "\\.log$")).bytes;
}

/** The ladder stands there and belongs to what is written. */
export const ladderShown = (tab, most_ms) => tab.until(() => document.querySelectorAll("ol.rungs > li").length > 1 && document.body.innerText.includes("Rung 1") && !document.querySelector(".stale"), null, "the ladder", most_ms);

/** Chooses a name by typing some of it and taking what the list offers. */
export async function chooseName(tab, target, typed, offered) {
  await tab.type({ role: "combobox", ...target }, typed);
  const option = { role: "option", name: offered };
  await tab.waitFor(option);
  for (let i = 0; i < 60; ++i) {
    await tab.press("ArrowDown");
    const at = await tab.evaluate(() => {
      const id = document.activeElement?.getAttribute("aria-activedescendant");
      return id ? document.getElementById(id)?.textContent.replace(/\s+/g, " ").trim() ?? "" : "";
    });
    const form = /^\/(.*)\/([a-z]*)$/.exec(offered);
    if (form ? new RegExp(form[1], form[2]).test(at) : at === offered) break;
  }
  await tab.press("Enter");
}

/** Puts bottles on the shelf, which is empty at first: each by typing a name and taking what the list offers. */
export async function putOnShelf(tab, bottles) {
  await goTo(tab, "Shelf");
  for (const [typed, offered] of bottles) await chooseName(tab, { name: "Find a bottle by any of its names" }, typed, offered);
  await tab.until((count) => document.querySelectorAll(".bottles > li").length === count, bottles.length, `${bottles.length} bottles`);
}

/** What stood in the template before the page left its shelf empty. */
export const usualBottles = [["isooctane", "/^isooctane/"], ["dearomatised", "/^dearomatised white spirit/"], ["ethanol", "/^ethanol/"], ["isopropanol", "/^isopropanol/"], ["acetone", "/^acetone/"], ["ethyl acetate", "/^ethyl acetate/"]];

/** Presses "Print": what the browser was given, as it stood in the frame then. Nothing goes to a printer. */
export async function printed(tab) {
  await tab.until("!!document.querySelector('iframe')?.contentDocument?.body?.firstChild", null, "the paper in its frame");
  await tab.evaluate(() => {
    window.prints = [];
    const frame = document.querySelector("iframe");
    frame.contentWindow.print = () => window.prints.push({ given: frame.srcdoc, shown: frame.contentDocument.documentElement.outerHTML });
    window.print = () => window.prints.push({ given: "the page itself", shown: "" });
    return true;
  });
  await tab.click(button("Print"));
  return tab.until(() => (window.prints.length > 0 ? window.prints : null), null, "a print");
}

/** The proposed test as it went: tiles of the card, then "Write it down". */
export async function recordSwab(tab, { removal, original, colour, seconds, passage, place = "On the picture", remark }) {
  const before = await tab.evaluate("document.querySelectorAll('ol.tests > li').length");
  await tab.click(tile(place, "Place"));
  if (passage) await tab.click(tile(passage, "Passage under the swab"));
  if (seconds) await tab.type(field("Contact, s"), String(seconds));
  await tab.click(tile(removal, "What it did to the layer to go"));
  await tab.click(tile(original, "What it did to the original"));
  if (colour) await tab.click(tile(colour, "Colour on the swab is"));
  if (remark) await tab.paste(field("Remark", "This test"), remark);
  await tab.click(button("Write it down"));
  await tab.until((count) => document.querySelectorAll("ol.tests > li").length > count, before, `test ${before + 1} in the list`);
}

/** The proposals for afterwards stand there and belong to what is written. */
export const afterwardsShown = (tab) => tab.until(() => document.querySelectorAll(".candidate").length > 1 && !document.querySelector(".stale"), null, "the proposals");

/** Waits until the next test belongs to what is written. */
export const nextShown = (tab) => tab.until(() => {
  const next = document.getElementById("next");
  return next && !next.querySelector(".stale") && next.innerText.length > 80 && !/being worked out/.test(next.innerText);
}, null, "what comes next");

const papers = { sheet: "Sheet for the easel", labels: "Labels for the vials", report: "Report of the tests", examine: "Examination, to look at before the first swab", afterwards: "Afterwards: retouching and varnish" };

/** A paper as the page shows it, saved as a file: its bytes. */
export async function paper(tab, kind) {
  await goTo(tab, "Papers");
  await tab.click({ role: "radio", name: papers[kind] });
  await tab.until((name) => document.querySelector("main, #page").innerText.includes(`${name}: ready.`), papers[kind], `${kind} to be ready`);
  const shown = await tab.evaluate(() => document.querySelector("iframe")?.srcdoc ?? "");
  await tab.click(button("Save as a file"));
  const { text } = await tab.saved(`-${kind}\\.html$`);
  return { text, shown };
}
