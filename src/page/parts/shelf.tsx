// The shelf: the bottles of this painting, each with its grade and what is known of its hazards; and "my shelf".
import "./shelf.css";
import { useState } from "preact/hooks";
import { addBottle, removeBottle, setBottle, setText, type BottleView, type Path } from "../job/document";
import { edit, job, said, takeAway } from "../job/edit";
import { recordOf, shownName } from "../names";
import { unsaved, save } from "../files";
import { openedOn, setOpened, shelf, shelfText, takeIntoShelf, withMyShelf } from "../shelf_file";
import { words } from "../words/words";
import { FaultsAt, Field } from "./fields";
import { Hazards } from "./hazards";
import { NameChoice } from "./material_choice";
import { solvents, type SolventRow } from "./solvents";

const isOf = (bottle: BottleView, id: string) => recordOf(bottle.solvent, "solvent") === id;

function add(solvent: string): void {
  if (solvent.trim() === "") return;
  edit((text) => addBottle(text, solvent));
  said.value = words.value.shelf.added(shownName(solvent, "solvent"));
}

function remove(index: number): void {
  const name = shownName(job.value.shelf[index]?.solvent ?? "", "solvent");
  takeAway(name, (text) => removeBottle(text, index));
}

function Bottle({ bottle, index }: { bottle: BottleView; index: number }) {
  const text = words.value.shelf;
  const name = shownName(bottle.solvent, "solvent");
  const path: Path = ["shelf", index];
  const set = (key: "grade" | "at_most_percent") => (typed: string) => edit((now) => setBottle(now, path, key, typed));
  return (
    <li class="panel bottle">
      <h4><label class="tick"><input type="checkbox" checked onChange={() => remove(index)} /> {name}</label></h4>
      {recordOf(bottle.solvent, "solvent") === "" && (
        <NameChoice label={words.value.painting.name} of="solvent" value={bottle.solvent} onChoose={(written) => edit((now) => setText(now, bottle.grade || bottle.atMostPercent ? [...path, "solvent"] : path, written))} />
      )}
      <FaultsAt path={path} />
      <div class="fields">
        <Field label={text.grade} path={[...path, "grade"]} value={bottle.grade} isShort onTyped={set("grade")} />
        <Field label={text.at_most_percent} path={[...path, "at_most_percent"]} value={bottle.atMostPercent} isNumber isShort onTyped={set("at_most_percent")} />
        <Field label={text.opened} path={["my shelf", index]} value={openedOn(bottle)} isShort onTyped={(day) => setOpened(bottle, day)} />
      </div>
      <Hazards written={bottle.solvent} name={name} />
      {bottle.grade !== "" && <button type="button" onClick={() => add(bottle.solvent)}>{text.second_grade(name)}</button>}
    </li>
  );
}

function Row({ row }: { row: SolventRow }) {
  const text = words.value.shelf;
  const index = job.value.shelf.findIndex((one) => isOf(one, row.id));
  const isMissing = !row.hazard_statements;  // a gap of the record is said, never passed over
  return (
    <li>
      <label class="tick">
        <input type="checkbox" checked={index >= 0} onChange={() => (index >= 0 ? remove(index) : add(row.id))} />
        <span>{row.name} <span class={isMissing ? "warn" : "soft"}>{isMissing ? text.no_record : text.signal(row.signal_word ?? "")}</span>
          {row.reference_only && <span class="soft"> ({text.reference_only})</span>}</span>
      </label>
    </li>
  );
}

function Family({ family }: { family: string }) {
  const rows = solvents.value.filter((row) => row.family === family);
  // Open from the start where the shelf has one of its kind: the next is often its neighbour.
  const [isOpen] = useState(() => rows.some((row) => job.value.shelf.some((one) => isOf(one, row.id))));
  return (
    <details class="family" open={isOpen}>
      <summary>{family} ({rows.length})</summary>
      <ul class="plain rows">{rows.map((row) => <Row key={row.id} row={row} />)}</ul>
    </details>
  );
}

function Families() {
  const families = [...new Set(solvents.value.map((row) => row.family))].sort();
  return (
    <details open>
      <summary>{words.value.shelf.more}</summary>
      {families.map((family) => <Family key={family} family={family} />)}
    </details>
  );
}

function MyShelf() {
  const text = words.value.shelf;
  const have = job.value.shelf;
  return (
    <section aria-labelledby="my-shelf" class="panel">
      <h3 id="my-shelf">{text.my_shelf}</h3>
      <p class="soft">{text.my_shelf_hint}</p>
      <p>{shelfText.value === "" ? text.my_shelf_none : text.my_shelf_count(shelf.value.length)}</p>
      <div class="actions">
        <button type="button" disabled={have.length === 0} onClick={() => takeIntoShelf(have)}>{text.keep}</button>
        <button type="button" disabled={shelf.value.length === 0} onClick={() => edit((now) => withMyShelf(now, have))}>{text.use}</button>
        <button type="button" disabled={!unsaved.value.includes("shelf")} onClick={() => void save("shelf")}>{text.save}</button>
      </div>
    </section>
  );
}

export function ShelfPart() {
  const text = words.value.shelf;
  const bottles = job.value.shelf;
  return (
    <>
      <h2>{text.heading}</h2>
      <p>{text.intro}</p>
      <NameChoice label={text.find} of="solvent" value="" isAdding onChoose={add} />
      <p class="soft">{text.find_hint}</p>
      <h3>{bottles.length === 0 ? text.none : text.on_shelf(bottles.length)}</h3>
      <FaultsAt path={["shelf"]} />
      <p class="soft">{text.grade_hint}. {text.opened}: {text.opened_hint}.</p>
      <ul class="plain bottles">{bottles.map((bottle, index) => <Bottle key={`${index} ${bottle.solvent}`} bottle={bottle} index={index} />)}</ul>
      <Families />
      <MyShelf />
    </>
  );
}
