// The job file as its fields, and edits of it, from text to text (docs/data-format.md, "The job file").
import { insertAt, moveAt, removeAt, setAt } from "./edits";
import { parsed, type Path, type Read, type Value } from "./yaml_text";

export { insertAt, moveAt, removeAt, setAt, Unreadable } from "./edits";
export { parsed, type Path, type Value } from "./yaml_text";

export interface PossibleView { material: string; percent: string }
export interface LayerView {
  name: string; role: string; recorded: string; found: string; note: string;
  suspected: string[];
  possible: PossibleView[];
  ownSphere: Record<string, string> | null;
}
export interface PassageView { name: string; of: string; material: string; note: string; suspected: string[] }
export interface FindingView { answer: string; where: string[]; note: string }
export interface BottleView { solvent: string; grade: string; atMostPercent: string }
export interface JobView {
  isReadable: boolean;
  object: Record<string, string>;
  layers: LayerView[];
  passages: PassageView[];
  /** By question. */
  examination: Record<string, FindingView>;
  shelf: BottleView[];
  /** As written; a list is a list. */
  limits: Record<string, string | string[]>;
}

type ReadMap = { [key: string]: Read };

const mapOf = (read: Read | undefined): ReadMap => (typeof read === "object" && !Array.isArray(read) ? read : {});
const listOf = (read: Read | undefined): Read[] => (Array.isArray(read) ? read : read === undefined || read === "" ? [] : [read]);
const textOf = (read: Read | undefined): string => (typeof read === "string" ? read : "");
const textsOf = (read: Read | undefined): string[] => listOf(read).map(textOf);
const allTexts = (read: Read | undefined): Record<string, string> =>
  Object.fromEntries(Object.entries(mapOf(read)).map(([key, one]) => [key, textOf(one)]));

function layerOf(read: Read): LayerView {
  const map = mapOf(read);
  return {
    name: textOf(map.name), role: textOf(map.role), recorded: textOf(map.recorded), found: textOf(map.found), note: textOf(map.note),
    suspected: textsOf(map.suspected),
    possible: listOf(map.possible).map((one) => ({ material: textOf(mapOf(one).material), percent: textOf(mapOf(one).percent) })),
    ownSphere: map.own_sphere === undefined ? null : allTexts(map.own_sphere),
  };
}

function passageOf(read: Read): PassageView {
  const map = mapOf(read);
  return { name: textOf(map.name), of: textOf(map.of), material: textOf(map.material), note: textOf(map.note), suspected: textsOf(map.suspected) };
}

function findingOf(read: Read): FindingView {
  if (typeof read === "string") return { answer: read, where: [], note: "" };
  const map = mapOf(read);
  return { answer: textOf(map.answer), where: textsOf(map.where), note: textOf(map.note) };
}

export function bottleOf(read: Read): BottleView {
  if (typeof read === "string") return { solvent: read, grade: "", atMostPercent: "" };
  const map = mapOf(read);
  return { solvent: textOf(map.solvent), grade: textOf(map.grade), atMostPercent: textOf(map.at_most_percent) };
}

export function readJob(text: string): JobView {
  const { value, isReadable } = parsed(text);
  const job = mapOf(value);
  return {
    isReadable,
    object: allTexts(job.object),
    layers: listOf(job.layers).map(layerOf),
    passages: listOf(job.passages).map(passageOf),
    examination: Object.fromEntries(Object.entries(mapOf(job.examination)).map(([key, one]) => [key, findingOf(one)])),
    shelf: listOf(job.shelf).map(bottleOf),
    limits: Object.fromEntries(Object.entries(mapOf(job.limits)).map(([key, one]) => [key, typeof one === "string" ? one : textsOf(one)])),
  };
}

const number = /^\s*([-+\u2212]?)(\d*)(?:[.,](\d*))?\s*$/;

/** A number as a person types it, with a point or a comma; anything else stays the text that it is, for the engine to judge. */
export function asTyped(typed: string): Value {
  const found = number.exec(typed);
  if (!found || !(found[2] || found[3])) return typed;
  const [, sign = "", whole = "", part = ""] = found;
  return Number(`${sign === "\u2212" ? "-" : sign}${whole || "0"}${part ? `.${part}` : ""}`);
}

