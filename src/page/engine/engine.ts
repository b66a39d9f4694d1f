// Asks the engine. One question at a time: a newer question of the same kind takes the place of one that waits; one that
// is being worked on for long can be stopped, which starts the engine anew.
import { signal } from "@preact/signals";
import workerText from "worker-text";
import type { Answer, Progress, Question } from "./question";

export type { Answer, Fault, Question } from "./question";

/** "starting", "ready", "working", or why there is no engine. */
export const engineState = signal<"starting" | "ready" | "working" | { failed: string }>("starting");
/** Of the question in work, where it takes long. */
export const engineProgress = signal<Progress | null>(null);

export const stopped: Answer = { exit: 130, text: "", notes: "", faults: [], files: {} };

interface Waiting {
  number: number;
  kind: string;
  question: Question;
  resolve: (answer: Answer) => void;
}

let worker: Worker | undefined;
let current: Waiting | undefined;
let queue: Waiting[] = [];
let isReady = false;
let lastNumber = 0;

function packedModule(): string {
  return document.getElementById("engine-module")?.textContent ?? "";
}

function startNext(): void {
  if (!worker || !isReady || current) return;
  current = queue.shift();
  engineProgress.value = null;
  engineState.value = current ? "working" : "ready";
  if (current) worker.postMessage({ number: current.number, question: current.question });
}

function end(answer: Answer): void {
  const ended = current;
  current = undefined;
  ended?.resolve(answer);
  startNext();
}

function fail(reason: string): void {
  engineState.value = { failed: reason };
  const answer: Answer = { ...stopped, exit: 4, notes: reason };
  const left = [...(current ? [current] : []), ...queue];
  current = undefined;
  queue = [];
  for (const one of left) one.resolve(answer);
}

/** Starts the engine; called once when the page opens, and again after a stop. */
export function startEngine(): void {
  worker?.terminate();
  isReady = false;
  engineState.value = "starting";
  const address = URL.createObjectURL(new Blob([workerText], { type: "text/javascript" }));
  try {
    worker = new Worker(address);
  } catch (fault) {
    return fail(String(fault));
  }
  const mine = worker;
  worker.onmessage = (event: MessageEvent) => {
    if (mine !== worker) return;
    const message = event.data;
    if (message.ready) {
      isReady = true;
      URL.revokeObjectURL(address);
      startNext();
    } else if (message.failed) {
      fail(message.failed);
    } else if (message.progress) {
      if (current?.number === message.number) engineProgress.value = message.progress;
    } else if (current?.number === message.number) {
      end(message.answer);
    }
  };
  worker.onerror = (event) => {
    if (mine === worker) fail(event.message || "the engine stopped");
  };
  worker.postMessage({ module: packedModule() });
}

/** What every question is given along, e.g. files that stand for all of them. */
let completed = (question: Question): Question => question;
export function completeQuestions(by: (question: Question) => Question): void {
  completed = by;
}

/** Answers `kind` once more recent questions of that kind have not taken its place; a replaced question answers 130. */
export function ask(kind: string, question: Question): Promise<Answer> {
  const replaced = queue.filter((one) => one.kind === kind);
  queue = queue.filter((one) => one.kind !== kind);
  for (const one of replaced) one.resolve(stopped);
  return new Promise((resolve) => {
    queue.push({ number: ++lastNumber, kind, question: completed(question), resolve });
    if (typeof engineState.peek() === "object") startEngine(); // peek: who asks within an effect must not follow the state
    else startNext();
  });
}

/** Gives up the question in work. */
export function stopWork(): void {
  if (!current) return;
  const ended = current;
  current = undefined;
  startEngine();
  ended.resolve(stopped);
}
