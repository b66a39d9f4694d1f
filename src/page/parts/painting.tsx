// The painting: what it is, its layers as a cross-section, the colours that must stay.
import "./painting.css";
import { addPassage, moveLayer, readJob, removeLayer, removePassage, renamePassage, addLayer, setText, type Path } from "../job/document";
import { edit, job, said, takeAway } from "../job/edit";
import { jobText } from "../state";
import { chosenLayer } from "../steps";
import { words } from "../words/words";
import { CrossSection } from "./cross_section";
import { Choice, Field } from "./fields";
import { ExaminationFields } from "./examination";
import { LayerFields, Suspected } from "./layer";
import { NameChoice } from "./material_choice";
import { StudioPart } from "./studio";

function ObjectFields() {
  const { painting } = words.value;
  const { object } = job.value;
  const field = (key: "title" | "owner_number" | "note" | "width_cm" | "height_cm" | "paint_age_years", more: object = {}) =>
    <Field label={painting[key]} path={["object", key]} value={object[key] ?? ""} {...more} />;
  return (
    <section aria-label={painting.object}>
      <div class="fields">{field("title")}{field("owner_number")}</div>
      <div class="fields">
        {field("width_cm", { isNumber: true, isShort: true, hint: painting.size_hint })}
        {field("height_cm", { isNumber: true, isShort: true })}
        {field("paint_age_years", { isNumber: true, isShort: true })}
      </div>
      {field("note", { isLong: true })}
    </section>
  );
}

function move(from: number, to: number): void {
  const { layers } = job.value;
  if (to < 0 || to >= layers.length || from === to) return;
  edit((text) => moveLayer(text, from, to));
  chosenLayer.value = to;
  said.value = words.value.painting.moved(layers[from]?.name ?? "", to + 1, layers.length);
}

function remove(index: number): void {
  const name = job.value.layers[index]?.name ?? "";
  takeAway(name, (text) => removeLayer(text, index));
  chosenLayer.value = Math.max(0, Math.min(index, job.value.layers.length - 1));
}

// A name that no other has, since the program tells layers and passages apart by it.
function freeName(name: string, taken: readonly string[]): string {
  for (let i = 1; ; ++i) {
    const one = i === 1 ? name : `${name} ${i}`;
    if (!taken.includes(one)) return one;
  }
}

function Layers() {
  const { painting } = words.value;
  const { layers } = job.value;
  const at = Math.min(chosenLayer.value, layers.length - 1);
  const layer = layers[at];
  const add = () => {
    edit((text) => addLayer(text, freeName(painting.new_layer, layers.map((one) => one.name)), "keep"));
    chosenLayer.value = readJob(jobText.value).layers.length - 1;
  };
  return (
    <section aria-labelledby="layers-heading">
      <h3 id="layers-heading">{painting.layers}</h3>
      <p class="soft">{painting.layers_hint}</p>
      <div class="layers">
        <div>
          <CrossSection move={move} />
          <button type="button" onClick={add}>{painting.add_layer}</button>
        </div>
        {layer && <LayerFields key={at} index={at} layer={layer} remove={() => remove(at)} />}
      </div>
    </section>
  );
}

function Passage({ index }: { index: number }) {
  const { painting } = words.value;
  const { passages, layers } = job.value;
  const passage = passages[index];
  if (!passage) return null;
  const path: Path = ["passages", index];
  return (
    <fieldset class="panel">
      <legend>{painting.passage_of(passage.name || painting.unnamed)}</legend>
      <div class="fields">
        <Field label={painting.name} path={[...path, "name"]} value={passage.name} onTyped={(typed) => edit((text) => renamePassage(text, index, typed))} />
        <Choice label={painting.of} path={[...path, "of"]} value={passage.of} choices={layers.map((one) => [one.name, one.name] as const)} />
        <NameChoice label={painting.material} of="material" value={passage.material} path={[...path, "material"]} mayBeUnknown
          onChoose={(written) => edit((text) => setText(text, [...path, "material"], written))} />
      </div>
      <Suspected path={[...path, "suspected"]} suspected={passage.suspected} />
      <Field label={painting.note} path={[...path, "note"]} value={passage.note} />
      <button type="button" onClick={() => takeAway(passage.name, (text) => removePassage(text, index))}>{painting.remove_named(passage.name || painting.unnamed)}</button>
    </fieldset>
  );
}

function Passages() {
  const { painting } = words.value;
  const { passages, layers } = job.value;
  const kept = layers.find((one) => one.role === "keep") ?? layers[0];
  const add = () => edit((text) => addPassage(text, freeName(painting.new_passage, passages.map((one) => one.name)), kept?.name ?? ""));
  return (
    <section aria-labelledby="passages-heading">
      <h3 id="passages-heading">{painting.passages}</h3>
      <p class="soft">{painting.passages_hint}</p>
      {passages.map((_, index) => <Passage key={index} index={index} />)}
      <button type="button" disabled={!kept} onClick={add}>{painting.add_passage}</button>
    </section>
  );
}

export function PaintingPart() {
  const { painting } = words.value;
  return (
    <>
      <h2>{painting.heading}</h2>
      <p>{painting.intro}</p>
      <ObjectFields />
      <Layers />
      <Passages />
      <ExaminationFields />
      <StudioPart />
    </>
  );
}
