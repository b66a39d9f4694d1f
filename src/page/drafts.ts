// What is not saved is kept by the browser, as far as it lets us, under a key of this tab; after a crash it is offered
// again. A tab tells that it lives by answering the others' question, so no draft of an open tab is offered.
import { effect, signal } from "@preact/signals";
import { fromBase64, toBase64 } from "./base64";
import { openedLog, take, unsaved, type Kind } from "./files";
import { card, cardDraft, isBegun, photographs, takeUpCard, type CardDraft } from "./parts/easel/test_card";
import { jobName, jobText, logName, logText } from "./state";
import { shelfName, shelfText } from "./shelf_file";
import { decoded } from "./utf8";

interface Draft {
  job: string; jobName: string; log: string; logName: string; shelf: string; shelfName: string; time: number; openedLetters: number; openedBytes?: string;
  /** Which of the files were not saved. */
  unsaved: readonly Kind[];
  /** The test that is being filled in, not written down yet. */
  test?: CardDraft;
}
export interface Offered { key: string; draft: Draft }

export const offered = signal<readonly Offered[]>([]);
export const keeping = signal<"kept" | "none" | "too large">("kept");

const prefix = "gentlest-draft-";
const alivePrefix = "gentlest-alive-";
const question = "gentlest-who-lives";
const own = `${Date.now().toString(36)}-${Math.random().toString(36).slice(2)}`;

/** The browser's store, or nothing: by file:// it may throw at the first touch. */
function store(): Storage | undefined {
  try {
    return window.localStorage ?? undefined;
  } catch {
    return undefined;
  }
}

function write(key: string, text: string): boolean {
  try {
    store()?.setItem(key, text);
    return true;
  } catch {
    return false;
  }
}

function forget(key: string): void {
  try {
    store()?.removeItem(key);
  } catch { /* no store */ }
}

function keys(): string[] {
  try {
    const from = store();
    return from ? Array.from({ length: from.length }, (_, i) => from.key(i) ?? "") : [];
  } catch {
    return [];
  }
}

function keep(): void {
  if (unsaved.peek().length === 0 && !isBegun()) return forget(prefix + own);
  const { bytes, text } = openedLog.peek();
  const isExact = decoded(bytes) !== undefined;
  const draft: Draft = {
    job: jobText.peek(), jobName: jobName.peek(), log: logText.peek(), logName: logName.peek(), shelf: shelfText.peek(), shelfName: shelfName.peek(),
    time: Date.now(), openedLetters: text.length, unsaved: unsaved.peek(),
    ...(isExact ? {} : { openedBytes: toBase64(bytes) }), ...(isBegun() ? { test: cardDraft() } : {}),
  };
  const kept = (one: Draft) => write(prefix + own, JSON.stringify(one));
  keeping.value = !store() ? "none" : kept(draft) ? "kept" : "too large";
  // Photographs are what outgrows it: the words of the test are kept without them.
  if (keeping.peek() === "too large" && draft.test) kept({ ...draft, test: { ...draft.test, photographs: { photo_before: [], photo: [] } } });
}

function read(key: string): Draft | undefined {
  try {
    const draft = JSON.parse(store()?.getItem(key) ?? "") as Partial<Draft>;
    // One of an earlier page does not say what was saved: all of it counts as not saved.
    return typeof draft.job === "string" && typeof draft.log === "string" ? { ...(draft as Draft), unsaved: draft.unsaved ?? ["job", "log", "shelf"] } : undefined;
  } catch {
    return undefined;
  }
}

const live = () => write(alivePrefix + own, String(Date.now()));
const lastSign = (id: string) => {
  try {
    return Number(store()?.getItem(alivePrefix + id) ?? 0);
  } catch {
    return 0;
  }
};

function offerThoseOf(isGone: (id: string) => boolean): void {
  const known = new Set(offered.peek().map((one) => one.key));
  const ids = keys().filter((key) => key.startsWith(prefix) && key !== prefix + own && !known.has(key)).map((key) => key.slice(prefix.length));
  const found = ids.filter(isGone).flatMap((id) => {
    const draft = read(prefix + id);
    return draft ? [{ key: prefix + id, draft }] : [];
  });
  if (found.length > 0) offered.value = [...offered.peek(), ...found].sort((a, b) => b.draft.time - a.draft.time);
}

const answerTime_ms = 2500;
const signEvery_ms = 2000;
const pauseAfterTyping_ms = 400;

/** Starts keeping drafts, and offers those whose tab is gone. */
export function followDrafts(): void {
  if (!store()) keeping.value = "none";
  const asked = Date.now();
  live();
  setInterval(live, signEvery_ms);
  window.addEventListener("storage", (event) => { if (event.key === question) live(); });
  write(question, String(asked));
  // A tab that was closed in good order took its sign away; of the others an answer is awaited.
  offerThoseOf((id) => lastSign(id) === 0);
  setTimeout(() => offerThoseOf((id) => lastSign(id) < asked), answerTime_ms);
  let timer: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    void [jobText.value, logText.value, shelfText.value, unsaved.value, card.value, photographs.value];
    clearTimeout(timer);
    timer = setTimeout(keep, pauseAfterTyping_ms);
  });
  window.addEventListener("pagehide", () => { keep(); forget(alivePrefix + own); });
  window.addEventListener("pageshow", live);
  window.addEventListener("beforeunload", (event) => {
    if (unsaved.peek().length === 0 && !isBegun()) return;
    event.preventDefault();
    event.returnValue = true; // what older browsers ask for
  });
}

export function discard({ key }: Offered): void {
  forget(key);
  forget(alivePrefix + key.slice(prefix.length));
  offered.value = offered.value.filter((one) => one.key !== key);
}

/** Opens a draft as unsaved work of this tab. */
export function takeUp(one: Offered): void {
  const { draft } = one;
  const isSaved = (kind: Kind) => !draft.unsaved.includes(kind);
  const bytes = new Uint8Array();
  take({ kind: "job", name: draft.jobName, text: draft.job, bytes }, isSaved("job"));
  take({ kind: "log", name: draft.logName, text: draft.log, bytes }, isSaved("log"));
  const opened = draft.log.slice(0, draft.openedLetters);
  openedLog.value = { text: opened, bytes: draft.openedBytes ? fromBase64(draft.openedBytes) : new TextEncoder().encode(opened) };
  if (draft.shelf) take({ kind: "shelf", name: draft.shelfName, text: draft.shelf, bytes }, isSaved("shelf"));
  if (draft.test) takeUpCard(draft.test);
  // First the old copy: two may be more than the store holds.
  discard(one);
  keep();
}
