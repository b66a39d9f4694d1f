// A text of the program as it says it, asked for when it is opened.
import { useSignal, useSignalEffect } from "@preact/signals";
import { ask, type Question } from "../engine/engine";
import { files, jobText, logText } from "../state";
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
  const text = useSignal("");
  useSignalEffect(() => {
    if (!isOpen.value || jobText.value === "" || logText.value === undefined) return;
    void ask(kind, { ...question, files: files() }).then((answer) => {
      if (answer.exit !== 130) text.value = answer.text || answer.notes;
    });
  });
  return (
    <details class="said-whole" onToggle={(event) => (isOpen.value = event.currentTarget.open)}>
      <summary>{title}</summary>
      {isOpen.value && <pre class="said" tabIndex={0} role="group" aria-label={name} aria-busy={text.value === ""}>{text.value || "…"}</pre>}
    </details>
  );
}
