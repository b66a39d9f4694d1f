// Coats drawn one above the other, the uppermost first; what each is stands in words and in the edge of its band.
import { figure } from "../figures";
import { shownName } from "../../names";
import { words } from "../../words/words";
import type { Coat } from "./types";

export function coatName(coat: Coat): string {
  return coat.kind === "remnant" ? words.value.afterwards.remnantOf(coat.name) : coat.name;
}

export function Coats({ coats, label }: { coats: readonly Coat[]; label: string }) {
  const w = words.value.afterwards;
  return (
    <ol class="coats" aria-label={label}>
      {[...coats].reverse().map((coat) => {
        const material = coat.material === null ? w.materialUnknown : shownName(coat.material, "material");
        const more = [material !== coat.name && material, coat.proposed && w.proposed, w.kinds[coat.kind], coat.light && w.lights[coat.light], coat.years !== null && w.years(figure(coat.years))];
        return <li key={coat.name} class={`coat ${coat.kind}`}><strong>{coat.name}</strong> <span>{more.filter(Boolean).join("; ")}</span></li>;
      })}
    </ol>
  );
}
