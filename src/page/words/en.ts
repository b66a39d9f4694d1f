// Every word of the page. A translation is one more file with the same keys (words/de.ts).
import { afterwardsEn, studioEn, waysEn, workedEn } from "./afterwards.en";
import { easelEn, nextEn } from "./easel.en";
import { ladderEn } from "./ladder.en";
import { papersEn } from "./papers.en";
import { files } from "./files.en";
import { painting } from "./painting.en";
import { shelf } from "./shelf.en";

export const en = {
  page: {
    title: "Solvent tests, gentle to strong",
    steps: { painting: "Painting", shelf: "Shelf", ladder: "Ladder", easel: "At the easel", afterwards: "Afterwards", papers: "Papers" },
  },
  ladder: ladderEn,
  easel: easelEn,
  next: nextEn,
  papers: papersEn,
  afterwards: afterwardsEn,
  ways: waysEn,
  worked: workedEn,
  studio: studioEn,
  files,
  painting,
  shelf,
};

type Widened<T> = T extends string ? string : T extends (...args: infer A) => string ? (...args: A) => string : { [K in keyof T]: Widened<T[K]> };
export type Words = Widened<typeof en>;
