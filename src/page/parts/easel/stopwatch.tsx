// The stopwatch of a swab. Times are differences of stamps, so a tab that slept shows the true time when it wakes.
import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { words } from "../../words/words";
import { figure } from "../figures";
import { rungOf } from "../ladder/rung_of";
import { fill, mixtureOfCard } from "./test_card";
import { TextField } from "./tiles";

const startedAt = signal<number | null>(null);
const shown_s = signal(0);
const told = signal("");

const elapsed_s = () => (startedAt.peek() === null ? shown_s.peek() : (performance.now() - (startedAt.peek() ?? 0)) / 1000);
const whole = (seconds: number) => String(Math.max(1, Math.round(seconds)));

function start(): void {
  startedAt.value = performance.now();
  shown_s.value = 0;
  for (const key of ["seconds", "first_effect_s"] as const) fill(key, "");
  told.value = words.peek().easel.watch.running;
}

function stop(): void {
  shown_s.value = elapsed_s();
  startedAt.value = null;
  fill("seconds", whole(shown_s.peek()));
  told.value = words.peek().easel.watch.stopped(whole(shown_s.peek()));
}

function moved(): void {
  fill("first_effect_s", whole(elapsed_s()));
  told.value = words.peek().easel.watch.moved(whole(elapsed_s()));
}

export const isRunning = () => startedAt.peek() !== null;

export function reset(): void {
  startedAt.value = null;
  shown_s.value = 0;
  told.value = "";
}

function setToZero(): void {
  reset();
  for (const key of ["seconds", "first_effect_s"] as const) fill(key, "");
}

/** How long the program lets the mixture of the card stay, s; null where it says nothing. */
const most_s = (): number | null => rungOf(mixtureOfCard())?.person?.most_seconds || null;

export function Stopwatch() {
  const w = words.value.easel.watch;
  const runs = startedAt.value !== null;
  useEffect(() => {
    if (!runs) return;
    const timer = setInterval(() => (shown_s.value = elapsed_s()), 100);
    return () => clearInterval(timer);
  }, [runs]);
  const most = most_s();
  const isOver = runs && most !== null && shown_s.value > most;
  return (
    <fieldset class="stopwatch">
      <legend>{w.title}</legend>
      <p class={`time${isOver ? " danger" : ""}`} role="timer" aria-live="off">{figure(Math.floor(shown_s.value * 10) / 10, 1)} s <span class="soft">({most !== null ? w.most(figure(most)) : w.mostNotKnown})</span></p>
      <div class="actions">
        {!runs && <button type="button" class="touch main" onClick={start}>{w.start}</button>}
        {runs && <button type="button" class="touch main" onClick={stop}>{w.stop}</button>}
        <button type="button" class="touch" disabled={!runs} onClick={moved}>{w.firstEffect}</button>
        <button type="button" class="touch" disabled={runs || shown_s.value === 0} onClick={setToZero}>{w.again}</button>
      </div>
      <p role="status">{isOver && most !== null ? <strong class="danger">{w.over(figure(most))}</strong> : told.value}</p>
      <div class="fields">
        <TextField of="seconds" label={w.seconds} inputMode="decimal" />
        <TextField of="first_effect_s" label={w.first_effect_s} inputMode="decimal" />
      </div>
    </fieldset>
  );
}
