// The fields of the page: what is typed goes into the file's text at once; what is wrong stands beneath.
import "./fields.css";
import { computed } from "@preact/signals";
import { useEffect, useId, useMemo, useState } from "preact/hooks";
import { setNumber, setText, type Path } from "../job/document";
import { edit } from "../job/edit";
import { addField, faultsAt, keyOfPath } from "../job/faults";
import { language, words } from "../words/words";

export function FaultsAt({ path, id }: { path: Path; id?: string }) {
  const key = keyOfPath(path);
  useEffect(() => {
    addField(path, 1);
    return () => addField(path, -1);
  }, [key]);
  const faults = useMemo(() => computed(() => faultsAt(path)), [key]).value;
  return (
    <div id={id} aria-live="polite">
      {faults.length > 0 && (
        <div class="faults">
          {faults.map((fault) => <p key={fault.message}><strong>{words.value.files.fault}</strong> {fault.message}{fault.remedy && `; ${fault.remedy}`}</p>)}
        </div>
      )}
    </div>
  );
}

/** A number of the file as the page's language writes it. */
export const shownNumber = (written: string): string =>
  language.value === "en" || !/^[-+]?\d*\.\d+$/.test(written) ? written : written.replace(".", ",");

interface FieldProps {
  label: string;
  path: Path;
  value: string;
  hint?: string;
  isShort?: boolean;
  isLong?: boolean;
  isNumber?: boolean;
  /** What to do with what was typed, where it is more than to write it. */
  onTyped?: (typed: string) => void;
}

/** While somebody types the field shows what was typed; an emptied field is taken out of the file once it is left. */
export function Field({ label, path, value, hint, isShort, isLong, isNumber, onTyped }: FieldProps) {
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const write = onTyped ?? ((typed: string) => edit((text) => (isNumber ? setNumber : setText)(text, path, typed)));
  const typed = (now: string) => {
    setDraft(now);
    if (now.trim() !== "") write(now);
  };
  const left = () => {
    if (draft !== null && draft.trim() === "" && value !== "") write("");
    setDraft(null);
  };
  const shared = {
    id, value: draft ?? (isNumber ? shownNumber(value) : value), "aria-describedby": `${id}-faults ${id}-hint`,
    "aria-invalid": faultsAt(path).length > 0, onBlur: left,
    onInput: (event: { currentTarget: { value: string } }) => typed(event.currentTarget.value),
  };
  return (
    <div class={isShort ? "field short" : "field"}>
      <label for={id}>{label}</label>
      {isLong ? <textarea {...shared} rows={2} /> : <input {...shared} type="text" inputMode={isNumber ? "decimal" : "text"} autocomplete="off" />}
      {hint && <span id={`${id}-hint`} class="soft">{hint}</span>}
      <FaultsAt path={path} id={`${id}-faults`} />
    </div>
  );
}

interface ChoiceProps { label: string; path: Path; value: string; choices: readonly (readonly [string, string])[]; isShort?: boolean }

/** One of a few words; a word of the file that is none of them is shown as it stands. */
export function Choice({ label, path, value, choices, isShort }: ChoiceProps) {
  const id = useId();
  const all = choices.some(([word]) => word === value) ? choices : [[value, value] as const, ...choices];
  return (
    <div class={isShort ? "field short" : "field"}>
      <label for={id}>{label}</label>
      <select id={id} value={value} aria-describedby={`${id}-faults`} onChange={(event) => { const word = event.currentTarget.value; edit((text) => setText(text, path, word)); }}>
        {all.map(([word, shown]) => <option key={word} value={word}>{shown}</option>)}
      </select>
      <FaultsAt path={path} id={`${id}-faults`} />
    </div>
  );
}
