// WebKitGTK, driven by its own WebDriver under a screen that is not there (Xvfb).
import { spawn } from "node:child_process";
import { existsSync, readdirSync } from "node:fs";
import { writeFile } from "node:fs/promises";
import { createServer } from "node:net";

const pause = (ms) => new Promise((go) => setTimeout(go, ms));
const elementKey = "element-6066-11e4-a52e-4f735466cecf";
const keys = { Tab: "\uE004", Enter: "\uE007", Escape: "\uE00C", Backspace: "\uE003", ArrowUp: "\uE013", ArrowDown: "\uE015", ArrowLeft: "\uE012", ArrowRight: "\uE014", Space: " " };

function freePort() {
  return new Promise((answer) => {
    const server = createServer().listen(0, "127.0.0.1", () => {
      const { port } = server.address();
      server.close(() => answer(port));
    });
  });
}

function miniBrowser() {
  for (const base of ["/usr/lib", "/usr/libexec"])
    for (const folder of existsSync(base) ? [base, ...readdirSync(base).map((one) => `${base}/${one}`)] : [])
      for (const version of ["webkit2gtk-4.1", "webkit2gtk-4.0", "webkitgtk-6.0"])
        if (existsSync(`${folder}/${version}/MiniBrowser`)) return `${folder}/${version}/MiniBrowser`;
  throw new Error("no MiniBrowser of WebKitGTK (Debian: webkit2gtk-driver)");
}

/** Xvfb on the first free display; it writes the number to its descriptor 3. */
function startScreen() {
  const screen = spawn("Xvfb", ["-displayfd", "3", "-screen", "0", "1400x1200x24", "-nolisten", "tcp"], { stdio: ["ignore", "ignore", "ignore", "pipe"] });
  return new Promise((answer, fail) => {
    screen.once("error", fail);
    screen.stdio[3].once("data", (number) => answer({ screen, display: `:${String(number).trim()}` }));
  });
}

export async function startWebkit() {
  const { screen, display } = await startScreen();
  const port = await freePort();
  const driver = spawn("WebKitWebDriver", [`--port=${port}`], {
    stdio: "ignore", detached: true,
    env: { ...process.env, DISPLAY: display, LIBGL_ALWAYS_SOFTWARE: "1", GDK_BACKEND: "x11", LANGUAGE: "en_GB", NO_AT_BRIDGE: "1" },
  });
  const address = `http://127.0.0.1:${port}`;
  const call = async (method, path, body) => {
    const answer = await fetch(address + path, { method, ...(body ? { body: JSON.stringify(body), headers: { "content-type": "application/json" } } : {}) });
    const { value } = await answer.json();
    if (value?.error) throw new Error(`${value.error}: ${value.message}`);
    return value;
  };
  for (let i = 0; i < 100; ++i) {
    if (await call("GET", "/status").catch(() => null)) break;
    await pause(50);
  }
  const { sessionId } = await call("POST", "/session", {
    capabilities: { alwaysMatch: { "webkitgtk:browserOptions": { binary: miniBrowser(), args: ["--automation", "--javascript-can-open-windows-automatically=true"] } } },
  });
  const session = `/session/${sessionId}`;
  await call("POST", `${session}/timeouts`, { script: 120000, pageLoad: 60000 });

  async function size(width, height) {
    await call("POST", `${session}/window/rect`, { x: 0, y: 0, width, height });
    // The window's own bars count; what the page gets is what matters.
    const [w, h] = await evaluate("[innerWidth, innerHeight]");
    if (w !== width || h !== height) await call("POST", `${session}/window/rect`, { width: width + width - w, height: height + height - h });
  }
  async function evaluate(text) {
    const script = `const done = arguments[0]; Promise.resolve().then(() => (${text})).then((value) => done({value: value === undefined ? null : value}), (fault) => done({fault: String(fault)}));`;
    const { value, fault } = await call("POST", `${session}/execute/async`, { script, args: [] });
    if (fault) throw new Error(fault);
    return value;
  }
  const element = async (selector) => (await call("POST", `${session}/element`, { using: "css selector", value: selector }))[elementKey];

  return {
    async open(address, width, height) {
      const before = await call("GET", `${session}/window/handles`);
      await call("POST", `${session}/window`, { handle: before[0] });
      // A window without a tool bar may be as narrow as a phone.
      await evaluate("void window.open('about:blank', '_blank', 'width=390,height=800,toolbar=no,location=no,menubar=no')");
      let handle;
      for (let i = 0; i < 100 && !handle; ++i) {
        handle = (await call("GET", `${session}/window/handles`)).find((one) => !before.includes(one));
        if (!handle) await pause(20);
      }
      await call("POST", `${session}/window`, { handle });
      await call("POST", `${session}/url`, { url: address });
      await size(width, height);
      const here = async () => call("POST", `${session}/window`, { handle });
      return {
        faults: [],
        evaluate: async (text) => { await here(); return evaluate(text); },
        click: async (selector) => { await here(); await call("POST", `${session}/element/${await element(selector)}/click`, {}); },
        type: async (selector, text) => {
          await here();
          const field = await element(selector);
          await evaluate(`document.querySelector(${JSON.stringify(selector)}).select?.()`);
          await call("POST", `${session}/element/${field}/value`, { text: text || keys.Backspace });
        },
        press: async (key) => {
          await here();
          const value = keys[key] ?? key;
          await call("POST", `${session}/actions`, { actions: [{ type: "key", id: "keys", actions: [{ type: "keyDown", value }, { type: "keyUp", value }] }] });
        },
        give: async (selector, path) => { await here(); await call("POST", `${session}/element/${await element(selector)}/value`, { text: path }); },
        screenshot: async (path) => { await here(); await writeFile(path, Buffer.from(await call("GET", `${session}/screenshot`), "base64")); },
        size: async (w, h) => { await here(); await size(w, h); },
        close: async () => {
          // A last tab stays open, else the session ends with it.
          await here();
          const left = await call("GET", `${session}/window/handles`);
          if (left.length > 1) {
            await call("DELETE", `${session}/window`);
            await call("POST", `${session}/window`, { handle: left.find((one) => one !== handle) });
          }
        },
      };
    },
    async close() {
      await call("DELETE", session).catch(() => {});
      try { process.kill(-driver.pid); } catch { /* has ended */ }
      screen.kill();
    },
  };
}
