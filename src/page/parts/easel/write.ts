// Writes into the log by asking the program to; the page itself never writes a line.
import { signal } from "@preact/signals";
import { ask, type Answer } from "../../engine/engine";
import { files, jobFile, logFile, logHead, logText } from "../../state";
import { withPoint } from "../figures";
import { card, keys, photographs, valueOf, type Key } from "./test_card";

export const isWriting = signal(false);

const numbers: readonly Key[] = ["x_cm", "y_cm", "rolls", "seconds", "first_effect_s"];
let asked = 0;

export type Written = { answer: Answer; outcome: "written" | "refused" | "other log" | "not appended" };

function taken(answer: Answer, before: string): Written["outcome"] {
  if (answer.exit !== 0) return "refused";
  const after = answer.files[logFile];
  if (after === undefined) return "written"; // an import whose lines the log all holds
  if (logText.peek() !== before) return "other log";
  if (!after.startsWith(before || logHead)) return "not appended";
  logText.value = after;
  return "written";
}

/** `record` or `import`. Each question has a kind of its own: none may take the place of another that waits. */
async function writing(command: string, words: string[], options: Record<string, string | true>, more: Record<string, string> = {}): Promise<Written> {
  const before = logText.peek();
  isWriting.value = true;
  try {
    const answer = await ask(`${command}:${++asked}`, { command, words: [jobFile, logFile, ...words], options, files: { ...files(), ...more } });
    return { answer, outcome: taken(answer, before) };
  } finally {
    isWriting.value = false;
  }
}

export const record = (words: string[]) => writing("record", words, { yes: true, format: "json" });

/** The number of the test that `record` says it wrote. */
export function writtenTest(text: string): string {
  try {
    const { recorded } = JSON.parse(text) as { recorded?: { test: number }[] };
    return String(recorded?.[0]?.test ?? "");
  } catch {
    return "";
  }
}

/** How short words are understood; nothing is written. */
export const understood = (words: string) =>
  ask("understood", { command: "record", words: [jobFile, logFile, words], files: files() });

export const tableFile = "table.csv";
export const importTable = (text: string, again: boolean) =>
  writing("import", [tableFile], again ? { again: true } : {}, { [tableFile]: text });

/** The card as KEY=VALUE, empty fields left out. */
export function wordsOfCard(): string[] {
  const kept = { ...photographs.peek() };
  const value = (key: Key): string => {
    if (key === "photo" || key === "photo_before") return kept[key].map((one) => `jpeg:${one}`).join("; ");
    if (key === "x_cm" || key === "y_cm") return valueOf("at_edge") === "yes" ? "" : withPoint(valueOf(key));
    if (key === "date") return card.peek().date ?? today();
    return numbers.includes(key) ? withPoint(valueOf(key)) : valueOf(key).trim();
  };
  return keys.map((key) => [key, value(key)] as const).filter(([key, text]) => text !== "" && !(key === "at_edge" && text === "no")).map(([key, text]) => `${key}=${text}`);
}

export function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
}
