// One small interface over three real browsers:
//   browser = await start("chromium" | "firefox" | "webkit");  tab = await browser.open(file, {width, height});
// A tab is used as a person does: controls are named by what they are and what they are called (in_page.mjs).
import { createRequire } from "node:module";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { catchSavedFiles, findInPage, pasteInPage } from "./in_page.mjs";
import { startWebkit } from "./webkit.mjs";

const require = createRequire(new URL("../../src/page/package.json", import.meta.url));
const pause = (ms) => new Promise((go) => setTimeout(go, ms));
const called = (work, value) => `(${work})(${JSON.stringify(value)})`;

// WebKit starts the engine slowly, and a loaded machine more so: waiting costs only where something is wrong.
const patience_ms = 90000;

/** What all three share; `driver` does what differs: evaluate, click, type, press, shoot, size, give, goto, close. */
class Tab {
  constructor(driver) {
    this.driver = driver;
  }
  /** Evaluates an expression, or a function with one argument; waits for a promise. */
  evaluate(work, value) {
    return this.driver.evaluate(typeof work === "function" ? called(work, value ?? null) : work);
  }
  /** Waits until the expression or function says something true; that is answered. */
  async until(work, value, what = String(work), most_ms = patience_ms) {
    const end = Date.now() + most_ms;
    for (;;) {
      const answer = await this.evaluate(work, value).catch(() => null);
      if (answer) return answer;
      if (Date.now() > end) throw new Error(`waited ${most_ms / 1000} s in vain for: ${what}`);
      await pause(25);
    }
  }
  find(target) {
    return this.evaluate(findInPage, target);
  }
  /** The names of all controls of a kind. */
  names(role, within) {
    return this.evaluate(findInPage, { role, within, list: true });
  }
  waitFor(target, most_ms) {
    return this.until(findInPage, target, `${target.role} ${JSON.stringify(target.name ?? "")}`, most_ms);
  }
  async click(target) {
    await this.waitFor(target);
    await this.driver.click("[data-found]");
  }
  /** Replaces what stands in a field, key by key. */
  async type(target, text) {
    await this.waitFor(target);
    await this.driver.type("[data-found]", text);
  }
  async paste(target, text) {
    await this.waitFor(target);
    return this.evaluate(pasteInPage, text);
  }
  /** Chooses of a list by the words shown. */
  async choose(target, words) {
    await this.waitFor(target);
    const value = await this.evaluate((wanted) => [...document.querySelector("[data-found]").options].find((one) => one.text.trim() === wanted)?.value ?? null, words);
    if (value === null) throw new Error(`no choice ${words} in ${target.name}`);
    await this.evaluate(pasteInPage, value);
  }
  async give(target, file) {
    await this.waitFor(target);
    await this.driver.give("[data-found]", file);
  }
  press(key) {
    return this.driver.press(key);
  }
  /** Text of the whole page, as shown. */
  text() {
    return this.evaluate("document.body.innerText");
  }
  /** What the page handed over to be saved, by name, once `name` (a pattern) is there. */
  async saved(name) {
    const key = await this.until((pattern) => Object.keys(window.savedFiles).find((one) => new RegExp(pattern).test(one)) ?? null, name, `a saved file ${name}`);
    const bytes = Buffer.from(await this.evaluate((one) => window.savedFiles[one], key), "base64");
    await this.evaluate((one) => { delete window.savedFiles[one]; return true; }, key);
    return { name: key, bytes, text: bytes.toString("utf8") };
  }
  screenshot(file) {
    return this.driver.screenshot(file);
  }
  size(width, height) {
    return this.driver.size(width, height);
  }
  close() {
    return this.driver.close();
  }
}

/** Waits until the engine answers; what is saved is caught from here on. */
async function ready(driver) {
  const tab = new Tab(driver);
  await tab.until("!!window.gentlest", null, "window.gentlest");
  await tab.evaluate(catchSavedFiles);
  return tab;
}

async function startChromium(options = {}) {
  const { chromium } = require("playwright-core");
  const program = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage"] });
  const context = await program.newContext({ viewport: { width: 1280, height: 900 }, locale: "en-GB", ...options });
  return {
    name: "chromium",
    context,
    async open(file, { width = 1280, height = 900, before, raw } = {}) {
      const page = await context.newPage();
      const requests = [];
      page.on("request", (request) => requests.push(request.url()));
      const faults = [];
      page.on("pageerror", (fault) => faults.push(String(fault)));
      page.on("console", (message) => message.type() === "error" && faults.push(message.text()));
      if (before) await page.addInitScript(before);
      await page.setViewportSize({ width, height });
      await page.goto(pathToFileURL(resolve(file)).href);
      const driver = {
        page, requests, faults,
        evaluate: (text) => page.evaluate(text),
        click: (selector) => page.click(selector, { timeout: 8000 }),
        type: async (selector, text) => { await page.fill(selector, "", { timeout: 8000 }); await page.type(selector, text); },
        press: (key) => page.keyboard.press(key),
        give: (selector, path) => page.setInputFiles(selector, path),
        screenshot: (path) => page.screenshot({ path, fullPage: true }),
        size: (w, h) => page.setViewportSize({ width: w, height: h }),
        close: () => page.close({ runBeforeUnload: false }),
      };
      return raw ? new Tab(driver) : ready(driver);
    },
    close: () => program.close(),
  };
}

async function startFirefox() {
  const puppeteer = require("puppeteer-core");
  const profile = mkdtempSync(join(tmpdir(), "gentlest_firefox_"));
  const program = await puppeteer.launch({
    browser: "firefox", executablePath: "/usr/bin/firefox-esr", headless: true, userDataDir: profile,
    extraPrefsFirefox: { "intl.accept_languages": "en-GB", "browser.shell.checkDefaultBrowser": false, "app.update.enabled": false, "network.captive-portal-service.enabled": false, "network.connectivity-service.enabled": false },
  });
  return {
    name: "firefox",
    async open(file, { width = 1280, height = 900, raw } = {}) {
      const page = await program.newPage();
      const faults = [];
      page.on("pageerror", (fault) => faults.push(String(fault)));
      await page.setViewport({ width, height });
      await page.goto(pathToFileURL(resolve(file)).href);
      const driver = {
        page, faults,
        evaluate: (text) => page.evaluate(text),
        click: async (selector) => (await page.$(selector)).click(),
        type: async (selector, text) => {
          await page.evaluate((one) => { const field = document.querySelector(one); field.focus(); field.select?.(); }, selector);
          await page.keyboard.press("Backspace");
          await page.keyboard.type(text);
        },
        press: (key) => page.keyboard.press(key),
        give: async (selector, path) => (await page.$(selector)).uploadFile(path),
        screenshot: (path) => page.screenshot({ path }),
        size: (w, h) => page.setViewport({ width: w, height: h }),
        close: () => page.close({ runBeforeUnload: false }),
      };
      return raw ? new Tab(driver) : ready(driver);
    },
    close: async () => { await program.close(); rmSync(profile, { recursive: true, force: true }); },
  };
}

async function startWebkitTabs() {
  const program = await startWebkit();
  return {
    name: "webkit",
    async open(file, { width = 1280, height = 900, raw } = {}) {
      const driver = await program.open(pathToFileURL(resolve(file)).href, width, height);
      return raw ? new Tab(driver) : ready(driver);
    },
    close: () => program.close(),
  };
}

export const browsers = { chromium: startChromium, firefox: startFirefox, webkit: startWebkitTabs };
export const start = (name, options) => browsers[name](options);
