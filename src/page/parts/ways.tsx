// Other ways: what people consider where a ladder ends or never begins. The program models none of them.
import "./afterwards.css";
import { signal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { WaysAnswer } from "../answers";
import { jobFile } from "../state";
import { step } from "../steps";
import { words } from "../words/words";
import { Fold } from "./fold";
import { ToldState, untold, useTold, type Told } from "./told_of";

type Way = WaysAnswer["ways"][number];

const told = signal<Told<WaysAnswer>>(untold);
/** Somebody asked to see them: opened and shown once. */
const isPointedAt = signal(false);

const rows = ["contact", "left_behind", "action", "clearing", "not_modelled", "doubt"] as const;

function WayLine({ way, answer }: { way: Way; answer: WaysAnswer }) {
  const w = words.value.ways;
  const occasions = (keys: readonly string[]) => answer.occasions.filter((one) => keys.includes(one.occasion)).map((one) => one.words).join("; ");
  const citations = way.sources.map((key) => answer.sources.find((one) => one.key === key)?.citation ?? key);
  return (
    <li class="panel">
      <h4>{way.name}</h4>
      {way.because.length > 0 && <p class="soft">{w.because}: {occasions(way.because)}</p>}
      {way.careful.length > 0 && <p class="warn">{w.careful}: {occasions(way.careful)}</p>}
      <p>{w.rows.when}: {way.when}</p>
      <p>{w.rows.watch}: {way.watch}</p>
      <Fold title={w.more}>{() => (
        <dl>
          {rows.map((row) => way[row] !== null && <div key={row}><dt>{w.rows[row]}</dt><dd>{way[row]}</dd></div>)}
          <div><dt>{w.sources}</dt><dd>{citations.join("; ")} ({words.value.afterwards.witness[way.standing]})</dd></div>
        </dl>
      )}</Fold>
    </li>
  );
}

function All() {
  const telling = useTold("ways", told, () => ({ command: "ways", words: [jobFile], options: { format: "json" } }));
  const answer = told.value.value;
  return (
    <>
      <ToldState told={told.value} telling={telling} />
      {answer && (
        <div class={telling.isCurrent && told.value.exit <= 1 ? "" : "stale"}>
          <p>{answer.promise}</p>
          <ul>{answer.occasions.map((one) => <li key={one.occasion}>{one.words}</li>)}</ul>
          <ul class="ways">{answer.ways.map((way) => <WayLine key={way.id} way={way} answer={answer} />)}</ul>
        </div>
      )}
    </>
  );
}

/** `isNeeded`: there is no window, so it stands open. */
export function Ways({ isNeeded }: { isNeeded: boolean }) {
  const place = useRef<HTMLDivElement>(null);
  const isWanted = isPointedAt.value;
  useEffect(() => {
    if (!isWanted) return;
    isPointedAt.value = false;
    const summary = place.current?.querySelector("summary");
    if (place.current?.querySelector("details")?.open === false) summary?.click();
    summary?.scrollIntoView();
    summary?.focus();
  }, [isWanted]);
  return <div ref={place}><Fold of="panel" title={words.value.ways.title} startsOpen={isNeeded}>{() => <All />}</Fold></div>;
}

/** The way there from where nothing is proposed. */
export function PointToWays({ told: text }: { told: string }) {
  const show = () => { step.value = "ladder"; isPointedAt.value = true; };
  return <p class="actions"><span>{text}</span> <button type="button" onClick={show}>{words.value.ways.show}</button></p>;
}
