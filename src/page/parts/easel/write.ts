// Writes into the log by asking the program to; the page itself never writes a line.
import { signal } from "@preact/signals";
import type { ReadingsRow, RecordedRow } from "../../answers";
import { fromBase64 } from "../../base64";
import { ask, type Answer } from "../../engine/engine";
import { files, jobFile, logFile, logHead, logText } from "../../state";
import { withPoint } from "../figures";
import { card, keys, photographs, valueOf, type Key } from "./test_card";

export const isWriting = signal(false);

const numbers: readonly Key[] = ["x_cm", "y_cm", "rolls", "seconds", "first_effect_s"];
let asked = 0;

export type Written = { answer: Answer; outcome: "written" | "refused" | "other log" | "not appended" };

function taken(command: string, answer: Answer, before: string): Written["outcome"] {
  if (answer.exit !== 0) return "refused";
  const after = answer.files[logFile];
  // An import whose lines the log all holds adds nothing; a record always does.
  if (after === undefined) return command === "import" ? "written" : "not appended";
  if (logText.peek() !== before) return "other log";
  if (!after.startsWith(before || logHead)) return "not appended";
  logText.value = after;
  return "written";
}

/** `record` or `import`. Each question has a kind of its own: none may take the place of another that waits. */
async function writing(command: string, words: string[], options: Record<string, string | true>, more: Record<string, Uint8Array> = {}): Promise<Written> {
  const before = logText.peek();
  isWriting.value = true;
  try {
    const answer = await ask(`${command}:${++asked}`, { command, words: [jobFile, logFile, ...words], options, files: { ...files(), ...more } });
    return { answer, outcome: taken(command, answer, before) };
  } finally {
    isWriting.value = false;
  }
}

export const record = (words: string[], photographs: Record<string, Uint8Array> = {}) =>
  writing("record", words, { yes: true, format: "json", ...(Object.keys(photographs).length ? { "keep-photographs": true as const } : {}) }, photographs);

/** The number of the test that `record` says it wrote. */
export function writtenTest(text: string): string {
  try {
    const { recorded } = JSON.parse(text) as { recorded?: RecordedRow[] };
    return String(recorded?.[0]?.test ?? "");
  } catch {
    return "";
  }
}

export interface Understood { answer: Answer; row?: ReadingsRow }

/** How short words are understood: written into a copy of the log, which is read and let go. */
export async function understood(words: string): Promise<Understood> {
  const answer = await ask("understood", { command: "record", words: [jobFile, logFile, words], options: { yes: true, format: "json" }, files: files() });
  const copy = answer.files[logFile];
  if (answer.exit !== 0 || copy === undefined) return { answer };
  const read = await ask("understood copy", { command: "readings", words: [logFile], options: { format: "json" }, files: { [logFile]: copy } });
  if (read.exit !== 0) return { answer: read };
  const test = writtenTest(answer.text);
  const row = (JSON.parse(read.text) as { readings: ReadingsRow[] }).readings.reverse().find((one) => String(one.test) === test);
  return row ? { answer, row } : { answer };
}

export const tableFile = "table.csv";
export const importTable = (bytes: Uint8Array, again: boolean) =>
  writing("import", [tableFile], again ? { again: true } : {}, { [tableFile]: bytes });

/** The photographs of the card under names that no other reading has; the program keeps them in the log. */
function filesOfCard(): Record<"photo" | "photo_before", [string, Uint8Array][]> {
  const stamp = new Date().toISOString().replace(/[-:]/g, "").slice(0, 15);
  const named = (which: "photo" | "photo_before", word: string) =>
    photographs.peek()[which].map((one, index): [string, Uint8Array] => [`${word}-${stamp}-${index + 1}.jpg`, fromBase64(one)]);
  return { photo_before: named("photo_before", "before"), photo: named("photo", "after") };
}

/** The card as KEY=VALUE, empty fields left out, and the files that it names. */
export function wordsOfCard(): { words: string[]; files: Record<string, Uint8Array> } {
  const kept = filesOfCard();
  const value = (key: Key): string => {
    if (key === "photo" || key === "photo_before") return kept[key].map(([name]) => name).join("; ");
    if (key === "date") return card.peek().date ?? today();
    return numbers.includes(key) ? withPoint(valueOf(key)) : valueOf(key).trim();
  };
  const words = keys.map((key) => [key, value(key)] as const).filter(([key, text]) => text !== "" && !(key === "at_edge" && text === "no")).map(([key, text]) => `${key}=${text}`);
  return { words, files: Object.fromEntries([...kept.photo_before, ...kept.photo]) };
}

export function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
}
