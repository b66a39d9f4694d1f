// Finished paintings, chosen as files; a plan begins where they leave off.
import { useSignal } from "@preact/signals";
import { studioFiles } from "../state";
import { leaveStudioOut, leftOutAsOpen, studioNotes, studioQuestion, takeStudioFiles } from "../studio";
import { words } from "../words/words";
import { Faults } from "./faults";
import { Said } from "./said";

function NotUsed() {
  const w = words.value.studio;
  const { unread, faults, notes } = studioNotes.value;
  return (
    <>
      {unread.map((name) => <p key={name} class="warn">{w.unread(name)}</p>)}
      {leftOutAsOpen.value.map(({ pick, name }) => <p key={`${pick} ${name}`}>{w.same(name)}</p>)}
      {(faults.length > 0 || notes.trim() !== "") && <><p>{w.notUsed}:</p><Faults faults={[...faults]} notes={notes} /></>}
    </>
  );
}

export function StudioPart() {
  const w = words.value.studio;
  const isRefused = useSignal(false);
  const take = async (input: HTMLInputElement) => {
    const list = Array.from(input.files ?? []);
    input.value = "";
    if (list.length > 0) isRefused.value = !(await takeStudioFiles(list));
  };
  const names = studioFiles.value.map((one) => one.name);
  return (
    <section aria-labelledby="studio-heading">
      <h3 id="studio-heading">{w.title}</h3>
      <p class="soft" id="studio-hint">{w.hint}</p>
      <div class="field">
        <label for="studio-files">{w.choose}</label>
        <input id="studio-files" type="file" multiple aria-describedby="studio-hint" onChange={(event) => void take(event.currentTarget)} />
      </div>
      <div role="status">
        {isRefused.value && <p class="danger">{w.refused}</p>}
        <p>{names.length > 0 ? w.inUse(names.join(", ")) : w.none}</p>
        <NotUsed />
      </div>
      {names.length > 0 && <button type="button" onClick={leaveStudioOut}>{w.leaveOut}</button>}
      {names.length > 0 && <Said title={w.taught} kind="studio" question={studioQuestion} />}
    </section>
  );
}
