// Pieces of the ladder's answer under names of their own.
import type { LadderAnswer } from "../../answers";

/** The words come with the answer where the program writes them. */
export type Mixture = LadderAnswer["rungs"][number] & { effect_words?: string | null; risk_words?: string | null };
export type Line = LadderAnswer["lines"][number];
export type Measured = LadderAnswer["what_to_measure"]["mixtures"][number];
export type ForPerson = LadderAnswer["person"]["mixtures"][number];
export type Told = LadderAnswer["watch"][number];

/** What the first screen of the program says besides the table. */
export interface Screen {
  in_short?: string[];
  to_watch?: string[];
  for_you?: string[];
}
