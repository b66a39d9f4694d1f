// The papers of the program, shown as they are printed.
import "./papers.css";
import { computed, signal, useSignalEffect } from "@preact/signals";
import { useRef } from "preact/hooks";
import { download } from "../download";
import { ask, type Fault, type Question } from "../engine/engine";
import { basis, files, jobFile, jobName, jobText, logFile, logText } from "../state";
import { words } from "../words/words";
import { afterwardsLight, afterwardsLiquids } from "./afterwards";
import { Background } from "./background";
import { Faults } from "./faults";
import { hasNoBottles, NoBottles } from "./no_bottles";
import { numberOf, withPoint } from "./figures";
import { paintingPhotograph } from "./photograph";

const kinds = ["examine", "sheet", "labels", "report", "afterwards"] as const;
type Kind = (typeof kinds)[number];
const texts = ["sites", "label", "margin", "gap", "copies", "date", "maker"] as const;
type TextOption = (typeof texts)[number];

const kind = signal<Kind>("sheet");
const paper = signal<"a4" | "letter">("a4");
const full = signal(false);
const typed = signal<Partial<Record<TextOption, string>>>({});
const optionsOf: Record<Kind, readonly TextOption[]> = { examine: [], sheet: ["sites"], labels: ["label", "margin", "gap", "copies", "date", "maker"], report: [], afterwards: [] };
/** Papers of the ladder, which take its photograph and log; the others are the program's own pages of a command. */
const isOfLadder = (one: Kind) => one !== "examine" && one !== "afterwards";
const takesAll = (one: Kind) => one === "sheet" || one === "report";

/** The examination's page without answers: by wish, or where nothing can be planned yet. */
const isBlankWanted = signal(false);
const isBlank = computed(() => kind.value === "examine" && (isBlankWanted.value || hasNoBottles.value));

interface Made { kind: Kind; text: string; faults: Fault[]; notes: string; exit: number; of: string }
const made = signal<Made | null>(null);
/** Its making was stopped by hand. */
const isGivenUp = signal(false);

const backgroundFile = "background.jpg";

const question = computed<Question>(() => {
  const options: Record<string, string | true> = {};
  if (paper.value !== "a4") options["paper"] = paper.value;
  if (!isOfLadder(kind.value)) options["html"] = true;
  if (full.value && takesAll(kind.value)) options["full"] = true;
  if (logText.value !== "" && (kind.value === "sheet" || kind.value === "labels")) options["log"] = logFile;
  const given: Record<string, string | Uint8Array> = {};
  if (paintingPhotograph.value && takesAll(kind.value)) {
    options["background"] = backgroundFile;
    given[backgroundFile] = paintingPhotograph.value.bytes;
  }
  for (const name of optionsOf[kind.value]) {
    const text = typed.value[name]?.trim();
    if (text) options[name] = numberOf(text) !== null ? withPoint(text) : text;
  }
  if (kind.value === "afterwards" && afterwardsLight.value !== "") options["light"] = afterwardsLight.value;
  if (kind.value === "afterwards" && afterwardsLiquids.value !== "") options["liquid"] = afterwardsLiquids.value;
  const names = isBlank.value ? [] : kind.value === "report" ? [jobFile, logFile] : [jobFile];
  return { command: kind.value, words: names, options, files: { ...files(), ...given } };
});

const subject = computed(() => JSON.stringify([question.value.command, question.value.options, question.value.words, basis.value, paintingPhotograph.value?.address]));

async function make(): Promise<void> {
  const [of, asked] = [subject.peek(), question.peek()];
  isGivenUp.value = false;
  const answer = await ask("paper", asked);
  if (answer.exit === 130) {
    isGivenUp.value = of === subject.peek();
    return;
  }
  made.value = { kind: asked.command as Kind, text: answer.exit <= 1 ? answer.text : "", faults: answer.faults, notes: answer.notes, exit: answer.exit, of };
}

