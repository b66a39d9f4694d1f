// A text of the program as it says it, asked for when it is opened.
import { useSignal } from "@preact/signals";
import type { Question } from "../engine/engine";
import { words } from "../words/words";
import { asItStands, untold, useTold, type Told } from "./told_of";
import "./said.css";

interface Props {
  title: string;
  /** Where several have one title: tells them apart when they are read out. */
  name?: string;
  kind: string;
  /** Without files: those of the page are given. */
  question: Question;
}

export function Said({ title, name = title, kind, question }: Props) {
  const isOpen = useSignal(false);
  const told = useSignal<Told<string>>(untold);
  const { isCurrent, isGivenUp, again } = useTold(kind, told, () => (isOpen.value ? question : null), asItStands);
  const { value, notes, exit } = told.value;
  const text = (exit <= 1 && value) || notes;
  return (
    <details class="said-whole" onToggle={(event) => (isOpen.value = event.currentTarget.open)}>
      <summary>{title}</summary>
      {isOpen.value && <pre class={isCurrent ? "said" : "said stale"} tabIndex={0} role="group" aria-label={name} aria-busy={!isCurrent && !isGivenUp}>{text || "…"}</pre>}
      {isGivenUp && <button type="button" onClick={again}>{words.value.afterwards.askAgain}</button>}
    </details>
  );
}
