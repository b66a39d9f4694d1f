// The pictures of the plan, drawn by the engine; a rung that is pointed at lights up in all of them.
import "./charts.css";
import { signal, useSignalEffect } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { download } from "../download";
import { ask, type Fault, type Question } from "../engine/engine";
import { basis, files, jobFile, jobName, ladder, logFile, planBasis, readings } from "../state";
import { words } from "../words/words";
import { drawing, lightUp, rungNear } from "./charts/drawing";
import { Faults } from "./faults";
import { pointedRung } from "./pointed";

const kinds = ["risk", "chances", "planes", "triangle", "drift", "mixing"] as const;
const kindsOfTests = ["timeline", "swabs"] as const;
type Kind = (typeof kinds)[number] | (typeof kindsOfTests)[number];

const shown = signal<Kind[]>(["risk", "chances"]);
/** The three bottles of the mixing picture; [] leaves them to the program. */
const mixed = signal<string[]>([]);
const drawn = signal<Partial<Record<Kind, { text: string; of: string; faults: Fault[]; notes: string }>>>({});

// What a picture was drawn of: when it changes the picture is drawn anew.
const isOfTests = (kind: Kind) => kind === "timeline" || kind === "swabs";
const subjectOf = (kind: Kind) => (kind === "mixing" ? `${mixed.value.join(";")}\n${planBasis.value}` : isOfTests(kind) ? basis.value : planBasis.value);

function questionOf(kind: Kind): Question {
  const options: Record<string, string> = { kind };
  if (isOfTests(kind)) options["log"] = logFile;
  if (kind === "mixing" && mixed.peek().length === 3) options["of"] = mixed.peek().join(", ");
  return { command: "chart", words: [jobFile], options, files: files() };
}

let isDrawing = false;

// One picture after the other, so that a changed limit never waits behind more than one of them.
async function drawAll(): Promise<void> {
  if (isDrawing) return;
  isDrawing = true;
  const wanted = () => ladder.peek().isCurrent && shown.peek().find((kind) => drawn.peek()[kind]?.of !== subjectOf(kind));
  for (let kind = wanted(); kind; kind = wanted()) {
    const of = subjectOf(kind);
    const answer = await ask(`chart:${kind}`, questionOf(kind));
    if (answer.exit === 130 || answer.exit === 4) break;
    drawn.value = { ...drawn.value, [kind]: { text: answer.exit <= 1 ? answer.text : "", of, faults: answer.faults, notes: answer.exit > 1 ? answer.notes : "" } };
  }
  isDrawing = false;
}

function Picture({ kind }: { kind: Kind }) {
  const place = useRef<HTMLDivElement>(null);
  const text = drawn.value[kind]?.text ?? "";
  useEffect(() => {
    const svg = text ? drawing(text) : null;
    place.current?.replaceChildren(...(svg ? [svg] : []));
    if (svg) lightUp(svg, pointedRung.peek());
  }, [text]);
  useSignalEffect(() => {
    const rung = pointedRung.value;
    const svg = place.current?.querySelector("svg");
    if (svg) lightUp(svg, rung);
  });
  const point = (event: PointerEvent) => {
    const svg = place.current?.querySelector("svg");
    const rung = svg ? rungNear(svg, event.clientX, event.clientY) : null;
    if (rung) pointedRung.value = rung;
  };
  const w = words.value.ladder.charts;
  const save = () => download(`${jobName.peek().replace(/\.[^.]*$/, "")}-${kind}.svg`, text, "image/svg+xml");
  const isStale = drawn.value[kind]?.of !== subjectOf(kind);
  return (
    <figure class="chart">
      <figcaption>{w.kinds[kind]}{isStale && <span class="warn"> {w.working}</span>}</figcaption>
      <div class="chart-place" ref={place} tabIndex={0} role="region" aria-label={w.scrolls(w.kinds[kind])} onPointerMove={point} onPointerDown={point} />
      <Faults faults={drawn.value[kind]?.faults ?? []} notes={drawn.value[kind]?.notes ?? ""} />
      <button type="button" disabled={!text} aria-label={`${w.save}: ${w.kinds[kind]}`} onClick={save}>{w.save}</button>
    </figure>
  );
}

function Choice({ kind }: { kind: Kind }) {
  const toggle = () => (shown.value = shown.value.includes(kind) ? shown.value.filter((one) => one !== kind) : [...shown.value, kind]);
  return <label class="tick"><input type="checkbox" checked={shown.value.includes(kind)} onChange={toggle} />{words.value.ladder.charts.kinds[kind]}</label>;
}

function PointedRung() {
  const w = words.value.ladder.charts;
  const count = ladder.value.value?.rungs.length ?? 0;
  const choices = [null, ...Array.from({ length: count }, (_, index) => String(index + 1))];
  return (
    <fieldset class="pointed-choice">
      <legend>{w.pointed}</legend>
      {choices.map((rung) => (
        <label class="tick" key={rung ?? "none"}>
          <input type="radio" name="pointed-rung" checked={pointedRung.value === rung} onChange={() => (pointedRung.value = rung)} />{rung ?? w.none}
        </label>
      ))}
    </fieldset>
  );
}

function MixedBottles() {
  const w = words.value.ladder.charts;
  const liquids = ladder.value.value?.liquids.map((one) => one.liquid) ?? [];
  const first = mixed.value.length === 3 ? mixed.value : ["", "", ""];
  const choose = (place: number, liquid: string) => {
    const rest = liquids.filter((one) => one !== liquid && !first.includes(one));
    mixed.value = liquid === "" ? [] : first.map((one, index) => (index === place ? liquid : one === liquid || one === "" ? (rest.shift() ?? "") : one));
    if (mixed.value.includes("")) mixed.value = [];
  };
  if (liquids.length < 3) return null;
  return (
    <fieldset class="fields">
      <legend>{w.bottles}</legend>
      {first.map((liquid, place) => (
        <label class="field short" key={place}>
          {w.bottle(place + 1)}
          <select value={liquid} onChange={(event) => choose(place, event.currentTarget.value)}>
            <option value="">{w.ofLadder}</option>
            {liquids.map((one) => <option key={one} value={one}>{one}</option>)}
          </select>
        </label>
      ))}
    </fieldset>
  );
}

export function Charts() {
  const w = words.value.ladder.charts;
  const hasTests = (readings.value.value?.readings.length ?? 0) > 0;
  useSignalEffect(() => {
    if (ladder.value.isCurrent && shown.value && mixed.value && basis.value) void drawAll();
  });
  return (
    <section aria-labelledby="charts-title" class="charts">
      <h3 id="charts-title">{w.title}</h3>
      <fieldset class="chart-choice">
        <legend>{w.choose}</legend>
        {kinds.map((kind) => <Choice key={kind} kind={kind} />)}
        {hasTests && kindsOfTests.map((kind) => <Choice key={kind} kind={kind} />)}
      </fieldset>
      {shown.value.includes("mixing") && <MixedBottles />}
      <PointedRung />
      <div class="chart-grid">{shown.value.map((kind) => <Picture key={kind} kind={kind} />)}</div>
    </section>
  );
}
