// Edits of a YAML text, from text to text: only the bytes of what changed change; remarks, order and quoting stay.
// Each edit is read again and compared with what it should give; where it does not (a text of unusual make), the whole
// is printed anew instead, its remarks kept.
import { isMap, isScalar, isSeq, parseDocument, type Pair, type Scalar, type YAMLMap, type YAMLSeq } from "yaml";
import {
  behindColon, behindLine, endOf, flowText, isFlow, isSame, keyOf, nodeAt, pairOf, parsed, rangeOf, readBack, scalarText,
  startOfLine, type Parsed, type Path, type Quoting, type Read, type Value,
} from "./yaml_text";

/** The text cannot be edited by fields: it is no YAML that the page can read. */
export class Unreadable extends Error {}

const put = (text: string, from: number, to: number, what: string) => text.slice(0, from) + what + text.slice(to);

const parts = (path: Path): [Path, string | number] => [path.slice(0, -1), path[path.length - 1] ?? ""];

interface Edit {
  cut(from: Parsed): string;
  expect(value: Read): void;
  print(document: ReturnType<typeof parseDocument>): void;
}

function edited(text: string, edit: Edit): string {
  const from = parsed(text);
  if (!from.isReadable || typeof from.value !== "object") throw new Unreadable();
  const wanted = copy(from.value);
  edit.expect(wanted);
  const result = from.mark + edit.cut(from);
  const now = parsed(result);
  if (now.isReadable && isSame(now.value, wanted)) return result;
  const whole = parseDocument(from.body);
  edit.print(whole);
  return from.mark + whole.toString({ lineWidth: 0 }).replace(/\n/g, from.eol);
}

// Not structuredClone: it has no objects without a prototype, and what is read may have a key of any name.
function copy(value: Read): Read {
  if (Array.isArray(value)) return value.map(copy);
  if (typeof value !== "object") return value;
  const map: { [key: string]: Read } = Object.create(null);
  for (const key of Object.keys(value)) map[key] = copy(value[key] ?? "");
  return map;
}

type Holder = { [key: string | number]: Read };

function holderOf(value: Read, path: Path): Holder {
  let at = value as Holder;
  for (const key of path) {
    if (typeof at[key] !== "object") at[key] = Object.create(null) as { [key: string]: Read };
    at = at[key] as Holder;
  }
  return at;
}

const quotingOf = (node: Scalar): Quoting =>
  node.type === "QUOTE_DOUBLE" ? "double" : node.type === "QUOTE_SINGLE" ? "single" : "plain";

// "key:" with nothing behind it.
function withNothing(from: Parsed, path: Path, value: Value): string {
  const [holderPath, key] = parts(path);
  const holder = nodeAt(from, holderPath);
  const pair = isMap(holder) ? pairOf(holder, String(key)) : undefined;
  if (!pair) return from.body;
  return put(from.body, behindColon(pair), behindColon(pair), ` ${flowText(value)}`);
}

function withScalar(from: Parsed, node: Scalar, value: string | number | boolean): string {
  const [start, end] = rangeOf(node);
  const tail = from.body.slice(start, end).endsWith("\n") ? from.eol : "";
  return put(from.body, start, end, scalarText(value, quotingOf(node)) + tail);
}

// A list or map in a block ends with its line break, one in brackets does not.
function withNode(from: Parsed, node: YAMLMap | YAMLSeq | Scalar, value: Value): string {
  const start = rangeOf(node)[0];
  const end = endOf(node);
  const tail = from.body.slice(start, end).endsWith("\n") ? from.eol : "";
  return put(from.body, start, end, flowText(value) + tail);
}

const column = (text: string, at: number) => at - startOfLine(text, at);

function lineAt(from: Parsed, at: number, line: string): string {
  const isOpen = at > 0 && from.body[at - 1] !== "\n";
  return put(from.body, at, at, `${isOpen ? from.eol : ""}${line}${isOpen ? "" : from.eol}`);
}

// Which keys a new one stands behind, the nearest first.
const order = ["gentlest_job", "gentlest_shelf", "object", "examination", "layers", "passages", "shelf", "limits", "name", "role", "of", "material", "recorded", "found",
  "own_sphere", "possible", "answer", "where", "solvent", "grade", "at_most_percent", "suspected", "title", "owner_number", "width_cm", "height_cm", "paint_age_years", "note"];

function pairBefore(map: YAMLMap, key: string): Pair | undefined {
  const place = order.indexOf(key);
  const earlier = map.items.filter((pair) => order.includes(keyOf(pair)) && order.indexOf(keyOf(pair)) < place);
  return (place < 0 ? undefined : earlier[earlier.length - 1]) ?? map.items[map.items.length - 1];
}

