// What the ladder's answer holds of a mixture, by its recipe.
import { ladder } from "../../state";
import type { ForPerson, Mixture } from "./types";

/** The rung of any line with that recipe, and what the answer says of it for the person; that is said of the first line only. */
export function rungOf(recipe: string): { mixture: Mixture; person: ForPerson | undefined } | undefined {
  const answer = ladder.value.value;
  if (!answer) return undefined;
  const index = answer.rungs.findIndex((one) => one.recipe === recipe);
  const mixture = answer.rungs[index] ?? answer.lines.flatMap((line) => line.rungs).find((one) => one.recipe === recipe);
  return mixture && { mixture, person: answer.person.mixtures.find((one) => one.name === String(index + 1)) };
}
