// One test on one big card. The choices are the words of `gentlest help record`.
import { useSignal } from "@preact/signals";
import { words } from "../../words/words";
import { Faults } from "../faults";
import { MixtureChoice } from "./mixture_choice";
import { passages } from "./passages";
import { Photographs } from "./photographs";
import { Place } from "./place";
import { isRunning, Stopwatch, reset } from "./stopwatch";
import { card, faults, fill, keyOfFault, notes, startOver, valueOf } from "./test_card";
import { SignTiles, TextField, Tiles, dropSigns } from "./tiles";
import { isWriting, record, today, wordsOfCard, writtenTest, type Written } from "./write";

export const removals = ["no effect", "softened or gelled", "partly removed", "mostly removed", "fully removed"] as const;
export const originals = ["nothing seen", "change that recovers", "change that stays", "softened", "colour on the swab"] as const;
export const colours = ["none", "varnish", "dirt", "retouching", "original", "not known"] as const;
export const wetnesses = ["dry", "damp", "wet"] as const;
export const confidences = ["low", "medium", "high"] as const;
export const signsOfRemoval = ["gelled", "smeared", "patchy", "varnish tacky", "varnish swollen"] as const;
export const signsOfOriginal = ["blanched", "lost gloss", "matt", "halo", "paint tacky", "paint swollen", "lifted", "flaked"] as const;

function Where() {
  const w = words.value.easel.where;
  return (
    <>
      <Tiles of="at_edge" title={w.place} choices={["yes", "no"]} canBeOpen={false} say={(value) => (value === "yes" ? w.edge : w.picture)} />
      {passages.value.length > 0 && <Tiles of="passage" title={w.passage} choices={passages.value} say={(name) => name} />}
      <Place />
    </>
  );
}

export const isMoved = (removal: string) => removal !== "" && removal !== "no effect";
export const isChanged = (original: string) => original !== "" && original !== "nothing seen";

// A sign of the original goes with a change that was seen: the grade is what the rules count, so a sign never stands alone.
function Seen() {
  const w = words.value.easel;
  const harmSeen = isChanged(valueOf("original"));
  const moved = isMoved(valueOf("removal"));
  return (
    <>
      <Tiles of="removal" title={w.removal} choices={removals} onChoose={(value) => !isMoved(value) && dropSigns(signsOfRemoval)} />
      {moved && <SignTiles title={w.signs} choices={signsOfRemoval} />}
      <Tiles of="original" title={w.original} choices={originals} onChoose={(value) => !isChanged(value) && dropSigns(signsOfOriginal)} />
      {harmSeen && <SignTiles title={w.signs} choices={signsOfOriginal} />}
      <Tiles of="colour" title={w.colour} choices={colours} />
    </>
  );
}

function More() {
  const w = words.value.easel;
  const f = w.fields;
  return (
    <details>
      <summary>{w.more}</summary>
      <div class="fields">
        <label class="field short">{f.date}<input class="touch" type="date" value={card.value.date ?? today()} onInput={(event) => fill("date", event.currentTarget.value)} /></label>
        {(["light", "magnification", "window_mm", "uv_before", "uv_after", "swab", "clearing", "after_drying"] as const).map((key) => <TextField key={key} of={key} label={f[key]} />)}
      </div>
      <Tiles of="confidence" title={f.confidence} choices={confidences} />
    </details>
  );
}

function empty(): void {
  startOver();
  reset();
}

function tellOf({ answer, outcome }: Written): string {
  const w = words.peek().easel;
  if (outcome === "written") return w.written(writtenTest(answer.text));
  if (outcome === "other log") return w.logChanged;
  if (outcome === "not appended") return w.notAppended;
  return w.notWritten;
}

/** What `record` answered, told: also used by the later looks and the short words. */
export { tellOf };

export function Card() {
  const w = words.value.easel;
  const told = useSignal("");
  const write = async () => {
    if (isRunning()) {
      told.value = w.watch.stopFirst;
      return;
    }
    const { words: said, files } = wordsOfCard();
    const written = await record(said, files);
    told.value = tellOf(written);
    if (written.outcome === "written") {
      empty();
      document.getElementById("next")?.focus();
      return;
    }
    faults.value = written.answer.faults;
    notes.value = written.answer.faults.length > 0 ? "" : written.answer.notes;
    setTimeout(() => document.querySelector<HTMLElement>(".card .faults")?.scrollIntoView({ block: "center" }));
  };
  const homeless = faults.value.filter((fault) => keyOfFault(fault) === null);
  return (
    <section class="panel card" aria-labelledby="card-title">
      <h2 id="card-title">{w.card}</h2>
      <MixtureChoice />
      <Where />
      <Stopwatch />
      <Seen />
      <fieldset class="swab-fields">
        <legend>{w.swab}</legend>
        <div class="fields"><TextField of="rolls" label={w.rolls} inputMode="numeric" /></div>
        <Tiles of="wetness" title={w.wetness} choices={wetnesses} />
      </fieldset>
      <Photographs />
      <div class="fields">
        <TextField of="who" label={w.fields.who} />
        <TextField of="remark" label={w.fields.remark} />
      </div>
      <More />
      <Faults faults={homeless} notes={notes.value} />
      <div class="actions write">
        <button type="button" class="touch main" disabled={isWriting.value} onClick={() => void write()}>{w.write}</button>
        <button type="button" class="touch" disabled={Object.keys(card.value).length === 0} onClick={empty}>{w.startOver}</button>
        <span class="soft">{card.value.date ?? today()}</span>
      </div>
      <p role="status">{isWriting.value ? w.writing : told.value}</p>
    </section>
  );
}
