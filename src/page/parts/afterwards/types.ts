// Pieces of the answer under names of their own.
import type { Act, AfterwardsAnswer } from "../../answers";

export type Stack = AfterwardsAnswer["stacks"][number];
export type Coat = AfterwardsAnswer["painting"][number];
export type JudgedCoat = Stack["coats"][number];
export type ActInMixture = NonNullable<Act>;
export const acts = ["put_on", "off_fresh", "off_aged"] as const;
export type ActName = (typeof acts)[number];
