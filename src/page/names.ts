// Every name that a person may type, as the engine lists them; searched here while somebody types, resolved by the engine.
import { signal } from "@preact/signals";
import { ask } from "./engine/engine";

export interface Name {
  name: string;
  /** The record and its own name; null where the name is asked back, since it means several. */
  id: string | null;
  record: string | null;
  of: "solvent" | "material";
  /** Family of a liquid, kind of a material. */
  group: string | null;
  /** "name" is the record's own; else a language, "abbr", "trade" or "denatured". */
  language: string;
  /** What is asked back. */
  asks: string | null;
}

interface Indexed extends Name { folded: string; isOwn: boolean }

export const names = signal<readonly Indexed[]>([]);

/** Without case, accents and signs between words, as people type. */
export const folded = (text: string): string =>
  text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replace(/ß/g, "ss").replace(/[^\p{L}\p{N}]+/gu, " ").trim();

export async function loadNames(): Promise<void> {
  const answer = await ask("names", { command: "list", words: ["names"], options: { format: "json" } });
  if (answer.exit !== 0) return;
  const { names: all } = JSON.parse(answer.text) as { names: Name[] };
  names.value = all.map((one) => ({ ...one, folded: folded(one.name), isOwn: one.language === "name" }));
}

export type Found = Indexed;
const most = 60;

/** Best first: whole names, beginnings, beginnings of a word, anywhere; a record's own name before its other names. */
export function search(typed: string, of: Name["of"]): Found[] {
  const wanted = folded(typed);
  const parts = wanted.split(" ");
  const found: { one: Indexed; rank: number }[] = [];
  for (const one of names.value) {
    if (one.of !== of) continue;
    const text = one.folded;
    if (wanted && !parts.every((part) => text.includes(part)) && one.id !== typed) continue;
    const rank = text === wanted ? 0 : text.startsWith(wanted) ? 1 : ` ${text}`.includes(` ${wanted}`) ? 2 : 3;
    if (wanted === "" && !one.isOwn) continue;
    found.push({ one, rank: rank * 2 + (one.isOwn ? 0 : 1) });
  }
  found.sort((a, b) => a.rank - b.rank || a.one.name.localeCompare(b.one.name));
  return found.slice(0, most).map(({ one }) => one);
}

/** What a file says, as the record's name where it is one. */
export function shownName(written: string, of: Name["of"]): string {
  return names.value.find((one) => one.of === of && one.isOwn && one.id === written)?.name ?? written;
}

/** What goes into the file: the record; but a name of its own where the bottle's label must keep it. */
export const writtenName = (one: Name): string => (one.id === null || one.language === "denatured" || one.language === "trade" ? one.name : one.id);

/** The one name that was typed in full, if there is one. */
export function exactName(typed: string, of: Name["of"]): Found | undefined {
  const wanted = folded(typed);
  const same = names.value.filter((one) => one.of === of && one.folded === wanted);
  return wanted !== "" && new Set(same.map((one) => one.id)).size === 1 ? same[0] : undefined;
}

/** The record that a word of a file means, as far as it is plain. */
export const recordOf = (written: string, of: Name["of"]): string =>
  names.value.some((one) => one.of === of && one.id === written) ? written : exactName(written, of)?.id ?? "";
