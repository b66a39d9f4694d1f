// Photographs of the swab and the spot: made smaller, shown, kept with the reading.
import { useSignal } from "@preact/signals";
import { toBase64 } from "../../base64";
import { words } from "../../words/words";
import { shrunk } from "../photograph";
import { isBegun, fill, mixtureOfCard, photographs } from "./test_card";

type Which = "photo_before" | "photo";
const most_px = 800;

function put(which: Which, change: (before: string[]) => string[]): void {
  if (!isBegun()) fill("mixture", mixtureOfCard());
  photographs.value = { ...photographs.peek(), [which]: change(photographs.peek()[which]) };
}

function Taken({ which }: { which: Which }) {
  const w = words.value.easel.photographs;
  return (
    <ul class="thumbs">
      {photographs.value[which].map((one, index) => (
        <li key={index}>
          <img src={`data:image/jpeg;base64,${one}`} alt={w.number(index + 1)} />
          <button type="button" class="touch" aria-label={w.remove(index + 1)} onClick={() => put(which, (before) => before.filter((_, place) => place !== index))}>×</button>
        </li>
      ))}
    </ul>
  );
}

function Taking({ which }: { which: Which }) {
  const w = words.value.easel.photographs;
  const fault = useSignal("");
  const take = async (input: HTMLInputElement) => {
    const chosen = [...(input.files ?? [])];
    input.value = "";
    fault.value = "";
    for (const file of chosen) {
      const small = await shrunk(file, most_px);
      if (!small) fault.value = w.unreadable(file.name);
      else {
        const kept = toBase64(new Uint8Array(await small.arrayBuffer()));
        put(which, (before) => [...before, kept]);
      }
    }
  };
  return (
    <div class="field">
      <label for={`take-${which}`}>{w[which]}: {w.take}</label>
      <input id={`take-${which}`} class="touch" type="file" accept="image/*" multiple onChange={(event) => void take(event.currentTarget)} />
      {fault.value && <p class="danger" role="alert">{fault.value}</p>}
      <Taken which={which} />
    </div>
  );
}

export function Photographs() {
  const w = words.value.easel.photographs;
  return (
    <fieldset>
      <legend>{w.title}</legend>
      <p class="soft">{w.kept}</p>
      <div class="fields"><Taking which="photo_before" /><Taking which="photo" /></div>
    </fieldset>
  );
}
