// The limits, changed by hand: what is typed goes into the job's text, and the ladder follows.
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { ask } from "../../engine/engine";
import { ladder } from "../../state";
import { words } from "../../words/words";
import { figure, numberOf } from "../figures";
import { limitsOfJob, setLimit } from "./set_limit";

const numbers = ["risk_limit", "wanted_effect", "rungs", "bottles", "parts", "lines", "step_percent", "vial_mL", "measure_mL"] as const;
const moreNumbers = ["lowest_flash_point_C", "edge_tests", "room_C"] as const;
const lists = ["avoid_statements", "avoid_label", "avoid_solvents"] as const;
const switches = ["prefer_healthier", "allow_unknown_hazards", "allow_splitting", "allow_drift"] as const;

type NumberLimit = (typeof numbers)[number] | (typeof moreNumbers)[number];
type ListLimit = (typeof lists)[number];
type SwitchLimit = (typeof switches)[number];

/** What counts now: the job's own word, else what the last ladder was planned with. */
function current(name: NumberLimit | ListLimit | SwitchLimit | "avoid_families"): unknown {
  return limitsOfJob.value[name] ?? ladder.value.value?.limits[name];
}

function NumberField({ name }: { name: NumberLimit }) {
  const typed = useSignal<string | null>(null);
  const value = current(name);
  const shown = typed.value ?? (typeof value === "number" ? figure(value, 4) : "");
  const isWrong = typed.value !== null && typed.value.trim() !== "" && numberOf(typed.value) === null;
  const take = (text: string) => {
    typed.value = text;
    const number = numberOf(text);
    if (text.trim() === "" || number !== null) setLimit(name, number);
  };
  const w = words.value.ladder.limits;
  return (
    <div class="field">
      <label for={`limit-${name}`}>{w[name]}</label>
      <input id={`limit-${name}`} inputMode="decimal" autocomplete="off" value={shown} aria-invalid={isWrong} aria-describedby={isWrong ? `limit-${name}-wrong` : undefined}
        onInput={(event) => take(event.currentTarget.value)} onBlur={() => { if (!isWrong) typed.value = null; }} />
      {isWrong && <span id={`limit-${name}-wrong`} class="warn">{w.notANumber}</span>}
    </div>
  );
}

// A name may hold a comma ("2,2,4-trimethylpentane"), so only a comma with a space behind it parts names.
const listed = (text: string) => text.split(/;|,\s+|,$/).map((one) => one.trim()).filter(Boolean);

function ListField({ name }: { name: ListLimit }) {
  const typed = useSignal<string | null>(null);
  const value = current(name);
  const shown = typed.value ?? (Array.isArray(value) ? value.join(", ") : "");
  const take = (text: string) => {
    typed.value = text;
    setLimit(name, listed(text));
  };
  return (
    <div class="field">
      <label for={`limit-${name}`}>{words.value.ladder.limits[name]}</label>
      <input id={`limit-${name}`} autocomplete="off" value={shown} onInput={(event) => take(event.currentTarget.value)} onBlur={() => (typed.value = null)} />
    </div>
  );
}

function Switch({ name }: { name: SwitchLimit }) {
  return (
    <label class="tick">
      <input type="checkbox" checked={current(name) === true} onChange={(event) => setLimit(name, event.currentTarget.checked)} />
      {words.value.ladder.limits[name]}
    </label>
  );
}

interface Families {
  families: { family: string; of: string }[];
}

function FamiliesField() {
  const all = useSignal<string[]>([]);
  useEffect(() => {
    void ask("families", { command: "list", words: ["families"], options: { format: "json" } }).then((answer) => {
      if (answer.exit === 0) all.value = (JSON.parse(answer.text) as Families).families.filter((one) => one.of === "solvents").map((one) => one.family);
    });
  }, []);
  const value = current("avoid_families");
  const chosen = Array.isArray(value) ? value.map(String) : [];
  const toggle = (family: string) => setLimit("avoid_families", chosen.includes(family) ? chosen.filter((one) => one !== family) : [...chosen, family]);
  return (
    <fieldset class="families">
      <legend>{words.value.ladder.limits.avoid_families}</legend>
      {[...new Set([...all.value, ...chosen])].map((family) => (
        <label class="tick" key={family}><input type="checkbox" checked={chosen.includes(family)} onChange={() => toggle(family)} />{family}</label>
      ))}
    </fieldset>
  );
}

export function Limits() {
  const w = words.value.ladder.limits;
  return (
    <details class="panel">
      <summary>{w.title}</summary>
      <p class="soft">{w.why}</p>
      <div class="fields">{numbers.map((name) => <NumberField key={name} name={name} />)}</div>
      <Switch name="prefer_healthier" />
      <details>
        <summary>{w.more}</summary>
        <div class="fields">{moreNumbers.map((name) => <NumberField key={name} name={name} />)}</div>
        <div class="fields">{lists.map((name) => <ListField key={name} name={name} />)}</div>
        {switches.slice(1).map((name) => <Switch key={name} name={name} />)}
        <FamiliesField />
      </details>
    </details>
  );
}
