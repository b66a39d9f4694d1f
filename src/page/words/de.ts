// Alle Wörter der Seite auf Deutsch. Ein Wort für eine Sache: Testreihe, Stufe, Probe, Gemisch, Gemäldedatei, Protokoll,
// Diagramm, Blatt, Einwirkzeit, Rechenkern, Arbeitsschutz; "Foto" ist ein Lichtbild, "Gemälde" der Gegenstand.
import type { Words } from "./en";
import { afterwardsDe, studioDe, waysDe, workedDe } from "./afterwards.de";
import { easelDe, nextDe } from "./easel.de";
import { files } from "./files.de";
import { ladderDe } from "./ladder.de";
import { painting } from "./painting.de";
import { papersDe } from "./papers.de";
import { shelf } from "./shelf.de";

export const de: Words = {
  page: {
    title: "Lösemittelproben, von mild bis stark",
    steps: { painting: "Gemälde", shelf: "Regal", ladder: "Testreihe", easel: "An der Staffelei", afterwards: "Danach", papers: "Blätter" },
  },
  files,
  ladder: ladderDe,
  easel: easelDe,
  next: nextDe,
  papers: papersDe,
  afterwards: afterwardsDe,
  ways: waysDe,
  worked: workedDe,
  studio: studioDe,
  painting,
  shelf,
};
