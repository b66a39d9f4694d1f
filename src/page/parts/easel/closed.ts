// Which mixtures of the plan a harm closed, as the answer on the next test names them.
import { computed } from "@preact/signals";
import { next } from "../../state";

const closed = computed(() => new Set((next.value.value?.next[0]?.closed_mixtures ?? "").split(" | ")));

/** By the recipe. What was closed stays marked until the answer to a later log is there. */
export const isClosed = (recipe: string): boolean => recipe !== "" && closed.value.has(recipe);
