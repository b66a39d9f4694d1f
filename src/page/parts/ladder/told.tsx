// What the program tells besides the rungs: in short, to watch, for the person, what is weak, cautions.
import type { LadderAnswer } from "../../answers";
import { words } from "../../words/words";
import { percent } from "../figures";
import type { Told } from "./types";

function Sentences({ title, lines, isOpen = true }: { title: string; lines: string[]; isOpen?: boolean }) {
  if (lines.length === 0) return null;
  const list = <ul>{lines.map((line, index) => <li key={index}>{line}</li>)}</ul>;
  return isOpen ? <><h3>{title}</h3>{list}</> : <details><summary>{title}</summary>{list}</details>;
}

const withSource = (one: Told) => (one.source ? `${one.text} (${one.source})` : one.text);

/** Stands above the rungs. */
export function InShort({ answer }: { answer: LadderAnswer }) {
  const w = words.value.ladder;
  return (
    <>
      {answer.in_short.length > 0 ? <p>{answer.in_short.join(" ")}</p> : null}
      <Sentences title={w.firstTests} lines={answer.first_tests} />
      <Sentences title={w.hazards} lines={answer.dangers} />
    </>
  );
}

export function ToldBeside({ answer }: { answer: LadderAnswer }) {
  const w = words.value.ladder;
  const parting = answer.parting.map((one) => w.parting(one.bottle, one.other, String(one.from_percent), String(one.to_percent)));
  const limit = answer.at_higher_limit;
  const higher = limit ? [w.higherLimit(percent(limit.risk_limit), String(limit.rungs), percent(limit.strongest_effect))] : [];
  return (
    <section class="panel told">
      <Sentences title={w.watch} lines={[...answer.watch.map((one) => one.text), ...parting]} />
      <Sentences title={w.person} lines={answer.person.sentences} />
      <Sentences title={w.leftOff} lines={answer.left_off_shelf} />
      <Sentences title={w.otherWays} lines={[...answer.other_ways.map((one) => one.text), ...higher]} />
      <Sentences title={w.weak} lines={answer.weak_points} isOpen={false} />
      <Sentences title={w.cautions} lines={answer.cautions.map(withSource)} isOpen={false} />
      <Sentences title={w.notSeen} lines={answer.not_seen.map(withSource)} isOpen={false} />
      <Sentences title={w.sources} lines={answer.sources.map((one) => one.citation)} isOpen={false} />
    </section>
  );
}
