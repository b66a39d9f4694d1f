// Large choices for a gloved finger: native radios and ticks under tiles of at least 12 mm.
import { words } from "../../words/words";
import { Faults } from "../faults";
import { faults, fill, keyOfFault, valueOf, type Key } from "./test_card";

/** The page's word for a word of the log. */
export const sayer = (value: string): string => (words.value.easel.says as Record<string, string>)[value] ?? value;

export function FieldFaults({ of }: { of: Key }) {
  return <Faults faults={faults.value.filter((fault) => keyOfFault(fault) === of)} id={`fault-${of}`} />;
}

export const hasFault = (key: Key) => faults.value.some((fault) => keyOfFault(fault) === key);

interface Props {
  of: Key;
  title: string;
  choices: readonly string[];
  /** Says a choice; default: the words of the log. */
  say?: (value: string) => string;
  canBeOpen?: boolean;
  onChoose?: (value: string) => void;
}

export function Tiles({ of, title, choices, say = sayer, canBeOpen = true, onChoose }: Props) {
  const all = canBeOpen ? ["", ...choices] : choices;
  const choose = (value: string) => {
    fill(of, value);
    onChoose?.(value);
  };
  return (
    <fieldset class="tiles" aria-describedby={hasFault(of) ? `fault-${of}` : undefined}>
      <legend>{title}</legend>
      <FieldFaults of={of} />
      {all.map((value) => (
        <label class="tile" key={value}>
          <input type="radio" name={`tile-${of}`} value={value} checked={valueOf(of) === value} onChange={() => choose(value)} />
          <span>{value === "" ? words.value.easel.leaveOpen : say(value)}</span>
        </label>
      ))}
    </fieldset>
  );
}

export const listed = (text: string) => text.split(/[,;]/).map((one) => one.trim()).filter(Boolean);

interface SignProps {
  title: string;
  choices: readonly string[];
  /** Where they are kept; default: the card. */
  value?: string;
  onChange?: (signs: string) => void;
}

/** Several of `choices`, kept together in one key of the log. */
export function SignTiles({ title, choices, value = valueOf("signs"), onChange = (signs) => fill("signs", signs) }: SignProps) {
  const chosen = listed(value);
  const toggle = (sign: string) => onChange((chosen.includes(sign) ? chosen.filter((one) => one !== sign) : [...chosen, sign]).join(", "));
  return (
    <fieldset class="tiles small">
      <legend>{title}</legend>
      {choices.map((sign) => (
        <label class="tile" key={sign}><input type="checkbox" checked={chosen.includes(sign)} onChange={() => toggle(sign)} /><span>{sayer(sign)}</span></label>
      ))}
    </fieldset>
  );
}

/** Signs of one side go when that side is said to have none. */
export function dropSigns(of: readonly string[]): void {
  const kept = listed(valueOf("signs")).filter((sign) => !of.includes(sign));
  if (kept.length !== listed(valueOf("signs")).length) fill("signs", kept.join(", "));
}

export function TextField({ of, label, inputMode }: { of: Key; label: string; inputMode?: "decimal" | "numeric" }) {
  const fault = hasFault(of);
  return (
    <div class="field short">
      <label for={`test-${of}`}>{label}</label>
      <input id={`test-${of}`} inputMode={inputMode} autocomplete="off" value={valueOf(of)} aria-invalid={fault} aria-describedby={fault ? `fault-${of}` : undefined}
        onInput={(event) => fill(of, event.currentTarget.value)} />
      <FieldFaults of={of} />
    </div>
  );
}
