// What a part asks of the engine as long as it is shown; asked anew when a file changed.
import { useComputed, useSignal, useSignalEffect, type Signal } from "@preact/signals";
import { ask, type Fault, type Question } from "../engine/engine";
import { basis, files, jobText } from "../state";
import { words } from "../words/words";
import { Faults } from "./faults";

/** `of`: the question and the files that the value was told of; the value stays while a newer one is worked out. */
export interface Told<T> { value: T | null; of: string; faults: readonly Fault[]; notes: string; exit: number }
export const untold = { value: null, of: "", faults: [], notes: "", exit: 0 };

export interface Telling { isCurrent: boolean; isGivenUp: boolean; again: () => void }

const pauseAfterTyping_ms = 200;

const parsed = <T,>(text: string): T => JSON.parse(text) as T;
export const asItStands = (text: string): string => text;

/** `question` reads signals, and gives no files: those of the page go along. `read`: what the answer's text is kept as. */
export function useTold<T>(kind: string, place: Signal<Told<T>>, question: () => Question | null, read: (text: string) => T = parsed): Telling {
  const givenUp = useSignal("");
  const turn = useSignal(0);
  const subject = useComputed(() => {
    const asked = question();
    return asked === null || jobText.value === "" ? "" : `${JSON.stringify([asked.command, asked.words, asked.options])}\n${basis.value}`;
  });
  useSignalEffect(() => {
    void turn.value;
    const of = subject.value;
    const asked = question();
    if (of === "" || asked === null || place.peek().of === of) return;
    const timer = setTimeout(() => void ask(kind, { ...asked, files: files() }).then(({ exit, text, faults, notes }) => {
      if (of !== subject.peek()) return;
      if (exit === 130) givenUp.value = of;
      else place.value = { value: exit <= 1 ? read(text) : place.peek().value, of, faults, notes, exit };
    }), pauseAfterTyping_ms);
    return () => clearTimeout(timer);
  });
  const again = () => { givenUp.value = ""; ++turn.value; };
  return { isCurrent: place.value.of === subject.value, isGivenUp: givenUp.value !== "" && givenUp.value === subject.value, again };
}

/** Whether what is shown is of now, and if not why. */
export function ToldState({ told, telling }: { told: Told<unknown>; telling: Telling }) {
  const w = words.value.afterwards;
  const { isCurrent, isGivenUp, again } = telling;
  const isOld = told.value !== null && (!isCurrent || told.exit > 1);
  return (
    <>
      <p class={isCurrent && told.exit <= 1 ? "hidden-text" : "warn"} role="status">{isCurrent && told.exit <= 1 ? w.upToDate : `${isCurrent || isGivenUp ? "" : w.working} ${isOld ? w.stale : ""}`}</p>
      {isGivenUp && <button type="button" onClick={again}>{w.askAgain}</button>}
      {isCurrent && told.exit > 1 && <Faults faults={[...told.faults]} notes={told.notes} />}
    </>
  );
}
