// Pieces of the ladder's answer under names of their own.
import type { LadderAnswer } from "../../answers";

export type Mixture = LadderAnswer["rungs"][number];
export type Line = LadderAnswer["lines"][number];
export type Measured = LadderAnswer["what_to_measure"]["mixtures"][number];
export type ForPerson = LadderAnswer["person"]["mixtures"][number];
export type Told = LadderAnswer["watch"][number];
