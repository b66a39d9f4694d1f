// What next, with its reason. Harm stands in the first line, before any word of ours.
import "./next.css";
import type { NextRow } from "../answers";
import { isStopped, jobFile, jobText, ladder, logFile, next, readings } from "../state";
import { words } from "../words/words";
import { Faults } from "./faults";
import { figure } from "./figures";
import { Examined, LadderState } from "./ladder";
import { Hazards, chanceText } from "./ladder/rung";
import { rungOf } from "./ladder/rung_of";
import { Said } from "./said";
import { PointToWays } from "./ways";
import { Worked } from "./worked";

/** The one row of the answer, as far as it came. */
export const nextRow = (): NextRow | undefined => next.value.value?.next[0];

export function said(row: NextRow | undefined, key: keyof NextRow): string {
  const value = row?.[key];
  return typeof value === "string" ? value : "";
}

function Lines({ title, text }: { title: string; text: string }) {
  if (!text) return null;
  return <><h4>{title}</h4><p>{text}</p></>;
}

/** A line a bottle, as the program tells them. */
function Dangers({ row }: { row: NextRow }) {
  const lines = said(row, "dangers").split(" | ").filter(Boolean);
  if (lines.length === 0) return null;
  return <><h4>{words.value.next.hazards}</h4><ul>{lines.map((line) => <li key={line}>{line}</li>)}</ul></>;
}

function Heading({ row }: { row: NextRow }) {
  const w = words.value.next;
  const step = said(row, "step");
  if (step === "test") {
    return (
      <>
        <h3>{w.test(said(row, "place") === "edge" ? w.edge : w.picture)}</h3>
        <p class="next-mixture">{said(row, "rung") && <span>{said(row, "rung")}: </span>}<strong>{said(row, "mixture")}</strong></p>
        {said(row, "passage") && <p>{w.on(said(row, "passage"))}</p>}
      </>
    );
  }
  if (step === "found") return <><h3>{w.found}</h3><p class="next-mixture"><strong>{said(row, "works") || said(row, "mixture")}</strong></p></>;
  return <h3>{(w.steps as Record<string, string>)[step] ?? step}</h3>;
}

function Believed({ row }: { row: NextRow }) {
  const w = words.value;
  const { effect, risk } = row;
  if (typeof effect !== "number" && typeof risk !== "number") return null;
  return (
    <p>
      {typeof effect === "number" && `${w.ladder.effectOn(ladder.value.value?.target ?? "")}: ${chanceText(effect, said(row, "effect_words"))}. `}
      {w.ladder.riskTo(said(row, "riskiest") || w.ladder.whatStays)}: {typeof risk === "number" ? `${chanceText(risk, said(row, "risk_words"))}.` : <strong class="warn">{w.ladder.notKnown}.</strong>}
    </p>
  );
}

/** What the mixture does to the person: from the ladder where it is a rung, and from its vial in any case. */
function OfVial({ mixture }: { mixture: string }) {
  if (!mixture) return null;
  const rung = rungOf(mixture);
  return (
    <>
      {rung && <Hazards mixture={rung.mixture} person={rung.person} />}
      <Said title={words.value.ladder.wholeVial} kind="vial:next" question={{ command: "vial", words: [jobFile, mixture] }} />
    </>
  );
}

function Rest({ row }: { row: NextRow }) {
  const w = words.value.next;
  const { rungs_of_room: room, stronger_rungs: stronger } = row;
  return (
    <>
      {typeof room === "number" && typeof stronger === "number" && <p>{w.room(figure(room), figure(stronger))}</p>}
      {row.fits_badly && <p class="warn">{w.fitsBadly}</p>}
      <Lines title={w.firstTests} text={said(row, "first_tests")} />
      {said(row, "step") !== "found" && <Lines title={w.works} text={said(row, "works")} />}
      <Lines title={w.closed} text={said(row, "closed")} />
      <Lines title={w.untested} text={said(row, "untested")} />
      <Lines title={w.tooRisky} text={said(row, "too_risky")} />
      <Lines title={w.leftOut} text={said(row, "readings_left_out")} />
      <Lines title={w.notJudged} text={said(row, "not_judged")} />
      <Lines title={w.leftOff} text={said(row, "bottles_left_off")} />
    </>
  );
}

/** By the next test; where a faulty job lets nothing be worked out, by the readings alone. */
function Harms({ row }: { row: NextRow | undefined }) {
  const harmed = (readings.value.value?.readings ?? []).filter((one) => one.harm).map((one) => String(one.test));
  const text = said(row, "harms") || (!row && harmed.length > 0 ? words.value.next.harmOf(harmed.join(", ")) : "");
  if (!text) return null;
  return <p class="harms" role="alert">{text}</p>;
}

export function NextPart() {
  const w = words.value.next;
  const row = nextRow();
  const { isCurrent, exit, faults, notes } = next.value;
  const isFirst = said(row, "step") === "test" && (readings.value.value?.readings.length ?? 0) === 0;
  return (
    <section class="panel next" aria-labelledby="next-title" tabIndex={-1} id="next">
      <Harms row={row} />
      {ladder.value.value && ladder.value.value.examination.verdict !== "go" && <Examined answer={ladder.value.value} />}
      <h2 id="next-title">{w.title}</h2>
      {(ladder.value.exit > 1 || isStopped.value) && <LadderState />}
      {exit > 1 && <Faults faults={faults} notes={notes} />}
      <p class={isCurrent ? "hidden-text" : "warn"} role="status">{!isCurrent && exit <= 1 && ladder.value.exit <= 1 && !isStopped.value && w.working}</p>
      {row && (
        <div aria-live="polite" class={isCurrent ? "" : "stale"}>
          {isFirst && <p class="warn">{w.before}</p>}
          <Heading row={row} />
          <p>{w.why(said(row, "reason"))}</p>
          <Believed row={row} />
          <Dangers row={row} />
          <OfVial mixture={said(row, "mixture")} />
          <Rest row={row} />
          {!["test", "found"].includes(said(row, "step")) && <PointToWays told={words.value.ways.pointedFromEasel} />}
          <Worked what="next" title={words.value.worked.next} />
          <p class="warn">{w.stopAt}</p>
          <p class="soft">{w.permission}</p>
        </div>
      )}
      {jobText.value !== "" && <Said title={w.full} kind="next-full" question={{ command: "next", words: [jobFile, logFile], options: { full: true } }} />}
    </section>
  );
}
