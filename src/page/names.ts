// Every name that a person may type, as the engine lists them; searched here while somebody types, resolved by the engine.
import { computed, signal } from "@preact/signals";
import type { NamesRow } from "./answers";
import { ask } from "./engine/engine";

/** A name with its record; `id` and `record` are null where it means several, and `asks` says which. `language`: "name" is the
 * record's own; else a language, "abbr", "trade" or "denatured". */
export type Name = NamesRow;

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

const byId = computed(() => new Map(names.value.filter((one) => one.isOwn).map((one) => [`${one.of} ${one.id}`, one.name])));

/** By what is typed; null where it means several. */
const byFolded = computed(() => {
  const map = new Map<string, Indexed | null>();
  for (const one of names.value) {
    const key = `${one.of} ${one.folded}`;
    const other = map.get(key);
    map.set(key, one.id !== null && (other === undefined || other?.id === one.id) ? other ?? one : null);
  }
  return map;
});

/** What a file says, as the record's name where it is one. */
export const shownName = (written: string, of: Name["of"]): string => byId.value.get(`${of} ${written}`) ?? written;

/** What goes into the file: the record; but a name of its own where the bottle's label must keep it. */
export const writtenName = (one: Name): string => (one.id === null || one.language === "denatured" || one.language === "trade" ? one.name : one.id);

/** The one name that was typed in full, if there is one. */
export const exactName = (typed: string, of: Name["of"]): Found | undefined => byFolded.value.get(`${of} ${folded(typed)}`) ?? undefined;

/** The record that a word of a file means, as far as it is plain; else "". */
export const recordOf = (written: string, of: Name["of"]): string =>
  byId.value.has(`${of} ${written}`) ? written : exactName(written, of)?.id ?? "";

/** The bottle holds more than its record: a denaturant, or what the maker puts into goods of that name. */
export function holdsMore(written: string, of: Name["of"]): boolean {
  const name = folded(written);
  return names.value.some((one) => one.of === of && one.folded === name && (one.language === "denatured" || one.language === "trade")) && !byId.value.has(`${of} ${written}`);
}
