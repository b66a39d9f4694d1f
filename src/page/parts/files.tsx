// Opening, saving, drafts and what is wrong in the files.
import "./files.css";
import { useEffect, useRef } from "preact/hooks";
import { discard, keeping, offered, takeUp } from "../drafts";
import { beginDemo, beginNew, kindWords, open, save, saveAll, told, unlessUnsaved, unsaved, waiting, type Kind, type Told } from "../files";
import { FaultLine } from "./faults";
import { job, putBack, undoable } from "../job/edit";
import { otherFaults } from "../job/faults";
import { parsed, readJob } from "../job/document";
import { jobName, jobText, logName, logText } from "../state";
import { hasField, showFieldOf } from "../steps";
import { shelfName, shelfText } from "../shelf_file";
import { language, words } from "../words/words";

/** Asks for files as a click on a button does. */
function OpenButton() {
  const { files } = words.value;
  const input = useRef<HTMLInputElement>(null);
  const chosen = (event: { currentTarget: HTMLInputElement }) => {
    const list = Array.from(event.currentTarget.files ?? []);
    event.currentTarget.value = "";
    if (list.length > 0) void open(list);
  };
  return (
    <>
      <input ref={input} type="file" multiple hidden aria-label={files.open} onChange={chosen} />
      <button type="button" onClick={() => input.current?.click()}>{files.open}</button>
    </>
  );
}

function ToldLines() {
  return (
    <div role="status" aria-live="polite">
      {told.value.map((one: Told, i) => (
        <div key={i} class={one.isBad ? "faults" : "good"}>
          <p>{one.text}</p>
          {one.faults.map((fault, j) => <FaultLine key={j} fault={fault} />)}
        </div>
      ))}
    </div>
  );
}

function Question() {
  const { files } = words.value;
  const first = useRef<HTMLButtonElement>(null);
  const asked = waiting.value;
  useEffect(() => first.current?.focus(), [asked]);
  if (!asked) return null;
  const answer = (go: boolean) => { waiting.value = null; if (go) asked.goOn(); };
  const saveFirst = async () => { if (await saveAll()) answer(true); };
  return (
    <div role="alertdialog" aria-label={files.replace(kindWords(asked.kinds))} class="faults" onKeyDown={(event) => { if (event.key === "Escape") answer(false); }}>
      <p>{files.replace(kindWords(asked.kinds))}</p>
      <div class="actions">
        <button ref={first} type="button" class="main" onClick={() => void saveFirst()}>{files.save_first}</button>
        <button type="button" onClick={() => answer(true)}>{files.replace_yes}</button>
        <button type="button" onClick={() => answer(false)}>{files.cancel}</button>
      </div>
    </div>
  );
}

function draftName(text: string, fallback: string): string {
  return parsed(text).isReadable ? readJob(text).object.title || fallback : fallback;
}

function Drafts() {
  const { files } = words.value;
  if (offered.value.length === 0) return null;
  return (
    <section class="panel" aria-labelledby="drafts">
      <h2 id="drafts">{files.draft_heading}</h2>
      {offered.value.map((one) => (
        <div key={one.key}>
          <p>{files.draft(draftName(one.draft.job, one.draft.jobName), new Date(one.draft.time).toLocaleString(language.value))}</p>
          <div class="actions">
            <button type="button" class="main" onClick={() => unlessUnsaved(["job", "log", "shelf"], () => { takeUp(one); told.value = [{ text: files.draft_taken, isBad: false, faults: [] }]; })}>{files.draft_open}</button>
            <button type="button" onClick={() => { discard(one); told.value = [{ text: files.draft_thrown, isBad: false, faults: [] }]; }}>{files.draft_discard}</button>
          </div>
        </div>
      ))}
    </section>
  );
}

/** What is not saved, loudly. */
export function UnsavedBar() {
  const { files } = words.value;
  if (unsaved.value.length === 0) return null;
  const keep = keeping.value === "none" ? files.draft_none : keeping.value === "too large" ? files.draft_failed : files.draft_hint;
  return (
    <div class="unsaved" role="status">
      <p><strong>{files.unsaved(kindWords(unsaved.value))}</strong> <span>{keep}</span></p>
      <button type="button" class="main" onClick={() => void saveAll()}>{files.save}</button>
    </div>
  );
}

