// The photograph of the whole painting, as background of the map at the easel and on the papers.
import { useId } from "preact/hooks";
import { useSignal } from "@preact/signals";
import { words } from "../words/words";
import { paintingPhotograph, removePaintingPhotograph, takePaintingPhotograph } from "./photograph";

export function Background({ label }: { label: string }) {
  const id = useId();
  const { photographs, where } = words.value.easel;
  const fault = useSignal("");
  const take = async (input: HTMLInputElement) => {
    const file = input.files?.[0];
    if (file) fault.value = (await takePaintingPhotograph(file)) ? "" : photographs.unreadable(file.name);
    input.value = "";
  };
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input id={id} type="file" accept="image/*" onChange={(event) => void take(event.currentTarget)} />
      {fault.value && <p class="danger" role="alert">{fault.value}</p>}
      {paintingPhotograph.value && <button type="button" onClick={removePaintingPhotograph}>{where.removePhotograph}</button>}
    </div>
  );
}
