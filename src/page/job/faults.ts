// Faults of the job at their fields. A field tells that it is there; a fault is shown at the nearest field around it, and
// what no field shows stands in the list of the page's head.
import { computed, signal } from "@preact/signals";
import type { Fault } from "../engine/engine";
import { jobFile, jobText, ladder, logFile, next, readings } from "../state";
import { readJob } from "./document";
import { pathAt } from "./fault_places";
import type { Path } from "./yaml_text";

export interface Placed { fault: Fault; path: Path }

export const keyOfPath = (path: Path): string => path.join("\u0000");

let before: { faults: readonly Fault[]; placed: Placed[] } = { faults: [], placed: [] };

// The places count in the text that the engine saw: they are found once, when the faults come.
const placedFaults = computed<Placed[]>(() => {
  const { faults } = ladder.value;
  if (faults !== before.faults) {
    const text = jobText.peek();
    // Bottles that nobody ticked yet are no mistake: each step that needs some says so by itself (parts/no_bottles.tsx).
    const isNotYet = ({ path }: Placed) => path.length === 1 && path[0] === "shelf" && readJob(text).shelf.length === 0;
    const placed = faults.map((fault) => ({ fault, path: fault.file === jobFile ? pathAt(text, fault.line, fault.column) : [] }));
    before = { faults, placed: placed.filter((one) => !isNotYet(one)) };
  }
  return before.placed;
});

/** How many fields show the faults of a path. */
const fields = signal<ReadonlyMap<string, number>>(new Map());

export function addField(path: Path, by: 1 | -1): void {
  const now = new Map(fields.peek());
  const key = keyOfPath(path);
  const count = (now.get(key) ?? 0) + by;
  if (count > 0) now.set(key, count);
  else now.delete(key);
  fields.value = now;
}

function fieldOf(path: Path): string | undefined {
  for (let length = path.length; length > 0; --length) {
    const key = keyOfPath(path.slice(0, length));
    if (fields.value.has(key)) return key;
  }
  return undefined;
}

const byField = computed(() => {
  const map = new Map<string, Placed[]>();
  for (const placed of placedFaults.value) {
    const key = fieldOf(placed.path) ?? "";
    map.set(key, [...(map.get(key) ?? []), placed]);
  }
  return map;
});

const none: readonly Fault[] = [];

/** The same list as long as there are none, so that a field without faults need not be drawn anew. */
export const faultsAt = (path: Path): readonly Fault[] => byField.value.get(keyOfPath(path))?.map(({ fault }) => fault) ?? none;

/** Of the job without a field on this step, and of the log. */
export const otherFaults = computed<readonly Placed[]>(() => {
  const seen = new Set<string>();
  const log = [...next.value.faults, ...readings.value.faults].filter((fault) => {
    const key = JSON.stringify(fault);
    return fault.file === logFile && !seen.has(key) && Boolean(seen.add(key));
  });
  return [...(byField.value.get("") ?? []), ...log.map((fault) => ({ fault, path: [] }))];
});
