// A filled table taken into the log: whole or not at all, as the program does.
import { useSignal } from "@preact/signals";
import { words } from "../../words/words";
import { Faults } from "../faults";
import { tellOf } from "./card";
import { importTable, isWriting, type Written } from "./write";

export function TableImport() {
  const w = words.value.easel.table;
  const table = useSignal<Uint8Array | null>(null);
  const again = useSignal(false);
  const last = useSignal<Written | null>(null);
  const choose = async (file: File | undefined) => {
    last.value = null;
    table.value = file ? new Uint8Array(await file.arrayBuffer()) : null;
  };
  const take = async () => {
    const bytes = table.peek();
    if (bytes) last.value = await importTable(bytes, again.peek());
  };
  return (
    <details class="panel">
      <summary>{w.title}</summary>
      <label class="field">{w.file}<input class="touch" type="file" accept=".csv,.tsv,.txt,text/csv" onChange={(event) => void choose(event.currentTarget.files?.[0])} /></label>
      <label class="tick"><input type="checkbox" checked={again.value} onChange={(event) => (again.value = event.currentTarget.checked)} />{w.again}</label>
      <button type="button" class="touch" disabled={!table.value || isWriting.value} onClick={() => void take()}>{w.take}</button>
      <div aria-live="polite">
        {last.value?.outcome === "refused" && <Faults faults={last.value.answer.faults} notes={last.value.answer.notes} />}
        {last.value && <p>{last.value.outcome === "written" ? "" : tellOf(last.value)}</p>}
        {last.value?.outcome === "written" && <pre class="said">{last.value.answer.notes.trim() || last.value.answer.text.trim()}</pre>}
      </div>
    </details>
  );
}
