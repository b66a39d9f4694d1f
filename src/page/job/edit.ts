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
