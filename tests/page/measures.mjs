// What is measured on a page as it stands: rules of accessibility, sizes of targets, what runs over.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const require = createRequire(new URL("../../src/page/package.json", import.meta.url));
const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");

/** Breaches of WCAG 2.2 A and AA as axe-core sees them, in words; none is "". */
export async function breaches(tab) {
  await tab.evaluate(`(${(source) => { if (!window.axe) { const put = document.createElement("script"); put.textContent = source; document.head.append(put); put.remove(); } return !!window.axe; }})(${JSON.stringify(axe)})`);
  const found = await tab.evaluate(async () => {
    const { violations } = await window.axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"], resultTypes: ["violations"], iframes: false });
    return violations.map(({ id, nodes }) => `${id}: ${nodes.slice(0, 3).map((node) => `${node.html.slice(0, 110)} (${(node.any[0] ?? node.all[0] ?? node.none[0])?.message.slice(0, 120) ?? ""})`).join(" | ")}${nodes.length > 3 ? ` and ${nodes.length - 3} more` : ""}`);
  });
  return found.join("; ");
}

/** Targets under `least` px on either side: what is tapped, with its label where that is tapped too (WCAG 2.5.8 asks for 24). */
export const tooSmall = (tab, least, within = "main, header, body") =>
  tab.evaluate(({ least, within }) => {
    const root = document.querySelector(within);
    const found = [];
    for (const control of root.querySelectorAll("button, input:not([type=hidden]), select, textarea, summary, [role=button], [role=tab], [role=option]")) {
      if (control.closest("[hidden],[inert]") || getComputedStyle(control).visibility === "hidden") continue;
      const own = control.getBoundingClientRect();
      if (!own.width || !own.height) continue;
      const label = (control.type === "checkbox" || control.type === "radio" || control.type === "file") && (control.closest("label") ?? control.labels?.[0]);
      if (own.width <= 1 && own.height <= 1 && !label) continue;
      const box = label ? label.getBoundingClientRect() : own;
      const [width, height] = [Math.max(box.width, own.width), Math.max(box.height, own.height)];
      if (width < least - 0.5 || height < least - 0.5)
        found.push(`${control.tagName.toLowerCase()} ${(control.getAttribute("aria-label") || label?.textContent || control.textContent || control.labels?.[0]?.textContent || control.id).trim().slice(0, 40)} ${width.toFixed(0)} x ${height.toFixed(0)}`);
    }
    return [...new Set(found)].slice(0, 6).join("; ");
  }, { least, within });

/** Whether the page must be scrolled sideways, and for what. */
export const overflow = (tab) =>
  tab.evaluate(() => {
    const room = document.documentElement.clientWidth;
    if (document.documentElement.scrollWidth <= room + 1) return "";
    const wide = [...document.querySelectorAll("body *")].filter((one) => one.getBoundingClientRect().right > room + 1 && ![...one.children].some((child) => child.getBoundingClientRect().right > room + 1));
    const outside = wide.filter((one) => { for (let up = one.parentElement; up; up = up.parentElement) if (/auto|scroll|hidden|clip/.test(getComputedStyle(up).overflowX) && up !== document.body && up !== document.documentElement) return false; return true; });
    return `${document.documentElement.scrollWidth} px wide in ${room}: ${outside.slice(0, 3).map((one) => one.outerHTML.slice(0, 120)).join(" | ")}`;
  });

/** Letters at twice their size, as a browser's own text setting makes them. */
export const largeText = (tab, isLarge) => tab.evaluate((on) => { document.documentElement.style.fontSize = on ? "200%" : ""; return true; }, isLarge);

/** Controls without a name in the tree that a screen reader is given (Chromium). */
export async function nameless(tab) {
  const session = await tab.driver.page.context().newCDPSession(tab.driver.page);
  const { nodes } = await session.send("Accessibility.getFullAXTree");
  await session.detach();
  const kinds = new Set(["button", "textbox", "combobox", "checkbox", "radio", "link", "tab", "option", "spinbutton", "searchbox", "listbox", "slider", "image", "img", "Iframe", "dialog", "progressbar", "radiogroup"]);
  const without = nodes.filter((node) => !node.ignored && kinds.has(node.role?.value) && !node.name?.value?.trim());
  return { count: nodes.filter((node) => !node.ignored && kinds.has(node.role?.value)).length, fault: without.slice(0, 5).map((node) => `${node.role.value} without a name`).join("; ") };
}
