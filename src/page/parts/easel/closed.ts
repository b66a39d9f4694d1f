// Which rungs a harm closed. The program's sheet strikes them out and no other answer names them one by one, so its marks are
// read: <s> around the recipe. Asked only after a harm, since before it nothing is closed.
import { computed, effect, signal } from "@preact/signals";
import { ask } from "../../engine/engine";
import { files, jobFile, jobText, logFile, logText, next, readings } from "../../state";
import { step } from "../../steps";

const struck = signal<{ of: string; recipes: ReadonlySet<string> }>({ of: "", recipes: new Set() });
const isAnyHarm = computed(() => (readings.value.value?.readings ?? []).some((one) => one.harm));

export function struckOut(sheet: string): Set<string> {
  const marks = new DOMParser().parseFromString(sheet, "text/html").querySelectorAll("s bdi");
  return new Set(Array.from(marks, (one) => one.textContent ?? ""));
}

async function look(of: string): Promise<void> {
  const answer = await ask("closed", { command: "sheet", words: [jobFile], options: { log: logFile }, files: files() });
  if (answer.exit <= 1) struck.value = { of, recipes: struckOut(answer.text) };
}

// Once next and readings are of now: both stand behind the ladder, whose plan the sheet takes over.
effect(() => {
  const of = `${jobText.value}\n${logText.value}`;
  if (step.value !== "easel" || !isAnyHarm.value || !next.value.isCurrent || !readings.value.isCurrent || struck.peek().of === of) return;
  void look(of);
});

/** By the recipe. What was closed stays marked until the answer to a later log is there. */
export const isClosed = (recipe: string): boolean => isAnyHarm.value && struck.value.recipes.has(recipe);
