// The native program, asked as the page asks its engine: the same words, the same files by the same names.
import { spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";

export const options = (wanted = {}) => Object.entries(wanted).flatMap(([name, value]) => (value === true ? [`--${name}`] : [`--${name}`, value]));

/** Answers {exit, text, notes, files: changed ones, ms} of one question (src/page/engine/question.ts). */
export function askProgram(program, { command, words, options: wanted, files = {} }) {
  const folder = mkdtempSync(join(tmpdir(), "gentlest_page_"));
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), content);
  }
  const begun = performance.now();
  return new Promise((answer, fail) => {
    const asked = spawn(program, [command, ...words, ...options(wanted)], { cwd: folder, stdio: ["ignore", "pipe", "pipe"] });
    const text = [], notes = [];
    asked.stdout.on("data", (piece) => text.push(piece));
    asked.stderr.on("data", (piece) => notes.push(piece));
    asked.on("error", fail);
    asked.on("close", (exit) => {
      const ms = performance.now() - begun;
      const changed = {};
      for (const [name, content] of Object.entries(files)) {
        const now = readFileSync(join(folder, name), "utf8");
        if (now !== String(content)) changed[name] = now;
      }
      rmSync(folder, { recursive: true, force: true });
      answer({ exit, text: Buffer.concat(text).toString("utf8"), notes: Buffer.concat(notes).toString("utf8"), files: changed, ms });
    });
  });
}
