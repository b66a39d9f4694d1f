// The tests so far, newest first; a harm is said in words.
import type { ReadingsRow } from "../../answers";
import { readings } from "../../state";
import { words } from "../../words/words";
import { Faults } from "../faults";
import { figure } from "../figures";
import { keptPhotographs } from "../photograph";
import { Later, TakeBack } from "./later";
import { sayer } from "./tiles";

type Reading = ReadingsRow;

const text = (row: Reading, key: keyof Reading): string => { const value = row[key]; return typeof value === "string" ? value : ""; };

function facts(row: Reading): string[] {
  const w = words.value.easel.tests;
  const [x, y, seconds, first, rolls] = [row.x_cm, row.y_cm, row.seconds, row.first_effect_s, row.rolls];
  return [
    row.at_edge ? w.edge : "",
    text(row, "passage"),
    x != null && y != null ? w.at(figure(x), figure(y)) : "",
    seconds != null ? w.seconds(figure(seconds)) : "",
    first != null ? w.firstEffect(figure(first)) : "",
    rolls != null ? w.rolls(figure(rolls)) : "",
  ].filter(Boolean);
}

const inWords = ["signs", "wetness", "swab", "light", "magnification", "window_mm", "uv_before", "uv_after", "clearing", "after_drying", "date", "who"] as const;

function More({ row }: { row: Reading }) {
  const w = words.value.easel;
  const title = (key: (typeof inWords)[number]) => (key === "signs" ? w.signs : key === "wetness" ? w.wetness : w.fields[key]);
  const lines = inWords.filter((key) => text(row, key));
  if (lines.length === 0) return null;
  return (
    <details>
      <summary>{w.tests.details}</summary>
      <dl class="believed">{lines.map((key) => <div key={key}><dt>{title(key)}</dt><dd>{text(row, key).split(/, |; /).map(sayer).join(", ")}</dd></div>)}</dl>
    </details>
  );
}

function Pictures({ row, field }: { row: Reading; field: "photo_before" | "photo" }) {
  const w = words.value.easel.photographs;
  const { addresses, names } = keptPhotographs(text(row, field));
  return (
    <>
      {addresses.length > 0 && <ul class="thumbs">{addresses.map((address, index) => <li key={index}><img src={address} alt={`${w[field]}, ${w.number(index + 1)}`} /></li>)}</ul>}
      {names.length > 0 && <p class="soft">{w.byName(names.join("; "))}</p>}
    </>
  );
}

/** What was read, in words; a harm first, by the rules of the program. */
export function ReadingWords({ row }: { row: Reading }) {
  const w = words.value.easel;
  const outcome = [text(row, "removal"), text(row, "original")].filter(Boolean).map(sayer).join("; ");
  const colour = text(row, "colour");
  return (
    <>
      <p>{row.harm && <strong class="danger">{w.tests.harm}: </strong>}{outcome}{colour && colour !== "none" && `; ${w.colour}: ${sayer(colour)}`}</p>
      <p>{text(row, "mixture")}</p>
      <p class="soft">{facts(row).join(" · ")}</p>
      {text(row, "remark") && <p>{text(row, "remark")}</p>}
    </>
  );
}

function Test({ row }: { row: Reading }) {
  const w = words.value.easel;
  const look = text(row, "looked_after");
  return (
    <li class={`panel test${row.harm ? " harmed" : ""}`}>
      <h3>{w.numbered(row.test)}{look && <span class="soft"> · {w.tests.look(sayer(look))}</span>}</h3>
      <ReadingWords row={row} />
      {text(row, "correction") && <p class="soft">{w.tests.corrected(text(row, "correction"))}</p>}
      <Pictures row={row} field="photo_before" />
      <Pictures row={row} field="photo" />
      <More row={row} />
      <Later row={row} />
    </li>
  );
}

export function TestsList() {
  const w = words.value.easel.tests;
  const rows = [...(readings.value.value?.readings ?? [])].reverse();
  const { faults, notes, exit } = readings.value;
  return (
    <section aria-labelledby="tests-title">
      <h2 id="tests-title">{w.title}</h2>
      {(exit > 1 || notes.trim() !== "" || faults.length > 0) && <><p class="warn">{w.faultyLines}</p><Faults faults={faults} notes={notes} /></>}
      {rows.length === 0 && <p>{w.none}</p>}
      <ol class="tests" reversed>{rows.map((row) => <Test key={String(row.test)} row={row} />)}</ol>
      <TakeBack />
    </section>
  );
}
