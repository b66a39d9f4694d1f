// The job that is open, as its fields, and the one way to change it.
import { computed, signal, type ReadonlySignal } from "@preact/signals";
import { jobText } from "../state";
import { readJob, type JobView } from "./document";
import { Unreadable } from "./edits";

export const job = computed(() => readJob(jobText.value));

/** A piece of it that stays the very same object while it says the same, so that only what shows it is drawn anew. */
export function piece<T>(read: (of: JobView) => T): ReadonlySignal<T> {
  let last: { value: T; written: string } | undefined;
  return computed(() => {
    const value = read(job.value);
    const written = JSON.stringify(value);
    if (last?.written !== written) last = { value, written };
    return last.value;
  });
}

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