function withNewKey(from: Parsed, map: YAMLMap, key: string, value: Value): string {
  const before = pairBefore(map, key);
  const entry = `${scalarText(key)}: ${flowText(value)}`;
  if (!before) return put(from.body, rangeOf(map)[0] + 1, rangeOf(map)[0] + 1, entry);
  if (isFlow(map)) return put(from.body, endOf(before), endOf(before), `, ${entry}`);
  const indent = " ".repeat(column(from.body, rangeOf(map.items[0]?.key)[0]));
  return lineAt(from, behindLine(from.body, endOf(before)), indent + entry);
}

// A map that is not there, or has nothing behind its colon, gets its first key on a line of its own.
function withNewMap(from: Parsed, path: Path, key: string, value: Value): string {
  const [holderPath, name] = parts(path);
  const holder = nodeAt(from, holderPath);
  if (!isMap(holder) || isFlow(holder) || holderPath.length > 0) return cutSet(from, path, { [key]: value });
  const pair = pairOf(holder, String(name));
  const entry = `  ${scalarText(key)}: ${flowText(value)}`;
  if (pair) return lineAt(from, behindLine(from.body, behindColon(pair)), entry);
  const before = pairBefore(holder, String(name));
  const at = before ? behindLine(from.body, endOf(before)) : from.body.length;
  return lineAt(from, at, `${name}:${from.eol}${entry}`);
}

function cutSet(from: Parsed, path: Path, value: Value): string {
  const node = nodeAt(from, path);
  if (isScalar(node) && rangeOf(node)[0] === rangeOf(node)[1]) return withNothing(from, path, value);
  if (isScalar(node) && typeof value !== "object") return withScalar(from, node, value);
  if (isScalar(node) || isMap(node) || isSeq(node)) return withNode(from, node, value);
  const [holderPath, key] = parts(path);
  const holder = nodeAt(from, holderPath);
  if (isMap(holder)) return withNewKey(from, holder, String(key), value);
  return withNewMap(from, holderPath, String(key), value);
}

/** Puts `value` at `path`; keys on the way are made. */
export function setAt(text: string, path: Path, value: Value): string {
  const [holderPath, key] = parts(path);
  return edited(text, {
    cut: (from) => cutSet(from, path, value),
    expect: (whole) => { holderOf(whole, holderPath)[key] = readBack(value); },
    print: (document) => document.setIn(path, document.createNode(value)),
  });
}

function cutEntry(from: Parsed, holder: YAMLMap | YAMLSeq, index: number): string {
  const items = holder.items as unknown[];
  const startOf = (i: number) => { const one = items[i]; return rangeOf(isMap(holder) ? (one as Pair).key : one)[0]; };
  if (isFlow(holder)) {
    if (index > 0) return put(from.body, endOf(items[index - 1]), endOf(items[index]), "");
    return put(from.body, startOf(0), items.length > 1 ? startOf(1) : endOf(items[0]), "");
  }
  if (isSeq(holder)) return spliced(from, holder, index, 1);
  const line = startOfLine(from.body, startOf(index));
  // The first key of a list's item stands behind its dash.
  if (from.body.slice(line, startOf(index)).trim() !== "" && items.length > 1) return put(from.body, startOf(index), startOf(index + 1), "");
  return put(from.body, line, behindLine(from.body, endOf(items[index])), "");
}

/** Takes away what stands at `path`; the last key of a map takes the map with it. */
export function removeAt(text: string, path: Path): string {
  const [holderPath, key] = parts(path);
  const holder = nodeAt(parsed(text), holderPath);
  if (isMap(holder) && !pairOf(holder, String(key))) return text;
  if (isMap(holder) && holder.items.length === 1 && holderPath.length > 0) return removeAt(text, holderPath);
  return edited(text, {
    cut: (from) => {
      const of = nodeAt(from, holderPath);
      if (isMap(of)) return cutEntry(from, of, of.items.findIndex((pair) => keyOf(pair) === key));
      return isSeq(of) ? cutEntry(from, of, Number(key)) : from.body;
    },
    expect: (whole) => {
      const at = holderOf(whole, holderPath);
      if (Array.isArray(at)) at.splice(Number(key), 1);
      else delete at[key];
    },
    print: (document) => { document.deleteIn(path); },
  });
}

