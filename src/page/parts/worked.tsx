// How a figure came: the engine's worked lines, asked when they are opened.
import "./afterwards.css";
import { useSignal } from "@preact/signals";
import type { ExplanationAnswer, ExplanationOfNextAnswer } from "../answers";
import { jobFile, logFile } from "../state";
import { words } from "../words/words";
import { Fold } from "./fold";
import { ToldState, untold, useTold, type Told } from "./told_of";

type Step = ExplanationAnswer["steps"][number];

function Steps({ steps }: { steps: readonly Step[] }) {
  return (
    <ol>
      {steps.map((one, index) => (
        <li key={index}>
          {one.title}
          <code class="sum" tabIndex={0} role="group" aria-label={one.title}>{one.sum} = {one.result}{one.unit && ` ${one.unit}`}</code>
          {one.printed_as !== null && <span class="soft">{words.value.worked.asPrinted(`${one.printed_as}${one.unit ? ` ${one.unit}` : ""}`)}</span>}
        </li>
      ))}
    </ol>
  );
}

function Inputs({ inputs }: { inputs: ExplanationAnswer["inputs"] }) {
  const w = words.value.worked;
  return (
    <ul>
      {inputs.map((one, index) => (
        <li key={index}>{one.title}: <strong>{one.value}{one.unit && ` ${one.unit}`}</strong> <span class="soft">({[w.from[one.from] ?? one.from, one.source, one.standing].filter(Boolean).join(", ")})</span></li>
      ))}
    </ul>
  );
}

function Lines({ answer }: { answer: ExplanationAnswer }) {
  const w = words.value.worked;
  const shown = answer.steps.filter((one) => one.printed_as !== null);
  return (
    <div class="worked">
      <p class="soft">{w.signs}</p>
      <h5>{w.printed}: {answer.mixture}</h5>
      <Steps steps={shown} />
      {[...answer.words, ...answer.rounding].map((one) => <p key={one}>{one}</p>)}
      <Fold title={w.every(answer.steps.length)}>{() => <Steps steps={answer.steps} />}</Fold>
      <Fold title={w.inputs(answer.inputs.length)}>{() => <Inputs inputs={answer.inputs} />}</Fold>
      <Fold title={w.notByHand}>{() => <ul>{answer.not_by_hand.map((one) => <li key={one}>{one}</li>)}</ul>}</Fold>
      <Fold title={w.sources}>{() => <ul>{answer.sources.map((one) => <li key={one.key}>{one.key}: {one.citation}{one.seen && ` (${one.seen})`}</li>)}</ul>}</Fold>
    </div>
  );
}

function Listed({ title, lines }: { title: string; lines: readonly string[] }) {
  return lines.length === 0 ? null : <><h5>{title}</h5><ul>{lines.map((one) => <li key={one}>{one}</li>)}</ul></>;
}

function NextLines({ answer }: { answer: ExplanationOfNextAnswer }) {
  const w = words.value.worked;
  return (
    <div class="worked">
      {answer.harms.map((one) => <p key={one} class="danger">{one}</p>)}
      <p><strong>{answer.words}</strong></p>
      <p>{answer.why}</p>
      <Listed title={w.figures} lines={answer.figures} />
      <Listed title={w.closed} lines={answer.closed} />
      <Listed title={w.open} lines={answer.open} />
      <Listed title={w.leftOut} lines={answer.readings_left_out} />
    </div>
  );
}

function Asked({ what }: { what: string }) {
  const told = useSignal<Told<ExplanationAnswer>>(untold);
  const telling = useTold(`explain:${what}`, told, () => ({ command: "explain", words: [jobFile, what], options: { format: "json" } }));
  return <><ToldState told={told.value} telling={telling} />{told.value.value && <Lines answer={told.value.value} />}</>;
}

function AskedNext() {
  const told = useSignal<Told<ExplanationOfNextAnswer>>(untold);
  const telling = useTold("explain:next", told, () => ({ command: "explain", words: [jobFile, "next"], options: { format: "json", log: logFile } }));
  return <><ToldState told={told.value} telling={telling} />{told.value.value && <NextLines answer={told.value.value} />}</>;
}

/** `what`: as `gentlest explain` reads it; "next" is the next test. `name` tells several of one title apart. */
export function Worked({ what, title, name }: { what: string; title: string; name?: string }) {
  return <Fold of="said-whole" title={title} name={name}>{() => (what === "next" ? <AskedNext /> : <Asked what={what} />)}</Fold>;
}
