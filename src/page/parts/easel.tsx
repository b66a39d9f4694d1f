// At the easel: what next, one big card for the test, the tests so far.
import "./easel.css";
import { effect } from "@preact/signals";
import { jobText, paintingOpened } from "../state";
import { words } from "../words/words";
import { Card } from "./easel/card";
import { reset } from "./easel/stopwatch";
import { startOver } from "./easel/test_card";
import { ShortWords } from "./easel/short_words";
import { TableImport } from "./easel/table";
import { TestsList } from "./easel/tests_list";
import { NextPart } from "./next";
import { removePaintingPhotograph } from "./photograph";

// A card that is begun, the watch and the photograph are of one painting: another one begins without them.
effect(() => {
  if (paintingOpened.value === 0) return;
  startOver();
  reset();
  removePaintingPhotograph();
});

export function EaselPart() {
  const w = words.value.easel;
  if (jobText.value === "") return <section><h2>{w.title}</h2><p>{w.nothingOpen}</p></section>;
  return (
    <div class="easel">
      <NextPart />
      <Card />
      <ShortWords />
      <TestsList />
      <TableImport />
    </div>
  );
}