/** The lines of a list's items; remarks above an item go with it. */
function segments(from: Parsed, list: YAMLSeq): { start: number; ends: number[] } {
  let start = startOfLine(from.body, rangeOf(list)[0]);
  for (let above = start; start > 0; start = above) {
    above = startOfLine(from.body, start - 1);
    if (!/^\s*(#.*)?$/.test(from.body.slice(above, start).trimEnd())) break;
  }
  return { start, ends: list.items.map((item) => behindLine(from.body, endOf(item))) };
}

// Takes items out, or puts lines in their place.
function spliced(from: Parsed, list: YAMLSeq, index: number, count: number, lines = ""): string {
  const { start, ends } = segments(from, list);
  const at = index === 0 ? start : ends[index - 1] ?? from.body.length;
  const end = count === 0 ? at : ends[index + count - 1] ?? at;
  if (count > 0 && list.items.length === count) {
    const colon = from.body.lastIndexOf(":", startOfLine(from.body, rangeOf(list)[0]));
    return put(put(from.body, at, end, ""), colon + 1, colon + 1, " []");
  }
  return lines === "" ? put(from.body, at, end, "") : lineAt(from, at, lines);
}

/** As lines of a list: a map in block style where it is asked for, else on one line. */
function itemLines(value: Value, indent: string, isBlock: boolean, eol: string): string {
  if (!isBlock || typeof value !== "object" || Array.isArray(value)) return `${indent}- ${flowText(value)}`;
  const entries = Object.entries(value).map(([key, one]) => `${scalarText(key)}: ${flowText(one)}`);
  return `${indent}- ${entries.join(`${eol}${indent}  `)}`;
}

function cutInsert(from: Parsed, path: Path, index: number, value: Value, isBlock: boolean): string {
  const list = nodeAt(from, path);
  const [holderPath, key] = parts(path);
  if (isSeq(list) && list.items.length > 0) {
    const items = list.items as unknown[];
    if (!isFlow(list)) return spliced(from, list, index, 0, itemLines(value, " ".repeat(column(from.body, rangeOf(list)[0])), isBlock, from.eol));
    if (index > 0) return put(from.body, endOf(items[index - 1]), endOf(items[index - 1]), `, ${flowText(value)}`);
    return put(from.body, rangeOf(items[0])[0], rangeOf(items[0])[0], `${flowText(value)}, `);
  }
  const lines = itemLines(value, "  ", isBlock, from.eol);
  const holder = nodeAt(from, holderPath);
  const pair = isMap(holder) && !isFlow(holder) && holderPath.length === 0 ? pairOf(holder, String(key)) : undefined;
  if (pair) {  // "shelf:" or "shelf: []"
    const [start, end] = rangeOf(pair.value);
    const body = start === end ? from.body : put(from.body, behindColon(pair), end, "");
    return lineAt({ ...from, body }, behindLine(body, behindColon(pair)), lines);
  }
  if (!isMap(holder) || holderPath.length > 0) return cutSet(from, path, [value]);
  const before = pairBefore(holder, String(key));
  return lineAt(from, before ? behindLine(from.body, endOf(before)) : from.body.length, `${key}:${from.eol}${lines}`);
}

/** Puts an item into the list at `path`, which is made where there is none. */
export function insertAt(text: string, path: Path, index: number, value: Value, style: "block" | "flow" = "flow"): string {
  return edited(text, {
    cut: (from) => cutInsert(from, path, index, value, style === "block"),
    expect: (whole) => {
      const [holderPath, key] = parts(path);
      const holder = holderOf(whole, holderPath);
      if (!Array.isArray(holder[key])) holder[key] = [];
      (holder[key] as Read[]).splice(index, 0, readBack(value));
    },
    print: (document) => {
      const list = document.getIn(path);
      if (isSeq(list)) list.items.splice(index, 0, document.createNode(value));
      else document.setIn(path, document.createNode([value]));
    },
  });
}

function moved<T>(items: readonly T[], from: number, to: number): T[] {
  const all = [...items];
  all.splice(to, 0, ...all.splice(from, 1));
  return all;
}

function cutMove(whole: Parsed, list: YAMLSeq, from: number, to: number): string {
  const { body, eol } = whole;
  const items = list.items as unknown[];
  if (isFlow(list)) {
    const pieces = moved(items.map((item) => body.slice(rangeOf(item)[0], endOf(item))), from, to);
    return items.reduceRight<string>((text, item, i) => put(text, rangeOf(item)[0], endOf(item), pieces[i] ?? ""), body);
  }
  const { start, ends } = segments(whole, list);
  const end = ends[ends.length - 1] ?? start;
  const hasBreak = body.slice(start, end).endsWith("\n");
  const pieces = ends.map((stop, i) => body.slice(i === 0 ? start : ends[i - 1], stop).replace(/\r?\n$/, ""));
  return put(body, start, end, moved(pieces, from, to).join(eol) + (hasBreak ? eol : ""));
}

/** Moves an item of the list at `path`; it stands at `to` afterwards. */
export function moveAt(text: string, path: Path, from: number, to: number): string {
  if (from === to) return text;
  return edited(text, {
    cut: (whole) => { const list = nodeAt(whole, path); return isSeq(list) ? cutMove(whole, list, from, to) : whole.body; },
    expect: (value) => {
      const [holderPath, key] = parts(path);
      const list = holderOf(value, holderPath)[key];
      if (Array.isArray(list)) list.splice(to, 0, ...list.splice(from, 1));
    },
    print: (document) => { const list = document.getIn(path); if (isSeq(list)) list.items = moved(list.items, from, to); },
  });
}
