// The test that is being filled in: kept while the steps are switched, as the very KEY=VALUE words of the program.
import { signal } from "@preact/signals";
import type { Fault } from "../../engine/engine";
import { next } from "../../state";
import { nextRow, said } from "../next";

export const keys = [
  "mixture", "layer", "passage", "x_cm", "y_cm", "at_edge", "window_mm", "light", "magnification", "uv_before", "uv_after", "swab", "wetness",
  "rolls", "seconds", "first_effect_s", "removal", "original", "colour", "signs", "clearing", "after_drying", "photo_before", "photo",
  "confidence", "remark", "date", "who",
] as const;
export type Key = (typeof keys)[number];
export type Card = Partial<Record<Key, string>>;

// What stays the same for the next swab of the sitting.
const ofTheSitting: Key[] = ["who", "light", "magnification", "window_mm", "swab"];

export const card = signal<Card>({});
/** Photographs as base64 of a JPEG; the key gets their names when the card is written. */
export const photographs = signal<{ photo_before: string[]; photo: string[] }>({ photo_before: [], photo: [] });
/** The mixture is typed in words of one's own. */
export const isTypedMixture = signal(false);
export const faults = signal<Fault[]>([]);
export const notes = signal("");

// A proposal from before the last change is none: a harm may just have closed it.
const proposal = () => (next.value.isCurrent && said(nextRow(), "step") === "test" ? nextRow() : undefined);

export const proposedMixture = () => said(proposal(), "mixture");

/** The mixture of the card: what was chosen, else what is proposed. */
export const mixtureOfCard = () => card.value.mixture ?? proposedMixture();

export const isBegun = () => Object.entries(card.value).some(([key, value]) => value && !ofTheSitting.includes(key as Key));

/** What the proposal fills in by itself as long as nothing was chosen. */
function proposed(key: Key): string {
  const row = proposal();
  if (!row) return "";
  if (key === "at_edge") return said(row, "place") === "edge" ? "yes" : "no";
  if (key === "passage") return said(row, "passage");
  return "";
}

export const valueOf = (key: Key): string => (key === "mixture" ? mixtureOfCard() : (card.value[key] ?? proposed(key)));

/** Sets one field. With the first one the card holds on to what was proposed then, whatever is proposed meanwhile. */
export function fill(key: Key, value: string): void {
  const held: Card = {};
  if (!ofTheSitting.includes(key)) for (const one of ["mixture", "at_edge", "passage"] as const) if (card.peek()[one] === undefined) held[one] = valueOf(one);
  card.value = { ...card.peek(), ...held, [key]: value };
  faults.value = faults.peek().filter((fault) => keyOfFault(fault) !== key);
}

export function startOver(): void {
  const before = card.peek();
  card.value = Object.fromEntries(ofTheSitting.filter((key) => before[key]).map((key) => [key, before[key]]));
  photographs.value = { photo_before: [], photo: [] };
  isTypedMixture.value = false;
  faults.value = [];
  notes.value = "";
}

export interface CardDraft { card: Card; photographs: { photo_before: string[]; photo: string[] }; isTyped: boolean }

export const cardDraft = (): CardDraft => ({ card: card.peek(), photographs: photographs.peek(), isTyped: isTypedMixture.peek() });

export function takeUpCard(draft: CardDraft): void {
  card.value = draft.card;
  photographs.value = draft.photographs;
  isTypedMixture.value = draft.isTyped;
}

const named: [RegExp, Key][] = [
  [/\bx_cm\b/, "x_cm"], [/\by_cm\b|\bsite\b/, "y_cm"], [/passage/, "passage"], [/for first_effect_s|first_effect_s/, "first_effect_s"],
  [/mixture|rung|solvent|line \d/, "mixture"], [/nothing was read/, "removal"],
];

/** The field that a fault speaks of: the engine names it as the fault's file; the message names it else. */
export function keyOfFault(fault: Fault): Key | null {
  if ((keys as readonly string[]).includes(fault.file)) return fault.file as Key;
  const behind = / for (\w+)$/.exec(fault.message)?.[1];
  if (behind && (keys as readonly string[]).includes(behind)) return behind as Key;
  return named.find(([pattern]) => pattern.test(fault.message))?.[1] ?? null;
}