function TextOptionField({ name }: { name: TextOption }) {
  const w = words.value.papers;
  const hints: Partial<Record<TextOption, string>> = { sites: w.sitesHint, label: w.labelHint, date: w.lineToWriteOn, maker: w.lineToWriteOn };
  const hint = hints[name];
  return (
    <div class="field short">
      <label for={`paper-${name}`}>{w[name]}</label>
      <input id={`paper-${name}`} autocomplete="off" value={typed.value[name] ?? ""} aria-describedby={hint ? `paper-${name}-hint` : undefined}
        onInput={(event) => (typed.value = { ...typed.value, [name]: event.currentTarget.value })} />
      {hint && <span id={`paper-${name}-hint`} class="soft">{hint}</span>}
    </div>
  );
}

function Choices() {
  const w = words.value.papers;
  return (
    <>
      <fieldset class="papers-kinds">
        <legend>{w.which}</legend>
        {kinds.map((one) => <label class="tick" key={one}><input type="radio" name="paper-kind" checked={kind.value === one} onChange={() => (kind.value = one)} />{w.kinds[one]}</label>)}
      </fieldset>
      <div class="fields">
        <label class="field short">
          {w.paper}
          <select value={paper.value} onChange={(event) => (paper.value = event.currentTarget.value === "letter" ? "letter" : "a4")}>
            {(["a4", "letter"] as const).map((one) => <option key={one} value={one}>{w.sizes[one]}</option>)}
          </select>
        </label>
        {optionsOf[kind.value].map((name) => <TextOptionField key={name} name={name} />)}
        {takesAll(kind.value) && <Background label={w.background} />}
      </div>
      {kind.value === "examine" && <label class="tick"><input type="checkbox" checked={isBlank.value} disabled={hasNoBottles.value} onChange={(event) => (isBlankWanted.value = event.currentTarget.checked)} />{w.blank}</label>}
      {takesAll(kind.value) && <label class="tick"><input type="checkbox" checked={full.value} onChange={(event) => (full.value = event.currentTarget.checked)} />{w.full}</label>}
    </>
  );
}

const save = ({ kind: of, text }: Made) => download(`${jobName.peek().replace(/\.[^.]*$/, "")}-${of}.html`, text, "text/html");

// The program's paper, byte for byte, in a frame of this very origin, so that the page may print it; it runs no script.
function Shown({ paper: of, isCurrent }: { paper: Made; isCurrent: boolean }) {
  const w = words.value.papers;
  const frame = useRef<HTMLIFrameElement>(null);
  return (
    <>
      <div class="actions">
        <button type="button" class="main" disabled={!isCurrent} onClick={() => frame.current?.contentWindow?.print()}>{w.print}</button>
        <button type="button" disabled={!isCurrent} onClick={() => save(of)}>{w.save}</button>
        {of.kind === "labels" && <span class="soft">{w.printHint}</span>}
      </div>
      <div class="paper-scroll" tabIndex={0} role="region" aria-label={w.shown(w.kinds[of.kind])}>
        <iframe ref={frame} title={w.shown(w.kinds[of.kind])} srcdoc={of.text} sandbox="allow-same-origin allow-modals" />
      </div>
    </>
  );
}

export function PapersPart() {
  const w = words.value.papers;
  useSignalEffect(() => {
    if (jobText.value === "" || (hasNoBottles.value && kind.value !== "examine") || made.peek()?.of === subject.value) return;
    const waiting = setTimeout(() => void make(), 200);
    return () => clearTimeout(waiting);
  });
  if (jobText.value === "") return <section><h2>{w.title}</h2><p>{w.nothingOpen}</p></section>;
  const isWanting = hasNoBottles.value && kind.value !== "examine";
  const current = made.value?.kind === kind.value ? made.value : null;
  const isCurrent = made.value?.of === subject.value;
  return (
    <section aria-labelledby="papers-title">
      <h2 id="papers-title">{w.title}</h2>
      <Choices />
      {isWanting ? <NoBottles /> : <p role="status" class={isCurrent ? "soft" : "warn"}>{!isCurrent ? `${w.working} ${current?.text ? w.stale : ""}` : current?.text ? w.ready(w.kinds[current.kind]) : w.notMade}</p>}
      {!isWanting && !isCurrent && isGivenUp.value && <button type="button" onClick={() => void make()}>{w.makeAgain}</button>}
      {!isWanting && current && current.exit > 1 && <Faults faults={current.faults} notes={current.notes} />}
      {!isWanting && current?.text && <Shown paper={current} isCurrent={isCurrent} />}
    </section>
  );
}
