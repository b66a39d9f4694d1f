// A test looked at again, put right, or withdrawn: always a new line of the log.
import { useSignal, type Signal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import type { ReadingsRow } from "../../answers";
import { words } from "../../words/words";
import { Faults } from "../faults";
import { withPoint } from "../figures";
import { colours, confidences, isChanged, isMoved, originals, removals, signsOfOriginal, signsOfRemoval, tellOf, wetnesses } from "./card";
import { keys, type Key } from "./test_card";
import { listed, sayer, SignTiles } from "./tiles";
import { isWriting, record, today, type Written } from "./write";

const choices: Partial<Record<Key, readonly string[]>> = { removal: removals, original: originals, colour: colours, wetness: wetnesses, at_edge: ["yes", "no"], confidence: confidences };
const correctable = keys.filter((key) => key !== "photo" && key !== "photo_before" && key !== "layer" && key !== "date" && key !== "who");
const looks = ["20 min", "3 h", "1 day", "7 days"];

/** The page's name of a field. */
function fieldName(key: Key): string {
  const w = words.value.easel;
  const named: Partial<Record<Key, string>> = {
    mixture: w.mixture.title, passage: w.where.passage, x_cm: w.where.x_cm, y_cm: w.where.y_cm, at_edge: w.where.edge, removal: w.removal, original: w.original,
    colour: w.colour, signs: w.signs, rolls: w.rolls, wetness: w.wetness, seconds: w.watch.seconds, first_effect_s: w.watch.first_effect_s,
  };
  return named[key] ?? (w.fields as Record<string, string>)[key] ?? key;
}

function Select({ label, of, options }: { label: string; of: Signal<string>; options: readonly string[] }) {
  return (
    <label class="field short">
      {label}
      <select class="touch" value={of.value} onChange={(event) => (of.value = event.currentTarget.value)}>
        {options.map((one) => <option key={one} value={one}>{one === "" ? words.value.easel.leaveOpen : sayer(one)}</option>)}
      </select>
    </label>
  );
}

function Text({ label, of }: { label: string; of: Signal<string> }) {
  return <label class="field short">{label}<input class="touch" autocomplete="off" value={of.value} onInput={(event) => (of.value = event.currentTarget.value)} /></label>;
}

/** A small form whose words are asked of `record`; what it says stays in it where nothing was written. */
function Form({ title, button, wordsOf, onWritten, children }: { title: string; button: string; wordsOf: () => string[]; onWritten: () => void; children: ComponentChildren }) {
  const last = useSignal<Written | null>(null);
  const write = async (event: Event) => {
    event.preventDefault();
    last.value = await record(wordsOf());
    if (last.value.outcome === "written") onWritten();
  };
  return (
    <form class="later-form" onSubmit={(event) => void write(event)}>
      <h4>{title}</h4>
      <div class="fields">{children}</div>
      {last.value?.outcome === "refused" && <Faults faults={last.value.answer.faults} notes={last.value.answer.notes} />}
      <button class="touch" disabled={isWriting.value}>{button}</button>
      <p role="status">{last.value && tellOf(last.value)}</p>
    </form>
  );
}

const given = (pairs: [string, string][]) => pairs.filter(([, value]) => value !== "").map(([key, value]) => `${key}=${value}`);

function Look({ test }: { test: string }) {
  const w = words.value.easel;
  const [when, removal, original, remark] = [useSignal("1 day"), useSignal(""), useSignal(""), useSignal("")];
  const empty = () => (removal.value = original.value = remark.value = "");
  return (
    <Form title={w.later.look} button={w.later.write} onWritten={empty}
      wordsOf={() => given([["test", test], ["looked_after", when.value], ["removal", removal.value], ["original", original.value], ["remark", remark.value], ["date", today()]])}>
      <Select label={w.later.when} of={when} options={looks} />
      <Select label={w.removal} of={removal} options={["", ...removals]} />
      <Select label={w.original} of={original} options={["", ...originals]} />
      <Text label={w.fields.remark} of={remark} />
    </Form>
  );
}

// Signs go with what was seen of that side, as on the card; without any there is nothing to put right here.
const signsFor = (row: ReadingsRow): readonly string[] =>
  [...(isMoved(row.removal ?? "") ? signsOfRemoval : []), ...(isChanged(row.original ?? "") ? signsOfOriginal : []), ...listed(row.signs ?? "")]
    .filter((one, place, all) => all.indexOf(one) === place);

function Correct({ row }: { row: ReadingsRow }) {
  const w = words.value.easel.later;
  const test = String(row.test);
  const [field, value, why] = [useSignal<string>("removal"), useSignal(""), useSignal("")];
  const signs = signsFor(row);
  const options = choices[field.value as Key];
  const choose = (key: string) => {
    field.value = key;
    value.value = key === "signs" ? row.signs ?? "" : "";
  };
  return (
    <Form title={w.correct} button={w.writeCorrection} onWritten={() => { choose("removal"); why.value = ""; }}
      wordsOf={() => [`test=${test}`, `${field.value}=${["remark", "passage", "signs"].includes(field.value) ? value.value.trim() : withPoint(value.value)}`, `correction=${why.value.trim()}`]}>
      <label class="field short">
        {w.field}
        <select class="touch" value={field.value} onChange={(event) => choose(event.currentTarget.value)}>
          {correctable.filter((key) => key !== "signs" || signs.length > 0).map((key) => <option key={key} value={key}>{fieldName(key)}</option>)}
        </select>
      </label>
      {field.value === "signs" ? <SignTiles title={w.value} choices={signs} value={value.value} onChange={(now) => (value.value = now)} />
        : options ? <Select label={w.value} of={value} options={["", ...options]} /> : <Text label={w.value} of={value} />}
      <Text label={w.why} of={why} />
    </Form>
  );
}

function Withdraw({ test }: { test: string }) {
  const w = words.value.easel.later;
  const why = useSignal("");
  return (
    <Form title={w.withdraw} button={w.writeWithdrawal} onWritten={() => (why.value = "")} wordsOf={() => [`test=${test}`, `correction=${why.value.trim()}`, "withdrawn=yes"]}>
      <p class="soft">{w.withdrawHint}</p>
      <Text label={w.why} of={why} />
    </Form>
  );
}

export function Later({ row }: { row: ReadingsRow }) {
  const test = String(row.test);
  const isOpen = useSignal(false);
  return (
    <details onToggle={(event) => (isOpen.value = event.currentTarget.open)}>
      <summary>{words.value.easel.later.open(test)}</summary>
      {isOpen.value && <><Look test={test} /><Correct row={row} /><Withdraw test={test} /></>}
    </details>
  );
}

/** A withdrawn test stands in no list; by its number it can be made to count again. */
export function TakeBack() {
  const w = words.value.easel.later;
  const [test, why] = [useSignal(""), useSignal("")];
  return (
    <details>
      <summary>{w.restore}</summary>
      <Form title={w.restore} button={w.writeRestore} onWritten={() => (test.value = why.value = "")} wordsOf={() => [`test=${test.value.trim()}`, `correction=${why.value.trim()}`, "withdrawn=no"]}>
        <Text label={w.number} of={test} />
        <Text label={w.why} of={why} />
      </Form>
    </details>
  );
}
