// Opening and saving the program's own files. What cannot be read is named and left alone; a saved log begins with the very
// bytes that were opened.
import { computed, signal } from "@preact/signals";
import { download } from "./download";
import { ask, type Answer, type Fault } from "./engine/engine";
import { forgetAnswers, jobFile, jobName, jobText, logFile, logName, logText, savedJobText, savedLogText } from "./state";
import { readJob, removeAt } from "./job/document";
import { parsed } from "./job/yaml_text";
import { savedShelfText, shelfName, shelfText } from "./shelf_file";
import { decoded, loosely } from "./utf8";
import { words } from "./words/words";

export type Kind = "job" | "log" | "shelf";

/** What happened last, in words; "bad" is said loudly. */
export interface Told { text: string; isBad: boolean; faults: readonly Fault[] }
export const told = signal<readonly Told[]>([]);

const texts = { job: jobText, log: logText, shelf: shelfText };
const saved = { job: savedJobText, log: savedLogText, shelf: savedShelfText };
const namesOf = { job: jobName, log: logName, shelf: shelfName };
const kinds: readonly Kind[] = ["job", "log", "shelf"];

export const unsaved = computed(() => kinds.filter((kind) => texts[kind].value !== saved[kind].value));
export const kindWords = (some: readonly Kind[]): string => some.map((kind) => words.value.files.kinds[kind]).join(", ");

/** The log as it was opened: its bytes, and as the text that stands at the beginning of logText. */
export const openedLog = signal<{ bytes: Uint8Array; text: string }>({ bytes: new Uint8Array(), text: "" });

export interface Read { kind: Kind; name: string; text: string; bytes: Uint8Array; notes: Told[] }

const bad = (text: string, faults: readonly Fault[] = []): Told => ({ text, isBad: true, faults });
const good = (text: string): Told => ({ text, isBad: false, faults: [] });

/** The line of the first byte that is no UTF-8. */
function lineOfBadByte(bytes: Uint8Array): number {
  let line = 1;
  for (let start = 0; start < bytes.length; ++line) {
    const end = bytes.indexOf(10, start);
    const stop = end < 0 ? bytes.length : end + 1;
    if (decoded(bytes.subarray(start, stop)) === undefined) return line;
    start = stop;
  }
  return line;
}