/** Puts what was typed; where nothing is left, the key goes too. */
export const setText = (text: string, path: Path, typed: string): string => (typed === "" ? removeAt(text, path) : setAt(text, path, typed));
export const setNumber = (text: string, path: Path, typed: string): string =>
  typed.trim() === "" ? removeAt(text, path) : setAt(text, path, asTyped(typed));

/** A limit of the job: a number as typed, a truth or a list; nothing: back to the program's own. */
export function setLimit(text: string, key: string, value: string | boolean | readonly string[] | undefined): string {
  const path = ["limits", key];
  if (value === undefined || value === "") return removeAt(text, path);
  return setAt(text, path, typeof value === "string" ? asTyped(value) : value);
}

/** Takes a word into the list at `path`, or out of it. */
export function toggleWord(text: string, path: Path, word: string, words: readonly string[]): string {
  const left = words.includes(word) ? words.filter((one) => one !== word) : [...words, word];
  return left.length === 0 ? removeAt(text, path) : setAt(text, path, left);
}

export function addLayer(text: string, name: string, role: string): string {
  return insertAt(text, ["layers"], readJob(text).layers.length, { name, role, found: "unknown" }, "block");
}

export const moveLayer = (text: string, from: number, to: number): string => moveAt(text, ["layers"], from, to);
export const removeLayer = (text: string, index: number): string => removeAt(text, ["layers", index]);

/** Passages that name the layer go on naming it. */
export function renameLayer(text: string, index: number, name: string): string {
  const { layers, passages } = readJob(text);
  const old = layers[index]?.name ?? "";
  const isAlone = layers.filter((layer) => layer.name === old).length === 1;
  const renamed = setAt(text, ["layers", index, "name"], name);
  if (old === "" || !isAlone) return renamed;
  return passages.reduce((now, passage, i) => (passage.of === old ? setAt(now, ["passages", i, "of"], name) : now), renamed);
}

export function addPassage(text: string, name: string, of: string): string {
  return insertAt(text, ["passages"], readJob(text).passages.length, { name, of });
}

/** Findings that name the passage go on naming it. */
export function renamePassage(text: string, index: number, name: string): string {
  const { passages, examination } = readJob(text);
  const old = passages[index]?.name ?? "";
  const renamed = setAt(text, ["passages", index, "name"], name);
  if (old === "") return renamed;
  return Object.entries(examination).filter(([, { where }]) => where.includes(old)).reduce((now, [question, finding]) =>
    setFinding(now, question, { ...finding, where: finding.where.map((one) => (one === old ? name : one)) }), renamed);
}

export const removePassage = (text: string, index: number): string => removeAt(text, ["passages", index]);

/** An answer of the examination: a bare word as long as it says no more; not known leaves the file. */
export function setFinding(text: string, question: string, { answer, where, note }: FindingView): string {
  const path: Path = ["examination", question];
  if (answer === "") return removeAt(text, path);
  if (where.length === 0 && note === "") return setAt(text, path, answer);
  return setAt(text, path, { answer, ...(where.length > 0 ? { where: [...where] } : {}), ...(note === "" ? {} : { note }) });
}

export function addBottle(text: string, solvent: string): string {
  return insertAt(text, ["shelf"], readJob(text).shelf.length, solvent);
}

export const removeBottle = (text: string, index: number): string => removeAt(text, ["shelf", index]);

/** A bottle of a list: a bare word as long as nothing else is known of it. */
export function setBottle(text: string, path: Path, key: "grade" | "at_most_percent" | "opened", typed: string): string {
  const value: Value = key === "at_most_percent" ? asTyped(typed) : typed;
  const at = path.reduce<Read | undefined>((read, step) => (typeof read === "object" ? (read as ReadMap)[step] : undefined), parsed(text).value);
  if (typeof at === "string") return typed === "" ? text : setAt(text, path, { solvent: at, [key]: value });
  if (typed !== "") return setAt(text, [...path, key], value);
  const left = Object.keys(mapOf(at)).filter((one) => one !== key);
  const solvent = textOf(mapOf(at).solvent);
  return left.length === 1 && left[0] === "solvent" ? setAt(text, path, solvent) : removeAt(text, [...path, key]);
}
