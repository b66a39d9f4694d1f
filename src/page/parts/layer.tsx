// One layer: what the files say of it, what was found, what is suspected.
import { insertAt, removeAt, renameLayer, setText, toggleWord, type LayerView, type Path } from "../job/document";
import { edit } from "../job/edit";
import { words } from "../words/words";
import { Choice, FaultsAt, Field } from "./fields";
import { NameChoice } from "./material_choice";

const flags = ["resinous", "waxy", "bituminous", "cross_linked", "water_sensitive"] as const;

export function Suspected({ path, suspected }: { path: Path; suspected: readonly string[] }) {
  const { painting } = words.value;
  return (
    <fieldset class="ticks">
      <legend>{painting.suspected}</legend>
      {flags.map((flag) => (
        <label key={flag} class="tick">
          <input type="checkbox" checked={suspected.includes(flag)} onChange={() => edit((text) => toggleWord(text, path, flag, suspected))} />
          {painting.flags[flag]}
        </label>
      ))}
      <p class="soft">{painting.suspected_hint}</p>
      <FaultsAt path={path} />
    </fieldset>
  );
}

function Possible({ path, layer }: { path: Path; layer: LayerView }) {
  const { painting } = words.value;
  const add = (material: string) => edit((text) => insertAt(text, path, layer.possible.length, { material, percent: 20 }));
  return (
    <fieldset>
      <legend>{painting.possible}</legend>
      <p class="soft">{painting.possible_hint}</p>
      {layer.possible.map((one, i) => (
        <div key={i} class="fields">
          <NameChoice label={painting.possible_material} of="material" value={one.material} path={[...path, i, "material"]}
            onChoose={(written) => edit((text) => setText(text, [...path, i, "material"], written))} />
          <Field label={painting.percent} path={[...path, i, "percent"]} value={one.percent} isNumber isShort />
          <button type="button" aria-label={painting.remove_named(one.material)} onClick={() => edit((text) => removeAt(text, layer.possible.length === 1 ? path : [...path, i]))}>{painting.remove}</button>
        </div>
      ))}
      <NameChoice label={painting.add_possible} of="material" value="" isAdding onChoose={add} />
      <FaultsAt path={path} />
    </fieldset>
  );
}

const sphere = ["dD", "dP", "dH", "R0", "sd_dD", "sd_dP", "sd_dH", "sd_R0"] as const;

function OwnSphere({ path, layer }: { path: Path; layer: LayerView }) {
  const { painting } = words.value;
  return (
    <details open={layer.ownSphere !== null}>
      <summary>{painting.own_sphere}</summary>
      <p class="soft">{painting.own_sphere_hint}</p>
      <div class="fields">
        {sphere.map((key) => <Field key={key} label={key.replace("_", " ")} path={[...path, key]} value={layer.ownSphere?.[key] ?? ""} isNumber isShort />)}
        <Field label={painting.own_source} path={[...path, "source"]} value={layer.ownSphere?.source ?? ""} />
      </div>
      <FaultsAt path={path} />
    </details>
  );
}

export function LayerFields({ index, layer, remove }: { index: number; layer: LayerView; remove: () => void }) {
  const { painting } = words.value;
  const path: Path = ["layers", index];
  const material = (key: "recorded" | "found") => (
    <NameChoice label={painting[key]} of="material" value={layer[key]} path={[...path, key]} mayBeUnknown
      onChoose={(written) => edit((text) => setText(text, [...path, key], written))} />
  );
  const name = layer.name || painting.unnamed;
  return (
    <fieldset class="panel layer">
      <legend>{painting.layer_of(name)}</legend>
      <FaultsAt path={path} />
      <div class="fields">
        <Field label={painting.name} path={[...path, "name"]} value={layer.name} onTyped={(typed) => edit((text) => renameLayer(text, index, typed))} />
        <Choice label={painting.role} path={[...path, "role"]} value={layer.role} choices={[["remove", painting.role_remove], ["keep", painting.role_keep]]} />
      </div>
      <div class="fields">{material("recorded")}{material("found")}</div>
      <p class="soft">{painting.found_hint}</p>
      <Suspected path={[...path, "suspected"]} suspected={layer.suspected} />
      <Field label={painting.note} path={[...path, "note"]} value={layer.note} isLong />
      <Possible path={[...path, "possible"]} layer={layer} />
      <OwnSphere path={[...path, "own_sphere"]} layer={layer} />
      <button type="button" onClick={remove}>{painting.remove_named(name)}</button>
    </fieldset>
  );
}
