// A text of the program as it says it, asked for when it is opened.
import { useSignal, useSignalEffect } from "@preact/signals";
import { ask, type Question } from "../engine/engine";
import { basis, files, jobText } from "../state";
import "./said.css";

const pauseAfterTyping_ms = 200;

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
  /** The text, and the files that it was said of. */
  const said = useSignal({ text: "", of: "" });
  const isCurrent = said.value.of === basis.value;
  useSignalEffect(() => {
    const of = basis.value;
    if (!isOpen.value || jobText.value === "") return;
    const timer = setTimeout(() => void ask(kind, { ...question, files: files() }).then((answer) => {
      if (answer.exit !== 130) said.value = { text: answer.text || answer.notes, of };
    }), pauseAfterTyping_ms);
    return () => clearTimeout(timer);
  });
  return (
    <details class="said-whole" onToggle={(event) => (isOpen.value = event.currentTarget.open)}>
      <summary>{title}</summary>
      {isOpen.value && <pre class={isCurrent ? "said" : "said stale"} tabIndex={0} role="group" aria-label={name} aria-busy={!isCurrent}>{said.value.text || "…"}</pre>}
    </details>
  );
}
