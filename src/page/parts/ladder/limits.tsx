// The limits, changed by hand: what is typed goes into the job's text, and the ladder follows.
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { ask } from "../../engine/engine";
import { setLimit } from "../../job/document";
import { edit, job } from "../../job/edit";
import { faultsAt } from "../../job/faults";
import { ladder } from "../../state";
import { words } from "../../words/words";
import { Field, FaultsAt } from "../fields";

const numbers = ["risk_limit", "wanted_effect", "rungs", "bottles", "parts", "lines", "step_percent", "vial_mL", "measure_mL"] as const;
const moreNumbers = ["lowest_flash_point_C", "edge_tests", "room_C"] as const;
const lists = ["avoid_statements", "avoid_label", "avoid_solvents"] as const;
const switches = ["prefer_healthier", "allow_unknown_hazards", "allow_splitting", "allow_drift"] as const;

type NumberLimit = (typeof numbers)[number] | (typeof moreNumbers)[number];
type ListLimit = (typeof lists)[number] | "avoid_families";
type SwitchLimit = (typeof switches)[number];

/** As the job says it, else what the ladder was planned with. */
function written(name: NumberLimit | SwitchLimit): string {
  const own = job.value.limits[name];
  const planned = ladder.value.value?.limits[name];
  return typeof own === "string" ? own : planned === null || planned === undefined ? "" : String(planned);
}

function listed(name: ListLimit): string[] {
  const own = job.value.limits[name] ?? ladder.value.value?.limits[name] ?? [];
  return Array.isArray(own) ? own : [own].filter(Boolean);
}

function NumberField({ name }: { name: NumberLimit }) {
  return <Field label={words.value.ladder.limits[name]} path={["limits", name]} value={written(name)} isNumber isShort />;
}

// A name may hold a comma ("2,2,4-trimethylpentane"), so only a comma with a space behind it parts names.
const parted = (text: string) => text.split(/;|,\s+|,$/).map((one) => one.trim()).filter(Boolean);

function ListField({ name }: { name: (typeof lists)[number] }) {
  return (
    <Field label={words.value.ladder.limits[name]} path={["limits", name]} value={listed(name).join(", ")}
      onTyped={(typed) => edit((text) => setLimit(text, name, parted(typed)))} />
  );
}

function Switch({ name }: { name: SwitchLimit }) {
  return (
    <>
      <label class="tick">
        <input type="checkbox" checked={written(name) === "true"} onChange={(event) => { const on = event.currentTarget.checked; edit((text) => setLimit(text, name, on)); }} />
        {words.value.ladder.limits[name]}
      </label>
      <FaultsAt path={["limits", name]} />
    </>
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
  const chosen = listed("avoid_families");
  const toggle = (family: string) =>
    edit((text) => setLimit(text, "avoid_families", chosen.includes(family) ? chosen.filter((one) => one !== family) : [...chosen, family]));
  return (
    <fieldset class="families">
      <legend>{words.value.ladder.limits.avoid_families}</legend>
      {[...new Set([...all.value, ...chosen])].map((family) => (
        <label class="tick" key={family}><input type="checkbox" checked={chosen.includes(family)} onChange={() => toggle(family)} />{family}</label>
      ))}
      <FaultsAt path={["limits", "avoid_families"]} />
    </fieldset>
  );
}

export function Limits() {
  const w = words.value.ladder.limits;
  const [all, more] = [useRef<HTMLDetailsElement>(null), useRef<HTMLDetailsElement>(null)];
  const isWrong = (names: readonly string[]) => names.some((name) => faultsAt(["limits", name]).length > 0);
  const isMoreWrong = isWrong([...moreNumbers, ...lists, ...switches.slice(1), "avoid_families"]);
  const isAnyWrong = isMoreWrong || isWrong([...numbers, "prefer_healthier"]);
  // A fault is shown at its field, so the field must be seen; nothing is folded up again under the hand.
  useEffect(() => {
    if (isAnyWrong && all.current) all.current.open = true;
    if (isMoreWrong && more.current) more.current.open = true;
  }, [isAnyWrong, isMoreWrong]);
  return (
    <details class="panel" ref={all}>
      <summary>{w.title}</summary>
      <p class="soft">{w.why}</p>
      <div class="fields">{numbers.map((name) => <NumberField key={name} name={name} />)}</div>
      <Switch name="prefer_healthier" />
      <details ref={more}>
        <summary>{w.more}</summary>
        <div class="fields">{moreNumbers.map((name) => <NumberField key={name} name={name} />)}</div>
        <div class="fields">{lists.map((name) => <ListField key={name} name={name} />)}</div>
        {switches.slice(1).map((name) => <Switch key={name} name={name} />)}
        <FamiliesField />
      </details>
    </details>
  );
}
