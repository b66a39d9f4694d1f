// A YAML text as it stands and what it holds. Every scalar is read as its letters: what they mean is the engine's to say.
import { isCollection, isMap, isPair, isScalar, isSeq, parseDocument, type Document, type Node, type Pair, type YAMLMap, type YAMLSeq } from "yaml";

export type Path = readonly (string | number)[];
/** What is written: a string stands as text whatever it looks like, a number and a truth stand bare. */
export type Value = string | number | boolean | readonly Value[] | { readonly [key: string]: Value };
/** What is read. */
export type Read = string | Read[] | { [key: string]: Read };

export interface Parsed {
  /** Without a byte order mark; all ranges count in it. */
  body: string;
  mark: string;
  eol: string;
  document: Document;
  value: Read;
  isReadable: boolean;
}

const byteOrderMark = "\uFEFF";
let last: { text: string; parsed: Parsed } | undefined;

/** Parses once per text: all views of one text share it. */
export function parsed(text: string): Parsed {
  if (last?.text === text) return last.parsed;
  const mark = text.startsWith(byteOrderMark) ? byteOrderMark : "";
  const body = text.slice(mark.length);
  const document = parseDocument(body, { schema: "failsafe", keepSourceTokens: true, logLevel: "silent" });
  const isReadable = document.errors.length === 0;
  const value = isReadable ? asRead(document.contents) : "";
  const result = { body, mark, eol: body.includes("\r\n") ? "\r\n" : "\n", document, value, isReadable };
  last = { text, parsed: result };
  return result;
}

const isNothing = (node: unknown) => isScalar(node) && node.type === "PLAIN" && /^(~|null|Null|NULL)?$/.test(String(node.value));

/** As toJS, but without the objects' prototype: a key may have any name. */
function asRead(node: unknown): Read {
  if (isMap(node)) {
    const map: { [key: string]: Read } = Object.create(null);
    for (const pair of node.items) map[keyOf(pair)] = asRead(pair.value);
    return map;
  }
  if (isSeq(node)) return node.items.map(asRead);
  if (!isScalar(node) || isNothing(node)) return "";
  return String(node.value);
}

export const keyOf = (pair: Pair): string => (isScalar(pair.key) ? String(pair.key.value) : "");

export const nodeAt = (from: Parsed, path: Path): Node | undefined =>
  path.length === 0 ? (from.document.contents ?? undefined) : (from.document.getIn(path, true) as Node | undefined);

export const pairOf = (map: YAMLMap, key: string): Pair | undefined => map.items.find((pair) => keyOf(pair) === key);

interface Token { offset: number; type: string }
interface PairToken { sep?: Token[] }

/** Just behind the colon of a pair. */
export function behindColon(pair: Pair): number {
  const token = (pair.srcToken as PairToken | undefined)?.sep?.find((one) => one.type === "map-value-ind");
  return token ? token.offset + 1 : rangeOf(pair.key)[1];
}

export function rangeOf(node: unknown): [number, number] {
  const range = (node as Node | null | undefined)?.range;
  return range ? [range[0], range[1]] : [0, 0];
}

/** Where what is written of a node or pair ends: before remarks and blank lines behind it. */
export function endOf(node: unknown): number {
  if (isPair(node)) {
    const [start, end] = rangeOf(node.value);
    return !node.value || (isNothing(node.value) && start === end) ? behindColon(node) : endOf(node.value);
  }
  if (isCollection(node) && !node.flow && node.items.length > 0) return endOf(node.items[node.items.length - 1]);
  return rangeOf(node)[1];
}

export const startOfLine = (text: string, at: number): number => text.lastIndexOf("\n", at - 1) + 1;

/** Behind the line break of the line in which something ends at `at`. */
export function behindLine(text: string, at: number): number {
  if (at > 0 && text[at - 1] === "\n") return at;
  const next = text.indexOf("\n", at);
  return next < 0 ? text.length : next + 1;
}

export const isFlow = (node: YAMLMap | YAMLSeq): boolean => node.flow === true;

// Bare words that some reader of YAML takes for something else than a text.
const notWords = /^(y|n|yes|no|on|off|true|false|null|nan|inf)$/i;
const plain = /^[\p{L}_][\p{L}\p{N}_]*([ .\-/][\p{L}\p{N}_]+)*$/u;

const escaped = (letter: string) => {
  const code = letter.charCodeAt(0);
  return code < 0x100 ? `\\x${code.toString(16).padStart(2, "0")}` : `\\u${code.toString(16).padStart(4, "0")}`;
};

// Half a surrogate pair is no letter.
const whole = (text: string) => text.replace(/[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g, "\uFFFD");

function inQuotes(text: string): string {
  const body = whole(text).replace(/["\\]/g, "\\$&").replace(/\n/g, "\\n").replace(/\r/g, "\\r").replace(/\t/g, "\\t");
  return `"${body.replace(/[\x00-\x1F\x7F-\x9F\u2028\u2029\uFEFF]/g, escaped)}"`;
}

export type Quoting = "plain" | "double" | "single";

export function scalarText(value: string | number | boolean, quoting: Quoting = "plain"): string {
  if (typeof value !== "string") return String(value);
  if (quoting === "single" && /^[^\x00-\x1F\x7F-\x9F\u2028\u2029\uFEFF\uD800-\uDFFF]*$/.test(value)) return `'${value.replace(/'/g, "''")}'`;
  return quoting === "plain" && plain.test(value) && !notWords.test(value) && value.length < 200 ? value : inQuotes(value);
}

const isList = (value: Value): value is readonly Value[] => Array.isArray(value);

/** On one line, in brackets. */
export function flowText(value: Value): string {
  if (isList(value)) return `[${value.map(flowText).join(", ")}]`;
  if (typeof value === "object") return `{${Object.entries(value).map(([key, one]) => `${scalarText(key)}: ${flowText(one)}`).join(", ")}}`;
  return scalarText(value);
}

/** What will be read of what is written. */
export function readBack(value: Value): Read {
  if (isList(value)) return value.map(readBack);
  if (typeof value === "object") return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, readBack(one)]));
  return whole(String(value));
}

export function isSame(a: Read | undefined, b: Read | undefined): boolean {
  if (typeof a !== "object" || typeof b !== "object") return a === b;
  if (Array.isArray(a) || Array.isArray(b)) return Array.isArray(a) && Array.isArray(b) && a.length === b.length && a.every((one, i) => isSame(one, b[i]));
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((key) => key in b && isSame(a[key], b[key]));
}
