// Alle Wörter der Seite auf Deutsch.
import type { Words } from "./en";
import { easelDe, nextDe } from "./easel.de";
import { files } from "./files.de";
import { ladderDe } from "./ladder.de";
import { painting } from "./painting.de";
import { papersDe } from "./papers.de";
import { shelf } from "./shelf.de";

export const de: Words = {
  page: {
    title: "Lösemitteltests, von mild bis stark",
    steps: { painting: "Gemälde", shelf: "Regal", ladder: "Reihe", easel: "An der Staffelei", papers: "Papiere" },
  },
  files,
  ladder: ladderDe,
  easel: easelDe,
  next: nextDe,
  papers: papersDe,
  painting,
  shelf,
};
