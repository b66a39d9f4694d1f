// The rung that is pointed at: it lights up in the ladder and in every picture.
import { signal } from "@preact/signals";

/** Its name as the pictures mark it ("3"), or null. */
export const pointedRung = signal<string | null>(null);
