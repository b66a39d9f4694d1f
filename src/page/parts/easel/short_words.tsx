// A test typed in short words: first shown as the program understands it, then written.
import { signal, useSignal } from "@preact/signals";
import { words } from "../../words/words";
import { Faults } from "../faults";
import { tellOf } from "./card";
import { ReadingWords } from "./tests_list";
import { isWriting, record, understood, type Understood } from "./write";

const typed = signal("");

export function ShortWords() {
  const w = words.value.easel.words;
  const read = useSignal<Understood | null>(null);
  const told = useSignal("");
  const ask = async (event: Event) => {
    event.preventDefault();
    told.value = "";
    const of = typed.peek();
    const answer = await understood(of);
    if (answer.answer.exit !== 130 && of === typed.peek()) read.value = answer;
  };
  const write = async () => {
    const written = await record([typed.peek()]);
    told.value = tellOf(written);
    read.value = written.outcome === "written" ? null : { answer: written.answer };
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
        {read.value?.row && (
          <>
            <h3>{w.understood}</h3>
            <ReadingWords row={read.value.row} />
            <button type="button" class="touch main" disabled={isWriting.value} onClick={() => void write()}>{w.write}</button>
          </>
        )}
        {read.value && !read.value.row && <Faults faults={read.value.answer.faults} notes={read.value.answer.notes} />}
        <p>{told.value}</p>
      </div>
    </details>
  );
}
