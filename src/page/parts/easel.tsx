// At the easel: what next, one big card for the test, the tests so far.
import "./easel.css";
import { jobText } from "../state";
import { words } from "../words/words";
import { Card } from "./easel/card";
import { isBegun } from "./easel/test_card";
import { ShortWords } from "./easel/short_words";
import { TableImport } from "./easel/table";
import { TestsList } from "./easel/tests_list";
import { NextPart } from "./next";

// A half filled card is in no file yet: the browser asks before it is lost.
window.addEventListener("beforeunload", (event) => {
  if (isBegun()) event.preventDefault();
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
