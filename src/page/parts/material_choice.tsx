// A material or a solvent, chosen by any of its names while one types (an ARIA combobox). What is typed and no name stays
// as it was typed: the engine says what is near.
import "./fields.css";
import { useId, useState } from "preact/hooks";
import type { Path } from "../job/document";
import { faultsAt } from "../job/faults";
import { exactName, names, recordOf, search, shownName, writtenName, type Found, type Name } from "../names";
import { words } from "../words/words";
import { FaultsAt } from "./fields";

export interface NameChoiceProps {
  label: string;
  of: Name["of"];
  /** As the file says it. */
  value: string;
  onChoose: (written: string) => void;
  /** Where its faults are shown; left out: nowhere. */
  path?: Path;
  /** Offers "not known". */
  mayBeUnknown?: boolean;
  /** Empty again once something was chosen. */
  isAdding?: boolean;
}

interface Option { key: string; shown: string; more: string; written: string }

const unknown = "unknown";

function optionOf(one: Found): Option {
  const { painting } = words.value;
  const more = one.isOwn ? one.group ?? "" : painting.is_record(one.record ?? "");
  return { key: `${one.id} ${one.name} ${one.language}`, shown: one.name, written: writtenName(one), more };
}

// A name that means several stands as what it may mean, each with the words that tell it from the others.
function optionsOf(one: Found, of: Name["of"]): Option[] {
  if (one.asks === null) return [optionOf(one)];
  const { painting } = words.value;
  const [records = "", ...rest] = one.asks.split("; ");
  const choices = [...records.matchAll(/([a-z0-9_]+)(?: \(([^)]*)\))?/g)].filter(([, id = ""]) => shownName(id, of) !== id || recordOf(id, of) === id);
  if (choices.length === 0) return [{ ...optionOf(one), more: one.asks }];
  const options = choices.map(([, id = "", word = ""]) => ({ key: `${one.name} ${id}`, shown: shownName(id, of), more: painting.may_mean(one.name, word), written: id }));
  // What the catalogue has no record of is a choice too: the name stays, and the engine asks back.
  return rest.length === 0 ? options : [...options, { key: `${one.name} else`, shown: one.name, more: rest.join("; "), written: one.name }];
}

function optionsFor(typed: string, { of, mayBeUnknown }: NameChoiceProps): Option[] {
  const { painting } = words.value;
  const told = new Set<string>();
  const found = search(typed, of).flatMap((one) => optionsOf(one, of).filter(({ written }) => one.asks === null || (!told.has(written) && Boolean(told.add(written)))));
  return mayBeUnknown ? [...found, { key: unknown, shown: painting.not_known, more: painting.not_known_hint, written: unknown }] : found;
}

const shownValue = ({ value, of, mayBeUnknown }: NameChoiceProps) =>
  mayBeUnknown && value === unknown ? words.value.painting.not_known : shownName(value, of);

export function NameChoice(props: NameChoiceProps) {
  const { label, of, onChoose, path, isAdding } = props;
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [isOpen, setOpen] = useState(false);
  const [at, setAt] = useState(-1);
  const options = isOpen ? optionsFor(typed ?? "", props) : [];
  const close = () => { setTyped(null); setOpen(false); setAt(-1); };
  const choose = (written: string) => { onChoose(written); close(); };
  // Left without a choice: a name in full is that record, anything else stays as typed. Nothing is added that way which is no
  // name: it stays in the field, until Enter says that it is meant.
  const left = (isMeant: boolean) => {
    const one = typed === null ? undefined : exactName(typed, of);
    if (typed !== null && isAdding && !one && !isMeant) return setOpen(false);
    if (typed !== null && typed.trim() !== (isAdding ? "" : shownValue(props))) onChoose(one ? writtenName(one) : typed.trim());
    close();
  };
  const keys: Record<string, () => void> = {
    ArrowDown: () => { setOpen(true); setAt(isOpen ? Math.min(at + 1, options.length - 1) : -1); },
    ArrowUp: () => setAt(Math.max(at - 1, 0)),
    Home: () => setAt(0),
    End: () => setAt(options.length - 1),
    Enter: () => { const one = options[at]; if (one) choose(one.written); else left(true); },
    Escape: close,
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const act = keys[event.key];
    if (!act || (!isOpen && event.key !== "ArrowDown") || ((event.key === "Home" || event.key === "End") && at < 0)) return;
    event.preventDefault();
    act();
  };
  return (
    <div class="field choice">
      <label for={id}>{label}</label>
      <input id={id} type="text" role="combobox" aria-autocomplete="list" aria-expanded={isOpen} aria-controls={`${id}-list`} autocomplete="off"
        aria-activedescendant={at >= 0 ? `${id}-${at}` : undefined} aria-describedby={`${id}-faults`} aria-invalid={path ? faultsAt(path).length > 0 : false}
        value={typed ?? (isAdding ? "" : shownValue(props))} onKeyDown={onKeyDown} onBlur={() => left(false)} onFocus={(event) => event.currentTarget.select()}
        onClick={() => setOpen(true)} onInput={(event) => { setTyped(event.currentTarget.value); setOpen(true); setAt(-1); }} />
      <div id={`${id}-list`} class="names" role="listbox" aria-label={label} hidden={!isOpen}>
        {options.map((one, i) => (
          <div key={one.key} id={`${id}-${i}`} role="option" aria-selected={i === at} onMouseDown={(event) => { event.preventDefault(); choose(one.written); }}
            ref={(item) => { if (i === at) item?.scrollIntoView({ block: "nearest" }); }}>
            {one.shown} {one.more && <span class="soft">{one.more}</span>}
          </div>
        ))}
        {isOpen && options.length === 0 && <div role="option" aria-selected={false} aria-disabled="true">{names.value.length > 0 ? words.value.painting.no_such_name : words.value.shelf.looking_up}</div>}
      </div>
      <span class="hidden-text" aria-live="polite">{isOpen ? words.value.painting.names_found(options.length) : ""}</span>
      {path && <FaultsAt path={path} id={`${id}-faults`} />}
    </div>
  );
}