/** What was taken away, and the way back. */
export function PutBack() {
  const { files } = words.value;
  const name = undoable.value;
  return (
    <div role="status" class="put-back">
      {name !== null && <div class="good actions"><span>{files.taken_away(name)}</span> <button type="button" onClick={putBack}>{files.put_back}</button></div>}
    </div>
  );
}

export function FaultList() {
  const { files } = words.value;
  const isUnreadable = jobText.value !== "" && !job.value.isReadable;
  return (
    <div aria-live="polite">
      {(otherFaults.value.length > 0 || isUnreadable) && (
        <section class="faults" aria-label={files.faults_heading}>
          <p><strong>{isUnreadable ? files.unreadable : files.faults_heading}</strong></p>
          {otherFaults.value.map(({ fault, path }, i) => (
            <div key={i} class="actions">
              <FaultLine fault={fault} />
              {hasField(path) && <button type="button" onClick={() => showFieldOf(path)}>{files.show_field}</button>}
            </div>
          ))}
        </section>
      )}
    </div>
  );
}

function AsText() {
  const { files } = words.value;
  const left = (event: { currentTarget: HTMLTextAreaElement }) => { if (event.currentTarget.value !== jobText.value.replace(/\r\n/g, "\n")) jobText.value = withBreaks(event.currentTarget.value); };
  return (
    <details open={!job.value.isReadable}>
      <summary>{files.as_text}</summary>
      <p class="soft">{files.as_text_hint}</p>
      <label class="hidden-text" for="job-as-text">{files.as_text_label}</label>
      <textarea id="job-as-text" rows={20} spellcheck={false} value={jobText.value} onBlur={left} />
    </details>
  );
}

// A text field knows one kind of line break; the file keeps its own.
const withBreaks = (text: string) => (jobText.value.includes("\r\n") ? text.replace(/\n/g, "\r\n") : text);

const openKinds = (): [Kind, string][] => [
  ...(jobText.value ? [["job", jobName.value] as [Kind, string]] : []),
  ...(logText.value ? [["log", logName.value] as [Kind, string]] : []),
  ...(shelfText.value ? [["shelf", shelfName.value] as [Kind, string]] : []),
];

/** Under the head of the page: what happened, drafts, and the files that are open. */
export function FilesPart() {
  const { files } = words.value;
  return (
    <div class="files">
      <Question />
      <ToldLines />
      <Drafts />
      <details>
        <summary>{`${files.heading}: ${openKinds().map(([, name]) => name).join(", ")}`}</summary>
        <p class="soft">{files.open_hint} {files.draft_hint}</p>
        <ul class="plain">
          {openKinds().map(([kind, name]) => (
            <li key={kind} class="actions">
              <span>{files.kinds[kind]}: <strong>{name}</strong> ({unsaved.value.includes(kind) ? files.not_saved : files.saved})</span>
              <button type="button" onClick={() => void save(kind)}>{files.save_one(files.kinds[kind])}</button>
            </li>
          ))}
        </ul>
        <div class="actions">
          <OpenButton />
          <button type="button" onClick={() => void beginNew()}>{files.new_job}</button>
          <button type="button" onClick={() => void beginDemo()}>{files.demo}</button>
        </div>
        <AsText />
      </details>
    </div>
  );
}

/** The first screen, while nothing is open. */
export function BeginPart() {
  const { files } = words.value;
  return (
    <>
      <Question />
      <ToldLines />
      <Drafts />
      <h2>{files.begin}</h2>
      <p>{files.begin_hint}</p>
      <div class="actions begin">
        <button type="button" class="main" onClick={() => void beginNew()}>{files.new_job}</button>
        <OpenButton />
        <button type="button" onClick={() => void beginDemo()}>{files.demo}</button>
      </div>
      <p class="soft">{files.open_hint}</p>
    </>
  );
}
