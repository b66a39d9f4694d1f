// The steps of the work, in their order, and the one that is open.
import { signal } from "@preact/signals";

export const steps = ["painting", "shelf", "ladder", "easel", "afterwards", "papers"] as const;
export type Step = (typeof steps)[number];
export const step = signal<Step>("painting");

/** The layer whose fields are open on the first step. */
export const chosenLayer = signal(0);

const stepOf: Record<string, Step> = { object: "painting", layers: "painting", passages: "painting", examination: "painting", shelf: "shelf", limits: "ladder" };

/** Opens the step where something of the job has its field. */
export function showFieldOf(path: readonly (string | number)[]): void {
  const to = stepOf[String(path[0])];
  if (!to) return;
  step.value = to;
  if (path[0] === "layers" && typeof path[1] === "number") chosenLayer.value = path[1];
}

export const hasField = (path: readonly (string | number)[]): boolean => String(path[0]) in stepOf;
