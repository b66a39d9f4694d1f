// A test typed in short words: first shown as the program understands it, then written.
import { signal, useSignal } from "@preact/signals";
import { words } from "../../words/words";
import { Faults } from "../faults";
import type { Answer } from "../../engine/engine";
import { tellOf } from "./card";
import { isWriting, record, understood } from "./write";

const typed = signal("");

// Understood, but nobody could be asked: the program's answer to words that make sense.
const isUnderstood = (answer: Answer) => answer.exit === 0 || answer.notes.includes("nobody can be asked") || answer.faults.some((fault) => fault.message.includes("nobody can be asked"));

const readAs = (notes: string) => notes.split(/\n(?=error:)/)[0]?.trim() ?? "";

export function ShortWords() {
  const w = words.value.easel.words;
  const read = useSignal<Answer | null>(null);
  const told = useSignal("");
  const ask = async (event: Event) => {
    event.preventDefault();
    told.value = "";
    const of = typed.peek();
    const answer = await understood(of);
    // KEY=VALUE alone is plain, and is written at once: here into a copy that is let go.
    if (answer.exit !== 130 && of === typed.peek()) read.value = answer.exit === 0 ? { ...answer, notes: of } : answer;
  };
  const write = async () => {
    const written = await record([typed.peek()]);
    told.value = tellOf(written);
    read.value = written.outcome === "written" ? null : written.answer;
    if (written.outcome === "written") typed.value = "";
  };
  const change = (text: string) => {
    typed.value = text;
    read.value = null;
  };
  return (
    <details class="panel">
      <summary>{w.title}</summary>
      <form onSubmit={(event) => void ask(event)}>
        <div class="field">
          <label for="short-words">{w.label}</label>
          <input id="short-words" class="touch" autocomplete="off" aria-describedby="short-words-hint" value={typed.value} onInput={(event) => change(event.currentTarget.value)} />
          <span id="short-words-hint" class="soft">{w.hint}</span>
        </div>
        <button class="touch" disabled={typed.value.trim() === ""}>{w.read}</button>
      </form>
      <div aria-live="polite">
        {read.value && isUnderstood(read.value) && (
          <>
            <h3>{w.understood}</h3>
            <pre class="said">{readAs(read.value.notes)}</pre>
            <button type="button" class="touch main" disabled={isWriting.value} onClick={() => void write()}>{w.write}</button>
          </>
        )}
        {read.value && !isUnderstood(read.value) && <Faults faults={read.value.faults} notes={read.value.notes} />}
        <p>{told.value}</p>
      </div>
    </details>
  );
}
