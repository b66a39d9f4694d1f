// What is open in the page: the very texts of the program's files, and what the engine answered to them.
import { computed, effect, signal } from "@preact/signals";
import type { LadderAnswer } from "./answers";
import { ask, type Answer, type Fault } from "./engine/engine";

/** The job file's text as it would be saved; "" before anything is open. */
export const jobText = signal("");
export const jobName = signal("painting.yaml");
/** The log's text: the bytes that were opened, and behind them what was added here. */
export const logText = signal("");
export const logName = signal("painting.log");

/** As they were last opened or saved. */
export const savedJobText = signal("");
export const savedLogText = signal("");
export const isUnsaved = computed(() => jobText.value !== savedJobText.value || logText.value !== savedLogText.value);

/** The names under which the engine sees the two files. */
export const jobFile = "job.yaml";
export const logFile = "tests.log";
export const logHead = '{"gentlest_log":1}\n';

export function files(): Record<string, string> {
  return { [jobFile]: jobText.value, [logFile]: logText.value || logHead };
}

/** An answer with its JSON read; `value` stays the last good one while a new one is worked out or faulty. */
export interface Answered<T> {
  value: T | null;
  faults: Fault[];
  notes: string;
  exit: number;
  isCurrent: boolean;
}

export const nothingYet = { value: null, faults: [], notes: "", exit: 0, isCurrent: false };

export function answered<T>(answer: Answer, before: Answered<T>): Answered<T> {
  if (answer.exit === 130) return before;
  const { faults, notes, exit } = answer;
  if (exit > 1) return { value: before.value, faults, notes, exit, isCurrent: false };
  return { value: JSON.parse(answer.text) as T, faults, notes, exit, isCurrent: true };
}

export const ladder = signal<Answered<LadderAnswer>>(nothingYet);
/** One row: the next test with its reason (docs/schema/rows.schema.json, kind "next"). */
export const next = signal<Answered<{ next: Record<string, unknown>[] }>>(nothingYet);
/** The lines of the log as read, corrections and looks joined (kind "readings"). */
export const readings = signal<Answered<{ readings: Record<string, unknown>[] }>>(nothingYet);

let waiting: ReturnType<typeof setTimeout> | undefined;
const pauseAfterTyping_ms = 150;

/** The work was stopped by hand, and nothing was asked since. */
export const isStopped = signal(false);
let turn = 0;

export async function askAll(): Promise<void> {
  const mine = ++turn;
  isStopped.value = false;
  const question = (command: string, words: string[]) => ask(command, { command, words, options: { format: "json" }, files: files() });
  const planned = await question("ladder", [jobFile]);
  if (planned.exit === 130) isStopped.value = mine === turn;
  ladder.value = answered(planned, ladder.value);
  // The log can be read whatever the job is like; without a plan there is no next test.
  if (planned.exit <= 1) next.value = answered(await question("next", [jobFile, logFile]), next.value);
  readings.value = answered(await question("readings", [logFile]), readings.value);
}

/** Asks anew what was given up, or lost with the engine. */
export const askAgain = (): void => void askAll();

/** Asks anew whenever a file changed, once typing pauses. */
export function followFiles(): void {
  effect(() => {
    const isOpen = jobText.value !== "" && logText.value !== undefined;
    clearTimeout(waiting);
    if (!isOpen) return;
    // A proposal from before a harm was written down must not look like one of now.
    ladder.value = { ...ladder.peek(), isCurrent: false };
    next.value = { ...next.peek(), isCurrent: false };
    readings.value = { ...readings.peek(), isCurrent: false };
    waiting = setTimeout(() => void askAll(), pauseAfterTyping_ms);
  });
}