function kindOf(name: string, text: string): Kind | undefined {
  if (/^\uFEFF?\{"gentlest_log"/.test(text)) return "log";
  if (/^\uFEFF?gentlest_job\s*:/m.test(text)) return "job";
  if (/^\uFEFF?gentlest_shelf\s*:/m.test(text)) return "shelf";
  return /\.log$/i.test(name) ? "log" : undefined;
}

/** Whether the program itself reads the file: a fault of meaning is no hindrance, it stands at its field then. */
async function refused(kind: Kind, name: string, text: string): Promise<readonly Fault[] | undefined> {
  if (kind === "job") {
    if (parsed(text).isReadable) return undefined;
    const answer = await ask(`open ${name}`, { command: "ladder", words: [jobFile], options: { format: "json" }, files: { [jobFile]: text } });
    return answer.faults.length > 0 ? answer.faults : yamlFaults(parsed(text).document.errors);
  }
  if (kind === "shelf") {
    return parsed(text).isReadable ? undefined : yamlFaults(parsed(text).document.errors);
  }
  const answer = await ask(`open ${name}`, { command: "readings", words: [logFile], options: { format: "json" }, files: { [logFile]: text } });
  return answer.exit === 3 ? answer.faults : undefined;
}

// Where the engine finds nothing (or has failed) what the reader of YAML says stands.
function yamlFaults(errors: readonly { message: string; linePos?: readonly { line: number; col: number }[] | undefined }[]): Fault[] {
  return errors.slice(0, 1).map((error) => ({
    file: jobFile, line: error.linePos?.[0]?.line ?? 0, column: error.linePos?.[0]?.col ?? 0, message: error.message.split("\n")[0] ?? "", remedy: "",
  }));
}

async function read(file: File): Promise<Read | Told> {
  const { files } = words.value;
  let bytes: Uint8Array;
  try {
    bytes = new Uint8Array(await file.arrayBuffer());
  } catch (fault) {
    return bad(files.not_read(file.name, String(fault)));
  }
  if (bytes.includes(0)) return bad(files.is_binary(file.name));
  const exact = decoded(bytes);
  const text = exact ?? loosely(bytes);
  const kind = kindOf(file.name, text);
  if (!kind) return bad(exact === undefined ? files.is_binary(file.name) : files.not_a_kind(file.name));
  const notes: Told[] = [];
  if (exact === undefined) {
    if (kind !== "log") return bad(files.not_utf8(file.name, lineOfBadByte(bytes)));
    notes.push(bad(files.log_not_utf8(file.name, lineOfBadByte(bytes))));
  }
  const faults = await refused(kind, file.name, text);
  return faults ? bad(files.left_alone(file.name), faults) : { kind, name: file.name, text, bytes, notes };
}

export function take({ kind, name, text, bytes }: Omit<Read, "notes">, isSaved = true): void {
  texts[kind].value = text;
  namesOf[kind].value = name;
  saved[kind].value = isSaved ? text : "";
  handles[kind] = undefined;
  ++takes[kind];
  if (kind === "log") openedLog.value = { bytes, text };
  if (kind === "job") forgetAnswers();
}

/** How often each was taken: what is saved slowly may have been replaced meanwhile. */
const takes: Record<Kind, number> = { job: 0, log: 0, shelf: 0 };

const empty = new Uint8Array();
const closeLog = () => take({ kind: "log", name: "painting.log", text: "", bytes: empty });

/** Something else would take the place of unsaved work: asked first. */
export const waiting = signal<{ kinds: readonly Kind[]; goOn: () => void } | null>(null);

export function unlessUnsaved(touched: readonly Kind[], goOn: () => void): void {
  const lost = unsaved.value.filter((kind) => touched.includes(kind));
  if (lost.length > 0) waiting.value = { kinds: lost, goOn };
  else goOn();
}

function takeAll(some: readonly Read[], more: readonly Told[]): void {
  const { files } = words.value;
  const said = [...more];
  const hasJob = some.some((one) => one.kind === "job");
  // The tests of another painting must not stay beside this one.
  if (hasJob && jobText.value !== "" && logText.value !== "" && !some.some((one) => one.kind === "log")) {
    said.push(good(files.log_closed(logName.value)));
    closeLog();
  }
  for (const one of some) {
    take(one);
    said.push(...one.notes);
  }
  if (hasJob && !some.some((one) => one.kind === "log") && logText.value === "") logName.value = `${jobName.value.replace(/\.ya?ml$/i, "")}.log`;
  if (some.length > 0) said.push(good(files.opened(some.map((one) => one.name).join(", "))));
  told.value = said;
}

export async function open(list: readonly File[]): Promise<void> {
  const all = await Promise.all(list.map(read));
  const good = all.filter((one): one is Read => "kind" in one);
  // One of a kind is open at a time: the last that was named.
  const readable = good.filter((one, i) => !good.slice(i + 1).some((later) => later.kind === one.kind));
  const left = good.filter((one) => !readable.includes(one)).map((one) => bad(words.value.files.only_one(one.name, words.value.files.kinds[one.kind])));
  const faulty = [...all.filter((one): one is Told => !("kind" in one)), ...left];
  const touched: Kind[] = readable.map((one) => one.kind);
  if (touched.includes("job")) touched.push("log");
  unlessUnsaved(readable.length > 0 ? touched : [], () => takeAll(readable, faulty));
}

type Beginning = "new" | "demo";
const beginnings: Partial<Record<Beginning, Promise<Answer>>> = {};

// Asked before anything else, when the page opens: who presses the button does not wait behind the lists of names.
async function textOf(command: Beginning): Promise<Answer> {
  const asked = (beginnings[command] ??= ask(`begin ${command}`, { command, words: command === "new" ? ["-"] : [] }));
  const answer = await asked;
  if (answer.exit !== 0) delete beginnings[command];
  return answer;
}

export function prepareBeginnings(): void {
  void textOf("new");
  void textOf("demo");
}

// The template's bottles are an example of how to write them; in the page each is ticked by who has it.
const withoutBottles = (text: string): string => readJob(text).shelf.reduce((now) => removeAt(now, ["shelf", 0]), text);

async function begin(command: Beginning, name: string): Promise<void> {
  const answer = await textOf(command);
  if (answer.exit !== 0) {
    told.value = [bad(answer.notes, answer.faults)];
    return;
  }
  unlessUnsaved(["job", "log"], () => {
    closeLog();
    take({ kind: "job", name, text: command === "new" ? withoutBottles(answer.text) : answer.text, bytes: empty });
    logName.value = name.replace(/\.yaml$/, ".log");
    told.value = [];
  });
}

export const beginNew = (): Promise<void> => begin("new", "painting.yaml");
export const beginDemo = (): Promise<void> => begin("demo", "example.yaml");

/** The bytes to save; none where a log does not begin with what was opened. */
export function bytesOf(kind: Kind): Uint8Array | undefined {
  const text = texts[kind].value;
  const encoder = new TextEncoder();
  if (kind !== "log") return encoder.encode(text);
  const { bytes, text: opened } = openedLog.value;
  if (!text.startsWith(opened)) return undefined;
  const added = encoder.encode(text.slice(opened.length));
  const whole = new Uint8Array(bytes.length + added.length);
  whole.set(bytes);
  whole.set(added, bytes.length);
  return whole;
}

// What the browser grants where it can write a file in its place.
interface Writable { write(data: Uint8Array): Promise<void>; close(): Promise<void> }
interface Handle { name: string; getFile(): Promise<File>; createWritable(): Promise<Writable> }
interface Picker { showSaveFilePicker?: (options: { suggestedName: string }) => Promise<Handle> }
const handles: Record<Kind, Handle | undefined> = { job: undefined, log: undefined, shelf: undefined };

type Saved = "in place" | "download" | "not wanted" | "changed on disk";

/** Whether what stands in the file is the beginning of what is to be written: a log is only ever added to. */
async function isAddedTo(handle: Handle, bytes: Uint8Array): Promise<boolean> {
  const there = new Uint8Array(await (await handle.getFile()).arrayBuffer());
  return there.length <= bytes.length && there.every((byte, at) => byte === bytes[at]);
}

async function put(kind: Kind, bytes: Uint8Array): Promise<Saved> {
  const mine = takes[kind];
  const picker = (window as unknown as Picker).showSaveFilePicker;
  if (picker) {
    try {
      const handle = handles[kind] ?? (await picker.call(window, { suggestedName: namesOf[kind].value }));
      if (kind === "log" && !(await isAddedTo(handle, bytes))) {
        handles.log = undefined;
        return "changed on disk";
      }
      const file = await handle.createWritable();
      await file.write(bytes);
      await file.close();
      if (mine === takes[kind]) {
        handles[kind] = handle;
        namesOf[kind].value = handle.name;
      }
      return "in place";
    } catch (fault) {
      if (fault instanceof DOMException && fault.name === "AbortError") return "not wanted";
      handles[kind] = undefined;  // not granted, or the file is gone: the download always works
    }
  }
  download(namesOf[kind].value, bytes, "application/octet-stream");
  return "download";
}

export async function save(kind: Kind): Promise<boolean> {
  const { files } = words.value;
  const text = texts[kind].value;
  const bytes = bytesOf(kind);
  if (!bytes) {
    told.value = [bad(files.log_changed_before(logName.value))];
    return false;
  }
  const mine = takes[kind];
  try {
    const how = await put(kind, bytes);
    if (how === "not wanted") return false;
    if (how === "changed on disk") {
      told.value = [bad(files.log_changed_on_disk(namesOf.log.value))];
      return false;
    }
    if (mine !== takes[kind]) return true;
    saved[kind].value = text;
    if (kind === "log") openedLog.value = { bytes, text };
    const name = namesOf[kind].value;
    told.value = [...told.value.filter((one) => !one.isBad), good(how === "download" ? files.sent_to_downloads(name) : files.saved_as(name))];
    return true;
  } catch (fault) {
    told.value = [bad(files.save_failed(namesOf[kind].value, String(fault)))];
    return false;
  }
}

export async function saveAll(): Promise<boolean> {
  told.value = [];
  for (const kind of unsaved.value) if (!(await save(kind))) return false;
  return true;
}
