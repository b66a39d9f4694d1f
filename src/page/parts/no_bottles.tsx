// Nothing can be planned before a bottle is ticked: said in one line, with the way there.
import { computed } from "@preact/signals";
import { job } from "../job/edit";
import { step } from "../steps";
import { words } from "../words/words";

export const hasNoBottles = computed(() => job.value.isReadable && job.value.shelf.length === 0);

export function NoBottles() {
  const { shelf, page, files } = words.value;
  return <p class="actions" role="status"><span>{shelf.none}</span> <button type="button" onClick={() => (step.value = "shelf")}>{files.go_on(page.steps.shelf)}</button></p>;
}
