// The job that is open, as its fields, and the one way to change it.
import { computed, signal } from "@preact/signals";
import { jobText } from "../state";
import { readJob } from "./document";
import { Unreadable } from "./edits";

export const job = computed(() => readJob(jobText.value));

/** Says aloud what happened to something that moved, came or went. */
export const said = signal("");

/** Changes the job's text; one that cannot be edited by fields stays as it is. */
export function edit(change: (text: string) => string): void {
  try {
    jobText.value = change(jobText.value);
  } catch (fault) {
    if (!(fault instanceof Unreadable)) throw fault;
  }
}

/** What was taken away last, as long as nothing else was changed since. */
const before = signal<{ text: string; after: string; name: string } | null>(null);
export const undoable = computed(() => (before.value && before.value.after === jobText.value ? before.value.name : null));

/** Takes something away, which can be put back at once. */
export function takeAway(name: string, change: (text: string) => string): void {
  const text = jobText.value;
  edit(change);
  before.value = { text, after: jobText.value, name };
}

export function putBack(): void {
  if (!before.value || undoable.value === null) return;
  jobText.value = before.value.text;
  before.value = null;
}
