// "My shelf": the bottles of a studio, in a file of its own that is opened for the next painting (docs/page.md).
import { computed, signal } from "@preact/signals";
import { asTyped, bottleOf, insertAt, parsed, setBottle, type BottleView, type Value } from "./job/document";
import { recordOf } from "./names";

export const shelfText = signal("");
export const savedShelfText = signal("");
export const shelfName = signal("my-shelf.yaml");

export interface ShelfBottle extends BottleView { opened: string }

const head = "# My shelf: the bottles of this studio, for gentlest.html\ngentlest_shelf: 1\n";

function readShelf(text: string): ShelfBottle[] {
  const { value } = parsed(text);
  const list = typeof value === "object" && !Array.isArray(value) ? value.bottles : undefined;
  return (Array.isArray(list) ? list : []).map((one) => ({
    ...bottleOf(one), opened: typeof one === "object" && !Array.isArray(one) && typeof one.opened === "string" ? one.opened : "",
  }));
}

export const shelf = computed(() => readShelf(shelfText.value));

const isSameBottle = (a: BottleView, b: BottleView): boolean =>
  (recordOf(a.solvent, "solvent") || a.solvent) === (recordOf(b.solvent, "solvent") || b.solvent) && a.grade === b.grade;

const entryOf = (bottle: BottleView): Value => {
  const { solvent, grade, atMostPercent } = bottle;
  if (grade === "" && atMostPercent === "") return solvent;
  return { solvent, ...(grade && { grade }), ...(atMostPercent && { at_most_percent: asTyped(atMostPercent) }) };
};

function withBottle(text: string, bottle: BottleView): string {
  const list = readShelf(text);
  return list.some((one) => isSameBottle(one, bottle)) ? text : insertAt(text || head, ["bottles"], list.length, entryOf(bottle));
}

/** What this painting's shelf has comes into my shelf; what is there already stays as it is. */
export function takeIntoShelf(bottles: readonly BottleView[]): void {
  shelfText.value = bottles.reduce(withBottle, shelfText.value || head);
}

/** The day on which a bottle was opened, which the job has no place for. */
export function setOpened(bottle: BottleView, day: string): void {
  const text = withBottle(shelfText.value || head, bottle);
  const index = readShelf(text).findIndex((one) => isSameBottle(one, bottle));
  shelfText.value = setBottle(text, ["bottles", index], "opened", day);
}

export const openedOn = (bottle: BottleView): string => shelf.value.find((one) => isSameBottle(one, bottle))?.opened ?? "";

/** A job's shelf with all of my bottles that it does not have yet. */
export function withMyShelf(text: string, have: readonly BottleView[]): string {
  const missing = shelf.value.filter((one) => !have.some((other) => isSameBottle(one, other)));
  return missing.reduce((now, one, i) => insertAt(now, ["shelf"], have.length + i, entryOf(one)), text);
}

