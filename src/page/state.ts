// What is open in the page: the very texts of the program's files, and what the engine answered to them.
import { computed, effect, signal, type Signal } from "@preact/signals";
import type { LadderAnswer, NextRow, ReadingsRow } from "./answers";
import { ask, stopped, type Answer, type Fault } from "./engine/engine";

/** The job file's text as it would be saved; "" before anything is open. */
export const jobText = signal("");
export const jobName = signal("painting.yaml");
/** The log's text: the bytes that were opened, and behind them what was added here. */
export const logText = signal("");
export const logName = signal("painting.log");

/** As they were last opened or saved. */
export const savedJobText = signal("");
export const savedLogText = signal("");

/** Files of finished paintings (studio.ts), with the number of the choice that brought them. */
export interface StudioFile { pick: number; name: string; text: string }
export const studioFiles = signal<readonly StudioFile[]>([]);
/** Which of them are open, in short. */
const studioPicks = computed(() => [...new Set(studioFiles.value.map((one) => one.pick))].join(","));
/** All that a plan is made of; when it changes the plan is another one. */
export const planBasis = computed(() => `${studioPicks.value}\n${jobText.value}`);
/** The same with the tests. */
export const basis = computed(() => `${planBasis.value}\n${logText.value}`);

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
  const { faults, notes, exit } = answer;
  if (exit > 1) return { value: before.value, faults, notes, exit, isCurrent: false };
  return { value: JSON.parse(answer.text) as T, faults, notes, exit, isCurrent: true };
}

export const ladder = signal<Answered<LadderAnswer>>(nothingYet);
/** One row: the next test with its reason. */
export const next = signal<Answered<{ next: NextRow[] }>>(nothingYet);
/** The lines of the log as read, corrections and looks joined. */
export const readings = signal<Answered<{ readings: ReadingsRow[] }>>(nothingYet);

/** Another painting was opened or begun: what belongs to the one before is let go. */
export const paintingOpened = signal(0);

let waiting: ReturnType<typeof setTimeout> | undefined;
const pauseAfterTyping_ms = 100;

/** The work was stopped by hand, and nothing was asked since. */
export const isStopped = signal(false);
// Counts the states of the files: an answer to an older one is let go.
let turn = 0;
/** What the ladder's answer is of; it knows nothing of the log. */
let ladderOf: string | undefined;

/** False where the turn is over: the files changed, the work was stopped, or the engine was lost. */
async function answer<T>(mine: number, place: Signal<Answered<T>>, command: string, words: string[]): Promise<boolean> {
  const given = await ask(command, { command, words, options: { format: "json" }, files: files() });
  if (mine !== turn) return false;
  if (given.exit === stopped.exit) isStopped.value = true;
  else place.value = answered(given, place.value);
  return given.exit !== stopped.exit && given.exit !== 4;
}

export async function askAll(): Promise<void> {
  const mine = ++turn;
  isStopped.value = false;
  const job = planBasis.peek();
  if (ladderOf !== job) {
    if (!(await answer(mine, ladder, "ladder", [jobFile]))) return;
    ladderOf = job;
  }
  // The log can be read whatever the job is like; without a plan there is no next test.
  if (ladder.peek().exit <= 1 && !(await answer(mine, next, "next", [jobFile, logFile]))) return;
  await answer(mine, readings, "readings", [logFile]);
}

/** Nothing that was answered for the painting before may stand beside another one. */
export function forgetAnswers(): void {
  ++turn;
  ladderOf = undefined;
  ladder.value = next.value = readings.value = nothingYet;
  ++paintingOpened.value;
}

// Once: what is old already has nothing new to tell with every letter.
function growOld<T>(place: Signal<Answered<T>>): void {
  if (place.peek().isCurrent) place.value = { ...place.peek(), isCurrent: false };
}

/** Asks anew whenever a file changed, once typing pauses. */
export function followFiles(): void {
  effect(() => {
    void basis.value;
    ++turn;
    clearTimeout(waiting);
    if (jobText.value === "") return;
    // A proposal from before a harm was written down must not look like one of now.
    if (ladderOf !== planBasis.value) growOld(ladder);
    growOld(next);
    growOld(readings);
    waiting = setTimeout(() => void askAll(), pauseAfterTyping_ms);
  });
}
